package drawing

import (
	"fmt"
	"io"

	"chainwale/engine/sheet"
)

// PDFOptions choose the paper of a drawing.
type PDFOptions struct {
	// Paper is A4 if left empty. The drawing lies on its long side.
	Paper Paper
}

// The margin of every sheet and the height of the title block, mm: printers don't reach
// the last 5 mm.
const (
	sheetMargin = 8.0
	titleHeight = 31.0
)

// DrawingPDF writes the drawing that the part is made after: the flat with its sizes,
// the folded part, lists of holes and folds, what it is made of and how, and room for
// what is measured on the first part. Errors: paper that is none, and what Check
// refuses; then nothing is written.
func DrawingPDF(w io.Writer, p Part, o PDFOptions) error {
	if o.Paper == (Paper{}) {
		o.Paper = A4
	}
	if err := o.Paper.check(); err != nil {
		return err
	}
	if err := p.Check(); err != nil {
		return err
	}
	pages, err := p.sheets(o.Paper.turned())
	if err != nil {
		return fmt.Errorf("%s: %w", line(p.Name), err)
	}
	_, err = w.Write(writePDF(line(p.Name+" "+p.Title), pages))
	return err
}

// sheets draws all sheets of the drawing.
func (p Part) sheets(paper Paper) ([]*page, error) {
	m, err := newModel(p.folded(), slantedEye)
	if err != nil {
		return nil, err
	}
	d := &drawing{part: p, model: m, paper: paper}
	d.views()
	d.words(d.lists())
	for i, s := range d.pages {
		d.title(s, i+1)
	}
	return d.pages, nil
}

// drawing is the sheets as they fill.
type drawing struct {
	part  Part
	model *model
	paper Paper
	pages []*page
	// free is what is left of the first sheet for the lists.
	free  box
	scale float64
	// waiting are tables that found no room on the first sheet.
	waiting []listed
}

// listed is a table with the caution that stands below it.
type listed struct {
	table
	caution string
}

// sheet begins a sheet and gives the room above its title block.
func (d *drawing) sheet() (*page, box) {
	s := &page{Paper: d.paper}
	d.pages = append(d.pages, s)
	frame := box{sheetMargin, sheetMargin, d.paper.Width - sheetMargin, d.paper.Height - sheetMargin}
	return s, box{frame.left, frame.low + titleHeight, frame.right, frame.high}
}

// What the folded views are given of a sheet's height at least and at most, mm.
const (
	foldedLeast = 52.0
	foldedMost  = 72.0
)

// views draws the flat over the whole width and the folded part below it; a plate that
// is nearly as high as it is long stands to the left, where it can be larger.
func (d *drawing) views() {
	s, room := d.sheet()
	v := newFlatView(d.part, d.model.folds)
	over, beside := room, room
	over.low = room.high - 0.6*room.height()
	beside.right = room.left + 0.62*room.width()
	scale, takes := v.scaleIn(over)
	if wider, _ := v.scaleIn(beside); wider > scale {
		d.scale = wider
		d.sideBySide(s, v, beside, room)
		return
	}
	d.scale = scale
	over.low = room.high - takes
	v.draw(&s.picture, over, scale)
	d.below(s, box{room.left, room.low, room.right, over.low})
}

// below draws the folded part under the flat. If the lists find room under both, they
// get it.
func (d *drawing) below(s *page, room box) {
	folded, tables := room, 0.0
	for _, t := range d.tables() {
		tables = max(tables, d.takes(t, d.column(room)))
	}
	if left := room.height() - tables; tables > 0 && left >= foldedLeast {
		folded.low = folded.high - min(left, foldedMost)
		d.free = box{folded.left, room.low, folded.right, folded.low}
	}
	s.line(rulePen, stroke(folded.left, folded.high, folded.right, folded.high))
	if len(d.model.folds) == 0 {
		d.asItLooks(s, folded)
		return
	}
	edge := folded.left + 0.58*folded.width()
	s.line(rulePen, stroke(edge, folded.low, edge, folded.high))
	d.part.sideView(&s.picture, d.model, box{folded.left, folded.low, edge, folded.high})
	d.asItLooks(s, box{edge, folded.low, folded.right, folded.high})
}

// sideBySide draws the flat to the left and the folded part to the right of it.
func (d *drawing) sideBySide(s *page, v *flatView, flat, room box) {
	v.draw(&s.picture, flat, d.scale)
	folded := box{flat.right, room.low, room.right, room.high}
	s.line(rulePen, stroke(folded.left, folded.low, folded.left, folded.high))
	if len(d.model.folds) == 0 {
		d.asItLooks(s, folded)
		return
	}
	edge := (folded.low + folded.high) / 2
	s.line(rulePen, stroke(folded.left, edge, folded.right, edge))
	d.part.sideView(&s.picture, d.model, box{folded.left, edge, folded.right, folded.high})
	d.asItLooks(s, box{folded.left, folded.low, folded.right, edge})
}

// asItLooks draws the part slanted, under its heading.
func (d *drawing) asItLooks(s *page, room box) {
	name := "Folded, not to scale"
	if len(d.model.folds) == 0 {
		name = "Not to scale"
	}
	s.text(words{at: sheet.Point{X: room.left + 2, Y: room.high - 5}, text: name, height: headHeight, bold: true, colour: ink})
	room.high -= 6
	d.part.drawSlanted(&s.picture, d.model, room)
}

func (d *drawing) tables() []listed {
	var list []listed
	if len(d.part.Flat.Holes)+len(d.part.Later) > 0 {
		list = append(list, listed{d.part.holeList(), cutCaution})
	}
	if len(d.model.folds) > 0 {
		list = append(list, listed{d.part.foldList(d.model.folds), pressCaution})
	}
	return list
}

// column is the width of a list where two stand side by side.
func (d *drawing) column(room box) float64 { return (room.width() - 9) / 2 }

// takes is the height of a table with its caution.
func (d *drawing) takes(t listed, wide float64) float64 {
	return t.height(wide) + 1.5 + paragraphHeight(t.caution, wide, false) + 2
}

// lists puts holes and folds side by side: below the views if there is room, otherwise
// at the head of the next sheet. It gives the two halves below them.
func (d *drawing) lists() *column {
	s, room := d.pages[0], d.free
	next := room == box{}
	if next {
		s, room = d.sheet()
	} else {
		s.line(rulePen, stroke(room.left, room.high, room.right, room.high))
	}
	k := &column{d: d, s: s, room: room, y: room.high, rightTop: room.high}
	wide := d.column(room)
	for i, t := range d.tables() {
		if d.takes(t, wide) > room.height() {
			d.waiting = append(d.waiting, t)
			continue
		}
		at := sheet.Point{X: room.left + 3 + float64(i)*(wide+3), Y: room.high}
		y := t.draw(&s.picture, at, wide)
		y = paragraph(&s.picture, t.caution, sheet.Point{X: at.X, Y: y}, wide, false, accent) - 2
		if i == 0 {
			k.y = y
		} else {
			k.rightTop = y
		}
	}
	if !next {
		k.start()
	}
	return k
}
