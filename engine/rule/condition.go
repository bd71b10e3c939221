package rule

import "slices"

// compare is a comparison of two numbers. It keeps both sides for whoever asks
// why, and is decided only if both are finite.
func compare(operator string, a, b numeric, keep int) condition {
	l, r := a.eval, b.eval
	c := condition{lacking: both(a.lacking, b.lacking)}
	switch operator {
	case "<":
		c.eval = func(f *frame) kleene {
			x, y := f.keep(keep, l(f), r(f))
			if !finite(x, y) {
				return unknown
			}
			return decided(x < y)
		}
	case "<=":
		c.eval = func(f *frame) kleene {
			x, y := f.keep(keep, l(f), r(f))
			if !finite(x, y) {
				return unknown
			}
			return decided(x <= y)
		}
	case ">":
		c.eval = func(f *frame) kleene {
			x, y := f.keep(keep, l(f), r(f))
			if !finite(x, y) {
				return unknown
			}
			return decided(x > y)
		}
	default:
		c.eval = func(f *frame) kleene {
			x, y := f.keep(keep, l(f), r(f))
			if !finite(x, y) {
				return unknown
			}
			return decided(x >= y)
		}
	}
	return c
}

// keep remembers the two sides of a comparison.
func (f *frame) keep(i int, left, right float64) (float64, float64) {
	f.sides[i] = side{left, right}
	return left, right
}

// same is `a == b` of two words, which are numbers here.
func same(a, b numeric, keep int) condition {
	l, r := a.eval, b.eval
	return condition{lacking: both(a.lacking, b.lacking), eval: func(f *frame) kleene {
		x, y := f.keep(keep, l(f), r(f))
		if !finite(x, y) {
			return unknown
		}
		return decided(x == y)
	}}
}

// among is `a in [...]` of a word.
func among(a numeric, words []float64, keep int) condition {
	l := a.eval
	return condition{lacking: a.lacking, eval: func(f *frame) kleene {
		x, _ := f.keep(keep, l(f), 0)
		if !finite(x, 0) {
			return unknown
		}
		return decided(slices.Contains(words, x))
	}}
}

// isYes is a yes or no fact that stands alone. Anything but 1 and 0 is unknown.
func isYes(slot int) condition {
	return condition{lacking: lackingSlot(slot), eval: func(f *frame) kleene {
		switch f.facts[slot] {
		case 1:
			return yes
		case 0:
			return no
		}
		return unknown
	}}
}

// Both parts of `and` and `or` are evaluated, whatever the first says: they have
// no effects, and what they compare is there to be shown.

func bothTrue(a, b condition) condition {
	l, r := a.eval, b.eval
	return condition{lacking: lackingUndecided(a, b), eval: func(f *frame) kleene { return and(l(f), r(f)) }}
}

func eitherTrue(a, b condition) condition {
	l, r := a.eval, b.eval
	return condition{lacking: lackingUndecided(a, b), eval: func(f *frame) kleene { return or(l(f), r(f)) }}
}

func notTrue(a condition) condition {
	l := a.eval
	return condition{lacking: a.lacking, eval: func(f *frame) kleene { return not(l(f)) }}
}

// lackingUndecided is what an undecided `and` or `or` lacks: the facts of those
// parts that are undecided themselves. A part that is known settles nothing here.
func lackingUndecided(parts ...condition) func(*frame, *slots) {
	return func(f *frame, s *slots) {
		for _, c := range parts {
			if c.eval(f) == unknown {
				c.lacking(f, s)
			}
		}
	}
}

// chooseTrue is `c ? a : b` of conditions.
func chooseTrue(c, a, b condition) condition {
	when, l, r := c.eval, a.eval, b.eval
	return condition{lacking: lackingChoice(c, a.lacking, b.lacking), eval: func(f *frame) kleene {
		x, y := l(f), r(f)
		switch when(f) {
		case yes:
			return x
		case no:
			return y
		}
		return unknown
	}}
}
