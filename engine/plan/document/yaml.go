package document

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"

	"go.yaml.in/yaml/v4"

	"chainwale/engine/finding"
)

// readYAML makes the tree of a YAML file. It keeps to the part of YAML that a
// reader of the file sees at once: no anchors, aliases, tags or merged keys, one
// document, no key twice.
func readYAML(name string, src []byte) (*Node, []finding.Problem) {
	y := &yamlReader{lines: newLines(name, src)}
	if line := y.directive(); line > 0 {
		return nil, []finding.Problem{{At: y.place(line, 1), Message: directiveMessage, Expected: directiveExpected}}
	}
	limit := markLimit(src)
	end := wholeLines(src, limit)
	loader, err := yaml.NewLoader(bytes.NewReader(src[:end]), yaml.WithPlugin(nesting{}), yaml.WithUniqueKeys(false))
	if err != nil {
		return nil, []finding.Problem{y.syntax(err)}
	}
	root, problem := y.document(loader)
	if limit < len(src) && (problem == nil || !before(problem.At, y.lines.at(end))) {
		problem = &finding.Problem{
			At:       y.lines.at(limit),
			Message:  fmt.Sprintf("the file holds more than %d brackets, commas, colons and quotes", mostMarks),
			Expected: "a shorter file",
		}
	}
	if problem != nil {
		return nil, append(y.problems, *problem)
	}
	if root.Kind != Mapping {
		y.problem(root.At, "the file does not begin with a key", "keys with values, for example name: Grey Wagtail")
	}
	return root, y.problems
}

// document reads the first document and sees to it that there is no second.
func (y *yamlReader) document(loader *yaml.Loader) (*Node, *finding.Problem) {
	var first, second yaml.Node
	switch err := loader.Load(&first); {
	case errors.Is(err, io.EOF) || err == nil && len(first.Content) == 0:
		problem := empty(y.lines.name)
		return nil, &problem
	case err != nil:
		problem := y.syntax(err)
		return nil, &problem
	}
	from := first.Content[0]
	root := y.shelf.node()
	root.At = y.place(from.Line, from.Column)
	root.KeyAt = root.At
	y.fill(root, from, 0)
	if err := loader.Load(&second); !errors.Is(err, io.EOF) {
		at := y.place(max(second.Line, 1), max(second.Column, 1))
		if line := y.dashes(root.At.Line); line > 0 {
			at = y.place(line, 1)
		}
		return nil, &finding.Problem{At: at, Message: "a second document begins here", Expected: "one document in a file; take out the line ---"}
	}
	return root, nil
}

// directive finds a line that tells YAML readers how to read, 0 if there is none.
// It would stand before all keys.
func (y *yamlReader) directive() int {
	for i, start := range y.lines.starts {
		line := bytes.TrimLeft(y.lines.src[start:], " \t")
		switch {
		case len(line) == 0 || strings.IndexByte("#\r\n", line[0]) >= 0:
			continue
		case line[0] == '%':
			return i + 1
		}
		return 0
	}
	return 0
}

// dashes finds the line below a given one that begins a document, 0 if none does.
func (y *yamlReader) dashes(below int) int {
	for i := below; i < len(y.lines.starts); i++ {
		if bytes.HasPrefix(y.lines.src[y.lines.starts[i]:], []byte("---")) {
			return i + 1
		}
	}
	return 0
}

// yamlReader turns the YAML reader's nodes into ours and gathers what is refused.
type yamlReader struct {
	lines    *lines
	problems []finding.Problem
	shelf    shelf
}

func (y *yamlReader) problem(at finding.Place, message, expected string) {
	y.problems = append(y.problems, finding.Problem{At: at, Message: message, Expected: expected})
}

func (y *yamlReader) place(line, column int) finding.Place {
	return finding.Place{File: y.lines.name, Line: line, Column: column}
}

// fill reads a node whose place and pointer are set, and all below it.
func (y *yamlReader) fill(n *Node, from *yaml.Node, depth int) {
	y.refuseMarked(n.At, from)
	switch from.Kind {
	case yaml.MappingNode, yaml.SequenceNode:
		if depth == deepest {
			y.problem(n.At, tooDeepMessage, tooDeepExpected)
			return
		}
		if from.Kind == yaml.MappingNode {
			y.mapping(n, from, depth)
		} else {
			y.list(n, from, depth)
		}
	case yaml.ScalarNode:
		y.scalar(n, from)
	}
}

const (
	tooDeepMessage  = "lists and keys stand too deep within each other here"
	tooDeepExpected = "at most 32 levels"
)

// refuseMarked refuses what makes a value mean something else than it says. The
// byte at the value's place tells: the YAML reader drops a lone ! without a word.
func (y *yamlReader) refuseMarked(at finding.Place, from *yaml.Node) {
	switch y.lines.byteAt(from.Line, from.Column) {
	case '&':
		y.problem(at, "an anchor (&) stands before this value", "the value alone; put a text that begins with & in quotes")
	case '!':
		y.problem(at, tagMessage, tagExpected)
	case '*':
		if from.Kind == yaml.AliasNode {
			y.problem(at, aliasMessage, aliasExpected)
		}
	}
}

const (
	aliasMessage  = "an alias (*) stands here in place of a value"
	aliasExpected = "the value itself, written out; put a text that begins with * in quotes"
)

func (y *yamlReader) scalar(n *Node, from *yaml.Node) {
	n.Kind, n.Text = Scalar, from.Value
	quoted := yaml.SingleQuotedStyle | yaml.DoubleQuotedStyle | yaml.LiteralStyle | yaml.FoldedStyle
	n.Plain = from.Style&quoted == 0
	if r, found := hiddenControl(n.Text); found {
		y.problem(n.At, hiddenMessage(r), "text that can be printed")
	}
}

// hiddenMessage says which control character an escape brought in.
func hiddenMessage(r rune) string {
	return fmt.Sprintf("this text holds a control character (U+%04X)", r)
}

func (y *yamlReader) list(n *Node, from *yaml.Node, depth int) {
	n.Kind = List
	for i, c := range from.Content {
		item := y.shelf.node()
		item.At = y.place(c.Line, c.Column)
		y.shelf.numbered(n, i, item)
		n.Items = append(n.Items, item)
		y.fill(item, c, depth+1)
	}
}

func (y *yamlReader) mapping(n *Node, from *yaml.Node, depth int) {
	n.Kind = Mapping
	n.Members = make([]*Node, 0, len(from.Content)/2)
	var met keys
	for i := 0; i+1 < len(from.Content); i += 2 {
		key, value := from.Content[i], from.Content[i+1]
		text, ok := y.key(key)
		if !ok {
			continue
		}
		keyAt := y.place(key.Line, key.Column)
		if first := met.find(n, text); first != nil {
			y.problems = append(y.problems, twiceProblem(n, text, keyAt, first.KeyAt))
			continue
		}
		child := y.shelf.node()
		child.At = y.place(value.Line, value.Column)
		y.shelf.under(n, text, keyAt, child)
		n.Members = append(n.Members, child)
		y.fill(child, value, depth+1)
	}
}

// keys finds a mapping's members by their keys while it grows: the few of a usual
// one by looking at each, and those of one made to be endless by a table.
type keys struct{ table map[string]*Node }

func (k *keys) find(n *Node, key string) *Node {
	if len(n.Members) < mostMembers {
		return n.Member(key)
	}
	if k.table == nil {
		k.table = map[string]*Node{}
	}
	for _, m := range n.Members[len(k.table):] {
		k.table[m.Key] = m
	}
	return k.table[key]
}

// key reads a key's text and refuses what can't be one.
func (y *yamlReader) key(from *yaml.Node) (text string, ok bool) {
	at := y.place(from.Line, from.Column)
	marked := len(y.problems)
	y.refuseMarked(at, from)
	switch {
	case len(y.problems) > marked:
		return "", false
	case from.Kind != yaml.ScalarNode:
		y.problem(at, "a list or a mapping stands here where a key is wanted", "a key, which is one word, and a colon")
		return "", false
	case from.Value == "<<" && from.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) == 0:
		y.problem(at, "a merge key (<<) stands here", "the keys themselves, written out")
		return "", false
	}
	if bad := badKey(from.Value); bad != "" {
		y.problem(at, bad, "a key of plain letters and a colon before the value")
		return "", false
	}
	return from.Value, true
}
