package drawing

import (
	"math"

	"chainwale/engine/sheet"
)

// leastBulge is below what an arc is drawn as a line, as the sheet takes it.
const leastBulge = 1e-6

func bulges(v sheet.Vertex) bool { return math.Abs(v.Bulge) >= leastBulge }

// arc is the piece of a circle between two corners.
type arc struct {
	centre               sheet.Point
	radius, start, sweep float64
}

// newArc makes the arc of a bulge, which is not 0.
func newArc(a, b sheet.Vertex) arc {
	dx, dy := b.X-a.X, b.Y-a.Y
	k := (1 - a.Bulge*a.Bulge) / (4 * a.Bulge)
	c := sheet.Point{X: (a.X+b.X)/2 - dy*k, Y: (a.Y+b.Y)/2 + dx*k}
	return arc{centre: c, radius: math.Hypot(dx, dy) * (1 + a.Bulge*a.Bulge) / (4 * math.Abs(a.Bulge)),
		start: math.Atan2(a.Y-c.Y, a.X-c.X), sweep: 4 * math.Atan(a.Bulge)}
}

// at is the point at a share of the way.
func (a arc) at(share float64) sheet.Point {
	sin, cos := math.Sincos(a.start + share*a.sweep)
	return sheet.Point{X: a.centre.X + a.radius*cos, Y: a.centre.Y + a.radius*sin}
}

// spans tells whether the arc passes through the direction of a point.
func (a arc) spans(p sheet.Point) bool {
	angle := math.Atan2(p.Y-a.centre.Y, p.X-a.centre.X) - a.start
	if a.sweep < 0 {
		angle = -angle
	}
	angle = math.Mod(angle, 2*math.Pi)
	if angle < 0 {
		angle += 2 * math.Pi
	}
	return angle <= math.Abs(a.sweep)+1e-12 || angle >= 2*math.Pi-1e-12
}

// circle is two halves.
func circle(at sheet.Point, radius float64) sheet.Contour {
	return sheet.Contour{{X: at.X - radius, Y: at.Y, Bulge: 1}, {X: at.X + radius, Y: at.Y, Bulge: 1}}
}

// stroke is a straight line of two points.
func stroke(x1, y1, x2, y2 float64) sheet.Contour {
	return sheet.Contour{{X: x1, Y: y1}, {X: x2, Y: y2}}
}

func between(a, b sheet.Point) sheet.Contour { return stroke(a.X, a.Y, b.X, b.Y) }

func rectangle(x, y, w, h float64) sheet.Contour {
	return sheet.Contour{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}}
}

// polyline joins points by straight lines.
func polyline(points []sheet.Point) sheet.Contour {
	c := make(sheet.Contour, len(points))
	for i, p := range points {
		c[i] = sheet.Vertex{X: p.X, Y: p.Y}
	}
	return c
}

// cross are the two strokes of a mark, half as wide as it reaches.
func cross(at sheet.Point, reach float64) [2]sheet.Contour {
	return [2]sheet.Contour{stroke(at.X-reach, at.Y, at.X+reach, at.Y), stroke(at.X, at.Y-reach, at.X, at.Y+reach)}
}

// reaches are how far a hole reaches from its middle along the part and across it; a
// square one's corners, however it is turned, are not counted.
func reaches(h sheet.Hole) (x, y float64) {
	if h.Long == 0 {
		return h.Diameter / 2, h.Diameter / 2
	}
	return h.Reach(0), h.Reach(90)
}

// widest is the greater of the two.
func widest(h sheet.Hole) float64 { return max(h.Diameter, h.Long) / 2 }

// holeCross are the strokes through a hole's middle, of which each reaches beyond it.
func holeCross(at sheet.Point, h sheet.Hole, scale, beyond float64) [2]sheet.Contour {
	x, y := reaches(h)
	x, y = scale*x+beyond, scale*y+beyond
	return [2]sheet.Contour{stroke(at.X-x, at.Y, at.X+x, at.Y), stroke(at.X, at.Y-y, at.X, at.Y+y)}
}

// markReach is how far the cross of a hole to drill later reaches: within the hole, so
// that drilling takes the mark away.
func markReach(diameter float64) float64 { return min(2, 0.3*diameter) }
