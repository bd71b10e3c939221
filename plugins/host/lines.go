package host

import (
	"bytes"
	"encoding/json"
	"errors"
	"maps"
	"slices"
	"strings"

	"chainwale/engine/plan/document"
)

// lines are the entry as it stands in trusted.yaml, its dash after the indent.
func (e Entry) lines(indent string) []string {
	list := []string{
		indent + "- id: " + e.ID,
		indent + "  edition: " + quoted(e.Edition),
		indent + "  program: " + quoted(e.Program),
	}
	if len(e.Args) > 0 {
		list = append(list, indent+"  args:")
		for _, a := range e.Args {
			list = append(list, indent+"    - "+quoted(a))
		}
	}
	if e.TLS {
		list = append(list, indent+"  tls: true")
	}
	list = append(list, indent+"  files:")
	for _, name := range slices.Sorted(maps.Keys(e.Files)) {
		list = append(list, indent+"    "+quoted(name)+": "+e.Files[name])
	}
	return list
}

// quoted is a text in quotes: JSON's are YAML's.
func quoted(text string) string {
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	_ = encoder.Encode(text) // a string always encodes
	return strings.TrimSpace(b.String())
}

// layAmong puts the entry in place of the one with its id, or after the last.
func layAmong(lines []string, items []*document.Node, e Entry, ending string) ([]string, error) {
	starts := make([]int, len(items)+1)
	starts[len(items)] = len(lines)
	at := len(items)
	for i, item := range items {
		if starts[i] = dashLine(lines, item); starts[i] < 0 || i > 0 && starts[i] <= starts[i-1] {
			return nil, errors.New("its entries don't stand on lines of their own, each after a dash")
		}
		if item.Member("id").Text == e.ID {
			at = i
		}
	}
	indent, _, _ := strings.Cut(lines[starts[0]], "-")
	if at == len(items) {
		return slices.Insert(lines, lastOf(lines, starts[at-1], len(lines)), ended(e.lines(indent), ending)...), nil
	}
	from, to := starts[at], lastOf(lines, starts[at], starts[at+1])
	made := keepComments(lines[from:to], e.lines(indent), indent)
	return slices.Replace(lines, from, to, ended(made, ending)...), nil
}

// dashLine is the line on which an item's dash stands, -1 if it is not where it is
// looked for: before the item on its line, or alone on the line above.
func dashLine(lines []string, item *document.Node) int {
	line := item.At.Line - 1
	before := []rune(lines[line])[:item.At.Column-1]
	if strings.TrimSpace(string(before)) == "-" {
		return line
	}
	if strings.TrimSpace(string(before)) == "" && line > 0 && strings.TrimSpace(lines[line-1]) == "-" {
		return line - 1
	}
	return -1
}

// lastOf is the line after an entry's last: comments and blank lines at its end
// belong to what follows.
func lastOf(lines []string, from, to int) int {
	for to > from+1 {
		if text := strings.TrimSpace(lines[to-1]); text != "" && text[0] != '#' {
			break
		}
		to--
	}
	return to
}

// keepComments carries the comments of an entry over to the lines that take its
// place: one behind a key stays behind it, one on a line of its own goes under the
// entry's first line.
func keepComments(old, made []string, indent string) []string {
	var own []string
	behind := map[string]string{}
	for _, line := range old {
		text := strings.TrimSpace(line)
		if strings.HasPrefix(text, "#") {
			own = append(own, indent+"  "+text)
			continue
		}
		if i := commentIn(text); i >= 0 {
			behind[keyOf(text)] = text[i:]
		}
	}
	for i, line := range made {
		made[i] += behind[keyOf(line)]
		delete(behind, keyOf(line))
	}
	for _, key := range slices.Sorted(maps.Keys(behind)) {
		own = append(own, indent+"  "+strings.TrimSpace(behind[key]))
	}
	return slices.Insert(made, 1, own...)
}

// commentIn is where the comment on a line begins, with the blank before it; -1 if
// there is none. A quote opens only where a value or key begins.
func commentIn(line string) int {
	var quote, before byte
	for i := 0; i < len(line); i++ {
		c := line[i]
		switch {
		case quote == '"' && c == '\\':
			i++
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case c == '#' && i > 0 && line[i-1] == ' ':
			return i - 1
		case (c == '"' || c == '\'') && strings.IndexByte("\x00:,-[{", before) >= 0:
			quote = c
		}
		if c != ' ' {
			before = c
		}
	}
	return -1
}

// keyOf is the key on a line, without its quotes.
func keyOf(line string) string {
	key, _, _ := strings.Cut(strings.TrimPrefix(strings.TrimSpace(line), "- "), ": ")
	return strings.Trim(strings.TrimSuffix(key, ":"), `"'`)
}
