package sheet

import (
	"math"
	"strings"
	"testing"
)

// bench are tools about a small press: the punch's bar 20 mm wide, 12 mm above its nose.
func bench(die float64) PressTools {
	return PressTools{Die: die, Block: die + 30, Punch: 20, Nose: 12, Room: 400}
}

func orders(t *testing.T, tools PressTools, thickness, radius float64, legs, angles []float64) []PressOrder {
	t.Helper()
	o := OutsideLegs{Thickness: thickness, Width: 40, Legs: legs}
	for _, a := range angles {
		o.Folds = append(o.Folds, Fold{Angle: a, Radius: radius})
	}
	s, err := o.Develop()
	if err != nil {
		t.Fatal(err)
	}
	list, err := PressOrders(s, tools)
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// TestPressOrders: parts that were worked out by other means.
func TestPressOrders(t *testing.T) {
	for _, c := range []struct {
		what         string
		thick, r     float64
		legs, angles []float64
		punch        float64
	}{
		{"narrow U", 6, 12, []float64{60, 50, 60}, []float64{90, 90}, -9.96},
		{"wide U", 6, 12, []float64{60, 120, 60}, []float64{90, 90}, 6.76},
		{"Z", 6, 12, []float64{60, 50, 60}, []float64{90, -90}, 6.42},
	} {
		for _, o := range orders(t, bench(48), c.thick, c.r, c.legs, c.angles) {
			worst := math.Inf(1)
			for _, s := range o.Steps {
				worst = min(worst, s.Punch)
			}
			t.Logf("%s: %+v", c.what, o)
			near(t, c.what, worst, c.punch, 1.5)
			if c.punch < 0 && o.Clear() {
				t.Errorf("%s goes through the punch and is clear", c.what)
			}
		}
	}
	strip := orders(t, bench(63), 8, 16, []float64{120, 90, 60}, []float64{15, -25})
	if !strip[0].Clear() || len(strip) != 2 || strip[0].Turns != 1 {
		t.Errorf("%+v", strip)
	}
	three := orders(t, bench(48), 6, 12, []float64{90, 70, 80, 90}, []float64{20, -30, 20})
	if len(three) != 6 {
		t.Fatalf("%d orders of three folds", len(three))
	}
	for _, o := range three {
		if !o.Clear() {
			t.Errorf("shallow folds are free of any order: %+v", o)
		}
	}
	if first := three[0]; first.Turns != 1 || first.Steps[2].Fold != 2 {
		t.Errorf("both outer folds come first, with one turning over: %+v", first)
	}
}

// TestHangingLeg: the finished leg of a narrow Z hangs down against the die's block.
func TestHangingLeg(t *testing.T) {
	z := orders(t, bench(48), 6, 12, []float64{60, 50, 60}, []float64{90, -90})
	if s := z[0].Steps[1]; !(s.Die < 0) || s.Clear() || s.FaceUp == z[0].Steps[0].FaceUp {
		t.Errorf("%+v", s)
	}
	slim := PressTools{Die: 24, Block: 30, Punch: 20, Nose: 12, Room: 400}
	if wide := orders(t, slim, 3, 6, []float64{40, 120, 40}, []float64{90, -90}); !wide[0].Clear() {
		t.Errorf("%+v", wide[0])
	}
}

// TestTipRises: the end of a long leg rises by its length times the sine of half the
// angle, less what the fold sinks into the die; the frame must leave room for it.
func TestTipRises(t *testing.T) {
	tools := bench(63)
	for angle, rise := range map[float64]float64{30: 78, 60: 150} {
		s := orders(t, tools, 8, 16, []float64{300, 300}, []float64{angle})[0].Steps[0]
		near(t, "rise", tools.Room-s.Room, rise, 10)
		tools.Room = rise - 20
		if s = orders(t, tools, 8, 16, []float64{300, 300}, []float64{angle})[0].Steps[0]; s.Clear() {
			t.Errorf("a rise of %g in a room of %g is clear", rise, tools.Room)
		}
		tools.Room = 400
	}
}

// TestShortFlange: a leg that does not reach over the die can't be folded in it.
func TestShortFlange(t *testing.T) {
	if s := orders(t, bench(63), 8, 16, []float64{120, 34}, []float64{20})[0].Steps[0]; s.Flange >= 0 || s.Clear() {
		t.Errorf("%+v", s)
	}
	// At 20 degrees a die of 63 mm takes 31.5/cos(10) and 5 mm for the roll-off.
	if s := orders(t, bench(63), 8, 16, []float64{120, 40}, []float64{20})[0].Steps[0]; math.Abs(s.Flange-(40-31.986-5)) > 0.01 {
		t.Errorf("%+v", s)
	}
}

func TestPressOrdersRefuse(t *testing.T) {
	good, err := strip120.Develop()
	if err != nil {
		t.Fatal(err)
	}
	for says, change := range map[string]func(*FoldedStrip, *PressTools){
		"fold 2 is turned 20 deg": func(s *FoldedStrip, _ *PressTools) { s.Folds[1].Skew = 20 },
		"without folds":           func(s *FoldedStrip, _ *PressTools) { s.Folds = nil },
		"the room above the die":  func(_ *FoldedStrip, p *PressTools) { p.Room = 0 },
		"is not cut into a block": func(_ *FoldedStrip, p *PressTools) { p.Block = 50 },
		"the height of the punch": func(_ *FoldedStrip, p *PressTools) { p.Nose = math.NaN() },
		"fold 1: an open die":     func(s *FoldedStrip, _ *PressTools) { s.Folds[0].Angle = 121 },
		"fold 2 begins":           func(s *FoldedStrip, _ *PressTools) { s.Folds[1].At = 100 },
	} {
		s, tools := good, bench(63)
		s.Folds = append([]Fold{}, good.Folds...)
		change(&s, &tools)
		if o, err := PressOrders(s, tools); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v %+v", says, err, o)
		}
	}
}
