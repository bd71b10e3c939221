package sheet

import (
	"fmt"

	"chainwale/engine/working"
)

// Springback is how far a fold opens when the press lets go.
//
// Returns what it must be pressed to (FormAngle, FormRadius) so that the wanted angle
// and radius are left, and Ratio, the radius under the press over the radius left.
//
// Equation:
//
//	Ri/Rf = 4 X^3 - 3 X + 1,  X = Ri Y/(E t)
//	af/ai = (2 Ri/t + 1)/(2 Rf/t + 1)
//
// Symbols: Thickness t, wanted Radius Rf, FormRadius Ri, mm; wanted Angle af,
// FormAngle ai, deg; Yield Y, the stress at which the worked metal flows, and Modulus
// E, MPa; Ratio bare.
//
// Holds for X below 0.5, where the whole thickness stays elastic, and angles that
// stay below 180 deg. Y is the stress of the metal as it is worked by the fold, which
// in annealed austenitic stainless is three to five times its yield strength: with
// the yield of the specification the answer is a lower bound (see HardenedSpringback).
//
// Source: the cubic of the manufacturing textbooks, with a worked example that closes
// (published). Errors: sizes and strengths that are missing, negative or not
// finite; a fold that would have to be pressed beyond 179 deg.
type Springback struct{ Thickness, Radius, Angle, Yield, Modulus float64 }

// SpringbackResult is what a Springback gives.
type SpringbackResult struct {
	FormAngle, FormRadius, Ratio float64

	of      Springback
	x, kept float64
}

var springSource = working.Source{Title: "springback of a fold as the manufacturing textbooks have it", As: working.Published, For: "the form of the equation"}

// Reckon gives angle and radius under the press.
func (s Springback) Reckon() (SpringbackResult, error) {
	var in inputs
	in.positive("the thickness", s.Thickness, "mm")
	in.positive("the wanted inside radius", s.Radius, "mm")
	in.must(s.Angle > 0 && s.Angle < 180, "a fold turns the metal by more than 0 and less than 180 deg, not by %g", s.Angle)
	in.positive("the stress at which the metal flows", s.Yield, "MPa")
	in.positive("the modulus", s.Modulus, "MPa")
	in.must(s.Yield <= s.Modulus/10, "no metal flows at %g MPa with a modulus of %g MPa", s.Yield, s.Modulus)
	if in.err != nil {
		return SpringbackResult{}, in.err
	}
	r := SpringbackResult{of: s, FormRadius: s.pressed()}
	r.x = r.FormRadius * s.Yield / (s.Modulus * s.Thickness)
	r.Ratio = r.FormRadius / s.Radius
	r.kept = (2*r.FormRadius/s.Thickness + 1) / (2*s.Radius/s.Thickness + 1)
	r.FormAngle = s.Angle / r.kept
	if !(r.FormAngle <= 179) {
		return SpringbackResult{}, fmt.Errorf("a fold of %g deg and %g mm radius would have to be pressed to %.4g deg, which no press does", s.Angle, s.Radius, r.FormAngle)
	}
	return r, nil
}

// pressed is the radius under the press. Ri - Rf (4 X^3 - 3 X + 1) grows with Ri all
// the way from X = 0, where it is negative, to X = 0.5, where it is not, so halving
// finds its root for any wanted radius; the usual iteration runs away for large ones.
func (s Springback) pressed() float64 {
	low, high := 0.0, min(s.Radius, 0.5*s.Modulus*s.Thickness/s.Yield)
	for range 200 {
		mid := (low + high) / 2
		x := mid * s.Yield / (s.Modulus * s.Thickness)
		if mid < s.Radius*(4*x*x*x-3*x+1) {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// Working writes the calculation down.
func (r SpringbackResult) Working() []working.Step {
	s := r.of
	return []working.Step{
		{Symbol: "X", Meaning: "how elastic the fold is", Formula: "Ri Y/(E t)", Inputs: given("Ri", r.FormRadius, "mm", "Y", s.Yield, "MPa", "E", s.Modulus, "MPa", "t", s.Thickness, "mm"), Value: r.x, Source: springSource},
		{Symbol: "Ri/Rf", Meaning: "radius under the press over the radius left", Formula: "4 X^3 - 3 X + 1", Inputs: given("X", r.x, ""), Value: r.Ratio, Source: springSource},
		{Symbol: "Ri", Meaning: "radius under the press", Formula: "Rf (Ri/Rf)", Inputs: given("Rf", s.Radius, "mm", "Ri/Rf", r.Ratio, ""), Value: r.FormRadius, Unit: "mm", Source: springSource},
		{Symbol: "Ks", Meaning: "part of the angle that stays", Formula: "(2 Ri/t + 1)/(2 Rf/t + 1)", Inputs: given("Ri", r.FormRadius, "mm", "Rf", s.Radius, "mm", "t", s.Thickness, "mm"), Value: r.kept, Source: springSource},
		{Symbol: "ai", Meaning: "angle under the press", Formula: "af/Ks", Inputs: given("af", s.Angle, "deg", "Ks", r.kept, ""), Value: r.FormAngle, Unit: "deg", Source: springSource},
	}
}
