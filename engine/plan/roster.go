package plan

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/near"
	"chainwale/engine/plan/document"
)

// part is one stay or fitting after side: both has been taken apart.
type part struct{ id, side string }

// entry is what the roster has to know of a stay, a fitting, a contact or a record.
type entry struct{ id, side Text }

// roster finds parts by the ids that a plan may use for them.
type roster struct {
	// what is the kind of entry as a sentence calls it: "stay".
	what  string
	parts map[string][]part
	first map[string]Text
	// whole is false if some entry has no id, or one that is at fault, so that an
	// id nothing goes by may be that entry's.
	whole bool
	// hints counts the unknown ids for which a near one was looked for.
	hints int
}

// newRoster lists entries under all their ids and reports ids that would stand
// for two entries.
func newRoster(what string, entries []entry) (*roster, []finding.Problem) {
	names := 3 * len(entries)
	r := &roster{what: what, parts: make(map[string][]part, names), first: make(map[string]Text, names), whole: true}
	var problems []finding.Problem
	for _, e := range entries {
		if !e.id.Given || !isID(e.id.Value) {
			r.whole = false
			continue
		}
		if !knownSide(e.side) {
			e.side.Value = Both // The fault is told; no id that may be right is called wrong.
		}
		if clash := r.clash(e); clash != nil {
			problems = append(problems, *clash)
			r.whole = false
		}
		r.add(e)
	}
	return r, problems
}

// idForm is the form of an id, as the schema has it.
var idForm = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)

// isID tells whether a text has that form.
var isID = document.Matcher(idForm.String())

// add lists an entry under those of its ids that are free.
func (r *roster) add(e entry) {
	id, sides, sidedIDs := e.id.Value, sidesOf(e.side.Value), SidedIDs(e.id.Value, e.side.Value)
	_, taken := r.first[id]
	var parts []part
	for i, sided := range sidedIDs {
		parts = append(parts, part{sided, sides[i]})
	}
	if !taken {
		r.parts[id] = parts
	}
	for i, sided := range sidedIDs {
		if _, held := r.first[sided]; sided != id && !held {
			r.parts[sided] = parts[i : i+1 : i+1]
		}
	}
	for _, name := range namesOf(e) {
		if _, held := r.first[name]; !held {
			r.first[name] = e.id
		}
	}
}

// namesOf are all ids that an entry may be called by, in order.
func namesOf(e entry) []string {
	sided := SidedIDs(e.id.Value, e.side.Value)
	if len(sided) == 1 {
		return sided
	}
	return append([]string{e.id.Value}, sided...)
}

// clash is the problem with an entry of which an id is taken, nil if none is.
func (r *roster) clash(e entry) *finding.Problem {
	for _, name := range namesOf(e) {
		taken, ok := r.first[name]
		if !ok {
			continue
		}
		id, where := e.id.Value, line(taken.At, e.id.At)
		message := fmt.Sprintf("the id %s stands twice; it is already in %s", id, where)
		switch {
		case name != id:
			message = fmt.Sprintf("with side: both, %s is also called %s, and that id is already in %s", id, name, where)
		case taken.Value != id:
			message = fmt.Sprintf("the id %s is taken: %s in %s has side: both, and this is one of its two", id, taken.Value, where)
		}
		return &finding.Problem{At: e.id.At, Message: message, Expected: "an id of its own for each " + r.what}
	}
	return nil
}

// unknown is the problem with an id that nothing goes by, nil if something does.
// Where an entry's own id is at fault, only an id near to another is told, for the
// rest may be right.
func (r *roster) unknown(id Text) *finding.Problem {
	if r.parts[id.Value] != nil {
		return nil
	}
	if r.hints++; r.hints > mostHints && !r.whole {
		return nil
	}
	var names, nearest []string
	if r.hints <= mostHints {
		names = slices.Sorted(maps.Keys(r.parts))
		nearest = near.Words(id.Value, names, 3)
	}
	if !r.whole && len(nearest) == 0 {
		return nil
	}
	expected := "the id of a " + r.what
	switch {
	case len(nearest) > 0:
		expected = "did you mean " + strings.Join(nearest, " or ") + "?"
	case len(r.parts) == 0:
		expected += "; the plan has none yet"
	case len(names) > 0 && len(names) <= mostNames:
		expected += ": " + strings.Join(names, ", ")
	}
	return &finding.Problem{At: id.At, Message: fmt.Sprintf("no %s has the id %s", r.what, id.Value), Expected: expected}
}

const (
	// mostNames is how many ids a message lists.
	mostNames = 20
	// mostHints is for how many unknown ids a near one is looked for. A file with
	// more of them has another fault than spelling, and looking takes time.
	mostHints = 50
)
