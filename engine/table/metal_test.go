package table

import (
	"math"
	"testing"
)

// TestMetalsAreValid runs the range checks that any metal of the table must pass.
func TestMetalsAreValid(t *testing.T) {
	all := must(Metals())(t)
	if len(all) != 39 {
		t.Errorf("the table has %d metals, not 39", len(all))
	}
	for _, m := range all {
		if !(m.Yield < m.Ultimate) {
			t.Errorf("%s: yield %g is not below ultimate %g", m.Name, m.Yield, m.Ultimate)
		}
		if m.UltimateMax < m.Ultimate {
			t.Errorf("%s: upper ultimate %g is below the minimum %g", m.Name, m.UltimateMax, m.Ultimate)
		}
		if m.Density < 2600 || m.Density > 9000 {
			t.Errorf("%s: density %g", m.Name, m.Density)
		}
		if r := m.Modulus / m.Density; r < 12 || r > 28 {
			t.Errorf("%s: modulus over density %.1f", m.Name, r)
		}
		if m.Stainless() != !math.IsNaN(m.CrMin) || m.Stainless() != !math.IsNaN(m.CarbonMax) {
			t.Errorf("%s: chemistry belongs to stainless and to nothing else", m.Name)
		}
		if m.CrMin > m.CrMax || m.MoMin > m.MoMax || m.NMin > m.NMax || m.NiMin > m.NiMax {
			t.Errorf("%s: a least share is above the greatest", m.Name)
		}
		if _, err := Galvanic(m.Galvanic); err != nil {
			t.Errorf("%s: %v", m.Name, err)
		}
	}
}

// TestFamilyGivesItsWeakest holds that what a name without a standard gives is
// no stronger and pits no later than any metal the name may mean.
func TestFamilyGivesItsWeakest(t *testing.T) {
	table := must(metals())(t)
	for _, name := range table.names.shown {
		got := must(MetalNamed(name))(t)
		candidates := must(table.names.find(name))(t)
		for _, i := range candidates {
			m := table.rows[i]
			if m.Yield < got.Yield || m.Ultimate < got.Ultimate {
				t.Errorf("%s gives %s %g/%g, but %s is %g/%g", name, got.Name, got.Yield, got.Ultimate, m.Name, m.Yield, m.Ultimate)
			}
			if m.Stainless() && m.CrMin+3.3*m.MoMin+16*m.NMin < got.CrMin+3.3*got.MoMin+16*got.NMin {
				t.Errorf("%s gives %s, but %s pits sooner", name, got.Name, m.Name)
			}
		}
	}
}

func TestMetalNamed(t *testing.T) {
	for _, c := range []struct {
		name, row       string
		yield, ultimate float64
	}{
		{"316L", "316L-A240", 170, 485},
		{"316l", "316L-A240", 170, 485},
		{"316 L", "316L-A240", 170, 485},
		{"316", "316-A240", 205, 515},
		{"A4", "316-A240", 205, 515},
		{"1.4404", "1.4404-P", 220, 520},
		{"316l_a240", "316L-A240", 170, 485},
		{"304", "304-A240", 205, 515},
		{"stainless steel", "304L-A240", 170, 485},
		{"2205", "S31803-A240", 450, 620},
		{"17-4 PH", "17-4PH-H1150", 725, 930},
		{"titanium", "Ti-Gr2", 275, 345},
		{"Titanium grade 5", "Ti-Gr5", 828, 895},
		{"bronze", "C65500-O60", 103, 359},
		{"silicon_bronze", "C65500-O60", 103, 359},
		{"NAB", "C95800-sand", 240, 585},
		{"naval brass", "C46400-M30", 138, 359},
		{"aluminium", "5086-H116", 195, 275},
		{"galvanised steel", "S235JR", 235, 360},
	} {
		m := must(MetalNamed(c.name))(t)
		if m.Name != c.row || m.Yield != c.yield || m.Ultimate != c.ultimate {
			t.Errorf("%s gave %s %g/%g, want %s %g/%g", c.name, m.Name, m.Yield, m.Ultimate, c.row, c.yield, c.ultimate)
		}
	}
}

func TestMetalForThicknessAndWeld(t *testing.T) {
	for _, c := range []struct {
		name      string
		thickness float64
		welded    bool
		row       string
	}{
		{"6082", 5, false, "6082-T6"},
		{"6082", 10, false, "6082-T6-12"},
		{"316L", 10, true, "316L-A240"},
		{"5083", 10, true, "5083-H116-weld"},
		{"6061", 8, true, "6061-T6-weld-thin"},
		{"6061", 12, true, "6061-T6-weld-thick"},
		{"C65500-H04bar", 10, true, "C65500-O60"},
		{"1.4401", 12, false, "1.4401-P"},
	} {
		if m := must(MetalFor(c.name, c.thickness, c.welded))(t); m.Name != c.row {
			t.Errorf("%s, %g mm, welded %v gave %s, want %s", c.name, c.thickness, c.welded, m.Name, c.row)
		}
	}
}

// TestWeldNeverGains holds that a weld adds no strength.
func TestWeldNeverGains(t *testing.T) {
	for _, name := range must(MetalNames())(t) {
		plain := must(MetalNamed(name))(t)
		if welded, err := MetalFor(name, 0, true); err == nil && (welded.Yield > plain.Yield || welded.Ultimate > plain.Ultimate) {
			t.Errorf("%s is stronger welded: %g/%g over %g/%g", name, welded.Yield, welded.Ultimate, plain.Yield, plain.Ultimate)
		}
	}
}

func TestMetalRefuses(t *testing.T) {
	for _, c := range []struct {
		name      string
		thickness float64
		welded    bool
	}{
		{"unobtainium", 0, false},
		{"", 0, false},
		{"5083", 40, false},
		{"17-4PH", 0, true},
		{"6082", 5, true},
		{"316L", -1, false},
		{"316L", math.NaN(), false},
		{"316L", math.Inf(1), false},
	} {
		if m, err := MetalFor(c.name, c.thickness, c.welded); err == nil {
			t.Errorf("%q, %g mm, welded %v gave %s", c.name, c.thickness, c.welded, m.Name)
		}
	}
}
