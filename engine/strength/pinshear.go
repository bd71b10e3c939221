package strength

import "chainwale/engine/working"

// PinShear is a pin cut through on both sides of the plate, for when nobody has
// measured the fork yet.
//
// Returns the force that shears the pin (Shear).
//
// Equation:
//
//	Shear = 2 * 0.6 Fu * pi d^2/4
//
// Symbols: Diameter d, mm; Ultimate Fu of the pin, MPa; result N.
//
// Holds for a solid round pin of a ductile metal, held by a fork on both sides.
//
// Source: after EN 1993-1-8:2005, table 3.10, without its partial factor
// (published). Errors: a size or a strength that is missing, negative or not finite.
type PinShear struct{ Diameter, Ultimate float64 }

// PinShearResult is what a PinShear holds, N.
type PinShearResult struct {
	Shear float64

	pin  PinShear
	area float64
}

// Reckon gives the force that shears the pin.
func (p PinShear) Reckon() (PinShearResult, error) {
	var in inputs
	in.positive("the diameter of the pin", p.Diameter, "mm")
	in.positive("the ultimate strength of the pin", p.Ultimate, "MPa")
	if in.err != nil {
		return PinShearResult{}, in.err
	}
	area := roundArea(p.Diameter)
	return PinShearResult{Shear: 2 * 0.6 * p.Ultimate * area, pin: p, area: area}, nil
}

// Working writes the calculation down.
func (r PinShearResult) Working() []working.Step {
	return []working.Step{
		{Symbol: "A", Meaning: "area of the pin", Formula: "pi d^2/4", Inputs: given("d", r.pin.Diameter, "mm"), Value: r.area, Unit: "mm2", Source: statics},
		{Symbol: "F_shear", Meaning: "force that shears the pin on both sides of the plate", Formula: "2 * 0.6 Fu A", Inputs: given("Fu", r.pin.Ultimate, "MPa", "A", r.area, "mm2"), Value: r.Shear, Unit: "N", Source: enPin},
	}
}
