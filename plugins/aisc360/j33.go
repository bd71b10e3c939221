package aisc360

import (
	"chainwale/engine/standard"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// j33 is section J3.3: the least distance from bolt to bolt.
//
// Equation:
//
//	s >= 2 2/3 d
//
// Symbols: s from the centre of a hole to that of the next, d bolt, mm. No load is in it.
//
// Holds for standard holes.
//
// Source: after AISC 360, 2010, J3.3 (memory).
func j33() clauses.Clause {
	return clauses.Clause{
		Clause: "J3.3",
		Covers: "the least distance from bolt to bolt along the load",
		Kind:   "bolt_hole",
		Reads:  []standard.Read{clauses.Number("bolt_diameter", "mm")},
		Facts: []clauses.Fact{{
			Name: "pitch_needed", Unit: "mm", From: []string{"bolt_diameter"}, Meaning: "least distance from bolt to bolt",
			Reckon: clauses.By(func(r clauses.Row) (spacing, error) { return spacing(r.Number("bolt_diameter")), nil }, spacing.least),
		}},
	}
}

// spacing is the bolt's diameter, mm, as far as it asks for room.
type spacing float64

func (s spacing) least() float64 { return 8.0 / 3 * float64(s) }

// Working writes the calculation down.
func (s spacing) Working() []working.Step {
	return []working.Step{{Symbol: "s,min", Meaning: "least distance from bolt to bolt", Formula: "8/3 d", Inputs: clauses.Inputs("d", float64(s), "mm"), Value: s.least(), Unit: "mm",
		Source: after("J3.3", working.Memory, "2 2/3 bolt diameters")}}
}
