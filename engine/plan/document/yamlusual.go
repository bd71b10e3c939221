package document

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// A sound YAML file keeps to a small part of YAML: keys below each other, entries after
// hyphens, braces and brackets, texts on one line. The library that knows all of YAML
// takes several times as long as that needs. So a file is first read by usualYAML, which
// knows that part only and gives up at the first thing it isn't sure of. Then readYAML
// reads the file from its start and tells what is wrong with it. A test holds that the
// trees of both are the same.

// usualYAML makes the tree of a YAML file, nil if anything about it is unusual.
func usualYAML(name string, src []byte) *Node {
	if bytes.IndexByte(src, '\r') >= 0 || len(src) > mostMarks && markLimit(src) < len(src) {
		return nil
	}
	y := &usualBlocks{usual: usual{text: string(src), line: 1}}
	y.place.File = name
	if y.content(); y.indent != 0 {
		return nil
	}
	root := y.shelf.node()
	root.At = y.here()
	root.KeyAt = root.At
	if !y.mapping(root, 0, 0) || y.indent >= 0 {
		return nil
	}
	return root
}

// usualBlocks reads YAML with at at the next byte.
type usualBlocks struct {
	usual
	// indent is how many blanks stand before what the line at hand holds, -1 at the end
	// of the file.
	indent int
}

// column is how many bytes of the line stand before the next one.
func (y *usualBlocks) column() int { return y.at - y.start }

// content goes on from a line's beginning to the next line that holds more than a
// comment, and to what it holds.
func (y *usualBlocks) content() {
	for y.at < len(y.text) {
		y.spaces()
		y.indent = y.column()
		if y.at < len(y.text) && y.text[y.at] != '#' && y.text[y.at] != '\n' {
			return
		}
		y.passLine()
	}
	y.indent = -1
}

// passLine goes on to the beginning of the next line.
func (y *usualBlocks) passLine() {
	end := strings.IndexByte(y.text[y.at:], '\n')
	if end < 0 {
		y.at = len(y.text)
		return
	}
	y.at += end
	y.newLine()
	y.at++
}

func (y *usualBlocks) spaces() {
	for y.at < len(y.text) && y.text[y.at] == ' ' {
		y.at++
	}
}

// endsLine goes on to the next content if nothing but a comment follows on the line.
func (y *usualBlocks) endsLine() bool {
	y.spaces()
	if y.at < len(y.text) && y.text[y.at] != '\n' && (y.text[y.at] != '#' || y.text[y.at-1] != ' ') {
		return false
	}
	y.passLine()
	y.content()
	return true
}

// isKeyByte tells what the usual keys are made of.
var isKeyByte = func() (set [256]bool) {
	for b := range 256 {
		set[b] = 'a' <= b && b <= 'z' || 'A' <= b && b <= 'Z' || isDigit(byte(b)) || b == '_' || b == '-'
	}
	return set
}()

// longestKey is how long a usual key is at most.
const longestKey = 200

// key is the length of the key that stands next, 0 if what stands there is none: a word
// that a colon ends, and a blank or the line's end the colon.
func (y *usualBlocks) key() int {
	text := y.text[y.at:]
	n := 0
	for n < len(text) && isKeyByte[text[n]] {
		n++
	}
	switch {
	case n == 0, n > longestKey, n >= len(text), text[n] != ':', text[0] == '-', isDigit(text[0]):
		return 0
	case n+1 < len(text) && text[n+1] != ' ' && text[n+1] != '\n':
		return 0
	}
	return n
}

// mapping reads keys and values that stand below each other at a column, up to a line
// that begins before it.
func (y *usualBlocks) mapping(n *Node, column, depth int) bool {
	n.Kind = Mapping
	from := len(y.open)
	for {
		keyAt, length := y.here(), y.key()
		if length == 0 {
			return false
		}
		key := y.text[y.at : y.at+length]
		if y.has(from, key) {
			return false
		}
		y.at += length + 1
		value := y.shelf.node()
		y.shelf.under(n, key, keyAt, value)
		y.open = append(y.open, value)
		if !y.value(value, column, depth+1) || y.indent > column {
			return false
		}
		if y.indent < column {
			n.Members = y.shelf.row(y.open[from:])
			y.open = y.open[:from]
			return true
		}
	}
}

// stands notes that a value begins at the next byte.
func (y *usualBlocks) stands(n *Node) {
	pointer := n.At.Pointer
	n.At = y.here()
	n.At.Pointer = pointer
}

// enough counts a value, and tells whether there are too many.
func (y *usualBlocks) enough() bool {
	y.values++
	return y.values >= mostValues
}

// value reads what stands behind a key: on its line, or further in on the next.
func (y *usualBlocks) value(n *Node, column, depth int) bool {
	y.spaces()
	if y.at < len(y.text) && y.text[y.at] != '\n' && y.text[y.at] != '#' {
		return y.oneLine(n, depth)
	}
	y.passLine()
	if y.content(); y.indent <= column || depth >= deepest || y.enough() {
		return false
	}
	y.stands(n)
	if y.entry() {
		return y.list(n, y.indent, depth)
	}
	return y.mapping(n, y.indent, depth)
}

// oneLine reads a value that stands by itself up to the line's end.
func (y *usualBlocks) oneLine(n *Node, depth int) bool {
	y.stands(n)
	return y.inline(n, depth, false) && y.endsLine()
}

// entry tells whether a hyphen stands next and a blank behind it.
func (y *usualBlocks) entry() bool {
	return y.at+1 < len(y.text) && y.text[y.at] == '-' && y.text[y.at+1] == ' '
}

// list reads entries after hyphens that stand below each other at a column.
func (y *usualBlocks) list(n *Node, column, depth int) bool {
	n.Kind = List
	from := len(y.open)
	for y.indent == column && y.entry() {
		y.at++
		y.spaces()
		item := y.shelf.node()
		y.shelf.numbered(n, len(y.open)-from, item)
		y.open = append(y.open, item)
		y.stands(item)
		item.KeyAt = item.At
		if !y.item(item, column, depth+1) || y.indent > column {
			return false
		}
	}
	n.Items = y.shelf.row(y.open[from:])
	y.open = y.open[:from]
	return y.indent < column
}

// item reads what stands behind a hyphen.
func (y *usualBlocks) item(n *Node, column, depth int) bool {
	if y.key() == 0 {
		return y.at < len(y.text) && y.oneLine(n, depth)
	}
	if depth >= deepest || y.enough() {
		return false
	}
	return y.mapping(n, y.column(), depth)
}

// inline reads a text, or what stands in braces or brackets. Within those a text ends
// at a comma too.
func (y *usualBlocks) inline(n *Node, depth int, within bool) (ok bool) {
	if y.enough() {
		return false
	}
	switch b := y.text[y.at]; {
	case b == '"', b == '\'':
		n.Text, ok = y.quoted(b)
		return ok
	case (b == '{' || b == '[') && depth >= deepest:
		return false
	case b == '{':
		y.at++
		return y.braces(n, depth)
	case b == '[':
		y.at++
		return y.brackets(n, depth)
	default:
		n.Plain = true
		n.Text, ok = y.plain(within)
		return ok
	}
}

// quoted reads a text in quotes that holds no escape.
func (y *usualBlocks) quoted(quote byte) (text string, ok bool) {
	y.at++
	from := y.at
	for ; y.at < len(y.text); y.at++ {
		switch b := y.text[y.at]; {
		case b == quote:
			y.at++
			again := y.at < len(y.text) && y.text[y.at] == quote
			return y.text[from : y.at-1], !again
		case b == '\\' && quote == '"', b < ' ':
			return "", false
		case b >= utf8.RuneSelf && !utf8.RuneStart(b):
			y.wide++
		}
	}
	return "", false
}

// plain reads a text without quotes, up to a comment or the line's end, and within
// braces and brackets up to a comma or to what closes them.
func (y *usualBlocks) plain(within bool) (text string, ok bool) {
	if !y.beginsPlain() {
		return "", false
	}
	from := y.at
	for ; y.at < len(y.text); y.at++ {
		switch b := y.text[y.at]; {
		case ordinaryInPlain[b]:
		case b == '\n', b == '#' && y.text[y.at-1] == ' ':
			return strings.TrimRight(y.text[from:y.at], " "), true
		case within && (b == ',' || b == '}' || b == ']'):
			return strings.TrimRight(y.text[from:y.at], " "), true
		case b >= utf8.RuneSelf:
			if !utf8.RuneStart(b) {
				y.wide++
			}
		case within, b < ' ':
			return "", false
		case b == ':' && (y.at+1 == len(y.text) || y.text[y.at+1] == ' ' || y.text[y.at+1] == '\n'):
			return "", false
		}
	}
	return strings.TrimRight(y.text[from:y.at], " "), !within
}

// ordinaryInPlain are the bytes that mean nothing beside themselves wherever they stand
// in a text without quotes.
var ordinaryInPlain = func() (set [256]bool) {
	for b := byte(' '); b < utf8.RuneSelf; b++ {
		set[b] = strings.IndexByte("#:,[]{}?\x7f", b) < 0
	}
	return set
}()

// beginsPlain tells whether a text without quotes begins at the next byte.
func (y *usualBlocks) beginsPlain() bool {
	b := y.text[y.at]
	if b == '-' {
		return y.at+1 < len(y.text) && (isDigit(y.text[y.at+1]) || y.text[y.at+1] == '.')
	}
	return isKeyByte[b] || b == '.' || b == '/' || b == '+' || b == '(' || b >= utf8.RuneSelf
}

// braces reads keys and values up to and with the brace that ends them.
func (y *usualBlocks) braces(n *Node, depth int) bool {
	n.Kind = Mapping
	from := len(y.open)
	if y.spaces(); y.next('}') {
		return true
	}
	for {
		keyAt, length := y.here(), y.key()
		if length == 0 {
			return false
		}
		key := y.text[y.at : y.at+length]
		if y.has(from, key) {
			return false
		}
		y.at += length + 1
		y.spaces()
		value := y.shelf.node()
		y.shelf.under(n, key, keyAt, value)
		y.open = append(y.open, value)
		if !y.inside(value, depth+1) {
			return false
		}
		if y.next('}') {
			n.Members = y.shelf.row(y.open[from:])
			y.open = y.open[:from]
			return true
		}
		if !y.next(',') {
			return false
		}
		y.spaces()
	}
}

// brackets reads values up to and with the bracket that ends them.
func (y *usualBlocks) brackets(n *Node, depth int) bool {
	n.Kind = List
	from := len(y.open)
	if y.spaces(); y.next(']') {
		return true
	}
	for {
		item := y.shelf.node()
		y.shelf.numbered(n, len(y.open)-from, item)
		y.open = append(y.open, item)
		if !y.inside(item, depth+1) {
			return false
		}
		item.KeyAt = item.At
		if y.next(']') {
			n.Items = y.shelf.row(y.open[from:])
			y.open = y.open[:from]
			return true
		}
		if !y.next(',') {
			return false
		}
		y.spaces()
	}
}

// inside reads a value within braces or brackets, up to the comma or what closes them.
func (y *usualBlocks) inside(n *Node, depth int) bool {
	if y.at == len(y.text) {
		return false
	}
	y.stands(n)
	if !y.inline(n, depth, true) {
		return false
	}
	y.spaces()
	return true
}
