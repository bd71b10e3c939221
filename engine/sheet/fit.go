package sheet

import "math"

// pose lays one set of points on another: turned by an angle, mirrored across the X
// axis first or not, and moved.
type pose struct {
	sin, cos float64
	mirrored bool
	shift    Point
}

func (p pose) place(a Point) Point {
	if p.mirrored {
		a.Y = -a.Y
	}
	return Point{p.cos*a.X - p.sin*a.Y, p.sin*a.X + p.cos*a.Y}.plus(p.shift)
}

// bestPose lays points on their targets with the least sum of squared misses: Kabsch's
// fit, which in the plane is an angle,
//
//	tan(turn) = sum(a x b)/sum(a . b),  a, b counted from the means
//
// each point counting by its weight, all alike if there are none. Points all in one
// place leave the turn at 0. Source: the orthogonal Procrustes problem in two dimensions
// (computed).
func bestPose(points, targets []Point, weights []float64, mirrored bool) pose {
	p := pose{cos: 1, mirrored: mirrored}
	weight := func(i int) float64 {
		if weights == nil {
			return 1
		}
		return weights[i]
	}
	var from, to Point
	n := 0.0
	for i := range points {
		n += weight(i)
	}
	for i := range points {
		from = from.plus(p.place(points[i]).times(weight(i) / n))
		to = to.plus(targets[i].times(weight(i) / n))
	}
	var sin, cos float64
	for i := range points {
		a, b := p.place(points[i]).minus(from), targets[i].minus(to)
		sin += weight(i) * a.cross(b)
		cos += weight(i) * a.dot(b)
	}
	if size := math.Hypot(sin, cos); size > 0 {
		p.sin, p.cos = sin/size, cos/size
	}
	p.shift = to.minus(Point{p.cos*from.X - p.sin*from.Y, p.sin*from.X + p.cos*from.Y})
	return p
}

// turned is the angle of the pose, deg.
func (p pose) turned() float64 { return degrees(math.Atan2(p.sin, p.cos)) }

// misses are the ways from the targets to where the points are laid.
func (p pose) misses(points, targets []Point) []Point {
	list := make([]Point, len(points))
	for i, a := range points {
		list[i] = p.place(a).minus(targets[i])
	}
	return list
}

// root is the root of the mean of squared misses.
func root(misses []Point) float64 {
	sum := 0.0
	for _, m := range misses {
		sum += m.dot(m)
	}
	return math.Sqrt(sum / float64(len(misses)))
}
