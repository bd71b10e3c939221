package drawing

import (
	"fmt"
	"io"
	"math"
	"strings"

	"chainwale/engine/sheet"
)

// TemplateOptions choose paper and correction of a template.
type TemplateOptions struct {
	// Paper is A4 if left empty. Sheets stand upright, as printers feed them.
	Paper Paper
	// ScaleX and ScaleY stretch everything across the paper and along it, to undo what a
	// printer does: 150 over what its 150 mm ruler measures. 0 leaves them at 1.
	ScaleX, ScaleY float64
}

// What a sheet of a template keeps free of the part, mm: a margin that printers reach, a
// head for the calibration square and the words, a strip for the rulers.
const (
	templateMargin = 9.0
	templateHead   = 57.0
	templateStrip  = 11.0
	squareSize     = 50.0
	rulerLength    = 150.0
)

// The most that a printer can be off and still be a printer.
const (
	leastScale = 0.95
	mostScale  = 1.05
)

// CheckScale refuses a factor that no printer needs; name says which it is.
func CheckScale(name string, v float64) error {
	if !(v >= leastScale && v <= mostScale) {
		return fmt.Errorf("%s is 150 over what the 150 mm ruler measures, and no printer is off so far that it is %g: %g to %g", name, v, leastScale, mostScale)
	}
	return nil
}

func (o *TemplateOptions) check() error {
	if o.Paper == (Paper{}) {
		o.Paper = A4
	}
	if err := o.Paper.check(); err != nil {
		return err
	}
	for _, s := range []struct {
		name  string
		value *float64
	}{{"scale-x", &o.ScaleX}, {"scale-y", &o.ScaleY}} {
		if *s.value == 0 {
			*s.value = 1
		}
		if err := CheckScale(s.name, *s.value); err != nil {
			return err
		}
	}
	return nil
}

// mostSheets is how many sheets of paper a template may take.
const mostSheets = 200

// TemplatePDF writes the flat at full size on as many sheets as it takes, each with a
// 50 mm square and 150 mm rulers both ways, and crosses that join it to its neighbours.
// Errors: paper and factors that are none, a part that takes too many sheets, and what
// Check refuses; then nothing is written.
func TemplatePDF(w io.Writer, p Part, o TemplateOptions) error {
	if err := o.check(); err != nil {
		return err
	}
	if err := p.Check(); err != nil {
		return err
	}
	pages, err := p.templateSheets(o)
	if err != nil {
		return fmt.Errorf("%s: %w", line(p.Name), err)
	}
	_, err = w.Write(writePDF(line(p.Name+" template 1:1"), pages))
	return err
}

// templateSheets draws all sheets of the template, row by row from the top.
func (p Part) templateSheets(o TemplateOptions) ([]*page, error) {
	t, err := newTemplate(p, o)
	if err != nil {
		return nil, err
	}
	var pages []*page
	for j := t.ny - 1; j >= 0; j-- {
		for i := range t.nx {
			pages = append(pages, t.page(i, j, len(pages)+1))
		}
	}
	return pages, nil
}

// template is a flat on its way to paper, still in its own millimetres.
type template struct {
	tiles
	part    Part
	options TemplateOptions
	// upright says that the strip runs up the paper.
	upright bool
	marks   []mark
	joins   []crossMark
}

// newTemplate draws the flat, lengthwise across the paper or up it, whichever takes
// fewer sheets.
func newTemplate(p Part, o TemplateOptions) (*template, error) {
	low, high := p.Flat.Outline.Bounds()
	part := box{low.X, low.Y, high.X, high.Y}.grown(3)
	wide := (o.Paper.Width - 2*templateMargin - templateStrip) / o.ScaleX
	tall := (o.Paper.Height - 2*templateMargin - templateHead - templateStrip) / o.ScaleY
	across := newTiles(part, wide, tall)
	up := newTiles(box{-part.high, part.left, -part.low, part.right}, wide, tall)
	t := &template{tiles: across, part: p, options: o}
	if up.nx*up.ny < across.nx*across.ny {
		t.tiles, t.upright = up, true
	}
	if n := t.nx * t.ny; n > mostSheets {
		return nil, fmt.Errorf("a template of %d sheets is no template; %d are the most", n, mostSheets)
	}
	return t, t.draw()
}

// turn lays a point of the flat on the template: a quarter turned if it stands upright.
func (t *template) turn(p sheet.Point) sheet.Point {
	if t.upright {
		return sheet.Point{X: -p.Y, Y: p.X}
	}
	return p
}

func (t *template) turned(c sheet.Contour) sheet.Contour {
	list := make(sheet.Contour, len(c))
	for i, v := range c {
		p := t.turn(sheet.Point{X: v.X, Y: v.Y})
		list[i] = sheet.Vertex{X: p.X, Y: p.Y, Bulge: v.Bulge}
	}
	return list
}

// draw lays down the flat with all that is read off it: thin lines, for their middle is
// what counts.
func (t *template) draw() error {
	folds, err := bands(t.part.Flat)
	if err != nil {
		return err
	}
	c := &picture{}
	around := &places{room: box{-1e6, -1e6, 1e6, 1e6}}
	loop := func(pen pen, path sheet.Contour) {
		path = t.turned(path)
		c.loop(pen, path)
		around.takePath(path, true)
	}
	stroke := func(pen pen, path sheet.Contour) {
		path = t.turned(path)
		c.line(pen, path)
		around.takePath(path, false)
	}
	loop(finePen, t.part.Flat.Outline)
	for _, b := range folds {
		for _, beyond := range []float64{-b.half, b.half} {
			stroke(bandPen, between(b.chord(t.part.Flat.Outline, beyond)))
		}
		stroke(b.pen(), between(b.from, b.to))
	}
	holes := append(append([]sheet.Hole{}, t.part.Flat.Holes...), laterHoles(t.part.Later)...)
	for i, h := range holes {
		pen := finePen
		if i >= len(t.part.Flat.Holes) {
			pen = hiddenPen
		}
		loop(pen, h.Contour())
		for _, path := range holeCross(h.At, h, 1, 3) {
			stroke(middlePen, path)
		}
	}
	t.takeEdges(around)
	t.name(c, around, folds, holes)
	t.marks, t.joins = c.marks, t.crosses(around)
	return nil
}

// middlePen is for the cross in the middle of a hole: solid, so that its middle shows.
var middlePen = pen{width: 0.13, colour: ink}

// name writes on the template what is what.
func (t *template) name(c *picture, around *places, folds []band, holes []sheet.Hole) {
	directions := []float64{45, 135, 315, 225, 0, 90, 180, 270}
	for _, b := range folds {
		way := "away from you"
		if b.toward() {
			way = "toward you"
		}
		middle := sheet.Point{X: (b.from.X + b.to.X) / 2, Y: (b.from.Y + b.to.Y) / 2}
		text := t.part.letter(b.index) + " " + size(math.Abs(b.Angle)) + "° " + way
		around.put(c, words{text: text, height: 3.6, bold: true, colour: accent}, t.turn(middle), []float64{b.half + 1.5, b.half + 4, b.half + 8, b.half + 14, b.half + 20}, directions)
	}
	for i, h := range holes {
		text := whole(i+1) + ": " + holeSize(h)
		if i == t.part.Datum && i < len(t.part.Flat.Holes) {
			if role := line(t.part.use(i).Role); role != "" {
				text += " " + role
			}
		}
		if i >= len(t.part.Flat.Holes) {
			text += " after folding"
		}
		r := widest(h) + 1.5
		found, _ := around.find(words{text: text, height: 3.4, colour: ink}, t.turn(h.At), []float64{r, r + 2, r + 4, r + 7, r + 11, r + 16}, directions)
		around.lay(c, found, t.turn(h.At), widest(h))
	}
	t.say(c, around)
}

// say writes name and face in the middle of the part, where there is room.
func (t *template) say(c *picture, around *places) {
	low, high := t.part.Flat.Outline.Bounds()
	middle := t.turn(sheet.Point{X: (low.X + high.X) / 2, Y: (low.Y + high.Y) / 2})
	var rings []float64
	for r := 0.0; r < (high.X-low.X)/2; r += 4 {
		rings = append(rings, r)
	}
	if t.upright {
		around.room = box{middle.X - (high.Y-low.Y)/2, low.X, middle.X + (high.Y-low.Y)/2, high.X}
	} else {
		around.room = box{low.X, low.Y, high.X, high.Y}
	}
	for _, text := range []string{"face A", line(t.part.Name)} {
		for _, aside := range []float64{0, 0.27, -0.27} {
			at := t.turn(sheet.Point{X: (low.X + high.X) / 2, Y: (low.Y+high.Y)/2 + aside*(high.Y-low.Y)})
			found, crowd := around.find(words{text: text, height: 4.2, bold: true, colour: ink}, at, rings, []float64{0, 180, 90, 270, 20, 160, 200, 340})
			if crowd < 1 {
				c.text(found)
				around.takeBox(found.box())
				break
			}
		}
	}
}

// page is one sheet: what it shows of the flat, the crosses, and what proves its size.
func (t *template) page(i, j, number int) *page {
	o := t.options
	s := &page{Paper: o.Paper}
	shows := t.at(i, j)
	// Paper across is (x - shows.left) ScaleX from the corner of what is shown, and so up.
	corner := sheet.Point{X: templateMargin + templateStrip, Y: templateMargin + templateStrip}
	s.within = box{corner.X, corner.Y, corner.X + shows.width()*o.ScaleX, corner.Y + shows.height()*o.ScaleY}
	at := stretch{sheet.Point{X: shows.left, Y: shows.low}, corner, o.ScaleX, o.ScaleY}
	for _, m := range t.marks {
		s.clipped = append(s.clipped, at.mark(m))
	}
	for _, c := range t.joins {
		if box := (box{c.at.X, c.at.Y, c.at.X, c.at.Y}); box.within(shows) {
			s.clipped = append(s.clipped, at.crossMark(c)...)
		}
	}
	if t.nx*t.ny > 1 {
		s.loop(rulePen, s.within.contour())
	}
	t.head(s, i, j, number)
	rulers(s, corner, o)
	return s
}

// stretch lays marks of the template on a sheet, stretched each way.
type stretch struct {
	from, to sheet.Point
	x, y     float64
}

func (t stretch) point(p sheet.Point) sheet.Point {
	return sheet.Point{X: t.to.X + (p.X-t.from.X)*t.x, Y: t.to.Y + (p.Y-t.from.Y)*t.y}
}

// mark stretches a mark; arcs become short lines if a circle would not stay one.
func (t stretch) mark(m mark) mark {
	if m.words != nil {
		w := *m.words
		w.at = t.point(w.at)
		return mark{words: &w}
	}
	path := m.path
	if t.x != t.y {
		path = polyline(fine(path, m.closed))
	}
	list := make(sheet.Contour, len(path))
	for i, v := range path {
		p := t.point(sheet.Point{X: v.X, Y: v.Y})
		list[i] = sheet.Vertex{X: p.X, Y: p.Y, Bulge: v.Bulge}
	}
	return mark{path: list, closed: m.closed, pen: m.pen}
}

// fine makes points of a line that leave its arcs by less than a hundredth of a
// millimetre.
func fine(c sheet.Contour, closed bool) []sheet.Point {
	if closed {
		return c.Flatten(0.01)
	}
	return flatten(c, false)
}

// crossMark is a registration cross with a ring, and its name beside it.
func (t stretch) crossMark(c crossMark) []mark {
	p := t.point(c.at)
	var list []mark
	for _, path := range cross(p, 5) {
		list = append(list, mark{path: path, pen: finePen})
	}
	list = append(list, mark{path: circle(p, 2.5), closed: true, pen: finePen})
	return append(list, mark{words: &words{at: sheet.Point{X: p.X + 3, Y: p.Y + 2.6}, text: c.name, height: 3.4, bold: true, colour: ink}})
}

// head is the square that proves the size, and beside it what to do.
func (t *template) head(s *page, i, j, number int) {
	o := t.options
	top := s.Height - templateMargin
	low := top - squareSize*o.ScaleY - 1
	s.loop(finePen, rectangle(templateMargin+1, low, squareSize*o.ScaleX, squareSize*o.ScaleY))
	s.text(words{at: sheet.Point{X: templateMargin + 1 + squareSize*o.ScaleX/2, Y: low + squareSize*o.ScaleY/2}, text: "50 × 50 mm", height: 4.2, bold: true, align: atMiddle, colour: ink})
	s.text(words{at: sheet.Point{X: templateMargin + 1 + squareSize*o.ScaleX/2, Y: low + squareSize*o.ScaleY/2 - 6}, text: "measure me, both ways", height: 3.2, align: atMiddle, colour: ink})
	x := templateMargin + squareSize*mostScale + 4
	wide := s.Width - templateMargin - x
	y := top - 5
	name := line(t.part.Name + " " + t.part.Title)
	if t.part.Hold != "" {
		name = t.part.held() + ": " + name
	}
	title, height := fitted(name, wide, true)
	s.text(words{at: sheet.Point{X: x, Y: y}, text: title, height: height, bold: true, colour: ink})
	y -= 1.5
	sheets := "Template 1:1, sheet " + whole(number) + " of " + whole(t.nx*t.ny)
	if t.nx*t.ny > 1 {
		sheets += ": row " + whole(t.ny-j) + " from the top, " + whole(i+1) + " from the left. Lay crosses of one letter on each other"
	}
	if o.ScaleX != 1 || o.ScaleY != 1 {
		sheets += ". Corrected by scale-x " + exact(o.ScaleX) + ", scale-y " + exact(o.ScaleY)
	}
	y = paragraph(&s.picture, sheets+".", sheet.Point{X: x, Y: y}, wide, false, ink)
	y = paragraph(&s.picture, "Print at 100 %, with “fit to page” off. Square and rulers must measure true. If a 150 mm ruler measures m, print again with scale-x (the lower ruler) or scale-y (the upright one) = 150/m.", sheet.Point{X: x, Y: y - 0.6}, wide, true, accent)
	hand := ""
	if h := line(t.part.Hand); h != "" {
		hand = " (" + h + ")"
	}
	y = paragraph(&s.picture, "You look on face A of the part as drawn"+hand+". Lay it on the old part and look through the holes: outline, pin hole to the farthest bolt, bolts corner to corner. Off by more than 0.5 mm: measure again before any metal is cut.", sheet.Point{X: x, Y: y - 0.6}, wide, false, ink)
	const small, lines = 2.8, 3.5
	for _, l := range wrap("Of the part: "+tryFirst+". "+strings.Replace(advises, "drawing", "template", 1), wide, small, false) {
		y -= lines
		s.text(words{at: sheet.Point{X: x, Y: y}, text: l, height: small, colour: accent})
	}
}

// exact writes a factor as it was given.
func exact(v float64) string { return decimal(v) }

// rulers are 150 mm across the paper and up it, from one corner.
func rulers(s *page, corner sheet.Point, o TemplateOptions) {
	for _, up := range []bool{false, true} {
		at := func(along, away float64) sheet.Point {
			if up {
				return sheet.Point{X: corner.X - away, Y: corner.Y + along*o.ScaleY}
			}
			return sheet.Point{X: corner.X + along*o.ScaleX, Y: corner.Y - away}
		}
		s.line(finePen, between(at(0, 3), at(rulerLength, 3)))
		for mm := 0.0; mm <= rulerLength; mm++ {
			long := 1.2
			switch {
			case math.Mod(mm, 10) == 0:
				long = 3
			case math.Mod(mm, 5) == 0:
				long = 2
			}
			pen := sizePen
			if mm == 0 || mm == rulerLength {
				pen = finePen
			}
			s.line(pen, between(at(mm, 3), at(mm, 3+long)))
			if math.Mod(mm, 10) != 0 {
				continue
			}
			text := size(mm)
			if mm == rulerLength {
				text += " mm"
			}
			w := words{at: at(mm, 9), text: text, height: 2.8, align: atMiddle, colour: ink}
			if up {
				w.at = at(mm, 6.6)
				w.turn = 90
			}
			s.text(w)
		}
	}
}
