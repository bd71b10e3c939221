package strength

import (
	"math"

	"chainwale/engine/working"
)

// ENPinPlate is a plate at a pin by the geometry that EN 1993-1-8 asks for.
//
// Returns the least metal beyond the hole (EndNeeded, type A) and beside it
// (SideNeeded), what the plate has of both, the design loads that they come to
// (LoadByEnd, LoadBySide; 0 where the plate has less than the rule's own minimum),
// and the least thickness by type B.
//
// Equation:
//
//	EndNeeded  = F gM0/(2 t Fy) + 2 d0/3      (type A, a)
//	SideNeeded = F gM0/(2 t Fy) + d0/3        (type A, c)
//	ThicknessNeeded = 0.7 sqrt(F gM0/Fy)      (type B; the hole at most 2.5 t)
//
// Symbols: Thickness t, Width, Hole d0, End (hole's centre to the end), mm; design
// load Force F, N; Yield Fy, MPa; GammaM0, bare; results mm and N.
//
// Holds for a design load: put a factored working load in. With a wire's break load
// nearly every annealed plate fails, which means nothing.
//
// Source: after EN 1993-1-8:2005, 3.13, table 3.9 (published). Errors: a size, load or
// strength that is missing, negative or not finite; a factor below 1; a hole that
// breaks out.
type ENPinPlate struct {
	Thickness, Width, Hole, End float64
	Force, Yield, GammaM0       float64
}

// ENPinPlateResult is what an ENPinPlate gives.
type ENPinPlateResult struct {
	EndHas, EndNeeded     float64
	SideHas, SideNeeded   float64
	LoadByEnd, LoadBySide float64
	ThicknessNeeded       float64

	of ENPinPlate
}

var enGeometry = working.Source{Title: "after EN 1993-1-8", Edition: "2005", Clause: "3.13, table 3.9", As: working.Published, For: "the form of the equation"}

// Reckon gives distances and loads.
func (p ENPinPlate) Reckon() (ENPinPlateResult, error) {
	var in inputs
	in.positive("the thickness of the plate", p.Thickness, "mm")
	in.positive("the width of the plate", p.Width, "mm")
	in.positive("the hole", p.Hole, "mm")
	in.positive("the end distance", p.End, "mm")
	in.notNegative("the design load", p.Force, "N")
	in.positive("the yield strength of the plate", p.Yield, "MPa")
	in.must(p.GammaM0 >= 1 && p.GammaM0 <= 3, "a partial factor of %g is none: 1 to 3", p.GammaM0)
	in.must(p.Hole < p.Width, "the hole (%g mm) is not smaller than the plate is wide (%g mm)", p.Hole, p.Width)
	in.must(p.Hole/2 < p.End, "the hole (%g mm) breaks out of the end, %g mm from its centre", p.Hole, p.End)
	if in.err != nil {
		return ENPinPlateResult{}, in.err
	}
	strip := 2 * p.Thickness * p.Yield / p.GammaM0
	r := ENPinPlateResult{of: p, EndHas: p.End - p.Hole/2, SideHas: (p.Width - p.Hole) / 2}
	r.EndNeeded = p.Force/strip + 2*p.Hole/3
	r.SideNeeded = p.Force/strip + p.Hole/3
	r.LoadByEnd = max(0, (r.EndHas-2*p.Hole/3)*strip)
	r.LoadBySide = max(0, (r.SideHas-p.Hole/3)*strip)
	r.ThicknessNeeded = 0.7 * math.Sqrt(p.Force*p.GammaM0/p.Yield)
	return r, nil
}

// Working writes the calculation down.
func (r ENPinPlateResult) Working() []working.Step {
	p := r.of
	in := given("F", p.Force, "N", "gM0", p.GammaM0, "", "t", p.Thickness, "mm", "Fy", p.Yield, "MPa", "d0", p.Hole, "mm")
	return []working.Step{
		{Symbol: "a,min", Meaning: "metal beyond the hole that type A asks for", Formula: "F gM0/(2 t Fy) + 2 d0/3", Inputs: in, Value: r.EndNeeded, Unit: "mm", Source: enGeometry},
		{Symbol: "c,min", Meaning: "metal beside the hole that type A asks for", Formula: "F gM0/(2 t Fy) + d0/3", Inputs: in, Value: r.SideNeeded, Unit: "mm", Source: enGeometry},
		{Symbol: "Fa", Meaning: "load that the metal beyond the hole comes to", Formula: "(a - 2 d0/3) 2 t Fy/gM0, at least 0", Inputs: append(given("a", r.EndHas, "mm"), in[1:]...), Value: r.LoadByEnd, Unit: "N", Source: enGeometry},
		{Symbol: "Fc", Meaning: "load that the metal beside the hole comes to", Formula: "(c - d0/3) 2 t Fy/gM0, at least 0", Inputs: append(given("c", r.SideHas, "mm"), in[1:]...), Value: r.LoadBySide, Unit: "N", Source: enGeometry},
		{Symbol: "t,min", Meaning: "thickness that type B asks for", Formula: "0.7 sqrt(F gM0/Fy)", Inputs: given("F", p.Force, "N", "gM0", p.GammaM0, "", "Fy", p.Yield, "MPa"), Value: r.ThicknessNeeded, Unit: "mm", Source: enGeometry},
	}
}
