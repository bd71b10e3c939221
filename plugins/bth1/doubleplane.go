package bth1

import (
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// doublePlane is the shear strength beyond the pin hole on the two planes beside the pin.
//
// Returns the load at which the pin shears out of the plate (double_plane), N.
//
// Equation, with a design factor Nd of 1:
//
//	Pv  = 0.70 Fu/(1.20 Nd) * Av
//	Av  = 2 (a - Z' + Dp/2 (1 - cos phi)) t,  phi = 55 Dp/Dh deg
//	Z'  = r - sqrt(r^2 - (Dp/2 sin phi)^2)
//
// Symbols: a from hole edge to the plate's end along the load, Z' what a round end of
// radius r falls away by at the planes, hole Dh, pin Dp, thickness t, mm; ultimate Fu,
// MPa; Av mm2; result N.
//
// Holds for a flat plate loaded in its own plane, or within 2 deg of it (judgement). The
// end counts as round with half the plate's width, for no fact says what it is. Load
// basis: nominal ultimate, to be held against the wire's break load.
//
// Source: after ASME BTH-1, 2005, 3-3.3.1, equations 3-49 to 3-51, and its commentary,
// C3-2, in a published calculation sheet (published; the wording of the clause is
// memory). Errors: sizes or strengths that can't be, a pin larger than its hole, a
// hole that breaks out, an end that leaves no metal beyond the pin, a wire more than
// 45 degrees off the plate in its plane, or 2 out of it.
func doublePlane() clauses.Clause {
	return clauses.Clause{
		Clause: "3-3.3.1, equations 3-49 to 3-51",
		Covers: "shear on two planes beyond the pin hole, before an end that counts as round",
		Kind:   "landing",
		Reads:  reads,
		Facts: []clauses.Fact{{
			Name: "double_plane", Unit: "N", Bears: true, From: from,
			Meaning: "load at which the pin shears out of the plate's end on two planes: nominal ultimate, design factor 1, the 1.20 kept; to be held against the wire's break load",
			Reckon: func(r clauses.Row) (clauses.Result, error) {
				return weaker(r, func(p strength.PinPlateResult) float64 { return p.DoublePlane }, "3-3.3.1, equations 3-49 to 3-51, and C3-2", "a", "phi", "Z'", "Av", "Pv")
			},
		}},
	}
}
