package pattern

import (
	"slices"

	"chainwale/engine/sheet"
)

// Group puts parts together that one cutting program serves, of one plan or of several:
// over port and starboard, and over boats. Each group keeps the flat of its first part,
// and each copy says how it belongs to that.
//
// Flats that were measured on old parts are alike if they differ by no more than such
// measurements do; drawn ones must be the same. The two are not mixed, for a drawn flat
// is not to become a measured one. Errors: a flat that is none, with its name.
func Group(parts ...Part) ([]Part, error) {
	var grouped []Part
	first := map[string]int{}
	for i, p := range parts {
		for _, c := range p.Copies {
			first[c.Boat+"\x00"+c.Fitting] = i
		}
	}
	for _, measured := range []bool{false, true} {
		some := slices.DeleteFunc(slices.Clone(parts), func(p Part) bool { return p.measured() != measured })
		likeness := sheet.LikeDrawings
		if measured {
			likeness = sheet.LikeMeasured
		}
		groups, err := groupSome(some, likeness)
		if err != nil {
			return nil, err
		}
		grouped = append(grouped, groups...)
	}
	order := func(p Part) int { return first[p.Copies[0].Boat+"\x00"+p.Copies[0].Fitting] }
	slices.SortStableFunc(grouped, func(a, b Part) int { return order(a) - order(b) })
	return grouped, nil
}

// measured tells whether the flat came from readings of an old part.
func (p Part) measured() bool { return p.Old != nil && p.State != "new" }

func groupSome(parts []Part, likeness sheet.Likeness) ([]Part, error) {
	flats := make([]sheet.Flat, len(parts))
	for i, p := range parts {
		flats[i] = p.Flat
	}
	g, err := sheet.GroupFlats(flats, likeness)
	if err != nil {
		return nil, err
	}
	var list []Part
	for _, group := range g.Groups {
		whole := parts[group.Master]
		whole.Copies = nil
		for _, m := range group.Members {
			for _, c := range parts[m.Index].Copies {
				c.Hand = handOf(c.Hand, m.Relation)
				whole.Copies = append(whole.Copies, c)
			}
			whole.Warnings = joined(whole.Warnings, parts[m.Index].Warnings)
		}
		list = append(list, whole)
	}
	return list, nil
}

// handOf is the hand of a copy in a group, from its hand in the part that joins it.
func handOf(own Hand, r sheet.Relation) Hand {
	switch {
	case r.Unhanded() || own == EitherHand:
		return EitherHand
	case r.SamePart:
		return own
	case own == AsDrawn:
		return OtherHand
	}
	return AsDrawn
}

// joined are sentences of both lists, each once.
func joined(a, b []string) []string {
	list := slices.Clone(a)
	for _, s := range b {
		if !slices.Contains(list, s) {
			list = append(list, s)
		}
	}
	return list
}
