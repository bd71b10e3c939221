package render

import (
	"fmt"
	"io"
	"strings"
	"unicode"

	"chainwale/engine/finding"
)

// Lines finds a line of a file, by the file's name as it stands in a problem and
// counted from 1, without its end. ok is false if there is no such line.
type Lines func(file string, line int) (text string, ok bool)

// Excerpt is a problem as its author wants to see it: file, line and column with what
// is wrong, the line itself with a caret under the place, and what would be right.
// Without the line, or with lines nil, it is what is said alone.
func Excerpt(p finding.Problem, lines Lines) string {
	var out strings.Builder
	fmt.Fprintf(&out, "%s: %s\n", visible(where(p.At)), visible(p.Message))
	out.WriteString(Spot(p.At, lines))
	for _, l := range wrap(visible(p.Expected), width-4) {
		fmt.Fprintf(&out, "    %s\n", l)
	}
	return out.String()
}

// Excerpts writes problems one after the other, with their lines.
func Excerpts(w io.Writer, problems []finding.Problem, lines Lines) error {
	for _, p := range problems {
		if _, err := io.WriteString(w, Excerpt(p, lines)); err != nil {
			return err
		}
	}
	return nil
}

// Spot is the line of a place and a caret under its column, "" without the line.
func Spot(at finding.Place, lines Lines) string {
	if lines == nil {
		return ""
	}
	text, ok := lines(at.File, at.Line)
	if !ok || at.Column < 1 {
		return ""
	}
	cells, caret := around(cellsOf(text), at.Column-1)
	number := fmt.Sprintf("%5d", at.Line)
	blank := strings.Repeat(" ", len(number))
	line := strings.TrimRight(cells, " ")
	return strings.TrimRight(fmt.Sprintf("%s | %s", number, line), " ") + "\n" + fmt.Sprintf("%s | %s^\n", blank, strings.Repeat(" ", caret))
}

// cell is a character as it is shown, and how many columns of the screen it takes.
type cell struct {
	text string
	wide int
}

// cellsOf lays out a line: a tab goes to the next multiple of four, a wide character
// takes two columns, and what can't be seen, or would move the cursor, is shown as a
// mark of its own.
func cellsOf(line string) []cell {
	const tab = 4
	var cells []cell
	column := 0
	for _, r := range line {
		c := cell{string(r), breadth(r)}
		switch {
		case r == '\t':
			c.wide = tab - column%tab
			c.text = strings.Repeat(" ", c.wide)
		case unseen(r):
			c = cell{string(unicode.ReplacementChar), 1}
		}
		cells, column = append(cells, c), column+c.wide
	}
	return cells
}

// longestLine is how many columns of a line are shown.
const longestLine = width - 10

// around cuts a line to what stands around one of its characters, counted from 0, and
// says in which column of the rest that character begins.
func around(cells []cell, character int) (text string, caret int) {
	character = min(character, len(cells))
	first, last := 0, len(cells)
	before, after := breadthOf(cells[:character]), breadthOf(cells[character:])
	if before+after > longestLine {
		for ; before > longestLine*2/3 && before+after > longestLine; first++ {
			before -= cells[first].wide
		}
		for ; before+after > longestLine && last > character+1; last-- {
			after -= cells[last-1].wide
		}
	}
	var out strings.Builder
	if first > 0 {
		out.WriteString("…")
		before++
	}
	for _, c := range cells[first:last] {
		out.WriteString(c.text)
	}
	if last < len(cells) {
		out.WriteString("…")
	}
	return out.String(), before
}

func breadthOf(cells []cell) (sum int) {
	for _, c := range cells {
		sum += c.wide
	}
	return sum
}

// unseen tells whether a character is a control or a mark that turns the direction of
// writing: shown as it is, it could make a line look like another.
func unseen(r rune) bool {
	return unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || r == '\u2028' || r == '\u2029' || r == unicode.ReplacementChar
}

// visible replaces what is not to be seen in a message or a file's name.
func visible(text string) string {
	return strings.Map(func(r rune) rune {
		if unseen(r) && r != '\n' {
			return unicode.ReplacementChar
		}
		return r
	}, text)
}

// breadth is how many columns of a screen a character takes: two for the wide ones of
// East Asia and for pictures, none for a mark that stands on the character before it.
// After Unicode Standard Annex 11, the ranges in use (memory).
func breadth(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me) {
		return 0
	}
	for _, w := range wideRanges {
		if w[0] <= r && r <= w[1] {
			return 2
		}
	}
	return 1
}

var wideRanges = [...][2]rune{
	{0x1100, 0x115f}, {0x2e80, 0x303e}, {0x3041, 0x33ff}, {0x3400, 0x4dbf}, {0x4e00, 0x9fff}, {0xa000, 0xa4cf}, {0xa960, 0xa97f}, {0xac00, 0xd7a3},
	{0xf900, 0xfaff}, {0xfe30, 0xfe6f}, {0xff00, 0xff60}, {0xffe0, 0xffe6}, {0x1f300, 0x1f64f}, {0x1f680, 0x1f6ff}, {0x1f900, 0x1f9ff}, {0x20000, 0x3fffd},
}
