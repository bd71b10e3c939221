package en1993

import (
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// contact is equations 3.14 to 3.16: the stress between a pin that is to come out
// again and its wider hole.
//
// Equation:
//
//	sh = 0.591 sqrt(E Fser (d0 - d)/(d^2 t)) <= fh = 2.5 fy/gM6,ser
//
// Symbols: E, 200 000 MPa for stainless, else 210 000; Fser, the wire's load at work,
// N; d0 hole, d pin, t plate, mm; fy, the lower of pin and plate, MPa; gM6,ser 1.00.
//
// Holds for a pin and a plate of steel, pulled square to the pin.
//
// Source: after EN 1993-1-8:2005, 3.13.2, equations 3.14 to 3.16 (published); E after EN
// 1993-1-4 (memory).
func contact() clauses.Clause {
	reads := pinReads(clauses.Number("hole", "mm"), clauses.Number("fitting.thickness", "mm"), clauses.Number("fitting.metal.yield", "MPa"),
		clauses.Word("fitting.metal.family"), clauses.Number("pin_yield", "MPa"), clauses.Number("stay.working_load", "N"))
	from := clauses.Names(reads)
	return clauses.Clause{
		Clause: "3.13.2, equations 3.14 to 3.16",
		Covers: "the stress between a steel pin that is to come out again and its wider hole",
		Kind:   "landing",
		Reads:  reads,
		Facts: []clauses.Fact{
			{Name: "contact_stress", Unit: "MPa", From: from, Meaning: "stress between pin and hole under the load at work",
				Reckon: clauses.By(reckonContact, func(c strength.ENContactResult) float64 { return c.Stress }, "sh")},
			{Name: "contact_limit", Unit: "MPa", From: from, Meaning: "what the stress between pin and hole may be under the load at work, so that the pin comes out again",
				Reckon: clauses.By(reckonContact, func(c strength.ENContactResult) float64 { return c.Limit }, "fh")},
		},
	}
}

func reckonContact(r clauses.Row) (strength.ENContactResult, error) {
	err := square(r)
	if err == nil {
		err = clauses.Steel("the plate", r.Word("fitting.metal.family"))
	}
	if err != nil {
		return strength.ENContactResult{}, err
	}
	return strength.ENContact{
		Pin: r.Number("pin_diameter"), Hole: r.Number("hole"), Thickness: r.Number("fitting.thickness"), Service: r.Number("stay.working_load"),
		Yield: min(r.Number("pin_yield"), r.Number("fitting.metal.yield")), GammaM6: gammaM6,
		Modulus: max(modulus(r.Word("pin_family")), modulus(r.Word("fitting.metal.family"))),
	}.Reckon()
}
