package strength

import (
	"math"

	"chainwale/engine/working"
)

// ENPin is a pin by the design rules of EN 1993-1-8.
//
// Returns design resistances: shear of one plane (ShearPlane), moment (Moment) and,
// for a pin that is to come out again, the service moment (ServiceMoment); the
// pin's own moment under the load (Acting); and Combined, what shear and moment
// together use. Contact is the stress between pin and hole under the service load,
// ContactLimit what it may be.
//
// Equation:
//
//	ShearPlane = 0.6 A fup/gM2;  Moment = 1.5 W fyp/gM0;  ServiceMoment = 0.8 W fyp/gM6
//	Acting   = F/8 (b + 4c + 2a);  Combined = (Acting/Moment)^2 + (F/2/ShearPlane)^2
//	Contact  = 0.591 sqrt(E Fser (d0 - d)/(d^2 t));  ContactLimit = 2.5 fy/gM6
//
// Symbols: Diameter d, Hole d0, Plate b, Cheek a, Gap c, mm; Force F (design) and
// Service Fser, N; Yield fyp, Ultimate fup of the pin, PlateYield, Modulus E, MPa;
// GammaM0, GammaM2, GammaM6, bare; results N, N mm, MPa. fy of the contact is the
// lower of pin and plate, and t is the plate's thickness.
//
// Holds for a solid round pin in double shear. The rule that lets a short pin count
// as a bolt is left out on purpose: it has been questioned in print.
//
// Source: after EN 1993-1-8:2005, 3.13, table 3.10, 3.14 to 3.16 (published; gM0 memory).
// Errors: sizes, loads or strengths that are missing, negative or not finite; a pin
// larger than its hole; factors below 1.
type ENPin struct {
	Diameter, Hole, Plate, Cheek, Gap float64
	Force, Service                    float64
	Yield, Ultimate, PlateYield       float64
	Modulus                           float64
	GammaM0, GammaM2, GammaM6         float64
}

// ENPinResult is what an ENPin gives.
type ENPinResult struct {
	ShearPlane, Moment, ServiceMoment float64
	Acting, Combined                  float64
	Contact, ContactLimit             float64

	of            ENPin
	area, modulus float64
}

var enContact = working.Source{Title: "after EN 1993-1-8", Edition: "2005", Clause: "3.13, equations 3.14 to 3.16", As: working.Published, For: "the form of the equation"}

// Reckon gives resistances and uses.
func (p ENPin) Reckon() (ENPinResult, error) {
	if err := p.check(); err != nil {
		return ENPinResult{}, err
	}
	r := ENPinResult{of: p, area: roundArea(p.Diameter), modulus: roundModulus(p.Diameter)}
	r.ShearPlane = 0.6 * r.area * p.Ultimate / p.GammaM2
	r.Moment = 1.5 * r.modulus * p.Yield / p.GammaM0
	r.ServiceMoment = 0.8 * r.modulus * p.Yield / p.GammaM6
	r.Acting = p.Force / 8 * (p.Plate + 4*p.Gap + 2*p.Cheek)
	r.Combined = math.Pow(r.Acting/r.Moment, 2) + math.Pow(p.Force/2/r.ShearPlane, 2)
	r.Contact = 0.591 * math.Sqrt(p.Modulus*p.Service*(p.Hole-p.Diameter)/(p.Diameter*p.Diameter*p.Plate))
	r.ContactLimit = 2.5 * min(p.Yield, p.PlateYield) / p.GammaM6
	return r, nil
}

func (p ENPin) check() error {
	var in inputs
	in.positive("the diameter of the pin", p.Diameter, "mm")
	in.positive("the hole", p.Hole, "mm")
	in.positive("the thickness of the plate", p.Plate, "mm")
	in.positive("the thickness of a cheek", p.Cheek, "mm")
	in.notNegative("the gap beside the plate", p.Gap, "mm")
	in.notNegative("the design load", p.Force, "N")
	in.notNegative("the service load", p.Service, "N")
	in.metal("pin", p.Yield, p.Ultimate)
	in.positive("the yield strength of the plate", p.PlateYield, "MPa")
	in.positive("the elastic modulus", p.Modulus, "MPa")
	for _, g := range []float64{p.GammaM0, p.GammaM2, p.GammaM6} {
		in.must(g >= 1 && g <= 3, "a partial factor of %g is none: 1 to 3", g)
	}
	in.must(p.Diameter <= p.Hole, "the pin (%g mm) is larger than the hole (%g mm)", p.Diameter, p.Hole)
	return in.err
}

// Working writes the calculation down.
func (r ENPinResult) Working() []working.Step {
	p := r.of
	return []working.Step{
		{Symbol: "Fv,Rd", Meaning: "design shear of one plane", Formula: "0.6 A fup/gM2", Inputs: given("A", r.area, "mm2", "fup", p.Ultimate, "MPa", "gM2", p.GammaM2, ""), Value: r.ShearPlane, Unit: "N", Source: enPin},
		{Symbol: "MRd", Meaning: "design moment", Formula: "1.5 W fyp/gM0", Inputs: given("W", r.modulus, "mm3", "fyp", p.Yield, "MPa", "gM0", p.GammaM0, ""), Value: r.Moment, Unit: "N mm", Source: enPin},
		{Symbol: "MRd,ser", Meaning: "moment of a pin that is to come out again", Formula: "0.8 W fyp/gM6", Inputs: given("W", r.modulus, "mm3", "fyp", p.Yield, "MPa", "gM6", p.GammaM6, ""), Value: r.ServiceMoment, Unit: "N mm", Source: enPin},
		{Symbol: "MEd", Meaning: "moment in the pin", Formula: "F/8 (b + 4c + 2a)", Inputs: given("F", p.Force, "N", "b", p.Plate, "mm", "c", p.Gap, "mm", "a", p.Cheek, "mm"), Value: r.Acting, Unit: "N mm", Source: enPin},
		{Symbol: "u", Meaning: "what shear and moment together use", Formula: "(MEd/MRd)^2 + (F/2/Fv,Rd)^2", Inputs: given("MEd", r.Acting, "N mm", "MRd", r.Moment, "N mm", "F", p.Force, "N", "Fv,Rd", r.ShearPlane, "N"), Value: r.Combined, Source: enPin},
		{Symbol: "sh", Meaning: "stress between pin and hole", Formula: "0.591 sqrt(E Fser (d0 - d)/(d^2 t))", Inputs: given("E", p.Modulus, "MPa", "Fser", p.Service, "N", "d0", p.Hole, "mm", "d", p.Diameter, "mm", "t", p.Plate, "mm"), Value: r.Contact, Unit: "MPa", Source: enContact},
		{Symbol: "fh", Meaning: "what it may be", Formula: "2.5 fy/gM6", Inputs: given("fy", min(p.Yield, p.PlateYield), "MPa", "gM6", p.GammaM6, ""), Value: r.ContactLimit, Unit: "MPa", Source: enContact},
	}
}
