package drawing

import (
	"strings"

	"chainwale/engine/sheet"
)

// The heights of letters: of running text, of tables, and of headings, mm.
const (
	textHeight  = 3.4
	tableHeight = 3.3
	headHeight  = 3.8
	lineRoom    = 4.4
	cellRoom    = 1.4
)

// wrap breaks a text into lines that fit a width; a word that is too long is broken.
func wrap(text string, wide, height float64, bold bool) []string {
	var lines []string
	current := ""
	for _, word := range strings.Fields(line(text)) {
		for _, part := range broken(word, wide, height, bold) {
			switch {
			case current == "":
				current = part
			case textWidth(current+" "+part, height, bold) <= wide:
				current += " " + part
			default:
				lines, current = append(lines, current), part
			}
		}
	}
	if current != "" || lines == nil {
		lines = append(lines, current)
	}
	return lines
}

// broken cuts a word into pieces that fit a width.
func broken(word string, wide, height float64, bold bool) []string {
	var pieces []string
	letters := []rune(word)
	for len(letters) > 0 {
		n := len(letters)
		for n > 1 && textWidth(string(letters[:n]), height, bold) > wide {
			n--
		}
		pieces, letters = append(pieces, string(letters[:n])), letters[n:]
	}
	return pieces
}

// paragraph writes a wrapped text below a height and returns the height below it.
func paragraph(c *picture, text string, at sheet.Point, wide float64, bold bool, colour colour) float64 {
	for _, l := range wrap(text, wide, textHeight, bold) {
		at.Y -= lineRoom
		c.text(words{at: at, text: l, height: textHeight, bold: bold, colour: colour})
	}
	return at.Y
}

// paragraphHeight is what a paragraph takes.
func paragraphHeight(text string, wide float64, bold bool) float64 {
	return lineRoom * float64(len(wrap(text, wide, textHeight, bold)))
}

// table is rows under a heading.
type table struct {
	title string
	head  []string
	rows  [][]string
	// strong are the columns in bold.
	strong int
}

// columns shares a width among the columns: each takes what its longest cell needs, and
// if that is too much the wide ones give way.
func (t table) columns(wide float64) []float64 {
	widths := make([]float64, len(t.head))
	sum := 0.0
	for i := range widths {
		widths[i] = textWidth(t.head[i], tableHeight, true)
		for _, r := range t.rows {
			widths[i] = max(widths[i], textWidth(line(r[i]), tableHeight, true))
		}
		widths[i] += 2 * cellRoom
		sum += widths[i]
	}
	for over := sum - wide; over > 0.01; {
		// Take from all that are wider than the fair share, in proportion to what is above it.
		fair, above := wide/float64(len(widths)), 0.0
		for _, w := range widths {
			above += max(0, w-fair)
		}
		share := min(1, over/above)
		for i, w := range widths {
			take := share * max(0, w-fair)
			widths[i] -= take
			over -= take
		}
	}
	if sum < wide {
		widths[len(widths)-1] += wide - sum
	}
	return widths
}

// rowLines are the cells of a row, wrapped, and how many lines the row takes.
func (t table) rowLines(row []string, widths []float64, bold bool) (cells [][]string, lines int) {
	for i, text := range row {
		cell := wrap(text, widths[i]-2*cellRoom+0.01, tableHeight, bold || i < t.strong)
		cells = append(cells, cell)
		lines = max(lines, len(cell))
	}
	return cells, lines
}

func rowHeight(lines int) float64 { return lineRoom*float64(lines) + 0.8 }

// height is what the table takes at a width.
func (t table) height(wide float64) float64 {
	widths := t.columns(wide)
	h := lineRoom + 2.2
	for i, r := range append([][]string{t.head}, t.rows...) {
		_, n := t.rowLines(r, widths, i == 0)
		h += rowHeight(n)
	}
	return h
}

// fits is how many rows fit a height, beside title and head.
func (t table) fits(wide, high float64) int {
	for n := len(t.rows); n > 0; n-- {
		part := t
		part.rows = t.rows[:n]
		if part.height(wide) <= high {
			return n
		}
	}
	return 0
}

// draw writes the table from its upper left corner and returns the height below it.
func (t table) draw(c *picture, at sheet.Point, wide float64) float64 {
	c.text(words{at: sheet.Point{X: at.X, Y: at.Y - lineRoom}, text: t.title, height: headHeight, bold: true, colour: ink})
	y := at.Y - lineRoom - 2.2
	widths := t.columns(wide)
	c.line(finePen, stroke(at.X, y, at.X+wide, y))
	for i, r := range append([][]string{t.head}, t.rows...) {
		cells, n := t.rowLines(r, widths, i == 0)
		x := at.X
		for k, cell := range cells {
			for j, text := range cell {
				c.text(words{at: sheet.Point{X: x + cellRoom, Y: y - lineRoom*float64(j+1) + 0.7}, text: text, height: tableHeight, bold: i == 0 || k < t.strong, colour: ink})
			}
			x += widths[k]
		}
		y -= rowHeight(n)
		pen := rulePen
		if i == 0 {
			pen = finePen
		}
		c.line(pen, stroke(at.X, y, at.X+wide, y))
	}
	return y
}
