package drawing

import (
	"math"

	"chainwale/engine/sheet"
)

// band is a fold laid out in the flat: a stripe that is bent, and its middle line.
type band struct {
	sheet.Fold
	index int
	// normal is square to the middle line, forward; half the width of the stripe.
	normal sheet.Point
	half   float64
	// from and to are the ends of the middle line on the outline, from the lower.
	from, to sheet.Point
}

// bands are the folds in order along the strip.
func bands(f sheet.Flat) ([]band, error) {
	var list []band
	for i, fold := range f.Folds {
		b, err := newBand(fold, f.Thickness)
		if err != nil {
			return nil, err
		}
		b.index = i
		b.from, b.to = b.chord(f.Outline, 0)
		list = append(list, b)
	}
	return list, nil
}

func newBand(fold sheet.Fold, thickness float64) (band, error) {
	bend := sheet.Bend{Thickness: thickness, Radius: fold.Radius, Angle: math.Abs(fold.Angle)}
	if fold.K != 0 {
		bend.Method, bend.K = sheet.AsGiven, fold.K
	}
	r, err := bend.Reckon()
	if err != nil {
		return band{}, err
	}
	sin, cos := math.Sincos(fold.Skew * math.Pi / 180)
	return band{Fold: fold, normal: sheet.Point{X: cos, Y: -sin}, half: r.Allowance / 2}, nil
}

// beyond is how far a point lies beyond the middle line.
func (b band) beyond(p sheet.Point) float64 {
	return (p.X-b.At)*b.normal.X + p.Y*b.normal.Y
}

// along is the point of the line at a distance beyond the middle, at a Y.
func (b band) along(y, beyond float64) sheet.Point {
	return sheet.Point{X: b.At + (beyond-y*b.normal.Y)/b.normal.X, Y: y}
}

// toward tells whether the far leg turns towards the viewer on face A.
func (b band) toward() bool { return b.Angle > 0 }

// faceUp is the face that lies towards the punch: the inside of the fold.
func (b band) faceUp() sheet.Face {
	if b.toward() {
		return sheet.FaceA
	}
	return sheet.FaceB
}

// chord is where the line at a distance beyond the middle enters and leaves a contour,
// from the lowest point to the highest; twice one point if it misses.
func (b band) chord(c sheet.Contour, beyond float64) (from, to sheet.Point) {
	low, high := math.Inf(1), math.Inf(-1)
	origin, dir := b.along(0, beyond), sheet.Point{X: -b.normal.Y, Y: b.normal.X}
	for i, v := range c {
		for _, s := range crossings(v, c[(i+1)%len(c)], origin, dir) {
			low, high = min(low, s), max(high, s)
		}
	}
	if !(low <= high) {
		return origin, origin
	}
	at := func(s float64) sheet.Point { return sheet.Point{X: origin.X + s*dir.X, Y: origin.Y + s*dir.Y} }
	return at(low), at(high)
}

// crossings are the places along a line, from an origin in a direction of length one,
// where it meets the piece of a contour between two corners.
func crossings(a, b sheet.Vertex, origin, dir sheet.Point) []float64 {
	ax, ay, bx, by := a.X-origin.X, a.Y-origin.Y, b.X-origin.X, b.Y-origin.Y
	// u runs along the line, v away from it.
	ua, va := ax*dir.X+ay*dir.Y, ay*dir.X-ax*dir.Y
	ub, vb := bx*dir.X+by*dir.Y, by*dir.X-bx*dir.Y
	if !bulges(a) {
		if (va > 0) == (vb > 0) || va == vb {
			return nil
		}
		return []float64{ua + (ub-ua)*va/(va-vb)}
	}
	arc := newArc(a, b)
	uc := (arc.centre.X-origin.X)*dir.X + (arc.centre.Y-origin.Y)*dir.Y
	vc := (arc.centre.Y-origin.Y)*dir.X - (arc.centre.X-origin.X)*dir.Y
	if math.Abs(vc) > arc.radius {
		return nil
	}
	half := math.Sqrt(arc.radius*arc.radius - vc*vc)
	var list []float64
	for _, u := range []float64{uc - half, uc + half} {
		p := sheet.Point{X: origin.X + u*dir.X, Y: origin.Y + u*dir.Y}
		if arc.spans(p) {
			list = append(list, u)
		}
	}
	return list
}
