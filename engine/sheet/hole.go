package sheet

import (
	"fmt"
	"math"
)

// Hole is a hole in a flat, round, square or oval.
type Hole struct {
	// Name is what messages call it; "" for its number.
	Name string
	At   Point
	// Diameter is that of a round hole, a square one's width across its flats, or an oval
	// one's width, mm.
	Diameter float64
	Square   bool
	// Long is the whole length of an oval hole, whose ends are half circles, mm; 0 for a
	// hole that is none.
	Long float64
	// Turn is how far a square hole is turned, or the length of an oval one from X, deg.
	Turn float64
}

// Contour is the edge of the hole.
func (h Hole) Contour() Contour {
	r := h.Diameter / 2
	switch {
	case h.Long > 0:
		return h.slot()
	case !h.Square:
		return Contour{{h.At.X - r, h.At.Y, 1}, {h.At.X + r, h.At.Y, 1}}
	}
	c := make(Contour, 4)
	for i := range c {
		sin, cos := math.Sincos(radians(h.Turn + 45 + 90*float64(i)))
		c[i] = Vertex{h.At.X + math.Sqrt2*r*cos, h.At.Y + math.Sqrt2*r*sin, 0}
	}
	return c
}

// Apart is the metal between two holes, 0 or less if they meet.
func (h Hole) Apart(o Hole) float64 {
	switch {
	case !h.Square && !o.Square && h.Long == 0 && o.Long == 0:
		return h.At.distance(o.At) - (h.Diameter+o.Diameter)/2
	case !h.Square && !o.Square:
		return h.middlesApart(o) - (h.Diameter+o.Diameter)/2
	case h.Contour().Contains(o.At) || o.Contour().Contains(h.At):
		return min(0, h.At.distance(o.At)-(h.Diameter+o.Diameter)/2)
	}
	if d := h.At.distance(o.At); d < (h.Diameter+o.Diameter)/2 {
		// Either holds a part of the other's middle.
		return d - (h.Diameter+o.Diameter)/2
	}
	return h.Contour().Apart(o.Contour())
}

// ToEdge is the metal between the hole and a contour, less than 0 if the hole breaks
// through it or lies outside.
func (h Hole) ToEdge(c Contour) float64 {
	middle := c.Distance(h.At)
	if !c.Contains(h.At) {
		return -middle - h.Diameter/2
	}
	if !h.Square && h.Long == 0 {
		return middle - h.Diameter/2
	}
	if apart := h.Contour().Apart(c); apart > 0 {
		return apart
	}
	if h.Long > 0 {
		return min(0, middle-h.Long/2)
	}
	return min(0, middle-h.Diameter/2*math.Sqrt2)
}

// toLine is the metal between the hole and the middle line of a fold.
func (h Hole) toLine(p placedFold) float64 {
	middle := math.Abs(p.beyond(h.At))
	side := math.Copysign(1, p.beyond(h.At))
	switch {
	case h.Long > 0:
		from, to := h.middles()
		return min(side*p.beyond(from), side*p.beyond(to)) - h.Diameter/2
	case !h.Square:
		return middle - h.Diameter/2
	}
	for _, v := range h.Contour() {
		middle = min(middle, side*p.beyond(Point{v.X, v.Y}))
	}
	return middle
}

func (h Hole) check(name string) error {
	var in inputs
	in.must(h.At.finite(), "the place of %s is not finite: (%g, %g)", name, h.At.X, h.At.Y)
	in.must(h.Diameter > 0 && h.Diameter <= most, "%s can't be %g mm across", name, h.Diameter)
	in.must(h.Long == 0 || h.Long > h.Diameter && h.Long <= most && !h.Square, "%s can't be %g mm long and %g mm wide: an oval hole is longer than it is wide", name, h.Long, h.Diameter)
	in.must(math.Abs(h.Turn) <= 360, "%s can't be turned by %g deg", name, h.Turn)
	return in.err
}

// holeName is what messages call a hole: by its name, or by its number from 1.
func holeName(h Hole, i int) string {
	if h.Name != "" {
		return h.Name
	}
	return fmt.Sprintf("hole %d", i+1)
}
