package strength

import (
	"math"

	"chainwale/engine/working"
)

// HoleLoad is how the metal at a hole is loaded: by what pulls past it, or by the
// pin in it.
type HoleLoad string

const (
	// OpenHole is an empty hole in a strip in tension.
	OpenHole HoleLoad = "open"
	// PinHole is a hole that a close pin pulls on.
	PinHole HoleLoad = "pin"
)

// StressConcentration is a round hole in the middle of a flat strip.
//
// Returns NetFactor, the elastic peak stress at the hole over the mean stress of
// the net section (w - d) t.
//
// Equation, x = hole/width:
//
//	open  the greater of 2 + (1 - x)^3 (Heywood) and 3.00 - 3.13 x + 3.66 x^2 - 1.53 x^3 (Howland, fitted)
//	pin   12.882 - 52.714 x + 89.762 x^2 - 51.667 x^3
//
// Symbols: Width w, Hole d, mm; the factor is bare.
//
// Holds for open holes of x up to 0.5 and pin holes of 0.15 to 0.75 with a square
// end, at least as much metal beyond the hole as the strip is wide, and a pin that
// fits; a loose pin is worse. For ranking hidden places against each other and for
// workings, never for static strength: at a pin the elastic peak passes the
// ultimate strength long before anything breaks.
//
// Source: Heywood; Howland's results and the pin curve as fitted in Peterson's
// Stress Concentration Factors (memory). Heywood alone lies below Howland from
// x = 0.25 on, by 1.6 % at 0.5. Errors: a kind that is not known, sizes that are
// missing or not finite, x outside the curve.
type StressConcentration struct {
	Kind        HoleLoad
	Width, Hole float64
}

// StressConcentrationResult is the factor.
type StressConcentrationResult struct {
	NetFactor float64

	of                      StressConcentration
	ratio, heywood, howland float64
}

var (
	heywoodFit = working.Source{Title: "Heywood, open hole in a strip", As: working.Memory, For: "the form of the equation"}
	howlandFit = working.Source{Title: "Howland's open hole as fitted in Peterson's Stress Concentration Factors", As: working.Memory, For: "the form of the equation"}
	pinFit     = working.Source{Title: "pin in a strip with a square end as fitted in Peterson's Stress Concentration Factors", As: working.Memory, For: "the form of the equation"}
)

// Reckon gives the factor.
func (s StressConcentration) Reckon() (StressConcentrationResult, error) {
	var in inputs
	in.positive("the width", s.Width, "mm")
	in.positive("the hole", s.Hole, "mm")
	if in.err != nil {
		return StressConcentrationResult{}, in.err
	}
	x := s.Hole / s.Width
	r := StressConcentrationResult{of: s, ratio: x}
	switch s.Kind {
	case OpenHole:
		in.must(x <= 0.5, "an open hole of %.3g times the width is beyond the curve, which ends at 0.5", x)
		r.heywood = 2 + math.Pow(1-x, 3)
		r.howland = 3.00 - 3.13*x + 3.66*x*x - 1.53*x*x*x
		r.NetFactor = max(r.heywood, r.howland)
	case PinHole:
		in.must(x >= 0.15 && x <= 0.75, "a pin hole of %.3g times the width is outside the curve, 0.15 to 0.75", x)
		r.NetFactor = 12.882 - 52.714*x + 89.762*x*x - 51.667*x*x*x
	default:
		in.refuse("a hole is %q or %q, not %q", string(OpenHole), string(PinHole), string(s.Kind))
	}
	if in.err != nil {
		return StressConcentrationResult{}, in.err
	}
	return r, nil
}

// Working writes the calculation down.
func (r StressConcentrationResult) Working() []working.Step {
	x := given("x", r.ratio, "")
	steps := []working.Step{{Symbol: "x", Meaning: "hole over width", Formula: "d/w", Inputs: given("d", r.of.Hole, "mm", "w", r.of.Width, "mm"), Value: r.ratio, Source: statics}}
	if r.of.Kind == PinHole {
		return append(steps, working.Step{Symbol: "Kt", Meaning: "peak stress over the mean of the net section", Formula: "12.882 - 52.714 x + 89.762 x^2 - 51.667 x^3", Inputs: x, Value: r.NetFactor, Source: pinFit})
	}
	return append(steps,
		working.Step{Symbol: "K1", Meaning: "Heywood", Formula: "2 + (1 - x)^3", Inputs: x, Value: r.heywood, Source: heywoodFit},
		working.Step{Symbol: "K2", Meaning: "Howland", Formula: "3.00 - 3.13 x + 3.66 x^2 - 1.53 x^3", Inputs: x, Value: r.howland, Source: howlandFit},
		working.Step{Symbol: "Kt", Meaning: "peak stress over the mean of the net section", Formula: "max(K1, K2)", Inputs: given("K1", r.heywood, "", "K2", r.howland, ""), Value: r.NetFactor, Source: howlandFit})
}
