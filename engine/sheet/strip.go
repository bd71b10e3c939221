package sheet

import (
	"fmt"
	"math"
)

// EndShape is how an end of a strip is cut.
type EndShape string

const (
	// SquareEnd is cut square, its corners sharp or rounded to Corner.
	SquareEnd EndShape = "square"
	// RoundedEnd is one arc over the whole width: half a circle, or flatter by Radius.
	RoundedEnd EndShape = "rounded"
	// TaperedEnd runs from the strip's width to a round nose of its own, narrower or
	// wider than the strip.
	TaperedEnd EndShape = "tapered"
)

// End is one end of a strip. Lengths in mm.
type End struct {
	Shape EndShape
	// Corner rounds the corners of a square end; 0 leaves them sharp.
	Corner float64
	// Radius is that of a rounded end; 0 takes half the width.
	Radius float64
	// Nose is the diameter of a tapered end's round nose, Taper how far from the tip its
	// sides begin to leave the strip's.
	Nose, Taper float64
}

// Strip is the common outline of a fitting: a strip with shaped ends. It lies from
// X = 0 (Start) to Length (Finish), its centre line on Y = 0.
type Strip struct {
	Length, Width float64
	Start, Finish End
}

// Contour draws the outline counter-clockwise. Errors say which end can't be, and why.
func (s Strip) Contour() (Contour, error) {
	var in inputs
	in.positive("the length of the strip", s.Length, "mm")
	in.positive("the width of the strip", s.Width, "mm")
	if in.err != nil {
		return nil, in.err
	}
	finish, err := s.Finish.corners(s.Width / 2)
	if err != nil {
		return nil, fmt.Errorf("the far end: %w", err)
	}
	start, err := s.Start.corners(s.Width / 2)
	if err != nil {
		return nil, fmt.Errorf("the near end: %w", err)
	}
	if used := -finish[0].X - start[0].X; used > s.Length {
		return nil, fmt.Errorf("the ends take %.4g mm of a strip of %.4g mm", used, s.Length)
	}
	var c Contour
	add := func(v Vertex) {
		if n := len(c); n > 0 && math.Hypot(v.X-c[n-1].X, v.Y-c[n-1].Y) < touching {
			c[n-1] = v
			return
		}
		c = append(c, v)
	}
	for _, v := range finish {
		add(Vertex{s.Length + v.X, v.Y, v.Bulge})
	}
	for _, v := range start {
		add(Vertex{-v.X, -v.Y, v.Bulge})
	}
	if first, last := c[0], c[len(c)-1]; math.Hypot(first.X-last.X, first.Y-last.Y) < touching {
		c = c[:len(c)-1]
	}
	return c, c.Check()
}

// corners runs round an end from the lower edge to the upper, X counted back from the
// tip, h half the width.
func (e End) corners(h float64) ([]Vertex, error) {
	switch e.Shape {
	case SquareEnd, "":
		return e.square(h)
	case RoundedEnd:
		return e.rounded(h)
	case TaperedEnd:
		return e.tapered(h)
	}
	return nil, fmt.Errorf("an end is %s, %s or %s, not %q", SquareEnd, RoundedEnd, TaperedEnd, string(e.Shape))
}

func (e End) square(h float64) ([]Vertex, error) {
	if !(e.Corner >= 0 && e.Corner <= h) {
		return nil, fmt.Errorf("a corner of %g mm radius does not go on a strip of %g mm", e.Corner, 2*h)
	}
	if e.Corner == 0 {
		return []Vertex{{0, -h, 0}, {0, h, 0}}, nil
	}
	quarter, r := math.Tan(math.Pi/8), e.Corner
	return []Vertex{{-r, -h, quarter}, {0, r - h, 0}, {0, h - r, quarter}, {-r, h, 0}}, nil
}

func (e End) rounded(h float64) ([]Vertex, error) {
	r := e.Radius
	if r == 0 {
		r = h
	}
	if !(r >= h && r <= most) {
		return nil, fmt.Errorf("an end of %g mm radius is less than half the strip's %g mm", r, 2*h)
	}
	back, half := math.Sqrt(r*r-h*h)-r, math.Asin(h/r)
	return []Vertex{{back, -h, math.Tan(half / 2)}, {back, h, 0}}, nil
}

// tapered joins the strip's edges to a round nose by their tangents.
func (e End) tapered(h float64) ([]Vertex, error) {
	r := e.Nose / 2
	if !(r > 0 && r <= most && e.Taper > 0 && e.Taper <= most) {
		return nil, fmt.Errorf("a tapered end needs the diameter of its nose and the length of its taper above 0 mm, not %g and %g", e.Nose, e.Taper)
	}
	toStart := Point{r - e.Taper, -h}
	reach := toStart.size()
	if !(reach > r && e.Taper > r) {
		return nil, fmt.Errorf("a taper of %g mm is too short for a nose of %g mm", e.Taper, e.Nose)
	}
	angle := math.Atan2(toStart.Y, toStart.X) + math.Acos(r/reach)
	if !(angle < 0) {
		return nil, fmt.Errorf("a taper of %g mm does not run to a nose of %g mm", e.Taper, e.Nose)
	}
	sin, cos := math.Sincos(angle)
	return []Vertex{{-e.Taper, -h, 0}, {-r + r*cos, r * sin, math.Tan(-angle / 2)}, {-r + r*cos, -r * sin, 0}, {-e.Taper, h, 0}}, nil
}
