package document

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"

	"chainwale/engine/finding"
)

// MostBytes is the largest file that is read: a hundred times what a plan needs,
// and little enough that no file can keep the program busy.
const MostBytes = 1 << 20

// deepest is how far lists and mappings may stand within each other.
const deepest = 32

// mostValues is how many values a file may hold, some hundred times what a plan
// does. Each of them may be at fault, and each fault is told.
const mostValues = 20_000

const (
	tooManyMessage  = "the file holds more than 20000 values"
	tooManyExpected = "a shorter file"
)

// TooLarge is the problem with a file of more than MostBytes.
func TooLarge(name string) finding.Problem {
	return finding.Problem{
		At:       top(name),
		Message:  "the file is larger than 1 MB, so it is not read",
		Expected: "a file of keys and values; keep pictures and drawings beside it",
	}
}

// Read makes the tree of one file's bytes. A name that ends in .json is read as
// JSON, as is one without an ending if it starts with a brace; all else is YAML.
// If there are problems there is no tree.
func Read(name string, src []byte) (*Node, []finding.Problem) {
	if len(src) > MostBytes {
		return nil, []finding.Problem{TooLarge(name)}
	}
	if bad := readable(name, src); bad != nil {
		return nil, []finding.Problem{*bad}
	}
	src = bytes.TrimPrefix(src, utf8Mark)
	if len(bytes.TrimSpace(src)) == 0 {
		return nil, []finding.Problem{empty(name)}
	}
	var root *Node
	var problems []finding.Problem
	if isJSON(name, src) {
		root, problems = jsonTree(name, src)
	} else {
		root, problems = yamlTree(name, src)
	}
	if len(problems) == 0 {
		problems = tooMany(root)
	}
	if len(problems) > 0 {
		return nil, Sorted(problems)
	}
	return root, nil
}

// jsonTree makes the tree of a JSON file: the usual ones at once, the others with more
// care.
func jsonTree(name string, src []byte) (*Node, []finding.Problem) {
	if root := usualJSON(name, src); root != nil {
		return root, nil
	}
	return readJSON(name, src)
}

// yamlTree is jsonTree for a YAML file.
func yamlTree(name string, src []byte) (*Node, []finding.Problem) {
	if root := usualYAML(name, src); root != nil {
		return root, nil
	}
	return readYAML(name, src)
}

// tooMany is the problem with a tree of more than mostValues values, told at the
// first that is too much.
func tooMany(root *Node) []finding.Problem {
	left := mostValues
	n := root.count(&left)
	if n == nil {
		return nil
	}
	return []finding.Problem{{At: n.KeyAt, Message: tooManyMessage, Expected: tooManyExpected}}
}

// count counts down for each node in the file's order and gives the one for which
// nothing is left.
func (n *Node) count(left *int) *Node {
	if *left == 0 {
		return n
	}
	*left--
	for _, children := range [][]*Node{n.Members, n.Items} {
		for _, child := range children {
			if last := child.count(left); last != nil {
				return last
			}
		}
	}
	return nil
}

// empty is the problem with a file in which nothing is written.
func empty(name string) finding.Problem {
	return finding.Problem{At: top(name), Message: "the file is empty", Expected: "keys with values"}
}

func isJSON(name string, src []byte) bool {
	switch strings.ToLower(filepath.Ext(name)) {
	case ".json":
		return true
	case "":
		return bytes.HasPrefix(bytes.TrimLeft(src, " \t\r\n"), []byte("{"))
	}
	return false
}

var (
	newline  = []byte("\n")
	utf8Mark = []byte("\xef\xbb\xbf")
	// utf16Marks open the files that some editors save as "Unicode".
	utf16Marks = [][]byte{[]byte("\xff\xfe"), []byte("\xfe\xff")}
)

// readable finds the first thing that no text file holds: a byte that is not
// UTF-8, a zero byte, a control character. nil means the file is text.
func readable(name string, src []byte) *finding.Problem {
	for _, mark := range utf16Marks {
		if bytes.HasPrefix(src, mark) {
			return &finding.Problem{At: top(name), Message: "the file is saved as UTF-16", Expected: "a text file saved as UTF-8"}
		}
	}
	src = bytes.TrimPrefix(src, utf8Mark)
	for i := 0; i < len(src); {
		if ordinary[src[i]] {
			i++
			continue
		}
		r, size := utf8.DecodeRune(src[i:])
		if message := unreadable(r, size); message != "" {
			return &finding.Problem{At: placeAt(name, src, i), Message: message, Expected: "a text file saved as UTF-8"}
		}
		i += size
	}
	return nil
}

// ordinary are the bytes that are characters by themselves and may stand in any file.
var ordinary = func() (set [256]bool) {
	for b := range utf8.RuneSelf {
		set[b] = unreadable(rune(b), 1) == ""
	}
	return set
}()

// unreadable says why a character can't stand in a file, "" if it can. The line
// breaks that only some programs know (U+0085, U+2028, U+2029) are refused
// because editors and readers would count lines differently.
func unreadable(r rune, size int) string {
	switch {
	case r == utf8.RuneError && size == 1:
		return "a byte stands here that is not UTF-8 text"
	case r == 0:
		return "a zero byte stands here, so this is no text file"
	case isControl(r) && r != '\n' && r != '\r' && r != '\t', r == 0x2028, r == 0x2029, r == 0xfeff, r == 0xfffe, r == 0xffff:
		return fmt.Sprintf("a control character (U+%04X) stands here", r)
	}
	return ""
}

// isControl tells the characters that steer a screen instead of standing on it.
func isControl(r rune) bool { return r < 0x20 || r >= 0x7f && r < 0xa0 }

// hiddenControl finds a control character that an escape brought into a text:
// printed, it could rewrite a reader's screen. Line ends and tabs may stand.
func hiddenControl(text string) (r rune, found bool) {
	if isOrdinary(text) {
		return 0, false
	}
	for _, r := range text {
		if isControl(r) && r != '\n' && r != '\t' && r != '\r' {
			return r, true
		}
	}
	return 0, false
}

// isOrdinary tells a text of ordinary bytes alone.
func isOrdinary(text string) bool {
	for i := range len(text) {
		if !ordinary[text[i]] {
			return false
		}
	}
	return true
}

// top is the first place of a file.
func top(name string) finding.Place { return finding.Place{File: name, Line: 1, Column: 1} }

// placeAt counts lines and characters up to an offset. A line ends with LF, CR LF
// or CR. An offset past the end is the end.
func placeAt(name string, src []byte, offset int) finding.Place {
	before := src[:max(0, min(offset, len(src)))]
	at := top(name)
	start := 0
	for i, b := range before {
		if b == '\n' || b == '\r' && (i+1 >= len(src) || src[i+1] != '\n') {
			at.Line++
			start = i + 1
		}
	}
	at.Column += utf8.RuneCount(before[start:])
	return at
}

// lines gives the places of many offsets. It goes on from the last one where it
// can, so that a file on one line is not counted from its start for each value.
type lines struct {
	name   string
	src    []byte
	starts []int
	last   mark
	// narrow tells that every character is one byte.
	narrow bool
}

// mark is an offset with its line and column, both from 1.
type mark struct{ offset, line, column int }

func newLines(name string, src []byte) *lines {
	l := &lines{name: name, src: src, starts: make([]int, 1, 2+bytes.Count(src, newline)), narrow: true}
	for i, b := range src {
		if b >= utf8.RuneSelf {
			l.narrow = false
		}
		if b == '\n' || b == '\r' && (i+1 >= len(src) || src[i+1] != '\n') {
			l.starts = append(l.starts, i+1)
		}
	}
	return l
}

// at is the place of an offset.
func (l *lines) at(offset int) finding.Place {
	offset = max(0, min(offset, len(l.src)))
	line, _ := slices.BinarySearch(l.starts, offset+1)
	from := mark{l.starts[line-1], line, 1}
	if l.last.line == line && l.last.offset <= offset {
		from = l.last
	}
	from.column += utf8.RuneCount(l.src[from.offset:offset])
	from.offset = offset
	l.last = from
	return finding.Place{File: l.name, Line: line, Column: from.column}
}

// byteAt is the byte at a line and column, 0 past the end.
func (l *lines) byteAt(line, column int) byte {
	if line < 1 || line > len(l.starts) {
		return 0
	}
	if l.narrow {
		if at := l.starts[line-1] + column - 1; column >= 1 && at < len(l.src) {
			return l.src[at]
		}
		return 0
	}
	at := mark{l.starts[line-1], line, 1}
	if l.last.line == line && l.last.column <= column {
		at = l.last
	}
	for ; at.column < column && at.offset < len(l.src); at.column++ {
		_, size := utf8.DecodeRune(l.src[at.offset:])
		at.offset += size
	}
	l.last = at
	if at.column != column || at.offset == len(l.src) {
		return 0
	}
	return l.src[at.offset]
}
