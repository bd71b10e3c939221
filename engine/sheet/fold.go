package sheet

import (
	"fmt"
	"math"
)

// mostFolds is how many folds a strip may have here. Fittings have up to three, and
// the order of more would be a matter for a fabricator.
const mostFolds = 3

// Fold is a fold of a strip, placed in its flat.
type Fold struct {
	// At is where its middle line crosses the strip's centre line, mm from X = 0.
	At float64
	// Angle is how far it turns the metal from flat, deg: positive towards face A.
	Angle float64
	// Radius is its inside radius, mm.
	Radius float64
	// K is the neutral line from the inside face in thicknesses; 0 takes DIN 6935.
	K float64
	// Skew is how far its line is turned from square to the strip, deg: positive if
	// the line runs forward on the side of positive Y.
	Skew float64
}

// The most that a fold line may be turned from square: beyond it the fold runs along
// the strip rather than across.
const mostSkew = 60

// check refuses a fold that is none; name says which it is.
func (f Fold) check(name string, thickness float64) error {
	var in inputs
	in.finite("the place of "+name, f.At, "mm")
	in.must(math.Abs(f.Angle) > 0 && math.Abs(f.Angle) <= 179, "%s turns by %g deg: a fold turns by more than 0 and less than 180 deg", name, f.Angle)
	in.must(f.Radius > 0 && f.Radius <= most, "%s has an inside radius of %g mm, which must be above 0 mm", name, f.Radius)
	in.must(f.K >= 0 && f.K <= 0.5, "%s has its neutral line %g thicknesses from the inside face; it lies within 0 to 0.5", name, f.K)
	in.must(math.Abs(f.Skew) <= mostSkew, "%s is turned %g deg from square; up to %g can be laid out here", name, f.Skew, float64(mostSkew))
	in.must(f.K > 0 || f.Radius >= 0.25*thickness, "%s has an inside radius of %g mm in %g mm, sharper than the neutral line is known for; bend a test strip and give its factor", name, f.Radius, thickness)
	return in.err
}

// towardsA is 1 for a fold towards face A, -1 for one away from it.
func (f Fold) towardsA() float64 { return math.Copysign(1, f.Angle) }

// foldName is what messages call the fold at an index.
func foldName(i int) string { return fmt.Sprintf("fold %d", i+1) }

// FoldedStrip is a strip of one thickness and width with its folds in the order in
// which they stand along it. Its flat lies from X = 0 to Length, Y within half of Width
// either way; face A is at depth 0 and face B at Thickness.
type FoldedStrip struct {
	Thickness, Width, Length float64
	Folds                    []Fold
}

// Mirrored is the strip of the other hand: its flat mirrored across the centre line
// and folded the same way.
func (s FoldedStrip) Mirrored() FoldedStrip {
	folds := make([]Fold, len(s.Folds))
	for i, f := range s.Folds {
		f.Skew = -f.Skew
		folds[i] = f
	}
	s.Folds = folds
	return s
}

// FromFaceB is the same strip, seen on face B: its flat mirrored, and every fold turned
// the other way.
func (s FoldedStrip) FromFaceB() FoldedStrip {
	s = s.Mirrored()
	for i := range s.Folds {
		s.Folds[i].Angle = -s.Folds[i].Angle
	}
	return s
}

// OutsideLegs is a folded strip as it is measured: the lengths of its legs along the
// centre line, outside, from outer corner to outer corner; the folds' At is not read.
type OutsideLegs struct {
	Thickness, Width float64
	Legs             []float64
	Folds            []Fold
}

// Develop lays the strip out flat.
//
// Equation, with OSSB and BA of each fold (see Bend) and its skew s:
//
//	length = sum of legs - sum of (2 OSSB - BA)/cos(s)
//	a fold's line stands BA/2/cos(s) beyond the end of the straight before it
//
// Holds for up to three folds. Errors name the leg that is shorter than the setbacks
// of its folds, and the fold that is none.
func (o OutsideLegs) Develop() (FoldedStrip, error) {
	s := FoldedStrip{Thickness: o.Thickness, Width: o.Width}
	if len(o.Folds) > mostFolds {
		return s, fmt.Errorf("a strip with %d folds is beyond this layout, which takes up to %d", len(o.Folds), mostFolds)
	}
	if len(o.Legs) != len(o.Folds)+1 {
		return s, fmt.Errorf("%d folds part a strip into %d legs, and %d are given", len(o.Folds), len(o.Folds)+1, len(o.Legs))
	}
	var in inputs
	in.positive("the thickness", o.Thickness, "mm")
	in.positive("the width of the strip", o.Width, "mm")
	if in.err != nil {
		return s, in.err
	}
	for i, leg := range o.Legs {
		if !(leg > 0 && leg <= most) {
			return s, fmt.Errorf("leg %d can't be %g mm long", i+1, leg)
		}
	}
	for i, f := range o.Folds {
		if err := f.check(foldName(i), o.Thickness); err != nil {
			return s, err
		}
		f.K = f.neutral(o.Thickness)
		s.Folds = append(s.Folds, f)
	}
	straights := s.lay(o.Legs)
	for i, straight := range straights {
		if !(straight >= -touch) {
			return s, fmt.Errorf("leg %d is %.4g mm outside, shorter than the %.4g mm that its folds take of it", i+1, o.Legs[i], o.Legs[i]-straight)
		}
	}
	_, err := NewFolding(s)
	return s, err
}

// lay places the folds for legs of given outside lengths and sets the strip's length.
// It gives the straight part of each leg, which may come out below 0.
func (s *FoldedStrip) lay(legs []float64) (straights []float64) {
	straights = append(straights, legs...)
	s.Length = 0
	for i := range s.Folds {
		f := &s.Folds[i]
		setback, allowance := f.setback(s.Thickness), f.allowance(s.Thickness)
		straights[i] -= setback
		straights[i+1] -= setback
		f.At = s.Length + straights[i] + allowance/2
		s.Length += straights[i] + allowance
	}
	s.Length += straights[len(s.Folds)]
	return straights
}

// setback and allowance are those of the fold along the strip's centre line.
func (f Fold) setback(thickness float64) float64 {
	return (f.Radius + thickness) * math.Tan(radians(math.Abs(f.Angle))/2) / math.Cos(radians(f.Skew))
}

func (f Fold) allowance(thickness float64) float64 {
	return radians(math.Abs(f.Angle)) * (f.Radius + f.neutral(thickness)*thickness) / math.Cos(radians(f.Skew))
}

// neutral is K as given, or by DIN 6935.
func (f Fold) neutral(thickness float64) float64 {
	if f.K != 0 {
		return f.K
	}
	return dinFactor(f.Radius / thickness)
}
