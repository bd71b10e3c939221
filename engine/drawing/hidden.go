package drawing

import (
	"math"

	"chainwale/engine/sheet"
)

// model is a folded part made ready to ask what hides what.
type model struct {
	folding *sheet.Folding
	folds   []band
	outline []sheet.Point
	bounds  box
	holes   []sheet.Hole
	patches []patch
	thick   float64
	eye     eye
}

// patch is a plane piece of the part at one depth: a leg, or a narrow facet of a fold.
// A place in the flat lies at origin + across * its way along n + along * its way along e.
type patch struct {
	q, n, e               sheet.Point
	origin, across, along sheet.Point3
	normal                sheet.Point3
	// A place belongs to the piece if it lies at least from beyond one fold and at most to
	// beyond another.
	after, before *band
	from, to      float64
	// bounds hold the piece on paper.
	bounds box
}

// facet is how far a facet of a fold turns at the most, deg; step, mm, is how far apart
// lines are looked at; start is how far before a line its sight begins, mm, so that a
// facet does not hide the curve that it stands for.
const (
	facet = 4.0
	step  = 0.7
	start = 0.15
)

// newModel makes a flat ready for an eye.
func newModel(f sheet.Flat, e eye) (*model, error) {
	folding, err := f.Folding()
	if err != nil {
		return nil, err
	}
	m := &model{eye: e, folding: folding, holes: f.Holes, thick: f.Thickness, outline: f.Outline.Flatten(0.03)}
	low, high := f.Outline.Bounds()
	m.bounds = box{low.X, low.Y, high.X, high.Y}
	if m.folds, err = bands(f); err != nil {
		return nil, err
	}
	for i := range len(m.folds) + 1 {
		m.leg(i)
		if i < len(m.folds) {
			m.facets(&m.folds[i])
		}
	}
	return m, nil
}

// leg adds the flat piece before the fold at an index, or behind all.
func (m *model) leg(i int) {
	from, to := m.bounds.left, m.bounds.right
	p := patch{n: sheet.Point{X: 1}, e: sheet.Point{Y: 1}, from: math.Inf(-1), to: math.Inf(1)}
	if i > 0 {
		p.after, p.from = &m.folds[i-1], m.folds[i-1].half
		from = p.after.along(0, p.from).X
	}
	if i < len(m.folds) {
		p.before, p.to = &m.folds[i], -m.folds[i].half
		to = p.before.along(0, p.to).X
	}
	const small = 1e-3
	if to-from < 4*small {
		return
	}
	p.q = sheet.Point{X: (from + to) / 2}
	m.add(p, small, small)
}

// facets adds the curved piece of a fold.
func (m *model) facets(b *band) {
	n := int(math.Ceil(math.Abs(b.Angle) / facet))
	wide := 2 * b.half / float64(n)
	for k := range n {
		from := -b.half + wide*float64(k)
		m.add(patch{q: b.along(0, from), n: b.normal, e: sheet.Point{X: -b.normal.Y, Y: b.normal.X}, after: b, from: from, before: b, to: from + wide}, wide*(1-1e-9), 1e-3)
	}
}

// depths are where sights are tested, as shares of the thickness: both faces, just below
// them, so that an edge on the far side does not shine through at a corner, and between.
var depths = []float64{0, 0.05, 0.35, 0.65, 0.95, 1}

// add completes a piece at all depths from the places of points a little apart.
func (m *model) add(p patch, across, along float64) {
	for _, share := range depths {
		depth := share * m.thick
		at := func(x, y float64) sheet.Point3 {
			return m.folding.Fold(sheet.Point{X: p.q.X + x*p.n.X + y*p.e.X, Y: p.q.Y + x*p.n.Y + y*p.e.Y}, depth)
		}
		p.origin = at(0, 0)
		p.across = times(minus(at(across, 0), p.origin), 1/across)
		p.along = times(minus(at(0, along), p.origin), 1/along)
		p.normal = square(p.across, p.along)
		p.bounds = m.onPaper(p)
		m.patches = append(m.patches, p)
	}
}

// onPaper is what a piece covers at the most, as the eye sees it.
func (m *model) onPaper(p patch) box {
	b := nowhere
	for _, y := range []float64{m.bounds.low, m.bounds.high} {
		from, to := sheet.Point{X: m.bounds.left, Y: y}, sheet.Point{X: m.bounds.right, Y: y}
		if p.after != nil {
			from = p.after.along(y, p.from)
		}
		if p.before != nil {
			to = p.before.along(y, p.to)
		}
		for _, at := range []sheet.Point{from, to} {
			x := plus(p.origin, plus(times(p.across, (at.X-p.q.X)*p.n.X+(at.Y-p.q.Y)*p.n.Y), times(p.along, (at.X-p.q.X)*p.e.X+(at.Y-p.q.Y)*p.e.Y)))
			q := m.eye.project(x)
			b = b.and(box{q.X, q.Y, q.X, q.Y})
		}
	}
	return b
}

// hides tells whether the sight of a point towards the eye passes through the piece.
func (m *model) hides(p *patch, x sheet.Point3) bool {
	toward := m.eye.toward
	slope := dot(p.normal, toward)
	if math.Abs(slope) < 1e-9 {
		return false
	}
	way := dot(p.normal, minus(p.origin, x)) / slope
	if way <= start {
		return false
	}
	d := minus(plus(x, times(toward, way)), p.origin)
	// across and along stand square to each other in every fold and leg.
	a, b := dot(d, p.across)/dot(p.across, p.across), dot(d, p.along)/dot(p.along, p.along)
	at := sheet.Point{X: p.q.X + a*p.n.X + b*p.e.X, Y: p.q.Y + a*p.n.Y + b*p.e.Y}
	if p.after != nil && p.after.beyond(at) < p.from || p.before != nil && p.before.beyond(at) > p.to {
		return false
	}
	return m.metal(at)
}

// metal tells whether a place of the flat is metal.
func (m *model) metal(p sheet.Point) bool {
	if p.X <= m.bounds.left || p.X >= m.bounds.right || p.Y <= m.bounds.low || p.Y >= m.bounds.high || !inside(m.outline, p) {
		return false
	}
	for _, h := range m.holes {
		if inHole(h, p) {
			return false
		}
	}
	return true
}

// inHole tells whether a place lies in a hole.
func inHole(h sheet.Hole, p sheet.Point) bool {
	x, y, r := p.X-h.At.X, p.Y-h.At.Y, h.Diameter/2
	if !h.Square && h.Long == 0 {
		return x*x+y*y < r*r
	}
	sin, cos := math.Sincos(h.Turn * math.Pi / 180)
	along, across := math.Abs(x*cos+y*sin), math.Abs(y*cos-x*sin)
	if h.Long > 0 {
		along = max(0, along-h.Long/2+r)
		return along*along+across*across < r*r
	}
	return along < r && across < r
}

// inside counts the sides of a polygon that a line to the right crosses.
func inside(polygon []sheet.Point, p sheet.Point) bool {
	in := false
	b := polygon[len(polygon)-1]
	for _, a := range polygon {
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
		b = a
	}
	return in
}

// seen tells whether nothing hides a spot.
func (m *model) seen(s spot) bool {
	x := m.folding.Fold(s.Point, s.depth)
	q := m.eye.project(x)
	for i := range m.patches {
		p := &m.patches[i]
		if q.X >= p.bounds.left && q.X <= p.bounds.right && q.Y >= p.bounds.low && q.Y <= p.bounds.high && m.hides(p, x) {
			return false
		}
	}
	return true
}

// leastRun is the shortest piece of a line that is shown or hidden on its own, mm of
// the part: shorter ones are the doubt at the rim of a curve.
const leastRun = 1.2

// visible parts a line of the part into the pieces that are seen.
func (m *model) visible(line []spot) [][]spot {
	fine := spread(line)
	flags := make([]bool, len(fine))
	for i, s := range fine {
		flags[i] = m.seen(s)
	}
	settle(fine, flags)
	var runs [][]spot
	var run []spot
	for i, s := range fine {
		if i > 0 && flags[i] != flags[i-1] {
			run = append(run, m.edge(fine[i-1], s, flags[i-1]))
			if flags[i-1] {
				runs, run = append(runs, run), nil
			}
		}
		if flags[i] {
			run = append(run, s)
		}
	}
	if len(run) > 1 {
		runs = append(runs, run)
	}
	return runs
}

// edge halves its way to where a line goes out of sight.
func (m *model) edge(a, b spot, seen bool) spot {
	for range 6 {
		if mid := halfway(a, b); m.seen(mid) == seen {
			a = mid
		} else {
			b = mid
		}
	}
	return halfway(a, b)
}

// spread puts spots along a line, a step apart.
func spread(line []spot) []spot {
	fine := line[:1:1]
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		n := max(1, math.Ceil(distance(a, b)/step))
		for k := 1.0; k <= n; k++ {
			s := k / n
			fine = append(fine, spot{sheet.Point{X: a.X + s*(b.X-a.X), Y: a.Y + s*(b.Y-a.Y)}, a.depth + s*(b.depth-a.depth)})
		}
	}
	return fine
}

func distance(a, b spot) float64 {
	return math.Hypot(math.Hypot(a.X-b.X, a.Y-b.Y), a.depth-b.depth)
}

// settle turns runs that are too short to be true: between two others of the other kind,
// and at an end of the line what seems hidden.
func settle(fine []spot, flags []bool) {
	begin := 0
	for i := 1; i <= len(flags); i++ {
		if i < len(flags) && flags[i] == flags[begin] {
			continue
		}
		long := 0.0
		for k := max(1, begin); k < i; k++ {
			long += distance(fine[k-1], fine[k])
		}
		inner, whole := begin > 0 && i < len(flags), begin == 0 && i == len(flags)
		if long < leastRun && !whole && (inner || !flags[begin]) {
			turned := !flags[begin]
			for k := begin; k < i; k++ {
				flags[k] = turned
			}
		}
		begin = i
	}
}
