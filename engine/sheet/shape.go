package sheet

import (
	"cmp"
	"math"
	"slices"
)

// shape is a flat made ready to be compared with many others.
type shape struct {
	flat   Flat
	pieces []segment
	// samples are points along the outline, every corner among them.
	samples   []Point
	folds     []foldLine
	centre    Point
	axis      float64
	elongated bool
	marks     marks
}

// foldLine is a fold by the ends of its line on the outline.
type foldLine struct {
	from, to Point
	fold     Fold
}

// marks are numbers that a movement or a turning over leaves as they are, and that two
// flats within a tolerance can only differ in by so much.
type marks struct {
	area, perimeter float64
	// across and narrow are the greatest and least distance between two parallel lines
	// that hold the outline between them.
	across, narrow float64
	// holeSpan is the greatest distance between two holes, largest the widest hole.
	holeSpan, largest float64
}

// sampleStep is the distance of samples along an outline, mm. Corners are always among
// them, so nothing that stands out can hide between two.
const sampleStep = 2.0

// newShape prepares a flat.
func newShape(f Flat) (*shape, error) {
	if err := f.Check(); err != nil {
		return nil, err
	}
	folding, err := f.Folding()
	if err != nil {
		return nil, err
	}
	s := &shape{flat: f, pieces: f.Outline.segments()}
	for _, piece := range s.pieces {
		n := max(1, int(math.Ceil(piece.length()/sampleStep)))
		for i := range n {
			s.samples = append(s.samples, piece.at(float64(i)/float64(n)))
		}
	}
	for _, p := range folding.folds {
		if a, b, ok := f.Outline.chord(p, 0); ok {
			s.folds = append(s.folds, foldLine{a, b, p.Fold})
		}
	}
	polygon := f.Outline.Flatten(flatHeight)
	s.takeMoments(polygon)
	s.marks.area, s.marks.perimeter = f.Outline.Area(), f.Outline.Perimeter()
	s.marks.across, s.marks.narrow = breadths(hull(polygon))
	for i, h := range f.Holes {
		s.marks.largest = max(s.marks.largest, h.Diameter)
		for _, o := range f.Holes[:i] {
			s.marks.holeSpan = max(s.marks.holeSpan, h.At.distance(o.At))
		}
	}
	return s, nil
}

// flatHeight is how far the polygon behind marks and moments leaves the arcs, mm.
const flatHeight = 0.02

// takeMoments finds the middle of the area and the direction in which it is longest, by
// Green's theorem over the polygon.
func (s *shape) takeMoments(polygon []Point) {
	var area float64
	var first Point
	origin := polygon[0]
	var xx, yy, xy float64
	for i := range polygon {
		p, q := polygon[i].minus(origin), polygon[(i+1)%len(polygon)].minus(origin)
		c := p.cross(q)
		area += c / 2
		first = first.plus(p.plus(q).times(c / 6))
		xx += c * (p.X*p.X + p.X*q.X + q.X*q.X) / 12
		yy += c * (p.Y*p.Y + p.Y*q.Y + q.Y*q.Y) / 12
		xy += c * (p.X*q.Y + 2*p.X*p.Y + 2*q.X*q.Y + q.X*p.Y) / 24
	}
	mean := first.times(1 / area)
	xx, yy, xy = xx/area-mean.X*mean.X, yy/area-mean.Y*mean.Y, xy/area-mean.X*mean.Y
	s.centre = mean.plus(origin)
	s.axis = math.Atan2(2*xy, xx-yy) / 2
	spread := math.Hypot(xx-yy, 2*xy)
	s.elongated = spread > 0.02*(xx+yy)
}

// hull is the convex hull of points, counter-clockwise.
func hull(points []Point) []Point {
	sorted := slices.Clone(points)
	slices.SortFunc(sorted, func(a, b Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	half := func(order []Point) []Point {
		var chain []Point
		for _, p := range order {
			for len(chain) > 1 && chain[len(chain)-1].minus(chain[len(chain)-2]).cross(p.minus(chain[len(chain)-2])) <= 0 {
				chain = chain[:len(chain)-1]
			}
			chain = append(chain, p)
		}
		return chain[:len(chain)-1]
	}
	lower := half(sorted)
	slices.Reverse(sorted)
	return append(lower, half(sorted)...)
}

// breadths are the greatest and the least breadth of a convex polygon.
func breadths(points []Point) (across, narrow float64) {
	narrow = math.Inf(1)
	for i, p := range points {
		edge := points[(i+1)%len(points)].minus(p)
		far := 0.0
		for _, q := range points {
			across = max(across, p.distance(q))
			far = max(far, edge.cross(q.minus(p))/edge.size())
		}
		narrow = min(narrow, far)
	}
	return across, narrow
}
