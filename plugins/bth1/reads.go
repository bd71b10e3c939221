package bth1

import (
	"math"

	"chainwale/engine/standard"
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// reads are what the strengths of the plate are worked out of.
var reads = []standard.Read{
	clauses.Number("hole", "mm"),
	clauses.Number("end", "mm"),
	clauses.Number("across", "mm"),
	clauses.Number("pin_diameter", "mm"),
	clauses.Number("lean_in", "deg"),
	clauses.Number("lean_out", "deg"),
	clauses.Number("fitting.thickness", "mm"),
	clauses.Number("fitting.width", "mm"),
	clauses.Number("fitting.metal.yield", "MPa"),
	clauses.Number("fitting.metal.ultimate", "MPa"),
}

// from are those that no strength can do without, which is all of them: a wire whose
// lean nobody has measured is not taken to be in line. fromPlate are those that tell of
// the plate and its pin alone.
var (
	from      = clauses.Names(reads)
	fromPlate = []string{"hole", "end", "across", "pin_diameter", "fitting.thickness", "fitting.width", "fitting.metal.yield", "fitting.metal.ultimate"}
)

// plateOf is the plate of a row, pulled along its length. Its end counts as round
// with half the width, for no fact says what it is: a square end has a little more
// metal on the shear planes.
func plateOf(r clauses.Row) strength.PinPlate {
	width := r.Number("fitting.width")
	return strength.PinPlate{
		Thickness: r.Number("fitting.thickness"), Width: width, Hole: r.Number("hole"), Pin: r.Number("pin_diameter"),
		End: r.Number("end"), EndRadius: width / 2, Across: r.Number("across"),
		Yield: r.Number("fitting.metal.yield"), Ultimate: r.Number("fitting.metal.ultimate"),
	}
}

// weaker reckons the plate twice, as it stands and as it is seen along the wire, and
// takes the lesser: the clause measures along the line of the load, and a lean of the
// wire, or a hole within the round of the end, never makes a plate stronger. A plate
// that is not loaded in its own plane is not covered.
func weaker(r clauses.Row, of func(strength.PinPlateResult) float64, clause string, symbols ...string) (clauses.Result, error) {
	if err := clauses.InPlane(r, "and the clause is for a plate loaded in its own plane"); err != nil {
		return clauses.Result{}, err
	}
	plate := plateOf(r)
	straight, err := plate.Reckon()
	if err != nil {
		return clauses.Result{}, err
	}
	seen, err := strength.ObliqueLoad{Plate: plate, Angle: r.Number("lean_in")}.Reckon()
	if err != nil {
		return clauses.Result{}, err
	}
	along, err := seen.As.Reckon()
	if err != nil {
		return clauses.Result{}, err
	}
	if of(along) < of(straight)*(1-1e-9) { // not for the last digit of a round end
		return clauses.Result{Value: of(along), Working: func() []working.Step {
			return append(seen.Working(), cited(along, clause, symbols)...)
		}}, nil
	}
	return clauses.Result{Value: of(straight), Working: func() []working.Step { return cited(straight, clause, symbols) }}, nil
}

// cited are the steps of a calculation with some symbols, those of the standard with
// the clause that they come from.
func cited(of clauses.Shown, clause string, symbols []string) []working.Step {
	steps := clauses.Steps(of, symbols...)
	for i, s := range steps {
		if s.Source.As == working.Published {
			steps[i].Source.Clause = clause
		}
	}
	return steps
}

// stepOf is the number of one of the plate's steps, none if there is no such step.
func stepOf(symbol string) func(strength.PinPlateResult) float64 {
	return func(p strength.PinPlateResult) float64 {
		for _, s := range p.Working() {
			if s.Symbol == symbol {
				return s.Value
			}
		}
		return math.NaN()
	}
}
