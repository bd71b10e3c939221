package bth1

import (
	"testing"

	"chainwale/plugins/clauses"
	"chainwale/plugins/clauses/clausetest"
)

// TestOrdinaryPlates: a standard that refuses sound boats is worth nothing. Of nine
// ordinary plates the rules mend one alone, B3, a lower shroud's plate that is known to
// be slight; none of them is weaker than its wire.
func TestOrdinaryPlates(t *testing.T) {
	s := theStandard(t)
	plate := map[string]float64{"A1": 1.61, "A2": 1.37, "B1": 1.45, "B2": 1.68, "B3": 1.12, "H-316": 1.79, "H-304": 1.50, "C1": 1.43, "C2": 2.42}
	for _, p := range clausetest.OrdinaryPlates(t) {
		a := clausetest.Landing(t, s, p.Facts.Only(t, clauses.Names(reads)...))
		clausetest.Near(t, p.ID+" over its wire", a.Fact("plate")/p.Break, plate[p.ID], 0.006)
		work := p.Break / 2.5
		for _, name := range []string{"net_tension", "single_plane", "double_plane"} {
			if a.Fact(name) < p.Break {
				t.Errorf("%s: %s stops at %.2f times the wire", p.ID, name, a.Fact(name)/p.Break)
			}
			if p.ID != "B3" && a.Fact(name) < 3*work {
				t.Errorf("%s: %s is mended at %.2f times the wire", p.ID, name, a.Fact(name)/p.Break)
			}
		}
		if a.Fact("plate") < 3*work != (p.ID == "B3") {
			t.Errorf("%s: %.2f times the wire", p.ID, a.Fact("plate")/p.Break)
		}
		if a.Fact("bearing") < work || a.Fact("hole_over_pin") > 1.1 {
			t.Errorf("%s: bearing %.2f times work, hole %.3f times its pin", p.ID, a.Fact("bearing")/work, a.Fact("hole_over_pin"))
		}
	}
}
