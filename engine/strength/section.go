package strength

import (
	"math"

	"chainwale/engine/working"
)

// Section is the section of a strip at which it is first held fast, under a wire
// that leads out of line with it.
//
// Returns how much of its yield the section uses: Elastic, the stress at the worst
// corner over yield; Plastic, tension and moments of the full plastic section
// together. Above 1 it takes a set. Also the tension and both moments.
//
// Equation:
//
//	N  = F cos(out) cos(in)
//	Mo = F sin(out) lever + N offset       out of the strip's plane, W = b t^2/6
//	Mi = F sin(in) cos(out) lever + N across     in its plane
//	Elastic = (N/A + Mo/Wo + Mi/Wi)/Fy,  b = w - d0, A = b t
//	Plastic = (N/(A Fy))^2 + Mo/(b t^2/4 Fy) + Mi/(Zi Fy)
//	Wi = t (w^3 - d0^3)/(6 w),  Zi = t (w^2 - d0^2)/4
//
// Symbols: Thickness t, Width w, Hole d0 at the section (0 for none), Lever from
// the pin to the section, Offset of the load line from the mid-plane and Across
// from the centre line, mm; Out and In, the wire's angle out of the strip's plane
// and within it, deg; Force F, N; Yield Fy, MPa; results bare, N and N mm.
//
// Holds for a flat strip between its pin and the first point that holds it: the
// top bolt or the host's edge, not a slot full of sealant. A fork turns on its pin,
// so an angle in the plane bends the strip no more than the force across it does;
// toggle or not, an angle out of the plane bends it.
//
// Source: elastic stress is statics (computed); the plastic sum after EN 1993-1-1,
// 6.2.9.1, with the moments added, which is on the safe side (memory). Errors: a
// size, strength or angle outside its bounds; angles of 60 degrees and more.
type Section struct {
	Thickness, Width, Hole float64
	Force, Lever           float64
	Out, In                float64
	Offset, Across         float64
	Yield                  float64
}

// SectionResult is what a Section uses of its yield.
type SectionResult struct {
	Elastic, Plastic    float64
	Tension             float64
	OutMoment, InMoment float64

	of                                           Section
	area, outModulus, inModulus, outFull, inFull float64
}

// Reckon gives the uses.
func (s Section) Reckon() (SectionResult, error) {
	if err := s.check(); err != nil {
		return SectionResult{}, err
	}
	r := SectionResult{of: s}
	b := s.Width - s.Hole
	r.area, r.outModulus, r.outFull = b*s.Thickness, b*s.Thickness*s.Thickness/6, b*s.Thickness*s.Thickness/4
	r.inModulus = s.Thickness * (math.Pow(s.Width, 3) - math.Pow(s.Hole, 3)) / (6 * s.Width)
	r.inFull = s.Thickness * (s.Width*s.Width - s.Hole*s.Hole) / 4

	out, within := radians(math.Abs(s.Out)), radians(math.Abs(s.In))
	r.Tension = s.Force * math.Cos(out) * math.Cos(within)
	r.OutMoment = s.Force*math.Sin(out)*s.Lever + r.Tension*math.Abs(s.Offset)
	r.InMoment = s.Force*math.Sin(within)*math.Cos(out)*s.Lever + r.Tension*math.Abs(s.Across)
	r.Elastic = (r.Tension/r.area + r.OutMoment/r.outModulus + r.InMoment/r.inModulus) / s.Yield
	r.Plastic = math.Pow(r.Tension/(r.area*s.Yield), 2) + r.OutMoment/(r.outFull*s.Yield) + r.InMoment/(r.inFull*s.Yield)
	return r, nil
}

func (s Section) check() error {
	var in inputs
	in.positive("the thickness of the strip", s.Thickness, "mm")
	in.positive("the width of the strip", s.Width, "mm")
	in.notNegative("the hole", s.Hole, "mm")
	in.notNegative("the force", s.Force, "N")
	in.notNegative("the lever", s.Lever, "mm")
	in.finite("the offset of the load from the mid-plane", s.Offset, "mm")
	in.finite("the offset of the load from the centre line", s.Across, "mm")
	in.positive("the yield strength of the strip", s.Yield, "MPa")
	in.must(s.Hole < s.Width, "the hole (%g mm) is not smaller than the strip is wide (%g mm)", s.Hole, s.Width)
	in.must(math.Abs(s.Out) < 60, "an angle of %g deg out of the strip's plane is not covered: at 60 deg and more it is no strip in tension", s.Out)
	in.must(math.Abs(s.In) < 60, "an angle of %g deg in the strip's plane is not covered: at 60 deg and more it is no strip in tension", s.In)
	return in.err
}

// Working writes the calculation down.
func (r SectionResult) Working() []working.Step {
	s := r.of
	return []working.Step{
		{Symbol: "A", Meaning: "area of the section", Formula: "(w - d0) t", Inputs: given("w", s.Width, "mm", "d0", s.Hole, "mm", "t", s.Thickness, "mm"), Value: r.area, Unit: "mm2", Source: statics},
		{Symbol: "N", Meaning: "tension in the strip", Formula: "F cos(out) cos(in)", Inputs: given("F", s.Force, "N", "out", s.Out, "deg", "in", s.In, "deg"), Value: r.Tension, Unit: "N", Source: statics},
		{Symbol: "Mo", Meaning: "moment out of the strip's plane", Formula: "F sin(out) lever + N offset", Inputs: given("F", s.Force, "N", "out", s.Out, "deg", "lever", s.Lever, "mm", "N", r.Tension, "N", "offset", s.Offset, "mm"), Value: r.OutMoment, Unit: "N mm", Source: statics},
		{Symbol: "Mi", Meaning: "moment in the strip's plane", Formula: "F sin(in) cos(out) lever + N across", Inputs: given("F", s.Force, "N", "in", s.In, "deg", "out", s.Out, "deg", "lever", s.Lever, "mm", "N", r.Tension, "N", "across", s.Across, "mm"), Value: r.InMoment, Unit: "N mm", Source: statics},
		{Symbol: "ue", Meaning: "part of its yield that the worst corner uses", Formula: "(N/A + Mo/Wo + Mi/Wi)/Fy", Inputs: given("N", r.Tension, "N", "A", r.area, "mm2", "Mo", r.OutMoment, "N mm", "Wo", r.outModulus, "mm3", "Mi", r.InMoment, "N mm", "Wi", r.inModulus, "mm3", "Fy", s.Yield, "MPa"), Value: r.Elastic, Source: statics},
		{Symbol: "up", Meaning: "part of its full plastic strength that the section uses", Formula: "(N/(A Fy))^2 + Mo/(Zo Fy) + Mi/(Zi Fy)", Inputs: given("N", r.Tension, "N", "A", r.area, "mm2", "Mo", r.OutMoment, "N mm", "Zo", r.outFull, "mm3", "Mi", r.InMoment, "N mm", "Zi", r.inFull, "mm3", "Fy", s.Yield, "MPa"), Value: r.Plastic, Source: enPlastic},
	}
}
