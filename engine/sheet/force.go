package sheet

import (
	"fmt"

	"chainwale/engine/working"
)

// ForceMethod says which constant a press force is reckoned with.
type ForceMethod string

const (
	// Charted is the constant behind a public chart for air-bending stainless.
	Charted ForceMethod = "charted"
	// Oehler grows with the thickness against the die.
	Oehler ForceMethod = "oehler"
	// Textbook is the constant of a textbook's V-die.
	Textbook ForceMethod = "textbook"
	// GreaterForce takes the greater of Charted and Oehler; it stands where nothing is said.
	GreaterForce ForceMethod = ""
)

// PressForce is what a press must push with to fold plate in an open V-die.
//
// Returns Force.
//
// Equation:
//
//	Force = C Fu L t^2/V
//	C = 1.42 (charted), 1 + 4 t/V (oehler), 1.33 (textbook); the greater of the first two if none is named
//
// Symbols: Thickness t, Length L of the fold, Die V, the opening, mm; Ultimate Fu, the
// UPPER ultimate strength of the grade, MPa (316L up to about 700); result N. The
// charted constant lies between 1.40 and 1.52 over the chart.
//
// Holds for openings of 5 to 20 thicknesses; charted for 2 to 12 mm, oehler for 0.5
// to 10 mm.
//
// Source: charted after a public chart of 38 cells for Rm 700 MPa (published); Oehler
// in Lange, 2nd ed., 1990 (published); textbook after Groover (memory). Errors: sizes
// that are missing or not finite, a die or a thickness outside the above.
type PressForce struct {
	Thickness, Length, Die, Ultimate float64
	Method                           ForceMethod
}

// PressForceResult is the force.
type PressForceResult struct {
	Force float64

	of       PressForce
	constant float64
	method   ForceMethod
}

var forceSources = map[ForceMethod]working.Source{
	Charted:  {Title: "public chart for air-bending stainless at Rm 700 MPa", As: working.Published, For: "the constant, between 1.40 and 1.52 over the chart"},
	Oehler:   {Title: "Oehler, in Lange, Umformtechnik", Edition: "2nd ed., 1990", As: working.Published, For: "the constant"},
	Textbook: {Title: "Groover, Fundamentals of Modern Manufacturing", Clause: "ch. 20", As: working.Memory, For: "the constant"},
}

// Reckon gives the force.
func (p PressForce) Reckon() (PressForceResult, error) {
	var in inputs
	in.positive("the thickness", p.Thickness, "mm")
	in.positive("the length of the fold", p.Length, "mm")
	in.positive("the opening of the die", p.Die, "mm")
	in.positive("the ultimate strength", p.Ultimate, "MPa")
	in.must(p.Die >= 5*p.Thickness && p.Die <= 20*p.Thickness, "an opening of %g mm is %.3g times the thickness; the force is known from 5 to 20 times", p.Die, p.Die/p.Thickness)
	switch p.Method {
	case Charted, GreaterForce, Textbook:
		in.must(p.Thickness >= 2 && p.Thickness <= 12, "the force is charted for plate of 2 to 12 mm, not for %g mm", p.Thickness)
	case Oehler:
		in.must(p.Thickness >= 0.5 && p.Thickness <= 10, "Oehler's constant holds for plate of 0.5 to 10 mm, not for %g mm", p.Thickness)
	default:
		in.err = fmt.Errorf("a press force is %q or %q, not %q", string(Charted), string(Oehler), string(p.Method))
	}
	if in.err != nil {
		return PressForceResult{}, in.err
	}
	r := PressForceResult{of: p}
	r.constant, r.method = p.factor()
	r.Force = r.constant * p.Ultimate * p.Length * p.Thickness * p.Thickness / p.Die
	return r, nil
}

// factor is the constant and the method that gave it.
func (p PressForce) factor() (float64, ForceMethod) {
	const charted, textbook = 1.42, 1.33
	oehler := 1 + 4*p.Thickness/p.Die
	switch {
	case p.Method == Textbook:
		return textbook, Textbook
	case p.Method == Oehler || p.Method == GreaterForce && oehler > charted:
		return oehler, Oehler
	}
	return charted, Charted
}

// Working writes the calculation down.
func (r PressForceResult) Working() []working.Step {
	p := r.of
	c := working.Step{Symbol: "C", Meaning: "constant of the die", Formula: "from the chart", Value: r.constant, Source: forceSources[r.method]}
	switch {
	case r.method == Textbook:
		c.Formula = "from the textbook"
	case r.method == Oehler:
		c.Formula, c.Inputs = "1 + 4 t/V", given("t", p.Thickness, "mm", "V", p.Die, "mm")
	}
	return []working.Step{c, {Symbol: "F", Meaning: "the press pushes", Formula: "C Fu L t^2/V",
		Inputs: given("C", r.constant, "", "Fu", p.Ultimate, "MPa", "L", p.Length, "mm", "t", p.Thickness, "mm", "V", p.Die, "mm"), Value: r.Force, Unit: "N", Source: forceSources[r.method]}}
}
