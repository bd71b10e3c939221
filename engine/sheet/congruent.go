package sheet

import "math"

// Likeness says how far two flats may differ and still be one pattern. Lengths in mm.
type Likeness struct {
	// Outline is how far either outline may leave the other, HolePlace and HoleSize how
	// far holes may lie apart and differ in diameter, Thickness how far the plates may.
	Outline, HolePlace, HoleSize, Thickness float64
	// FoldLine is how far the ends of a fold line may lie apart, FoldRadius how far inside
	// radii may differ, FoldAngle how far angles may, deg.
	FoldLine, FoldRadius, FoldAngle float64
}

// LikeDrawings are the differences between drawings of one part, LikeMeasured those
// between old parts that were measured (judgement).
var (
	LikeDrawings = Likeness{Outline: 0.05, HolePlace: 0.05, HoleSize: 0.05, Thickness: 0.05, FoldLine: 0.2, FoldRadius: 0.05, FoldAngle: 0.1}
	LikeMeasured = Likeness{Outline: 0.8, HolePlace: 0.5, HoleSize: 0.3, Thickness: 0.3, FoldLine: 3.2, FoldRadius: 2, FoldAngle: 1}
)

// Relation says how two flats belong together.
//
//	laid on as it is, folds the same way              the same part
//	turned over, folds the other way                  the same part, seen from its other face
//	turned over, folds the same way                   the other hand
//	laid on as it is, folds the other way             the other hand
//
// Both: a part without a hand, which serves both sides. A flat whose faces differ can't
// be turned over, so only the first and third lines count for it.
type Relation struct {
	SamePart, OtherHand bool
	// Outline and Holes are the differences that remain, mm, in the better way of laying
	// one on the other.
	Outline, Holes float64
}

// Alike tells whether one cutting program serves both flats.
func (r Relation) Alike() bool { return r.SamePart || r.OtherHand }

// Unhanded tells whether either part serves both sides.
func (r Relation) Unhanded() bool { return r.SamePart && r.OtherHand }

// Congruent tells how one flat belongs to another. Errors: a flat that is none.
func Congruent(a, b Flat, l Likeness) (Relation, error) {
	s, err := newShape(a)
	if err != nil {
		return Relation{}, err
	}
	o, err := newShape(b)
	if err != nil {
		return Relation{}, err
	}
	return s.compare(o, l), nil
}

// compare lays s on o in every way that could fit.
func (s *shape) compare(o *shape, l Likeness) Relation {
	var r Relation
	if !s.mayBe(o, l) {
		return r
	}
	r.Outline, r.Holes = math.Inf(1), math.Inf(1)
	for _, p := range s.candidates(o) {
		p, ok := s.refine(o, p, l)
		if !ok {
			continue
		}
		holes, ok := s.holesMeet(o, p, l)
		if !ok {
			continue
		}
		outline, ok := s.outlinesMeet(o, p, l.Outline)
		if !ok {
			continue
		}
		same, opposite := s.foldsMeet(o, p, l)
		part, other := same, opposite
		if p.mirrored {
			part, other = opposite, same
		}
		if s.flat.OneSided {
			part, other = same && !p.mirrored, same && p.mirrored
		}
		if !part && !other {
			continue
		}
		r.SamePart, r.OtherHand = r.SamePart || part, r.OtherHand || other
		if outline < r.Outline {
			r.Outline, r.Holes = outline, holes
		}
	}
	if !r.Alike() {
		return Relation{}
	}
	return r
}

// mayBe tells by numbers alone whether two flats could be alike.
func (s *shape) mayBe(o *shape, l Likeness) bool {
	a, b := s.flat, o.flat
	if a.Metal != b.Metal || a.OneSided != b.OneSided || len(a.Holes) != len(b.Holes) || len(a.Later) != len(b.Later) || len(a.Folds) != len(b.Folds) || math.Abs(a.Thickness-b.Thickness) > l.Thickness {
		return false
	}
	// What lies between two outlines stays within the tolerance of either.
	band := 2*s.marks.perimeter*l.Outline + math.Pi*l.Outline*l.Outline
	return math.Abs(s.marks.area-o.marks.area) <= band && within(s.marks.across, o.marks.across, l.outlineReach()) && within(s.marks.narrow, o.marks.narrow, l.outlineReach()) &&
		within(s.marks.holeSpan, o.marks.holeSpan, 2*l.HolePlace) && within(s.marks.largest, o.marks.largest, l.HoleSize)
}

// outlineReach is how far the breadths of two outlines within the tolerance can differ:
// by the tolerance at either end, and by what their polygons leave out.
func (l Likeness) outlineReach() float64 { return 2*l.Outline + 4*flatHeight }

func within(a, b, reach float64) bool { return math.Abs(a-b) <= reach }

// candidates are the ways to lay s on o that could fit: middle on middle and long axis
// on long axis, or for shapes without a long axis the longest way between holes on each
// alike, or else round in small steps.
func (s *shape) candidates(o *shape) []pose {
	var list []pose
	add := func(angle float64, mirrored bool) {
		p := pose{mirrored: mirrored}
		p.sin, p.cos = math.Sincos(angle)
		p.shift = o.centre.minus(p.place(s.centre))
		list = append(list, p)
	}
	for _, mirrored := range []bool{false, true} {
		own := s.axis
		if mirrored {
			own = -own
		}
		switch {
		case s.elongated:
			add(o.axis-own, mirrored)
			add(o.axis-own+math.Pi, mirrored)
		case s.marks.holeSpan > 0:
			s.byHoles(o, mirrored, add)
		default:
			for step := range 72 {
				add(float64(step)*math.Pi/36, mirrored)
			}
		}
	}
	return list
}

// byHoles lays the first longest way between holes of s on each of o that is as long,
// give or take what candidates are later refined by.
func (s *shape) byHoles(o *shape, mirrored bool, add func(float64, bool)) {
	direction := func(a, b Hole, mirrored bool) float64 {
		d := b.At.minus(a.At)
		if mirrored {
			d.Y = -d.Y
		}
		return math.Atan2(d.Y, d.X)
	}
	own, found := 0.0, false
	for i, a := range s.flat.Holes {
		for _, b := range s.flat.Holes[i+1:] {
			if !found && a.At.distance(b.At) == s.marks.holeSpan {
				own, found = direction(a, b, mirrored), true
			}
		}
	}
	for _, a := range o.flat.Holes {
		for _, b := range o.flat.Holes {
			if d := a.At.distance(b.At); d > 0 && math.Abs(d-s.marks.holeSpan) < 0.05*s.marks.holeSpan {
				add(direction(a, b, false)-own, mirrored)
			}
		}
	}
}
