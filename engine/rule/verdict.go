package rule

import "chainwale/engine/finding"

// Verdict is what a rule makes of one row of facts.
type Verdict struct {
	Outcome finding.Outcome
	// Grade is the grade of what fails or can't be told.
	Grade finding.Grade
	// Have is what there is and Need the limit that gave the grade, or if it holds
	// the last that was judged. Both are NaN where there is none or it isn't known.
	Have, Need float64
	// Ratio is Have/Need for lower limits and Need/Have for upper ones, so that
	// less than 1 always falls short; nil if there is no limit above zero.
	Ratio *float64
}

// Evaluate judges one row of facts, a number for each slot of the rule's kind and
// NaN where it is unknown: a subject's own row, or one in which somebody tries
// another value.
func (r *Rule) Evaluate(row []float64) Verdict {
	f := &frame{facts: row, sides: make([]side, r.sides)}
	return r.tell(r.evaluate(f))
}

// tell puts a verdict into words.
func (r *Rule) tell(v verdict) Verdict {
	told := Verdict{Outcome: outcomes[v.outcome], Grade: r.grade(v), Have: v.have, Need: v.need}
	if ratio, ok := r.ratio(v); ok {
		told.Ratio = &ratio
	}
	return told
}

// grade is that of the band that failed, or of what can't be told.
func (r *Rule) grade(v verdict) finding.Grade {
	switch v.outcome {
	case fails:
		return r.bands[v.last].grade
	case cannotTell:
		return r.IfUnknown
	}
	return ""
}

// ratio is how much of the limit there is; ok is false if it can't be said.
func (r *Rule) ratio(v verdict) (ratio float64, ok bool) {
	if v.limit < 0 || v.need <= 0 {
		return 0, false
	}
	switch r.bands[v.limit].how {
	case lower, lowerStrict:
		ratio = v.have / v.need
	default:
		if v.have <= 0 {
			return 0, false
		}
		ratio = v.need / v.have
	}
	return ratio, finite(ratio, 0)
}
