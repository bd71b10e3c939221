package strength

import "chainwale/engine/working"

// BoltTogether is a bolt that is sheared and pulled at once.
//
// Returns Ratio, how many times both loads together the bolt holds, and Share, the
// part of it that they use.
//
// Equation:
//
//	Share = max(V/Fv + T/(1.4 Ft), T/Ft);   Ratio = 1/Share
//
// Symbols: Shear V and Pull T on the bolt, ShearStrength Fv and Tension Ft that it
// has by itself, all N.
//
// Holds for bolts in metal, both loads growing together.
//
// Source: after EN 1993-1-8:2005, table 3.4 (memory). Errors: strengths that are
// missing or not finite, loads that are negative or not finite, no load at all.
type BoltTogether struct{ Shear, Pull, ShearStrength, Tension float64 }

// BoltTogetherResult is what a BoltTogether gives.
type BoltTogetherResult struct {
	Ratio, Share float64

	of BoltTogether
}

// Reckon gives the ratio.
func (b BoltTogether) Reckon() (BoltTogetherResult, error) {
	var in inputs
	in.notNegative("the shear on the bolt", b.Shear, "N")
	in.notNegative("the pull on the bolt", b.Pull, "N")
	in.positive("the shear strength of the bolt", b.ShearStrength, "N")
	in.positive("the tension strength of the bolt", b.Tension, "N")
	in.must(b.Shear+b.Pull > 0, "the bolt has no load to be held against its strength")
	if in.err != nil {
		return BoltTogetherResult{}, in.err
	}
	r := BoltTogetherResult{of: b, Share: max(b.Shear/b.ShearStrength+b.Pull/(1.4*b.Tension), b.Pull/b.Tension)}
	r.Ratio = 1 / r.Share
	in.must(r.Ratio <= most, "the loads on the bolt (%g and %g N) are too small to be held against its strength", b.Shear, b.Pull)
	return r, in.err
}

// Working writes the calculation down.
func (r BoltTogetherResult) Working() []working.Step {
	b := r.of
	return []working.Step{
		{Symbol: "U", Meaning: "part of the bolt's strength that shear and pull use", Formula: "max(V/Fv + T/(1.4 Ft), T/Ft)", Inputs: given("V", b.Shear, "N", "Fv", b.ShearStrength, "N", "T", b.Pull, "N", "Ft", b.Tension, "N"), Value: r.Share, Source: enTogether},
		{Symbol: "k", Meaning: "how many times both loads the bolt holds", Formula: "1/U", Inputs: given("U", r.Share, ""), Value: r.Ratio, Source: statics},
	}
}
