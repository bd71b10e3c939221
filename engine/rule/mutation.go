package rule

import (
	"fmt"
	"slices"

	"chainwale/engine/finding"
)

// Mutation is a change to a rule that none of its examples notices: whoever made
// it by mistake would not be told.
type Mutation struct {
	Rule string
	// At is where the change was made.
	At finding.Place
	// From is what stands there and To what was put in its place, "" where it was
	// left out.
	From, To string

	rule, changed *Rule
	// tie tells that the change is one of ties alone.
	tie bool
}

// String is the change in a sentence.
func (m Mutation) String() string {
	return fmt.Sprintf("no example of %s notices when %s", m.Rule, m.What())
}

// What says what was changed.
func (m Mutation) What() string {
	if m.To == "" {
		return fmt.Sprintf("`%s` is left out", m.From)
	}
	return fmt.Sprintf("`%s` becomes `%s`", m.From, m.To)
}

// Unnoticed changes each rule, one thing at a time: a band left out, a limit or a
// condition turned round, a tie that holds made one that fails, each constant made
// a tenth more and a tenth less, each word another or left out of its list. It lists
// those changes after which every example still comes out as it says, in the order
// of the rules.
//
// Two sorts of changes are not listed, since no example could notice them: one of ties
// where no numbers that anybody writes meet exactly, and one that changes no outcome
// and no grade but only which band's own sentence is said.
func (p *Pack) Unnoticed() []Mutation {
	var list []Mutation
	for _, r := range p.Rules {
		list = append(list, r.unnoticed()...)
	}
	return list
}

func (r *Rule) unnoticed() []Mutation {
	var list []Mutation
	for _, m := range r.mutations() {
		if !m.changed.allAgree() {
			continue
		}
		if m.beyondExamples() {
			continue
		}
		list = append(list, m)
	}
	return list
}

// beyondExamples tells whether the change is one that no example could notice and that
// is none to worry about.
func (m Mutation) beyondExamples() bool {
	own := slices.ContainsFunc(m.rule.bands, func(b band) bool { return len(b.says) > 0 })
	if !m.tie && !own {
		return false
	}
	if _, ok := m.Noticing(); ok {
		return false
	}
	return m.tie || m.wording()
}

// NoticedBy tells whether an example that Noticing proposed for another change of the
// same rule would notice this one as well.
func (m Mutation) NoticedBy(s Sample) bool {
	if s.rule != m.rule {
		return false
	}
	f := &frame{facts: s.row, sides: make([]side, m.rule.sides)}
	v := m.changed.evaluate(f)
	return outcomes[v.outcome] != s.Outcome || m.changed.grade(v) != s.Grade
}

// mutations are all changes that are tried on a rule, in the order of its file. A rule
// without its examples, as built-in packs are read to judge, can't be tried.
func (r *Rule) mutations() []Mutation {
	if r.origin == nil {
		return nil
	}
	m := &mutator{rule: r}
	m.condition(r.origin.appliesIf, r.appliesIf, func(c *Rule, j *judgement) { c.appliesIf = j })
	m.number(r.origin.have, func(c *Rule, have *measured) { c.have = have })
	for i := range r.bands {
		m.band(i)
	}
	return m.list
}

// allAgree tells whether every example comes out as it says.
func (r *Rule) allAgree() bool {
	f := &frame{sides: make([]side, r.sides)}
	for _, x := range r.examples {
		f.facts = x.row
		if !r.agrees(x, r.evaluate(f)) {
			return false
		}
	}
	return true
}
