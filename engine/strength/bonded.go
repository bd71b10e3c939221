package strength

import "chainwale/engine/working"

// Bonded is a plate or knee that is glassed in: held by laminate bonded over it.
//
// Returns the ultimate load in N that the bond carries in shear (Capacity) and the
// strength it was reckoned with, MPa.
//
// Equation:
//
//	Capacity = area ts,  ts = 22.5 - 17.5 g unless given
//
// Symbols: Area of the bond over all faces, mm2; GlassShare g by mass, 0.2 to 0.65;
// ShearStrength ts between the layers, MPa, 0 for the default; Capacity N.
//
// Holds for a bond that is sound all over and loaded along its faces, not peeled.
// Advisory: what a bond is worth after years can't be reckoned, only seen, and not
// well. Use a factor of 3 and more on the ultimate.
//
// Source: default after ISO 12215-5, annex C, between the layers of chopped-strand
// laminate (memory); area times stress is statics (computed). Errors: an area, share
// or strength outside its bounds.
type Bonded struct{ Area, GlassShare, ShearStrength float64 }

// BondedResult is what a Bonded carries.
type BondedResult struct {
	Capacity, ShearStrength float64

	of Bonded
}

// Reckon gives the load.
func (b Bonded) Reckon() (BondedResult, error) {
	var in inputs
	in.positive("the bonded area", b.Area, "mm2")
	in.notNegative("the shear strength between the layers", b.ShearStrength, "MPa")
	if b.ShearStrength == 0 {
		in.must(b.GlassShare >= 0.2 && b.GlassShare <= 0.65, "a laminate with %g of glass by mass is not covered: 0.2 to 0.65", b.GlassShare)
	}
	if in.err != nil {
		return BondedResult{}, in.err
	}
	r := BondedResult{of: b, ShearStrength: b.ShearStrength}
	if r.ShearStrength == 0 {
		r.ShearStrength = 22.5 - 17.5*b.GlassShare
	}
	r.Capacity = b.Area * r.ShearStrength
	return r, nil
}

// Working writes the calculation down.
func (r BondedResult) Working() []working.Step {
	b := r.of
	shear := working.Step{Symbol: "ts", Meaning: "shear strength between the layers", Formula: "22.5 - 17.5 g", Inputs: given("g", b.GlassShare, ""), Value: r.ShearStrength, Unit: "MPa", Source: isoLaminate}
	if b.ShearStrength > 0 {
		shear.Formula, shear.Inputs, shear.Source = "given", nil, givenStrength
	}
	return []working.Step{shear, {Symbol: "Fs", Meaning: "the bond shears", Formula: "area ts", Inputs: given("area", b.Area, "mm2", "ts", r.ShearStrength, "MPa"), Value: r.Capacity, Unit: "N", Source: statics}}
}
