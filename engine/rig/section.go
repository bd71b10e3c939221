package rig

import (
	"math"

	"chainwale/engine/working"
)

// MastSection is an elliptic or round tube.
//
// Returns its area, mm2, its second moments of area, mm4, and section moduli, mm3,
// across and along, and its mass per length, kg/m.
//
// Equation, semi-axes a fore and aft, b across, wall t:
//
//	A = pi (a b - (a-t)(b-t))
//	across I = pi/4 (a b^3 - (a-t)(b-t)^3), W = I/b;  along the same with a and b changed
//
// Symbols: Long and Broad, the outside sizes 2a and 2b, Wall t, mm; Density, kg/m3,
// 2700 if left 0.
//
// Holds for a tube without seam, track or holes: holes and slots leave perhaps 0.7 of W.
//
// Source: geometry (computed). Errors: sizes that are missing or not positive, a wall
// of more than half the tube.
type MastSection struct{ Long, Broad, Wall, Density float64 }

// MastSectionResult is what the section has.
type MastSectionResult struct {
	Area, AcrossI, AcrossW, AlongI, AlongW, Mass float64

	of MastSection
}

const aluminium = 2700

// Reckon gives it.
func (s MastSection) Reckon() (MastSectionResult, error) {
	if s.Density == 0 {
		s.Density = aluminium
	}
	var in inputs
	in.positive("the section fore and aft", s.Long, "mm")
	in.positive("the section across", s.Broad, "mm")
	in.positive("the wall", s.Wall, "mm")
	in.must(2*s.Wall <= min(s.Long, s.Broad), "a wall of %g mm does not go into a section of %g by %g mm", s.Wall, s.Long, s.Broad)
	in.positive("the density", s.Density, "kg/m3")
	if in.err != nil {
		return MastSectionResult{}, in.err
	}
	a, b, t := s.Long/2, s.Broad/2, s.Wall
	r := MastSectionResult{of: s, Area: math.Pi * (a*b - (a-t)*(b-t))}
	r.AcrossI = math.Pi / 4 * (a*b*b*b - (a-t)*math.Pow(b-t, 3))
	r.AlongI = math.Pi / 4 * (b*a*a*a - (b-t)*math.Pow(a-t, 3))
	r.AcrossW, r.AlongW = r.AcrossI/b, r.AlongI/a
	r.Mass = r.Area * s.Density * 1e-6
	return r, nil
}

// Working writes the calculation down.
func (r MastSectionResult) Working() []working.Step {
	of := given("a", r.of.Long/2, "mm", "b", r.of.Broad/2, "mm", "t", r.of.Wall, "mm")
	return []working.Step{
		{Symbol: "A", Meaning: "area of the mast's section", Formula: "pi (a b - (a-t)(b-t))", Inputs: of, Value: r.Area, Unit: "mm2", Source: geometry},
		{Symbol: "I", Meaning: "second moment of area across", Formula: "pi/4 (a b^3 - (a-t)(b-t)^3)", Inputs: of, Value: r.AcrossI, Unit: "mm4", Source: geometry},
		{Symbol: "W", Meaning: "section modulus across", Formula: "I/b", Value: r.AcrossW, Unit: "mm3", Source: geometry},
		{Symbol: "Wl", Meaning: "section modulus along", Formula: "pi/4 (b a^3 - (b-t)(a-t)^3)/a", Inputs: of, Value: r.AlongW, Unit: "mm3", Source: geometry},
	}
}

// Cantilever is a mast that stands in its step and partners alone.
//
// Returns the gust that uses up its section, m/s, the height at which it would fall
// under its own weight, mm, and by how much its weight makes every moment more.
//
// Equation:
//
//	Hcr = (7.8373 EI/w)^(1/3),  more = 1/(1 - (H/Hcr)^3)
//	allowable = Fy W holes/factor;  more (roll + c V^2) = allowable
//
// Symbols: Section, with I and W across; Modulus E and Yield Fy, MPa; Height H above
// the partners, mm; MassPerLength with all on it, kg/m; PerSquare c, N mm/(m/s)^2, and
// Roll, N mm, about the partners; Holes 0.7 and Factor 2 if left 0.
//
// Holds for a keel-stepped mast wedged at its partners. Clean tube and wind alone would
// say two to three times the wind: that number is not to be used.
//
// Source: Greenhill's column (computed), holes and factor (judgement). Errors: numbers
// that are missing or not positive, a mast near or above Hcr.
type Cantilever struct {
	Section         MastSectionResult
	Modulus, Yield  float64
	Height          float64
	MassPerLength   float64
	PerSquare, Roll float64
	Holes, Factor   float64
}

// CantileverResult is what the mast alone stands.
type CantileverResult struct {
	Gust, Critical, More, Allowable float64

	of Cantilever
}

// Greenhill's number, the column that falls under its own weight.
const greenhillNumber = 7.8373

// Reckon gives it. A Gust of 0 says that the roll alone uses the section up.
func (c Cantilever) Reckon() (CantileverResult, error) {
	if c.Holes == 0 {
		c.Holes = holesLeave
	}
	if c.Factor == 0 {
		c.Factor = sectionSpare
	}
	var in inputs
	in.positive("the second moment of area of the mast", c.Section.AcrossI, "mm4")
	in.positive("the modulus", c.Modulus, "MPa")
	in.positive("the yield strength of the mast", c.Yield, "MPa")
	in.positive("the height above the partners", c.Height, "mm")
	in.positive("the mass of the mast per metre", c.MassPerLength, "kg/m")
	in.positive("the moment per square of the wind", c.PerSquare, "N mm")
	in.moment("the moment of the roll", c.Roll)
	in.share("the part of the section that holes leave", c.Holes)
	in.must(c.Factor >= 1 && c.Factor <= 10, "the factor on the section must lie between 1 and 10, not %g", c.Factor)
	if in.err != nil {
		return CantileverResult{}, in.err
	}
	weight := c.MassPerLength * gravity / 1000
	r := CantileverResult{of: c, Critical: math.Cbrt(greenhillNumber * c.Modulus * c.Section.AcrossI / weight)}
	in.must(c.Height < 0.9*r.Critical, "a mast of %.1f m would fall under its own weight from %.1f m on", c.Height/1000, r.Critical/1000)
	r.More = 1 / (1 - math.Pow(c.Height/r.Critical, 3))
	r.Allowable = c.Yield * c.Section.AcrossW * c.Holes / c.Factor
	r.Gust = math.Sqrt(max(0, r.Allowable/r.More-c.Roll) / c.PerSquare)
	return r, in.err
}

// Working writes the calculation down.
func (r CantileverResult) Working() []working.Step {
	return []working.Step{
		{Symbol: "Hcr", Meaning: "a mast as tall as this falls under its own weight", Formula: "(7.8373 E I/w)^(1/3)", Inputs: given("E", r.of.Modulus, "MPa", "I", r.of.Section.AcrossI, "mm4", "m'", r.of.MassPerLength, "kg/m"), Value: r.Critical, Unit: "mm", Source: statics},
		{Symbol: "k", Meaning: "its weight makes every moment more", Formula: "1/(1 - (H/Hcr)^3)", Inputs: given("H", r.of.Height, "mm"), Value: r.More, Source: statics},
		{Symbol: "Ma", Meaning: "moment that the section may bear", Formula: "Fy W holes/factor", Inputs: given("Fy", r.of.Yield, "MPa", "W", r.of.Section.AcrossW, "mm3", "holes", r.of.Holes, "", "factor", r.of.Factor, ""), Value: r.Allowable, Unit: "N mm", Source: judgement},
		{Symbol: "V", Meaning: "gust that uses it up", Formula: "sqrt((Ma/k - Mroll)/c)", Inputs: given("Mroll", r.of.Roll, "N mm", "c", r.of.PerSquare, "N mm/(m/s)2"), Value: r.Gust, Unit: "m/s", Source: statics},
	}
}
