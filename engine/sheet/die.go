package sheet

import (
	"math"

	"chainwale/engine/working"
)

// Die is the open V-die for a plate.
//
// Returns the usual Opening for the thickness, the inside radius that the plate takes
// over an opening by itself (NaturalRadius, within RadiusLeast and RadiusMost) and the
// shortest leg that the opening still carries (Flange).
//
// Equation:
//
//	Opening       = 6 t up to 2.5 mm, 8 t up to 8 mm, 10 t up to 12 mm, 12 t up to 16 mm
//	NaturalRadius = 0.163 V, between 0.156 V and 0.175 V
//	Flange        = (V/2)/cos(a/2) + t/2 + 1 mm
//
// Symbols: Thickness t, V the opening, mm; Angle a of the fold, deg; results mm. V is
// Given if that is above 0, else Opening. Flange is measured outside, from the outer
// corner; its last two terms are for the roll-off.
//
// Holds for plate up to 16 mm and angles up to 120 deg. Some sources give 0.20 to
// 0.22 V for the radius that 304 takes.
//
// Source: opening and radius after two public air-bending charts (published); flange
// by geometry, 0.707 V at 90 deg against 0.70 V in the chart (computed), the roll-off
// is common practice. Errors: sizes that are missing or not finite, or out of range.
type Die struct{ Thickness, Angle, Given float64 }

// DieResult is what a Die gives.
type DieResult struct {
	Opening, NaturalRadius, RadiusLeast, RadiusMost, Flange float64

	of           Die
	times, taken float64
}

var dieSource = working.Source{Title: "public air-bending charts", As: working.Published, For: "opening and natural radius"}

// The radius that plate takes over an open die, as shares of the opening.
const (
	naturalRadius = 0.163
	naturalLeast  = 0.156
	naturalMost   = 0.175
)

// Reckon gives opening, radius and flange.
func (d Die) Reckon() (DieResult, error) {
	var in inputs
	in.positive("the thickness", d.Thickness, "mm")
	in.must(d.Thickness <= 16, "openings are charted for plate up to 16 mm, not for %g mm", d.Thickness)
	in.must(d.Angle > 0 && d.Angle <= 120, "an open die folds by more than 0 and up to 120 deg, not by %g", d.Angle)
	in.notNegative("the opening of the die", d.Given, "mm")
	if in.err != nil {
		return DieResult{}, in.err
	}
	r := DieResult{of: d, times: openingTimes(d.Thickness)}
	r.Opening = r.times * d.Thickness
	r.taken = r.Opening
	if d.Given > 0 {
		r.taken = d.Given
	}
	r.NaturalRadius, r.RadiusLeast, r.RadiusMost = naturalRadius*r.taken, naturalLeast*r.taken, naturalMost*r.taken
	r.Flange = r.taken/2/math.Cos(radians(d.Angle)/2) + d.Thickness/2 + 1
	return r, nil
}

// openingTimes is the usual opening in thicknesses. Where the charts leave a gap
// between two steps the wider opening is taken.
func openingTimes(thickness float64) float64 {
	switch {
	case thickness <= 2.5:
		return 6
	case thickness <= 8:
		return 8
	case thickness <= 12:
		return 10
	}
	return 12
}

// OpeningFor is the opening over which plate takes an inside radius by itself.
func OpeningFor(radius float64) (float64, error) {
	var in inputs
	in.positive("the inside radius", radius, "mm")
	return radius / naturalRadius, in.err
}

// Working writes the calculation down.
func (r DieResult) Working() []working.Step {
	d := r.of
	return []working.Step{
		{Symbol: "Vt", Meaning: "usual opening", Formula: "n t, n of the thickness", Inputs: given("n", r.times, "", "t", d.Thickness, "mm"), Value: r.Opening, Unit: "mm", Source: dieSource},
		{Symbol: "Rn", Meaning: "radius that the plate takes by itself", Formula: "0.163 V", Inputs: given("V", r.taken, "mm"), Value: r.NaturalRadius, Unit: "mm", Source: dieSource},
		{Symbol: "b", Meaning: "shortest leg, outside", Formula: "(V/2)/cos(a/2) + t/2 + 1 mm", Inputs: given("V", r.taken, "mm", "a", d.Angle, "deg", "t", d.Thickness, "mm"), Value: r.Flange, Unit: "mm", Source: geometry},
	}
}
