package strength

import (
	"math"
	"testing"
)

func TestStressConcentration(t *testing.T) {
	heywood := map[float64]float64{0.1: 2.729, 0.2: 2.512, 0.3: 2.343, 0.4: 2.216, 0.5: 2.125}
	howland := map[float64]float64{0.1: 2.72207, 0.2: 2.50816, 0.3: 2.34909, 0.4: 2.23568, 0.5: 2.15875}
	for x := range heywood {
		r, err := StressConcentration{Kind: OpenHole, Width: 100, Hole: 100 * x}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "Heywood", r.heywood, heywood[x], 1e-9)
		near(t, "Howland", r.howland, howland[x], 1e-9)
		near(t, "net factor", r.NetFactor, max(heywood[x], howland[x]), 1e-9)
		checkWorking(t, r.Working(), map[string]float64{"Kt": r.NetFactor, "K1": r.heywood})
	}
	for x, want := range map[float64]float64{0.2: 5.516344, 0.3: 3.751371, 0.4: 2.851632, 0.5: 2.507125, 0.6: 2.407848} {
		r, err := StressConcentration{Kind: PinHole, Width: 50, Hole: 50 * x}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "pin", r.NetFactor, want, 1e-6)
		checkWorking(t, r.Working(), map[string]float64{"Kt": r.NetFactor})
	}
	for _, bad := range []StressConcentration{{OpenHole, 100, 51}, {PinHole, 100, 14}, {PinHole, 100, 76}, {"slot", 100, 30}, {OpenHole, 0, 30}, {PinHole, math.NaN(), 30}, {OpenHole, 100, -3}} {
		if r, err := bad.Reckon(); err == nil {
			t.Errorf("%+v gave %g", bad, r.NetFactor)
		}
	}
}

// TestHeywoodIsNotAlwaysSafe holds where Heywood's form alone would read too low.
func TestHeywoodIsNotAlwaysSafe(t *testing.T) {
	for x := 0.05; x <= 0.5; x += 0.01 {
		r, _ := StressConcentration{Kind: OpenHole, Width: 100, Hole: 100 * x}.Reckon()
		if below := r.heywood < r.howland; below != (x > 0.245) {
			t.Errorf("x = %.2f: Heywood %.4f, Howland %.4f", x, r.heywood, r.howland)
		}
		if math.Abs(r.heywood/r.howland-1) > 0.016 {
			t.Errorf("x = %.2f: Heywood and Howland are further apart than 1.6 %%", x)
		}
	}
}
