package rule

import (
	"fmt"
	"slices"

	"chainwale/engine/finding"
)

// Change is a change to a rule that none of its examples notices: whoever made
// it by mistake would not be told.
type Change struct {
	Rule string
	At   finding.Place
	What string
}

// String is the change in a sentence.
func (c Change) String() string {
	return fmt.Sprintf("no example of %s notices %s", c.Rule, c.What)
}

// Unnoticed tries changes on each rule, one at a time: a band left out, a limit
// or an applies_if turned round. It lists those after which every example still
// comes out as it says.
func (p *Pack) Unnoticed() []Change {
	var list []Change
	for _, r := range p.Rules {
		for _, m := range r.mutants() {
			if m.rule.allAgree() {
				list = append(list, Change{r.ID, r.At, m.what})
			}
		}
	}
	return list
}

// mutant is a rule with one change.
type mutant struct {
	rule *Rule
	what string
}

func (r *Rule) mutants() []mutant {
	var list []mutant
	change := func(what string, f func(*Rule)) {
		c := *r
		c.bands = slices.Clone(r.bands)
		f(&c)
		list = append(list, mutant{&c, what})
	}
	if r.appliesIf != nil {
		change("that its applies_if is turned round", func(c *Rule) { c.appliesIf = r.appliesIf.turned() })
	}
	for i, b := range r.bands {
		name := fmt.Sprintf("%s %s", r.Bands[i].Verb, r.Bands[i].Limit)
		change(fmt.Sprintf("that %q is left out", name), func(c *Rule) { c.bands = slices.Delete(c.bands, i, i+1) })
		change(fmt.Sprintf("that %q is turned round", name), func(c *Rule) { c.bands[i] = b.turned(r.Bands[i].Verb) })
		if b.appliesIf != nil {
			change(fmt.Sprintf("that the applies_if of %q is turned round", name), func(c *Rule) {
				c.bands[i] = newBand(r.Bands[i].Verb, b.limit, b.trueThat, b.appliesIf.turned(), b.grade)
			})
		}
	}
	return list
}

// turned is the limit the other way round.
func (b band) turned(v Verb) band {
	if v == TrueThat {
		return newBand(v, nil, b.trueThat.turned(), b.appliesIf, b.grade)
	}
	opposite := map[Verb]Verb{AtLeast: Below, Below: AtLeast, AtMost: Above, Above: AtMost}
	return newBand(opposite[v], b.limit, nil, b.appliesIf, b.grade)
}

// turned is the condition the other way round.
func (j *judgement) turned() *judgement {
	turned := *j
	turned.condition = notTrue(j.condition)
	return &turned
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
