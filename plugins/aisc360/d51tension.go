package aisc360

import (
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// d51tension is section D5.1(a): a plate tears across its pin hole.
//
// Equation:
//
//	Pn = Fu 2 t be;   be = min(2 t + 16 mm, b)          (D5-1)
//
// Symbols: t thickness, b from the hole's edge to the side, mm; Fu of the plate, MPa;
// result N, nominal: for the wire's break load. The specification divides it by 2.00
// (ASD) or multiplies it by 0.75 (LRFD).
//
// Holds for a steel plate pulled along its length, the hole midway between its edges.
// In a plate as thin as a boat's be is b nearly always.
//
// Source: after AISC 360, 2010, D5.1, and its Design Example D.7 (published).
func d51tension() clauses.Clause {
	return clauses.Clause{
		Clause: "D5.1(a)",
		Covers: "tension on the effective net area beside the pin hole of a plate pulled along its length",
		Kind:   "landing",
		Reads:  plateReads(),
		Facts: []clauses.Fact{
			plateFact("plate_tension", "N", "nominal load at which the plate tears across its pin hole, for the wire's break load",
				func(r strength.AISCPinPlateResult) float64 { return r.Tension }, "be", "Pt"),
		},
	}
}
