package aisc360

import (
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// d51yield is section D5.1(d), which sends to D2: the whole plate yields.
//
// Equation:
//
//	Pn = Fy Ag;   Ag = w t                              (D2-1)
//
// Symbols: w width, t thickness, mm; Fy of the plate, MPa; result N, nominal and a
// limit of yield: for the wire's load at work, never its break load. The specification
// divides it by 1.67 (ASD) or multiplies it by 0.90 (LRFD).
//
// Holds for a steel plate pulled along its length, of one width.
//
// Source: after AISC 360, 2010, D2, and its Design Example D.7 (published).
func d51yield() clauses.Clause {
	return clauses.Clause{
		Clause: "D5.1(d)",
		Covers: "yielding of the gross section, after D2",
		Kind:   "landing",
		Reads:  plateReads(),
		Facts: []clauses.Fact{
			plateFact("gross_yield", "N", "nominal load at which the whole plate yields, for the load at work",
				func(r strength.AISCPinPlateResult) float64 { return r.GrossYield }, "Py"),
		},
	}
}
