package rule

import (
	"math"

	"chainwale/engine/quantity"
)

// frame is what the closures of a rule work on: a row of facts, and what was
// compared on the way. One frame serves all subjects in turn, so that judging
// allocates nothing.
type frame struct {
	// facts has a number for each slot of the kind, NaN where it is unknown.
	facts []float64
	// sides has the two sides of each comparison of the rule.
	sides []side
}

type side struct{ left, right float64 }

// numeric is an expression that gives a number: NaN if it can't be told.
type numeric struct {
	eval func(*frame) float64
	// lacking adds the slots whose facts make the number unknown.
	lacking   func(*frame, *slots)
	dimension quantity.Dimension

	// slot is the fact, if the expression is nothing but one; otherwise -1.
	slot int
	// constant tells that the expression is a number or a quantity.
	constant bool
	value    float64
}

// condition is an expression that is so or not, or can't be told.
type condition struct {
	eval    func(*frame) kleene
	lacking func(*frame, *slots)
}

// slots is a small set of slots in the order they came.
type slots []int

func (s *slots) add(slot int) {
	for _, have := range *s {
		if have == slot {
			return
		}
	}
	*s = append(*s, slot)
}

func nothing(*frame, *slots) {}

func constant(value float64, d quantity.Dimension) numeric {
	return numeric{
		eval: func(*frame) float64 { return value }, lacking: nothing,
		dimension: d, slot: -1, constant: true, value: value,
	}
}

// fromSlot reads a fact.
func fromSlot(slot int, d quantity.Dimension) numeric {
	return numeric{
		eval:    func(f *frame) float64 { return settle(f.facts[slot]) },
		lacking: lackingSlot(slot), dimension: d, slot: slot,
	}
}

func lackingSlot(slot int) func(*frame, *slots) {
	return func(f *frame, s *slots) {
		if !finite(f.facts[slot], 0) {
			s.add(slot)
		}
	}
}

// both is what two parts lack.
func both(a, b func(*frame, *slots)) func(*frame, *slots) {
	return func(f *frame, s *slots) {
		a(f, s)
		b(f, s)
	}
}

// derived is a number reckoned from two others.
func derived(a, b numeric, d quantity.Dimension, eval func(*frame) float64) numeric {
	return numeric{eval: eval, lacking: both(a.lacking, b.lacking), dimension: d, slot: -1}
}

func plus(a, b numeric) numeric {
	l, r := a.eval, b.eval
	return derived(a, b, a.dimension, func(f *frame) float64 { return settle(l(f) + r(f)) })
}

func minus(a, b numeric) numeric {
	l, r := a.eval, b.eval
	if a.slot >= 0 && b.slot >= 0 {
		i, j := a.slot, b.slot
		return derived(a, b, a.dimension, func(f *frame) float64 { return settle(f.facts[i] - f.facts[j]) })
	}
	return derived(a, b, a.dimension, func(f *frame) float64 { return settle(l(f) - r(f)) })
}

// times is a product. The commonest, a number times a fact, has a closure of its own.
func times(a, b numeric) numeric {
	d := a.dimension.Times(b.dimension)
	l, r := a.eval, b.eval
	if a.constant && b.slot >= 0 {
		k, slot := a.value, b.slot
		return derived(a, b, d, func(f *frame) float64 { return settle(k * f.facts[slot]) })
	}
	return derived(a, b, d, func(f *frame) float64 { return settle(l(f) * r(f)) })
}

// over is a quotient; a division by zero can't be told.
func over(a, b numeric) numeric {
	d := a.dimension.Over(b.dimension)
	l, r := a.eval, b.eval
	if a.slot >= 0 && b.slot >= 0 {
		i, j := a.slot, b.slot
		return derived(a, b, d, func(f *frame) float64 { return settle(f.facts[i] / settle(f.facts[j])) })
	}
	return derived(a, b, d, func(f *frame) float64 { return settle(l(f) / r(f)) })
}

// power is a ** n. math.Pow says that NaN ** 0 is 1; an unknown stays unknown here.
func power(a numeric, n int) numeric {
	l, exponent := a.eval, float64(n)
	if n == 2 {
		return derived(a, constant(exponent, quantity.Bare), a.dimension.Power(n), func(f *frame) float64 {
			x := l(f)
			return settle(x * x)
		})
	}
	return derived(a, constant(exponent, quantity.Bare), a.dimension.Power(n), func(f *frame) float64 {
		x := l(f)
		return settle(math.Pow(x, exponent) + (x - x))
	})
}

func negative(a numeric) numeric {
	l := a.eval
	n := numeric{eval: func(f *frame) float64 { return -l(f) }, lacking: a.lacking, dimension: a.dimension, slot: -1}
	n.constant, n.value = a.constant, -a.value
	return n
}

func absolute(a numeric) numeric {
	l := a.eval
	return numeric{eval: func(f *frame) float64 { return math.Abs(l(f)) }, lacking: a.lacking, dimension: a.dimension, slot: -1}
}

// larger and smaller are unknown if either number is: Go's max and min keep NaN.
func larger(a, b numeric) numeric {
	l, r := a.eval, b.eval
	return derived(a, b, a.dimension, func(f *frame) float64 { return max(l(f), r(f)) })
}

func smaller(a, b numeric) numeric {
	l, r := a.eval, b.eval
	return derived(a, b, a.dimension, func(f *frame) float64 { return min(l(f), r(f)) })
}

// choose is `c ? a : b`. Both arms are evaluated, so that what they compare is
// there to be shown; without the condition neither is chosen, even if they agree.
func choose(c condition, a, b numeric) numeric {
	when, l, r := c.eval, a.eval, b.eval
	n := numeric{dimension: a.dimension, slot: -1}
	n.eval = func(f *frame) float64 {
		x, y := l(f), r(f)
		switch when(f) {
		case yes:
			return x
		case no:
			return y
		}
		return math.NaN()
	}
	n.lacking = lackingChoice(c, a.lacking, b.lacking)
	return n
}

// lackingChoice is what a ?: lacks: what its condition does, or else the arm
// that was chosen.
func lackingChoice(c condition, a, b func(*frame, *slots)) func(*frame, *slots) {
	return func(f *frame, s *slots) {
		switch c.eval(f) {
		case yes:
			a(f, s)
		case no:
			b(f, s)
		default:
			c.lacking(f, s)
		}
	}
}
