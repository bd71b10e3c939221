package rule

import (
	"slices"
	"strings"

	"chainwale/engine/near"

	"go.yaml.in/yaml/v4"
)

// reader reads the values of a document by their keys and notes what is not
// there, not known, or not of the sort it should be.
type reader struct {
	doc      *document
	problems *problems
}

// fields is a mapping's keys with their values.
type fields struct {
	reader
	node   *yaml.Node
	what   string
	values map[string]*yaml.Node
	// meant are known keys that a misspelt one was most likely meant for.
	meant []string
}

// fields reads a mapping. what names it in problems; known are the keys it may
// have. ok is false if the node is no mapping.
func (r reader) fields(n *yaml.Node, what string, known ...string) (f fields, ok bool) {
	f = fields{reader: r, node: n, what: what, values: map[string]*yaml.Node{}}
	if r.doc.refused[n] {
		return f, false
	}
	if n.Kind != yaml.MappingNode {
		r.problems.add(r.doc.at(n), "keys and values, as in "+known[0]+": …", "%s has no keys", what)
		return f, false
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key := n.Content[i]
		if key.Kind != yaml.ScalarNode {
			continue
		}
		if !slices.Contains(known, key.Value) {
			r.problems.add(r.doc.at(key), whichWord(key.Value, known), "%s has no key %s", what, quote(key.Value))
			f.meant = append(f.meant, near.Words(key.Value, known, 1)...)
			continue
		}
		if f.values[key.Value] == nil {
			f.values[key.Value] = n.Content[i+1]
		}
	}
	return f, true
}

// whichWord is the advice for a word that is not of a closed list: the nearest,
// or else all.
func whichWord(key string, known []string) string {
	if advice := nearest(key, known); advice != "" {
		return advice
	}
	return oneOf(known)
}

// has tells whether a key is there.
func (f fields) has(key string) bool { return f.values[key] != nil }

// need notes the keys that are missing. One that stands there misspelt has been noted.
func (f fields) need(keys ...string) {
	for _, key := range keys {
		if !f.has(key) && !slices.Contains(f.meant, key) {
			f.problems.add(f.doc.at(f.node), keyAdvice(f.what, key), "%s lacks the key %s", f.what, key)
		}
	}
}

// text reads a key's text; the zero text if it is not there or not a text.
func (f fields) text(key string) text {
	n := f.values[key]
	if n == nil {
		return text{}
	}
	return f.scalar(n, key)
}

// scalar reads one value as text: the characters of a plain scalar stand for
// themselves, so that `edition: 2026` is a text like any other.
func (r reader) scalar(n *yaml.Node, what string) text {
	if r.doc.refused[n] {
		return text{}
	}
	if n.Kind != yaml.ScalarNode {
		r.problems.add(r.doc.at(n), "a text", "%s holds %s", what, kindName(n))
		return text{}
	}
	if strings.TrimSpace(n.Value) == "" {
		r.problems.add(r.doc.at(n), "", "%s is empty", what)
		return text{}
	}
	return text{value: n.Value, doc: r.doc, node: n}
}

// expression reads a key's expression.
func (f fields) expression(key string) text {
	t := f.text(key)
	if t.given() && !t.expression(f.problems) {
		return text{}
	}
	return t
}

// word reads a key's text and refuses what is not among the words.
func (f fields) word(key string, words []string) text {
	t := f.text(key)
	if t.given() && !slices.Contains(words, t.value) {
		f.problems.add(t.at(), oneOf(words), "%s can't be %s", key, quote(t.value))
		return text{}
	}
	return t
}

// items gives the entries of a list.
func (f fields) items(key string) []*yaml.Node {
	n := f.values[key]
	switch {
	case n == nil, f.doc.refused[n]:
		return nil
	case n.Kind != yaml.SequenceNode:
		f.problems.add(f.doc.at(n), "a list, each entry after a hyphen or all of them in [ ]", "%s holds %s", key, kindName(n))
		return nil
	case len(n.Content) == 0:
		f.problems.add(f.doc.at(n), "at least one entry", "%s is empty", key)
	}
	return n.Content
}

// texts reads a list of texts.
func (f fields) texts(key string) []text {
	var list []text
	for _, n := range f.items(key) {
		if t := f.scalar(n, "an entry of "+key); t.given() {
			list = append(list, t)
		}
	}
	return list
}

// kindName says what a node is, for messages.
func kindName(n *yaml.Node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "keys and values"
	case yaml.SequenceNode:
		return "a list"
	}
	return "a text"
}

// quote puts a word in quotes and cuts it short if it is no word at all.
func quote(word string) string {
	const longest = 60
	if r := []rune(word); len(r) > longest {
		word = string(r[:longest]) + "…"
	}
	word = strings.Join(strings.Fields(word), " ")
	if strings.Contains(word, `"`) {
		return "`" + word + "`"
	}
	return `"` + word + `"`
}

// values takes the texts out of their places.
func values(list []text) []string {
	var out []string
	for _, t := range list {
		out = append(out, t.value)
	}
	return out
}
