package rule

import (
	"math"

	"chainwale/engine/finding"
)

// verdict is what a rule makes of one row of facts, in numbers only: it is made
// for every rule and every subject, and words are looked up for the few that
// somebody hears of.
type verdict struct {
	// have is what there is, need the limit that gave the grade, or if the rule
	// holds the last that was judged; NaN where there is none.
	have, need float64
	// last is the band that was looked at last, limit the one whose limit is the
	// need; -1 if there is none.
	last, limit int32
	outcome     outcome
	stuck       stuck
}

// outcome is a finding.Outcome as a number. The zero value can't tell.
type outcome uint8

const (
	cannotTell outcome = iota
	holds
	fails
	doesNotApply
)

var outcomes = [...]finding.Outcome{finding.CannotTell, finding.Holds, finding.Fails, finding.DoesNotApply}

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

// broken is the verdict of a rule that could not be evaluated.
func broken() verdict {
	return verdict{have: math.NaN(), need: math.NaN(), last: -1, limit: -1, stuck: wentWrong}
}

// quick is the outcome alone, for the many judgements that nobody hears of: it goes
// down the list as evaluate does and notes nothing. A test holds that they agree.
func (r *Rule) quick(f *frame) outcome {
	if r.appliesIf != nil {
		switch r.appliesIf.eval(f) {
		case no:
			return doesNotApply
		case unknown:
			return cannotTell
		}
	}
	have := math.NaN()
	if r.have != nil {
		have = r.have.eval(f)
	}
	result := doesNotApply
	for i := range r.bands {
		b := &r.bands[i]
		if b.applies != nil {
			switch b.applies(f) {
			case no:
				continue
			case unknown:
				return cannotTell
			}
		}
		switch b.met(f, have) {
		case no:
			return fails
		case unknown:
			return cannotTell
		}
		result = holds
	}
	return result
}

// met tells whether the limit of a band is met.
func (b *band) met(f *frame, have float64) kleene {
	if b.holds != nil {
		return b.holds(f)
	}
	need := b.fixed
	if b.need != nil {
		need = b.need(f)
	}
	return b.meets(have, need)
}

// meets compares what there is with the limit. At least and at most let a tie
// hold, above and below don't.
func (b *band) meets(have, need float64) kleene {
	if !finite(have, need) {
		return unknown
	}
	switch b.how {
	case lower:
		return decided(have >= need)
	case upper:
		return decided(have <= need)
	case lowerStrict:
		return decided(have > need)
	}
	return decided(have < need)
}

// evaluate goes down the list. Whatever goes wrong on the way, the rule does not
// hold by it.
func (r *Rule) evaluate(f *frame) (v verdict) {
	defer func() {
		if recover() != nil {
			v = broken()
		}
	}()
	v = verdict{have: math.NaN(), need: math.NaN(), last: -1, limit: -1}
	if r.appliesIf != nil {
		switch r.appliesIf.eval(f) {
		case no:
			v.outcome = doesNotApply
			return v
		case unknown:
			v.stuck = atRuleApplies
			return v
		}
	}
	if r.have != nil {
		v.have = r.have.eval(f)
	}
	r.down(f, &v)
	return v
}

// down goes down the bands: the first that is not met decides, and so does the
// first that can't be told. Bands whose applies_if is not so are passed over;
// where all were, nothing was judged, and the rule does not apply.
func (r *Rule) down(f *frame, v *verdict) {
	result := doesNotApply
	for i := range r.bands {
		b := &r.bands[i]
		v.last = int32(i)
		if b.applies != nil {
			switch b.applies(f) {
			case no:
				continue
			case unknown:
				v.stuck = atBandApplies
				v.noNeed()
				return
			}
		}
		switch b.judge(f, v) {
		case no:
			v.outcome = fails
			return
		case unknown:
			v.stuck = atLimit
			return
		}
		result = holds
	}
	v.outcome = result
}

// judge tells whether the limit of the band that was reached is met, and notes it
// as the need.
func (b *band) judge(f *frame, v *verdict) kleene {
	if b.holds != nil {
		k := b.holds(f)
		if k != yes {
			v.noNeed()
		}
		return k
	}
	have, need := v.have, b.fixed
	if b.need != nil {
		need = b.need(f)
	}
	v.need, v.limit = need, v.last
	return b.meets(have, need)
}

// noNeed forgets the limits that were met before: they gave no grade.
func (v *verdict) noNeed() { v.need, v.limit = math.NaN(), -1 }

// lacking lists the slots whose facts kept the rule from telling.
func (r *Rule) lacking(f *frame, v verdict) slots {
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
