package strength

import (
	"math"

	"chainwale/engine/working"
)

// Fold is a fold in a strip that is in tension.
//
// Returns the force with which the fold presses on what bears it (Reaction), and
// how much larger the bending stress at its inside is than in a straight strip
// (CurveFactor).
//
// Equation:
//
//	Reaction    = 2 N sin(turn/2)
//	CurveFactor = t^2/6 (rn - ri)/(t (rc - rn) ri),  rn = t/ln((ri + t)/ri),  rc = ri + t/2
//
// Symbols: Force N in the strip, N; Turn of the fold from flat, deg; Thickness t,
// InsideRadius ri, mm; Reaction N, the factor bare.
//
// Holds where deck, hull or knee bears the fold. Without that the strip carries the
// moment of the force about the fold instead (see Section). The factor is elastic:
// for fatigue and for ranking, not for strength. ri/t from 0.2.
//
// Source: statics (computed); the factor after Winkler's curved beam of rectangular
// section (computed). Errors: a size that is missing, negative or not finite, a
// turn beyond 180 degrees, a fold sharper than 0.2 t.
type Fold struct{ Force, Turn, Thickness, InsideRadius float64 }

// FoldResult is what a Fold gives.
type FoldResult struct {
	Reaction, CurveFactor float64

	of              Fold
	neutral, middle float64
}

var winkler = working.Source{Title: "Winkler's curved beam of rectangular section", As: working.Computed, For: "the form of the equation"}

// Reckon gives reaction and factor.
func (f Fold) Reckon() (FoldResult, error) {
	var in inputs
	in.notNegative("the force in the strip", f.Force, "N")
	in.must(f.Turn >= 0 && f.Turn <= 180, "a fold turns by 0 to 180 deg, not by %g", f.Turn)
	in.positive("the thickness of the strip", f.Thickness, "mm")
	in.positive("the inside radius of the fold", f.InsideRadius, "mm")
	in.must(f.InsideRadius >= 0.2*f.Thickness, "a fold of %g mm inside radius in %g mm is too sharp for this formula: it holds from 0.2 times the thickness", f.InsideRadius, f.Thickness)
	in.must(f.InsideRadius <= 1000*f.Thickness, "a radius of %g mm in %g mm is no fold", f.InsideRadius, f.Thickness)
	if in.err != nil {
		return FoldResult{}, in.err
	}
	t, ri := f.Thickness, f.InsideRadius
	r := FoldResult{of: f, neutral: t / math.Log1p(t/ri), middle: ri + t/2}
	r.Reaction = 2 * f.Force * math.Sin(radians(f.Turn)/2)
	r.CurveFactor = t * t / 6 * (r.neutral - ri) / (t * (r.middle - r.neutral) * ri)
	return r, nil
}

// Working writes the calculation down.
func (r FoldResult) Working() []working.Step {
	f := r.of
	return []working.Step{
		{Symbol: "R", Meaning: "the fold presses on what bears it", Formula: "2 N sin(turn/2)", Inputs: given("N", f.Force, "N", "turn", f.Turn, "deg"), Value: r.Reaction, Unit: "N", Source: statics},
		{Symbol: "rn", Meaning: "radius of the neutral line", Formula: "t/ln((ri + t)/ri)", Inputs: given("t", f.Thickness, "mm", "ri", f.InsideRadius, "mm"), Value: r.neutral, Unit: "mm", Source: winkler},
		{Symbol: "Ki", Meaning: "bending stress inside the fold over that of a straight strip", Formula: "t^2/6 (rn - ri)/(t (ri + t/2 - rn) ri)", Inputs: given("t", f.Thickness, "mm", "rn", r.neutral, "mm", "ri", f.InsideRadius, "mm"), Value: r.CurveFactor, Source: winkler},
	}
}
