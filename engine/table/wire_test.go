package table

import (
	"math"
	"strings"
	"testing"
)

func TestWire(t *testing.T) {
	for _, c := range []struct {
		construction, metal string
		diameter, kN        float64
		size                string
	}{
		{"1x19", "316", 7, 35.5, "7 mm"},
		{"1x19", "316", 8, 45.5, "8 mm"},
		{"1x19", "316", 7.94, 47.15, "5/16 in"},
		{"1 x 19", "A4", 6.35, 30.69, "1/4 in"},
		{"1x19", "304", 6.35, 36.48, "1/4 in"},
		{"1x19", "302", 4.76, 20.91, "3/16 in"},
		{"7x19", "galvanised", 6.35, 31.14, "1/4 in"},
		{"7x19", "304", 3.175, 7.83, "1/8 in"},
		{"7x7", "316", 6, 21.93, "6 mm"},
		{"compact strand", "316", 8, 62.5, "8 mm"},
		{"rod", "316", 8.38, 77.8, "dash 17"},
	} {
		w := must(Wire(c.construction, c.metal, c.diameter))(t)
		if math.Abs(w.BreakLoad/1000-c.kN) > 0.006*c.kN/10+0.05 || w.Size != c.size || w.FromFormula || w.BreakLoadMost != w.BreakLoad {
			t.Errorf("%s %s %g mm gave %+v, want %g kN, %s", c.construction, c.metal, c.diameter, w, c.kN, c.size)
		}
	}
}

func TestWireWithoutARow(t *testing.T) {
	w := must(Wire("1x19", "316", 9))(t)
	if !w.FromFormula || w.Size != "" || math.Abs(w.BreakLoad-0.69*81*1000) > 1 || math.Abs(w.BreakLoadMost-0.8405*81*1000) > 1 {
		t.Errorf("9 mm gave %+v", w)
	}
}

// TestWireOfUnknownMetal holds that the stronger wire is the load and the weaker the strength.
func TestWireOfUnknownMetal(t *testing.T) {
	for _, metal := range []string{"", "unknown", "stainless"} {
		w := must(Wire("1x19", metal, 6.35))(t)
		if math.Abs(w.BreakLoad-30693) > 1 || math.Abs(w.BreakLoadMost-36475) > 1 || w.Note == "" {
			t.Errorf("metal %q gave %+v", metal, w)
		}
	}
	weaker, stronger, err := WireBounds("7x19", "", 6.35)
	if err != nil || weaker.Metal != "316" || stronger.Metal != "galvanised" {
		t.Errorf("7x19 of unknown metal: %+v, %+v, %v", weaker, stronger, err)
	}
}

func TestWireRefuses(t *testing.T) {
	for _, c := range []struct {
		construction, metal string
		diameter            float64
		says                string
	}{
		{"1x91", "316", 6, "1x19"},
		{"1x19", "361", 6, "316"},
		{"1x19", "316", 40, "from 1.587 to 14 mm"},
		{"compacted", "304", 8, "316 from"},
		{"1x19", "316", 0, "can't be"},
		{"1x19", "316", -6, "can't be"},
		{"1x19", "316", math.NaN(), "can't be"},
		{"1x19", "316", 1e308, "316 from"},
	} {
		w, err := Wire(c.construction, c.metal, c.diameter)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s %s %g mm gave %+v, %v; want an error that says %q", c.construction, c.metal, c.diameter, w, err, c.says)
		}
	}
}

// TestWireGrades holds the grade of wire that each row implies within what that
// strand is drawn to: a row above it is a mean load, another metal or another strand.
func TestWireGrades(t *testing.T) {
	limits := map[string][2]float64{"1x19/316": {1300, 1600}, "1x19/304": {1500, 1800}, "1x19/galvanised": {1500, 1800}, "7x19/316": {1460, 1600}, "7x7/316": {1460, 1600}, "compacted/316": {1500, 1600}}
	for _, w := range must(Wires())(t) {
		limit, ok := limits[w.Construction+"/"+w.Metal]
		if !ok || w.Diameter < 2.5 {
			continue
		}
		build := must(WireBuildOf(w.Construction))(t)
		if grade := w.BreakLoad / (build.BreakFactor * w.Diameter * w.Diameter); grade < limit[0] || grade > limit[1] {
			t.Errorf("%s %s %s implies wires of %.0f MPa", w.Construction, w.Metal, w.Size, grade)
		}
	}
}

// TestRodStress: a rod breaks at about 1400 MPa.
func TestRodStress(t *testing.T) {
	for _, w := range must(Wires())(t) {
		if s := w.BreakLoad / (math.Pi / 4 * w.Diameter * w.Diameter); w.Construction == "rod" && math.Abs(s/1400-1) > 0.04 {
			t.Errorf("rod %s breaks at %.0f MPa", w.Size, s)
		}
	}
}

// TestBandsHoldTheRows holds that the band that stands in for a missing row
// under-states and over-states every row in its range.
func TestBandsHoldTheRows(t *testing.T) {
	all := must(wires())(t)
	held := 0
	for _, b := range all.bands {
		for _, w := range all.rows {
			if w.Construction != b.construction || w.Metal != b.metal || w.Diameter <= b.over || w.Diameter > b.upTo {
				continue
			}
			held++
			if c := w.BreakLoad / 1000 / (w.Diameter * w.Diameter); c < b.least || c > b.most*1.002 {
				t.Errorf("%s %s %s: %.4f is outside %g to %g", w.Construction, w.Metal, w.Size, c, b.least, b.most)
			}
		}
	}
	if held < 80 {
		t.Errorf("only %d rows lie within a band", held)
	}
}

// TestWireBuilds holds the factors against each other and the stiffness of plain
// strand against the folding-rule method: 1 mm in 2 m is 5 % of the break load.
func TestWireBuilds(t *testing.T) {
	for _, b := range must(wires())(t).builds {
		if math.Abs(b.AreaFactor/(math.Pi/4)-b.Fill) > 0.002 || math.Abs(b.AreaFactor*b.SpinFactor-b.BreakFactor) > 0.014 {
			t.Errorf("%s: the factors disagree: %+v", b.Construction, b)
		}
	}
	build := must(WireBuildOf("1x19"))(t)
	for _, w := range must(Wires())(t) {
		if w.Construction != "1x19" {
			continue
		}
		if r := build.GrossModulus * math.Pi / 4 * w.Diameter * w.Diameter / w.BreakLoad; r < 75 || r > 137 || (w.Metal == "316" && w.Diameter >= 3 && r > 125) {
			t.Errorf("%s %s: EA is %.0f times the break load", w.Metal, w.Size, r)
		}
	}
}
