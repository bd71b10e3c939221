package document

import (
	"strconv"
	"strings"

	"chainwale/engine/finding"
)

// shelf gives out what a tree is made of from pieces made in advance, since a tree
// has a thousand nodes, each with a pointer, and all of them go away together.
type shelf struct {
	nodes    []Node
	links    []*Node
	pointers Pointers
}

// How much is made in advance at a time.
const (
	nodesAhead = 128
	linksAhead = 256
	bytesAhead = 4096
)

// node gives an empty node.
func (s *shelf) node() *Node {
	if len(s.nodes) == 0 {
		s.nodes = make([]Node, nodesAhead)
	}
	n := &s.nodes[0]
	s.nodes = s.nodes[1:]
	return n
}

// row gives a list of its own with the same nodes, nil for none.
func (s *shelf) row(of []*Node) []*Node {
	if len(of) == 0 {
		return nil
	}
	if cap(s.links)-len(s.links) < len(of) {
		s.links = make([]*Node, 0, max(linksAhead, len(of)))
	}
	from := len(s.links)
	s.links = append(s.links, of...)
	return s.links[from:len(s.links):len(s.links)]
}

// Copy is a tree of its own that says the same as n, with the same places: whoever
// checks the one writes nothing into the other.
func (n *Node) Copy() *Node {
	var s shelf
	return s.copy(n, nil)
}

func (s *shelf) copy(n, parent *Node) *Node {
	c := s.node()
	*c = *n
	c.parent = parent
	c.Members, c.Items = s.row(n.Members), s.row(n.Items)
	for _, children := range [][]*Node{c.Members, c.Items} {
		for i, child := range children {
			children[i] = s.copy(child, c)
		}
	}
	return c
}

// under makes a node the value under a key of a mapping, but not yet its member.
func (s *shelf) under(n *Node, key string, keyAt finding.Place, value *Node) {
	keyAt.Pointer = s.pointers.Under(n.At.Pointer, key)
	value.Key, value.KeyAt, value.parent = key, keyAt, n
	value.At.Pointer = keyAt.Pointer
}

// numbered makes a node an item of a list, but does not yet append it.
func (s *shelf) numbered(n *Node, index int, value *Node) {
	value.index, value.parent = int32(index), n
	value.At.Pointer = s.pointers.Numbered(n.At.Pointer, index)
	value.KeyAt = value.At
}

// Pointers writes JSON Pointers one behind the other into pieces of memory that they
// share.
type Pointers struct{ piece strings.Builder }

// Under is the pointer to what stands under a key.
func (p *Pointers) Under(parent, key string) string {
	key = escape(key)
	from := p.begin(parent, len(key))
	p.piece.WriteString(key)
	return p.piece.String()[from:]
}

// Numbered is the pointer to an item of a list.
func (p *Pointers) Numbered(parent string, index int) string {
	if index < 10 {
		from := p.begin(parent, 1)
		p.piece.WriteByte('0' + byte(index))
		return p.piece.String()[from:]
	}
	return p.Under(parent, strconv.Itoa(index))
}

// begin sees to it that a pointer fits into the piece, writes it down to the parent
// and tells where it begins. What was given out of a piece that is full stays as it is.
func (p *Pointers) begin(parent string, more int) (from int) {
	if need := len(parent) + 1 + more; p.piece.Cap()-p.piece.Len() < need {
		p.piece = strings.Builder{}
		p.piece.Grow(max(bytesAhead, need))
	}
	from = p.piece.Len()
	p.piece.WriteString(parent)
	p.piece.WriteByte('/')
	return from
}
