package strength

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// spin seeks the centre about which a group turns, in places relative to the
// bolts' own centre.
type spin struct {
	places []Vector
	polar  float64
	load   Vector
	moment float64

	at     Vector
	forces []Vector
	needed float64
	// spread is how much farther the farthest bolt is than the bolts' mean distance
	// (root of the mean square). It is held while the centre is sought, because
	// which bolt is the farthest changes with a jerk.
	spread float64
}

func newSpin(e BoltGroupResult) *spin {
	s := &spin{load: e.group.Force, moment: e.momentAtCentre}
	for _, b := range e.group.Bolts {
		p := Vector{b.X, b.Y}.minus(e.centre)
		s.places = append(s.places, p)
		s.polar += p.X*p.X + p.Y*p.Y
	}
	return s
}

// reach is the distance of the farthest bolt from the bolts' own centre.
func (s *spin) reach() float64 {
	far := 0.0
	for _, p := range s.places {
		far = max(far, p.Size())
	}
	return far
}

// turned gives the force of each bolt if the plate turns about a point, sized so
// that their moment about it is the load's, and what they lack of the load.
func (s *spin) turned(at Vector) (forces []Vector, needed float64, lack Vector) {
	far := s.spread * s.meanDistance(at)
	moment := s.moment - (at.X*s.load.Y - at.Y*s.load.X)
	held := 0.0
	for _, p := range s.places {
		d := p.minus(at).Size()
		held += share(d/far) * d
	}
	needed = math.Abs(moment) / held
	lack = Vector{-s.load.X, -s.load.Y}
	for _, p := range s.places {
		arm := p.minus(at)
		f := Vector{}
		if d := arm.Size(); d > 0 {
			size := math.Copysign(needed*share(d/far), moment)
			f = Vector{-size * arm.Y / d, size * arm.X / d}
		}
		forces = append(forces, f)
		lack = Vector{lack.X + f.X, lack.Y + f.Y}
	}
	return forces, needed, lack
}

// meanDistance is the root of the mean square of the bolts' distances.
func (s *spin) meanDistance(at Vector) float64 {
	return math.Sqrt(s.polar/float64(len(s.places)) + at.X*at.X + at.Y*at.Y)
}

// farthest is the greatest distance over the mean one.
func (s *spin) farthest(at Vector) float64 {
	far := 0.0
	for _, p := range s.places {
		far = max(far, p.minus(at).Size())
	}
	return far / s.meanDistance(at)
}

// solve tries starts along the line from the bolts' own centre to the centre of
// the elastic method, the most hopeful first. The curve gives way, so the centre
// lies nearer to the bolts than the elastic one.
func (s *spin) solve() error {
	n := float64(len(s.places)) * s.moment
	elastic := Vector{-s.load.Y * s.polar / n, s.load.X * s.polar / n}
	// A load through one of two bolts turns the plate about the other.
	starts := slices.Clone(s.places)
	for part := 2.0; part > 1e-4; part /= 1.7 {
		starts = append(starts, Vector{part * elastic.X, part * elastic.Y})
	}
	s.spread = 1
	slices.SortStableFunc(starts, func(a, b Vector) int { return cmp.Compare(s.unbalanced(a), s.unbalanced(b)) })
	for _, start := range starts {
		if s.solveFrom(start) {
			return nil
		}
	}
	return fmt.Errorf("no instantaneous centre was found for this group and load")
}

// unbalanced is what lacks of the load times how far away it is noticed: a moment.
// By the load alone a centre at infinity would look like a solution.
func (s *spin) unbalanced(at Vector) float64 {
	_, _, lack := s.turned(at)
	return lack.Size() * (s.reach() + at.Size())
}

// solveFrom seeks the centre with the spread held, and then again with the spread
// that it has there, until that no longer changes.
func (s *spin) solveFrom(start Vector) bool {
	s.at, s.spread = start, s.farthest(start)
	for range 100 {
		if !s.settle() {
			return false
		}
		now := s.farthest(s.at)
		if math.Abs(now-s.spread) <= 1e-12*now {
			return true
		}
		s.spread = now
	}
	return false
}

// settle is Newton's method in two unknowns with the step halved until it helps.
func (s *spin) settle() bool {
	goal := 1e-12*math.Abs(s.moment) + 1e-7*s.load.Size()*s.reach()
	for range 100 {
		if s.unbalanced(s.at) <= goal {
			s.forces, s.needed, _ = s.turned(s.at)
			return true
		}
		if !s.improve() {
			return false
		}
	}
	return false
}

// improve moves the centre by one step. Where it is far away, what lacks is nearly
// straight in the inverse of the distance, so the step is taken in that.
func (s *spin) improve() bool {
	place := func(v Vector) Vector { return v }
	weight := func(Vector) float64 { return 1 }
	at, probe := s.at, s.probe()
	if s.at.Size() > 2*s.reach() {
		place, weight = inverse, Vector.Size
		at = inverse(s.at)
		probe = 1e-4 * at.Size()
	}
	residual := func(v Vector) Vector {
		_, _, lack := s.turned(place(v))
		k := weight(place(v))
		return Vector{k * lack.X, k * lack.Y}
	}
	step, ok := newton(residual, at, probe)
	if !ok {
		return false
	}
	now := s.unbalanced(s.at)
	for scale := 1.0; scale > 1e-9; scale /= 2 {
		next := place(Vector{at.X + scale*step.X, at.Y + scale*step.Y})
		if s.unbalanced(next) < now {
			s.at = next
			return true
		}
	}
	return false
}

// inverse keeps the direction of a place and inverts its distance.
func inverse(v Vector) Vector {
	square := v.X*v.X + v.Y*v.Y
	return Vector{v.X / square, v.Y / square}
}

// newton is the step that would make a residual vanish if it were linear. The
// slope is felt for a probe's length to both sides: the residual curves far more
// across the way to the centre than along it.
func newton(residual func(Vector) Vector, at Vector, probe float64) (Vector, bool) {
	slope := func(dx, dy float64) Vector {
		ahead, behind := residual(Vector{at.X + dx, at.Y + dy}), residual(Vector{at.X - dx, at.Y - dy})
		return Vector{(ahead.X - behind.X) / (2 * probe), (ahead.Y - behind.Y) / (2 * probe)}
	}
	here, byX, byY := residual(at), slope(probe, 0), slope(0, probe)
	det := byX.X*byY.Y - byY.X*byX.Y
	if det == 0 || math.IsNaN(det) {
		return Vector{}, false
	}
	return Vector{(byY.X*here.Y - byY.Y*here.X) / det, (byX.Y*here.X - byX.X*here.Y) / det}, true
}

// probe is how far aside the slope is felt for: little beside the distance to the
// nearest bolt, about which the curve rises without limit.
func (s *spin) probe() float64 {
	nearest := math.Inf(1)
	for _, p := range s.places {
		nearest = min(nearest, p.minus(s.at).Size())
	}
	return max(1e-13*s.reach(), 1e-4*nearest)
}
