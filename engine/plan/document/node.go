// Package document reads a file that an owner wrote, YAML or JSON, into one tree
// that keeps the place of every key and value, and checks the tree against a
// JSON Schema. What is wrong comes back as problems in plain words, each with
// its place; the package knows nothing of boats.
//
// A tree holds texts, not numbers or days: `metal: 316` is the text 316 until the
// schema says what is wanted there. So no reader's habits decide what 010, yes or
// 2027-05-01 mean.
package document

import (
	"strconv"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

// Kind is what a node is.
type Kind uint8

const (
	// Scalar is one value: a text, quoted or plain.
	Scalar Kind = iota
	// List is values in a row.
	List
	// Mapping is keys with values.
	Mapping
)

// Node is one value of the file with its place. A file has a thousand of them, so the
// small fields stand together.
type Node struct {
	Kind Kind
	// Plain tells that a scalar stands without quotes, so that what is wanted
	// decides whether it is a text, a yes or no, a number or nothing.
	Plain bool
	// required tells that the schema says the key must be there, is what sort of value
	// the schema takes the node for; Check sets both.
	required bool
	is       sort
	// index is the number of a list's item.
	index int32
	// Text is a scalar's own characters, without quotes.
	Text string
	// Key is the key the node stands under; for a list's item it is empty.
	Key string
	// At is where the value begins, KeyAt where its key does. A list's item has
	// no key, so KeyAt is At; so it is for the top of the file.
	At, KeyAt finding.Place
	// Members are a mapping's values in the file's order, Items a list's.
	Members, Items []*Node
	// Amount is the quantity that the text or the list of texts stands for. Check
	// sets it where the schema wants a quantity and the text is one.
	Amount *quantity.Readings

	parent *Node
	// form is what the schema says of the node; Check sets it.
	form *form
}

// Member is the value under a key, nil if the key is not there.
func (n *Node) Member(key string) *Node {
	for _, m := range n.Members {
		if m.Key == key {
			return m
		}
	}
	return nil
}

// Empty tells that a key stands with nothing after it, or with YAML's or JSON's
// word for nothing.
func (n *Node) Empty() bool {
	if n.Kind != Scalar || !n.Plain {
		return false
	}
	switch n.Text {
	case "", "~", "null", "Null", "NULL":
		return true
	}
	return false
}

// MissingAt is the place of a value that is not there: its parent's key, with the
// pointer at which the value would stand.
func (n *Node) MissingAt(key string) finding.Place {
	return Missing(n.KeyAt, key)
}

// Missing is the place of a value that would stand under key in the mapping at parent.
func Missing(parent finding.Place, key string) finding.Place {
	parent.Pointer += "/" + escape(key)
	return parent
}

// Find follows a JSON Pointer down from n, nil if nothing stands there.
func (n *Node) Find(pointer string) *Node {
	if pointer == "" {
		return n
	}
	for _, token := range strings.Split(strings.TrimPrefix(pointer, "/"), "/") {
		if n = n.child(unescape(token)); n == nil {
			return nil
		}
	}
	return n
}

func (n *Node) child(token string) *Node {
	if n.Kind != List {
		return n.Member(token)
	}
	i, err := strconv.Atoi(token)
	if err != nil || i < 0 || i >= len(n.Items) {
		return nil
	}
	return n.Items[i]
}

// Texts are the scalars of a list, or the one scalar itself; ok is false if
// anything else stands among them.
func (n *Node) Texts() (texts []string, ok bool) {
	if n.Kind == Scalar {
		return []string{n.Text}, true
	}
	for _, item := range n.Items {
		if item.Kind != Scalar {
			return nil, false
		}
		texts = append(texts, item.Text)
	}
	return texts, n.Kind == List
}

// Name is how a sentence calls the node: its key, or for a list's item its number
// in the list. An item with an id is called by it.
func (n *Node) Name() string {
	switch {
	case n.parent == nil:
		return "the file"
	case n.Key != "":
		return n.Key
	}
	if id := n.Member("id"); id != nil && id.Kind == Scalar && id.Text != "" {
		return id.Text
	}
	return "entry " + strconv.Itoa(int(n.index)+1) + " of " + n.parent.Name()
}

var (
	pointerEscapes   = strings.NewReplacer("~", "~0", "/", "~1")
	pointerUnescapes = strings.NewReplacer("~1", "/", "~0", "~")
)

// escape writes a key as a token of a JSON Pointer.
func escape(key string) string {
	if strings.IndexByte(key, '~') < 0 && strings.IndexByte(key, '/') < 0 {
		return key
	}
	return pointerEscapes.Replace(key)
}

// unescape reads a token of a JSON Pointer back as a key.
func unescape(token string) string {
	if strings.IndexByte(token, '~') < 0 {
		return token
	}
	return pointerUnescapes.Replace(token)
}
