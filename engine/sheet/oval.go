package sheet

import "math"

// An oval hole is what a round one leaves whose middle runs along a straight line: two
// half circles and the straight sides between them.

// middles are the middles of the two ends of a hole; of one that is not oval both are its
// own.
func (h Hole) middles() (from, to Point) {
	if h.Long == 0 {
		return h.At, h.At
	}
	sin, cos := math.Sincos(radians(h.Turn))
	half := Point{cos, sin}.times((h.Long - h.Diameter) / 2)
	return h.At.minus(half), h.At.plus(half)
}

// slot is the edge of an oval hole, anticlockwise.
func (h Hole) slot() Contour {
	from, to := h.middles()
	sin, cos := math.Sincos(radians(h.Turn))
	side := Point{-sin, cos}.times(h.Diameter / 2)
	a, b, c, d := from.minus(side), to.minus(side), to.plus(side), from.plus(side)
	return Contour{{a.X, a.Y, 0}, {b.X, b.Y, 1}, {c.X, c.Y, 0}, {d.X, d.Y, 1}}
}

// middlesApart is the least distance between the lines along which the middles of two
// holes run, of which either may be a point.
func (h Hole) middlesApart(o Hole) float64 {
	a, b := h.middles()
	c, d := o.middles()
	sides := func(a, b, p, q Point) float64 {
		along := b.minus(a)
		return along.cross(p.minus(a)) * along.cross(q.minus(a))
	}
	if sides(a, b, c, d) < 0 && sides(c, d, a, b) < 0 {
		return 0
	}
	return min(toStraight(c, a, b), toStraight(d, a, b), toStraight(a, c, d), toStraight(b, c, d))
}

// toStraight is how far a point is from the straight piece between a and b.
func toStraight(p, a, b Point) float64 {
	along := b.minus(a)
	size := along.dot(along)
	if size == 0 {
		return p.distance(a)
	}
	return p.distance(a.between(b, min(1, max(0, p.minus(a).dot(along)/size))))
}

// Reach is how far the hole reaches from its middle in a direction, mm.
//
// Equation: d/2; for a square one d/2 (|cos b| + |sin b|); for an oval one
// d/2 + (long - d)/2 |cos b|.
//
// Symbols: d the diameter or width, long the length, mm; b the angle between the
// direction and the way the hole is turned, deg; direction from X, deg. Source: geometry
// (computed).
func (h Hole) Reach(direction float64) float64 {
	sin, cos := math.Sincos(radians(direction - h.Turn))
	switch r := h.Diameter / 2; {
	case h.Square:
		return r * (math.Abs(sin) + math.Abs(cos))
	case h.Long > 0:
		return r + (h.Long/2-r)*math.Abs(cos)
	default:
		return r
	}
}

// Widest is how far its edge lies from its middle where it is farthest, mm.
func (h Hole) Widest() float64 {
	if h.Square {
		return h.Diameter / 2 * math.Sqrt2
	}
	return max(h.Diameter, h.Long) / 2
}
