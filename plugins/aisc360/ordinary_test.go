package aisc360

import (
	"testing"

	"chainwale/plugins/clauses/clausetest"
)

// TestOrdinaryPlates: of nine plates that have stood for decades all outlast their wire
// by the nominal strengths, and all fall short of the metal that D5.2 asks for beyond
// the hole, by the ratios that were reckoned when the limits of the project were set.
func TestOrdinaryPlates(t *testing.T) {
	strength := map[string]float64{"A1": 2.16, "A2": 1.95, "B1": 1.96, "B2": 2.40, "B3": 1.60, "H-316": 2.19, "H-304": 1.84, "C1": 2.03, "C2": 3.22}
	metal := map[string]float64{"A1": .75, "A2": .75, "B1": .75, "B2": .75, "B3": .75, "H-316": .97, "H-304": .97, "C1": .75, "C2": .86}
	for _, p := range clausetest.OrdinaryPlates(t) {
		facts := p.Facts.Only(t, "hole", "end", "across", "pin_diameter", "lean_in", "fitting.thickness", "fitting.width", "fitting.metal.yield", "fitting.metal.ultimate", "fitting.metal.family", "pin_yield")
		a := clausetest.Ask(t, book(t), "landing", facts.With(clausetest.Facts{"lean_out": 0.0, "pin_family": "stainless"}))
		if len(a.Refused) > 0 {
			t.Errorf("%s: %v", p.ID, a.Refused)
		}
		clausetest.Near(t, p.ID+": strength over the wire", min(a.Known["plate_tension"], a.Known["plate_shear"])/p.Break, strength[p.ID], 0.006)
		clausetest.Near(t, p.ID+": metal beyond the hole over what is asked for", a.Known["end_has"]/a.Known["end_needed"], metal[p.ID], 0.01)
		if work := p.Break / 2.5; a.Known["gross_yield"] < work || a.Known["pin_bearing"] < work {
			t.Errorf("%s yields at work: gross at %.2f, in bearing at %.2f times it", p.ID, a.Known["gross_yield"]/work, a.Known["pin_bearing"]/work)
		}
	}
}
