package sheet

import "fmt"

// touching is how near two places are for them to be one, mm.
const touching = 1e-7

// adjoining is how near their common corner two neighbours may meet again, mm: an arc
// whose numbers are rounded leaves a line a little out of its tangent.
const adjoining = 0.05

// checkCrossing refuses a contour that touches or crosses itself. Pieces are compared
// in pairs, those far apart by their bounds alone.
func (c Contour) checkCrossing() error {
	pieces := c.segments()
	n := len(pieces)
	boxes := make([]box, n)
	for i, s := range pieces {
		boxes[i] = s.box()
	}
	for i := range n {
		for j := i + 1; j < n; j++ {
			if !boxes[i].meets(boxes[j]) {
				continue
			}
			for _, p := range pieces[i].common(pieces[j]) {
				shared := j == i+1 && p.distance(pieces[j].from) < adjoining || i == (j+1)%n && p.distance(pieces[i].from) < adjoining
				if !shared {
					return fmt.Errorf("the outline meets itself at (%.4g, %.4g) mm, between corners %d and %d", p.X, p.Y, i+1, j+1)
				}
			}
		}
	}
	return nil
}

// common are the points in which two pieces cross, and the ends of either that lie on
// the other.
func (s segment) common(o segment) []Point {
	points := s.crossings(o)
	for _, p := range []Point{s.from, s.to} {
		if o.distanceTo(p) < touching {
			points = append(points, p)
		}
	}
	for _, p := range []Point{o.from, o.to} {
		if s.distanceTo(p) < touching {
			points = append(points, p)
		}
	}
	return points
}

// box is an upright rectangle.
type box struct{ low, high Point }

func (s segment) box() box {
	b := box{Point{min(s.from.X, s.to.X), min(s.from.Y, s.to.Y)}, Point{max(s.from.X, s.to.X), max(s.from.Y, s.to.Y)}}
	if s.arc() {
		// The whole circle is near enough: it only lets more pairs through.
		b.low = Point{s.centre.X - s.radius, s.centre.Y - s.radius}
		b.high = Point{s.centre.X + s.radius, s.centre.Y + s.radius}
	}
	b.low, b.high = b.low.minus(Point{touching, touching}), b.high.plus(Point{touching, touching})
	return b
}

func (b box) meets(o box) bool {
	return b.low.X <= o.high.X && o.low.X <= b.high.X && b.low.Y <= o.high.Y && o.low.Y <= b.high.Y
}

// apart is the least distance between two pieces, 0 if they meet.
func (s segment) apart(o segment) float64 {
	if len(s.crossings(o)) > 0 {
		return 0
	}
	least := min(s.distanceTo(o.from), s.distanceTo(o.to), o.distanceTo(s.from), o.distanceTo(s.to))
	for _, p := range s.facing(o) {
		least = min(least, o.distanceTo(p))
	}
	for _, p := range o.facing(s) {
		least = min(least, s.distanceTo(p))
	}
	return least
}

// facing are the inner points of a piece that may be the nearest to another: the foot
// of an arc's centre on a line, and the ends of a circle's diameter towards a centre.
func (s segment) facing(o segment) []Point {
	switch {
	case !o.arc():
		if !s.arc() {
			return nil
		}
		return s.towards(o.nearest(s.centre))
	case s.arc():
		return s.towards(o.centre)
	}
	return []Point{s.nearest(o.centre)}
}

// towards are the points of an arc on the line through its centre and another point.
func (s segment) towards(p Point) []Point {
	d := p.minus(s.centre)
	if d.size() == 0 {
		return []Point{s.from}
	}
	var points []Point
	for _, side := range []float64{1, -1} {
		if q := s.centre.plus(d.times(side * s.radius / d.size())); s.spans(q) {
			points = append(points, q)
		}
	}
	return points
}

// Apart is the least distance between two contours, 0 if they meet.
func (c Contour) Apart(o Contour) float64 {
	least := most
	for _, s := range c.segments() {
		for _, p := range o.segments() {
			least = min(least, s.apart(p))
		}
	}
	return least
}
