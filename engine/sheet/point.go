package sheet

import "math"

// Point is a place in the flat, mm: X along the strip, Y across it.
type Point struct{ X, Y float64 }

func (p Point) plus(q Point) Point                { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) minus(q Point) Point               { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) times(k float64) Point             { return Point{k * p.X, k * p.Y} }
func (p Point) dot(q Point) float64               { return p.X*q.X + p.Y*q.Y }
func (p Point) cross(q Point) float64             { return p.X*q.Y - p.Y*q.X }
func (p Point) size() float64                     { return math.Sqrt(p.X*p.X + p.Y*p.Y) }
func (p Point) distance(q Point) float64          { return p.minus(q).size() }
func (p Point) left() Point                       { return Point{-p.Y, p.X} }
func (p Point) between(q Point, at float64) Point { return p.plus(q.minus(p).times(at)) }

// finitePoint tells whether both coordinates are numbers of a boat.
func (p Point) finite() bool { return math.Abs(p.X) <= most && math.Abs(p.Y) <= most }

// Point3 is a place in space, or a direction, mm.
type Point3 struct{ X, Y, Z float64 }

func (p Point3) plus(q Point3) Point3      { return Point3{p.X + q.X, p.Y + q.Y, p.Z + q.Z} }
func (p Point3) minus(q Point3) Point3     { return Point3{p.X - q.X, p.Y - q.Y, p.Z - q.Z} }
func (p Point3) times(k float64) Point3    { return Point3{k * p.X, k * p.Y, k * p.Z} }
func (p Point3) dot(q Point3) float64      { return p.X*q.X + p.Y*q.Y + p.Z*q.Z }
func (p Point3) size() float64             { return math.Sqrt(p.dot(p)) }
func (p Point3) distance(q Point3) float64 { return p.minus(q).size() }
func (p Point3) cross(q Point3) Point3 {
	return Point3{p.Y*q.Z - p.Z*q.Y, p.Z*q.X - p.X*q.Z, p.X*q.Y - p.Y*q.X}
}

// finite tells whether all coordinates are numbers of a boat.
func (p Point3) finite() bool {
	return math.Abs(p.X) <= most && math.Abs(p.Y) <= most && math.Abs(p.Z) <= most
}

// rigid moves points in space without changing distances: the images of the three
// axes and of the origin.
type rigid struct{ x, y, z, origin Point3 }

var still = rigid{x: Point3{X: 1}, y: Point3{Y: 1}, z: Point3{Z: 1}}

// turn gives where a direction goes, place where a point goes.
func (r rigid) turn(p Point3) Point3  { return r.x.times(p.X).plus(r.y.times(p.Y)).plus(r.z.times(p.Z)) }
func (r rigid) place(p Point3) Point3 { return r.turn(p).plus(r.origin) }

// back gives where a point came from.
func (r rigid) back(p Point3) Point3 {
	d := p.minus(r.origin)
	return Point3{r.x.dot(d), r.y.dot(d), r.z.dot(d)}
}

// after is the movement that does first and then r.
func (r rigid) after(first rigid) rigid {
	return rigid{r.turn(first.x), r.turn(first.y), r.turn(first.z), r.place(first.origin)}
}

// about turns by an angle in radians about an axis of length one through the origin.
func about(axis Point3, angle float64) rigid {
	s, c := math.Sincos(angle)
	spin := func(p Point3) Point3 {
		return p.times(c).plus(axis.cross(p).times(s)).plus(axis.times(axis.dot(p) * (1 - c)))
	}
	return rigid{x: spin(Point3{X: 1}), y: spin(Point3{Y: 1}), z: spin(Point3{Z: 1})}
}
