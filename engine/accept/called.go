package accept

import (
	"slices"
	"strings"
)

// called knows by which names of the plan a part goes: its own id, and that of an
// entry with side: both of which it is one of the two.
type called map[string][]string

func newCalled(sided map[string][]string) called {
	c := called{}
	for name, ids := range sided {
		for _, id := range ids {
			if id != name {
				c[id] = append(c[id], name)
			}
		}
	}
	return c
}

// mostSteps is of how many steps an id may be made for each of them to be called
// otherwise; ids of subjects have two.
const mostSteps = 4

// names are all that a subject may be called by. "kind:id" is that one, or one of
// two where the id stands for one on each side. An id alone is all that hangs on
// the part of that name, and all that is called after it: a stay's landing and its
// bolt group, each of its bolt holes.
func (c called) names(ref, part string) []string {
	kind, id, _ := strings.Cut(ref, ":")
	steps := strings.Split(id, "/")
	names := []string{ref}
	if len(steps) <= mostSteps {
		for _, other := range c.ids(steps) {
			names = append(names, kind+":"+other)
		}
	}
	for _, step := range append(steps, part) {
		if step != "" && !isNumber(step) {
			names = append(append(names, step), c[step]...)
		}
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// ids are all ways to write an id of several steps.
func (c called) ids(steps []string) []string {
	ids := append([]string{steps[0]}, c[steps[0]]...)
	for _, step := range steps[1:] {
		var longer []string
		for _, id := range ids {
			for _, way := range append([]string{step}, c[step]...) {
				longer = append(longer, id+"/"+way)
			}
		}
		ids = longer
	}
	return ids
}

// isNumber tells the steps that only count: the third bolt hole is no part's name.
func isNumber(step string) bool { return strings.Trim(step, "0123456789") == "" }
