package sheet

import (
	"fmt"
	"math"
)

// Vertex is a corner of a contour. Bulge is a quarter of the tangent's way to the
// next corner: tan(turn/4), 0 for a line, 1 for half a circle, positive
// counter-clockwise.
type Vertex struct{ X, Y, Bulge float64 }

// Contour is a closed line of straight pieces and arcs; the last corner leads back to
// the first.
type Contour []Vertex

// mostBulge is all but a whole circle in one arc.
const mostBulge = 100

// segments are the pieces in order.
func (c Contour) segments() []segment {
	list := make([]segment, len(c))
	for i, v := range c {
		list[i] = newSegment(v, c[(i+1)%len(c)])
	}
	return list
}

// signed is the area, positive if the contour runs counter-clockwise.
func (c Contour) signed() float64 {
	sum := 0.0
	for _, s := range c.segments() {
		sum += s.area()
	}
	return sum
}

// Area is what the contour encloses, mm2: the polygon of its corners and the segment
// of a circle under each arc, r^2 (turn - sin(turn))/2. It is exact.
func (c Contour) Area() float64 { return math.Abs(c.signed()) }

// Perimeter is the length of the contour, mm.
func (c Contour) Perimeter() float64 {
	sum := 0.0
	for _, s := range c.segments() {
		sum += s.length()
	}
	return sum
}

// Bounds are the corners of the smallest upright rectangle around the contour.
func (c Contour) Bounds() (low, high Point) {
	low, high = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	take := func(p Point) {
		low = Point{min(low.X, p.X), min(low.Y, p.Y)}
		high = Point{max(high.X, p.X), max(high.Y, p.Y)}
	}
	for _, s := range c.segments() {
		take(s.from)
		for quarter := range 4 {
			if p := s.onCircle(float64(quarter) * math.Pi / 2); s.arc() && s.spans(p) {
				take(p)
			}
		}
	}
	return low, high
}

// Across is from where to where the contour lies beside a point within it, on the line
// through the point square to the X axis; ok is false for a point that is not within.
func (c Contour) Across(p Point) (low, high float64, ok bool) {
	if !c.Contains(p) {
		return 0, 0, false
	}
	below, above := c.Bounds()
	line := segment{from: Point{p.X, below.Y - 1}, to: Point{p.X, above.Y + 1}}
	low, high = below.Y, above.Y
	for _, s := range c.segments() {
		for _, x := range line.crossings(s) {
			if x.Y <= p.Y {
				low = max(low, x.Y)
			} else {
				high = min(high, x.Y)
			}
		}
	}
	return low, high, true
}

// Flatten is the contour as a polygon whose sides leave its arcs by no more than a
// height, mm.
func (c Contour) Flatten(height float64) []Point {
	var points []Point
	for _, s := range c.segments() {
		n := s.pieces(height)
		for i := range n {
			points = append(points, s.at(float64(i)/float64(n)))
		}
	}
	return points
}

// mostPieces bounds what an arc is cut into.
const mostPieces = 2000

// pieces is how many chords stay within a height of the arc.
func (s segment) pieces(height float64) int {
	if !s.arc() {
		return 1
	}
	step := math.Pi / 2
	if height < s.radius {
		step = min(step, 2*math.Acos(1-height/s.radius))
	}
	return max(1, int(min(mostPieces, math.Ceil(math.Abs(s.sweep)/step))))
}

// Distance is how far a point lies from the contour, on either side of it.
func (c Contour) Distance(p Point) float64 {
	nearest := math.Inf(1)
	for _, s := range c.segments() {
		nearest = min(nearest, s.distanceTo(p))
	}
	return nearest
}

// Contains tells whether a point lies within the contour. Three rays are counted and
// two of them decide, so that one that grazes a corner does no harm.
func (c Contour) Contains(p Point) bool {
	low, high := c.Bounds()
	if p.X < low.X || p.X > high.X || p.Y < low.Y || p.Y > high.Y {
		return false
	}
	far := 2*low.distance(high) + 1
	votes := 0
	for _, angle := range []float64{0.7391, 2.8317, 4.9213} {
		sin, cos := math.Sincos(angle)
		ray := segment{from: p, to: p.plus(Point{far * cos, far * sin})}
		crossings := 0
		for _, s := range c.segments() {
			crossings += len(ray.crossings(s))
		}
		votes += crossings % 2
	}
	return votes >= 2
}

// Mirrored is the contour mirrored across the X axis.
func (c Contour) Mirrored() Contour {
	n := len(c)
	list := make(Contour, n)
	for i := range c {
		// Run the other way round, so that it stays counter-clockwise if it was.
		v, before := c[n-1-i], c[(2*n-2-i)%n]
		list[i] = Vertex{v.X, -v.Y, before.Bulge}
	}
	return list
}

// Check refuses a contour that is none: with numbers that are none, with too few
// corners, with two corners in one place, or that touches or crosses itself.
func (c Contour) Check() error {
	if len(c) < 2 {
		return fmt.Errorf("an outline needs two corners at least, and there are %d", len(c))
	}
	for i, v := range c {
		next := c[(i+1)%len(c)]
		switch {
		case !(Point{v.X, v.Y}).finite() || !(math.Abs(v.Bulge) <= mostBulge):
			return fmt.Errorf("corner %d of the outline is not finite: (%g, %g) with a bulge of %g", i+1, v.X, v.Y, v.Bulge)
		case math.Hypot(v.X-next.X, v.Y-next.Y) < touching:
			return fmt.Errorf("corners %d and %d of the outline are in one place", i+1, (i+1)%len(c)+1)
		}
	}
	if err := c.checkCrossing(); err != nil {
		return err
	}
	if c.Area() < touching {
		return fmt.Errorf("the outline encloses nothing")
	}
	return nil
}
