package drawing

import (
	"math"

	"chainwale/engine/sheet"
)

func plus(p, q sheet.Point3) sheet.Point3 {
	return sheet.Point3{X: p.X + q.X, Y: p.Y + q.Y, Z: p.Z + q.Z}
}

func minus(p, q sheet.Point3) sheet.Point3 {
	return sheet.Point3{X: p.X - q.X, Y: p.Y - q.Y, Z: p.Z - q.Z}
}

func times(p sheet.Point3, k float64) sheet.Point3 {
	return sheet.Point3{X: k * p.X, Y: k * p.Y, Z: k * p.Z}
}

func dot(p, q sheet.Point3) float64 { return p.X*q.X + p.Y*q.Y + p.Z*q.Z }

func square(p, q sheet.Point3) sheet.Point3 {
	return sheet.Point3{X: p.Y*q.Z - p.Z*q.Y, Y: p.Z*q.X - p.X*q.Z, Z: p.X*q.Y - p.Y*q.X}
}

// eye is a direction to look from, with what is right and up on paper.
type eye struct{ right, up, toward sheet.Point3 }

// newEye looks down on face A of the near leg, the strip running to the right: from the
// left by turn and from above by height, deg.
func newEye(turn, height float64) eye {
	st, ct := math.Sincos(turn * math.Pi / 180)
	sh, ch := math.Sincos(height * math.Pi / 180)
	e := eye{right: sheet.Point3{X: ct, Y: -st}, toward: sheet.Point3{X: -st * ch, Y: -ct * ch, Z: sh}}
	e.up = square(e.toward, e.right)
	return e
}

// project lays a point on paper.
func (e eye) project(p sheet.Point3) sheet.Point {
	return sheet.Point{X: dot(p, e.right), Y: dot(p, e.up)}
}

// spot is a place in the metal: in the flat, and below face A.
type spot struct {
	sheet.Point
	depth float64
}

// halfway is the spot in the middle of two.
func halfway(a, b spot) spot {
	return spot{sheet.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}, (a.depth + b.depth) / 2}
}
