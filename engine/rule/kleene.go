package rule

// kleene is a truth value of Kleene's strong three-valued logic: what follows
// from an unknown is unknown, unless it would be the same either way.
type kleene uint8

const (
	unknown kleene = iota
	no
	yes
)

func and(a, b kleene) kleene {
	switch {
	case a == no || b == no:
		return no
	case a == yes && b == yes:
		return yes
	}
	return unknown
}

func or(a, b kleene) kleene {
	switch {
	case a == yes || b == yes:
		return yes
	case a == no && b == no:
		return no
	}
	return unknown
}

func not(a kleene) kleene {
	switch a {
	case yes:
		return no
	case no:
		return yes
	}
	return unknown
}

// decided is a comparison of known numbers.
func decided(b bool) kleene {
	if b {
		return yes
	}
	return no
}

// finite tells whether both numbers can be compared: x-x is 0 for a finite x and
// NaN for NaN and the infinities.
func finite(a, b float64) bool { return (a-a)+(b-b) == 0 }

// settle turns an infinity into NaN, so that nothing reckoned from it comes out
// finite again: 1/(x/0) would be 0.
func settle(x float64) float64 { return x + (x - x) }
