package bth1

import (
	"chainwale/engine/standard"
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// bearing is the pressure of the pin on its hole.
//
// Returns the load at which the hole begins to grow under its pin (bearing), N.
//
// Equation, with a design factor Nd of 1:
//
//	Pp = 1.25 Fy/Nd * Dp t
//
// Symbols: thickness t, pin Dp, mm; yield Fy of the plate, MPa; result N.
//
// Holds for a pin that does not turn under load many times, pulled square to its length,
// or within 2 deg of it (judgement). It is a limit of yield: to be held against the load
// at work and never against the wire's break load.
//
// Source: after ASME BTH-1, 2005, 3-3.3.4, in a published calculation sheet
// (published; the number of the clause is memory). Errors: a size or a strength that
// can't be; a wire that leans farther out of the plate's plane.
func bearing() clauses.Clause {
	return clauses.Clause{
		Clause: "3-3.3.4",
		Covers: "bearing of a pin that does not turn under load",
		Kind:   "landing",
		Reads: []standard.Read{
			clauses.Number("pin_diameter", "mm"),
			clauses.Number("lean_out", "deg"),
			clauses.Number("fitting.thickness", "mm"),
			clauses.Number("fitting.metal.yield", "MPa"),
		},
		Facts: []clauses.Fact{{
			Name: "bearing", Unit: "N", Bears: true,
			From:    []string{"pin_diameter", "lean_out", "fitting.thickness", "fitting.metal.yield"},
			Meaning: "load at which the pin hole begins to grow: a limit of yield with a design factor of 1, to be held against the load at work and never against the wire's break load",
			Reckon: func(r clauses.Row) (clauses.Result, error) {
				if err := clauses.InPlane(r, "so it does not pull square to the pin"); err != nil {
					return clauses.Result{}, err
				}
				b, err := strength.Bearing{Thickness: r.Number("fitting.thickness"), Pin: r.Number("pin_diameter"), Yield: r.Number("fitting.metal.yield")}.Reckon()
				if err != nil {
					return clauses.Result{}, err
				}
				return clauses.Result{Value: b.BTH, Working: func() []working.Step { return cited(b, "3-3.3.4", []string{"Fb,BTH"}) }}, nil
			},
		}},
	}
}
