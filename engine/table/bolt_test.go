package table

import (
	"math"
	"testing"
)

// TestThreadAreas holds the published stress areas against the formulas behind them.
func TestThreadAreas(t *testing.T) {
	for _, r := range must(Threads())(t) {
		mean := r.Diameter - 0.9743*r.Pitch
		if r.Series == "ISO coarse" {
			mean = r.Diameter - 0.938194*r.Pitch
			root := math.Pi / 4 * math.Pow(r.Diameter-1.226869*r.Pitch, 2)
			if math.Abs(r.Root/root-1) > 0.005 {
				t.Errorf("%s: root %g, computed %.4g", r.Name, r.Root, root)
			}
		}
		if area := math.Pi / 4 * mean * mean; math.Abs(r.StressArea/area-1) > 0.006 {
			t.Errorf("%s: stress area %g, computed %.4g", r.Name, r.StressArea, area)
		}
		if r.StressArea >= r.Shank() {
			t.Errorf("%s: the thread is no smaller than the shank", r.Name)
		}
	}
}

func TestThread(t *testing.T) {
	for _, c := range []struct {
		as, name string
		area     float64
	}{
		{"M10", "M10", 58}, {"m10", "M10", 58}, {"M10x1.5", "M10", 58}, {"M10 x 1.5", "M10", 58},
		{"3/8-16 UNC", "3/8-16 UNC", 50}, {"3/8 in UNC", "3/8-16 UNC", 50}, {"3/8-16", "3/8-16 UNC", 50},
		{"1/2-20 UNF", "1/2-20 UNF", 103.2}, {"1/4-20", "1/4-20 UNC", 20.5},
	} {
		if r := must(Thread(c.as))(t); r.Name != c.name || r.StressArea != c.area {
			t.Errorf("%s gave %+v", c.as, r)
		}
	}
	for _, bad := range []string{"M11", "M10x1.25", "3/8", "", "10"} {
		if r, err := Thread(bad); err == nil {
			t.Errorf("%q gave %s", bad, r.Name)
		}
	}
}

func TestBoltGrades(t *testing.T) {
	for _, g := range must(BoltGrades())(t) {
		if g.Yield >= g.Ultimate || g.Smallest >= g.Largest {
			t.Errorf("%+v", g)
		}
		if _, err := MetalNamed(g.Metal); err != nil {
			t.Errorf("%s: %v", g.Name, err)
		}
	}
	for _, c := range []struct {
		name            string
		ultimate, yield float64
	}{
		{"A4-70", 700, 450}, {"A4 80", 800, 600}, {"a2-50", 500, 210}, {"F593G", 689, 448}, {"F593 H", 586, 310}, {"8.8", 800, 640}, {"316", 448, 138}, {"A4", 500, 210},
	} {
		if g := must(BoltGrade(c.name))(t); g.Ultimate != c.ultimate || g.Yield != c.yield {
			t.Errorf("%s gave %g/%g", c.name, g.Ultimate, g.Yield)
		}
	}
	if _, err := BoltGrade("A4-75"); err == nil {
		t.Error("A4-75 was found")
	}
}

// TestBareMetalIsTheSoftestBolt holds that a metal without a class counts as the
// softest bolt of that metal.
func TestBareMetalIsTheSoftestBolt(t *testing.T) {
	for _, metal := range []string{"304", "316"} {
		got := must(BoltGrade(metal))(t)
		for _, g := range must(BoltGrades())(t) {
			if g.Metal == metal && (g.Ultimate < got.Ultimate || g.Yield < got.Yield) {
				t.Errorf("%s gave %s, but %s is softer", metal, got.Name, g.Name)
			}
		}
	}
}

func TestBoltGradeAt(t *testing.T) {
	for _, c := range []struct {
		name     string
		diameter float64
		want     string
	}{
		{"A4-70", 10, "A4-70"}, {"A4-70", 20, "A4-70"}, {"A4-70", 24, "A4-50"}, {"A2-80", 22, "A2-50"}, {"F593G", 12.7, "F593 group 2 CW1"},
	} {
		if g := must(BoltGradeAt(c.name, c.diameter))(t); g.Name != c.want {
			t.Errorf("%s at %g mm gave %s, want %s", c.name, c.diameter, g.Name, c.want)
		}
	}
	for _, c := range []struct {
		name     string
		diameter float64
	}{{"A4-70", 60}, {"F593G", 19.05}, {"F593H", 12.7}, {"A4-70", math.NaN()}, {"A4-70", -1}} {
		if g, err := BoltGradeAt(c.name, c.diameter); err == nil {
			t.Errorf("%s at %g mm gave %s", c.name, c.diameter, g.Name)
		}
	}
}

func TestClevisPins(t *testing.T) {
	for _, p := range must(ClevisPins())(t) {
		if !(p.Smallest < p.Largest && p.Largest <= p.Nominal && p.SplitPin < p.Nominal && p.Nominal < p.Head) || p.Nominal-p.Smallest > 0.25 {
			t.Errorf("%+v", p)
		}
	}
	for _, c := range []struct {
		nominal           float64
		size              string
		largest, smallest float64
		inch              bool
	}{{12.7, "1/2 in", 12.5984, 12.4714, true}, {12, "12 mm", 12, 11.89, false}, {15.88, "5/8 in", 15.7734, 15.6464, true}, {16, "16 mm", 16, 15.89, false}} {
		p := must(ClevisPin(c.nominal))(t)
		if p.Size != c.size || p.Largest != c.largest || p.Smallest != c.smallest || p.Inch() != c.inch {
			t.Errorf("%g mm gave %+v", c.nominal, p)
		}
	}
	for _, bad := range []float64{13, 0, -5, math.NaN(), math.Inf(1), 1e308} {
		if p, err := ClevisPin(bad); err == nil {
			t.Errorf("%g mm gave %s", bad, p.Size)
		}
	}
}
