package sheet

import "math"

// farOff is how many times the tolerance a candidate may be out before it is refined.
// Measured outlines shift middle and axis by little more than the tolerance itself.
const farOff = 6

// refine lays s better on o: samples of its outline on the nearest points of the other,
// holes on their partners, and so again. A candidate that is far off is not worth it.
func (s *shape) refine(o *shape, p pose, l Likeness) (pose, bool) {
	wide, rounds := l, 12
	wide.Outline, wide.HolePlace = farOff*l.Outline, farOff*l.HolePlace
	if !s.elongated {
		// Steps of five degrees leave the rim by a twentieth of its radius.
		wide.Outline += 0.05 * s.marks.across
		wide.HolePlace += 0.05 * s.marks.across
		// Sides slide along each other, so turning by those degrees takes its time.
		rounds = 300
	}
	if _, ok := s.holesMeet(o, p, wide); !ok {
		return p, false
	}
	if off := s.furthest(o, p, 7); off > wide.Outline {
		return p, false
	}
	for range rounds {
		points, targets, weights := s.pairs(o, p, wide)
		next := bestPose(points, targets, weights, p.mirrored)
		settled := math.Abs(math.Remainder(next.turned()-p.turned(), 360)) < 1e-7 && next.place(s.centre).distance(p.place(s.centre)) < 1e-6
		p = next
		if settled {
			break
		}
	}
	return p, true
}

// furthest is how far some samples lie from the other outline, every so many.
func (s *shape) furthest(o *shape, p pose, every int) float64 {
	far := 0.0
	for i := 0; i < len(s.samples); i += every {
		far = max(far, o.off(p.place(s.samples[i])))
	}
	return far
}

// off is how far a point lies from the outline.
func (s *shape) off(p Point) float64 {
	least := math.Inf(1)
	for _, piece := range s.pieces {
		least = min(least, piece.distanceTo(p))
	}
	return least
}

// pairs are the points to lay on each other. All holes together count as much as the
// outline, for both were drawn or measured with the same care.
func (s *shape) pairs(o *shape, p pose, l Likeness) (points, targets []Point, weights []float64) {
	for i := 0; i < len(s.samples); i += 3 {
		at := p.place(s.samples[i])
		nearest, off := Point{}, math.Inf(1)
		for _, piece := range o.pieces {
			q := piece.nearest(at)
			if d := q.distance(at); d < off {
				nearest, off = q, d
			}
		}
		points, targets, weights = append(points, s.samples[i]), append(targets, nearest), append(weights, 1)
	}
	partners, ok := partners(s.flat.Holes, o.flat.Holes, p, l)
	if !ok {
		return points, targets, weights
	}
	weight := float64(len(points)) / float64(max(1, len(partners)))
	for i, k := range partners {
		points, targets, weights = append(points, s.flat.Holes[i].At), append(targets, o.flat.Holes[k].At), append(weights, weight)
	}
	return points, targets, weights
}

// partners gives for each hole the other that it lies on, each taken once.
func partners(holes, others []Hole, p pose, l Likeness) ([]int, bool) {
	taken := make([]bool, len(others))
	list := make([]int, len(holes))
	for i, h := range holes {
		at, best, off := p.place(h.At), -1, l.HolePlace
		for k, other := range others {
			if d := other.At.distance(at); !taken[k] && sameHole(h, other, l) && d <= off {
				best, off = k, d
			}
		}
		if best < 0 {
			return nil, false
		}
		taken[best], list[i] = true, best
	}
	return list, true
}

// sameHole tells whether two holes are of one shape and size.
func sameHole(h, o Hole, l Likeness) bool {
	return h.Square == o.Square && (h.Long > 0) == (o.Long > 0) && math.Abs(h.Diameter-o.Diameter) <= l.HoleSize && math.Abs(h.Long-o.Long) <= l.HoleSize
}

// holesMeet tells whether the holes lie on each other one to one, those that are cut and
// those that are drilled later, and how far the worst is off.
func (s *shape) holesMeet(o *shape, p pose, l Likeness) (worst float64, ok bool) {
	if worst, ok = meet(s.flat.Holes, o.flat.Holes, p, l); !ok {
		return worst, false
	}
	later, ok := meet(s.flat.Later, o.flat.Later, p, l)
	return max(worst, later), ok
}

func meet(holes, others []Hole, p pose, l Likeness) (worst float64, ok bool) {
	list, ok := partners(holes, others, p, l)
	for i, k := range list {
		h, other := holes[i], others[k]
		worst = max(worst, p.place(h.At).distance(other.At))
		if turnedOff(h, other, p) > l.HolePlace {
			return worst, false
		}
	}
	return worst, ok
}

// turnedOff is how far the corners of two square holes, or the ends of two oval ones, are
// turned from each other.
func turnedOff(h, other Hole, p pose) float64 {
	turn := h.Turn
	if p.mirrored {
		turn = -turn
	}
	turn += p.turned() - other.Turn
	switch {
	case h.Square:
		return math.Abs(radians(math.Remainder(turn, 90))) * h.Diameter / math.Sqrt2
	case h.Long > 0:
		return math.Abs(radians(math.Remainder(turn, 180))) * (h.Long - h.Diameter) / 2
	}
	return 0
}

// outlinesMeet tells whether neither outline leaves the other by more than a distance,
// and by how much at the most.
func (s *shape) outlinesMeet(o *shape, p pose, within float64) (worst float64, ok bool) {
	for _, sample := range s.samples {
		if worst = max(worst, o.off(p.place(sample))); worst > within {
			return worst, false
		}
	}
	for _, sample := range o.samples {
		if worst = max(worst, s.off(p.back(sample))); worst > within {
			return worst, false
		}
	}
	return worst, true
}

// back is where a placed point came from.
func (p pose) back(a Point) Point {
	d := a.minus(p.shift)
	b := Point{p.cos*d.X + p.sin*d.Y, -p.sin*d.X + p.cos*d.Y}
	if p.mirrored {
		b.Y = -b.Y
	}
	return b
}

// foldsMeet tells whether the fold lines lie on each other and all folds turn the same
// way, and whether all turn the other way; without folds both hold.
func (s *shape) foldsMeet(o *shape, p pose, l Likeness) (same, opposite bool) {
	same, opposite = true, true
	taken := make([]bool, len(o.folds))
	for _, a := range s.folds {
		from, to := p.place(a.from), p.place(a.to)
		found := false
		for k, b := range o.folds {
			ends := min(max(from.distance(b.from), to.distance(b.to)), max(from.distance(b.to), to.distance(b.from)))
			if taken[k] || ends > l.FoldLine || math.Abs(a.fold.Radius-b.fold.Radius) > l.FoldRadius {
				continue
			}
			taken[k], found = true, true
			same = same && math.Abs(a.fold.Angle-b.fold.Angle) <= l.FoldAngle
			opposite = opposite && math.Abs(a.fold.Angle+b.fold.Angle) <= l.FoldAngle
			break
		}
		if !found {
			return false, false
		}
	}
	return same, opposite
}
