package strength

import "chainwale/engine/working"

// Pin is a clevis pin in double shear: a plate in the middle, a cheek of the fork
// on either side, a gap between.
//
// Returns the force that shears the pin (Shear), the force at which it folds
// (Bending), its moment at a given force and the moment at which it takes a set
// across the whole section (PlasticMoment).
//
// Equation:
//
//	Shear         = 2 * 0.6 Fu * pi d^2/4
//	Moment        = F/8 (b + 4c + 2a)
//	Bending       = the F whose Moment is 1.56 Fu W,  W = pi d^3/32
//	PlasticMoment = Fy d^3/6
//
// Symbols: Diameter d, Plate b (thickness of the middle plate), Cheek a (thickness
// of each cheek), Gap c (on each side), mm; Force F, N; Yield Fy, Ultimate Fu of
// the pin, MPa; results N and N mm.
//
// Holds for a solid round pin of a ductile metal (more than 5 % elongation; the
// 1.56 is for those), the plate midway in the fork.
//
// Source: moment and shear after EN 1993-1-8:2005, table 3.10 and figure 3.11,
// without their partial factors (published); the factor 1.56 after AFFDL-TR-69-42,
// chapter 9 (memory); the plastic moment is statics (computed). Errors: a size or
// a strength that is missing, negative or not finite; a gap below 0.
type Pin struct {
	Diameter, Plate, Cheek, Gap float64
	Force                       float64
	Yield, Ultimate             float64
}

// PinResult is what a Pin holds: N and N mm.
type PinResult struct {
	Shear, Bending        float64
	Moment, PlasticMoment float64

	pin                 Pin
	area, modulus, span float64
}

const ductileBending = 1.56

var (
	enPin     = working.Source{Title: "after EN 1993-1-8", Edition: "2005", Clause: "3.13, table 3.10 and figure 3.11", As: working.Published, For: "the form of the equation, without partial factors"}
	affdlPin  = working.Source{Title: "after AFFDL-TR-69-42, chapter 9", As: working.Memory, For: "the factor 1.56 of a ductile pin"}
	plasticOf = working.Source{Title: "statics of a full plastic section", As: working.Computed, For: "the form of the equation"}
)

// Reckon gives the strengths and the moment of the pin.
func (p Pin) Reckon() (PinResult, error) {
	var in inputs
	in.positive("the diameter of the pin", p.Diameter, "mm")
	in.positive("the thickness of the plate", p.Plate, "mm")
	in.positive("the thickness of a cheek", p.Cheek, "mm")
	in.notNegative("the gap beside the plate", p.Gap, "mm")
	in.notNegative("the force on the pin", p.Force, "N")
	in.metal("pin", p.Yield, p.Ultimate)
	if in.err != nil {
		return PinResult{}, in.err
	}
	r := PinResult{pin: p, area: roundArea(p.Diameter), modulus: roundModulus(p.Diameter), span: p.Plate + 4*p.Gap + 2*p.Cheek}
	r.Shear = 2 * 0.6 * p.Ultimate * r.area
	r.Moment = p.Force / 8 * r.span
	r.Bending = 8 * ductileBending * p.Ultimate * r.modulus / r.span
	r.PlasticMoment = p.Yield * p.Diameter * p.Diameter * p.Diameter / 6
	return r, nil
}

// roundModulus is the elastic section modulus of a round bar, mm3 of mm.
func roundModulus(diameter float64) float64 { return roundArea(diameter) * diameter / 8 }

// Working writes the calculation down.
func (r PinResult) Working() []working.Step {
	p := r.pin
	return []working.Step{
		{Symbol: "A", Meaning: "area of the pin", Formula: "pi d^2/4", Inputs: given("d", p.Diameter, "mm"), Value: r.area, Unit: "mm2", Source: statics},
		{Symbol: "W", Meaning: "section modulus of the pin", Formula: "pi d^3/32", Inputs: given("d", p.Diameter, "mm"), Value: r.modulus, Unit: "mm3", Source: statics},
		{Symbol: "V", Meaning: "the pin shears on two planes", Formula: "2 * 0.6 Fu A", Inputs: given("Fu", p.Ultimate, "MPa", "A", r.area, "mm2"), Value: r.Shear, Unit: "N", Source: enPin},
		{Symbol: "M", Meaning: "moment in the pin at the force", Formula: "F/8 (b + 4c + 2a)", Inputs: given("F", p.Force, "N", "b", p.Plate, "mm", "c", p.Gap, "mm", "a", p.Cheek, "mm"), Value: r.Moment, Unit: "N mm", Source: enPin},
		{Symbol: "Fb", Meaning: "the pin folds", Formula: "8 * 1.56 Fu W / (b + 4c + 2a)", Inputs: given("Fu", p.Ultimate, "MPa", "W", r.modulus, "mm3", "b", p.Plate, "mm", "c", p.Gap, "mm", "a", p.Cheek, "mm"), Value: r.Bending, Unit: "N", Source: affdlPin},
		{Symbol: "Mp", Meaning: "the pin takes a set across its whole section", Formula: "Fy d^3/6", Inputs: given("Fy", p.Yield, "MPa", "d", p.Diameter, "mm"), Value: r.PlasticMoment, Unit: "N mm", Source: plasticOf},
	}
}
