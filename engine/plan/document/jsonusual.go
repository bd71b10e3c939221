package document

import (
	"encoding/json"
	"unicode/utf8"

	"chainwale/engine/finding"
)

// A sound JSON file is the usual one, and the library's tokens are dear. So a file is
// first read by usualJSON, which keeps to the letter of the grammar, counts lines and
// columns as it goes, and gives up at the first thing it isn't sure of. Then readJSON
// reads the file from its start and tells what is wrong with it. A test holds that the
// trees of both are the same.

// mostMembers is how many keys of one mapping are compared with each other.
const mostMembers = 64

// usualJSON makes the tree of a JSON file, nil if anything about it is unusual.
func usualJSON(name string, src []byte) *Node {
	u := &usual{text: string(src), line: 1}
	u.place.File = name
	u.blanks()
	root := u.shelf.node()
	root.At = u.here()
	root.KeyAt = root.At
	if !u.next('{') || !u.mapping(root, 0) {
		return nil
	}
	if u.blanks(); u.at < len(u.text) {
		return nil
	}
	return root
}

// usual reads JSON with at at the next byte.
type usual struct {
	text string
	at   int
	// line is the number of the line, start where it begins, wide how many bytes of it
	// so far are no characters by themselves.
	line, start, wide int
	place             finding.Place
	values            int
	shelf             shelf
	// open are the children of the groups that are not yet at their end.
	open []*Node
}

// here is the place of the next byte.
func (u *usual) here() finding.Place {
	u.place.Line, u.place.Column = u.line, u.at-u.start-u.wide+1
	return u.place
}

// blanks goes on to what is no blank and no line end.
func (u *usual) blanks() {
	for ; u.at < len(u.text); u.at++ {
		switch u.text[u.at] {
		case ' ', '\t':
		case '\r':
			if u.at+1 >= len(u.text) || u.text[u.at+1] != '\n' {
				u.newLine()
			}
		case '\n':
			u.newLine()
		default:
			return
		}
	}
}

func (u *usual) newLine() { u.line, u.start, u.wide = u.line+1, u.at+1, 0 }

// next takes a byte if it is the next one.
func (u *usual) next(b byte) bool {
	if u.at < len(u.text) && u.text[u.at] == b {
		u.at++
		return true
	}
	return false
}

// value reads one value into a node that already has its place.
func (u *usual) value(n *Node, depth int) bool {
	if u.values++; u.values >= mostValues || u.at == len(u.text) {
		return false
	}
	switch b := u.text[u.at]; {
	case b == '"':
		text, ok := u.string()
		n.Text = text
		return ok
	case (b == '{' || b == '[') && depth == deepest:
		return false
	case b == '{':
		u.at++
		return u.mapping(n, depth)
	case b == '[':
		u.at++
		return u.list(n, depth)
	default:
		n.Plain = true
		n.Text = u.plain()
		return n.Text != ""
	}
}

// mapping reads keys and values, up to and with the brace that ends them.
func (u *usual) mapping(n *Node, depth int) bool {
	n.Kind = Mapping
	from := len(u.open)
	if u.blanks(); u.next('}') {
		return true
	}
	for {
		keyAt := u.here()
		key, ok := u.string()
		if !ok || key == "" || u.has(from, key) {
			return false
		}
		if u.blanks(); !u.next(':') {
			return false
		}
		u.blanks()
		value := u.shelf.node()
		value.At = u.here()
		u.shelf.under(n, key, keyAt, value)
		u.open = append(u.open, value)
		if !u.value(value, depth+1) {
			return false
		}
		switch u.blanks(); {
		case u.next(','):
			u.blanks()
		case u.next('}'):
			n.Members = u.shelf.row(u.open[from:])
			u.open = u.open[:from]
			return true
		default:
			return false
		}
	}
}

// has tells whether a key stands already among the children from some on, or there
// are too many of them to look.
func (u *usual) has(from int, key string) bool {
	for _, m := range u.open[from:] {
		if m.Key == key {
			return true
		}
	}
	return len(u.open)-from >= mostMembers
}

// list reads values, up to and with the bracket that ends them.
func (u *usual) list(n *Node, depth int) bool {
	n.Kind = List
	from := len(u.open)
	if u.blanks(); u.next(']') {
		return true
	}
	for {
		item := u.shelf.node()
		item.At = u.here()
		u.shelf.numbered(n, len(u.open)-from, item)
		u.open = append(u.open, item)
		if !u.value(item, depth+1) {
			return false
		}
		switch u.blanks(); {
		case u.next(','):
			u.blanks()
		case u.next(']'):
			n.Items = u.shelf.row(u.open[from:])
			u.open = u.open[:from]
			return true
		default:
			return false
		}
	}
}

// string reads a text in quotes.
func (u *usual) string() (text string, ok bool) {
	if !u.next('"') {
		return "", false
	}
	from := u.at
	for ; u.at < len(u.text); u.at++ {
		switch b := u.text[u.at]; {
		case b == '"':
			u.at++
			return u.text[from : u.at-1], true
		case b == '\\':
			return u.escaped(from)
		case b < ' ':
			return "", false
		case b >= utf8.RuneSelf && !utf8.RuneStart(b):
			u.wide++
		}
	}
	return "", false
}

// escaped reads a text in quotes that holds an escape, as the library does. What
// can't be printed is unusual.
func (u *usual) escaped(from int) (text string, ok bool) {
	for ; u.at < len(u.text) && u.text[u.at] != '"'; u.at++ {
		switch b := u.text[u.at]; {
		case b == '\\':
			u.at++ // whatever comes next is part of the escape
		case b >= utf8.RuneSelf && !utf8.RuneStart(b):
			u.wide++
		}
	}
	if u.at >= len(u.text) {
		return "", false
	}
	u.at++
	if json.Unmarshal([]byte(u.text[from-1:u.at]), &text) != nil {
		return "", false
	}
	_, hidden := hiddenControl(text)
	return text, !hidden
}

// plain reads a number, true, false or null in its own characters, "" if it is none
// of them.
func (u *usual) plain() string {
	from := u.at
	for u.at < len(u.text) && isWordByte(u.text[u.at]) {
		u.at++
	}
	word := u.text[from:u.at]
	switch word {
	case "true", "false", "null":
		return word
	}
	if !isJSONNumber(word) {
		return ""
	}
	return word
}

// isWordByte tells what a number or a bare word may be made of.
func isWordByte(b byte) bool {
	return 'a' <= b && b <= 'z' || isDigit(b) || b == '-' || b == '+' || b == '.' || b == 'E'
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }

// isJSONNumber tells whether a word is a number as JSON writes it.
func isJSONNumber(word string) bool {
	whole, rest := cutWhole(word)
	if !whole {
		return false
	}
	if rest != "" && rest[0] == '.' {
		n := digits(rest[1:])
		if n == 0 {
			return false
		}
		rest = rest[1+n:]
	}
	if rest != "" && rest[0]|' ' == 'e' {
		rest = rest[1:]
		if rest != "" && (rest[0] == '+' || rest[0] == '-') {
			rest = rest[1:]
		}
		n := digits(rest)
		return n > 0 && n == len(rest)
	}
	return rest == ""
}

// cutWhole cuts the whole number off that a word begins with: a minus or none, and
// digits of which the first is no nought unless it stands alone.
func cutWhole(word string) (whole bool, rest string) {
	if word != "" && word[0] == '-' {
		word = word[1:]
	}
	n := digits(word)
	if n == 0 || n > 1 && word[0] == '0' {
		return false, word
	}
	return true, word[n:]
}

// digits counts the digits that a text begins with.
func digits(text string) int {
	n := 0
	for n < len(text) && isDigit(text[n]) {
		n++
	}
	return n
}
