package rule

import (
	"fmt"
	"math"
	"slices"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

// example is a case from a rule's file: a row of facts, and what must come of it.
type example struct {
	at      finding.Place
	row     []float64
	outcome finding.Outcome
	grade   finding.Grade
}

// ExampleResult is what became of one example of one rule.
type ExampleResult struct {
	Rule string
	// Example counts from 1, in the order of the file.
	Example int
	At      finding.Place
	// Want and WantGrade are what the example says; WantGrade may be "".
	Want      finding.Outcome
	WantGrade finding.Grade
	Got       finding.Outcome
	GotGrade  finding.Grade
	// Unknown names the facts for want of which the rule could not tell.
	Unknown []string
	// Why says what was compared with what, "" where nothing was.
	Why    string
	Proven bool
}

// String says what differs, "" if nothing does.
func (e ExampleResult) String() string {
	if e.Proven {
		return ""
	}
	text := fmt.Sprintf("example %d of %s expects %s, the rule says %s", e.Example, e.Rule, graded(e.Want, e.WantGrade), graded(e.Got, e.GotGrade))
	if len(e.Unknown) > 0 {
		text += " for want of " + all(e.Unknown)
	}
	return text
}

func graded(o finding.Outcome, g finding.Grade) string {
	if g == "" {
		return string(o)
	}
	return fmt.Sprintf("%s (%s)", o, g)
}

// Prove runs every example of every rule on the rule itself, the one that judges.
func (p *Pack) Prove() []ExampleResult {
	var results []ExampleResult
	for _, r := range p.Rules {
		for i, x := range r.examples {
			results = append(results, r.try(i, x))
		}
	}
	return results
}

func (r *Rule) try(i int, x example) ExampleResult {
	f := &frame{facts: x.row, sides: make([]side, r.sides)}
	v := r.evaluate(f)
	e := ExampleResult{
		Rule: r.ID, Example: i + 1, At: x.at, Want: x.outcome, WantGrade: x.grade,
		Got: outcomes[v.outcome], GotGrade: r.grade(v), Proven: r.agrees(x, v),
	}
	if !e.Proven {
		e.Why = r.why(v)
	}
	for _, slot := range r.lacking(f, v) {
		e.Unknown = append(e.Unknown, r.Kind.Slots[slot].Name)
	}
	return e
}

// why says which limit gave a verdict, and what was compared with it.
func (r *Rule) why(v verdict) string {
	switch {
	case v.last < 0 || v.outcome == doesNotApply:
		return ""
	case v.limit < 0:
		return fmt.Sprintf("decided by %s: %s", r.Bands[v.last].Verb, r.Bands[v.last].Limit)
	}
	b := r.Bands[v.limit]
	return fmt.Sprintf("decided by %s: %s; there is %s, the limit is %s", b.Verb, b.Limit, exactly(v.have, r.have.dimension), exactly(v.need, r.have.dimension))
}

// exactly is a number with its unit and all of its digits.
func exactly(v float64, d quantity.Dimension) string {
	if !finite(v, 0) {
		return quantity.Unknown
	}
	return quantity.Quantity{Value: v, Dimension: d}.String()
}

// agrees tells whether a verdict is what an example says.
func (r *Rule) agrees(x example, v verdict) bool {
	return outcomes[v.outcome] == x.outcome && (x.grade == "" || r.grade(v) == x.grade)
}

// readExamples reads a rule's examples and asks for one of each kind that
// matters: a rule that was never seen to fail, or to be at a loss, proves nothing.
func (b *builder) readExamples() {
	seen := map[finding.Outcome]bool{}
	for _, d := range b.examples {
		x := example{at: b.doc.at(d.node), outcome: finding.Outcome(d.outcome.value), grade: finding.Grade(d.grade.value)}
		if x.grade != "" && (x.outcome == finding.Holds || x.outcome == finding.DoesNotApply) {
			b.problems.add(d.grade.at(), "no grade", "what %s has no grade", x.outcome)
		}
		x.row = b.row(d)
		b.rule.examples = append(b.rule.examples, x)
		seen[x.outcome] = true
	}
	if len(b.examples) == 0 {
		return
	}
	b.rule.origin = &b.draft
	for _, o := range []finding.Outcome{finding.Holds, finding.Fails, finding.CannotTell} {
		if !seen[o] {
			b.problems.add(b.examplesAt, "at least one example each that holds, fails and cannot tell", "no example has the outcome %q", o)
		}
	}
}

// row lays out an example's facts; those it doesn't list are unknown.
func (b *builder) row(d draftExample) []float64 {
	row := make([]float64, len(b.kind.Slots))
	for i := range row {
		row[i] = math.NaN()
	}
	for _, x := range d.with {
		slot, ok := b.kind.SlotOf(x.name.value)
		if !ok {
			b.problems.add(x.name.at(), unknownFact(b.kind, x.name.value), "%s", noSuchFact(b.kind, x.name.value))
			continue
		}
		row[slot] = b.value(x.value, b.kind.Slots[slot])
	}
	return row
}

// value reads a fact of an example: a quantity, a word, or yes or no.
func (b *builder) value(t text, c fact.Slot) float64 {
	switch c.Sort {
	case fact.IsYesNo:
		switch t.value {
		case "yes", "true":
			return 1
		case "no", "false":
			return 0
		}
		b.problems.add(t.at(), "yes or no", "%s is no yes or no", quote(t.value))
	case fact.IsWord:
		if len(c.Words) == 0 || slices.Contains(c.Words, t.value) {
			return fact.WordID(t.value)
		}
		b.problems.add(t.at(), whichWord(t.value, c.Words), "%s is never %s", c.Name, quote(t.value))
	default:
		q, err := quantity.ParseAs(t.value, c.Dimension)
		if err == nil {
			return q.Value
		}
		notQuantity(b.problems, t.at(), err)
	}
	return math.NaN()
}
