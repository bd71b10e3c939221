package strength

import (
	"math"

	"chainwale/engine/working"
)

// LugOblique is a lug of the aircraft handbooks whose load leads off its axis, in
// its plane.
//
// Returns the load in N, along its own direction, at which the lug gives way (Load).
//
// Equation: the P of
//
//	(P cos(angle)/Axial)^1.6 + (P sin(angle)/Across)^1.6 = 1
//
// Symbols: Axial, the lug's strength along its axis, and Across, at right angles to
// it, N; Angle between load and axis, deg; result N.
//
// Holds for 0 to 90 degrees. The handbook's fitting factor of 1.15 is not in it.
//
// Source: after Niu, Airframe Stress Analysis and Sizing, equation 9.8.13, and NASA
// TM X-73305, B2 (published). Errors: strengths that are missing, negative or not
// finite; an angle beyond 90 degrees.
type LugOblique struct{ Axial, Across, Angle float64 }

// LugObliqueResult is what a LugOblique holds, N.
type LugObliqueResult struct {
	Load float64

	of LugOblique
}

var niuOblique = working.Source{Title: "after Niu, Airframe Stress Analysis and Sizing", Clause: "equation 9.8.13", As: working.Published, For: "the form of the equation, without its fitting factor of 1.15"}

// togetherPower is how steeply the strengths along and across take from each other.
const togetherPower = 1.6

// Reckon gives the load.
func (l LugOblique) Reckon() (LugObliqueResult, error) {
	var in inputs
	in.positive("the strength along the lug", l.Axial, "N")
	in.positive("the strength across the lug", l.Across, "N")
	in.must(l.Angle >= 0 && l.Angle <= 90, "a load %g deg off the lug's axis is not covered: 0 to 90 deg", l.Angle)
	if in.err != nil {
		return LugObliqueResult{}, in.err
	}
	along := max(0, math.Cos(radians(l.Angle))) / l.Axial
	across := math.Sin(radians(l.Angle)) / l.Across
	used := math.Pow(along, togetherPower) + math.Pow(across, togetherPower)
	return LugObliqueResult{Load: math.Pow(used, -1/togetherPower), of: l}, nil
}

// Working writes the calculation down.
func (r LugObliqueResult) Working() []working.Step {
	l := r.of
	return []working.Step{
		{Symbol: "Pob", Meaning: "load off the axis at which the lug gives way", Formula: "the P of (P cos(angle)/Pu)^1.6 + (P sin(angle)/Ptru)^1.6 = 1", Inputs: given("Pu", l.Axial, "N", "Ptru", l.Across, "N", "angle", l.Angle, "deg"), Value: r.Load, Unit: "N", Source: niuOblique},
	}
}
