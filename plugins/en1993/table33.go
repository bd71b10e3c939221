package en1993

import (
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// table33 is table 3.3: the least distances of a bolt hole.
//
// Equation:
//
//	e1 >= 1.2 d0;  e2 >= 1.2 d0;  p1 >= 2.2 d0
//
// Symbols: e1, from the hole's centre to the end; e2, to the side; p1, to the next
// bolt along the load; d0, the hole; all mm. No load is in it.
//
// Holds for round holes in one line along the load. The greatest distances, which
// guard against gaps and buckling, are left out.
//
// Source: after EN 1993-1-8:2005, 3.5, table 3.3 (published).
func table33() clauses.Clause {
	reads := holeReads()
	fact := func(name, meaning, symbol string, times float64, formula string) clauses.Fact {
		return clauses.Fact{Name: name, Unit: "mm", Meaning: meaning, From: clauses.Names(reads), Reckon: clauses.By(func(r clauses.Row) (least, error) {
			return least{symbol: symbol, meaning: meaning, formula: formula, hole: r.Number("hole"), value: times * r.Number("hole")}, nil
		}, func(l least) float64 { return l.value })}
	}
	return clauses.Clause{
		Clause: "3.5, table 3.3",
		Covers: "the least distances of a bolt hole to end, side and next hole along the load",
		Kind:   "bolt_hole",
		Reads:  reads,
		Facts: []clauses.Fact{
			fact("end_needed", "least distance from the centre of a bolt hole to the plate's end", "e1,min", 1.2, "1.2 d0"),
			fact("side_needed", "least distance from the centre of a bolt hole to the plate's side", "e2,min", 1.2, "1.2 d0"),
			fact("pitch_needed", "least distance from bolt to bolt along the load", "p1,min", 2.2, "2.2 d0"),
		},
	}
}

// least is a least distance, mm.
type least struct {
	symbol, meaning, formula string
	hole, value              float64
}

// Working writes the calculation down.
func (l least) Working() []working.Step {
	return []working.Step{{Symbol: l.symbol, Meaning: l.meaning, Formula: l.formula, Inputs: clauses.Inputs("d0", l.hole, "mm"), Value: l.value, Unit: "mm",
		Source: after("3.5, table 3.3", working.Published, "the form of the equation")}}
}
