package drawing

import (
	"math"

	"chainwale/engine/sheet"
)

// places keeps what stands on a part of the paper, so that words find room.
type places struct {
	room  box
	boxes []box
	lines [][2]sheet.Point
}

func (p *places) takeBox(b box) { p.boxes = append(p.boxes, b) }

func (p *places) takePoints(points []sheet.Point) {
	for i := 1; i < len(points); i++ {
		p.lines = append(p.lines, [2]sheet.Point{points[i-1], points[i]})
	}
}

// takePath takes a line of arcs and straight pieces.
func (p *places) takePath(c sheet.Contour, closed bool) {
	points := flatten(c, closed)
	p.takePoints(points)
}

// flatten makes points of a line, close enough to lay words beside it.
func flatten(c sheet.Contour, closed bool) []sheet.Point {
	var points []sheet.Point
	last := len(c) - 1
	if closed {
		last++
	}
	for i := range last {
		a, b := c[i], c[(i+1)%len(c)]
		points = append(points, sheet.Point{X: a.X, Y: a.Y})
		if bulges(a) {
			arc := newArc(a, b)
			n := int(math.Ceil(math.Abs(arc.sweep) / 0.2))
			for k := 1; k < n; k++ {
				points = append(points, arc.at(float64(k)/float64(n)))
			}
		}
	}
	end := c[len(c)-1]
	if closed {
		end = c[0]
	}
	return append(points, sheet.Point{X: end.X, Y: end.Y})
}

// crowded counts what a box would stand on; outside the room counts most.
func (p *places) crowded(b box) float64 {
	n := 0.0
	if !b.within(p.room) {
		n += 100
	}
	for _, o := range p.boxes {
		if b.meets(o) {
			n += 10
		}
	}
	for _, l := range p.lines {
		if crosses(b, l[0], l[1]) {
			n++
		}
	}
	return n
}

// crosses tells whether a line runs through a box, by cutting off what lies beyond its
// sides.
func crosses(b box, p, q sheet.Point) bool {
	if p.X < b.left && q.X < b.left || p.X > b.right && q.X > b.right || p.Y < b.low && q.Y < b.low || p.Y > b.high && q.Y > b.high {
		return false
	}
	from, to := 0.0, 1.0
	for _, side := range [4][2]float64{{p.X - q.X, p.X - b.left}, {q.X - p.X, b.right - p.X}, {p.Y - q.Y, p.Y - b.low}, {q.Y - p.Y, b.high - p.Y}} {
		slope, room := side[0], side[1]
		switch {
		case slope == 0:
			if room < 0 {
				return false
			}
		case slope < 0:
			from = max(from, room/slope)
		default:
			to = min(to, room/slope)
		}
	}
	return from <= to
}

// put finds room for words near an anchor, and lays them down.
func (p *places) put(c *picture, w words, anchor sheet.Point, rings, directions []float64) {
	found, _ := p.find(w, anchor, rings, directions)
	p.lay(c, found, anchor, 0)
}

// find tries rings around an anchor, the nearest first, and on each the directions in
// order, deg. It gives the words in the first place where they stand on nothing, else in
// the least crowded, and how crowded that is: below 1 for nothing.
func (p *places) find(w words, anchor sheet.Point, rings, directions []float64) (best words, least float64) {
	w.text, w.align = line(w.text), atLeft
	wide, high := w.width(), capital*w.height
	least = math.Inf(1)
	for _, ring := range rings {
		for _, direction := range directions {
			sin, cos := math.Sincos(direction * math.Pi / 180)
			// The near side of the words touches the ring.
			w.at = sheet.Point{X: anchor.X + ring*cos - wide/2 + wide/2*sign(cos, 0.35), Y: anchor.Y + ring*sin - high/2 + high/2*sign(sin, 0.35)}
			n := p.crowded(w.box().grown(0.5)) + ring/1000
			if ring > 4 {
				n += 0.5 * p.crossed(anchor, nearest(w.box(), anchor))
			}
			if n < least {
				best, least = w, n
			}
			if n < 1 {
				return best, least
			}
		}
	}
	return best, least
}

// lay draws words that have found their place, with a line to the anchor if they stand
// off. Around the anchor something reaches so far, and the line begins at its edge.
func (p *places) lay(c *picture, w words, anchor sheet.Point, reach float64) {
	const off = 3.2
	near := nearest(w.box().grown(0.6), anchor)
	if d := math.Hypot(near.X-anchor.X, near.Y-anchor.Y); d > reach+off {
		from := sheet.Point{X: anchor.X + reach/d*(near.X-anchor.X), Y: anchor.Y + reach/d*(near.Y-anchor.Y)}
		c.line(pen{width: 0.18, colour: w.colour}, between(from, near))
		if reach == 0 {
			c.loop(pen{colour: w.colour}, circle(anchor, 0.45))
		}
		p.takePoints([]sheet.Point{from, near})
	}
	c.text(w)
	p.takeBox(w.box())
}

// crossed counts the words that a line to an anchor would run through.
func (p *places) crossed(a, b sheet.Point) float64 {
	n := 0.0
	for _, o := range p.boxes {
		if crosses(o, a, b) {
			n += 10
		}
	}
	return n
}

// sign is -1, 0 or 1, and 0 near it.
func sign(v, near float64) float64 {
	switch {
	case v > near:
		return 1
	case v < -near:
		return -1
	}
	return 0
}

// nearest is the point of a box nearest to another.
func nearest(b box, p sheet.Point) sheet.Point {
	return sheet.Point{X: min(max(p.X, b.left), b.right), Y: min(max(p.Y, b.low), b.high)}
}

// apart moves places along a line until each has room, and as little as it can: places
// that run into each other become a bunch that moves as one. They must be in order.
func apart(wanted []float64, room float64) []float64 {
	type bunch struct {
		sum float64
		n   int
	}
	var bunches []bunch
	for i, v := range wanted {
		// Counted as if all stood room apart, places in order must not fall.
		b := bunch{v - room*float64(i), 1}
		for len(bunches) > 0 && bunches[len(bunches)-1].sum/float64(bunches[len(bunches)-1].n) >= b.sum/float64(b.n) {
			last := bunches[len(bunches)-1]
			b = bunch{b.sum + last.sum, b.n + last.n}
			bunches = bunches[:len(bunches)-1]
		}
		bunches = append(bunches, b)
	}
	var list []float64
	for _, b := range bunches {
		for range b.n {
			list = append(list, b.sum/float64(b.n)+room*float64(len(list)))
		}
	}
	return list
}
