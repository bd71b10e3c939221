package en1993

import (
	"testing"

	"chainwale/plugins/clauses/clausetest"
)

// ordinary are the facts of an ordinary plate that this standard reads, the plate of
// carbon steel by name, so that no partial factor of stainless stands in the ratios.
func ordinary(t *testing.T, p clausetest.OrdinaryPlate) clausetest.Facts {
	t.Helper()
	facts := p.Facts.Only(t, "hole", "end", "across", "pin_diameter", "lean_in", "fitting.thickness", "fitting.width", "fitting.metal.yield", "fork_opening", "fork_cheek", "pin_yield", "pin_ultimate")
	return facts.With(clausetest.Facts{"lean_out": 0.0, "fitting.metal.family": "steel", "pin_family": "stainless", "stay.working_load": p.Break / 2.5})
}

// TestOrdinaryPlates: nine plates that have stood for decades all fall short of the
// metal that type A asks for, by the ratios that were reckoned when the limits of the
// project were set. That is why a standard's findings are to be watched unless the plan
// must meet it.
func TestOrdinaryPlates(t *testing.T) {
	geometry := map[string]float64{"A1": .74, "A2": .59, "B1": .67, "B2": .64, "B3": .52, "H-316": .81, "H-304": .74, "C1": .60, "C2": .99}
	for _, p := range clausetest.OrdinaryPlates(t) {
		a := clausetest.Ask(t, book(t), "landing", ordinary(t, p))
		if len(a.Refused) > 0 {
			t.Errorf("%s: %v", p.ID, a.Refused)
		}
		least := min(a.Known["end_has"]/a.Known["end_needed"], a.Known["side_has"]/a.Known["side_needed"])
		clausetest.Near(t, p.ID+": metal round the hole over what is needed", least, geometry[p.ID], 0.01)
		if least >= 1 {
			t.Errorf("%s meets type A", p.ID)
		}
		if work := p.Break / 2.5; a.Known["pin_shear"] < loadFactor*work {
			t.Errorf("%s: the pin is sheared at %.2f times the load at work", p.ID, a.Known["pin_shear"]/work)
		}
	}
}

// TestLoadsTellAsDistancesDo: the rules hold the load that the metal round the hole comes
// to against the design load, and their sentences name distances: both say the same.
func TestLoadsTellAsDistancesDo(t *testing.T) {
	enough, short := 0, 0
	for _, p := range clausetest.OrdinaryPlates(t) {
		for _, times := range []float64{0.05, 0.1, 0.2, 0.25, 0.3, 0.4, 0.999} {
			facts := ordinary(t, p).With(clausetest.Facts{"stay.working_load": p.Break * times})
			a := clausetest.Ask(t, book(t), "landing", facts).Known
			for _, side := range []string{"end", "side"} {
				byLoad, byDistance := a[side+"_load"] >= loadFactor*p.Break*times, a[side+"_has"] >= a[side+"_needed"]
				if byLoad != byDistance {
					t.Errorf("%s under %.3g of its wire, %s: %v by load, %v by distance", p.ID, times, side, byLoad, byDistance)
				}
				if byLoad {
					enough++
				} else {
					short++
				}
			}
			if load := a["end_load"]; load > 0 { // at the limit itself both are even
				even := clausetest.Ask(t, book(t), "landing", facts.With(clausetest.Facts{"stay.working_load": load / loadFactor})).Known
				clausetest.Near(t, p.ID+": metal at the limit", even["end_needed"], even["end_has"], 1e-12)
			}
		}
	}
	if enough == 0 || short == 0 {
		t.Errorf("%d plates have metal enough and %d too little: both should be among them", enough, short)
	}
}
