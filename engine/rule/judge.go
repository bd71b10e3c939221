package rule

import (
	"crypto/sha256"
	"encoding/hex"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

// JudgeOptions says how findings are told.
type JudgeOptions struct {
	// System is the system of units of the sentences.
	System quantity.System
	// All asks for findings of what holds and what does not apply as well.
	All bool
	// AtMost is the worst grade that a finding gets; "" for no limit. What a standard
	// says that nobody has to meet is there to be known, not to refuse a plan.
	AtMost finding.Grade
}

// Judged is what a pack made of the subjects.
type Judged struct {
	// Findings stand in the order of the subjects, and of the rules for each.
	Findings []finding.Finding
	// Counts has the four outcomes only; grades are counted when acceptances are known.
	Counts finding.Counts
	// Missing are the plan values for want of which rules could not tell.
	Missing []Gap
}

// Gap is a plan value that a rule waits for.
type Gap struct {
	Value *fact.Value
	Rule  string
	Grade finding.Grade
}

// Judge judges each subject by the rules of its kind. The pack is not changed by
// it and may judge in several goroutines at once.
func (p *Pack) Judge(subjects []*fact.Subject, o JudgeOptions) Judged {
	var j Judged
	f := &frame{sides: make([]side, p.sides)}
	kind, rules := "", []*Rule(nil)
	for _, s := range subjects {
		if s.Kind.Name != kind {
			kind, rules = s.Kind.Name, p.awake(s.Kind.Name, f)
		}
		if len(rules) == 0 {
			continue
		}
		f.facts = s.Row()
		for _, r := range rules {
			quick := r.glance(f, s)
			if !o.All && (quick == holds || quick == doesNotApply) {
				j.count(quick)
				continue
			}
			v := r.judge(f, s)
			j.count(v.outcome)
			r.explain(f, s, v, o, &j)
		}
	}
	return j
}

// awake are the rules of a kind, compiled, with room in the frame for what they compare.
func (p *Pack) awake(kind string, f *frame) []*Rule {
	rules := p.byKind[kind]
	for _, r := range rules {
		r.wake()
		if r.sides > len(f.sides) {
			f.sides = make([]side, r.sides)
		}
	}
	return rules
}

// glance is the outcome of one rule on one subject, for those that nobody hears of.
// Whatever goes wrong on the way, the rule does not hold by it.
func (r *Rule) glance(f *frame, s *fact.Subject) (o outcome) {
	defer func() {
		if recover() != nil {
			o = cannotTell
		}
	}()
	if r.broken || !s.Kind.Is(r.Kind) {
		return cannotTell
	}
	return r.quick(f)
}

// judge judges one subject. Facts that were laid out for another catalogue would
// be read by the wrong names, so nothing is told from them.
func (r *Rule) judge(f *frame, s *fact.Subject) verdict {
	if r.broken || !s.Kind.Is(r.Kind) {
		return broken()
	}
	return r.evaluate(f)
}

func (j *Judged) count(o outcome) {
	switch o {
	case holds:
		j.Counts.Holds++
	case fails:
		j.Counts.Fails++
	case doesNotApply:
		j.Counts.DoesNotApply++
	default:
		j.Counts.CannotTell++
	}
}

// Fingerprint names a finding by rule and subject, so that it survives moved
// lines: the first 16 hex digits of sha256(rule id NUL subject).
func Fingerprint(rule, subject string) string {
	sum := sha256.Sum256([]byte(rule + "\x00" + subject))
	return hex.EncodeToString(sum[:8])
}
