package rule

import "chainwale/engine/finding"

// Evaluator judges row after row by one rule and allocates nothing on the way. It
// is for one goroutine.
type Evaluator struct {
	rule  *Rule
	frame frame
}

// Evaluator makes an evaluator of the rule.
func (r *Rule) Evaluator() *Evaluator {
	return &Evaluator{rule: r, frame: frame{sides: make([]side, r.sides)}}
}

// Outcome judges one row of facts, a number for each slot of the rule's kind and
// NaN where it is unknown. A row of another length can't be told.
func (e *Evaluator) Outcome(row []float64) finding.Outcome {
	if len(row) != len(e.rule.Kind.Slots) {
		return finding.CannotTell
	}
	e.frame.facts = row
	return outcomes[e.rule.quick(&e.frame)]
}

// Holds tells whether the rule holds on one row of facts: not if it can't be told.
func (e *Evaluator) Holds(row []float64) bool {
	if len(row) != len(e.rule.Kind.Slots) {
		return false
	}
	e.frame.facts = row
	return e.rule.quick(&e.frame) == holds
}
