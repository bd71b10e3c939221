package en1993

import (
	"fmt"

	"chainwale/engine/standard"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// The partial factors are the recommended ones; a national annex may change them.
// gammaM2 stands before what breaks, gammaM6 before what a pin may suffer that is to
// come out again.
const (
	gammaM2 = 1.25
	gammaM6 = 1.00
)

// loadFactor turns the wire's load at work into the design load. The wire's break
// load is no design load: by it nearly every sound plate of annealed stainless would
// fail.
const loadFactor = 1.5

// How far a wire may lean and still be taken to pull along the plate: where the
// project's own rules begin to watch it.
const (
	mostLeanIn  = 10 // deg in the plate's plane
	mostLeanOut = 2  // deg out of it
	// mostLeanOfBolts is less than that in the plate's plane, since the moment of a lean
	// turns the force of a bolt by some three times as much. The whole of that force is
	// held against what the plate bears along its length.
	mostLeanOfBolts = 5
)

var (
	partial = working.Source{Title: "after EN 1993-1-8 and EN 1993-1-4, recommended partial factors", Edition: "2005, 2006", As: working.Memory,
		For: "gamma M0 of 1.00, of stainless 1.10; gamma M2 of 1.25 and gamma M6,ser of 1.00 are published"}
	loads = working.Source{Title: "this project, after EN 1990", As: working.Judgement, For: "1.5 times the load at work as the design load"}
)

// gammaM0 stands before what yields: 1.10 for stainless, by EN 1993-1-4, else 1.00.
func gammaM0(family string) float64 {
	if family == "stainless" {
		return 1.10
	}
	return 1.00
}

// modulus is the elastic modulus in MPa: of stainless by EN 1993-1-4, else of steel.
func modulus(family string) float64 {
	if family == "stainless" {
		return 200000
	}
	return 210000
}

// steel says why a part is not covered unless it is of steel.
func steel(part, family string) error {
	if family == "steel" || family == "stainless" {
		return nil
	}
	return fmt.Errorf("the standard is for steel, and %s is of %s", part, family)
}

// square says why a pin is not covered unless the wire pulls square to it.
func square(r clauses.Row) error {
	if lean := r.Number("lean_out"); lean > mostLeanOut {
		return fmt.Errorf("the wire leans %.3g deg out of the plate's plane, so it does not pull square to the pin; up to %d deg is covered", lean, mostLeanOut)
	}
	return steel("the pin", r.Word("pin_family"))
}

// along says why a plate is not covered unless the wire pulls along it.
func along(r clauses.Row) error {
	if lean := r.Number("lean_out"); lean > mostLeanOut {
		return fmt.Errorf("the wire leans %.3g deg out of the plate's plane, and the clause is for a plate pulled in its plane; up to %d deg is covered", lean, mostLeanOut)
	}
	if lean := r.Number("lean_in"); lean > mostLeanIn {
		return fmt.Errorf("the wire leans %.3g deg across the plate in its plane, and the clause is for a pull along the plate; up to %d deg is covered", lean, mostLeanIn)
	}
	return steel("the plate", r.Word("fitting.metal.family"))
}

// pinReads are what all checks of the pin read.
func pinReads(more ...standard.Read) []standard.Read {
	return append([]standard.Read{clauses.Number("pin_diameter", "mm"), clauses.Word("pin_family"), clauses.Number("lean_out", "deg")}, more...)
}

// after is a source in EN 1993-1-8.
func after(clause string, as working.HowKnown, what string) working.Source {
	return working.Source{Title: "after EN 1993-1-8", Edition: "2005", Clause: clause, As: as, For: what}
}

// by makes the inputs of a step out of symbol, value and unit, three by three.
func by(parts ...any) []working.Input {
	var list []working.Input
	for i := 0; i+2 < len(parts); i += 3 {
		list = append(list, working.Input{Symbol: parts[i].(string), Value: parts[i+1].(float64), Unit: parts[i+2].(string)})
	}
	return list
}
