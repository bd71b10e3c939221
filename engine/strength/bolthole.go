package strength

import "chainwale/engine/working"

// BoltHole is a bolt that presses on the metal of the plate beyond it.
//
// Returns the forces in N at which the plate gives way at the hole: EN (bearing,
// with the distances in it), Crush and TearOut (AISC bearing and tear-out), and
// Lowest of the three.
//
// Equation:
//
//	EN      = k1 ab fu d t;  ab = min(e1/(3 d0), p1/(3 d0) - 1/4, fub/fu, 1)
//	          k1 = min(2.8 e2/d0 - 1.7, 2.5);  stainless: 0.5 Fy + 0.6 Fu, at most Fu, for fu
//	Crush   = 2.4 d t Fu
//	TearOut = 1.2 lc t Fu,  lc = e1 - d0/2, at an inner bolt p1 - d0 if that is less
//
// Symbols: Thickness t, Bolt d, Hole d0, End e1 (hole's centre to the end, along
// the force), Side e2 (to the side), Pitch p1 (to the next bolt along the force, 0
// if there is none), mm; Yield, Ultimate of the plate, BoltUltimate fub, MPa; N.
//
// Holds for a bolt in a standard round hole, one shear plane, pulled towards the
// end. Ultimate, without partial factors.
//
// Source: after EN 1993-1-8:2005, table 3.4 (published; the stainless form after
// EN 1993-1-4, memory); AISC 360-10, J3.10 (published). Errors: a size or strength
// that is missing, negative or not finite; a bolt larger than its hole; a hole that
// breaks out; a side distance for which k1 is not above 0.
type BoltHole struct {
	Thickness, Bolt, Hole, End, Side, Pitch float64
	Yield, Ultimate, BoltUltimate           float64
	Stainless                               bool
}

// BoltHoleResult is what a BoltHole holds, N.
type BoltHoleResult struct {
	EN, Crush, TearOut, Lowest float64
	// Governs is "bearing", "crush" or "tear-out".
	Governs string

	of                        BoltHole
	stress, edge, end, beyond float64
}

var (
	enBearing  = working.Source{Title: "after EN 1993-1-8", Edition: "2005", Clause: "table 3.4", As: working.Published, For: "bearing, without partial factors"}
	enLess     = working.Source{Title: "after EN 1993-1-4", As: working.Memory, For: "the reduced strength of stainless in bearing"}
	aiscJ3Hole = working.Source{Title: "after AISC 360", Edition: "2010", Clause: "J3.10", As: working.Published, For: "bearing and tear-out, without factors"}
)

// Reckon gives the forces.
func (b BoltHole) Reckon() (BoltHoleResult, error) {
	if err := b.check(); err != nil {
		return BoltHoleResult{}, err
	}
	r := BoltHoleResult{of: b, stress: b.Ultimate, beyond: b.End - b.Hole/2, end: b.End / (3 * b.Hole)}
	if b.Stainless {
		r.stress = min(0.5*b.Yield+0.6*b.Ultimate, b.Ultimate)
	}
	if b.Pitch > 0 {
		r.beyond = min(r.beyond, b.Pitch-b.Hole)
		r.end = min(r.end, b.Pitch/(3*b.Hole)-0.25)
	}
	r.end = min(r.end, b.BoltUltimate/b.Ultimate, 1)
	r.edge = min(2.8*b.Side/b.Hole-1.7, 2.5)
	r.EN = r.edge * r.end * r.stress * b.Bolt * b.Thickness
	r.Crush = 2.4 * b.Bolt * b.Thickness * b.Ultimate
	r.TearOut = 1.2 * r.beyond * b.Thickness * b.Ultimate
	r.Lowest, r.Governs = leastOf(named{"bearing", r.EN}, named{"crush", r.Crush}, named{"tear-out", r.TearOut})
	return r, nil
}

func (b BoltHole) check() error {
	var in inputs
	in.positive("the thickness of the plate", b.Thickness, "mm")
	in.positive("the bolt", b.Bolt, "mm")
	in.positive("the hole", b.Hole, "mm")
	in.positive("the end distance", b.End, "mm")
	in.positive("the side distance", b.Side, "mm")
	in.notNegative("the pitch", b.Pitch, "mm")
	in.metal("plate", b.Yield, b.Ultimate)
	in.positive("the ultimate strength of the bolt", b.BoltUltimate, "MPa")
	if !(b.Bolt <= b.Hole) {
		in.refuse("the bolt (%g mm) is larger than its hole (%g mm)", b.Bolt, b.Hole)
	}
	if !(b.Hole/2 < b.End) {
		in.refuse("the hole (%g mm) breaks out of the end, %g mm from its centre", b.Hole, b.End)
	}
	if !(b.Hole/2 < b.Side) {
		in.refuse("the hole (%g mm) breaks out of the side, %g mm from its centre", b.Hole, b.Side)
	}
	if !(2.8*b.Side > 1.7*b.Hole) {
		in.refuse("a side distance of %g mm leaves nothing beside a hole of %g mm", b.Side, b.Hole)
	}
	if !(b.Pitch == 0 || b.Pitch > b.Hole) {
		in.refuse("the next hole, %g mm away, runs into this one (%g mm)", b.Pitch, b.Hole)
	}
	return in.err
}

// Working writes the calculation down.
func (r BoltHoleResult) Working() []working.Step {
	b := r.of
	stressFormula, stressSource := "Fu", enBearing
	if b.Stainless {
		stressFormula, stressSource = "min(0.5 Fy + 0.6 Fu, Fu)", enLess
	}
	return []working.Step{
		{Symbol: "k1", Meaning: "what the side distance gives", Formula: "min(2.8 e2/d0 - 1.7, 2.5)", Inputs: given("e2", b.Side, "mm", "d0", b.Hole, "mm"), Value: r.edge, Source: enBearing},
		{Symbol: "ab", Meaning: "what end distance and pitch give", Formula: "min(e1/(3 d0), p1/(3 d0) - 1/4, fub/Fu, 1)", Inputs: given("e1", b.End, "mm", "p1", b.Pitch, "mm", "d0", b.Hole, "mm", "fub", b.BoltUltimate, "MPa", "Fu", b.Ultimate, "MPa"), Value: r.end, Source: enBearing},
		{Symbol: "fu", Meaning: "strength of the plate in bearing", Formula: stressFormula, Inputs: given("Fy", b.Yield, "MPa", "Fu", b.Ultimate, "MPa"), Value: r.stress, Unit: "MPa", Source: stressSource},
		{Symbol: "Fb", Meaning: "the hole gives way", Formula: "k1 ab fu d t", Inputs: given("k1", r.edge, "", "ab", r.end, "", "fu", r.stress, "MPa", "d", b.Bolt, "mm", "t", b.Thickness, "mm"), Value: r.EN, Unit: "N", Source: enBearing},
		{Symbol: "Rb", Meaning: "the metal before the bolt crushes", Formula: "2.4 d t Fu", Inputs: given("d", b.Bolt, "mm", "t", b.Thickness, "mm", "Fu", b.Ultimate, "MPa"), Value: r.Crush, Unit: "N", Source: aiscJ3Hole},
		{Symbol: "Rt", Meaning: "the bolt tears out", Formula: "1.2 lc t Fu", Inputs: given("lc", r.beyond, "mm", "t", b.Thickness, "mm", "Fu", b.Ultimate, "MPa"), Value: r.TearOut, Unit: "N", Source: aiscJ3Hole},
		{Symbol: "R", Meaning: "the lowest of them: " + r.Governs, Formula: "min(Fb, Rb, Rt)", Inputs: given("Fb", r.EN, "N", "Rb", r.Crush, "N", "Rt", r.TearOut, "N"), Value: r.Lowest, Unit: "N", Source: statics},
	}
}
