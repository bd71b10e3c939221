package document

import "slices"

// Merge lays one tree over another, as a plan lies over the template that it
// names, and gives a tree of its own. Every node keeps its place, so each value
// still says in which file it stands.
//
//   - A mapping takes the keys of both; where both have a key, the two values are
//     merged in turn.
//   - A list whose entries the schema gives an id takes the entries of both; those
//     with the same id are merged in turn, and new ones come last.
//   - Anything else is replaced as a whole.
//
// paper is a key that vouches for those beside it, as a certificate does for a
// strength. What vouches and what is vouched for come from below only together
// and untouched: where the upper tree says anything of such a group, it has to
// say these anew, for the paper was written for another piece.
func (s *Schema) Merge(under, over *Node, paper string) *Node {
	m := merger{paper: paper}
	return m.merge(s.form, under, over)
}

type merger struct {
	paper string
	shelf shelf
	open  []*Node
}

func (m *merger) merge(f *form, under, over *Node) *Node {
	switch {
	case under.Kind == Mapping && over.Kind == Mapping:
		return m.keys(f, under, over)
	case under.Kind == List && over.Kind == List && f.hasIDs():
		return m.entries(f.items, under, over)
	}
	return m.copied(over)
}

// keys merges two mappings. The merged one stands where the upper one does.
func (m *merger) keys(f *form, under, over *Node) *Node {
	merged := m.copied(over)
	from := len(m.open)
	upper, lower := memberTable(over), memberTable(under)
	vouched := f.vouched(m.paper)
	for _, below := range under.Members {
		above := upper.member(below.Key)
		switch {
		case above != nil:
			m.adopt(merged, m.merge(f.member(below.Key), below, above))
		case vouched[below.Key] && len(over.Members) > 0:
		default:
			m.adopt(merged, m.copied(below))
		}
	}
	for _, member := range over.Members {
		if lower.member(member.Key) == nil {
			m.adopt(merged, m.copied(member))
		}
	}
	merged.Members = m.row(from)
	return merged
}

// entries merges two lists by the ids of their entries. An id that stands twice in
// one of them still does so afterwards, and is told as any other.
func (m *merger) entries(item *form, under, over *Node) *Node {
	merged := m.copied(over)
	from := len(m.open)
	upper := map[string]*Node{}
	for _, entry := range over.Items {
		if id := entry.id(); id != "" && upper[id] == nil {
			upper[id] = entry
		}
	}
	met := map[*Node]bool{}
	for _, below := range under.Items {
		above := upper[below.id()]
		if above == nil || met[above] {
			m.adopt(merged, m.copied(below))
			continue
		}
		met[above] = true
		m.adopt(merged, m.merge(item, below, above))
	}
	for _, entry := range over.Items {
		if !met[entry] {
			m.adopt(merged, m.copied(entry))
		}
	}
	merged.Items = m.row(from)
	return merged
}

// copied is a node that can go under another parent. It keeps its place and its
// number in the list it was written in, and shares what stands below it.
func (m *merger) copied(n *Node) *Node {
	c := m.shelf.node()
	*c = *n
	return c
}

// adopt makes a node a child of another, which takes them all by row at its end.
func (m *merger) adopt(n, child *Node) {
	child.parent = n
	m.open = append(m.open, child)
}

func (m *merger) row(from int) []*Node {
	row := m.shelf.row(m.open[from:])
	m.open = m.open[:from]
	return row
}

// table finds a mapping's members by their keys: the few of a usual one by looking at
// each, and those of one made to be endless by a map.
type table struct {
	of    *Node
	byKey map[string]*Node
}

func memberTable(n *Node) table {
	t := table{of: n}
	if len(n.Members) > mostMembers {
		t.byKey = make(map[string]*Node, len(n.Members))
		for _, m := range n.Members {
			t.byKey[m.Key] = m
		}
	}
	return t
}

func (t table) member(key string) *Node {
	if t.byKey == nil {
		return t.of.Member(key)
	}
	return t.byKey[key]
}

// id is what an entry is called by, "" if it says nothing usable.
func (n *Node) id() string {
	if id := n.Member("id"); id != nil && id.Kind == Scalar {
		return id.Text
	}
	return ""
}

// hasIDs tells whether a list's entries have ids.
func (f *form) hasIDs() bool {
	return f != nil && f.items != nil && f.items.named["id"] != nil && !f.items.named["id"].unnamed
}

// member is the form of the value under a key, nil if the schema does not say.
func (f *form) member(key string) *form {
	switch {
	case f == nil:
		return nil
	case f.named[key] != nil:
		return f.named[key].form
	}
	return f.others
}

// vouched are a paper's own key and those that may not stand without it.
func (f *form) vouched(paper string) map[string]bool {
	if f == nil || len(f.depends) == 0 {
		return nil
	}
	keys := map[string]bool{}
	for key, wanted := range f.depends {
		if slices.Contains(wanted, any(paper)) {
			keys[key], keys[paper] = true, true
		}
	}
	return keys
}

// Values counts a node and all below it.
func (n *Node) Values() int {
	values := 1
	for _, children := range [][]*Node{n.Members, n.Items} {
		for _, child := range children {
			values += child.Values()
		}
	}
	return values
}
