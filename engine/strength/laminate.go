package strength

import "chainwale/engine/working"

// LaminateBolts is a plate bolted to solid glass-fibre laminate.
//
// Returns the ultimate loads in N at which the bolts crush the laminate beside them
// (Bearing), and at which their washers or the backing are pulled through it
// (PullThrough); and the strengths they were reckoned with, MPa.
//
// Equation:
//
//	Bearing     = n sb d t,        sb = 150 g + 72 unless given
//	PullThrough = n pi dw t tu,    tu = 80 g + 38 unless given
//
// Symbols: Thickness t of the laminate (solid, without core), Bolt d, Washer dw,
// mm; Count n; GlassShare g by mass, 0.2 to 0.65, for the default of chopped-strand
// mat; BearingStrength sb, PunchStrength tu, MPa, 0 for the default. Results N.
//
// Holds for solid laminate with 3 d to the end, 2 d to the side and 4 d between
// bolts, so that it crushes and doesn't tear. Advisory: no text of a standard
// stands behind the defaults. Use a factor of 3 on the ultimate.
//
// Source: defaults after ISO 12215-5, annex C (memory); bearing and punching by
// statics (computed). Errors: a size, count or share outside its bounds.
type LaminateBolts struct {
	Thickness, Bolt, Washer        float64
	Count                          int
	GlassShare                     float64
	BearingStrength, PunchStrength float64
}

// LaminateBoltsResult is what a LaminateBolts holds.
type LaminateBoltsResult struct {
	Bearing, PullThrough           float64
	BearingStrength, PunchStrength float64

	of LaminateBolts
}

var (
	isoLaminate   = working.Source{Title: "after ISO 12215-5", Clause: "annex C", As: working.Memory, For: "strength of chopped-strand laminate by its glass"}
	givenStrength = working.Source{Title: "given", As: working.Judgement, For: "strength of the laminate"}
)

// Reckon gives the loads.
func (b LaminateBolts) Reckon() (LaminateBoltsResult, error) {
	var in inputs
	in.positive("the thickness of the laminate", b.Thickness, "mm")
	in.positive("the bolt", b.Bolt, "mm")
	in.positive("the washer", b.Washer, "mm")
	in.must(b.Washer >= b.Bolt, "the washer (%g mm) is smaller than the bolt (%g mm)", b.Washer, b.Bolt)
	in.must(b.Count >= 1 && b.Count <= mostBolts, "%d bolts hold nothing that can be reckoned", b.Count)
	in.notNegative("the bearing strength of the laminate", b.BearingStrength, "MPa")
	in.notNegative("the punching strength of the laminate", b.PunchStrength, "MPa")
	if b.BearingStrength == 0 || b.PunchStrength == 0 {
		in.must(b.GlassShare >= 0.2 && b.GlassShare <= 0.65, "a laminate with %g of glass by mass is not covered: 0.2 to 0.65", b.GlassShare)
	}
	if in.err != nil {
		return LaminateBoltsResult{}, in.err
	}
	r := LaminateBoltsResult{of: b, BearingStrength: b.BearingStrength, PunchStrength: b.PunchStrength}
	if r.BearingStrength == 0 {
		r.BearingStrength = 150*b.GlassShare + 72
	}
	if r.PunchStrength == 0 {
		r.PunchStrength = 80*b.GlassShare + 38
	}
	n := float64(b.Count)
	r.Bearing = n * r.BearingStrength * b.Bolt * b.Thickness
	r.PullThrough = n * roundEdge(b.Washer) * b.Thickness * r.PunchStrength
	return r, nil
}

// Working writes the calculation down.
func (r LaminateBoltsResult) Working() []working.Step {
	b, n := r.of, float64(r.of.Count)
	bearing := working.Step{Symbol: "sb", Meaning: "bearing strength of the laminate", Formula: "150 g + 72", Inputs: given("g", b.GlassShare, ""), Value: r.BearingStrength, Unit: "MPa", Source: isoLaminate}
	if b.BearingStrength > 0 {
		bearing.Formula, bearing.Inputs, bearing.Source = "given", nil, givenStrength
	}
	punch := working.Step{Symbol: "tu", Meaning: "punching strength of the laminate", Formula: "80 g + 38", Inputs: given("g", b.GlassShare, ""), Value: r.PunchStrength, Unit: "MPa", Source: isoLaminate}
	if b.PunchStrength > 0 {
		punch.Formula, punch.Inputs, punch.Source = "given", nil, givenStrength
	}
	return []working.Step{
		bearing,
		{Symbol: "Fb", Meaning: "the laminate crushes beside the bolts", Formula: "n sb d t", Inputs: given("n", n, "", "sb", r.BearingStrength, "MPa", "d", b.Bolt, "mm", "t", b.Thickness, "mm"), Value: r.Bearing, Unit: "N", Source: statics},
		punch,
		{Symbol: "Fp", Meaning: "the washers are pulled through", Formula: "n pi dw t tu", Inputs: given("n", n, "", "dw", b.Washer, "mm", "t", b.Thickness, "mm", "tu", r.PunchStrength, "MPa"), Value: r.PullThrough, Unit: "N", Source: statics},
	}
}
