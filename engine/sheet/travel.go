package sheet

import (
	"math"

	"chainwale/engine/working"
)

// RamTravel is how far the ram goes from first touch to fold plate in an open V-die.
//
// Returns the Travel and how many degrees one more millimetre folds (Slope).
//
// Equation, h = a/2, Ro = R + t:
//
//	Travel = (V/2) tan(h) - (Ro + Rd)(1/cos(h) - 1)
//	Slope  = (360/pi)/((V/2)/cos^2(h) - (Ro + Rd) tan(h)/cos(h))
//
// Symbols: Die V, the opening between shoulder tangent points, Shoulder Rd, the radius
// of its edges, Thickness t, inside Radius R, mm; Angle a, deg; Travel mm, Slope
// deg/mm.
//
// Holds for a V with sharp-ended flanks and angles up to 120 deg, plastic bending
// only: the slack of a press and the first 0.1 mm of elastic travel come on top.
//
// Source: geometry (computed). Errors: sizes that are missing or not finite; a fold
// whose radii don't go into the die.
type RamTravel struct{ Die, Shoulder, Thickness, Radius, Angle float64 }

// RamTravelResult is what a RamTravel gives.
type RamTravelResult struct {
	Travel, Slope float64

	of RamTravel
}

// Reckon gives travel and slope.
func (m RamTravel) Reckon() (RamTravelResult, error) {
	var in inputs
	in.positive("the opening of the die", m.Die, "mm")
	in.notNegative("the radius of the die's shoulders", m.Shoulder, "mm")
	in.positive("the thickness", m.Thickness, "mm")
	in.positive("the inside radius", m.Radius, "mm")
	in.must(m.Angle >= 0 && m.Angle <= 120, "an open die folds by 0 to 120 deg, not by %g", m.Angle)
	if in.err != nil {
		return RamTravelResult{}, in.err
	}
	h, radii := radians(m.Angle)/2, m.Radius+m.Thickness+m.Shoulder
	in.must(m.Die/2 > radii*math.Sin(h), "a fold of %g mm inside radius in %g mm does not go into a die of %g mm at %g deg", m.Radius, m.Thickness, m.Die, m.Angle)
	if in.err != nil {
		return RamTravelResult{}, in.err
	}
	return RamTravelResult{of: m,
		Travel: m.Die/2*math.Tan(h) - radii*(1/math.Cos(h)-1),
		Slope:  360 / math.Pi / (m.Die/2/math.Pow(math.Cos(h), 2) - radii*math.Tan(h)/math.Cos(h))}, nil
}

// Working writes the calculation down.
func (r RamTravelResult) Working() []working.Step {
	m := r.of
	size := given("V", m.Die, "mm", "Rd", m.Shoulder, "mm", "t", m.Thickness, "mm", "R", m.Radius, "mm", "a", m.Angle, "deg")
	return []working.Step{
		{Symbol: "D", Meaning: "the ram goes on from first touch", Formula: "(V/2) tan(a/2) - (R + t + Rd)(1/cos(a/2) - 1)", Inputs: size, Value: r.Travel, Unit: "mm", Source: geometry},
		{Symbol: "a'", Meaning: "one more mm folds", Formula: "(360/pi)/((V/2)/cos^2(a/2) - (R + t + Rd) tan(a/2)/cos(a/2))", Inputs: size, Value: r.Slope, Unit: "deg/mm", Source: geometry},
	}
}
