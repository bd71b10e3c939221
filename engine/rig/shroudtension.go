package rig

import "chainwale/engine/working"

// ShroudTension is the whole pull of a side's shrouds and the thrust of the mast by
// the old rule of thumb.
//
// Returns the sum of the shrouds' pulls and the mast's compression, N.
//
// Equation:
//
//	PT = 1.5 RM30/b,  mast = 1.5 * 1.85 RM30/b
//
// Symbols: RightingMoment RM30, N mm; HalfBeam b, mast to chainplate across, mm.
//
// Holds for ordinary monohulls; 1.5 is for heel beyond 30 deg and motion, 1.85 for
// fore-and-aft stays and halyards.
//
// Source: Kinney, Skene's Elements of Yacht Design, 8th edition (memory; the product
// is printed as 2.78). Errors: a moment or half beam that is missing or not positive.
type ShroudTension struct{ RightingMoment, HalfBeam float64 }

// ShroudTensionResult is both, N.
type ShroudTensionResult struct {
	Shrouds, Mast float64

	of ShroudTension
}

// The two factors of the rule of thumb.
const (
	KinneyShrouds = 1.5
	KinneyStays   = 1.85
)

var kinney = working.Source{Title: "Kinney, Skene's Elements of Yacht Design", Edition: "8th", As: working.Memory, For: "the factors 1.5 and 1.85"}

// Reckon gives both.
func (s ShroudTension) Reckon() (ShroudTensionResult, error) {
	var in inputs
	in.moment("the righting moment", s.RightingMoment)
	in.must(s.RightingMoment > 0, "the righting moment must be above 0 N mm, not %g", s.RightingMoment)
	in.must(s.HalfBeam != 0, "the shroud plate stands on the centreline: it can't hold the mast sideways")
	in.positive("the distance from the mast to the shroud plate across", s.HalfBeam, "mm")
	if in.err != nil {
		return ShroudTensionResult{}, in.err
	}
	pt := KinneyShrouds * s.RightingMoment / s.HalfBeam
	return ShroudTensionResult{Shrouds: pt, Mast: KinneyStays * pt, of: s}, nil
}

// Working writes the calculation down.
func (r ShroudTensionResult) Working() []working.Step {
	return []working.Step{
		{Symbol: "PT", Meaning: "pull of all shrouds of a side", Formula: "1.5 RM30/b", Inputs: given("RM30", r.of.RightingMoment, "N mm", "b", r.of.HalfBeam, "mm"), Value: r.Shrouds, Unit: "N", Source: kinney},
		{Symbol: "Pm", Meaning: "compression of the mast", Formula: "1.85 PT", Inputs: given("PT", r.Shrouds, "N"), Value: r.Mast, Unit: "N", Source: kinney},
	}
}

// ShroudsByWeight is an old rule for traditional rigs: the shrouds of a side together
// break at the boat's weight.
//
// Returns the break load of each, N.
//
// Equation: F = m g/n.
//
// Symbols: Mass m, kg; Shrouds n of a side.
//
// Holds as a first look only: it knows neither beam nor stability.
//
// Source: an article on standing rigging for traditional rigs (published). Errors: a
// mass that is missing or not positive, fewer than 1 or more than 20 shrouds.
type ShroudsByWeight struct {
	Mass    float64
	Shrouds int
}

var byWeight = working.Source{Title: "an article on standing rigging for traditional rigs", As: working.Published, For: "the rule"}

// Reckon gives the break load of each.
func (s ShroudsByWeight) Reckon() (Required, error) {
	var in inputs
	in.positive("the mass of the boat", s.Mass, "kg")
	in.must(s.Shrouds >= 1 && s.Shrouds <= 20, "a side with %d shrouds is not covered", s.Shrouds)
	if in.err != nil {
		return Required{}, in.err
	}
	load := s.Mass * gravity / float64(s.Shrouds)
	return Required{load, []working.Step{{Symbol: "Freq", Meaning: "break load of each shroud by the weight of the boat", Formula: "m g/n", Inputs: given("m", s.Mass, "kg", "n", float64(s.Shrouds), ""), Value: load, Unit: "N", Source: byWeight}}}, nil
}
