package sheet

import "math"

// segment is one piece of a contour: a line, or an arc if sweep is not 0.
type segment struct {
	from, to     Point
	centre       Point
	radius       float64
	start, sweep float64
}

// straightBulge is a bulge below which an arc is a line: over a metre it would rise
// by half a thousandth of a millimetre, and its centre lie too far off to reckon with.
const straightBulge = 1e-6

// newSegment makes the piece between two corners; the bulge is that of the first.
func newSegment(a, b Vertex) segment {
	s := segment{from: Point{a.X, a.Y}, to: Point{b.X, b.Y}}
	if math.Abs(a.Bulge) < straightBulge {
		return s
	}
	chord := s.to.minus(s.from)
	s.centre = s.from.between(s.to, 0.5).plus(chord.left().times((1 - a.Bulge*a.Bulge) / (4 * a.Bulge)))
	s.radius = chord.size() * (1 + a.Bulge*a.Bulge) / (4 * math.Abs(a.Bulge))
	s.start = math.Atan2(s.from.Y-s.centre.Y, s.from.X-s.centre.X)
	s.sweep = 4 * math.Atan(a.Bulge)
	return s
}

func (s segment) arc() bool { return s.sweep != 0 }

// at is the point at a share of the way.
func (s segment) at(share float64) Point {
	if !s.arc() {
		return s.from.between(s.to, share)
	}
	return s.onCircle(s.start + share*s.sweep)
}

func (s segment) onCircle(angle float64) Point {
	sin, cos := math.Sincos(angle)
	return s.centre.plus(Point{s.radius * cos, s.radius * sin})
}

func (s segment) length() float64 {
	if s.arc() {
		return s.radius * math.Abs(s.sweep)
	}
	return s.from.distance(s.to)
}

// area is what the piece adds to the area of a contour, positive counter-clockwise.
func (s segment) area() float64 {
	a := s.from.cross(s.to) / 2
	if s.arc() {
		a += s.radius * s.radius / 2 * (s.sweep - math.Sin(s.sweep))
	}
	return a
}

// spans tells whether an arc passes through the direction of a point from its centre.
func (s segment) spans(p Point) bool {
	angle := math.Atan2(p.Y-s.centre.Y, p.X-s.centre.X) - s.start
	if s.sweep < 0 {
		angle = -angle
	}
	angle = math.Mod(angle, 2*math.Pi)
	if angle < 0 {
		angle += 2 * math.Pi
	}
	const rounding = 1e-12
	return angle <= math.Abs(s.sweep)+rounding || angle >= 2*math.Pi-rounding
}

// nearest is the point of the piece nearest to another.
func (s segment) nearest(p Point) Point {
	if s.arc() {
		if d := p.minus(s.centre); d.size() > 0 && s.spans(p) {
			return s.centre.plus(d.times(s.radius / d.size()))
		}
		if p.distance(s.from) <= p.distance(s.to) {
			return s.from
		}
		return s.to
	}
	along := s.to.minus(s.from)
	share := p.minus(s.from).dot(along) / along.dot(along)
	return s.from.between(s.to, min(1, max(0, share)))
}

func (s segment) distanceTo(p Point) float64 {
	if s.arc() && p == s.centre {
		return s.radius
	}
	return p.distance(s.nearest(p))
}

// crossings are the points that two pieces have in common, except for what runs along
// each other.
func (s segment) crossings(o segment) []Point {
	switch {
	case !s.arc() && !o.arc():
		return s.lineAndLine(o)
	case s.arc() && o.arc():
		return s.arcAndArc(o)
	case s.arc():
		return o.lineAndArc(s)
	}
	return s.lineAndArc(o)
}

func (s segment) lineAndLine(o segment) []Point {
	u, v := s.to.minus(s.from), o.to.minus(o.from)
	d := u.cross(v)
	if math.Abs(d) <= 1e-14*u.size()*v.size() {
		return nil
	}
	a, b := o.from.minus(s.from).cross(v)/d, o.from.minus(s.from).cross(u)/d
	if a < 0 || a > 1 || b < 0 || b > 1 {
		return nil
	}
	return []Point{s.at(a)}
}

func (s segment) lineAndArc(o segment) []Point {
	u := s.to.minus(s.from)
	size := u.size()
	foot := o.centre.minus(s.from).dot(u) / size
	off := s.from.plus(u.times(foot / size)).distance(o.centre)
	if off > o.radius+touching {
		return nil
	}
	half := math.Sqrt(max(0, o.radius*o.radius-off*off))
	var points []Point
	for _, along := range []float64{foot - half, foot + half} {
		if p := s.at(along / size); along >= 0 && along <= size && o.spans(p) {
			points = append(points, p)
		}
	}
	return points
}

func (s segment) arcAndArc(o segment) []Point {
	u := o.centre.minus(s.centre)
	d := u.size()
	if d == 0 || d > s.radius+o.radius+touching || d < math.Abs(s.radius-o.radius)-touching {
		return nil
	}
	along := (d*d + s.radius*s.radius - o.radius*o.radius) / (2 * d)
	half := math.Sqrt(max(0, s.radius*s.radius-along*along))
	middle := s.centre.plus(u.times(along / d))
	var points []Point
	for _, side := range []float64{-half, half} {
		if p := middle.plus(u.left().times(side / d)); s.spans(p) && o.spans(p) {
			points = append(points, p)
		}
	}
	return points
}
