package strength

import (
	"math"

	"chainwale/engine/working"
)

// Strip is a flat strip in tension, perhaps with a hole and perhaps pulled off its
// mid-plane.
//
// Returns the tensions in N at which the whole section yields (Gross), the section
// at the hole breaks (Net), the outer face of it first yields under tension and
// moment (FirstYield), and the section has yielded through and through (Plastic).
//
// Equation, with A, W of the section at the hole:
//
//	Gross      = Fy w t
//	Net        = Fu (w - d0) t
//	FirstYield = Fy/(1/A + e/W),  A = (w - d0) t,  W = (w - d0) t^2/6
//	Plastic    = Fy A (sqrt(k^2 + 1) - k),  k = 2 e/t
//
// Symbols: Thickness t, Width w, Hole d0 (0 for none), Offset e of the load from
// the mid-plane, mm; Yield Fy, Ultimate Fu, MPa; results N.
//
// Holds for a solid rectangular section; bending is out of the strip's plane.
// Annealed strip that is pulled off its plane straightens and doesn't snap: the
// harm is fatigue at the bend.
//
// Source: gross and net after EN 1993-1-1, 6.2.3, without factors (memory); tension
// with moment of a plastic rectangle after EN 1993-1-1, 6.2.9.1 (memory), closed
// form by statics (computed). Errors: a size or strength that is missing, negative
// or not finite; a hole as large as the strip.
type Strip struct {
	Thickness, Width, Hole, Offset float64
	Yield, Ultimate                float64
}

// StripResult is what a Strip holds, N.
type StripResult struct {
	Gross, Net, FirstYield, Plastic float64

	strip         Strip
	area, modulus float64
	ratio         float64
}

var (
	enTension = working.Source{Title: "after EN 1993-1-1", Clause: "6.2.3", As: working.Memory, For: "the form of the equation, without factors"}
	enPlastic = working.Source{Title: "after EN 1993-1-1", Clause: "6.2.9.1", As: working.Memory, For: "tension with moment of a plastic rectangle"}
)

// Reckon gives the tensions.
func (s Strip) Reckon() (StripResult, error) {
	var in inputs
	in.positive("the thickness of the strip", s.Thickness, "mm")
	in.positive("the width of the strip", s.Width, "mm")
	in.notNegative("the hole", s.Hole, "mm")
	in.notNegative("the offset of the load", s.Offset, "mm")
	in.metal("strip", s.Yield, s.Ultimate)
	in.must(s.Hole < s.Width, "the hole (%g mm) is not smaller than the strip is wide (%g mm)", s.Hole, s.Width)
	if in.err != nil {
		return StripResult{}, in.err
	}
	width := s.Width - s.Hole
	r := StripResult{strip: s, area: width * s.Thickness, modulus: width * s.Thickness * s.Thickness / 6, ratio: 2 * s.Offset / s.Thickness}
	r.Gross = s.Yield * s.Width * s.Thickness
	r.Net = s.Ultimate * r.area
	r.FirstYield = s.Yield / (1/r.area + s.Offset/r.modulus)
	// sqrt(k^2+1) - k, written so that a large offset loses no figures.
	r.Plastic = s.Yield * r.area / (math.Hypot(r.ratio, 1) + r.ratio)
	return r, nil
}

// Working writes the calculation down.
func (r StripResult) Working() []working.Step {
	s := r.strip
	return []working.Step{
		{Symbol: "A", Meaning: "section at the hole", Formula: "(w - d0) t", Inputs: given("w", s.Width, "mm", "d0", s.Hole, "mm", "t", s.Thickness, "mm"), Value: r.area, Unit: "mm2", Source: statics},
		{Symbol: "W", Meaning: "section modulus at the hole", Formula: "(w - d0) t^2/6", Inputs: given("w", s.Width, "mm", "d0", s.Hole, "mm", "t", s.Thickness, "mm"), Value: r.modulus, Unit: "mm3", Source: statics},
		{Symbol: "Ng", Meaning: "the whole section yields", Formula: "Fy w t", Inputs: given("Fy", s.Yield, "MPa", "w", s.Width, "mm", "t", s.Thickness, "mm"), Value: r.Gross, Unit: "N", Source: enTension},
		{Symbol: "Nu", Meaning: "the section at the hole breaks", Formula: "Fu A", Inputs: given("Fu", s.Ultimate, "MPa", "A", r.area, "mm2"), Value: r.Net, Unit: "N", Source: enTension},
		{Symbol: "N1", Meaning: "one face begins to yield", Formula: "Fy/(1/A + e/W)", Inputs: given("Fy", s.Yield, "MPa", "A", r.area, "mm2", "e", s.Offset, "mm", "W", r.modulus, "mm3"), Value: r.FirstYield, Unit: "N", Source: statics},
		{Symbol: "k", Meaning: "offset against the thickness", Formula: "2 e/t", Inputs: given("e", s.Offset, "mm", "t", s.Thickness, "mm"), Value: r.ratio, Source: statics},
		{Symbol: "Np", Meaning: "the section has yielded through and through", Formula: "Fy A (sqrt(k^2 + 1) - k)", Inputs: given("Fy", s.Yield, "MPa", "A", r.area, "mm2", "k", r.ratio, ""), Value: r.Plastic, Unit: "N", Source: enPlastic},
	}
}
