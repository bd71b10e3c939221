package pattern

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"chainwale/engine/quantity"
	"chainwale/engine/sheet"
)

// Group puts parts together that one cutting program serves, of one plan or of several:
// over port and starboard, and over boats. Each group keeps the flat of its first part,
// and each copy says how it belongs to that. Parts that were grouped before must not come
// again: a group is compared with its first part alone.
//
// Flats that were measured on old parts are alike if they differ by no more than such
// measurements do; drawn ones must be the same. The two are not mixed, for a drawn flat
// is not to become a measured one. Nor are parts that lie across the rolling direction
// and along it. Errors: a flat that is none, with its name.
func Group(parts ...Part) ([]Part, error) {
	parts = toldApart(parts)
	type kind struct{ measured, along bool }
	of := map[kind][]int{}
	for i, p := range parts {
		k := kind{p.measured(), len(p.Folds) > 0 && p.Grain == "along"}
		of[k] = append(of[k], i)
	}
	groups := map[int]Part{}
	for k, some := range of {
		likeness := sheet.LikeDrawings
		if k.measured {
			likeness = sheet.LikeMeasured
		}
		if err := groupSome(parts, some, likeness, groups); err != nil {
			return nil, err
		}
	}
	var grouped []Part
	for i := range parts {
		if g, ok := groups[i]; ok {
			grouped = append(grouped, g)
		}
	}
	return grouped, nil
}

// toldApart puts the plan's file behind the name of a boat that another plan's has too.
func toldApart(parts []Part) []Part {
	plans := map[string][]string{}
	for _, p := range parts {
		for _, c := range p.Copies {
			if !slices.Contains(plans[c.Boat], c.Plan) {
				plans[c.Boat] = append(plans[c.Boat], c.Plan)
			}
		}
	}
	list := slices.Clone(parts)
	for i := range list {
		list[i].Copies = slices.Clone(list[i].Copies)
		for k := range list[i].Copies {
			if c := &list[i].Copies[k]; len(plans[c.Boat]) > 1 {
				c.Boat = strings.TrimSpace(c.Boat + " (" + c.Plan + ")")
			}
		}
	}
	return list
}

// measured tells whether the flat came from readings of an old part.
func (p Part) measured() bool { return p.Old != nil && p.State != "new" }

// groupSome groups those of the parts that stand at some places, each group under the
// place of its first part.
func groupSome(parts []Part, some []int, likeness sheet.Likeness, groups map[int]Part) error {
	flats := make([]sheet.Flat, len(some))
	for i, at := range some {
		flats[i] = parts[at].Flat
	}
	g, err := sheet.GroupFlats(flats, likeness)
	if err != nil {
		return err
	}
	for _, group := range g.Groups {
		var members []Part
		for _, m := range group.Members {
			member := parts[some[m.Index]]
			member.Copies = slices.Clone(member.Copies)
			for i := range member.Copies {
				member.Copies[i].Hand = handOf(member.Copies[i].Hand, m.Relation)
			}
			members = append(members, member)
		}
		groups[some[group.Master]] = together(members)
	}
	return nil
}

// together is the part that members make, the first of which is drawn.
func together(members []Part) Part {
	whole := members[0]
	whole.Copies = nil
	for _, m := range members {
		whole.Copies = append(whole.Copies, m.Copies...)
	}
	whole.Warnings = warnings(members)
	whole.Differ = differences(members)
	return whole
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

// warnings are those of all members, each once, and with whose it is where it is not
// everybody's.
func warnings(members []Part) []string {
	var list []string
	for _, m := range members {
		for _, w := range m.Warnings {
			if !slices.Contains(list, w) {
				list = append(list, w)
			}
		}
	}
	for i, w := range list {
		having := slices.DeleteFunc(slices.Clone(members), func(m Part) bool { return !slices.Contains(m.Warnings, w) })
		if len(having) < len(members) {
			list[i] = names(having) + ": " + w
		}
	}
	return list
}

// fewNames is how many are named on a drawing; the list of groups has all.
const fewNames = 6

// names are the fittings of parts, by their boats.
func names(parts []Part) string {
	var list []string
	for _, p := range parts {
		for _, c := range p.Copies {
			list = append(list, c.name())
		}
	}
	return few(list)
}

func few(list []string) string {
	if len(list) <= fewNames {
		return strings.Join(list, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(list[:fewNames], ", "), len(list)-fewNames)
}

// differences say in what members differ that the drawing has of the first alone.
func differences(members []Part) []string {
	var list []string
	for _, of := range []struct {
		what string
		say  func(Part) string
	}{
		{"finish", func(p Part) string { return p.Finish }},
		{"certificate", func(p Part) string { return p.Metal.papers() }},
		{"in the holes", func(p Part) string { return p.fasteners() }},
		{"at the press", func(p Part) string { return p.pressWords() }},
	} {
		having := map[string][]Part{}
		var values []string
		for _, m := range members {
			value := of.say(m)
			if value == "" {
				value = "not said"
			}
			if having[value] == nil {
				values = append(values, value)
			}
			having[value] = append(having[value], m)
		}
		for _, value := range values[1:] {
			list = append(list, fmt.Sprintf("%s for %s: %s", of.what, names(having[value]), value))
		}
	}
	return list
}

// fasteners are what goes through the holes, each once.
func (p Part) fasteners() string {
	var list []string
	for _, h := range p.Holes {
		if h.Fastener != "" && h.Role == "bolt" && !slices.Contains(list, h.Fastener) {
			list = append(list, h.Fastener)
		}
	}
	return strings.Join(list, ", ")
}

// pressWords are the press and the dies that the part is folded with.
func (p Part) pressWords() string {
	var list []string
	for _, d := range p.Folds {
		if die := dieWords(d.Die); !slices.Contains(list, die) {
			list = append(list, die)
		}
	}
	if len(p.Folds) > 0 && !math.IsNaN(p.Rating) {
		list = append(list, "press rated "+quantity.Format(p.Rating, quantity.Force, quantity.Metric))
	}
	return strings.Join(list, ", ")
}

func dieWords(opening float64) string {
	if math.IsNaN(opening) {
		return "die not known"
	}
	return "die " + mm(opening)
}
