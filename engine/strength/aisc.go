package strength

import "chainwale/engine/working"

// AISCPinPlate is a pin-connected plate by the AISC rules for such members.
//
// Returns nominal strengths in N: Tension on the effective net area, Shear on the
// effective area beyond the pin, Bearing (a yield limit), GrossYield; and the
// least end distance and width that the rules ask for.
//
// Equation:
//
//	be = min(2 t + 16, b)          b from the hole's edge to the side
//	Tension    = Fu 2 t be                     (D5-1)
//	Shear      = 0.6 Fu 2 t (a + d/2)          (D5-2), a from the hole's edge to the end
//	Bearing    = 1.8 Fy d t                    (J7-1)
//	GrossYield = Fy w t                        (D2-1)
//	EndNeeded = 1.33 be;  WidthNeeded = 2 be + d
//
// Symbols: Thickness t, Width w, Hole, Pin d, End (hole's centre to the end), mm;
// Yield Fy, Ultimate Fu, MPa; strengths N, the rest mm.
//
// Holds for a hole on the centre line. The 16 mm makes be the side itself in
// nearly every plate of a boat. Shear is more hopeful than the other methods.
//
// Source: after AISC 360-10, D5, J7, D2 and Design Example D.7 (published). Errors: a
// size that is missing, negative or not finite, a pin larger than the hole, a hole
// that breaks out.
type AISCPinPlate struct {
	Thickness, Width, Hole, Pin, End float64
	Yield, Ultimate                  float64
}

// AISCPinPlateResult is what an AISCPinPlate holds.
type AISCPinPlateResult struct {
	Tension, Shear, Bearing, GrossYield float64
	// Effective is be, EndNeeded and WidthNeeded what the rules ask for, mm. EndHas is a.
	Effective, EndHas, EndNeeded, WidthNeeded float64

	plate AISCPinPlate
	side  float64
}

var aiscD5 = working.Source{Title: "after AISC 360", Edition: "2010", Clause: "D5, J7, D2", As: working.Published, For: "the form of the equation, without its factors"}

// Reckon gives the strengths of the plate.
func (p AISCPinPlate) Reckon() (AISCPinPlateResult, error) {
	plate := PinPlate{Thickness: p.Thickness, Width: p.Width, Hole: p.Hole, Pin: p.Pin, End: p.End, Yield: p.Yield, Ultimate: p.Ultimate}
	if err := plate.check(); err != nil {
		return AISCPinPlateResult{}, err
	}
	r := AISCPinPlateResult{plate: p, side: (p.Width - p.Hole) / 2, EndHas: p.End - p.Hole/2}
	r.Effective = min(2*p.Thickness+16, r.side)
	r.Tension = p.Ultimate * 2 * p.Thickness * r.Effective
	r.Shear = 0.6 * p.Ultimate * 2 * p.Thickness * (r.EndHas + p.Pin/2)
	r.Bearing = 1.8 * p.Yield * p.Pin * p.Thickness
	r.GrossYield = p.Yield * p.Width * p.Thickness
	r.EndNeeded = 1.33 * r.Effective
	r.WidthNeeded = 2*r.Effective + p.Pin
	return r, nil
}

// Working writes the calculation down.
func (r AISCPinPlateResult) Working() []working.Step {
	p := r.plate
	return []working.Step{
		{Symbol: "be", Meaning: "metal that counts beside the hole", Formula: "min(2 t + 16 mm, (w - hole)/2)", Inputs: given("t", p.Thickness, "mm", "w", p.Width, "mm", "hole", p.Hole, "mm"), Value: r.Effective, Unit: "mm", Source: aiscD5},
		{Symbol: "a", Meaning: "metal beyond the hole", Formula: "end - hole/2", Inputs: given("end", p.End, "mm", "hole", p.Hole, "mm"), Value: r.EndHas, Unit: "mm", Source: statics},
		{Symbol: "Pt", Meaning: "tears across the hole", Formula: "Fu 2 t be", Inputs: given("Fu", p.Ultimate, "MPa", "t", p.Thickness, "mm", "be", r.Effective, "mm"), Value: r.Tension, Unit: "N", Source: aiscD5},
		{Symbol: "Pv", Meaning: "shears out beyond the pin", Formula: "0.6 Fu 2 t (a + d/2)", Inputs: given("Fu", p.Ultimate, "MPa", "t", p.Thickness, "mm", "a", r.EndHas, "mm", "d", p.Pin, "mm"), Value: r.Shear, Unit: "N", Source: aiscD5},
		{Symbol: "Rn", Meaning: "the hole begins to grow", Formula: "1.8 Fy d t", Inputs: given("Fy", p.Yield, "MPa", "d", p.Pin, "mm", "t", p.Thickness, "mm"), Value: r.Bearing, Unit: "N", Source: aiscD5},
		{Symbol: "Py", Meaning: "the whole plate yields", Formula: "Fy w t", Inputs: given("Fy", p.Yield, "MPa", "w", p.Width, "mm", "t", p.Thickness, "mm"), Value: r.GrossYield, Unit: "N", Source: aiscD5},
		{Symbol: "a,min", Meaning: "metal beyond the hole that the rules ask for", Formula: "1.33 be", Inputs: given("be", r.Effective, "mm"), Value: r.EndNeeded, Unit: "mm", Source: aiscD5},
		{Symbol: "w,min", Meaning: "width that the rules ask for", Formula: "2 be + d", Inputs: given("be", r.Effective, "mm", "d", p.Pin, "mm"), Value: r.WidthNeeded, Unit: "mm", Source: aiscD5},
	}
}
