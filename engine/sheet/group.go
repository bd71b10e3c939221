package sheet

import (
	"fmt"
	"math"
)

// Group is flats that one cutting program serves.
type Group struct {
	// Master is the flat that all others of the group were compared with: the first.
	Master  int
	Members []Member
}

// Member is a flat of a group and how it belongs to the master.
type Member struct {
	Index int
	Relation
}

// Grouping is flats sorted into groups, and how many pairs were compared for it.
type Grouping struct {
	Groups   []Group
	Compared int
}

// GroupFlats sorts flats into groups, in the order in which they are given.
//
// A flat joins the first group whose master it is alike to, and otherwise begins one. One
// whose faces differ does not join as the other hand: what is done to its face is a part
// of the program.
// Members are compared with the master alone and never with each other: likeness within
// a tolerance does not pass on, and a chain of small steps would lead anywhere.
//
// Only masters whose marks could fit are compared: they stand in cells by breadth, hole
// span, widest hole and thickness, and a flat looks into the cells that its own marks,
// give or take what likeness allows, fall in. That leaves out no master that compare
// would take.
//
// Errors: a flat that is none, with its name or number.
func GroupFlats(flats []Flat, l Likeness) (Grouping, error) {
	var g Grouping
	shapes := make([]*shape, len(flats))
	masters := map[cell][]int{}
	for i, f := range flats {
		s, err := newShape(f)
		if err != nil {
			name := f.Name
			if name == "" {
				name = fmt.Sprintf("flat %d", i+1)
			}
			return Grouping{}, fmt.Errorf("%s: %w", name, err)
		}
		shapes[i] = s
		g.join(shapes, masters, i, l)
	}
	return g, nil
}

// join finds the group of the flat at an index, or begins one.
func (g *Grouping) join(shapes []*shape, masters map[cell][]int, i int, l Likeness) {
	s := shapes[i]
	best, relation := -1, Relation{}
	for _, c := range s.cells(l, 1) {
		for _, group := range masters[c] {
			if best >= 0 && group >= best {
				break
			}
			g.Compared++
			if r := s.compare(shapes[g.Groups[group].Master], l); r.SamePart || r.OtherHand && !s.flat.OneSided {
				best, relation = group, r
			}
		}
	}
	if best >= 0 {
		g.Groups[best].Members = append(g.Groups[best].Members, Member{i, relation})
		return
	}
	own := s.compare(s, l)
	g.Groups = append(g.Groups, Group{Master: i, Members: []Member{{i, own}}})
	for _, c := range s.cells(l, 0) {
		masters[c] = append(masters[c], len(g.Groups)-1)
	}
}

// cell is a place among the marks.
type cell struct {
	metal        string
	oneSided     bool
	holes, folds int
	at           [5]int
}

// cells are the cells within so many reaches of the marks of a shape: 0 gives its own,
// 1 all that a master may stand in. A cell is four reaches wide, so that mostly one or
// two a mark are looked into.
func (s *shape) cells(l Likeness, reaches float64) []cell {
	values := [5]struct{ mark, reach float64 }{
		{s.marks.across, l.outlineReach()}, {s.marks.narrow, l.outlineReach()}, {s.marks.holeSpan, 2 * l.HolePlace}, {s.marks.largest, l.HoleSize}, {s.flat.Thickness, l.Thickness},
	}
	list := []cell{{metal: s.flat.Metal, oneSided: s.flat.OneSided, holes: len(s.flat.Holes), folds: len(s.flat.Folds)}}
	for k, v := range values {
		// A hair more than the reach, so that rounding leaves none out.
		width := 4 * (v.reach + 1e-6)
		low := int(math.Floor((v.mark - reaches*(v.reach+1e-6)) / width))
		high := int(math.Floor((v.mark + reaches*(v.reach+1e-6)) / width))
		var next []cell
		for _, c := range list {
			for at := low; at <= high; at++ {
				c.at[k] = at
				next = append(next, c)
			}
		}
		list = next
	}
	return list
}
