package aisc360

import (
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// j7 is section J7, to which D5.1(c) sends: pin and plate bear on each other.
//
// Equation:
//
//	Rn = 1.8 Fy Apb;   Apb = d t                        (J7-1)
//
// Symbols: d pin, t thickness, mm; Fy, the lower of plate and pin, MPa; result N,
// nominal and a limit of yield: for the wire's load at work, never its break load. The
// specification divides it by 2.00 (ASD) or multiplies it by 0.75 (LRFD).
//
// Holds for a steel pin in a fitted hole of a steel plate pulled along its length.
//
// Source: after AISC 360, 2010, J7, and its Design Example D.7 (published); that the
// weaker of plate and pin counts is on the safe side (judgement).
func j7() clauses.Clause {
	reads := leans(clauses.Number("fitting.thickness", "mm"), clauses.Number("pin_diameter", "mm"), clauses.Number("fitting.metal.yield", "MPa"), clauses.Number("pin_yield", "MPa"), clauses.Word("pin_family"))
	return clauses.Clause{
		Clause: "J7",
		Covers: "bearing of a pin in the hole of a steel plate, after D5.1(c)",
		Kind:   "landing",
		Reads:  reads,
		Facts: []clauses.Fact{{
			Name: "pin_bearing", Unit: "N", Bears: true, From: clauses.Names(reads),
			Meaning: "nominal load at which pin or plate yields where they bear on each other, for the load at work",
			Reckon:  clauses.By(reckonBearing, func(r strength.BearingResult) float64 { return r.AISC }, "Fb,AISC"),
		}},
	}
}

func reckonBearing(r clauses.Row) (strength.BearingResult, error) {
	err := pulledAlong(r)
	if err == nil {
		err = clauses.Steel("the pin", r.Word("pin_family"))
	}
	if err != nil {
		return strength.BearingResult{}, err
	}
	return strength.Bearing{Thickness: r.Number("fitting.thickness"), Pin: r.Number("pin_diameter"), Yield: min(r.Number("fitting.metal.yield"), r.Number("pin_yield"))}.Reckon()
}
