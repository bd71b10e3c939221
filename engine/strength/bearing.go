package strength

import "chainwale/engine/working"

// Bearing is a pin or bolt that presses on the side of its hole in metal.
//
// Returns the loads in N at which three codes say the hole begins to grow (EN,
// AISC, BTH), and Lowest of them.
//
// Equation:
//
//	EN   = 1.5 t d Fy
//	AISC = 1.8 Fy d t
//	BTH  = 1.25 Fy d t
//
// Symbols: Thickness t, Pin d, mm; Yield Fy, the lower of plate and pin, MPa; N.
//
// Holds for a pin that fills its hole. All three are limits of deformation, to be
// held against the working load and never against the wire's break load.
//
// Source: after EN 1993-1-8:2005, table 3.10, gamma 1 (published); AISC 360, J7-1
// (published); ASME BTH-1, 3-3.3, design factor 1 (published). Errors: a size or
// a strength that is missing, negative or not finite.
type Bearing struct{ Thickness, Pin, Yield float64 }

// BearingResult are the loads of a Bearing, N.
type BearingResult struct {
	EN, AISC, BTH, Lowest float64
	// Governs is "EN", "AISC" or "BTH".
	Governs string

	of Bearing
}

var aiscBearing = working.Source{Title: "after AISC 360", Edition: "2010", Clause: "J7-1", As: working.Published, For: "the form of the equation, without its factor"}

// Reckon gives the loads.
func (b Bearing) Reckon() (BearingResult, error) {
	var in inputs
	in.positive("the thickness", b.Thickness, "mm")
	in.positive("the pin", b.Pin, "mm")
	in.positive("the yield strength", b.Yield, "MPa")
	if in.err != nil {
		return BearingResult{}, in.err
	}
	pressed := b.Thickness * b.Pin * b.Yield
	r := BearingResult{EN: 1.5 * pressed, AISC: 1.8 * pressed, BTH: 1.25 * pressed, of: b}
	r.Lowest, r.Governs = leastOf(named{"EN", r.EN}, named{"AISC", r.AISC}, named{"BTH", r.BTH})
	return r, nil
}

// Working writes the calculation down.
func (r BearingResult) Working() []working.Step {
	in := given("t", r.of.Thickness, "mm", "d", r.of.Pin, "mm", "Fy", r.of.Yield, "MPa")
	return []working.Step{
		{Symbol: "Fb,EN", Meaning: "the hole begins to grow, EN 1993-1-8", Formula: "1.5 t d Fy", Inputs: in, Value: r.EN, Unit: "N", Source: enPin},
		{Symbol: "Fb,AISC", Meaning: "the hole begins to grow, AISC 360", Formula: "1.8 Fy d t", Inputs: in, Value: r.AISC, Unit: "N", Source: aiscBearing},
		{Symbol: "Fb,BTH", Meaning: "the hole begins to grow, ASME BTH-1", Formula: "1.25 Fy d t", Inputs: in, Value: r.BTH, Unit: "N", Source: bth},
		{Symbol: "Fb", Meaning: "the lowest of them: " + r.Governs, Formula: "min(Fb,EN, Fb,AISC, Fb,BTH)", Inputs: given("Fb,EN", r.EN, "N", "Fb,AISC", r.AISC, "N", "Fb,BTH", r.BTH, "N"), Value: r.Lowest, Unit: "N", Source: statics},
	}
}
