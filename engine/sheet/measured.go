package sheet

import (
	"fmt"
	"math"
)

// Measured is an old part as it was measured: folded, from outside. Legs are read along
// the strip's centre line from outer corner to outer corner.
type Measured struct {
	Thickness, Width Reading
	Legs             []Reading
	Folds            []MeasuredFold
	Holes            []MeasuredHole
	// Chords are straight distances between holes across the folds, read on face A as a
	// check on all the rest.
	Chords []MeasuredChord
}

// MeasuredFold is a fold of the old part. Angle is positive towards face A. A Skew that
// was not read is a fold square to the strip.
type MeasuredFold struct {
	Angle, Radius, Skew Reading
	// K is the neutral line in thicknesses as a test strip gave it, 0 for DIN 6935.
	K float64
}

// MeasuredHole is a hole on a leg, counted from 1: how far its middle lies along it from
// the corner before it (FromFar: from the corner behind it) and across it from the
// centre line, positive towards positive Y.
type MeasuredHole struct {
	Name          string
	Leg           int
	FromFar       bool
	Along, Across Reading
}

// MeasuredChord is the straight distance between the middles of two holes on face A.
type MeasuredChord struct {
	From, To string
	Length   Reading
}

// Development is the flat that a measured part comes from.
type Development struct {
	Strip FoldedStrip
	// Length is the flat's, Folds are the places of the fold lines.
	Length Uncertain
	Folds  []Uncertain
	Holes  []LaidHole
	Chords []CheckedChord
}

// LaidHole is a hole in the flat.
type LaidHole struct {
	Name string
	At   Point
	// Flat is how well its place in the flat is known, Folded how well a new part,
	// folded from that flat, meets the old part's hole in space when both are held by
	// their first leg.
	Flat, Folded Spread
}

// CheckedChord is a straight distance between holes as it was read and as the flat has
// it when folded.
type CheckedChord struct {
	From, To     string
	Read, Folded float64
	Uncertainty  float64
}

// check refuses readings that are none, and counts and names that don't fit each other,
// before anything is worked out.
func (m Measured) check() error {
	if len(m.Folds) > mostFolds {
		return fmt.Errorf("a strip with %d folds is beyond this layout, which takes up to %d", len(m.Folds), mostFolds)
	}
	if len(m.Legs) != len(m.Folds)+1 {
		return fmt.Errorf("%d folds part a strip into %d legs, and %d are given", len(m.Folds), len(m.Folds)+1, len(m.Legs))
	}
	var first error
	take := func(r Reading, unit, format string, args ...any) {
		if err := r.check(fmt.Sprintf(format, args...), unit); first == nil {
			first = err
		}
	}
	take(m.Thickness, "mm", "thickness")
	take(m.Width, "mm", "width")
	for i, leg := range m.Legs {
		take(leg, "mm", "leg %d", i+1)
	}
	for i, f := range m.Folds {
		take(f.Angle, "deg", "angle of %s", foldName(i))
		take(f.Radius, "mm", "inside radius of %s", foldName(i))
		if f.Skew.taken() {
			take(f.Skew, "deg", "skew of %s", foldName(i))
		}
	}
	for i, h := range m.Holes {
		take(h.Along, "mm", "%s along its leg", m.holeName(i))
		take(h.Across, "mm", "%s across its leg", m.holeName(i))
		if first == nil && (h.Leg < 1 || h.Leg > len(m.Legs)) {
			first = fmt.Errorf("%s is said to lie on leg %d of %d", m.holeName(i), h.Leg, len(m.Legs))
		}
	}
	for _, c := range m.Chords {
		take(c.Length, "mm", "the distance from %s to %s", c.From, c.To)
	}
	if first != nil {
		return first
	}
	return m.checkNames()
}

// checkNames refuses two holes of one name, and straight distances of holes that are
// none.
func (m Measured) checkNames() error {
	for i := range m.Holes {
		if first, _ := m.hole(m.holeName(i)); first != i {
			return fmt.Errorf("two holes are called %s", m.holeName(i))
		}
	}
	for _, c := range m.Chords {
		for _, name := range []string{c.From, c.To} {
			if _, err := m.hole(name); err != nil {
				return err
			}
		}
	}
	return nil
}

func (m Measured) holeName(i int) string { return holeName(Hole{Name: m.Holes[i].Name}, i) }

// hole finds a hole by its name.
func (m Measured) hole(name string) (int, error) {
	for i := range m.Holes {
		if m.holeName(i) == name {
			return i, nil
		}
	}
	return 0, fmt.Errorf("no hole is called %q", name)
}

// Develop lays the part out flat and says how well each hole's place is known.
//
// Equation: the flat as OutsideLegs has it, at the means of the readings; the standard
// uncertainty of a place p by first-order propagation,
//
//	u(p)^2 = sum over all inputs x of (dp/dx)^2 u(x)^2
//
// with derivatives by central differences. The neutral line is one input for all folds
// that have none of their own: its published methods differ alike on all of them, and
// u is their spread over sqrt(12).
//
// Source: geometry (computed); propagation as the Guide to the expression of
// uncertainty in measurement has it, JCGM 100:2008, 5.1 (memory). Errors: readings that
// are none or disagree, naming them; legs and folds as OutsideLegs; a hole that lies in
// a fold or off its strip; a straight distance between holes that the flat contradicts
// by more than three times its uncertainty.
func (m Measured) Develop() (Development, error) {
	if err := m.check(); err != nil {
		return Development{}, err
	}
	o := OutsideLegs{Thickness: m.Thickness.Mean(), Width: m.Width.Mean()}
	for _, leg := range m.Legs {
		o.Legs = append(o.Legs, leg.Mean())
	}
	for _, f := range m.Folds {
		fold := Fold{Angle: f.Angle.Mean(), Radius: f.Radius.Mean(), K: f.K}
		if f.Skew.taken() {
			fold.Skew = f.Skew.Mean()
		}
		o.Folds = append(o.Folds, fold)
	}
	strip, err := o.Develop()
	if err != nil {
		return Development{}, err
	}
	if err := m.checkHoles(strip); err != nil {
		return Development{}, err
	}
	return m.spread(strip, m.inputs())
}

// checkHoles refuses holes in a fold or off the strip.
func (m Measured) checkHoles(strip FoldedStrip) error {
	folding, err := NewFolding(strip)
	if err != nil {
		return err
	}
	l := m.laid(nominal(m.inputs()))
	for i, at := range l.holes {
		if k := folding.InFold(at); k > 0 {
			return fmt.Errorf("%s comes to lie in fold %d, where nothing measured on a leg can be", m.holeName(i), k)
		}
		start, end := l.legEnds(m.Holes[i].Leg - 1)
		if at.X < start || at.X > end || math.Abs(at.Y) > strip.Width/2 {
			return fmt.Errorf("%s comes to lie off leg %d, at (%.4g, %.4g) mm of a flat %.4g mm long", m.holeName(i), m.Holes[i].Leg, at.X, at.Y, strip.Length)
		}
	}
	return nil
}
