package drawing

import (
	"math"

	"chainwale/engine/sheet"
)

// profile is the folded part cut along its centre line, seen from the side: X to the
// right, Z up.
type profile struct {
	loop   []sheet.Point
	bounds box
	legs   []profileLeg
	// skewed says that a fold is turned from square, so that lengths don't show true.
	skewed bool
}

// profileLeg is a leg by its outer corners, and how it runs.
type profileLeg struct {
	from, to sheet.Point
	turn     float64
	// cornerless says that a fold beside it turns so far that its outer corner lies far
	// out in the air, where nobody can measure from.
	cornerless bool
}

// mostCornered is how far a fold turns at the most that has an outer corner, deg: beyond,
// it lies more than twice its radius off (judgement).
const mostCornered = 120

func newProfile(p Part, m *model) profile {
	var s profile
	spots := []float64{m.bounds.left}
	for i := range m.folds {
		b := &m.folds[i]
		s.skewed = s.skewed || b.Skew != 0
		n := math.Ceil(math.Abs(b.Angle) / 3)
		for k := 0.0; k <= n; k++ {
			spots = append(spots, b.along(0, b.half*(2*k/n-1)).X)
		}
	}
	spots = append(spots, m.bounds.right)
	side := func(x, depth float64) sheet.Point {
		return sheet.FromSide.Project(m.folding.Fold(sheet.Point{X: x}, depth))
	}
	for _, x := range spots {
		s.loop = append(s.loop, side(x, 0))
	}
	for i := range spots {
		s.loop = append(s.loop, side(spots[len(spots)-1-i], m.thick))
	}
	s.bounds = nowhere
	for _, q := range s.loop {
		s.bounds = s.bounds.and(box{q.X, q.Y, q.X, q.Y})
	}
	s.measure(m, side)
	return s
}

// measure finds the legs from outer corner to outer corner: each lies its setback
// beyond where the metal begins to curve.
func (s *profile) measure(m *model, side func(x, depth float64) sheet.Point) {
	leg := profileLeg{from: side(m.bounds.left, m.thick)}
	for i := range m.folds {
		b := &m.folds[i]
		depth := 0.0
		if b.toward() {
			depth = m.thick
		}
		entry := side(b.along(0, -b.half).X, depth)
		setback := (b.Radius + m.thick) * math.Tan(math.Abs(b.Angle)/2*math.Pi/180)
		sin, cos := math.Sincos(leg.turn)
		leg.to = sheet.Point{X: entry.X + setback*cos, Y: entry.Y + setback*sin}
		folded := math.Abs(b.Angle) > mostCornered
		leg.cornerless = leg.cornerless || folded
		s.legs = append(s.legs, leg)
		leg = profileLeg{from: leg.to, turn: leg.turn + b.Angle*math.Pi/180, cornerless: folded}
	}
	leg.to = side(m.bounds.right, m.thick)
	s.legs = append(s.legs, leg)
}

// length is the leg's, along its direction.
func (l profileLeg) length() float64 {
	sin, cos := math.Sincos(l.turn)
	return (l.to.X-l.from.X)*cos + (l.to.Y-l.from.Y)*sin
}

// What the side view leaves free for sizes around it.
const (
	sideRoom = 19.0
	sideTop  = 12.0
)

// sideView draws the folded part from the side into a room, with its overall sizes, the
// outer lengths of its legs and its angles.
func (p Part) sideView(c *picture, m *model, room box) {
	s := newProfile(p, m)
	inner := box{room.left + 8, room.low + sideRoom, room.right - sideRoom, room.high - sideTop}
	f := frame{scale: largest(s.bounds.width(), s.bounds.height(), inner)}
	f.origin = sheet.Point{X: (inner.left+inner.right)/2 - f.scale*(s.bounds.left+s.bounds.right)/2,
		Y: (inner.low+inner.high)/2 - f.scale*(s.bounds.low+s.bounds.high)/2}
	around := &places{room: room}
	outline := f.path(polyline(s.loop))
	around.takePath(outline, true)
	p.sideHoles(c, m, f)
	c.loop(edgePen, outline)
	c.text(words{at: sheet.Point{X: room.left + 2, Y: room.high - 5}, text: "Folded, cut along the centre line, " + scaleName(f.scale), height: 3.8, bold: true, colour: ink})
	around.takeBox(box{room.left, room.high - 7, room.right, room.high})
	s.overall(c, f, around)
	if !s.skewed {
		for _, leg := range s.legs {
			if !leg.cornerless {
				leg.draw(c, f, around, m.thick)
			}
		}
	}
	rings := []float64{6, 9, 12, 16, 20}
	for i := range m.folds {
		b := &m.folds[i]
		anchor, out := p.foldOutside(m, b, f)
		text := p.letter(i) + "  " + size(math.Abs(b.Angle)) + "°  R" + size(b.Radius)
		around.put(c, words{text: text, height: 3.2, bold: true, colour: accent}, anchor, rings, []float64{out, out + 25, out - 25, out + 50, out - 50, out + 180, out + 150, out - 150})
	}
	p.sideFace(c, m, f, around)
}

// sideFace names face A where there is most room for it: on the first leg if that will do,
// else anywhere along the part.
func (p Part) sideFace(c *picture, m *model, f frame, around *places) {
	first := p.firstFold(m) - m.bounds.left
	var best words
	var at sheet.Point
	least := math.Inf(1)
	for _, x := range []float64{0.3 * first, 0.7 * first, 0.92 * m.bounds.width(), 0.8 * m.bounds.width(), 0.6 * m.bounds.width(), 0.7 * m.bounds.width()} {
		anchor := f.point(sheet.FromSide.Project(m.folding.Fold(sheet.Point{X: m.bounds.left + x}, 0)))
		found, crowd := around.find(words{text: "face A", height: 3.2, colour: ink}, anchor, []float64{5, 7, 10, 14, 19}, []float64{90, 60, 120, 30, 150, 180, 0})
		if crowd < least {
			best, at, least = found, anchor, crowd
		}
		if least < 1 {
			break
		}
	}
	if least < 10 {
		around.lay(c, best, at, 0)
	}
}

// foldOutside is the middle of a fold on face A, and the direction away from the metal,
// deg.
func (p Part) foldOutside(m *model, b *band, f frame) (anchor sheet.Point, out float64) {
	at := b.along(0, 0)
	a, o := m.folding.Fold(at, 0), m.folding.Fold(at, m.thick)
	return f.point(sheet.FromSide.Project(a)), math.Atan2(a.Z-o.Z, a.X-o.X) * 180 / math.Pi
}

// sideHoles draws the edges of holes as hidden lines, and their centre lines.
func (p Part) sideHoles(c *picture, m *model, f frame) {
	through := func(x, beyond float64, pen pen) {
		a := f.point(sheet.FromSide.Project(m.folding.Fold(sheet.Point{X: x}, -beyond)))
		b := f.point(sheet.FromSide.Project(m.folding.Fold(sheet.Point{X: x}, m.thick+beyond)))
		c.line(pen, between(a, b))
	}
	for _, h := range p.folded().Holes {
		reach := h.Reach(0)
		through(h.At.X-reach, 0, hiddenPen)
		through(h.At.X+reach, 0, hiddenPen)
		through(h.At.X, 2/f.scale, centrePen)
	}
}

// draw writes the length of a leg beside it: below or above, near or far, wherever it
// crosses least.
func (l profileLeg) draw(c *picture, f frame, around *places, thick float64) {
	sin, cos := math.Sincos(l.turn)
	a, b := f.point(l.from), f.point(l.to)
	height := func(p sheet.Point) float64 { return -p.X*sin + p.Y*cos }
	var best [2]sheet.Point
	least := math.Inf(1)
	for _, level := range []float64{min(height(a), height(b)) - 7, max(height(a), height(b)) + 7 + thick*f.scale, min(height(a), height(b)) - 12, max(height(a), height(b)) + 12 + thick*f.scale} {
		foot := func(p sheet.Point) sheet.Point {
			d := level - height(p)
			return sheet.Point{X: p.X - d*sin, Y: p.Y + d*cos}
		}
		if n := around.along(foot(a), foot(b)); n < least {
			best, least = [2]sheet.Point{foot(a), foot(b)}, n
		}
	}
	dimension(c, around, a, b, best[0], best[1], size(l.length()))
}

// along counts what a line would run over.
func (p *places) along(a, b sheet.Point) float64 {
	const n = 12
	sum := 0.0
	for k := range n + 1 {
		s := float64(k) / n
		at := sheet.Point{X: a.X + s*(b.X-a.X), Y: a.Y + s*(b.Y-a.Y)}
		sum += min(p.crowded(box{at.X, at.Y, at.X, at.Y}.grown(1.6)), 20)
	}
	return sum
}

// dimension draws a size between two points: lines out to where it runs, the line with
// its heads, and the number above it.
func dimension(c *picture, around *places, a, b, from, to sheet.Point, text string) {
	for _, pair := range [2][2]sheet.Point{{a, from}, {b, to}} {
		d := math.Hypot(pair[1].X-pair[0].X, pair[1].Y-pair[0].Y)
		if d < 1 {
			continue
		}
		x, y := (pair[1].X-pair[0].X)/d, (pair[1].Y-pair[0].Y)/d
		line := stroke(pair[0].X+0.8*x, pair[0].Y+0.8*y, pair[1].X+1.2*x, pair[1].Y+1.2*y)
		c.line(sizePen, line)
		around.takePath(line, false)
	}
	angle := math.Atan2(to.Y-from.Y, to.X-from.X)
	c.line(sizePen, between(from, to))
	c.loop(solid, arrow(from, angle+math.Pi))
	c.loop(solid, arrow(to, angle))
	around.number(c, from, to, text)
	around.takePoints([]sheet.Point{from, to})
}

// number writes a size above its line, to be read from below or from the right, where
// it stands on nothing; if the line is too short, beyond its end.
func (p *places) number(c *picture, from, to sheet.Point, text string) {
	if to.X < from.X-1e-6 || math.Abs(to.X-from.X) <= 1e-6 && to.Y < from.Y {
		from, to = to, from
	}
	long := math.Hypot(to.X-from.X, to.Y-from.Y)
	sin, cos := (to.Y-from.Y)/long, (to.X-from.X)/long
	w := words{text: text, height: 3.2, align: atMiddle, turn: math.Atan2(sin, cos) * 180 / math.Pi, colour: ink}
	if w.width() > long-4 {
		w.align, w.at = atLeft, sheet.Point{X: to.X + 1.5*cos + 1.1*sin, Y: to.Y + 1.5*sin - 1.1*cos}
	} else {
		least := math.Inf(1)
		best := w.at
		for _, share := range []float64{0.5, 0.4, 0.6, 0.3, 0.7} {
			w.at = sheet.Point{X: from.X + share*(to.X-from.X) - 0.8*sin, Y: from.Y + share*(to.Y-from.Y) + 0.8*cos}
			if n := p.crowded(turnedBox(w)); n < least {
				best, least = w.at, n
			}
		}
		w.at = best
	}
	c.text(w)
	p.takeBox(turnedBox(w))
}

// turnedBox holds words that run at any angle.
func turnedBox(w words) box {
	sin, cos := math.Sincos(w.turn * math.Pi / 180)
	back, long, b := w.width()*float64(w.align), w.width(), nowhere
	for _, x := range []float64{-back, long - back} {
		for _, y := range []float64{0, capital * w.height} {
			px, py := w.at.X+x*cos-y*sin, w.at.Y+x*sin+y*cos
			b = b.and(box{px, py, px, py})
		}
	}
	return b
}

// overall writes how long and how high the folded part is.
func (s profile) overall(c *picture, f frame, around *places) {
	low := f.point(sheet.Point{X: s.bounds.left, Y: s.bounds.low})
	high := f.point(sheet.Point{X: s.bounds.right, Y: s.bounds.high})
	const below, beside = 15.0, 9.0
	y, x := low.Y-below, high.X+beside
	dimension(c, around, s.extreme(f, -1, 0), s.extreme(f, 1, 0), sheet.Point{X: low.X, Y: y}, sheet.Point{X: high.X, Y: y}, size(s.bounds.width()))
	dimension(c, around, s.extreme(f, 0, -1), s.extreme(f, 0, 1), sheet.Point{X: x, Y: low.Y}, sheet.Point{X: x, Y: high.Y}, size(s.bounds.height()))
}

// extreme is the point of the profile furthest along a direction; of several the one
// from which a line to its size is short.
func (s profile) extreme(f frame, x, y float64) sheet.Point {
	best, far := sheet.Point{}, math.Inf(-1)
	for _, p := range s.loop {
		if v := p.X*x + p.Y*y; v > far+1e-6 || v > far-1e-6 && (p.X > best.X+1e-6 || p.Y < best.Y) {
			best, far = p, max(far, v)
		}
	}
	return f.point(best)
}
