package document

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
	return merger{paper}.merge(s.shape, under, over)
}

type merger struct{ paper string }

func (m merger) merge(sh *shape, under, over *Node) *Node {
	switch {
	case under.Kind == Mapping && over.Kind == Mapping:
		return m.keys(sh, under, over)
	case under.Kind == List && over.Kind == List && sh.hasIDs():
		return m.entries(said(sh, itemsIn), under, over)
	}
	return over.copied()
}

// keys merges two mappings. The merged one stands where the upper one does.
func (m merger) keys(sh *shape, under, over *Node) *Node {
	merged := over.copied()
	merged.Members = nil
	upper := make(map[string]*Node, len(over.Members))
	for _, member := range over.Members {
		upper[member.Key] = member
	}
	vouched := sh.vouched(m.paper)
	for _, below := range under.Members {
		above := upper[below.Key]
		delete(upper, below.Key)
		switch {
		case above != nil:
			merged.adopt(&merged.Members, m.merge(sh.member(below.Key), below, above))
		case vouched[below.Key] && len(over.Members) > 0:
		default:
			merged.adopt(&merged.Members, below.copied())
		}
	}
	for _, member := range over.Members {
		if upper[member.Key] != nil {
			merged.adopt(&merged.Members, member.copied())
		}
	}
	return merged
}

// entries merges two lists by the ids of their entries. An id that stands twice in
// one of them still does so afterwards, and is told as any other.
func (m merger) entries(item *shape, under, over *Node) *Node {
	merged := over.copied()
	merged.Items = nil
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
			merged.adopt(&merged.Items, below.copied())
			continue
		}
		met[above] = true
		merged.adopt(&merged.Items, m.merge(item, below, above))
	}
	for _, entry := range over.Items {
		if !met[entry] {
			merged.adopt(&merged.Items, entry.copied())
		}
	}
	return merged
}

// copied is a node that can go under another parent. It keeps its place and its
// number in the list it was written in, and shares what stands below it.
func (n *Node) copied() *Node {
	c := *n
	return &c
}

func (n *Node) adopt(children *[]*Node, child *Node) {
	child.parent = n
	*children = append(*children, child)
}

// id is what an entry is called by, "" if it says nothing usable.
func (n *Node) id() string {
	if id := n.Member("id"); id != nil && id.Kind == Scalar {
		return id.Text
	}
	return ""
}

// hasIDs tells whether a list's entries have ids.
func (sh *shape) hasIDs() bool {
	return said(said(sh, itemsIn), func(sh *shape) (bool, bool) { return true, sh.properties["id"] != nil })
}

// vouched are a paper's own key and those that may not stand without it.
func (sh *shape) vouched(paper string) map[string]bool {
	keys := map[string]bool{}
	demands := said(sh, func(sh *shape) (map[string]any, bool) {
		d, ok := sh.schema["dependentRequired"].(map[string]any)
		return d, ok
	})
	for key, wanted := range demands {
		for _, beside := range stringsOf(wanted) {
			if beside == paper {
				keys[key], keys[paper] = true, true
			}
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
