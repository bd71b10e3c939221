package drawing

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"chainwale/engine/sheet"
)

// SVG writes the flat at full size: a millimetre of the part is a millimetre of the
// picture, whose edge stands 10 mm off. The groups are those of the cutting file.
// Errors: what Check refuses; then nothing is written.
func SVG(w io.Writer, p Part) error {
	if err := p.Check(); err != nil {
		return err
	}
	shapes, err := p.dxfShapes(false)
	if err != nil {
		return err
	}
	const margin = 10
	low, high := extents(shapes)
	s := newSVG(box{low.X - margin, low.Y - margin, high.X + margin, high.Y + margin}, line(p.Name+" "+p.Title), "The flat at full size, in millimetres, seen on face A.")
	for _, l := range layers[1:] {
		s.open(l.name)
		for _, shape := range shapes {
			if shape.layer == l.name {
				s.shape(shape)
			}
		}
		s.close()
	}
	return s.to(w)
}

// shape draws an entity of the cutting file with the pen of its layer.
func (s *svg) shape(d dxfShape) {
	pens := map[string]pen{OutlineLayer: finePen, HolesLayer: finePen, FoldTowardLayer: towardPen, FoldAwayLayer: awayPen, MarksLayer: finePen}
	switch {
	case d.word != "":
		s.mark(mark{words: &words{at: d.at, text: line(d.word), height: d.size / capital, colour: ink}})
	case d.circle:
		s.mark(mark{path: circle(d.at, d.size), closed: true, pen: pens[d.layer]})
	default:
		s.mark(mark{path: d.contour, closed: !d.line, pen: pens[d.layer]})
	}
}

// FoldedSVG writes the folded part as one knows it at a glance, up to 160 mm wide. Errors:
// what Check refuses; then nothing is written.
func FoldedSVG(w io.Writer, p Part) error {
	if err := p.Check(); err != nil {
		return err
	}
	const most, margin = 160, 3
	c := &picture{}
	if err := p.slanted(c, box{0, 0, most, most}); err != nil {
		return err
	}
	p.caption(c)
	s := newSVG(c.box().grown(margin), line(p.Name+" "+p.Title), "The part folded, seen from above its face A.")
	for _, m := range c.marks {
		s.mark(m)
	}
	return s.to(w)
}

// caption writes below a picture what it is and is not.
func (p Part) caption(c *picture) {
	const high, gap, wide = 3.0, 4.2, 150
	at, name := c.box(), line(p.Name)
	if len(p.Flat.Folds) > 0 {
		name += ", folded"
	}
	y := at.low - gap
	for _, text := range append(p.holds(), name+"; a picture and no drawing, not to scale: "+tryFirst+".", advises) {
		for _, l := range wrap(text, wide, high, false) {
			y -= gap
			c.text(words{at: sheet.Point{X: at.left, Y: y}, text: l, height: high, colour: ink})
		}
	}
}

// svg is a picture as it grows; Y points down in it.
type svg struct {
	b      []byte
	bounds box
}

func newSVG(bounds box, title, says string) *svg {
	s := &svg{bounds: bounds}
	s.b = fmt.Appendf(s.b, `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" role="img" fill="none" stroke-linejoin="round" font-family="Helvetica, Arial, sans-serif">
<title>%s</title>
<desc>%s</desc>
`, decimal(bounds.width()), decimal(bounds.height()), decimal(bounds.width()), decimal(bounds.height()), escape(title), escape(says))
	return s
}

func (s *svg) open(group string) { s.b = fmt.Appendf(s.b, "<g id=\"%s\">\n", escape(group)) }
func (s *svg) close()            { s.b = append(s.b, "</g>\n"...) }

func (s *svg) to(w io.Writer) error {
	_, err := w.Write(append(s.b, "</svg>\n"...))
	return err
}

func (s *svg) mark(m mark) {
	if m.words != nil {
		s.words(*m.words)
		return
	}
	s.b = append(s.b, `<path d="`...)
	s.path(m.path, m.closed)
	s.b = append(s.b, '"')
	if m.pen.width == 0 {
		s.b = fmt.Appendf(s.b, " fill=\"%s\"/>\n", m.pen.colour.hex())
		return
	}
	s.b = fmt.Appendf(s.b, ` stroke="%s" stroke-width="%s"`, m.pen.colour.hex(), decimal(m.pen.width))
	if len(m.pen.dashes) > 0 {
		list := make([]string, len(m.pen.dashes))
		for i, d := range m.pen.dashes {
			list[i] = decimal(d)
		}
		s.b = fmt.Appendf(s.b, ` stroke-dasharray="%s"`, strings.Join(list, " "))
	}
	s.b = append(s.b, "/>\n"...)
}

// path writes lines and arcs. What turns left with Y up turns right with Y down, and
// the flag for the sweep says so.
func (s *svg) path(c sheet.Contour, closed bool) {
	s.coordinates('M', c[0])
	last := len(c) - 1
	if closed {
		last++
	}
	for i := range last {
		from, to := c[i], c[(i+1)%len(c)]
		switch {
		case bulges(from):
			large, sweep := '0', '1'
			if math.Abs(from.Bulge) > 1 {
				large = '1'
			}
			if from.Bulge > 0 {
				sweep = '0'
			}
			r := decimal(newArc(from, to).radius)
			s.b = fmt.Appendf(s.b, "A%s %s 0 %c %c ", r, r, large, sweep)
			s.pair(to)
		case i < len(c)-1:
			s.coordinates('L', to)
		}
	}
	if closed {
		s.b = append(s.b, 'Z')
	}
}

func (s *svg) coordinates(command byte, v sheet.Vertex) {
	s.b = append(s.b, command)
	s.pair(v)
}

func (s *svg) pair(v sheet.Vertex) {
	s.b = appendDecimal(s.b, v.X-s.bounds.left)
	s.b = append(s.b, ' ')
	s.b = appendDecimal(s.b, s.bounds.high-v.Y)
}

func (s *svg) words(w words) {
	x, y := decimal(w.at.X-s.bounds.left), decimal(s.bounds.high-w.at.Y)
	s.b = fmt.Appendf(s.b, `<text x="%s" y="%s" font-size="%s" fill="%s"`, x, y, decimal(w.height), w.colour.hex())
	switch w.align {
	case atMiddle:
		s.b = append(s.b, ` text-anchor="middle"`...)
	case atRight:
		s.b = append(s.b, ` text-anchor="end"`...)
	}
	if w.bold {
		s.b = append(s.b, ` font-weight="bold"`...)
	}
	if w.turn != 0 {
		s.b = fmt.Appendf(s.b, ` transform="rotate(%s %s %s)"`, decimal(-w.turn), x, y)
	}
	s.b = fmt.Appendf(s.b, ">%s</text>\n", escape(w.text))
}

func (c colour) hex() string {
	part := func(v float64) int { return int(math.Round(255 * v)) }
	return fmt.Sprintf("#%02x%02x%02x", part(c.r), part(c.g), part(c.b))
}

// appendDecimal writes a number to a tenth of a thousandth, without noughts at the end.
func appendDecimal(b []byte, v float64) []byte {
	start := len(b)
	b = strconv.AppendFloat(b, v, 'f', 4, 64)
	end := len(b)
	for b[end-1] == '0' {
		end--
	}
	if b[end-1] == '.' {
		end--
	}
	if b = b[:end]; string(b[start:]) == "-0" {
		b = append(b[:start], '0')
	}
	return b
}

func decimal(v float64) string { return string(appendDecimal(nil, v)) }

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func escape(s string) string { return escaper.Replace(s) }
