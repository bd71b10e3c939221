package drawing

import (
	"fmt"
	"math"
	"unicode/utf16"

	"chainwale/engine/sheet"
)

// Paper is a size of paper, upright, mm.
type Paper struct{ Width, Height float64 }

// A4 and Letter are what printers hold.
var (
	A4     = Paper{210, 297}
	Letter = Paper{215.9, 279.4}
)

// PaperNamed finds a size of paper by its name, "a4" or "letter".
func PaperNamed(name string) (Paper, error) {
	switch name {
	case "a4":
		return A4, nil
	case "letter":
		return Letter, nil
	}
	return Paper{}, fmt.Errorf("paper is a4 or letter, not %q", name)
}

func (p Paper) check() error {
	if p != A4 && p != Letter {
		return fmt.Errorf("paper is a4 or letter, not %g x %g mm", p.Width, p.Height)
	}
	return nil
}

// turned is the paper lying on its long side.
func (p Paper) turned() Paper { return Paper{p.Height, p.Width} }

// page is a picture on a sheet of paper.
type page struct {
	Paper
	picture
	// within bounds what shows of the marks that are clipped.
	clipped []mark
	within  box
}

// pointsPerMillimetre is a PDF's own unit in ours.
const pointsPerMillimetre = 72 / 25.4

// pdf grows object by object. Content is not packed, so that equal drawings are equal
// bytes under every release of a packer.
type pdf struct {
	b       []byte
	offsets []int
}

// writePDF lays pages down as a PDF 1.6 that asks printers not to scale it.
//
// The objects are: 1 catalogue, 2 the list of pages, 3 and 4 the typefaces, 5 title,
// then two for every page: itself and its content.
func writePDF(title string, pages []*page) []byte {
	d := &pdf{b: []byte("%PDF-1.6\n%\xe2\xe3\xcf\xd3\n")}
	d.object("<</Type/Catalog/Pages 2 0 R/Lang(en)/ViewerPreferences<</PrintScaling/None/PickTrayByPDFSize true/DisplayDocTitle true>>>>")
	kids := []byte{}
	for i := range pages {
		kids = fmt.Appendf(kids, "%d 0 R ", 6+2*i)
	}
	d.object(fmt.Sprintf("<</Type/Pages/Count %d/Kids[%s]>>", len(pages), kids))
	for _, name := range []string{"Helvetica", "Helvetica-Bold"} {
		d.object("<</Type/Font/Subtype/Type1/BaseFont/" + name + "/Encoding/WinAnsiEncoding>>")
	}
	d.object("<</Title" + pdfText(title) + ">>")
	for i, p := range pages {
		d.object(fmt.Sprintf("<</Type/Page/Parent 2 0 R/MediaBox[0 0 %s %s]/Resources<</Font<</F1 3 0 R/F2 4 0 R>>>>/Contents %d 0 R>>",
			decimal(p.Width*pointsPerMillimetre), decimal(p.Height*pointsPerMillimetre), 7+2*i))
		content := p.content()
		d.begin()
		d.b = fmt.Appendf(d.b, "<</Length %d>>\nstream\n", len(content))
		d.b = append(append(d.b, content...), "\nendstream\nendobj\n"...)
	}
	d.finish()
	return d.b
}

func (d *pdf) object(body string) {
	d.begin()
	d.b = append(append(d.b, body...), "\nendobj\n"...)
}

func (d *pdf) begin() {
	d.offsets = append(d.offsets, len(d.b))
	d.b = fmt.Appendf(d.b, "%d 0 obj\n", len(d.offsets))
}

// finish writes the list of where each object stands.
func (d *pdf) finish() {
	at := len(d.b)
	d.b = fmt.Appendf(d.b, "xref\n0 %d\n0000000000 65535 f \n", len(d.offsets)+1)
	for _, o := range d.offsets {
		d.b = fmt.Appendf(d.b, "%010d 00000 n \n", o)
	}
	d.b = fmt.Appendf(d.b, "trailer\n<</Size %d/Root 1 0 R/Info 5 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(d.offsets)+1, at)
}

// pdfText is a string of a PDF in two bytes a letter, so that a title keeps its own.
func pdfText(s string) string {
	b := []byte("<FEFF")
	for _, u := range utf16.Encode([]rune(line(s))) {
		b = fmt.Appendf(b, "%04X", u)
	}
	return string(append(b, '>'))
}

// content is what a page draws, in millimetres: the first operator says so.
func (p *page) content() []byte {
	const much = 24 << 10
	c := &content{b: make([]byte, 0, much)}
	c.b = fmt.Appendf(c.b, "%.9f 0 0 %.9f 0 0 cm 1 j\n", pointsPerMillimetre, pointsPerMillimetre)
	if len(p.clipped) > 0 {
		c.b = append(c.b, "q "...)
		c.numbers(p.within.left, p.within.low, p.within.width(), p.within.height())
		c.b = append(c.b, "re W n\n"...)
		for _, m := range p.clipped {
			c.mark(m)
		}
		c.b = append(c.b, "Q\n"...)
		c.state = state{}
	}
	for _, m := range p.marks {
		c.mark(m)
	}
	return c.b
}

// content is the operators of a page, with what is set by now.
type content struct {
	b []byte
	state
}

// state is what a pen sets; each is written only when it changes.
type state struct {
	known        bool
	stroke, fill colour
	width        float64
	dashes       string
}

func (c *content) numbers(list ...float64) {
	for _, v := range list {
		c.b = appendDecimal(c.b, v)
		c.b = append(c.b, ' ')
	}
}

func (c *content) mark(m mark) {
	if m.words != nil {
		c.words(*m.words)
		return
	}
	c.take(m.pen)
	c.path(m.path, m.closed)
	switch {
	case m.pen.width == 0:
		c.b = append(c.b, "f\n"...)
	case m.closed:
		c.b = append(c.b, "s\n"...)
	default:
		c.b = append(c.b, "S\n"...)
	}
}

// take sets what the pen needs and is not set.
func (c *content) take(p pen) {
	if !c.known {
		c.state = state{known: true, stroke: colour{-1, 0, 0}, fill: colour{-1, 0, 0}}
	}
	if p.width == 0 {
		c.paint(p.colour)
		return
	}
	if c.stroke != p.colour {
		c.stroke = p.colour
		c.numbers(p.colour.r, p.colour.g, p.colour.b)
		c.b = append(c.b, "RG "...)
	}
	if c.width != p.width {
		c.width = p.width
		c.numbers(p.width)
		c.b = append(c.b, "w "...)
	}
	dashes := "["
	for _, d := range p.dashes {
		dashes += decimal(d) + " "
	}
	if dashes += "] 0 d "; c.dashes != dashes {
		c.dashes = dashes
		c.b = append(c.b, dashes...)
	}
}

func (c *content) paint(fill colour) {
	if c.fill != fill || !c.known {
		c.fill = fill
		c.numbers(fill.r, fill.g, fill.b)
		c.b = append(c.b, "rg "...)
	}
}

func (c *content) path(v sheet.Contour, closed bool) {
	c.numbers(v[0].X, v[0].Y)
	c.b = append(c.b, "m "...)
	last := len(v) - 1
	if closed {
		last++
	}
	for i := range last {
		from, to := v[i], v[(i+1)%len(v)]
		switch {
		case bulges(from):
			c.arc(newArc(from, to))
		case i < len(v)-1:
			c.numbers(to.X, to.Y)
			c.b = append(c.b, "l "...)
		}
	}
	if closed {
		c.b = append(c.b, "h "...)
	}
}

// arc draws pieces of up to an eighth of a circle, each a curve of third order that
// leaves it by less than a hundred thousandth of the radius.
func (c *content) arc(a arc) {
	n := int(math.Ceil(math.Abs(a.sweep) / (math.Pi / 4) * (1 - 1e-9)))
	step := a.sweep / float64(n)
	reach := a.radius * 4 / 3 * math.Tan(step/4)
	for i := range n {
		s0, c0 := math.Sincos(a.start + float64(i)*step)
		s1, c1 := math.Sincos(a.start + float64(i+1)*step)
		x0, y0 := a.centre.X+a.radius*c0, a.centre.Y+a.radius*s0
		x1, y1 := a.centre.X+a.radius*c1, a.centre.Y+a.radius*s1
		c.numbers(x0-reach*s0, y0+reach*c0, x1+reach*s1, y1-reach*c1, x1, y1)
		c.b = append(c.b, "c "...)
	}
}

// words sets a line of letters.
func (c *content) words(w words) {
	if !c.known {
		c.take(pen{colour: w.colour})
	}
	c.paint(w.colour)
	font := "/F1 "
	if w.bold {
		font = "/F2 "
	}
	sin, cos := math.Sincos(w.turn * math.Pi / 180)
	back := w.width() * float64(w.align)
	c.b = append(append(c.b, "BT "...), font...)
	c.numbers(w.height)
	c.b = append(c.b, "Tf "...)
	c.numbers(cos, sin, -sin, cos, w.at.X-back*cos, w.at.Y-back*sin)
	c.b = append(c.b, "Tm ("...)
	for _, letter := range encode(w.text) {
		if letter == '(' || letter == ')' || letter == '\\' {
			c.b = append(c.b, '\\')
		}
		c.b = append(c.b, letter)
	}
	c.b = append(c.b, ")Tj ET\n"...)
}
