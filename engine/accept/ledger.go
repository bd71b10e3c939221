package accept

import (
	"maps"
	"slices"
	"strings"
	"time"

	"chainwale/engine/finding"
	"chainwale/engine/near"
)

// The rules by which acceptances themselves are found fault with. They are the
// program's own and stand in no pack.
const (
	// Pack is what such findings have for a pack.
	Pack = "chainwale"
	// Lapsed: the last day of an acceptance is past.
	Lapsed = "acceptance-lapsed"
	// MatchesNothing: what an acceptance names is not there, or not found fault with.
	MatchesNothing = "acceptance-matches-nothing"
	// FallsShort: what an acceptance names got worse, or can't be told.
	FallsShort = "acceptance-falls-short"
	// OfAnotherBoat: an acceptance stands in the template and not in the boat's plan.
	OfAnotherBoat = "acceptance-of-another-boat"
)

// Rules lists the program's own rules of acceptances.
func Rules() []string { return []string{Lapsed, MatchesNothing, FallsShort, OfAnotherBoat} }

// entry is an acceptance with what became of it.
type entry struct {
	Accepted
	// number is its place in the plan's list.
	number int
	// idle is the rule by which it can't do anything, "" if it can.
	idle string
	// says is why, as the end of a sentence, and at where.
	says string
	at   finding.Place
	// covered counts the findings that it took on.
	covered int
	// short are findings that it names and that no entry covers.
	short []finding.Finding
	// beside is another entry that took on what this one names.
	beside *entry
}

// ledger is all entries of a plan.
type ledger struct {
	entries []*entry
	byName  map[named][]*entry
	called  called
}

// named is a rule and what an entry calls its subject.
type named struct{ rule, subject string }

// newLedger tells for each acceptance whether it can do anything on that day.
func newLedger(planFile string, acceptances []Accepted, on time.Time, known Known) *ledger {
	l := &ledger{byName: map[named][]*entry{}, called: newCalled(known.Sided)}
	c := newChecker(planFile, on, known, l.called)
	for i, a := range acceptances {
		e := &entry{Accepted: a, number: i}
		c.check(e)
		l.entries = append(l.entries, e)
		l.byName[named{a.Rule, a.Subject}] = append(l.byName[named{a.Rule, a.Subject}], e)
	}
	return l
}

// checker knows what there is to accept.
type checker struct {
	planFile string
	on       string
	known    Known
	rules    map[string]bool
	// names are all that subjects may be called by.
	names map[string]bool
	// hints counts the names for which a near one was looked for.
	hints int
}

// mostHints is for how many unknown names a near one is looked for: looking takes
// time, and a plan with more of them has another fault than spelling.
const mostHints = 20

func newChecker(planFile string, on time.Time, known Known, by called) *checker {
	c := &checker{planFile: planFile, on: day(on), known: known, rules: map[string]bool{}, names: map[string]bool{"": true}}
	for _, id := range known.Rules {
		c.rules[id] = true
	}
	for _, s := range known.Subjects {
		for _, name := range by.names(s.Ref, s.Part) {
			c.names[name] = true
		}
	}
	return c
}

// check finds what keeps an entry from doing anything: it is another boat's, it
// names what is not there, its last day is past.
func (c *checker) check(e *entry) {
	switch {
	case e.At.File != c.planFile:
		e.put(OfAnotherBoat, e.At, "stands in the template and counts for the boat of that file alone. Whoever takes it on for this boat writes it in "+c.planFile+".")
	case !c.rules[e.Rule]:
		e.put(MatchesNothing, e.RuleAt, "does nothing: none of the packs that judged has a rule of that name."+c.nearest(e.Rule, func() []string { return c.known.Rules }))
	case !c.names[e.Subject]:
		e.put(MatchesNothing, e.SubjectAt, "does nothing: no part of this plan and no subject of its report has that name."+c.nearest(e.Subject, func() []string { return c.alike(e.Subject) }))
	case day(e.Until) < c.on:
		e.put(Lapsed, e.UntilAt, "") // said when it is known whether there is still something to accept
	}
}

func (e *entry) put(rule string, at finding.Place, says string) {
	e.idle, e.at, e.says = rule, at, says
	if at.Line == 0 {
		e.at = e.At
	}
}

// alike lists the names of the sort that one is of: "kind:id", or an id alone.
func (c *checker) alike(name string) (names []string) {
	whole := strings.Contains(name, ":")
	for _, candidate := range slices.Sorted(maps.Keys(c.names)) {
		if candidate != "" && strings.Contains(candidate, ":") == whole {
			names = append(names, candidate)
		}
	}
	return names
}

// nearest is a sentence with the names nearest to one that nothing has.
func (c *checker) nearest(name string, candidates func() []string) string {
	if c.hints++; c.hints > mostHints {
		return ""
	}
	if words := near.Words(name, candidates(), 3); len(words) > 0 {
		return " Did you mean " + strings.Join(words, " or ") + "?"
	}
	return ""
}
