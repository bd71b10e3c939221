package corrosion

import (
	"math"
	"strings"
	"testing"

	"chainwale/engine/table"
)

// reckoned looks two metals up and gives the verdict.
func reckoned(t *testing.T, a, b string, e Exposure, change func(*Couple)) CoupleResult {
	t.Helper()
	c, err := CoupleOf(a, b, e)
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(&c)
	}
	r, err := c.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestCouple runs the couples of the trade, states and all named.
func TestCouple(t *testing.T) {
	for _, c := range []struct {
		a, b     string
		exposure Exposure
		d, worst float64
		anode    string
		verdict  Verdict
	}{
		{"316 passive", "titanium", Harsh, 55.0, 160, "316 (passive)", Compatible},
		{"316 passive", "aluminium", Harsh, 830.0, 1000, "aluminium", Incompatible},
		{"316 passive", "silicon bronze", Harsh, 220.0, 290, "silicon bronze", Conditional},
		{"316 active", "silicon bronze", Harsh, 165.0, 290, "316 (active)", Conditional},
		{"silicon bronze", "lead", Harsh, 50.0, 100, "silicon bronze", Compatible},
		{"silicon bronze", "nab", Harsh, 90.0, 150, "silicon bronze", Compatible},
		{"carbon fibre", "aluminium", Harsh, 1130.0, 1300, "aluminium", Incompatible},
		{"carbon fibre", "titanium", Harsh, 245.0, 350, "titanium", Conditional},
		{"zinc", "316 passive", Harsh, 955.0, 1030, "zinc", Incompatible},
		{"mild steel", "316 passive", Harsh, 610.0, 720, "mild steel", Incompatible},
		{"alloy 400", "316 passive", Harsh, 35.0, 140, "alloy 400", Compatible},
		{"304 passive", "316 passive", Harsh, 20.0, 100, "304 (passive)", Compatible},
		{"aluminium", "mild steel", Harsh, 220.0, 400, "aluminium", Conditional},
		{"316 passive", "316 active", Harsh, 385.0, 540, "316 (active)", Incompatible},
		{"316 passive", "silicon bronze", Normal, 220.0, 290, "silicon bronze", Compatible},
		{"316 passive", "naval brass", Harsh, 300.0, 400, "naval brass", Incompatible},
		{"carbon fibre", "316 passive", Harsh, 300.0, 400, "316 (passive)", Incompatible},
		{"316", "silicon bronze", SeaWater, 220.0, 290, "silicon bronze", Conditional},
	} {
		r := reckoned(t, c.a, c.b, c.exposure, nil)
		if math.Abs(r.Difference*1000-c.d) > 1e-9 || math.Abs(r.Worst*1000-c.worst) > 1e-9 || r.Anode != c.anode || r.Verdict != c.verdict {
			t.Errorf("%s on %s, %s: %+v", c.a, c.b, c.exposure, r)
		}
		turned := reckoned(t, c.b, c.a, c.exposure, nil)
		if turned.Difference != r.Difference || turned.Anode != r.Anode || turned.Verdict != r.Verdict {
			t.Errorf("%s on %s is not %s on %s", c.a, c.b, c.b, c.a)
		}
	}
}

// TestCoupleOnTheLimit: a difference that is exactly the limit is compatible.
func TestCoupleOnTheLimit(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		want      Verdict
	}{
		{-0.150, -0.150, Compatible},
		{-0.150, -0.149, Conditional},
		{-0.050, -0.050, Conditional},
		{-0.050, -0.049, Incompatible},
	} {
		r, err := Couple{
			A:        []table.GalvanicRow{{Name: "one", Low: -0.3, High: -0.3}},
			B:        []table.GalvanicRow{{Name: "other", Low: c.low, High: c.high}},
			Exposure: Harsh,
		}.Reckon()
		if err != nil || r.Verdict != c.want {
			t.Errorf("%g V apart: %s, want %s, %v", r.Difference, r.Verdict, c.want, err)
		}
	}
}

// TestCoupleByExposure holds the limit of each exposure, and that ranges which
// may lie further apart than the limit are told.
func TestCoupleByExposure(t *testing.T) {
	apart := func(d float64, e Exposure) CoupleResult {
		r, err := Couple{
			A:        []table.GalvanicRow{{Name: "one", Low: -0.8, High: -0.8}},
			B:        []table.GalvanicRow{{Name: "other", Low: -0.8 + d, High: -0.8 + d}},
			Exposure: e,
		}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	for exposure, limit := range map[Exposure]float64{Harsh: 0.15, SeaWater: 0.15, Normal: 0.25, Controlled: 0.50} {
		for d, want := range map[float64]Verdict{limit: Compatible, limit + 0.001: Conditional, limit + 0.1: Conditional, limit + 0.101: Incompatible} {
			if r := apart(d, exposure); r.Verdict != want || r.Limit != limit {
				t.Errorf("%s, %g V apart: %s under a limit of %g, want %s", exposure, d, r.Verdict, r.Limit, want)
			}
		}
	}
	if r := reckoned(t, "316 passive", "titanium", Harsh, nil); !r.OverLimit {
		t.Errorf("the ranges of passive 316 and titanium lie up to %g V apart", r.Worst)
	}
	for _, exposure := range []Exposure{Normal, Controlled} {
		if r := reckoned(t, "316 passive", "titanium", exposure, nil); r.OverLimit {
			t.Errorf("%s: the ranges lie within the limit", exposure)
		}
	}
	if r := reckoned(t, "316 passive", "aluminium", Harsh, nil); r.OverLimit {
		t.Error("told of the ranges although the means lie apart already")
	}
}

// TestHiddenCouple: the active state counts where the joint is hidden, and makes
// the verdict worse by one step at most.
func TestHiddenCouple(t *testing.T) {
	hidden := func(c *Couple) { c.Hidden = true }
	for _, c := range []struct {
		a, b         string
		open, hidden Verdict
		swaps        bool
	}{
		{"titanium", "A4", Compatible, Conditional, false},
		{"2205", "A4", Compatible, Conditional, false},
		{"316", "316L", Compatible, Compatible, false},
		{"316", "silicon bronze", Compatible, Compatible, true},
		{"316", "aluminium", Incompatible, Incompatible, false},
		{"316", "carbon fibre", Conditional, Incompatible, false},
		{"304", "316", Compatible, Conditional, true},
	} {
		inOpen, inHiding := reckoned(t, c.a, c.b, Normal, nil), reckoned(t, c.a, c.b, Normal, hidden)
		if inOpen.Verdict != c.open || inHiding.Verdict != c.hidden || inHiding.Swaps != c.swaps {
			t.Errorf("%s on %s: open %s, hidden %s, swaps %v", c.a, c.b, inOpen.Verdict, inHiding.Verdict, inHiding.Swaps)
		}
		if inHiding.ByActive != (c.open != c.hidden) {
			t.Errorf("%s on %s: by the active state %v", c.a, c.b, inHiding.ByActive)
		}
	}
	r := reckoned(t, "titanium", "A4", Normal, hidden)
	if math.Abs(r.Difference-0.440) > 1e-9 || r.Anode != "316 (active)" {
		t.Errorf("titanium with A4 bolts in hiding: %+v", r)
	}
}

// TestCoupleOfUnsettledName: "bronze" counts as the bronze that does worst.
func TestCoupleOfUnsettledName(t *testing.T) {
	r := reckoned(t, "bronze", "316", Normal, nil)
	if r.A.Name != "aluminium bronze" || r.Verdict != Conditional || math.Abs(r.Difference-0.315) > 1e-9 {
		t.Errorf("bronze on 316: %+v", r)
	}
	if r = reckoned(t, "bronze", "bronze", Harsh, nil); r.Difference == 0 {
		t.Errorf("two unknown bronzes count as one metal: %+v", r)
	}
}

func TestCoupleAreasAndIsolation(t *testing.T) {
	areas := func(a, b float64) func(*Couple) { return func(c *Couple) { c.AreaA, c.AreaB = a, b } }
	for _, c := range []struct {
		a, b    string
		change  func(*Couple)
		ratio   float64
		verdict Verdict
	}{
		{"silicon bronze", "316", areas(1018, 30000), 30000.0 / 1018, Incompatible},
		{"silicon bronze", "316", areas(30000, 1018), 1018.0 / 30000, Compatible},
		{"silicon bronze", "316", areas(1000, 5000), 5, Conditional},
		{"silicon bronze", "316", areas(1000, 10000), 10, Conditional},
		{"silicon bronze", "316", areas(1000, 10001), 10.001, Incompatible},
		{"silicon bronze", "316", areas(10000, 1000), 0.1, Compatible},
		{"silicon bronze", "316", areas(9999, 1000), 1000.0 / 9999, Conditional},
		{"naval brass", "316", areas(10, 1000), 100, Incompatible},
		{"316", "aluminium", areas(1018, 30000), 1018.0 / 30000, Conditional},
		{"316", "titanium", areas(100, 30000), 300, Compatible},
		{"316", "aluminium", func(c *Couple) { c.Isolated = true }, math.NaN(), Compatible},
	} {
		r := reckoned(t, c.a, c.b, Harsh, c.change)
		sameRatio := r.AreaRatio == c.ratio || math.Abs(r.AreaRatio/c.ratio-1) < 1e-12 || (r.AreaRatio != r.AreaRatio && c.ratio != c.ratio)
		if !sameRatio || r.Verdict != c.verdict {
			t.Errorf("%s on %s: ratio %g, %s; want %g, %s", c.a, c.b, r.AreaRatio, r.Verdict, c.ratio, c.verdict)
		}
	}
}

func TestCoupleRefuses(t *testing.T) {
	for says, change := range map[string]func(*Couple){
		"both sides":      func(c *Couple) { c.A = nil },
		"no exposure":     func(c *Couple) { c.Exposure = "damp" },
		"can't be -1 mm2": func(c *Couple) { c.AreaA, c.AreaB = -1, 5 },
		"can't be NaN":    func(c *Couple) { c.AreaA, c.AreaB = math.NaN(), 5 },
		"one of the":      func(c *Couple) { c.AreaA = 5 },
		"no potential":    func(c *Couple) { c.B = []table.GalvanicRow{{Name: "x", Low: math.NaN()}} },
	} {
		c, err := CoupleOf("316", "silicon bronze", Harsh)
		if err != nil {
			t.Fatal(err)
		}
		change(&c)
		if _, err := c.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error that says %q, got %v", says, err)
		}
	}
	if _, err := CoupleOf("316", "wood", Harsh); err == nil {
		t.Error("wood is in the galvanic series")
	}
}

func TestExposureNamed(t *testing.T) {
	for name, want := range map[string]Exposure{"harsh": Harsh, "Sea-Water": SeaWater, " sea_water ": SeaWater, "normal": Normal, "controlled": Controlled} {
		if e, err := ExposureNamed(name); err != nil || e != want {
			t.Errorf("%q: %s, %v", name, e, err)
		}
	}
	if _, err := ExposureNamed("moist"); err == nil {
		t.Error("moist is an exposure")
	}
}

func TestCoupleWorking(t *testing.T) {
	r := reckoned(t, "316", "silicon bronze", Normal, func(c *Couple) { c.AreaA, c.AreaB = 3, 4 })
	steps := r.Working()
	if len(steps) != 5 || steps[2].Value != r.Difference || steps[3].Value != 0.25 {
		t.Errorf("%+v", steps)
	}
	for _, s := range steps {
		if s.Source.Title == "" || s.Source.As == "" || s.Formula == "" {
			t.Errorf("step %+v is incomplete", s)
		}
	}
}
