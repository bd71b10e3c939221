package clauses

import (
	"fmt"
	"math"
)

// How far a wire may lean, in degrees, and still pull as a clause takes it to, and how
// far off the centre line, in mm, a hole may stand and still be midway. No text that was
// seen gives such limits: each is this project's (judgement).
const (
	// MostLeanIn is for a pull along the plate, seen square on its face: a wire ten
	// degrees off loads a strip by 1.5 per cent less along its length (cos 10 deg), and
	// from there on the project's own rules begin to watch it (judgement).
	MostLeanIn = 10
	// MostLeanOut is for a pull in the plate's plane and square to its pin: out of its
	// plane a plate is thin and bends soon, so it is as little as a bevel gauge tells for
	// sure, and from there on the project's own rules begin to watch it (judgement).
	MostLeanOut = 2
	// MostLeanOfBolts is less than that in the plate's plane, since the moment of a lean
	// turns the force of a bolt by some three times as much, and the whole of that force
	// is held against what the plate bears along its length (judgement).
	MostLeanOfBolts = 5
	// Midway is for a hole midway between the plate's edges: what a workshop keeps to
	// when it marks out and drills by hand (judgement).
	Midway = 0.5
)

// InPlane says why a row is not covered whose wire leans out of the plate's plane,
// whichever way; meant says what the clause is for instead.
func InPlane(r Row, meant string) error {
	if lean := math.Abs(r.Number("lean_out")); lean > MostLeanOut {
		return fmt.Errorf("the wire leans %.3g deg out of the plate's plane, %s; up to %d deg is covered", lean, meant, MostLeanOut)
	}
	return nil
}

// Along says why a row is not covered whose wire leans across the plate in its plane,
// whichever way; meant says what the clause is for instead.
func Along(r Row, meant string) error {
	if lean := math.Abs(r.Number("lean_in")); lean > MostLeanIn {
		return fmt.Errorf("the wire leans %.3g deg across the plate in its plane, %s; up to %d deg is covered", lean, meant, MostLeanIn)
	}
	return nil
}
