package drawing

import (
	"slices"

	"chainwale/engine/sheet"
)

// column fills a sheet from the top in one of its two halves.
type column struct {
	d     *drawing
	s     *page
	room  box
	right bool
	y     float64
	// rightTop is where the right half begins.
	rightTop float64
}

// start begins a new sheet of words.
func (k *column) start() {
	k.s, k.room = k.d.sheet()
	k.right, k.y, k.rightTop = false, k.room.high, k.room.high
}

func (k *column) wide() float64 { return k.d.column(k.room) }

// left is where the column begins.
func (k *column) left() float64 {
	if k.right {
		return k.room.left + 6 + k.wide()
	}
	return k.room.left + 3
}

// need makes room for a height: in the other half, or on another sheet.
func (k *column) need(high float64) {
	if k.y-high >= k.room.low+1 {
		return
	}
	if k.next(); k.y-high < k.room.low+1 && k.right {
		k.next()
	}
}

// next goes on in the other half, or on another sheet.
func (k *column) next() {
	if k.right {
		k.start()
		return
	}
	k.right, k.y = true, k.rightTop
}

// heading writes a heading that stays with what follows.
func (k *column) heading(text string, following float64) {
	k.need(lineRoom + 3 + following)
	k.y -= lineRoom + 2
	k.s.text(words{at: sheet.Point{X: k.left(), Y: k.y}, text: text, height: headHeight, bold: true, colour: ink})
	k.y -= 0.8
}

// section writes a heading and its lines, each broken where it must.
func (k *column) section(title string, lines []string, colour colour) {
	lines = slices.DeleteFunc(slices.Clone(lines), func(s string) bool { return line(s) == "" })
	if len(lines) == 0 {
		return
	}
	// A section stays in one piece if a column holds it.
	high := 0.0
	for _, text := range lines {
		high += paragraphHeight(text, k.wide(), false) + 0.6
	}
	if high > 0.8*k.room.height() {
		high = lineRoom
	}
	k.heading(title, high)
	for _, text := range lines {
		for _, l := range wrap(text, k.wide(), textHeight, false) {
			k.need(lineRoom)
			k.y -= lineRoom
			k.s.text(words{at: sheet.Point{X: k.left(), Y: k.y}, text: l, height: textHeight, colour: colour})
		}
		k.y -= 0.6
	}
}

// table writes a table, over as many columns as it takes.
func (k *column) table(t listed) {
	title := t.title
	if k.y < k.room.high {
		k.y -= 2
	}
	for len(t.rows) > 0 {
		n := t.fits(k.wide(), k.y-k.room.low-1)
		for tries := 0; n < min(3, len(t.rows)) && tries < 2; tries++ {
			k.next()
			n = t.fits(k.wide(), k.y-k.room.low-1)
		}
		n = max(1, n)
		part := t.table
		part.rows = t.rows[:n]
		k.y = part.draw(&k.s.picture, sheet.Point{X: k.left(), Y: k.y}, k.wide())
		t.rows = t.rows[n:]
		t.title = title + ", continued"
	}
	if t.caution == "" {
		return
	}
	for _, l := range wrap(t.caution, k.wide(), textHeight, false) {
		k.need(lineRoom)
		k.y -= lineRoom
		k.s.text(words{at: sheet.Point{X: k.left(), Y: k.y}, text: l, height: textHeight, colour: accent})
	}
}

// words fills the sheets behind the views: lists that found no room, what the part is
// made of and how, and the first part.
func (d *drawing) words(k *column) {
	p := d.part
	for _, t := range d.waiting {
		k.table(t)
	}
	k.section("In full", d.cut(), ink)
	k.section("Material and quantity", append([]string{size(p.Flat.Thickness) + " mm " + p.Metal, p.Certificate}, d.hands()...), ink)
	k.section("Finish and edges", []string{p.Finish, p.Edges}, ink)
	k.section("Tolerances", p.Tolerances, ink)
	k.section("Notes", append(slices.Clone(p.Notes), "Where this drawing and the cutting file differ, ask before cutting.", "Sizes count; none is measured off this print."), ink)
	k.section("Take care", slices.Concat(p.holds(), p.Warnings, p.finishCautions(), d.unprinted()), accent)
	first := listed{p.firstPart(d.model), ""}
	k.need(first.height(k.wide()))
	k.table(first)
	k.release()
}

// cut are the texts that the title block has not in full.
func (d *drawing) cut() []string {
	wide := d.paper.Width - 2*sheetMargin
	var list []string
	for _, t := range []struct {
		text  string
		share float64
		bold  bool
	}{{d.part.Title, titleShare, true}, {d.part.Plan, planShare, false}, {d.part.Metal, metalShare - 0.06, false}, {d.part.off(), offShare, true}} {
		if text, _ := fitted(line(t.text), t.share*wide-3, t.bold); text != line(t.text) {
			list = append(list, t.text)
		}
	}
	return list
}

// The shares of the title block's cells that hold words from outside.
const (
	titleShare = 0.47
	planShare  = 0.25
	metalShare = 0.37
	offShare   = 0.40
)

// holds is the line that keeps a part from being made.
func (p Part) holds() []string {
	if p.Hold == "" {
		return nil
	}
	return []string{"NOT TO BE CUT: " + line(p.Hold)}
}

// hands says what is made, and how the other hand differs.
func (d *drawing) hands() []string {
	list := []string{d.part.off()}
	if d.part.OtherHand > 0 {
		list = append(list, "The other hand has the same flat: turn every fold the other way, so that the other face is up at the press.")
	}
	return list
}

// unprinted says which letters the typeface lacks.
func (d *drawing) unprinted() []string {
	p := d.part
	texts := append([]string{p.Name, p.Title, p.Plan, p.Hold, p.Hand, p.OppositeHand, p.Metal, p.Certificate, p.Finish, p.Edges}, append(p.Tolerances, append(p.Notes, p.Warnings...)...)...)
	if len(unprinted(texts...)) == 0 {
		return nil
	}
	return []string{"A ? may stand for a letter that this typeface does not have; the plan file has it."}
}

// release is the line to sign before the rest is made. It takes no sheet of its own: the
// title block of every sheet has one too.
func (k *column) release() {
	const high = 15.0
	if k.right && k.y-high-3 < k.room.low+1 {
		return
	}
	k.need(high + 3)
	k.y -= 2.5
	low := k.y - high
	k.s.loop(accentPen, rectangle(k.left(), low, k.wide(), high))
	k.s.text(words{at: sheet.Point{X: k.left() + 2.5, Y: k.y - 5.5}, text: k.d.part.held(), height: headHeight, bold: true, colour: accent})
	for i, what := range []string{"released by", "date"} {
		x := k.left() + 2.5 + float64(i)*0.62*k.wide()
		k.s.text(words{at: sheet.Point{X: x, Y: low + 2.5}, text: what, height: textHeight, colour: ink})
		from := x + textWidth(what, textHeight, false) + 1.5
		to := k.left() + 0.6*k.wide()
		if i == 1 {
			to = k.left() + k.wide() - 3
		}
		k.s.line(finePen, stroke(from, low+2, to, low+2))
	}
	k.y = low - 1
}

// title writes frame and title block of a sheet.
func (d *drawing) title(s *page, number int) {
	frame := box{sheetMargin, sheetMargin, s.Width - sheetMargin, s.Height - sheetMargin}
	s.loop(framePen, frame.contour())
	top := frame.low + titleHeight
	s.line(framePen, stroke(frame.left, top, frame.right, top))
	p := d.part
	// Three rows of cells: what it is, of what and how many, who has looked at it.
	const row = 9.0
	s.text(words{at: sheet.Point{X: (frame.left + frame.right) / 2, Y: frame.low + 3*row + 1.1}, text: advises, height: 3.1, align: atMiddle, colour: accent})
	s.line(finePen, stroke(frame.left, frame.low+3*row, frame.right, frame.low+3*row))
	top = frame.low + 3*row
	wide := frame.width()
	d.cells(s, frame.left, top-row, row, []cell{
		{0.16 * wide, "part", line(p.Name), true}, {titleShare * wide, "title", line(p.Title), true}, {planShare * wide, "plan", line(p.Plan), false}, {0.12 * wide, "sheet", whole(number) + " of " + whole(len(d.pages)), true}})
	d.cells(s, frame.left, top-2*row, row, []cell{
		{metalShare * wide, "material", size(p.Flat.Thickness) + " mm " + line(p.Metal), false}, {offShare * wide, "quantity and hand", p.off(), true}, {0.14 * wide, "sizes", "mm, from " + d.zero(), false}, {0.09 * wide, "flat drawn", scaleName(d.scale), false}})
	d.cells(s, frame.left, top-3*row, row, []cell{
		{0.37 * wide, "release", p.held(), true}, {0.21 * wide, "checked by", "", false}, {0.12 * wide, "date", "", false}, {0.18 * wide, "first part released by", "", false}, {0.12 * wide, "date", "", false}})
}

// zero is the datum in two words.
func (d *drawing) zero() string {
	if len(d.part.Flat.Holes) == 0 {
		return "near end"
	}
	return "hole " + whole(d.part.Datum+1)
}

// cell is one cell of the title block.
type cell struct {
	wide       float64
	name, text string
	bold       bool
}

// cells writes a row of the title block; text that does not fit is set smaller, down to
// what can still be read, and then cut.
func (d *drawing) cells(s *page, x, y, high float64, list []cell) {
	for i, k := range list {
		if i > 0 {
			s.line(finePen, stroke(x, y, x, y+high))
		}
		s.text(words{at: sheet.Point{X: x + 1.5, Y: y + high - 2.7}, text: k.name, height: 2.5, colour: grey})
		text, height := fitted(k.text, k.wide-3, k.bold)
		colour := ink
		if k.name == "release" {
			colour = accent
		}
		s.text(words{at: sheet.Point{X: x + 1.5, Y: y + 1.8}, text: text, height: height, bold: k.bold, colour: colour})
		x += k.wide
	}
	if y > sheetMargin+0.1 {
		s.line(finePen, stroke(sheetMargin, y, s.Width-sheetMargin, y))
	}
}

// fitted gives a text and the height at which it fits a width.
func fitted(text string, wide float64, bold bool) (string, float64) {
	const tall, low = 4.2, 2.8
	height := tall
	for height > low && textWidth(text, height, bold) > wide {
		height -= 0.1
	}
	letters := []rune(text)
	for n := len(letters); textWidth(text, height, bold) > wide && n > 1; n-- {
		text = string(letters[:n]) + "…"
	}
	return text, height
}
