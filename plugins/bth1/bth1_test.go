package bth1

import (
	"math"
	"testing"

	"chainwale/engine/standard"
	"chainwale/plugins/clauses/clausetest"
)

func theStandard(t *testing.T) standard.Standard {
	t.Helper()
	s, err := Standard()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestDeclaration(t *testing.T) { clausetest.Coverage(t, theStandard(t), ".") }

func TestPack(t *testing.T) {
	clausetest.Texts(t, theStandard(t))
	clausetest.Pack(t, theStandard(t))
}

// golden is the plate that the methods are compared on.
var golden = clausetest.Facts{
	"hole": 16.3, "end": 25.0, "across": 0.0, "pin_diameter": 16.0, "lean_in": 0.0, "lean_out": 0.0,
	"fitting.thickness": 8.0, "fitting.width": 50.0, "fitting.metal.yield": 205.0, "fitting.metal.ultimate": 515.0,
}

// TestGoldenPlate holds the numbers that the same equations gave in another language.
func TestGoldenPlate(t *testing.T) {
	a := clausetest.Landing(t, theStandard(t), golden)
	a.Near("net_tension", 115703.33333333334, 1e-9)
	a.Near("effective_width", 16.85, 1e-9)
	a.Near("single_plane", 91542.62747611867, 1e-9)
	a.Near("double_plane", 92741.28231051145, 1e-9)
	a.Near("plate", 91542.62747611867, 1e-9)
	a.Near("bearing", 32800, 1e-9)
	a.Near("hole_over_pin", 16.3/16, 1e-12)
	a.Near("clearance_factor", 1, 1e-12)
	if phi := a.Step("double_plane", "phi"); math.Abs(phi-53.987730061349694) > 1e-9 {
		t.Errorf("the shear planes stand at %g deg", phi)
	}
	a.Shown()
}

// TestLugSheet holds the published calculation sheet, whose design factor is 2.
func TestLugSheet(t *testing.T) {
	for _, file := range []string{"bth-lug-sheet", "bth-lug-sheet-without-pin-effect"} {
		c := clausetest.Published(t, file)
		a := clausetest.Landing(t, theStandard(t), clausetest.Facts{
			"hole": c.In("hole"), "end": c.In("end"), "across": 0.0, "lean_in": 0.0, "lean_out": 0.0, "pin_diameter": c.In("pin"), "fitting.thickness": c.In("thickness"),
			"fitting.width": c.In("width"), "fitting.metal.yield": c.In("yield"), "fitting.metal.ultimate": c.In("ultimate"),
		})
		if r := c.In("end_radius"); r != c.In("width")/2 {
			t.Fatalf("%s has an end of %g mm radius: the standard takes half the width", file, r)
		}
		factor := c.In("design_factor")
		for printed, fact := range map[string]string{"net": "net_tension", "single_plane": "single_plane", "double_plane": "double_plane", "bearing": "bearing"} {
			if _, closes := c.Outputs[printed]; closes {
				a.Near(fact, c.Out(printed)*factor, c.Tolerance)
			}
		}
		a.Near("clearance_factor", c.Out("clearance_factor"), c.Tolerance)
	}
}

// TestLugSheetInMetric holds what the sheet's equations gave in another language, in
// metric units, divided by its design factor of 2.
func TestLugSheetInMetric(t *testing.T) {
	a := clausetest.Landing(t, theStandard(t), clausetest.Facts{
		"hole": 12.0, "end": 12.5, "across": 0.0, "lean_in": 0.0, "lean_out": 0.0, "pin_diameter": 10.0, "fitting.thickness": 5.0, "fitting.width": 25.0,
		"fitting.metal.yield": 248.211, "fitting.metal.ultimate": 399.896,
	})
	a.Near("clearance_factor", 0.8479880304420442, 1e-9)
	a.Near("net_tension", 2*9184.148496836402, 1e-9)
	a.Near("single_plane", 2*7929.395235984834, 1e-9)
	a.Near("double_plane", 2*8736.840772794703, 1e-9)
	a.Near("bearing", 2*7756.593750000001, 1e-6)
	if area := a.Step("double_plane", "Av"); math.Abs(area-74.90668236136857) > 1e-9 {
		t.Errorf("the shear planes measure %g mm2", area)
	}
}

// TestChartOfChainplates holds that the row of the yacht designers' chart, whose
// plate is half as strong again as its wire by its user's rule, is so by this standard.
func TestChartOfChainplates(t *testing.T) {
	c := clausetest.Published(t, "kinney-skene-chart-row")
	a := clausetest.Landing(t, theStandard(t), clausetest.Facts{
		"hole": c.In("hole"), "end": c.In("end"), "across": 0.0, "lean_in": 0.0, "lean_out": 0.0, "pin_diameter": c.In("pin"), "fitting.thickness": c.In("thickness"),
		"fitting.width": c.In("width"), "fitting.metal.yield": 170.0, "fitting.metal.ultimate": 485.0,
	})
	a.Near("plate", c.Out("plate_per_wire")*c.In("break_load"), c.Tolerance)
}

// TestLean: a lean of the wire, or a hole in the round of the end, never makes a plate
// stronger, and a round end about the hole is the same from everywhere.
func TestLean(t *testing.T) {
	s := theStandard(t)
	straight := clausetest.Landing(t, s, golden)
	for _, name := range []string{"net_tension", "single_plane", "double_plane", "plate"} {
		for _, lean := range []float64{1, 10, 30, 45} {
			clausetest.Landing(t, s, golden.With(clausetest.Facts{"lean_in": lean})).Near(name, straight.Fact(name), 1e-9)
		}
		unknown := clausetest.Landing(t, s, golden.With(clausetest.Facts{"lean_in": nil}))
		if load, known := unknown.Known[name]; known {
			t.Errorf("%s is %g N with a lean that nobody has measured", name, load)
		}
	}
	clausetest.Lean(t, s, golden)
	low := golden.With(clausetest.Facts{"end": 30.0})
	last := math.Inf(1)
	for _, lean := range []float64{0, 10, 20, 30, 40} {
		a := clausetest.Landing(t, s, low.With(clausetest.Facts{"lean_in": lean}))
		if now := a.Fact("plate"); now > last {
			t.Errorf("at %g deg the plate bears %g N, straighter on %g N", lean, now, last)
		} else {
			last = now
		}
		a.Shown()
	}
	high := clausetest.Landing(t, s, golden.With(clausetest.Facts{"end": 20.0}))
	if w := high.Fact("effective_width"); !(w < 16.85-0.4) {
		t.Errorf("a hole in the round of the end counts %g mm beside it", w)
	}
}

func TestNotCovered(t *testing.T) {
	s := theStandard(t)
	for says, change := range map[string]clausetest.Facts{
		"larger than the hole":     {"pin_diameter": 16.4},
		"breaks out of the end":    {"end": 8.0},
		"breaks out of the side":   {"across": 17.0},
		"holds to 45 deg":          {"lean_in": 50.0},
		"above its ultimate":       {"fitting.metal.yield": 600.0},
		"thickness of the plate":   {"fitting.thickness": 0.0},
		"not smaller than the pla": {"fitting.width": 16.0},
	} {
		a := clausetest.Landing(t, s, golden.With(change))
		for _, name := range []string{"net_tension", "single_plane", "double_plane", "plate"} {
			a.Refuses(name, says)
		}
	}
	a := clausetest.Landing(t, s, golden.With(clausetest.Facts{"pin_diameter": 17.0}))
	a.Refuses("hole_over_pin", "larger than the hole")
	clausetest.Landing(t, s, golden.With(clausetest.Facts{"fitting.thickness": -1.0})).Refuses("bearing", "thickness")
}

// TestUnknown: without a reading that it comes from, a fact is unknown, and no clause
// is blamed for it.
func TestUnknown(t *testing.T) {
	s := theStandard(t)
	for _, lacks := range from {
		a := clausetest.Landing(t, s, golden.With(clausetest.Facts{lacks: nil}))
		_, plate := a.Known["plate"]
		_, net := a.Known["net_tension"]
		if plate || net || len(a.Refused) > 0 {
			t.Errorf("without %s the plate is known, or refused: %v", lacks, a.Refused)
		}
	}
}
