package airlug

import (
	"fmt"
	"math"

	"chainwale/engine/standard"
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// lugReads are what the strengths of the lug are worked out of.
var lugReads = []standard.Read{
	clauses.Number("hole", "mm"),
	clauses.Number("end", "mm"),
	clauses.Number("across", "mm"),
	clauses.Number("pin_diameter", "mm"),
	clauses.Number("lean_in", "deg"),
	clauses.Number("lean_out", "deg"),
	clauses.Number("fitting.thickness", "mm"),
	clauses.Number("fitting.width", "mm"),
	clauses.Word("fitting.metal.name"),
	clauses.Word("fitting.metal.family"),
	clauses.Number("fitting.metal.yield", "MPa"),
	clauses.Number("fitting.metal.ultimate", "MPa"),
}

// pinReads are what the strengths of the pin are worked out of.
var pinReads = []standard.Read{
	clauses.Number("lean_out", "deg"),
	clauses.Number("pin_diameter", "mm"),
	clauses.Number("pin_yield", "MPa"),
	clauses.Number("pin_ultimate", "MPa"),
	clauses.Number("fork_opening", "mm"),
	clauses.Number("fork_cheek", "mm"),
	clauses.Number("fitting.thickness", "mm"),
}

// What the clauses can't do without.
var (
	fromBearing = []string{"hole", "end", "lean_in", "lean_out", "pin_diameter", "fitting.thickness", "fitting.metal.family", "fitting.metal.ultimate"}
	fromTension = []string{"hole", "across", "lean_in", "lean_out", "pin_diameter", "fitting.thickness", "fitting.width", "fitting.metal.name", "fitting.metal.family", "fitting.metal.ultimate"}
	fromAcross  = []string{"hole", "end", "across", "pin_diameter", "fitting.thickness", "fitting.width", "fitting.metal.ultimate"}
	fromAll     = []string{"hole", "end", "across", "lean_in", "lean_out", "pin_diameter", "fitting.thickness", "fitting.width", "fitting.metal.name", "fitting.metal.family", "fitting.metal.ultimate"}
)

// loosest is how much wider than its pin a hole may be: the lugs behind the charts had
// pins that fit, and another standard begins to take strength off here (judgement).
const loosest = 1.1

// inPlane says why the lug of a row is not covered unless the wire pulls in its plane.
func inPlane(r clauses.Row) error {
	return clauses.InPlane(r, "and the method is for a lug loaded in its plane")
}

// axial says why the lug of a row is not covered unless the wire pulls along it.
func axial(r clauses.Row) error {
	if err := inPlane(r); err != nil {
		return err
	}
	return clauses.Along(r, "and the clause is for a pull along the lug (9.8.13 is for one across it)")
}

// squareToPin says why the pin of a row is not covered unless the wire pulls square to it.
func squareToPin(r clauses.Row) error {
	return clauses.InPlane(r, "so it does not pull square to the pin")
}

// lugOf is the lug of a row. With the hole off the centre line the poorer side counts
// on both sides.
func lugOf(r clauses.Row) (strength.AirLug, error) {
	fit, err := strength.PinFit{Hole: r.Number("hole"), Pin: r.Number("pin_diameter")}.Reckon()
	if err != nil {
		return strength.AirLug{}, err
	}
	if fit.Ratio > loosest {
		return strength.AirLug{}, fmt.Errorf("the hole is %.3g times its pin, and the charts are of pins that fit: up to %g times", fit.Ratio, loosest)
	}
	return strength.AirLug{
		Thickness: r.Number("fitting.thickness"), Width: r.Number("fitting.width") - 2*math.Abs(r.Number("across")),
		Hole: r.Number("hole"), End: r.Number("end"), Ultimate: r.Number("fitting.metal.ultimate"),
	}, nil
}
