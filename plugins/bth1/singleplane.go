package bth1

import (
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// singlePlane is the fracture strength beyond the pin hole on one plane along the load.
//
// Returns the load at which the plate splits beyond its hole (single_plane), N.
//
// Equation, with a design factor Nd of 1:
//
//	Pb = Cr Fu/(1.20 Nd) * (1.13 (R - Dh/2) + 0.92 be/(1 + be/Dh)) t
//	Cr = 1 for Dh/Dp <= 1.1, else 1 - 0.275 sqrt(1 - (Dp/Dh)^2)
//
// Symbols: R from hole centre to the plate's end along the load, hole Dh, pin Dp, be
// from hole edge to plate edge at right angles to the load, thickness t, mm; ultimate
// Fu, MPa; result N.
//
// Holds for a flat plate loaded in its own plane, or within 2 deg of it (judgement). Load
// basis: nominal ultimate, to be held against the wire's break load.
//
// Source: after ASME BTH-1, 2005, 3-3.3.1, equation 3-48, in a published calculation
// sheet (published; the wording of the clause is memory). Errors: sizes or strengths
// that can't be, a pin larger than its hole, a hole that breaks out, a wire more than
// 45 degrees off the plate in its plane, or 2 out of it.
func singlePlane() clauses.Clause {
	return clauses.Clause{
		Clause: "3-3.3.1, equation 3-48",
		Covers: "fracture on a single plane beyond the pin hole",
		Kind:   "landing",
		Reads:  reads,
		Facts: []clauses.Fact{{
			Name: "single_plane", Unit: "N", Bears: true, From: from,
			Meaning: "load at which the plate splits beyond its pin hole on one plane along the wire: nominal ultimate, design factor 1, the 1.20 kept; to be held against the wire's break load",
			Reckon: func(r clauses.Row) (clauses.Result, error) {
				return weaker(r, func(p strength.PinPlateResult) float64 { return p.SinglePlane }, "3-3.3.1, equation 3-48", "be", "a", "Cr", "Pb")
			},
		}},
	}
}
