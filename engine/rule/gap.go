package rule

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
)

// lack is what kept a rule from telling: facts by name and in words, the plan
// values behind them that could be measured, and reasons that are not in the plan.
type lack struct {
	names, words, reasons []string
	gaps                  []*fact.Value
	first                 *fact.Value
}

// lack finds what the undecided part of a rule lacks.
func (r *Rule) lack(f *frame, s *fact.Subject, v verdict) *lack {
	l := &lack{}
	if v.stuck == wentWrong {
		l.reasons = append(l.reasons, "the rule could not be evaluated on these facts, which is the program's fault and not the plan's")
		return l
	}
	slots := r.lacking(f, v)
	if len(slots) == 0 {
		l.reasons = append(l.reasons, "what it compares gives no finite number: something is divided by zero, or too large")
	}
	for _, slot := range slots {
		l.slot(s, slot)
	}
	return l
}

// slot follows an unknown fact back to the plan values that it waits for.
func (l *lack) slot(s *fact.Subject, slot int) {
	if name, missing := absent(s, slot); missing {
		l.name(name, "")
		l.reason("there is no " + name)
		l.first = cmp.Or(l.first, s.Value(slot))
		return
	}
	for _, root := range s.Value(slot).Missing() {
		l.root(s, slot, root)
	}
}

// absent tells whether the neighbour that a slot is read from is not there.
func absent(s *fact.Subject, slot int) (string, bool) {
	name := s.Kind.Slots[slot].Name
	for _, n := range s.Kind.Neighbours {
		if strings.HasPrefix(name, n+".") && s.Neighbour(n) == nil {
			return n, true
		}
	}
	return "", false
}

// root notes one value that is missing. One that no plan could give, because a
// formula or a table refused, is a reason rather than a gap.
func (l *lack) root(s *fact.Subject, slot int, root *fact.Value) {
	l.first = cmp.Or(l.first, root)
	column, owner := root.Column(), root.Subject()
	if column == nil || owner == nil {
		column, owner = s.Kind.Slots[slot].Column, s
		if v := s.Value(slot); v.Subject() != nil {
			owner = v.Subject()
		}
	} else if column.From != "" || root.Why() == "" && root.At().Line > 0 {
		if !slices.Contains(l.gaps, root) {
			l.gaps = append(l.gaps, root)
		}
	}
	l.name(nameOf(s, root, column, owner), meaning(s, column, owner))
	if why := root.Why(); why != "" {
		l.reason(why)
	}
}

// name notes a fact that is missing, once; words may be empty.
func (l *lack) name(name, words string) {
	if slices.Contains(l.names, name) {
		return
	}
	l.names = append(l.names, name)
	if words != "" {
		l.words = append(l.words, words)
	}
}

func (l *lack) reason(why string) {
	if !slices.Contains(l.reasons, why) {
		l.reasons = append(l.reasons, why)
	}
}

// nameOf is the name by which the subject's rules read a value, or else its own
// name after that of its owner.
func nameOf(s *fact.Subject, v *fact.Value, column *fact.Column, owner *fact.Subject) string {
	for i, slot := range s.Kind.Slots {
		if s.Value(i) == v {
			return slot.Name
		}
	}
	if owner == s {
		return column.Name
	}
	return owner.Ref() + " " + column.Name
}

// meaning is a fact in words, with its owner's name if that is another.
func meaning(s *fact.Subject, column *fact.Column, owner *fact.Subject) string {
	if owner == s || owner.Name == "" {
		return column.Means
	}
	return column.Means + " (" + owner.Name + ")"
}

// message says what is missing and which rule it would settle.
func (l *lack) message(r *Rule) string {
	reasons := strings.Join(l.reasons, "; ")
	if len(l.words) == 0 {
		return fmt.Sprintf("%s; so it can't be told whether %q", reasons, r.Title)
	}
	if reasons != "" {
		reasons = ", because " + reasons
	}
	they := "it"
	if len(l.words) > 1 {
		they = "they"
	}
	return fmt.Sprintf("not known: %s%s; %s would settle %q", each(l.words), reasons, they, r.Title)
}

// place is that of the first missing value, or the subject's.
func (l *lack) place(s *fact.Subject) finding.Place {
	if l.first != nil && l.first.At().Line > 0 {
		return l.first.At()
	}
	return s.At
}

// Measures makes the one list of what to go and measure: each plan value once,
// with the rules that it would settle, by fitting, tool and place. Facts of
// several subjects that stand at one place of the plan, as a plate's to port and
// its twin's to starboard do, are one reading.
func Measures(gaps []Gap) []finding.Measure {
	index := map[finding.Place]int{}
	var list []finding.Measure
	for _, g := range gaps {
		i, seen := index[g.Value.At()]
		if !seen {
			i = len(list)
			index[g.Value.At()] = i
			c := g.Value.Column()
			list = append(list, finding.Measure{Subject: under(g.Value.Subject()), Fact: c.Name, At: g.Value.At(), Tool: c.Tool, Where: c.Where})
		}
		if !slices.Contains(list[i].Settles, g.Rule) {
			list[i].Settles = append(list[i].Settles, g.Rule)
		}
	}
	for i := range list {
		slices.Sort(list[i].Settles)
	}
	slices.SortStableFunc(list, func(a, b finding.Measure) int {
		return cmp.Or(cmp.Compare(a.Subject, b.Subject), cmp.Compare(a.Tool, b.Tool), cmp.Compare(a.Where, b.Where), cmp.Compare(a.Fact, b.Fact))
	})
	return list
}

// under is what a reading is taken at: the fitting that the subject hangs on, or
// the subject itself.
func under(s *fact.Subject) string {
	if f := s.Neighbour("fitting"); f != nil {
		return f.Ref()
	}
	return s.Ref()
}

// each lists meanings, which may hold commas themselves.
func each(words []string) string {
	if len(words) < 3 {
		return all(words)
	}
	return strings.Join(words[:len(words)-1], "; ") + "; and " + words[len(words)-1]
}
