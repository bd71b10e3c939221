package strength

import (
	"math"

	"chainwale/engine/working"
)

// ENContact is the line along which a pin lies in a wider hole, after EN 1993-1-8: for
// a pin that is to come out again.
//
// Returns the stress between pin and hole under the service load (Stress) and what
// it may be (Limit), MPa.
//
// Equation:
//
//	Stress = 0.591 sqrt(E Fser (d0 - d)/(d^2 t));   Limit = 2.5 fy/gM6
//
// Symbols: Pin d, Hole d0, Thickness t, mm; Service load Fser, N; Yield fy, the lower
// of pin and plate, Modulus E, MPa; GammaM6, bare; results MPa.
//
// Holds for a pin and a plate of one elastic modulus. A pin that fills its hole has
// no line of contact, so its stress is 0.
//
// Source: after EN 1993-1-8:2005, 3.13, equations 3.14 to 3.16 (published). Errors: sizes,
// loads or strengths that are missing, negative or not finite; a pin larger than its
// hole; a factor below 1.
type ENContact struct {
	Pin, Hole, Thickness    float64
	Service, Yield, Modulus float64
	GammaM6                 float64
}

// ENContactResult is what an ENContact gives, MPa.
type ENContactResult struct {
	Stress, Limit float64

	of ENContact
}

// Reckon gives stress and limit.
func (c ENContact) Reckon() (ENContactResult, error) {
	var in inputs
	in.positive("the diameter of the pin", c.Pin, "mm")
	in.positive("the hole", c.Hole, "mm")
	in.positive("the thickness of the plate", c.Thickness, "mm")
	in.notNegative("the service load", c.Service, "N")
	in.positive("the yield strength", c.Yield, "MPa")
	in.positive("the elastic modulus", c.Modulus, "MPa")
	in.must(c.GammaM6 >= 1 && c.GammaM6 <= 3, "a partial factor of %g is none: 1 to 3", c.GammaM6)
	in.must(c.Pin <= c.Hole, "the pin (%g mm) is larger than the hole (%g mm)", c.Pin, c.Hole)
	if in.err != nil {
		return ENContactResult{}, in.err
	}
	return ENContactResult{
		Stress: 0.591 * math.Sqrt(c.Modulus*c.Service*(c.Hole-c.Pin)/(c.Pin*c.Pin*c.Thickness)),
		Limit:  2.5 * c.Yield / c.GammaM6,
		of:     c,
	}, nil
}

// Working writes the calculation down.
func (r ENContactResult) Working() []working.Step {
	c := r.of
	return []working.Step{
		{Symbol: "sh", Meaning: "stress between pin and hole", Formula: "0.591 sqrt(E Fser (d0 - d)/(d^2 t))", Inputs: given("E", c.Modulus, "MPa", "Fser", c.Service, "N", "d0", c.Hole, "mm", "d", c.Pin, "mm", "t", c.Thickness, "mm"), Value: r.Stress, Unit: "MPa", Source: enContact},
		{Symbol: "fh", Meaning: "what it may be", Formula: "2.5 fy/gM6", Inputs: given("fy", c.Yield, "MPa", "gM6", c.GammaM6, ""), Value: r.Limit, Unit: "MPa", Source: enContact},
	}
}
