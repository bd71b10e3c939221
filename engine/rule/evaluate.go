package rule

import (
	"math"

	"chainwale/engine/finding"
)

// Verdict is what a rule makes of one row of facts.
type Verdict struct {
	Outcome finding.Outcome
	// Grade is the grade of what fails or can't be told.
	Grade finding.Grade
	// Have is what there is and Need the limit that gave the grade, or if it holds
	// the last that was judged. Both are NaN where there is none or it isn't known.
	Have, Need float64

	// last is the band that was looked at last, limit the one whose limit is the
	// need; -1 if there is none.
	last, limit int
	verb        Verb
	// stuck is what could not be told.
	stuck stuck
}

// stuck says what in a rule could not be told.
type stuck uint8

const (
	nowhere stuck = iota
	atRuleApplies
	atBandApplies
	atLimit
	// wentWrong: the evaluation itself broke down.
	wentWrong
)

// Ratio is have/limit for lower limits and limit/have for upper ones, so that
// less than 1 always falls short. ok is false if there is no limit above zero.
func (v Verdict) Ratio() (ratio float64, ok bool) {
	ratio = v.Have / v.Need
	if v.verb == AtMost || v.verb == Below {
		ratio = v.Need / v.Have
		if v.Have <= 0 {
			return 0, false
		}
	}
	return ratio, v.Need > 0 && finite(ratio, 0)
}

// Evaluate judges one row of facts, a number for each slot of the rule's kind.
func (r *Rule) Evaluate(row []float64) Verdict {
	f := &frame{facts: row, sides: make([]side, r.sides)}
	return r.evaluate(f)
}

// evaluate goes down the list. Whatever goes wrong on the way, the rule does not
// hold by it.
func (r *Rule) evaluate(f *frame) (v Verdict) {
	defer func() {
		if recover() != nil {
			v = r.cannotTell(nothingYet(), wentWrong)
		}
	}()
	v = nothingYet()
	if r.appliesIf != nil {
		switch r.appliesIf.eval(f) {
		case no:
			v.Outcome = finding.DoesNotApply
			return v
		case unknown:
			return r.cannotTell(v, atRuleApplies)
		}
	}
	if r.have != nil {
		v.Have = r.have.eval(f)
	}
	return r.down(f, v)
}

// nothingYet is the verdict before anything was looked at.
func nothingYet() Verdict {
	return Verdict{Have: math.NaN(), Need: math.NaN(), last: -1, limit: -1}
}

// down goes down the bands: the first that is not met decides, and so does the
// first that can't be told. Bands whose applies_if is not so are passed over;
// where all were, nothing was judged, and the rule does not apply.
func (r *Rule) down(f *frame, v Verdict) Verdict {
	v.Outcome = finding.DoesNotApply
	for i := range r.bands {
		b := &r.bands[i]
		v.last = i
		if b.appliesIf != nil {
			switch b.appliesIf.eval(f) {
			case no:
				continue
			case unknown:
				return r.cannotTell(v, atBandApplies)
			}
		}
		switch b.judge(f, i, &v) {
		case no:
			v.Outcome, v.Grade = finding.Fails, b.grade
			return v
		case unknown:
			return r.cannotTell(v, atLimit)
		}
		v.Outcome = finding.Holds
	}
	return v
}

// judge tells whether the limit is met, and notes it as the need.
func (b *band) judge(f *frame, i int, v *Verdict) kleene {
	if b.trueThat == nil {
		v.Need, v.verb, v.limit = b.limit.eval(f), b.verb, i
		return b.verb.met(v.Have, v.Need)
	}
	k := b.trueThat.eval(f)
	if k != yes {
		v.noNeed()
	}
	return k
}

// noNeed forgets the limits that were met before: they gave no grade.
func (v *Verdict) noNeed() { v.Need, v.verb, v.limit = math.NaN(), "", -1 }

func (r *Rule) cannotTell(v Verdict, where stuck) Verdict {
	if where == atBandApplies {
		v.noNeed()
	}
	v.Outcome, v.Grade, v.stuck = finding.CannotTell, r.IfUnknown, where
	return v
}

// lacking lists the slots whose facts kept the rule from telling.
func (r *Rule) lacking(f *frame, v Verdict) slots {
	var s slots
	switch v.stuck {
	case atRuleApplies:
		r.appliesIf.lacking(f, &s)
	case atBandApplies:
		r.bands[v.last].appliesIf.lacking(f, &s)
	case atLimit:
		r.bands[v.last].lacking(r.have, f, &s)
	}
	return s
}

func (b *band) lacking(have *measured, f *frame, s *slots) {
	if b.trueThat != nil {
		b.trueThat.lacking(f, s)
		return
	}
	have.numeric.lacking(f, s)
	b.limit.numeric.lacking(f, s)
}
