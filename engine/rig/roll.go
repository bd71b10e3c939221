package rig

import (
	"math"

	"chainwale/engine/working"
)

// DockRoll is what a roll at the dock does to a mast: a wake, a swell.
//
// Returns the moment about the heel athwartships, N mm, with its two parts.
//
// Equation:
//
//	M = m' g sin(phi) H^2/2 + m' (2 pi/T)^2 phi (H^3/3 + z0 H^2/2)
//
// Symbols: MassPerLength m', mast with all on it, kg/m; Height H of the mast above its
// heel, RollAxis z0 that the heel stands above the axis she rolls about, mm; Angle phi
// to one side, deg; Period T over and back, s.
//
// Holds for a mast of one mass along its length, small angles.
//
// Source: statics and harmonic motion (computed). Errors: a mass, height or period
// that is missing or not positive, an angle outside 0 to 30 deg, a negative axis.
type DockRoll struct {
	MassPerLength    float64
	Height, RollAxis float64
	Angle, Period    float64
}

// DockRollResult is the moment and its parts, N mm.
type DockRollResult struct {
	Moment, Weight, Swing float64

	of DockRoll
}

// Reckon gives the moment.
func (d DockRoll) Reckon() (DockRollResult, error) {
	var in inputs
	in.positive("the mass of the mast per metre", d.MassPerLength, "kg/m")
	in.positive("the height of the mast", d.Height, "mm")
	in.notNegative("the height of the heel above the axis of roll", d.RollAxis, "mm")
	in.must(d.Angle >= 0 && d.Angle <= 30, "a roll of 0 to 30 deg is covered, not %g", d.Angle)
	in.must(d.Period >= 0.5 && d.Period <= 30, "a roll over and back takes 0.5 to 30 s, not %g", d.Period)
	if in.err != nil {
		return DockRollResult{}, in.err
	}
	h, z, phi := d.Height/1000, d.RollAxis/1000, radians(d.Angle)
	r := DockRollResult{of: d}
	r.Weight = 1000 * d.MassPerLength * gravity * math.Sin(phi) * h * h / 2
	r.Swing = 1000 * d.MassPerLength * math.Pow(2*math.Pi/d.Period, 2) * phi * (h*h*h/3 + z*h*h/2)
	r.Moment = r.Weight + r.Swing
	return r, nil
}

// Working writes the calculation down.
func (r DockRollResult) Working() []working.Step {
	of := given("m'", r.of.MassPerLength, "kg/m", "H", r.of.Height, "mm", "phi", r.of.Angle, "deg")
	return []working.Step{
		{Symbol: "Mg", Meaning: "weight of the mast out of the upright", Formula: "m' g sin(phi) H^2/2", Inputs: of, Value: r.Weight, Unit: "N mm", Source: statics},
		{Symbol: "Ms", Meaning: "its swing", Formula: "m' (2 pi/T)^2 phi (H^3/3 + z0 H^2/2)", Inputs: append(of[:3:3], given("T", r.of.Period, "s", "z0", r.of.RollAxis, "mm")...), Value: r.Swing, Unit: "N mm", Source: statics},
		{Symbol: "Mroll", Meaning: "both together", Formula: "Mg + Ms", Value: r.Moment, Unit: "N mm", Source: statics},
	}
}

// Partners is what the partners of a keel-stepped mast take of a moment, if it is
// counted on them at all.
//
// Returns the moment that the section may bear there, and the forces at heel and
// partners for a push from above, N mm and N.
//
// Equation:
//
//	Mp = yield W holes/factor
//	R_heel = M/hp,  R_partners = F + M/hp
//
// Symbols: Modulus W of the section, mm3; Yield, MPa; Holes, the part of W that holes
// and slots leave, 0.7 if left 0; Factor, 2 if left 0; Height hp, heel to partners, mm;
// Force F and Moment M of the push about the partners, N and N mm; Wedged says that
// wedges bear and that the heel can't move sideways.
//
// Holds for a keel-stepped mast only. A deck-stepped one has no moment at its foot: no
// stays, no mast.
//
// Source: statics (computed), 0.7 and 2 (judgement). Errors: a mast that isn't wedged,
// numbers that are missing or not positive.
type Partners struct {
	Modulus, Yield, Holes, Factor float64
	Height, Force, Moment         float64
	Wedged                        bool
}

// PartnersResult is what they take.
type PartnersResult struct {
	Moment, Heel, Partners float64

	of Partners
}

const (
	holesLeave   = 0.7
	sectionSpare = 2.0
)

// Reckon gives the moment and the forces.
func (p Partners) Reckon() (PartnersResult, error) {
	if p.Holes == 0 {
		p.Holes = holesLeave
	}
	if p.Factor == 0 {
		p.Factor = sectionSpare
	}
	var in inputs
	in.must(p.Wedged, "the partners hold nothing unless wedges bear there and the heel can't move sideways")
	in.positive("the section modulus of the mast", p.Modulus, "mm3")
	in.positive("the yield strength of the mast", p.Yield, "MPa")
	in.share("the part of the section that holes leave", p.Holes)
	in.must(p.Factor >= 1 && p.Factor <= 10, "the factor on the section must lie between 1 and 10, not %g", p.Factor)
	in.positive("the height of the partners above the heel", p.Height, "mm")
	in.notNegative("the force from above", p.Force, "N")
	in.moment("the moment from above", p.Moment)
	if in.err != nil {
		return PartnersResult{}, in.err
	}
	heel := p.Moment / p.Height
	return PartnersResult{Moment: p.Yield * p.Modulus * p.Holes / p.Factor, Heel: heel, Partners: p.Force + heel, of: p}, nil
}

// Working writes the calculation down.
func (r PartnersResult) Working() []working.Step {
	return []working.Step{
		{Symbol: "Mp", Meaning: "moment that the section may bear at the partners", Formula: "Fy W holes/factor", Inputs: given("Fy", r.of.Yield, "MPa", "W", r.of.Modulus, "mm3", "holes", r.of.Holes, "", "factor", r.of.Factor, ""), Value: r.Moment, Unit: "N mm", Source: judgement},
		{Symbol: "Rh", Meaning: "force at the heel", Formula: "M/hp", Inputs: given("M", r.of.Moment, "N mm", "hp", r.of.Height, "mm"), Value: r.Heel, Unit: "N", Source: statics},
		{Symbol: "Rp", Meaning: "force at the partners", Formula: "F + M/hp", Inputs: given("F", r.of.Force, "N"), Value: r.Partners, Unit: "N", Source: statics},
	}
}
