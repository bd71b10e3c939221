package aisc360

import (
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// d51shear is section D5.1(b): the pin shears out of the plate's end.
//
// Equation:
//
//	Pn = 0.6 Fu Asf;   Asf = 2 t (a + d/2)              (D5-2)
//
// Symbols: t thickness, a from the hole's edge to the end, d pin, mm; Fu of the plate,
// MPa; result N, nominal: for the wire's break load. The specification divides it by
// 2.00 (ASD) or multiplies it by 0.75 (LRFD).
//
// Holds for a steel plate pulled along its length, the hole midway between its edges.
// It is more hopeful than other methods, which take the planes beside the pin.
//
// Source: after AISC 360, 2010, D5.1, and its Design Example D.7 (published).
func d51shear() clauses.Clause {
	return clauses.Clause{
		Clause: "D5.1(b)",
		Covers: "shear on the effective area beyond the pin of a plate pulled along its length",
		Kind:   "landing",
		Reads:  plateReads(),
		Facts: []clauses.Fact{
			plateFact("plate_shear", "N", "nominal load at which the pin shears out of the plate's end, for the wire's break load",
				func(r strength.AISCPinPlateResult) float64 { return r.Shear }, "a", "Pv"),
		},
	}
}
