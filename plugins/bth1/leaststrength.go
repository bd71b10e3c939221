package bth1

import (
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// leastStrength is the strength of the plate in the region of its pin hole.
//
// Returns the least of the three strengths of the clause (plate), N.
//
// Equation:
//
//	Pu = min(Pt, Pb, Pv)
//
// Symbols: Pt, Pb and Pv as net_tension, single_plane and double_plane; result N.
//
// Holds where all three of them do. Load basis: nominal ultimate, to be held against
// the wire's break load.
//
// Source: after ASME BTH-1, 2005, 3-3.3.1, as a published calculation sheet goes on
// with the least of the three (published; the wording of the clause is memory).
// Errors: those of the three.
func leastStrength() clauses.Clause {
	return clauses.Clause{
		Clause: "3-3.3.1",
		Covers: "the strength of the plate at its pin hole, the least of the three",
		Kind:   "landing",
		Reads:  reads,
		Facts: []clauses.Fact{{
			Name: "plate", Unit: "N", From: from,
			Meaning: "load at which the plate breaks at its pin hole, the least of the three ways: nominal ultimate, design factor 1, the 1.20 kept; to be held against the wire's break load",
			Reckon: func(r clauses.Row) (clauses.Result, error) {
				return weaker(r, func(p strength.PinPlateResult) float64 { return p.Ultimate }, "3-3.3.1", "be", "a", "beff", "Cr", "phi", "Z'", "Av", "Pt", "Pb", "Pv", "Pu")
			},
		}},
	}
}
