package sheet

import (
	"math"

	"chainwale/engine/working"
)

// Bend is one fold in plate of one thickness.
//
// Returns the length of its neutral line (Allowance), how far the outer corner lies
// from where the metal begins to curve (OutsideSetback; InsideSetback for the inner
// corner), what the flat is shorter than the outside lengths of its two legs
// (Deduction), the neutral factor K, and how far the deduction goes down and up over
// the published methods for K (DeductionLeast, DeductionMost).
//
// Equation, a = angle in radians:
//
//	Allowance      = a (R + K t)
//	OutsideSetback = (R + t) tan(a/2)
//	InsideSetback  = R tan(a/2)
//	Deduction      = 2 OutsideSetback - Allowance
//
// Symbols: Thickness t, inside Radius R, mm; Angle that the metal is turned through
// from flat, deg; K bare; results mm. DIN 6935 writes v = -Deduction.
//
// Holds for angles below 180 deg, where the outer corner runs away; lengths are to
// the outer corner at every angle (DIN measures to the outer tangent below an opening
// of 90 deg, and drops the deduction above 165 deg; both steps are left out here).
// Up to 30 deg the radius hardly matters; at 90 deg the methods for K differ so much
// that only a test strip tells.
//
// Source: geometry (computed); K see NeutralFactor. Errors: a size that is missing,
// negative or not finite; an angle that is none; K given outside 0 to 0.5.
type Bend struct {
	Thickness, Radius, Angle float64
	// Method is DIN 6935 if left empty; K is read only if it is AsGiven.
	Method NeutralMethod
	K      float64
}

// BendResult is what a Bend gives.
type BendResult struct {
	Allowance, OutsideSetback, InsideSetback, Deduction float64
	K                                                   float64
	DeductionLeast, DeductionMost                       float64

	of        Bend
	low, high float64
}

// spreadSource says where the range of K comes from.
var spreadSource = working.Source{Title: "lowest and highest of the published methods for the neutral line", As: working.Computed, For: "the spread"}

// Reckon gives allowance, setbacks and deduction.
func (b Bend) Reckon() (BendResult, error) {
	var in inputs
	in.positive("the thickness", b.Thickness, "mm")
	in.positive("the inside radius", b.Radius, "mm")
	in.must(b.Angle > 0 && b.Angle < 180, "a fold turns the metal by more than 0 and less than 180 deg, not by %g", b.Angle)
	in.must(b.Angle <= 179, "at %g deg the outer corner of a fold lies too far out to measure to", b.Angle)
	if in.err != nil {
		return BendResult{}, in.err
	}
	k, low, high, err := b.factors()
	if err != nil {
		return BendResult{}, err
	}
	a := radians(b.Angle)
	r := BendResult{of: b, K: k, low: low, high: high, Allowance: a * (b.Radius + k*b.Thickness),
		OutsideSetback: (b.Radius + b.Thickness) * math.Tan(a/2), InsideSetback: b.Radius * math.Tan(a/2)}
	r.Deduction = 2*r.OutsideSetback - r.Allowance
	r.DeductionLeast = 2*r.OutsideSetback - a*(b.Radius+high*b.Thickness)
	r.DeductionMost = 2*r.OutsideSetback - a*(b.Radius+low*b.Thickness)
	return r, nil
}

// factors are K and its range. A factor that is given has none.
func (b Bend) factors() (k, low, high float64, err error) {
	if b.Method == AsGiven {
		var in inputs
		in.must(b.K >= 0 && b.K <= 0.5, "the neutral line lies 0 to 0.5 thicknesses from the inside face, not %g", b.K)
		return b.K, b.K, b.K, in.err
	}
	if k, err = NeutralFactor(b.Method, b.Radius, b.Thickness); err != nil {
		return 0, 0, 0, err
	}
	low, high = factorRange(b.Radius, b.Thickness)
	return k, low, high, nil
}

// Working writes the calculation down.
func (r BendResult) Working() []working.Step {
	b := r.of
	size := given("a", b.Angle, "deg", "R", b.Radius, "mm", "t", b.Thickness, "mm")
	between := func(k float64) []working.Input {
		return given("OSSB", r.OutsideSetback, "mm", "a", b.Angle, "deg", "R", b.Radius, "mm", "K", k, "", "t", b.Thickness, "mm")
	}
	steps := []working.Step{
		factorStep(b.Method, r.K, b.Radius, b.Thickness),
		{Symbol: "BA", Meaning: "length of the neutral line through the fold", Formula: "a pi/180 (R + K t)", Inputs: append(size, given("K", r.K, "")...), Value: r.Allowance, Unit: "mm", Source: geometry},
		{Symbol: "OSSB", Meaning: "outer corner to where the fold begins", Formula: "(R + t) tan(a/2)", Inputs: size, Value: r.OutsideSetback, Unit: "mm", Source: geometry},
		{Symbol: "BD", Meaning: "the flat is shorter than both outside lengths", Formula: "2 OSSB - BA", Inputs: given("OSSB", r.OutsideSetback, "mm", "BA", r.Allowance, "mm"), Value: r.Deduction, Unit: "mm", Source: geometry},
	}
	if r.low == r.high {
		return steps
	}
	const spread = "2 OSSB - a pi/180 (R + K t)"
	return append(steps,
		working.Step{Symbol: "BDlow", Meaning: "the same by the method that gives least", Formula: spread, Inputs: between(r.high), Value: r.DeductionLeast, Unit: "mm", Source: spreadSource},
		working.Step{Symbol: "BDhigh", Meaning: "the same by the method that gives most", Formula: spread, Inputs: between(r.low), Value: r.DeductionMost, Unit: "mm", Source: spreadSource})
}

// NeutralArc is the length of the neutral line through a bend, for one that may go
// all the way round: a (R + K t) with a in radians.
//
// Symbols: radius R inside, thickness t, mm; k bare; angle deg; result mm. Holds for
// angles up to 360 deg. Source: geometry (computed). Errors: sizes that are missing
// or not finite.
func NeutralArc(radius, thickness, k, angle float64) (float64, error) {
	var in inputs
	in.positive("the thickness", thickness, "mm")
	in.notNegative("the inside radius", radius, "mm")
	in.must(k >= 0 && k <= 0.5, "the neutral line lies 0 to 0.5 thicknesses from the inside face, not %g", k)
	in.must(angle >= 0 && angle <= 360, "a bend turns by 0 to 360 deg, not by %g", angle)
	if in.err != nil {
		return 0, in.err
	}
	return radians(angle) * (radius + k*thickness), nil
}
