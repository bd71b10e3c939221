package corrosion

import (
	"math"
	"testing"

	"chainwale/engine/table"
)

func TestPittingResistance(t *testing.T) {
	for _, c := range []struct {
		name         string
		cr, mo, n, w float64
		want         float64
	}{
		{"304 least", 18, 0, 0, 0, 18.00},
		{"316 least", 16, 2, 0, 0, 22.60},
		{"316 greatest", 18, 3, 0.10, 0, 29.50},
		{"1.4404 greatest", 18.5, 2.5, 0.11, 0, 28.51},
		{"S32205 least", 22, 3, 0.14, 0, 34.14},
		{"S31254 least", 19.5, 6, 0.18, 0, 42.18},
		{"with tungsten", 25, 3.5, 0.25, 0.7, 41.705},
	} {
		r, err := PittingResistance{Chromium: c.cr, Molybdenum: c.mo, Nitrogen: c.n, Tungsten: c.w}.Reckon()
		if err != nil || math.Abs(r.PREN-c.want) > 0.0051 {
			t.Errorf("%s: %g, want %g, %v", c.name, r.PREN, c.want, err)
		}
	}
}

// TestPittingOf takes the least chemistry of the table, and refuses what is no stainless.
func TestPittingOf(t *testing.T) {
	for name, want := range map[string]float64{"316L": 22.6, "304": 17.5, "2205": 30.53, "17-4PH": 15, "1.4404": 23.1, "6Mo": 42.18} {
		m, err := table.MetalNamed(name)
		if err != nil {
			t.Fatal(err)
		}
		r, err := PittingOf(m)
		if err != nil || math.Abs(r.PREN-want) > 1e-9 {
			t.Errorf("%s: %g, want %g, %v", name, r.PREN, want, err)
		}
		if steps := r.Working(); len(steps) != 4 || steps[3].Value != r.PREN || steps[0].Source.Title == "" {
			t.Errorf("%s: working %+v", name, steps)
		}
	}
	for _, name := range []string{"titanium", "bronze", "aluminium", "mild steel"} {
		m, _ := table.MetalNamed(name)
		if r, err := PittingOf(m); err == nil {
			t.Errorf("%s has a pitting resistance of %g", name, r.PREN)
		}
	}
}

func TestPittingRefuses(t *testing.T) {
	for _, bad := range []PittingResistance{{}, {Chromium: 5}, {Chromium: 99}, {Chromium: math.NaN()}, {Chromium: 17, Molybdenum: -1}, {Chromium: 17, Molybdenum: 21},
		{Chromium: 17, Nitrogen: 2}, {Chromium: 17, Nitrogen: math.NaN()}, {Chromium: 17, Tungsten: math.Inf(1)}, {Chromium: 0.17}} {
		if r, err := bad.Reckon(); err == nil {
			t.Errorf("%+v gave %g", bad, r.PREN)
		}
	}
}
