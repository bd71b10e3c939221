package rule

import (
	"strings"
	"sync"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
)

// builder makes a rule from a draft and notes all that is wrong with it.
type builder struct {
	compiler
	draft
	rule *Rule
}

// build compiles a draft. The rule is of use only if no problem was noted.
func build(d draft, pack string, c *fact.Catalogue, p *problems, later func(kind string) bool) *Rule {
	r := &Rule{
		ID: d.id.value, Title: d.title.value, Pack: pack, At: d.doc.place(1, 1),
		AppliesIf: written(d.appliesIf), Have: written(d.have),
		HoldsUp: d.holdsUp.value, Says: strings.TrimSpace(d.says.value), Because: strings.TrimSpace(d.because.value),
		Vary: values(d.vary), Known: d.known, Decides: d.decides,
	}
	if d.id.given() {
		r.At = d.id.at()
	}
	b := &builder{compiler{problems: p}, d, r}
	b.checkGrades()
	switch {
	case !b.findKind(c):
	case later != nil && later(b.kind.Name):
		r.later = sync.OnceFunc(func() {
			b.problems = &problems{}
			b.finish()
			r.broken = len(b.problems.list) > 0
		})
	default:
		b.finish()
	}
	return r
}

// finish compiles what the rule says of its kind.
func (b *builder) finish() {
	b.compileExpressions()
	b.readSays()
	b.checkVary()
	b.readExamples()
}

// wake compiles a rule that was left for later.
func (r *Rule) wake() {
	if r.later != nil {
		r.later()
	}
}

// written is an expression on one line.
func written(t text) string { return strings.Join(strings.Fields(t.value), " ") }

// findKind finds what the rule judges.
func (b *builder) findKind(c *fact.Catalogue) bool {
	if !b.on.given() {
		return false
	}
	b.kind = c.Kind(b.on.value)
	if b.kind == nil {
		var names []string
		for _, k := range c.Kinds {
			names = append(names, k.Name)
		}
		b.problems.add(b.on.at(), whichWord(b.on.value, names), "there is no kind of subject named %s", quote(b.on.value))
		return false
	}
	b.rule.Kind = b.kind
	return true
}

// checkGrades checks the grades against each other and settles that of the unknown.
func (b *builder) checkGrades() {
	var worst, last finding.Grade
	for _, item := range b.bands {
		g := finding.Grade(item.grade.value)
		if last != "" && g.WorseThan(last) {
			b.problems.add(item.grade.at(), "the worst band first", "the grade gets worse down the list: %s after %s", g, last)
		}
		if g != "" {
			last = g
		}
		if worst == "" || g.WorseThan(worst) {
			worst = g
		}
	}
	b.rule.IfUnknown = worst.Below()
	if b.ifUnknown.given() {
		b.rule.IfUnknown = finding.Grade(b.ifUnknown.value)
	}
	if (worst == finding.Stop || b.rule.IfUnknown == finding.Stop) && !b.hasHoldsUp {
		b.problems.add(b.doc.at(b.doc.root), "holds_up: "+either(holdsUpWords), "a rule that can stop the work lacks the key holds_up")
	}
}

// compileExpressions compiles applies_if, have and the limits.
func (b *builder) compileExpressions() {
	b.rule.appliesIf = b.judgement(b.appliesIf)
	b.rule.have = b.measured(b.have)
	for _, item := range b.bands {
		b.rule.Bands = append(b.rule.Bands, Band{item.verb, written(item.limit), finding.Grade(item.grade.value), written(item.appliesIf), strings.TrimSpace(item.says.value)})
		b.rule.bands = append(b.rule.bands, b.band(item))
	}
	b.checkNumbers()
	b.rule.reads, b.rule.sides = b.reads, len(b.compared)
	for _, slot := range b.reads {
		b.rule.Reads = append(b.rule.Reads, b.kind.Slots[slot].Name)
	}
}

// band compiles one limit and checks it against what it is compared with.
func (b *builder) band(d draftBand) band {
	applies, grade := b.judgement(d.appliesIf), finding.Grade(d.grade.value)
	if d.verb == TrueThat {
		return newBand(d.verb, nil, b.judgement(d.limit), applies, grade)
	}
	limit, have := b.measured(d.limit), b.rule.have
	if limit != nil && have != nil {
		alike(b.problems, have.part, limit.part, have.numeric, limit.numeric, "the left side", "the right side")
	}
	return newBand(d.verb, limit, nil, applies, grade)
}

// judgement compiles a condition, nil if there is none or it is no good.
func (b *builder) judgement(t text) *judgement {
	if !t.given() {
		return nil
	}
	j, _ := b.condition(t)
	return j
}

// measured compiles a number, nil if there is none or it is no good.
func (b *builder) measured(t text) *measured {
	if !t.given() {
		return nil
	}
	m, _ := b.number(t)
	return m
}

// checkVary checks that the facts an owner could change are values of the plan.
func (b *builder) checkVary() {
	for _, t := range b.vary {
		slot, ok := b.kind.SlotOf(t.value)
		switch {
		case !ok:
			b.problems.add(t.at(), unknownFact(b.kind, t.value), "%s", noSuchFact(b.kind, t.value))
		case b.kind.Slots[slot].From == "":
			b.problems.add(t.at(), "a fact that the plan gives", "%s is worked out and no value of the plan", t.value)
		default:
			b.rule.vary = append(b.rule.vary, slot)
		}
	}
}
