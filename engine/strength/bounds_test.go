package strength

import (
	"math"
	"testing"
)

// TestBounds holds that formulas take what stands on the bound of what they hold
// for, and refuse what stands a little beyond it.
func TestBounds(t *testing.T) {
	reckons := func(err error) bool { return err == nil }
	countersink := func(angle float64) bool {
		_, err := BoltHead{Kind: Countersunk, Thickness: 6, Hole: 8, Sink: 3, Angle: angle}.Reckon()
		return reckons(err)
	}
	bonded := func(glass float64) bool { _, err := Bonded{Area: 100, GlassShare: glass}.Reckon(); return reckons(err) }
	laminate := func(glass float64) bool {
		_, err := LaminateBolts{Thickness: 8, Bolt: 8, Washer: 24, Count: 1, GlassShare: glass}.Reckon()
		return reckons(err)
	}
	for _, c := range []struct {
		what     string
		holds    func(float64) bool
		low, top float64
	}{
		{"countersink", countersink, 60, 120},
		{"glass of a bond", bonded, 0.2, 0.65},
		{"glass of a laminate", laminate, 0.2, 0.65},
		{"turn of a square", func(v float64) bool {
			_, err := BoltHead{Kind: SquareNeck, Thickness: 6, Hole: 8, Turn: v}.Reckon()
			return reckons(err)
		}, -90, 90},
		{"turn of a fold", func(v float64) bool { _, err := Fold{1, v, 6, 6}.Reckon(); return reckons(err) }, 0, 180},
		{"radius of a fold", func(v float64) bool { _, err := Fold{1, 8, 10, v}.Reckon(); return reckons(err) }, 2, 10000},
		{"pin hole", func(v float64) bool { _, err := StressConcentration{PinHole, 100, v}.Reckon(); return reckons(err) }, 15, 75},
		{"open hole", func(v float64) bool { _, err := StressConcentration{OpenHole, 100, v}.Reckon(); return reckons(err) }, 1e-6, 50},
		{"partial factor", func(v float64) bool {
			_, err := ENPinPlate{8, 50, 16.3, 25, 60000, 205, v}.Reckon()
			return reckons(err)
		}, 1, 3},
		{"density of timber", func(v float64) bool {
			_, err := TimberBolts{Kind: Plywood, Density: v, Thickness: 18, Plate: 6, Bolt: 8, BoltUltimate: 700, Count: 1}.Reckon()
			return reckons(err)
		}, 200, 1000},
		{"bolt in timber", func(v float64) bool {
			_, err := TimberBolts{Kind: Plywood, Density: 450, Thickness: 18, Plate: 6, Bolt: v, BoltUltimate: 700, Count: 1}.Reckon()
			return reckons(err)
		}, 5.9, 30},
		{"grain", func(v float64) bool {
			_, err := TimberBolts{Kind: Softwood, Density: 450, Thickness: 18, Plate: 6, Bolt: 8, BoltUltimate: 700, Count: 1, Grain: v}.Reckon()
			return reckons(err)
		}, 0, 90},
		{"angle of an oblique load", func(v float64) bool { _, err := ObliqueLoad{golden, v}.Reckon(); return reckons(err) }, -45, 45},
		{"hole of a lug in thicknesses", func(v float64) bool {
			_, err := AirLug{Thickness: 20 / v, Width: 50, Hole: 20, End: 30, Ultimate: 500, Curve: LugAnnealed}.Reckon()
			return reckons(err)
		}, 1e-6, 20},
	} {
		for _, at := range []float64{c.low, c.top} {
			if !c.holds(at) {
				t.Errorf("%s of %g is refused", c.what, at)
			}
		}
		beyond := 1e-3 * (c.top - c.low)
		for _, at := range []float64{c.low - beyond, c.top + beyond, math.NaN(), math.Inf(1), math.Inf(-1), 1e308} {
			if c.holds(at) {
				t.Errorf("%s of %g is taken", c.what, at)
			}
		}
	}
}
