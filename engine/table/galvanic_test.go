package table

import "testing"

func TestGalvanicSeriesIsValid(t *testing.T) {
	all := must(GalvanicSeries())(t)
	if len(all) != 32 {
		t.Errorf("the series has %d rows, not 32", len(all))
	}
	active, passive := map[string]bool{}, map[string]bool{}
	for _, g := range all {
		if !(g.Low < g.High) || g.Low < -1.7 || g.High > 0.4 {
			t.Errorf("%s: %g to %g V", g, g.Low, g.High)
		}
		switch g.State {
		case "active":
			active[g.Name] = true
		case "passive":
			passive[g.Name] = true
		case "":
		default:
			t.Errorf("%s: state %q", g.Name, g.State)
		}
	}
	for name := range active {
		if !passive[name] {
			t.Errorf("%s has an active row and no passive one", name)
		}
	}
}

func TestGalvanic(t *testing.T) {
	for _, c := range []struct {
		name string
		want []string
	}{
		{"316L", []string{"316 (active)", "316 (passive)"}},
		{"316 active", []string{"316 (active)"}},
		{"ss316_passive", []string{"316 (passive)"}},
		{"aluminium_5xxx_6xxx", []string{"aluminium"}},
		{"silicon bronze", []string{"silicon bronze"}},
		{"galvanised steel", []string{"zinc"}},
		{"bronze", []string{"silicon bronze", "tin bronze", "manganese bronze", "aluminium bronze"}},
		{"titanium grade 2", []string{"titanium"}},
	} {
		rows := must(Galvanic(c.name))(t)
		if len(rows) != len(c.want) {
			t.Errorf("%s gave %v, want %v", c.name, rows, c.want)
			continue
		}
		for i, g := range rows {
			if g.String() != c.want[i] {
				t.Errorf("%s gave %v, want %v", c.name, rows, c.want)
			}
		}
	}
	if _, err := Galvanic("wood"); err == nil {
		t.Error("wood was found in the galvanic series")
	}
}
