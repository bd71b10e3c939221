package rule

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"unicode/utf8"

	"chainwale/engine/finding"

	"go.yaml.in/yaml/v4"
)

// maxFile is how large a file of a pack may be. A rule is a page of text; a
// megabyte of YAML is an attack on the reader.
const maxFile = 1 << 20

// document is one YAML file of a pack: its nodes, and its lines, because what
// YAML makes of a text is not always what its author wrote.
type document struct {
	// file is the name in problems.
	file  string
	lines []string
	// root is the mapping at the top.
	root *yaml.Node
	// proven tells that the examples of the rule were cut off unread, since a test
	// has run them.
	proven bool
	// refused are values that nobody should read on: what they say is not what
	// their author wrote, and that has been reported.
	refused map[*yaml.Node]bool
}

// readDocument reads a file into nodes and refuses what would be read otherwise
// than it looks: tags, anchors, aliases, a second document, a key that stands
// twice. It returns nil if there is no mapping to go on with.
func readDocument(file string, data []byte, p *problems) *document {
	d := &document{file: file}
	if len(data) > maxFile {
		p.add(d.place(1, 1), "a file of at most 1 MB", "the file has more than a megabyte")
		return nil
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if !d.checkCharacters(data, p) {
		return nil
	}
	d.lines = strings.Split(strings.ReplaceAll(string(data), "\r\n", "\n"), "\n")
	root, ok := d.load(data, p)
	if !ok {
		return nil
	}
	if root.Kind != yaml.MappingNode {
		p.add(d.at(root), "keys and values, as in `id: my-rule`", "the file holds no keys")
		return nil
	}
	d.root, d.refused = root, map[*yaml.Node]bool{}
	d.checkTraps(root, p)
	return d
}

// load reads the one document of the file.
func (d *document) load(data []byte, p *problems) (*yaml.Node, bool) {
	loader, err := yaml.NewLoader(bytes.NewReader(data))
	if err != nil {
		p.add(d.place(1, 1), "", "the file can't be read: %v", err)
		return nil, false
	}
	var first, second yaml.Node
	switch err := loader.Load(&first); {
	case errors.Is(err, io.EOF):
		p.add(d.place(1, 1), "keys and values, as in `id: my-rule`", "the file is empty")
		return nil, false
	case err != nil:
		d.syntax(err, p)
		return nil, false
	}
	switch err := loader.Load(&second); {
	case err == nil:
		p.add(d.at(&second), "one document a file", "a second document begins here")
		return nil, false
	case !errors.Is(err, io.EOF):
		d.syntax(err, p)
		return nil, false
	}
	return first.Content[0], true
}

// syntax reports what the YAML reader refused.
func (d *document) syntax(err error, p *problems) {
	var load *yaml.LoadError
	if !errors.As(err, &load) {
		p.add(d.place(1, 1), "", "not YAML: %v", err)
		return
	}
	expected := ""
	switch {
	case strings.Contains(load.Message, "mapping values are not allowed"):
		expected = "a text that holds `: `, as `a ? b : c` does, stands in quotes or in a `|` block"
	case strings.Contains(load.Message, "tab character"):
		expected = "blanks before a key and never tabs"
	}
	p.add(d.place(max(1, load.Mark.Line), max(1, load.Mark.Column)), expected, "not YAML: %s", load.Message)
}

// checkCharacters refuses bytes that are no UTF-8, and characters that would
// break lines or hide in them: places are counted in lines and characters.
func (d *document) checkCharacters(data []byte, p *problems) bool {
	line, column := 1, 1
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			p.add(d.place(line, column), "text in UTF-8", "the byte 0x%02x is no text", data[i])
			return false
		case r == '\r' && bytes.HasPrefix(data[i:], []byte("\r\n")):
		case r < ' ' && r != '\n' && r != '\t', r >= 0x7f && r < 0xa0, r == '\u2028', r == '\u2029', r == '\ufeff':
			p.add(d.place(line, column), "letters, digits, marks and blanks", "the character %U can't be seen", r)
			return false
		}
		i, column = i+size, column+1
		if r == '\n' {
			line, column = line+1, 1
		}
	}
	return true
}

// checkTraps walks the nodes for what YAML reads otherwise than it looks.
func (d *document) checkTraps(n *yaml.Node, p *problems) {
	if d.trapped(n, p) {
		d.refused[n] = true
		return
	}
	if n.Kind == yaml.MappingNode {
		d.checkKeys(n, p)
	}
	for _, c := range n.Content {
		d.checkTraps(c, p)
	}
}

// trapped tells whether a node is an alias, or carries an anchor or a tag. A tag
// is found by what stands at the node's place: YAML hands on a value as if the
// `!` had never been there.
func (d *document) trapped(n *yaml.Node, p *problems) bool {
	switch {
	case n.Kind == yaml.AliasNode:
		p.add(d.at(n), "the text itself, or the text in quotes", "`*%s` repeats another place of the file, which a pack may not do", n.Value)
	case n.Anchor != "":
		p.add(d.at(n), "the text without it, or the text in quotes", "`&%s` names a place for repeating, which a pack may not do", n.Anchor)
	case strings.HasPrefix(d.rest(n), "!"), n.Style&yaml.TaggedStyle != 0:
		p.add(d.at(n), "`not` in an expression; in a text, put it in quotes", "YAML takes the `!` for a tag and drops it")
	default:
		return false
	}
	return true
}

// checkKeys refuses keys that stand twice, or are no plain words.
func (d *document) checkKeys(n *yaml.Node, p *problems) {
	first := map[string]*yaml.Node{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key := n.Content[i]
		if key.Kind != yaml.ScalarNode {
			p.add(d.at(key), "a word before the colon", "a key must be a word")
			continue
		}
		if before, twice := first[key.Value]; twice {
			p.add(d.at(key), "each key once", "the key %s stands on line %d already", key.Value, before.Line)
			continue
		}
		first[key.Value] = key
	}
}

func (d *document) place(line, column int) finding.Place {
	return finding.Place{File: d.file, Line: line, Column: column}
}

// at is the place of a node.
func (d *document) at(n *yaml.Node) finding.Place { return d.place(n.Line, n.Column) }

// rest is what stands in the file from a node to the end of its line.
func (d *document) rest(n *yaml.Node) string {
	if n.Line < 1 || n.Line > len(d.lines) {
		return ""
	}
	line := d.lines[n.Line-1]
	for range n.Column - 1 {
		_, size := utf8.DecodeRuneInString(line)
		line = line[size:]
	}
	return line
}
