package rig

import "chainwale/engine/working"

// SparBending is the bending moment that a mast's section may bear.
//
// Returns the moment, N mm.
//
// Equation: M = yield W holes/factor.
//
// Symbols: Modulus W of the section, mm3; Yield, MPa; Holes, the part of W that holes
// and slots leave, 0.7 if left 0; Factor, 2 if left 0.
//
// Holds for a section without welds near; beside one the yield is far less.
//
// Source: statics (computed), 0.7 and 2 (judgement). Errors: numbers that are missing or
// not positive.
type SparBending struct{ Modulus, Yield, Holes, Factor float64 }

// SparBendingResult is the moment, N mm.
type SparBendingResult struct {
	Moment float64

	of SparBending
}

// Reckon gives the moment.
func (s SparBending) Reckon() (SparBendingResult, error) {
	orUsual(&s.Holes, holesLeave)
	orUsual(&s.Factor, sectionSpare)
	var in inputs
	in.positive("the modulus of the section", s.Modulus, "mm3")
	in.positive("the yield of the spar", s.Yield, "MPa")
	in.must(s.Holes > 0 && s.Holes <= 1, "holes leave a part of the section, above 0 and up to 1, not %g", s.Holes)
	in.must(s.Factor >= 1 && s.Factor <= 10, "a factor of 1 to 10 is covered, not %g", s.Factor)
	if in.err != nil {
		return SparBendingResult{}, in.err
	}
	return SparBendingResult{s.Yield * s.Modulus * s.Holes / s.Factor, s}, nil
}

// Working writes the calculation down.
func (r SparBendingResult) Working() []working.Step {
	return []working.Step{{Symbol: "Mb", Meaning: "bending moment that the section may bear", Formula: "Fy W holes/factor",
		Inputs: given("Fy", r.of.Yield, "MPa", "W", r.of.Modulus, "mm3", "holes", r.of.Holes, "", "factor", r.of.Factor, ""), Value: r.Moment, Unit: "N mm", Source: judgement}}
}
