package sheet

import "math"

// Polyline is one line of a drawing of the folded part.
type Polyline struct {
	// Kind is EdgeLine, HoleLine, TangentLine or ThroughLine; Name that of the hole or
	// the fold.
	Kind   LineKind
	Name   string
	Face   Face
	Closed bool
	Points []Point3
}

// LineKind says what a line of a drawing stands for.
type LineKind string

const (
	// EdgeLine is the outline on one face, HoleLine the edge of a hole on one face.
	EdgeLine LineKind = "edge"
	HoleLine LineKind = "hole"
	// TangentLine is where the curve of a fold begins or ends on one face.
	TangentLine LineKind = "tangent"
	// ThroughLine runs through the thickness at a corner of the outline.
	ThroughLine LineKind = "through"
)

// Face is one of the two faces of a part; a line through the thickness has none.
type Face string

const (
	FaceA Face = "A"
	FaceB Face = "B"
)

// Drawing is the folded part as lines in space, its curves leaving the true ones by no
// more than a height in mm. Errors: a flat whose outline or folds are none; a height
// that is not above 0.
func (f Flat) Drawing(height float64) ([]Polyline, error) {
	var in inputs
	in.positive("the height of an arc over its chord", height, "mm")
	if in.err != nil {
		return nil, in.err
	}
	folding, err := f.Folding()
	if err != nil {
		return nil, err
	}
	var lines []Polyline
	for _, face := range []Face{FaceA, FaceB} {
		depth := 0.0
		if face == FaceB {
			depth = f.Thickness
		}
		lines = append(lines, Polyline{EdgeLine, "", face, true, folding.run(f.Outline.Flatten(height), true, depth, height)})
		for i, h := range f.Holes {
			lines = append(lines, Polyline{HoleLine, holeName(h, i), face, true, folding.run(h.Contour().Flatten(height), true, depth, height)})
		}
		for i, p := range folding.folds {
			for _, side := range []float64{-p.half, p.half} {
				if a, b, ok := f.Outline.chord(p, side); ok {
					lines = append(lines, Polyline{TangentLine, foldName(i), face, false, []Point3{folding.Fold(a, depth), folding.Fold(b, depth)}})
				}
			}
		}
	}
	for _, v := range f.Outline {
		at := Point{v.X, v.Y}
		lines = append(lines, Polyline{ThroughLine, "", "", false, []Point3{folding.Fold(at, 0), folding.Fold(at, f.Thickness)}})
	}
	return lines, nil
}

// run carries a line of the flat over the folds. It is cut where it enters and leaves
// one, and between the two as fine as the curve asks.
func (f *Folding) run(points []Point, closed bool, depth, height float64) []Point3 {
	var line []Point3
	last := len(points)
	if !closed {
		last--
	}
	for i := range last {
		a, b := points[i], points[(i+1)%len(points)]
		for _, share := range f.shares(a, b, height) {
			line = append(line, f.Fold(a.between(b, share), depth))
		}
	}
	if !closed {
		line = append(line, f.Fold(points[last], depth))
	}
	return line
}

// shares are the places along a straight piece of the flat at which its folded image
// is sampled, the first at 0 and the last below 1.
func (f *Folding) shares(a, b Point, height float64) []float64 {
	list := []float64{0}
	add := func(share float64) {
		if share > list[len(list)-1]+1e-12 && share < 1-1e-12 {
			list = append(list, share)
		}
	}
	for i := range f.folds {
		p := f.folds[i]
		if b.X < a.X {
			p = f.folds[len(f.folds)-1-i]
		}
		from, to := p.beyond(a), p.beyond(b)
		if math.Abs(to-from) < 1e-12 {
			continue
		}
		enter, leave := (-p.half-from)/(to-from), (p.half-from)/(to-from)
		if enter > leave {
			enter, leave = leave, enter
		}
		outer := p.Radius + f.strip.Thickness
		step := 2 * math.Acos(max(0, 1-height/outer))
		n := max(1, math.Ceil(p.turn/step))
		for k := 0.0; k <= n; k++ {
			add(enter + (leave-enter)*k/n)
		}
	}
	return list
}

// chord is where a line beside the middle of a fold runs through a contour: its first
// and its last point.
func (c Contour) chord(p placedFold, beyond float64) (a, b Point, ok bool) {
	low, high := c.Bounds()
	line := segment{from: Point{p.along(low.Y-1, beyond), low.Y - 1}, to: Point{p.along(high.Y+1, beyond), high.Y + 1}}
	for _, s := range c.segments() {
		for _, x := range line.crossings(s) {
			if !ok {
				a, b, ok = x, x, true
			}
			if x.Y < a.Y {
				a = x
			}
			if x.Y > b.Y {
				b = x
			}
		}
	}
	return a, b, ok && a != b
}

// View is a direction to draw a part from.
type View string

const (
	// FromSide looks across the strip, the folds in true shape; FromFace looks on face A
	// of the first leg; FromEnd looks along it; Slanted shows all three.
	FromSide View = "from the side"
	FromFace View = "on the face"
	FromEnd  View = "from the end"
	Slanted  View = "slanted"
)

// Project lays a point of the folded part on paper, X to the right and Y up. Slanted
// is isometric: all three axes shortened alike.
func (v View) Project(p Point3) Point {
	switch v {
	case FromFace:
		return Point{p.X, p.Y}
	case FromEnd:
		return Point{p.Y, p.Z}
	case Slanted:
		sin, cos := math.Sincos(math.Pi / 6)
		return Point{(p.X - p.Y) * cos, (p.X+p.Y)*sin + p.Z}.times(math.Sqrt(2.0 / 3))
	}
	return Point{p.X, p.Z}
}
