package rule

import (
	"slices"
	"strings"

	"chainwale/engine/finding"
)

// mutator makes changed copies of one rule. It works on the rule's text, so that a
// change has a place in the file and can be shown as its author would write it.
type mutator struct {
	rule *Rule
	list []Mutation
}

// try notes a copy of the rule with one change.
func (m *mutator) try(at finding.Place, from, to string, change func(*Rule)) {
	c := *m.rule
	c.bands = slices.Clone(m.rule.bands)
	change(&c)
	m.list = append(m.list, Mutation{Rule: c.ID, At: at, From: from, To: to, rule: m.rule, changed: &c, tie: ties[from] == to && to != ""})
}

// compiler compiles one expression of the rule anew. What it has to say against it
// nobody hears: a change that is no expression is not tried. The sides that it
// compares are counted from the first, since no one will ask for them.
func (m *mutator) compiler() *compiler {
	return &compiler{kind: m.rule.Kind, problems: &problems{}}
}

// condition tries a condition turned round, and with each of its parts changed. set
// puts the changed condition into a copy of the rule.
func (m *mutator) condition(t text, whole *judgement, set func(*Rule, *judgement)) {
	if whole == nil {
		return
	}
	from := shortened(written(t))
	m.try(t.at(), from, "not ("+from+")", func(c *Rule) { set(c, whole.turned()) })
	for _, e := range edits(t, m.rule.Kind) {
		if j, ok := m.compiler().condition(e.changed); ok {
			m.try(e.at, e.from, e.to, func(c *Rule) { set(c, j) })
		}
	}
}

// number tries an expression that gives a number with each of its parts changed.
func (m *mutator) number(t text, set func(*Rule, *measured)) {
	if !t.given() {
		return
	}
	for _, e := range edits(t, m.rule.Kind) {
		if n, ok := m.compiler().number(e.changed); ok {
			m.try(e.at, e.from, e.to, func(c *Rule) { set(c, n) })
		}
	}
}

// band tries one limit left out, turned round, with its ties the other way, and with
// each part of its expressions changed.
func (m *mutator) band(i int) {
	b, d, v := m.rule.bands[i], m.rule.origin.bands[i], m.rule.Bands[i].Verb
	whole := string(v) + ": " + shortened(written(d.limit))
	at := d.verbAt()
	if len(m.rule.bands) > 1 {
		m.try(at, whole, "", func(c *Rule) { c.bands = slices.Delete(c.bands, i, i+1) })
	}
	if v == TrueThat {
		m.condition(d.limit, b.trueThat, func(c *Rule, j *judgement) { c.bands[i] = newBand(v, nil, j, b.appliesIf, b.grade).saying(b.says) })
	} else {
		for _, other := range otherVerbs[v] {
			m.try(at, string(v), string(other), func(c *Rule) { c.bands[i] = newBand(other, b.limit, nil, b.appliesIf, b.grade).saying(b.says) })
		}
		m.number(d.limit, func(c *Rule, limit *measured) {
			c.bands[i] = newBand(v, limit, nil, b.appliesIf, b.grade).saying(b.says)
		})
	}
	m.condition(d.appliesIf, b.appliesIf, func(c *Rule, j *judgement) { c.bands[i] = newBand(v, b.limit, b.trueThat, j, b.grade).saying(b.says) })
}

// otherVerbs are what a comparison may be mistaken for: the limit the other way
// round, and the same limit with its ties the other way.
var otherVerbs = map[Verb][]Verb{AtLeast: {Below, Above}, Above: {AtMost, AtLeast}, AtMost: {Above, Below}, Below: {AtLeast, AtMost}}

// ties are the comparisons that differ in their ties alone.
var ties = map[string]string{
	string(AtLeast): string(Above), string(Above): string(AtLeast), string(AtMost): string(Below), string(Below): string(AtMost),
	"<": "<=", "<=": "<", ">": ">=", ">=": ">",
}

// verbAt is where the limit's own key stands.
func (d draftBand) verbAt() finding.Place {
	for i := 0; i+1 < len(d.node.Content); i += 2 {
		if d.node.Content[i].Value == string(d.verb) {
			return d.limit.doc.at(d.node.Content[i])
		}
	}
	return d.limit.at()
}

// turned is the condition the other way round.
func (j *judgement) turned() *judgement {
	turned := *j
	turned.condition = notTrue(j.condition)
	return &turned
}

// shortened cuts what is too long to be shown within a sentence.
func shortened(expression string) string {
	const longest = 60
	if r := []rune(expression); len(r) > longest {
		return strings.TrimSpace(string(r[:longest])) + "…"
	}
	return expression
}
