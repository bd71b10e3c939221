package rig

import (
	"math"

	"chainwale/engine/working"
)

// GivenMoment is a righting moment at 30 deg of heel that somebody has stated.
//
// Returns it as it is, N mm.
//
// Equation: RM30 = as given.
//
// Symbols: At30, N mm; By says who states it.
//
// Holds for the boat and the load that the statement is of.
//
// Source: the statement itself. Errors: a moment that is missing, negative or not finite.
type GivenMoment struct {
	At30 float64
	By   string
}

// StabilityMoment is a righting moment at 30 deg from mass and metacentric height.
//
// Returns RM30, N mm.
//
// Equation:
//
//	RM30 = m g GM sin(30)                         small angles
//	RM30 = m g sin(30) (GM + BM tan^2(30)/2)      wall-sided, where BM is given
//
// Symbols: Mass m, kg; GM, metacentric height, mm; BM, centre of buoyancy to
// metacentre, mm, 0 if not known.
//
// Holds for a hull whose righting lever follows the sine up to 30 deg; the wall-sided
// form for one whose sides stand upright at the waterline, and gives about a quarter more.
//
// Source: hydrostatics (computed). Errors: a mass or GM that is missing, negative or
// not finite, a negative BM.
type StabilityMoment struct{ Mass, GM, BM float64 }

// InclinedMoment is a righting moment at 30 deg from an inclining test.
//
// Returns RM30 and the GM that the test shows, N mm and mm.
//
// Equation:
//
//	GM = w d/(m tan(heel))
//	RM30 = 30 m g GM sin(1)
//
// Symbols: Mass m and Weight w moved, kg; Distance d that the weight is moved across,
// mm; Heel, the change of heel it makes, deg.
//
// Holds for small angles, 0.2 to 10 deg, in flat water with slack lines; the straight
// line to 30 deg is 4.7 % above the sine.
//
// Source: hydrostatics (computed); thirty times the moment at one degree after
// Larsson and Eliasson, Principles of Yacht Design, ch. 11 (published). Errors: a
// mass, weight or distance that is missing or not positive, a heel outside 0.2 to 10
// deg, a moved weight of more than a tenth of the mass.
type InclinedMoment struct{ Mass, Weight, Distance, Heel float64 }

// RolledMoment is a righting moment at 30 deg from the period of rolling.
//
// Returns RM30 and GM, N mm and mm.
//
// Equation:
//
//	T = 2 pi k/sqrt(g GM)   so   GM = (2 pi k/T)^2/g,  k = Gyradius B
//	RM30 = m g GM/2
//
// Symbols: Mass m, kg; Beam B, mm; Period T, s, over and back; Gyradius, k over beam,
// 0.40 if left 0.
//
// Holds as a screening only: k lies between 0.38 and 0.45 of the beam, and GM goes
// with its square.
//
// Source: a rolling body (computed), the gyradius (memory). Errors: a size that is
// missing or not positive, a gyradius outside 0.3 to 0.5.
type RolledMoment struct{ Mass, Beam, Period, Gyradius float64 }

// EstimatedMoment is a righting moment at 30 deg for want of anything better.
//
// Returns RM30, N mm.
//
// Equation: RM30 = 0.01915 L^3.456 kN m, L in m.
//
// Symbols: Waterline L, mm.
//
// Holds for ordinary ballasted monohulls of 6 to 15 m waterline, not for multihulls,
// dinghies or light racers.
//
// Source: a curve through two readings of the chart in Toss, The Complete Rigger's
// Apprentice, fig. 5-24, after Skene's (published), 0.6 to 1.6 times (judgement).
// Errors: a waterline outside 6 to 15 m.
type EstimatedMoment struct{ Waterline float64 }

// RightingMoment is what a boat rights herself with at 30 deg of heel, and how far
// the number is to be trusted.
type RightingMoment struct {
	// At30 is in N mm; it may really be between Least and Most.
	At30, Least, Most float64
	// GM is the metacentric height in mm, 0 if the way does not show it.
	GM float64
	// How is "given", "mass and GM", "inclined", "roll period" or "estimated".
	How string
	// Trust says in a sentence how far to lean on it.
	Trust string
	// LoadsPlates says whether it may raise the design load of a plate: only what is
	// given or inclined does.
	LoadsPlates bool

	steps []working.Step
}

// Working writes the calculation down.
func (r RightingMoment) Working() []working.Step { return r.steps }

var (
	hydrostatics = working.Source{Title: "hydrostatics", As: working.Computed, For: "the form of the equation"}
	pyd          = working.Source{Title: "after Larsson and Eliasson, Principles of Yacht Design", Clause: "ch. 11", As: working.Published, For: "thirty times the moment at one degree"}
	gyradius     = working.Source{Title: "usual gyradius of sailing boats in roll, 0.38 to 0.45 of the beam", As: working.Memory, For: "the gyradius"}
	tossChart    = working.Source{Title: "Toss, The Complete Rigger's Apprentice", Clause: "fig. 5-24, credited to Skene's; two readings", As: working.Published, For: "the two points of the curve"}
	stated       = working.Source{Title: "as given in the plan", As: working.Published, For: "the value"}
)

// Reckon takes the moment as given.
func (g GivenMoment) Reckon() (RightingMoment, error) {
	var in inputs
	in.moment("the righting moment", g.At30)
	in.must(g.At30 > 0, "the righting moment must be above 0 N mm, not %g", g.At30)
	if in.err != nil {
		return RightingMoment{}, in.err
	}
	r := RightingMoment{At30: g.At30, How: "given", Trust: "as good as its source", LoadsPlates: true}
	if g.By != "" {
		r.Trust += ": " + g.By
	}
	r.within(0.95, 1.05)
	r.steps = []working.Step{{Symbol: "RM30", Meaning: "righting moment at 30 deg", Formula: "as given", Value: r.At30, Unit: "N mm", Source: stated}}
	return r, nil
}

// within sets what the moment may really be.
func (r *RightingMoment) within(least, most float64) { r.Least, r.Most = least*r.At30, most*r.At30 }

// Reckon gives the moment from mass and GM.
func (s StabilityMoment) Reckon() (RightingMoment, error) {
	var in inputs
	in.positive("the mass of the boat", s.Mass, "kg")
	in.positive("the metacentric height", s.GM, "mm")
	in.notNegative("the height of the metacentre above the centre of buoyancy", s.BM, "mm")
	if in.err != nil {
		return RightingMoment{}, in.err
	}
	lever := s.GM * math.Sin(radians(30))
	r := RightingMoment{GM: s.GM, How: "mass and GM", Trust: "small angles: a hull that is stiff in her sides has up to a quarter more; as good as the mass and GM are"}
	formula := "m g GM sin(30)"
	if s.BM > 0 {
		lever = math.Sin(radians(30)) * (s.GM + s.BM*math.Pow(math.Tan(radians(30)), 2)/2)
		formula, r.Trust = "m g sin(30) (GM + BM tan(30)^2/2)", "wall-sided form: about a quarter above small angles; as good as the mass, GM and BM are"
	}
	r.At30 = s.Mass * gravity * lever
	r.within(0.8, 1.25)
	r.steps = []working.Step{{Symbol: "RM30", Meaning: "righting moment at 30 deg", Formula: formula, Inputs: given("m", s.Mass, "kg", "GM", s.GM, "mm", "BM", s.BM, "mm"), Value: r.At30, Unit: "N mm", Source: hydrostatics}}
	return r, nil
}

// Reckon gives the moment that the test shows.
func (i InclinedMoment) Reckon() (RightingMoment, error) {
	var in inputs
	in.positive("the mass of the boat", i.Mass, "kg")
	in.positive("the weight moved", i.Weight, "kg")
	in.positive("the distance that the weight is moved", i.Distance, "mm")
	in.must(i.Heel >= 0.2 && i.Heel <= 10, "an inclining test holds for a heel of 0.2 to 10 deg, not %g", i.Heel)
	in.must(i.Weight <= i.Mass/10, "a weight of %g kg is more than a tenth of the boat's %g kg: it changes what it measures", i.Weight, i.Mass)
	if in.err != nil {
		return RightingMoment{}, in.err
	}
	gm := i.Weight * i.Distance / (i.Mass * math.Tan(radians(i.Heel)))
	r := RightingMoment{GM: gm, At30: 30 * i.Mass * gravity * gm * math.Sin(radians(1)), How: "inclined", LoadsPlates: true,
		Trust: "good, if the water was flat and the lines slack; 4.7 % above the sine law"}
	r.within(0.9, 1.1)
	r.steps = []working.Step{
		{Symbol: "GM", Meaning: "metacentric height", Formula: "w d/(m tan(heel))", Inputs: given("w", i.Weight, "kg", "d", i.Distance, "mm", "m", i.Mass, "kg", "heel", i.Heel, "deg"), Value: gm, Unit: "mm", Source: hydrostatics},
		{Symbol: "RM30", Meaning: "righting moment at 30 deg", Formula: "30 m g GM sin(1)", Inputs: given("m", i.Mass, "kg", "GM", gm, "mm"), Value: r.At30, Unit: "N mm", Source: pyd},
	}
	return r, nil
}

const usualGyradius = 0.40

// Reckon gives the moment that the roll hints at.
func (p RolledMoment) Reckon() (RightingMoment, error) {
	if p.Gyradius == 0 {
		p.Gyradius = usualGyradius
	}
	var in inputs
	in.positive("the mass of the boat", p.Mass, "kg")
	in.positive("the beam", p.Beam, "mm")
	in.must(p.Period >= 0.5 && p.Period <= 30, "a roll over and back takes 0.5 to 30 s, not %g", p.Period)
	in.must(p.Gyradius >= 0.3 && p.Gyradius <= 0.5, "the gyradius lies between 0.3 and 0.5 of the beam, not %g", p.Gyradius)
	if in.err != nil {
		return RightingMoment{}, in.err
	}
	gm := math.Pow(2*math.Pi*p.Gyradius*p.Beam/1000/p.Period, 2) / gravity * 1000
	r := RightingMoment{GM: gm, At30: p.Mass * gravity * gm / 2, How: "roll period", Trust: "a screening: GM is known to a quarter either way"}
	r.within(0.75, 1.25)
	r.steps = []working.Step{
		{Symbol: "GM", Meaning: "metacentric height", Formula: "(2 pi k/T)^2/g, k a part of the beam", Inputs: given("k/B", p.Gyradius, "", "B", p.Beam, "mm", "T", p.Period, "s"), Value: gm, Unit: "mm", Source: gyradius},
		{Symbol: "RM30", Meaning: "righting moment at 30 deg", Formula: "m g GM/2", Inputs: given("m", p.Mass, "kg", "GM", gm, "mm"), Value: r.At30, Unit: "N mm", Source: hydrostatics},
	}
	return r, nil
}

// The curve through 32 ft, 37 000 ft lbf and 40 ft, 80 000 ft lbf.
const (
	priorAt       = 0.019150638848069997e6
	priorExponent = 3.4556621398565732
)

// Reckon gives the estimate.
func (e EstimatedMoment) Reckon() (RightingMoment, error) {
	var in inputs
	in.must(e.Waterline >= 6000 && e.Waterline <= 15000, "the estimate holds for a waterline of 6 to 15 m, not %.4g mm", e.Waterline)
	if in.err != nil {
		return RightingMoment{}, in.err
	}
	r := RightingMoment{At30: priorAt * math.Pow(e.Waterline/1000, priorExponent), How: "estimated",
		Trust: "a guess from the length alone, 0.6 to 1.6 times: good to see whether a number can be right, never to size a plate by; not for multihulls or light racers"}
	r.within(0.6, 1.6)
	r.steps = []working.Step{{Symbol: "RM30", Meaning: "righting moment at 30 deg", Formula: "0.01915 L^3.456 kN m, L in m", Inputs: given("L", e.Waterline, "mm"), Value: r.At30, Unit: "N mm", Source: tossChart}}
	return r, nil
}
