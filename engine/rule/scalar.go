package rule

import (
	"strings"
	"unicode/utf8"

	"chainwale/engine/finding"

	"go.yaml.in/yaml/v4"
)

// text is a piece of text with the place where it stands.
type text struct {
	value string
	doc   *document
	node  *yaml.Node
}

// given tells whether the text stands in the file at all.
func (t text) given() bool { return t.node != nil }

// at is where the text begins.
func (t text) at() finding.Place { return t.doc.at(t.node) }

// inside is the place of a character of the text, counted from 0. Where YAML has
// folded lines together that place is lost, and it is the beginning instead.
func (t text) inside(character int) finding.Place {
	switch {
	case t.node.Style&yaml.LiteralStyle != 0:
		return t.insideBlock(character)
	case t.node.Style&yaml.FoldedStyle != 0:
		return t.at()
	}
	if columns, ok := t.columns(); ok && len(columns) > 0 {
		return t.doc.place(t.node.Line, t.node.Column+columns[min(character, len(columns)-1)])
	}
	return t.at()
}

// insideBlock finds a character of a `|` block. The indentation of a line is
// what the file has before the line of the text.
func (t text) insideBlock(character int) finding.Place {
	before := string([]rune(t.value)[:min(character, utf8.RuneCountInString(t.value))])
	row := strings.Count(before, "\n")
	rows := strings.Split(t.value, "\n")
	if t.node.Line+row >= len(t.doc.lines) {
		return t.at()
	}
	line := t.doc.lines[t.node.Line+row]
	if !strings.HasSuffix(line, rows[row]) {
		return t.at()
	}
	indent := utf8.RuneCountInString(line) - utf8.RuneCountInString(rows[row])
	column := utf8.RuneCountInString(before[strings.LastIndex(before, "\n")+1:])
	return t.doc.place(t.node.Line+row+1, indent+column+1)
}

// columns gives for each character of a text, and for its end, how far from the
// node's place it stands. ok is false if the text goes over several lines.
func (t text) columns() (columns []int, ok bool) {
	rest := t.doc.rest(t.node)
	switch {
	case t.node.Style&yaml.SingleQuotedStyle != 0:
		return quotedColumns(rest, '\'', '\'')
	case t.node.Style&yaml.DoubleQuotedStyle != 0:
		return quotedColumns(rest, '"', '\\')
	}
	if !strings.HasPrefix(rest, t.value) {
		return nil, false
	}
	for i := range utf8.RuneCountInString(t.value) + 1 {
		columns = append(columns, i)
	}
	return columns, true
}

// quotedColumns walks a quoted text up to its closing quote. In single quotes a
// quote is doubled; in double quotes it is escaped, as other characters are.
func quotedColumns(rest string, quote, escape rune) (columns []int, ok bool) {
	runes := []rune(rest)
	for i := 1; i < len(runes); i++ {
		columns = append(columns, i)
		escaped := runes[i] == escape && (escape != quote || i+1 < len(runes) && runes[i+1] == quote)
		switch {
		case escaped:
			i += escapeLength(runes[i:]) - 1
		case runes[i] == quote:
			return columns, true
		}
	}
	return nil, false
}

// escapeLength is how many characters an escape takes: \n, \x41, \u00e9, or a
// doubled single quote.
func escapeLength(runes []rune) int {
	if runes[0] == '\\' && len(runes) > 1 {
		switch runes[1] {
		case 'x':
			return 4
		case 'u':
			return 6
		case 'U':
			return 10
		}
	}
	return 2
}

// expression tells whether the text may be an expression: on one line, or in a
// `|` block. Folded lines lose the places of their characters, and in a plain
// text that goes over lines a comment may hide the half of it.
func (t text) expression(p *problems) bool {
	if t.doc.lines == nil || t.node.Style&yaml.LiteralStyle != 0 {
		return true // without its lines the text is one that a test has proven
	}
	_, oneLine := t.columns()
	if t.node.Style&yaml.FoldedStyle != 0 || !oneLine {
		p.add(t.at(), "one line, or a `|` block", "an expression can't be folded over several lines")
		return false
	}
	return true
}
