package strength

import "chainwale/engine/working"

// PinFit is a pin in its hole.
//
// Returns the hole over the pin (Ratio), bare.
//
// Equation:
//
//	Ratio = hole/pin
//
// Symbols: Hole and Pin, diameters, mm; result bare, 1 for a pin that fills its hole.
//
// Holds for a round hole and a round pin.
//
// Source: geometry (computed). Errors: a size that is missing, negative or not finite;
// a pin larger than its hole.
type PinFit struct{ Hole, Pin float64 }

// PinFitResult is the ratio of a PinFit.
type PinFitResult struct {
	Ratio float64

	of PinFit
}

// Reckon gives the ratio.
func (p PinFit) Reckon() (PinFitResult, error) {
	var in inputs
	in.positive("the hole", p.Hole, "mm")
	in.positive("the pin", p.Pin, "mm")
	in.must(p.Pin <= p.Hole, "the pin (%g mm) is larger than the hole (%g mm)", p.Pin, p.Hole)
	if in.err != nil {
		return PinFitResult{}, in.err
	}
	return PinFitResult{Ratio: p.Hole / p.Pin, of: p}, nil
}

// Working writes the calculation down.
func (r PinFitResult) Working() []working.Step {
	return []working.Step{
		{Symbol: "d0/d", Meaning: "hole over pin", Formula: "d0/d", Inputs: given("d0", r.of.Hole, "mm", "d", r.of.Pin, "mm"), Value: r.Ratio, Source: statics},
	}
}
