package sheet

import (
	"fmt"
	"math"

	"chainwale/engine/quantity"
)

// Reading is one measured thing: what was read, once or several times, and how far a
// single reading may be off by the tool and the way it is held. Lengths in mm, angles
// in deg.
type Reading struct {
	Values []float64
	Within float64
}

// Read is a Reading of some values.
func Read(within float64, values ...float64) Reading { return Reading{values, within} }

// taken tells whether anything was read.
func (r Reading) taken() bool { return len(r.Values) > 0 }

// Mean is the mean of what was read.
func (r Reading) Mean() float64 {
	readings, err := quantity.NewReadings(quantity.Bare, r.Values...)
	if err != nil {
		return math.NaN()
	}
	return readings.Mean()
}

// Uncertainty is the standard uncertainty of the mean: the scatter of what was read and
// the tool's own part, which more readings don't make smaller,
//
//	u = sqrt(k^2 s^2/n + Within^2/3)
//	k = sqrt((n - 1)/(n - 3)), for two or three readings that of four
//
// with s the standard deviation of n readings, 0 for one. k widens the scatter of few
// readings to that of Student's t with n - 1 degrees of freedom.
//
// Holds for readings that scatter about one value as a bell curve does. Source: s and the
// tool's part as the Guide to the expression of uncertainty in measurement has them, JCGM
// 100:2008, 4.2.3 and 4.3.7 (memory); k as its Supplement 1 has it, JCGM 101:2008, 6.4.9
// (memory). Below four readings that distribution has no standard deviation; k of four
// stands there, for what two or three readings can't show is in the tool's part
// (judgement).
func (r Reading) Uncertainty() float64 {
	readings, err := quantity.NewReadings(quantity.Bare, r.Values...)
	if err != nil {
		return math.NaN()
	}
	scatter, ok := readings.StandardUncertainty()
	if !ok {
		scatter = 0
	}
	return math.Hypot(fewReadings(readings.N())*scatter, r.Within/math.Sqrt(3))
}

// fewReadings is by how much the scatter of n readings is widened.
func fewReadings(n int) float64 {
	const least = 4
	n = max(n, least)
	return math.Sqrt(float64(n-1) / float64(n-3))
}

// check refuses a reading that is none, or whose values disagree by more than two
// readings of that tool can.
func (r Reading) check(what, unit string) error {
	readings, err := quantity.NewReadings(quantity.Bare, r.Values...)
	if err != nil {
		return fmt.Errorf("%s: %w", what, err)
	}
	if !(r.Within > 0 && r.Within <= most) {
		return fmt.Errorf("%s: say how far one reading may be off; %g %s says nothing", what, r.Within, unit)
	}
	if spread := readings.Spread(); spread > 2*r.Within*(1+1e-9) {
		return fmt.Errorf("%s: the readings are %.4g %s apart, and two that are good to %.4g %s differ by %.4g at the most: measure it again", what, spread, unit, r.Within, unit, 2*r.Within)
	}
	return nil
}
