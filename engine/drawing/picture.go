package drawing

import (
	"math"

	"chainwale/engine/sheet"
)

// colour is one of the few that a picture has.
type colour struct{ r, g, b float64 }

var (
	ink    = colour{0.08, 0.08, 0.08}
	grey   = colour{0.42, 0.42, 0.42}
	accent = colour{0.0, 0.33, 0.58}
	paper  = colour{1, 1, 1}
)

// pen is how a line is drawn: its width and its strokes and gaps, mm. A pen without
// width fills.
type pen struct {
	width  float64
	dashes []float64
	colour colour
}

// The pens. Edges of the part are the heaviest; what only helps is thin.
var (
	edgePen   = pen{width: 0.5, colour: ink}
	finePen   = pen{width: 0.25, colour: ink}
	hiddenPen = pen{width: 0.25, dashes: []float64{2, 1}, colour: ink}
	centrePen = pen{width: 0.18, dashes: []float64{6, 1.2, 0.8, 1.2}, colour: ink}
	sizePen   = pen{width: 0.18, colour: ink}
	rulePen   = pen{width: 0.18, colour: grey}
	framePen  = pen{width: 0.5, colour: ink}
	// A fold towards the viewer is dashed, one away dash and dot, as in the cutting file.
	towardPen = pen{width: 0.4, dashes: []float64{4, 1.6}, colour: accent}
	awayPen   = pen{width: 0.4, dashes: []float64{4, 1.4, 0.5, 1.4}, colour: accent}
	bandPen   = pen{width: 0.18, colour: accent}
	accentPen = pen{width: 0.4, colour: accent}
	solid     = pen{colour: ink}
	blank     = pen{colour: paper}
)

func (b band) pen() pen {
	if b.toward() {
		return towardPen
	}
	return awayPen
}

// mark is one thing on paper: a line of straight pieces and arcs, or words.
type mark struct {
	path   sheet.Contour
	closed bool
	pen    pen
	words  *words
}

// align is which part of a line of words stands at its place.
type align float64

const (
	atLeft   align = 0
	atMiddle align = 0.5
	atRight  align = 1
)

// words are a line of letters. At is on their foot line; height is that of the
// typeface, whose capitals are 0.72 of it; turn is counter-clockwise in deg.
type words struct {
	at     sheet.Point
	text   string
	height float64
	bold   bool
	align  align
	turn   float64
	colour colour
}

// picture is marks in the order in which they are laid down, mm, Y up.
type picture struct{ marks []mark }

func (c *picture) line(pen pen, path sheet.Contour) {
	c.marks = append(c.marks, mark{path: path, pen: pen})
}

func (c *picture) loop(pen pen, path sheet.Contour) {
	c.marks = append(c.marks, mark{path: path, closed: true, pen: pen})
}

func (c *picture) text(w words) {
	w.text = line(w.text)
	if w.text != "" {
		c.marks = append(c.marks, mark{words: &w})
	}
}

// label is words on a patch of paper, so that lines below don't run through them.
func (c *picture) label(w words) {
	box := w.box()
	c.loop(blank, box.grown(0.4).contour())
	c.text(w)
}

// capital is how high a capital letter is, of the height of its typeface.
const capital = 0.72

// width is how wide the words run.
func (w words) width() float64 { return textWidth(line(w.text), w.height, w.bold) }

// box holds words that run along the paper or up it.
func (w words) box() box {
	long, before := w.width(), w.width()*float64(w.align)
	up, down := 0.74*w.height, 0.2*w.height
	if w.turn == 90 {
		return box{w.at.X - up, w.at.Y - before, w.at.X + down, w.at.Y - before + long}
	}
	return box{w.at.X - before, w.at.Y - down, w.at.X - before + long, w.at.Y + up}
}

// box is an upright rectangle on paper.
type box struct{ left, low, right, high float64 }

func (b box) width() float64  { return b.right - b.left }
func (b box) height() float64 { return b.high - b.low }

func (b box) grown(by float64) box {
	return box{b.left - by, b.low - by, b.right + by, b.high + by}
}

func (b box) contour() sheet.Contour { return rectangle(b.left, b.low, b.width(), b.height()) }

func (b box) meets(o box) bool {
	return b.left < o.right && o.left < b.right && b.low < o.high && o.low < b.high
}

func (b box) within(o box) bool {
	return b.left >= o.left && b.right <= o.right && b.low >= o.low && b.high <= o.high
}

// and is the smallest box around both.
func (b box) and(o box) box {
	return box{min(b.left, o.left), min(b.low, o.low), max(b.right, o.right), max(b.high, o.high)}
}

var nowhere = box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}

// box holds all marks.
func (c *picture) box() box {
	b := nowhere
	for _, m := range c.marks {
		if m.words != nil {
			b = b.and(m.words.box())
			continue
		}
		for _, p := range flatten(m.path, m.closed) {
			b = b.and(box{p.X, p.Y, p.X, p.Y})
		}
	}
	return b
}

// frame lays things of the part on paper: turned upright, at a scale, from an origin.
type frame struct {
	scale  float64
	origin sheet.Point
}

func (f frame) point(p sheet.Point) sheet.Point {
	return sheet.Point{X: f.origin.X + f.scale*p.X, Y: f.origin.Y + f.scale*p.Y}
}

func (f frame) path(c sheet.Contour) sheet.Contour {
	list := make(sheet.Contour, len(c))
	for i, v := range c {
		p := f.point(sheet.Point{X: v.X, Y: v.Y})
		list[i] = sheet.Vertex{X: p.X, Y: p.Y, Bulge: v.Bulge}
	}
	return list
}

// arrow is a filled head at a point, pointing along an angle in radians.
func arrow(tip sheet.Point, angle float64) sheet.Contour {
	const long, half = 2.6, 0.45
	sin, cos := math.Sincos(angle)
	at := func(x, y float64) sheet.Point { return sheet.Point{X: tip.X + x*cos - y*sin, Y: tip.Y + x*sin + y*cos} }
	return polyline([]sheet.Point{tip, at(-long, half), at(-long, -half)})
}
