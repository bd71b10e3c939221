package aisc360

import (
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// play is how much wider than its pin a hole may be where parts move under full
// load, mm.
const play = 1.0

// d52 is section D5.2: how the plate has to be cut round its pin hole.
//
// Equation:
//
//	a >= 1.33 be;   w >= 2 be + d;   hole <= d + 1 mm;   the hole midway
//
// Symbols: a from the hole's edge to the end, be = min(2 t + 16 mm, b), w width, d pin,
// mm. No load is in it.
//
// Holds for a steel plate pulled along its length. A round end about the hole's centre
// always falls short of a, by a quarter: after the section more metal is asked for beyond
// the hole than beside it.
//
// Source: after AISC 360, 2010, D5.2, and its Design Example D.7 (published; the 1 mm
// memory, where the example has 1/32 in).
func d52() clauses.Clause {
	hole := leans(clauses.Number("pin_diameter", "mm"))
	return clauses.Clause{
		Clause: "D5.2",
		Covers: "metal beyond the pin hole, width, and play of the pin; whether corners are cut off at 45 deg is not looked at",
		Kind:   "landing",
		Reads:  plateReads(),
		Facts: []clauses.Fact{
			plateFact("end_has", "mm", "metal beyond the pin hole, from its edge to the end", func(r strength.AISCPinPlateResult) float64 { return r.EndHas }, "a"),
			plateFact("end_needed", "mm", "metal that is asked for beyond the pin hole after this section, whatever the load", func(r strength.AISCPinPlateResult) float64 { return r.EndNeeded }, "be", "a,min"),
			plateFact("width_needed", "mm", "width that is asked for at the pin hole after this section, whatever the load", func(r strength.AISCPinPlateResult) float64 { return r.WidthNeeded }, "be", "w,min"),
			{Name: "hole_most", Unit: "mm", Meaning: "widest hole after this section for a pin that moves under full load", From: clauses.Names(hole), Reckon: clauses.By(reckonPlay, func(p widest) float64 { return p.hole })},
		},
	}
}

// widest is the widest hole for a pin, mm.
type widest struct{ pin, hole float64 }

func reckonPlay(r clauses.Row) (widest, error) {
	pin := r.Number("pin_diameter")
	return widest{pin, pin + play}, pulledAlong(r)
}

// Working writes the calculation down.
func (w widest) Working() []working.Step {
	return []working.Step{{Symbol: "hole,max", Meaning: "widest hole for the pin", Formula: "d + 1 mm", Inputs: clauses.Inputs("d", w.pin, "mm"), Value: w.hole, Unit: "mm",
		Source: after("D5.2", working.Memory, "1 mm; Design Example D.7 has 1/32 in")}}
}
