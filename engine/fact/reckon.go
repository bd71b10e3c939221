package fact

import "chainwale/engine/working"

// formula is what every formula of the mechanics is: inputs that give a result,
// or an error where it does not hold for them. The result writes its working down.
type formula[R worked] interface{ Reckon() (R, error) }

type worked interface{ Working() []working.Step }

// reckon derives a number by a formula. with makes the formula from inputs that
// are all known; pick takes the number out of its result.
func reckon[R worked](n *Number, from []*Value, with func() (formula[R], error), pick func(R) float64) {
	if !n.follows(from) {
		return
	}
	r, err := resultOf(with)
	if err != nil {
		n.fails(err)
		return
	}
	n.work = func() []working.Step {
		r, err := resultOf(with)
		if err != nil {
			return nil // the value is unknown for the same reason, and says so
		}
		return r.Working()
	}
	n.set(pick(r))
}

// resultOf is the result of a formula.
func resultOf[R worked](with func() (formula[R], error)) (R, error) {
	f, err := with()
	if err != nil {
		var none R
		return none, err
	}
	return f.Reckon()
}

// reckoned is a formula with its result, for one that many facts come from.
type reckoned[R worked] struct {
	result R
	err    error
}

func reckonedBy[R worked](f formula[R]) *reckoned[R] {
	r, err := f.Reckon()
	return &reckoned[R]{r, err}
}

// onceReckoned is a formula that gives its result over again, once it was made and
// reckoned for the first fact that comes from it.
func onceReckoned[R worked](with func() (formula[R], error)) func() (formula[R], error) {
	var made *reckoned[R]
	return func() (formula[R], error) {
		if made == nil {
			r, err := resultOf(with)
			made = &reckoned[R]{r, err}
		}
		return made, nil
	}
}

// Reckon gives the result that is there.
func (r *reckoned[R]) Reckon() (R, error) { return r.result, r.err }

// values names what a derivation reads.
func values(v ...*Value) []*Value { return v }

// oneStep is a working of a single look-up or line.
func oneStep(symbol, formula string, value float64, unit string, source working.Source) func() []working.Step {
	return func() []working.Step {
		return []working.Step{{Symbol: symbol, Formula: formula, Value: value, Unit: unit, Source: source}}
	}
}

// lookUp derives a number that a short list gives.
func lookUp(n *Number, symbol, how, unit string, source working.Source, from []*Value, of func() float64) {
	if !n.follows(from) {
		return
	}
	n.work = func() []working.Step { return oneStep(symbol, how, of(), unit, source)() }
	n.set(of())
}

var arithmeticSource = working.Source{Title: "arithmetic", As: working.Computed}

// arithmetic derives a number that a single line of arithmetic gives.
func arithmetic(n *Number, symbol, line, unit string, from []*Value, of func() float64) {
	if !n.follows(from) {
		return
	}
	n.work = func() []working.Step { return oneStep(symbol, line, of(), unit, arithmeticSource)() }
	n.set(of())
}

func abs(x float64) float64 { return max(x, -x) }
