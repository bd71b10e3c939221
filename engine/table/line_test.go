package table

import (
	"math"
	"strings"
	"testing"
)

// TestLine holds the rope rows against the sizes that were printed.
func TestLine(t *testing.T) {
	for _, c := range []struct {
		kind         string
		diameter, kN float64
	}{
		{"HMPE", 4, 13.6}, {"hmpe 12 strand", 8, 54.4}, {"HMPE halyard", 10, 41}, {"polyester", 10, 21}, {"polyester 8-strand", 16, 39.2},
	} {
		l := must(Line(c.kind))(t)
		if got := l.BreakLoad(c.diameter) / 1000; math.Abs(got-c.kN) > 0.05 {
			t.Errorf("%s of %g mm breaks at %g kN, want %g", c.kind, c.diameter, got, c.kN)
		}
		if l.Least > l.Mean || l.StiffLeast > l.StiffMost || l.Sustained >= l.Short {
			t.Errorf("%s: %+v", c.kind, l)
		}
	}
	if _, err := Line("hemp"); err == nil {
		t.Error("hemp is no row")
	}
}

// TestLineEnds: a fibre that isn't known has the least of them.
func TestLineEnds(t *testing.T) {
	for _, c := range []struct {
		end, fibre string
		factor     float64
	}{
		{"splice", "HMPE", 0.9}, {"Eye Splice", "polyester", 0.9}, {"bowline", "hmpe", 0.35}, {"bowline", "polyester", 0.6}, {"bowline", "", 0.35}, {"joining knot", "HMPE", 0.2}, {"hitch", "polyester", 0.4}, {"turns", "", 0.9},
	} {
		if e := must(LineEndOf(c.end, c.fibre))(t); e.Factor != c.factor {
			t.Errorf("%s in %q leaves %g, want %g", c.end, c.fibre, e.Factor, c.factor)
		}
	}
	for _, c := range [][2]string{{"granny", "HMPE"}, {"bowline", "nylon"}} {
		if e, err := LineEndOf(c[0], c[1]); err == nil {
			t.Errorf("%v gave %+v", c, e)
		}
	}
}

// TestLineBends: between rows the lower one counts, and an edge has none.
func TestLineBends(t *testing.T) {
	for ratio, factor := range map[float64]float64{9: 0.8, 5: 0.8, 4.99: 0.7, 3: 0.7, 2.9: 0.5, 1: 0.5} {
		if b := must(LineBendAt(ratio))(t); b.Factor != factor {
			t.Errorf("%g leaves %g, want %g", ratio, b.Factor, factor)
		}
	}
	for _, ratio := range []float64{0.5, 0, -1, math.NaN(), math.Inf(1)} {
		if b, err := LineBendAt(ratio); err == nil {
			t.Errorf("%g gave %+v", ratio, b)
		}
	}
}

func TestSparsAndDrag(t *testing.T) {
	for _, c := range []struct {
		alloy       string
		wall, yield float64
	}{{"6061", 3, 240}, {"6063-T6", 3.2, 170}, {"6082 T6", 5, 250}, {"6082-T6", 5.1, 260}} {
		if s := must(SparAlloy(c.alloy, c.wall))(t); s.Yield != c.yield {
			t.Errorf("%s of %g mm yields at %g", c.alloy, c.wall, s.Yield)
		}
	}
	if _, err := SparAlloy("6063", 12); err == nil || !strings.Contains(err.Error(), "12 mm") {
		t.Errorf("a thick wall gave %v", err)
	}
	if d := must(Drag("smooth cylinder", 1e5))(t); d.Use != 1.2 {
		t.Errorf("subcritical: %+v", d)
	}
	if d := must(Drag("smooth cylinder", 5e6))(t); d.Use != 0.7 {
		t.Errorf("transcritical: %+v", d)
	}
	for _, shape := range []string{"smooth cylinder", "cube"} {
		if _, err := Drag(shape, 1e9); err == nil {
			t.Errorf("%s at 1e9 gave no error", shape)
		}
	}
	if p := must(Permissible("metal standing rigging"))(t); p.Sailing != 0.53 || p.Survival != 0.68 || !math.IsNaN(p.Handling) {
		t.Errorf("%+v", p)
	}
	if _, err := Permissible("bamboo"); err == nil {
		t.Error("bamboo is no row")
	}
}
