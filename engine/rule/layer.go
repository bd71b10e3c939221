package rule

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"

	"go.yaml.in/yaml/v4"
)

// Change is what one pack makes otherwise in a rule of another: it switches the
// rule off, or gives one of its bands another grade or limit, or what can't be told
// another grade. It always says why.
type Change struct {
	// Rule is the rule's id, By the pack that makes the change, At where it says so.
	Rule, By string
	At       finding.Place
	Off      bool
	// Band is the band that is changed, from 1; 0 where only the rule as a whole is.
	Band      int
	Grade     finding.Grade
	IfUnknown finding.Grade
	Reason    string

	limit text
}

var changeKeys = []string{"rule", "off", "band", "grade", "limit", "if_unknown", "reason"}

// changes reads what a pack changes in others.
func (f fields) changes(by text) []Change {
	var list []Change
	for _, n := range f.items("changes") {
		if c, ok := f.change(n, by.value); ok {
			list = append(list, c)
		}
	}
	return list
}

// change reads one change. ok is false if it can't be used.
func (f fields) change(n *yaml.Node, by string) (Change, bool) {
	faults := len(f.problems.list)
	g, ok := f.fields(n, "a change", changeKeys...)
	if !ok {
		return Change{}, false
	}
	g.need("rule", "reason")
	rule := g.text("rule")
	c := Change{
		Rule: rule.value, By: by, At: f.doc.at(n), Reason: strings.Join(strings.Fields(g.text("reason").value), " "),
		Grade: finding.Grade(g.word("grade", gradeWords).value), IfUnknown: finding.Grade(g.word("if_unknown", gradeWords).value),
		Off: g.word("off", []string{"true"}).given(), limit: g.expression("limit"),
	}
	f.checkLimit(c.limit)
	if rule.given() {
		c.At = rule.at()
	}
	if band := g.text("band"); band.given() {
		c.Band, _ = strconv.Atoi(band.value)
		if c.Band < 1 {
			f.problems.add(band.at(), "the band's number, from 1 for the first", "%s is no band", quote(band.value))
		}
	}
	switch any := c.Grade != "" || c.limit.given() || c.IfUnknown != ""; {
	case c.Off && any:
		f.problems.add(c.At, "off: true alone, or what is to be otherwise", "a rule that is switched off has neither grade nor limit")
	case !c.Off && !any && len(f.problems.list) == faults:
		f.problems.add(c.At, "off: true, or another grade, limit or if_unknown", "the change changes nothing")
	}
	return c, len(f.problems.list) == faults
}

// checkLimit refuses a limit that is none whatever rule it is for: one that can't be
// understood, or of which a part is never a number. What it says of facts is held
// against the rule when that is at hand.
func (f fields) checkLimit(limit text) {
	if !limit.given() {
		return
	}
	c := compiler{kind: &fact.Kind{}, problems: f.problems}
	if _, is, _ := c.quantityAlone(limit); is {
		return
	}
	if _, _, ok := parse(limit, f.problems); ok {
		checkFinite(limit, c.kind, f.problems)
	}
}

// Changed is a pack with one of its rules made otherwise, and the change as a
// sentence for the report. The pack itself stays as it is. Problems say what in the
// change does not fit the rule.
func (p *Pack) Changed(c Change, k *fact.Catalogue) (pack *Pack, told string, list []finding.Problem) {
	i := slices.IndexFunc(p.Rules, func(r *Rule) bool { return r.ID == c.Rule })
	if i < 0 {
		return nil, "", []finding.Problem{{At: c.At, Message: "the pack " + p.ID + " has no rule " + quote(c.Rule), Expected: nearest(c.Rule, p.ruleIDs())}}
	}
	p.Rules[i].wake()
	if c.Off {
		return p.with(i, nil), fmt.Sprintf("%s switched off by %s: %s", c.Rule, c.By, c.Reason), nil
	}
	ch := changing{Change: c, old: p.Rules[i], rule: p.Rules[i].clone()}
	ch.apply(k)
	if len(ch.problems.list) > 0 {
		return nil, "", ch.problems.list
	}
	return p.with(i, ch.rule), fmt.Sprintf("%s: %s, by %s: %s", c.Rule, strings.Join(ch.told, "; "), c.By, c.Reason), nil
}

func (p *Pack) ruleIDs() []string {
	var ids []string
	for _, r := range p.Rules {
		ids = append(ids, r.ID)
	}
	return ids
}

// with is the pack with another rule in the place of one; without it if that is nil.
func (p *Pack) with(at int, other *Rule) *Pack {
	q := *p
	q.Rules, q.byKind = nil, map[string][]*Rule{}
	for i, r := range p.Rules {
		if i == at {
			r = other
		}
		if r != nil {
			q.add(r)
		}
	}
	return &q
}

// clone is a rule whose bands can be changed.
func (r *Rule) clone() *Rule {
	c := *r
	c.Bands, c.bands = slices.Clone(r.Bands), slices.Clone(r.bands)
	c.reads, c.Reads = slices.Clone(r.reads), slices.Clone(r.Reads)
	return &c
}

// changing is one rule in the course of being changed.
type changing struct {
	Change
	old, rule *Rule
	problems  problems
	told      []string
}

func (c *changing) apply(k *fact.Catalogue) {
	if c.IfUnknown != "" {
		c.told = append(c.told, fmt.Sprintf("cannot tell is %s instead of %s", c.IfUnknown, c.rule.IfUnknown))
		c.rule.IfUnknown = c.IfUnknown
	}
	if c.Grade != "" || c.limit.given() {
		if c.findBand() {
			c.regrade()
			c.relimit(k)
		}
	}
	c.checkGrades()
}

// findBand settles which band is meant: of several, one has to be named.
func (c *changing) findBand() bool {
	n := len(c.rule.Bands)
	if c.Band == 0 && n == 1 {
		c.Band = 1
	}
	if c.Band >= 1 && c.Band <= n {
		return true
	}
	var bands []string
	for i, b := range c.rule.Bands {
		bands = append(bands, fmt.Sprintf("%d: %s %s else %s", i+1, b.Verb, b.Limit, b.Else))
	}
	c.problems.add(c.At, "band: one of "+strings.Join(bands, "; "), "the rule %s has %s, so the change has to say which it means", c.Rule, count(n, "band"))
	return false
}

func (c *changing) regrade() {
	if c.Grade == "" {
		return
	}
	b := &c.rule.Bands[c.Band-1]
	c.told = append(c.told, fmt.Sprintf("band %d is %s instead of %s", c.Band, c.Grade, b.Else))
	b.Else, c.rule.bands[c.Band-1].grade = c.Grade, c.Grade
}

// relimit puts another limit in the band's place, compiled as the rule's own are.
func (c *changing) relimit(k *fact.Catalogue) {
	if !c.limit.given() {
		return
	}
	kind := k.Kind(c.old.Kind.Name)
	compiled := compiler{kind: kind, problems: &c.problems, reads: c.rule.reads, compared: make([]compared, c.rule.sides)}
	shown, inner := &c.rule.Bands[c.Band-1], &c.rule.bands[c.Band-1]
	if shown.Verb == TrueThat {
		j, ok := compiled.condition(c.limit)
		if !ok {
			return
		}
		*inner = newBand(TrueThat, nil, j, inner.appliesIf, inner.grade).saying(inner.says)
	} else {
		m, ok := compiled.number(c.limit)
		if !ok {
			return
		}
		have := c.rule.have
		alike(&c.problems, have.part, m.part, have.numeric, m.numeric, "the left side", "the right side")
		*inner = newBand(shown.Verb, m, nil, inner.appliesIf, inner.grade).saying(inner.says)
	}
	c.told = append(c.told, fmt.Sprintf("band %d is %s %s instead of %s", c.Band, shown.Verb, written(c.limit), shown.Limit))
	shown.Limit = written(c.limit)
	c.rule.Kind, c.rule.reads, c.rule.sides = kind, compiled.reads, len(compiled.compared)
	c.rule.Reads = nil
	for _, slot := range compiled.reads {
		c.rule.Reads = append(c.rule.Reads, kind.Slots[slot].Name)
	}
}

func (b band) saying(says []piece) band {
	b.says = says
	return b
}

// checkGrades holds the changed rule to what every rule is held to: grades that
// never get worse down the list, and a stop that says what it holds up.
func (c *changing) checkGrades() {
	for i, b := range c.rule.Bands {
		if i > 0 && b.Else.WorseThan(c.rule.Bands[i-1].Else) {
			c.problems.add(c.At, "the worst band first", "by this change the grades of %s get worse down the list: %s after %s", c.Rule, b.Else, c.rule.Bands[i-1].Else)
		}
		if b.Else == finding.Stop && c.rule.HoldsUp == "" {
			c.problems.add(c.At, "mend or watch", "%s does not say what a stop holds up, so it can't be made one", c.Rule)
		}
	}
	if c.rule.IfUnknown == finding.Stop && c.rule.HoldsUp == "" {
		c.problems.add(c.At, "mend or watch", "%s does not say what a stop holds up, so it can't be made one", c.Rule)
	}
}
