package en1993

import (
	"math"

	"chainwale/engine/standard"
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// table39 is table 3.9: how much metal a plate needs round its pin hole.
//
// Equation, for a plate of given thickness (type A) and of given outline (type B):
//
//	a >= F gM0/(2 t fy) + 2 d0/3      beyond the hole, from its edge to the end
//	c >= F gM0/(2 t fy) + d0/3        beside the hole, from its edge to the side
//	t >= 0.7 sqrt(F gM0/fy)           type B, whose outline is fixed by the hole
//
// and turned round, the design loads that a and c come to:
//
//	Fa = (a - 2 d0/3) 2 t fy/gM0;   Fc = (c - d0/3) 2 t fy/gM0
//
// Symbols: a, c, t (thickness), d0 (hole), mm; F, the design load, N: 1.5 times the
// wire's load at work; fy of the plate, MPa; gM0, 1.00, of stainless 1.10.
//
// Holds for a plate of steel pulled along its length; a hole off the centre line
// counts with the smaller side on both sides. Type B is told and not judged: it asks
// for an outline of its own.
//
// Source: after EN 1993-1-8:2005, 3.13.2, table 3.9 (published); gM0 after EN 1993-1-4
// (memory); the load factor is this project's (judgement).
func table39() clauses.Clause {
	reads := []standard.Read{
		clauses.Number("fitting.thickness", "mm"), clauses.Number("fitting.width", "mm"), clauses.Number("hole", "mm"), clauses.Number("end", "mm"),
		clauses.Number("across", "mm"), clauses.Number("fitting.metal.yield", "MPa"), clauses.Word("fitting.metal.family"),
		clauses.Number("lean_in", "deg"), clauses.Number("lean_out", "deg"), clauses.Number("stay.working_load", "N"),
	}
	from := clauses.Names(reads)
	without := from[:len(from)-1] // what the plate comes to does not ask for the load
	fact := func(name, unit, meaning string, from []string, value func(plateAtPin) float64, symbols ...string) clauses.Fact {
		return clauses.Fact{Name: name, Unit: unit, Meaning: meaning, From: from, Bears: unit == "N", Reckon: clauses.By(reckonPlateAtPin, value, symbols...)}
	}
	return clauses.Clause{
		Clause: "3.13.2, table 3.9",
		Covers: "metal beyond and beside the pin hole of a steel plate pulled along its length, after type A; the thickness of type B is told and not judged",
		Kind:   "landing",
		Reads:  reads,
		Facts: []clauses.Fact{
			fact("end_has", "mm", "metal beyond the pin hole, from its edge to the end", without, func(r plateAtPin) float64 { return r.EndHas }, "a"),
			fact("end_needed", "mm", "metal that is asked for beyond the pin hole after type A under the design load, 1.5 times the load at work", from, func(r plateAtPin) float64 { return r.EndNeeded }, "F", "a,min"),
			fact("side_has", "mm", "metal beside the pin hole, from its edge to the nearer side", without, func(r plateAtPin) float64 { return r.SideHas }, "c"),
			fact("side_needed", "mm", "metal that is asked for beside the pin hole after type A under the design load, 1.5 times the load at work", from, func(r plateAtPin) float64 { return r.SideNeeded }, "F", "c,min"),
			fact("end_load", "N", "design load that the metal beyond the pin hole comes to after type A, for 1.5 times the load at work", without, func(r plateAtPin) float64 { return r.LoadByEnd }, "a", "Fa"),
			fact("side_load", "N", "design load that the metal beside the pin hole comes to after type A, for 1.5 times the load at work", without, func(r plateAtPin) float64 { return r.LoadBySide }, "c", "Fc"),
			fact("thickness_needed", "mm", "thickness that is asked for after type B under the design load, 1.5 times the load at work", from, func(r plateAtPin) float64 { return r.ThicknessNeeded }, "F", "t,min"),
		},
	}
}

// plateAtPin is the plate at its pin, with what the formula does not show.
type plateAtPin struct {
	strength.ENPinPlateResult
	end, width, hole, across, atWork float64
}

func reckonPlateAtPin(r clauses.Row) (plateAtPin, error) {
	if err := along(r); err != nil {
		return plateAtPin{}, err
	}
	p := plateAtPin{end: r.Number("end"), width: r.Number("fitting.width"), hole: r.Number("hole"), across: math.Abs(r.Number("across")), atWork: r.Number("stay.working_load")}
	var err error
	p.ENPinPlateResult, err = strength.ENPinPlate{
		// A plate as wide as twice its narrower half has the narrower side on both sides.
		Thickness: r.Number("fitting.thickness"), Width: p.width - 2*p.across, Hole: p.hole, End: p.end,
		Force: loadFactor * p.atWork, Yield: r.Number("fitting.metal.yield"), GammaM0: gammaM0(r.Word("fitting.metal.family")),
	}.Reckon()
	return p, err
}

// Working writes the calculation down.
func (p plateAtPin) Working() []working.Step {
	statics := working.Source{Title: "geometry", As: working.Computed, For: "the form of the equation"}
	first := []working.Step{
		{Symbol: "F", Meaning: "design load", Formula: "1.5 * load at work", Inputs: clauses.Inputs("load at work", p.atWork, "N"), Value: loadFactor * p.atWork, Unit: "N", Source: loads},
		{Symbol: "a", Meaning: "metal beyond the hole", Formula: "end - d0/2", Inputs: clauses.Inputs("end", p.end, "mm", "d0", p.hole, "mm"), Value: p.EndHas, Unit: "mm", Source: statics},
		{Symbol: "c", Meaning: "metal beside the hole, at the nearer side", Formula: "w/2 - |across| - d0/2", Inputs: clauses.Inputs("w", p.width, "mm", "across", p.across, "mm", "d0", p.hole, "mm"), Value: p.SideHas, Unit: "mm", Source: statics},
	}
	return append(first, p.ENPinPlateResult.Working()...)
}
