package en1993

import (
	"chainwale/engine/standard"
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// table310bending is table 3.10, bending of the pin, with the moment of figure 3.11.
//
// Equation:
//
//	MRd     = 1.5 W fyp/gM0          F     = 8 MRd/(b + 4c + 2a)
//	MRd,ser = 0.8 W fyp/gM6,ser      F,ser = 8 MRd,ser/(b + 4c + 2a)
//
// Symbols: W = pi d^3/32, mm3; fyp of the pin, MPa; b plate, a one cheek, c the gap on
// either side, mm; gM0 1.00, of stainless 1.10; gM6,ser 1.00; F, the design load, for
// 1.5 times the wire's load at work, F,ser for the load at work itself, N.
//
// Holds for a solid round pin of steel in double shear, the plate midway in the fork,
// pulled square to the pin.
//
// Source: after EN 1993-1-8:2005, 3.13.2, table 3.10 and figure 3.11 (published); gM0 after
// EN 1993-1-4 (memory).
func table310bending() clauses.Clause {
	reads := bentPinReads()
	from := clauses.Names(reads)
	return clauses.Clause{
		Clause: "3.13.2, table 3.10, bending",
		Covers: "bending of a solid steel pin across the fork's gaps, and of one that is to come out again",
		Kind:   "landing",
		Reads:  reads,
		Facts: []clauses.Fact{
			{Name: "pin_bending", Unit: "N", Bears: true, From: from,
				Meaning: "design load at which the pin is bent, for 1.5 times the load at work",
				Reckon:  clauses.By(reckonBentPin, func(p bentPin) float64 { return p.load(p.Moment) }, "MRd", "F")},
			{Name: "pin_bending_service", Unit: "N", Bears: true, From: from,
				Meaning: "load up to which the pin stays so straight that it comes out again, for the load at work",
				Reckon:  clauses.By(reckonBentPin, func(p bentPin) float64 { return p.load(p.ServiceMoment) }, "MRd,ser", "F,ser")},
		},
	}
}

// bentPinReads are what bending reads, and bending together with shear.
func bentPinReads() []standard.Read {
	return pinReads(clauses.Number("fork_opening", "mm"), clauses.Number("fork_cheek", "mm"), clauses.Number("fitting.thickness", "mm"),
		clauses.Number("pin_yield", "MPa"), clauses.Number("pin_ultimate", "MPa"))
}

type bentPin struct {
	strength.ENPinResult
	plate, cheek, gap float64
}

func reckonBentPin(r clauses.Row) (bentPin, error) {
	if err := square(r); err != nil {
		return bentPin{}, err
	}
	p := bentPin{plate: r.Number("fitting.thickness"), cheek: r.Number("fork_cheek")}
	p.gap = (r.Number("fork_opening") - p.plate) / 2
	family, d, yield := r.Word("pin_family"), r.Number("pin_diameter"), r.Number("pin_yield")
	var err error
	p.ENPinResult, err = strength.ENPin{
		Diameter: d, Plate: p.plate, Cheek: p.cheek, Gap: p.gap, Force: 1, Yield: yield, Ultimate: r.Number("pin_ultimate"),
		GammaM0: gammaM0(family), GammaM2: gammaM2, GammaM6: gammaM6,
		// The formula also speaks of the pin's contact with its hole, which plays no part here.
		Hole: d, PlateYield: yield, Modulus: modulus(family),
	}.Reckon()
	return p, err
}

// load is the force that makes a moment in the pin.
func (p bentPin) load(moment float64) float64 { return 8 * moment / (p.plate + 4*p.gap + 2*p.cheek) }

// Working writes the calculation down.
func (p bentPin) Working() []working.Step {
	figure := after("3.13.2, figure 3.11", working.Published, "the form of the equation")
	load := func(symbol, meaning, moment string, value float64) working.Step {
		return working.Step{Symbol: symbol, Meaning: meaning, Formula: "8 " + moment + "/(b + 4c + 2a)", Unit: "N", Source: figure, Value: p.load(value),
			Inputs: clauses.Inputs(moment, value, "N mm", "b", p.plate, "mm", "c", p.gap, "mm", "a", p.cheek, "mm")}
	}
	return append(p.ENPinResult.Working(),
		load("F", "design load at which the pin is bent", "MRd", p.Moment),
		load("F,ser", "load up to which the pin comes out again", "MRd,ser", p.ServiceMoment))
}
