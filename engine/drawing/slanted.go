package drawing

import (
	"math"

	"chainwale/engine/sheet"
)

// slanted draws the folded part into a box as one knows it: what is hidden is left out,
// and the pin hole, face A and the folds are named.
func (p Part) slanted(c *picture, room box) error {
	m, err := newModel(p.folded(), slantedEye)
	if err != nil {
		return err
	}
	p.drawSlanted(c, m, room)
	return nil
}

// slantedEye looks on from the left and from above.
var slantedEye = newEye(28, 32)

// drawSlanted is slanted for a part that is made ready.
func (p Part) drawSlanted(c *picture, m *model, room box) {
	e := m.eye
	lines := m.sights(p.folded(), e.toward)
	f := fit(m, e, lines, room.grown(-9))
	around := &places{room: room}
	for _, s := range lines {
		for _, run := range m.visible(s.line) {
			points := m.paper(run, e, f)
			around.takePoints(points)
			c.line(s.pen, polyline(points))
		}
	}
	p.name(c, m, e, f, around)
}

// sight is a line of the part with its pen.
type sight struct {
	line []spot
	pen  pen
}

// sights are the lines of the part that the eye may see, the fine ones first.
func (m *model) sights(f sheet.Flat, toward sheet.Point3) []sight {
	var list []sight
	for i := range m.folds {
		b := &m.folds[i]
		for _, beyond := range []float64{-b.half, b.half} {
			for _, depth := range []float64{0, m.thick} {
				list = append(list, sight{m.across(f, b, beyond, depth), bandPen})
			}
			from, to := b.chord(f.Outline, beyond)
			list = append(list, sight{[]spot{{from, 0}, {from, m.thick}}, bandPen}, sight{[]spot{{to, 0}, {to, m.thick}}, bandPen})
		}
		list = append(list, sight{m.across(f, b, 0, 0), b.pen()}, sight{m.across(f, b, 0, m.thick), b.pen()})
		list = append(list, m.bendRims(f, b, toward)...)
	}
	contours := []sheet.Contour{f.Outline}
	for _, h := range f.Holes {
		contours = append(contours, h.Contour())
	}
	for _, contour := range contours {
		points := contour.Flatten(0.02)
		for _, depth := range []float64{0, m.thick} {
			list = append(list, sight{loopAt(points, depth), edgePen})
		}
		list = append(list, m.walls(points, toward)...)
	}
	return list
}

// across is a line along a fold, from edge to edge.
func (m *model) across(f sheet.Flat, b *band, beyond, depth float64) []spot {
	from, to := b.chord(f.Outline, beyond)
	return []spot{{from, depth}, {to, depth}}
}

func loopAt(points []sheet.Point, depth float64) []spot {
	list := make([]spot, len(points)+1)
	for i := range list {
		list[i] = spot{points[i%len(points)], depth}
	}
	return list
}

// bendRims are the lines along a fold where its face turns away from the eye.
func (m *model) bendRims(f sheet.Flat, b *band, toward sheet.Point3) []sight {
	var list []sight
	n := int(math.Ceil(math.Abs(b.Angle)))
	facing := func(beyond float64) float64 {
		at := b.along(0, beyond)
		return dot(minus(m.folding.Fold(at, 0), m.folding.Fold(at, m.thick)), toward)
	}
	for k := range n {
		low, high := -b.half+2*b.half*float64(k)/float64(n), -b.half+2*b.half*float64(k+1)/float64(n)
		if (facing(low) > 0) == (facing(high) > 0) {
			continue
		}
		for _, depth := range []float64{0, m.thick} {
			list = append(list, sight{m.across(f, b, (low+high)/2, depth), edgePen})
		}
	}
	return list
}

// walls are the lines through the thickness: at sharp corners, and where the wall turns
// away from the eye.
func (m *model) walls(points []sheet.Point, toward sheet.Point3) []sight {
	const sharp = 0.3
	n := len(points)
	facing := make([]bool, n)
	direction := make([]float64, n)
	for i, a := range points {
		b := points[(i+1)%n]
		along := minus(m.folding.Fold(b, 0), m.folding.Fold(a, 0))
		through := minus(m.folding.Fold(a, m.thick), m.folding.Fold(a, 0))
		facing[i] = dot(square(along, through), toward) > 0
		direction[i] = math.Atan2(b.Y-a.Y, b.X-a.X)
	}
	var list []sight
	for i, a := range points {
		before := (i + n - 1) % n
		turn := math.Abs(math.Remainder(direction[i]-direction[before], 2*math.Pi))
		if turn > sharp || facing[i] != facing[before] {
			list = append(list, sight{[]spot{{a, 0}, {a, m.thick}}, edgePen})
		}
	}
	return list
}

// fit is the frame that holds all lines within a box, at its middle.
func fit(m *model, e eye, lines []sight, room box) frame {
	b := nowhere
	for _, s := range lines {
		for _, spot := range s.line {
			q := e.project(m.folding.Fold(spot.Point, spot.depth))
			b = b.and(box{q.X, q.Y, q.X, q.Y})
		}
	}
	f := frame{scale: min(room.width()/b.width(), room.height()/b.height(), 1.5)}
	f.origin = sheet.Point{X: (room.left+room.right)/2 - f.scale*(b.left+b.right)/2, Y: (room.low+room.high)/2 - f.scale*(b.low+b.high)/2}
	return f
}

// paper lays a run on paper, with no more points than it takes.
func (m *model) paper(run []spot, e eye, f frame) []sheet.Point {
	points := make([]sheet.Point, len(run))
	for i, s := range run {
		points[i] = f.point(e.project(m.folding.Fold(s.Point, s.depth)))
	}
	return thinned(points)
}

// thinned leaves out the points of a line that lie within a fiftieth of a millimetre of
// what remains: it keeps the one furthest off, and goes on to both sides of it.
func thinned(points []sheet.Point) []sheet.Point {
	const off = 0.02
	if len(points) < 3 {
		return points
	}
	a, b := points[0], points[len(points)-1]
	far, at := off, 0
	for i, p := range points {
		if d := fromLine(p, a, b); d > far {
			far, at = d, i
		}
	}
	if at == 0 {
		return []sheet.Point{a, b}
	}
	return append(thinned(points[:at+1:at+1]), thinned(points[at:])[1:]...)
}

// fromLine is how far a point lies from the line between two, or from the first if they
// are one.
func fromLine(p, a, b sheet.Point) float64 {
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	if long < 1e-9 {
		return math.Hypot(p.X-a.X, p.Y-a.Y)
	}
	return math.Abs((b.X-a.X)*(p.Y-a.Y)-(b.Y-a.Y)*(p.X-a.X)) / long
}

// name writes beside the picture what its parts are.
func (p Part) name(c *picture, m *model, e eye, f frame, around *places) {
	at := func(q sheet.Point, depth float64) sheet.Point { return f.point(e.project(m.folding.Fold(q, depth))) }
	rings := []float64{6, 9, 12, 16, 20, 25}
	if len(p.Flat.Holes) > 0 {
		text := "hole " + whole(p.Datum+1)
		if role := p.use(p.Datum).Role; role != "" {
			text = role
		}
		around.put(c, words{text: text, height: 3.4, bold: true, colour: ink}, at(p.datum(), 0), rings, []float64{120, 90, 60, 150, 180, 240, 270})
	}
	for i := range m.folds {
		b := &m.folds[i]
		text := p.letter(i) + "  " + size(math.Abs(b.Angle)) + "°"
		around.put(c, words{text: text, height: 3.4, bold: true, colour: accent}, at(b.to, 0), rings, []float64{110, 90, 70, 130, 50, 150})
	}
	around.put(c, words{text: "face A", height: 3.4, colour: ink}, at(p.bareSpot(m), 0), rings, []float64{270, 250, 290, 300, 320, 230})
}

// bareSpot is a place on the near leg with metal all around, nearer to the eye than not.
func (p Part) bareSpot(m *model) sheet.Point {
	best, most := p.datum(), math.Inf(-1)
	for _, along := range []float64{0.35, 0.5, 0.65, 0.8, 0.2} {
		for _, across := range []float64{0.2, 0.35, 0.5, 0.65, 0.8} {
			at := sheet.Point{X: m.bounds.left + along*(p.firstFold(m)-m.bounds.left), Y: m.bounds.low + across*m.bounds.height()}
			if !m.metal(at) {
				continue
			}
			free := p.Flat.Outline.Distance(at)
			for _, h := range m.holes {
				free = min(free, h.Contour().Distance(at))
			}
			// From some millimetres on, the first place found is as good as any.
			if free = min(free, 6); free > most {
				best, most = at, free
			}
		}
	}
	return best
}

// firstFold is how far the near leg reaches along the strip.
func (p Part) firstFold(m *model) float64 {
	if len(m.folds) == 0 {
		return m.bounds.right
	}
	return m.folds[0].At
}
