package sheet

import (
	"fmt"
	"math"
)

// FoldBetween is the fold that turns a strip from one direction into another.
//
// Returns the Angle and the Skew of the fold.
//
// Equation, with b = face x along and (x, y, z) the components of the wanted direction
// along (along, b, face):
//
//	Skew = atan2(y, 1 - x),  Angle = atan2(z, x cos(Skew) - y sin(Skew))
//
// Symbols: along, the strip's direction before the fold; face, the way its face A
// looks; wanted, its direction behind the fold, all of any length; results deg.
//
// Holds for any direction but straight on and straight back. A direction within the
// plane of the face needs a fold of 180 deg and is refused.
//
// Source: geometry (computed). Errors: directions that are none, a face that is not
// square to the strip, a wanted direction that no fold reaches.
func FoldBetween(along, face, wanted Point3) (angle, skew float64, err error) {
	var in inputs
	for _, d := range []Point3{along, face, wanted} {
		in.must(d.finite() && d.size() > 1e-9, "a direction is not finite or has no length: %v", d)
	}
	if in.err != nil {
		return 0, 0, in.err
	}
	along, face, wanted = along.times(1/along.size()), face.times(1/face.size()), wanted.times(1/wanted.size())
	if off := degrees(math.Asin(min(1, math.Abs(along.dot(face))))); off > 0.1 {
		return 0, 0, fmt.Errorf("the face is %.3g deg off square to the strip", off)
	}
	x, y, z := wanted.dot(along), wanted.dot(face.cross(along)), wanted.dot(face)
	if 1-x < 1e-12 {
		return 0, 0, fmt.Errorf("the strip runs straight on: there is no fold")
	}
	if math.Abs(z) < 1e-9 {
		return 0, 0, fmt.Errorf("the wanted direction lies in the plane of the strip: no fold of less than 180 deg reaches it")
	}
	turned := math.Atan2(y, 1-x)
	sin, cos := math.Sincos(turned)
	return degrees(math.Atan2(z, x*cos-y*sin)), degrees(turned), nil
}

// FoldDirections is one reading of a fold by directions in space: Along the leg before it
// and square to its face A (Face), and along the leg behind it (Behind).
type FoldDirections struct{ Along, Face, Behind Point3 }

// ReadDirections turns readings of directions, each good to within some degrees, into
// readings of the fold's angle and skew. The angle is as good as the directions; the skew
// of a shallow fold is worse by 1/(1 - cos(angle)), for a turn of the fold line moves the
// direction behind it by only that much less. Errors name the reading.
func ReadDirections(within float64, readings ...FoldDirections) (angle, skew Reading, err error) {
	angle.Within, skew.Within = within, within
	for i, r := range readings {
		a, s, err := FoldBetween(r.Along, r.Face, r.Behind)
		if err != nil {
			return Reading{}, Reading{}, fmt.Errorf("reading %d: %w", i+1, err)
		}
		angle.Values, skew.Values = append(angle.Values, a), append(skew.Values, s)
		skew.Within = max(skew.Within, within/(1-math.Cos(radians(a))))
	}
	return angle, skew, nil
}

// FoldBetweenFaces is the fold between two plane faces by the way they look: its angle,
// deg, and the direction of its line. It does for planes what a bevel does.
func FoldBetweenFaces(before, behind Point3) (angle float64, axis Point3, err error) {
	var in inputs
	for _, d := range []Point3{before, behind} {
		in.must(d.finite() && d.size() > 1e-9, "a direction is not finite or has no length: %v", d)
	}
	if in.err != nil {
		return 0, Point3{}, in.err
	}
	axis = before.cross(behind)
	angle = degrees(math.Atan2(axis.size(), before.dot(behind)))
	if axis.size() < 1e-12*before.size()*behind.size() {
		return 0, Point3{}, fmt.Errorf("the faces look the same way or the opposite one: there is no fold line")
	}
	return angle, axis.times(1 / axis.size()), nil
}
