package sheet

import (
	"fmt"
	"math"
)

// Bumping folds a strip with a hand-pumped press: a few strokes, let go, measure, and so
// on to the wanted angle, never beyond it.
//
// Symbols: Die, its Shoulder radius, Thickness and inside Radius of the fold, mm (see
// RamTravel); Stroke, what the ram travels in a full stroke, mm; Target, deg;
// Springback, the least that the fold is expected to open, deg.
type Bumping struct {
	Die, Shoulder, Thickness, Radius float64
	Stroke                           float64
	Target, Springback               float64
}

// Bumped is a reading: all strokes since the ram touched, and the angle that was left
// when the press let go, deg.
type Bumped struct{ Strokes, Angle float64 }

// BumpStep is what comes next.
type BumpStep struct {
	// Strokes to pump, in quarters of a stroke; 0 if Done.
	Strokes float64
	// Expect is the angle that they lead to at the most, deg.
	Expect float64
	Done   bool
	Why    string
}

const (
	// firstShare is how much of the predicted strokes is pumped before the first reading,
	// stepShare how much of what is left after each: bent too little is bent again, bent
	// too far is not bent back. Simulated, they went beyond with no press whose slope is
	// up to 1.3 times the predicted one (judgement).
	firstShare = 0.6
	stepShare  = 0.7
	// nearEnough, deg, is as good as a bevel reads (common practice).
	nearEnough = 0.5
	// vernier is the least part of a stroke that a hand can pump (judgement).
	vernier = 0.25
	// lastReserve is what the last quarter of a stroke may fold beyond the slope that two
	// readings bear out, firstReserve beyond one that is only predicted: as much as
	// stepShare keeps back (judgement).
	lastReserve  = 1.15
	firstReserve = 1 / stepShare
	// plasticFrom, deg, is the angle from which a part keeps what is pumped: below it
	// slack and elastic travel hide the slope (judgement).
	plasticFrom = 2
	// leastSlope is the least share of the predicted slope that readings are believed
	// for: over a quarter of a stroke a bevel is no better (judgement).
	leastSlope = 0.6
)

func (b Bumping) check() error {
	var in inputs
	in.positive("what the ram travels in a stroke", b.Stroke, "mm")
	in.must(b.Target > 0 && b.Target <= 120, "an open die folds by more than 0 and up to 120 deg, not by %g", b.Target)
	in.must(b.Springback >= 0 && b.Springback <= 30, "a fold opens by 0 to 30 deg, not by %g", b.Springback)
	in.must(b.Target+b.Springback <= 120, "to be left at %g deg the fold would be pressed beyond 120 deg", b.Target)
	if in.err != nil {
		return in.err
	}
	_, err := b.travel(b.Target + b.Springback)
	return err
}

func (b Bumping) travel(angle float64) (RamTravelResult, error) {
	return RamTravel{Die: b.Die, Shoulder: b.Shoulder, Thickness: b.Thickness, Radius: b.Radius, Angle: angle}.Reckon()
}

// slope is the predicted angle of a full stroke, deg, at an angle that is left.
func (b Bumping) slope(angle float64) float64 {
	r, err := b.travel(min(angle, b.Target) + b.Springback)
	if err != nil {
		return math.NaN()
	}
	return r.Slope * b.Stroke
}

// ahead is the greatest predicted slope from an angle to the wanted one: a stroke folds
// more the deeper the part lies in the die, until its arc fills it.
func (b Bumping) ahead(angle float64) float64 {
	greatest := b.slope(b.Target)
	for k := range 8 {
		greatest = max(greatest, b.slope(angle+(b.Target-angle)*float64(k)/8))
	}
	return greatest
}

// Next tells what to pump after some readings.
//
// Equation:
//
//	first  0.6 D(Target + Springback)/Stroke
//	after  0.7 (Target - angle)/s
//
// rounded down to quarters of a stroke. s is the greater of the slopes over the last
// step and over all steps from where the part began to keep its angle, each with what the
// predicted slope still grows, and not less than 0.6 of the predicted one; until there
// are two such readings, not less than the predicted one. It ends within 0.5 deg, or
// where a quarter of a stroke might go beyond.
//
// Holds for presses whose true slope is up to 1.3 times the predicted one. Source: trade
// practice for bumping (judgement). Errors: sizes and readings that are none, strokes
// that don't grow, an angle that shrinks.
func (b Bumping) Next(readings []Bumped) (BumpStep, error) {
	if err := b.check(); err != nil {
		return BumpStep{}, err
	}
	if err := checkBumped(readings); err != nil {
		return BumpStep{}, err
	}
	if len(readings) == 0 {
		travel, err := b.travel(b.Target + b.Springback)
		if err != nil {
			return BumpStep{}, err
		}
		strokes := quarters(firstShare * travel.Travel / b.Stroke)
		if strokes == 0 {
			if vernier*b.Stroke > stepShare*travel.Travel {
				return BumpStep{Done: true, Why: fmt.Sprintf("a quarter of a stroke, %.2g mm, might go beyond: this press is too coarse for the fold", vernier*b.Stroke)}, nil
			}
			strokes = vernier
		}
		return BumpStep{Strokes: strokes, Expect: b.Target, Why: "0.6 of the strokes that are predicted; count from where the ram touches"}, nil
	}
	return b.step(readings), nil
}

func (b Bumping) step(readings []Bumped) BumpStep {
	last := readings[len(readings)-1].Angle
	gap := b.Target - last
	switch {
	case gap < -nearEnough:
		return BumpStep{Done: true, Expect: last, Why: fmt.Sprintf("%.3g deg beyond: note it; bending back by more than about 1 deg works the metal twice", -gap)}
	case gap <= nearEnough:
		return BumpStep{Done: true, Expect: last, Why: "within half a degree"}
	}
	s, reserve := b.believed(readings)
	strokes := quarters(stepShare * gap / s)
	if strokes == 0 && vernier*s*reserve <= gap {
		strokes = vernier
	}
	if strokes == 0 {
		return BumpStep{Done: true, Expect: last, Why: fmt.Sprintf("%.2g deg short, and a quarter of a stroke might go beyond", gap)}
	}
	return BumpStep{Strokes: strokes, Expect: last + strokes*s, Why: fmt.Sprintf("0.7 of %.3g deg at %.3g deg a stroke", gap, s)}
}

// believed is the slope that the readings bear out for what is left to go, deg a stroke,
// and how many times as much a quarter of a stroke may fold.
func (b Bumping) believed(readings []Bumped) (slope, reserve float64) {
	predicted := b.ahead(readings[len(readings)-1].Angle)
	var kept []Bumped
	for _, r := range readings {
		if r.Angle >= plasticFrom {
			kept = append(kept, r)
		}
	}
	grown := func(from, to Bumped) float64 {
		return between(from, to) * max(1, predicted/b.slope((from.Angle+to.Angle)/2))
	}
	n := len(kept)
	if n < 2 {
		if k := len(readings); k > 1 {
			predicted = max(predicted, grown(readings[k-2], readings[k-1]))
		}
		return predicted, firstReserve
	}
	return max(leastSlope*predicted, grown(kept[n-2], kept[n-1]), grown(kept[0], kept[n-1])), lastReserve
}

func between(a, b Bumped) float64 { return (b.Angle - a.Angle) / (b.Strokes - a.Strokes) }

func quarters(strokes float64) float64 { return math.Floor(strokes/vernier) * vernier }

func checkBumped(readings []Bumped) error {
	for i, r := range readings {
		if !(r.Strokes > 0 && r.Strokes <= 1e6) || !(r.Angle >= 0 && r.Angle <= 179) {
			return fmt.Errorf("reading %d is none: %g deg after %g strokes", i+1, r.Angle, r.Strokes)
		}
		if i > 0 && !(r.Strokes > readings[i-1].Strokes) {
			return fmt.Errorf("reading %d counts %g strokes in all, not more than the %g before it", i+1, r.Strokes, readings[i-1].Strokes)
		}
		if i > 0 && r.Angle < readings[i-1].Angle-1 {
			return fmt.Errorf("reading %d is %g deg, less than the %g before it: has the part slipped, or was it measured elsewhere?", i+1, r.Angle, readings[i-1].Angle)
		}
	}
	return nil
}

// BumpRow is a line of the sheet at the press: from a measured angle, so many strokes.
type BumpRow struct{ Angle, Strokes float64 }

// Sheet is the table to hang at the press: the strokes from each measured angle, by the
// predicted slope, in steps of some degrees. A line without strokes is near enough.
func (b Bumping) Sheet(step float64) ([]BumpRow, error) {
	if err := b.check(); err != nil {
		return nil, err
	}
	if !(step >= 0.1 && step <= b.Target) {
		return nil, fmt.Errorf("a sheet goes in steps of 0.1 deg to the wanted angle, not of %g", step)
	}
	var rows []BumpRow
	for k := 0; float64(k)*step < b.Target; k++ {
		angle := float64(k) * step
		strokes := 0.0
		if s := b.step([]Bumped{{1, angle}}); !s.Done {
			strokes = s.Strokes
		}
		rows = append(rows, BumpRow{angle, strokes})
	}
	return append(rows, BumpRow{b.Target, 0}), nil
}
