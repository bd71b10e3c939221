package strength

import (
	"math"

	"chainwale/engine/working"
)

// ShearOut is the plate at a pin where no chart and no code is at hand: the net
// section, and shear on planes that leave the hole at 40 degrees.
//
// Returns both loads in N.
//
// Equation:
//
//	Net      = Fu (w - d0) t
//	ShearOut = 2 t 0.6 Fu (e - d0/2 cos 40 deg)
//
// Symbols: Thickness t, Width w, Hole d0, End e (hole's centre to the end), mm;
// Ultimate Fu, MPa; results N.
//
// Holds for a square end and a pin that fits. It is a second opinion beside PinPlate.
//
// Source: the 40 degrees after Niu, Airframe Stress Analysis and Sizing, figure
// 9.8.4 (published); the rest is statics (computed). Errors: a size or strength that
// is missing, negative or not finite; a hole that breaks out.
type ShearOut struct {
	Thickness, Width, Hole, End float64
	Ultimate                    float64
}

// ShearOutResult are the loads of a ShearOut, N.
type ShearOutResult struct {
	Net, ShearOut float64

	of ShearOut
}

var niu = working.Source{Title: "after Niu, Airframe Stress Analysis and Sizing", Clause: "figure 9.8.4", As: working.Published, For: "the planes at 40 degrees"}

// Reckon gives the loads.
func (s ShearOut) Reckon() (ShearOutResult, error) {
	plate := PinPlate{Thickness: s.Thickness, Width: s.Width, Hole: s.Hole, Pin: s.Hole, End: s.End, Yield: s.Ultimate, Ultimate: s.Ultimate}
	if err := plate.check(); err != nil {
		return ShearOutResult{}, err
	}
	return ShearOutResult{of: s, Net: s.Ultimate * (s.Width - s.Hole) * s.Thickness,
		ShearOut: 2 * s.Thickness * 0.6 * s.Ultimate * (s.End - s.Hole/2*math.Cos(radians(40)))}, nil
}

// Working writes the calculation down.
func (r ShearOutResult) Working() []working.Step {
	s := r.of
	return []working.Step{
		{Symbol: "Nu", Meaning: "breaks across the hole", Formula: "Fu (w - d0) t", Inputs: given("Fu", s.Ultimate, "MPa", "w", s.Width, "mm", "d0", s.Hole, "mm", "t", s.Thickness, "mm"), Value: r.Net, Unit: "N", Source: statics},
		{Symbol: "Vu", Meaning: "shears out on planes at 40 degrees", Formula: "2 t 0.6 Fu (e - d0/2 cos 40)", Inputs: given("t", s.Thickness, "mm", "Fu", s.Ultimate, "MPa", "e", s.End, "mm", "d0", s.Hole, "mm"), Value: r.ShearOut, Unit: "N", Source: niu},
	}
}
