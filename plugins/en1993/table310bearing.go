package en1993

import (
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// table310bearing is table 3.10, bearing of plate and pin.
//
// Equation:
//
//	Fb,Rd     = 1.5 t d fy/gM0         the hole keeps its shape
//	Fb,Rd,ser = 0.6 t d fy/gM6,ser     and a pin comes out of it again
//
// Symbols: t of the plate, d of the pin, mm; fy, the lower of plate and pin, MPa; gM0
// 1.00, 1.10 where either is of stainless; gM6,ser 1.00; results N: the first a design
// load, for 1.5 times the wire's load at work, the second for the load at work itself.
//
// Holds for a solid steel pin that fills its hole, pulled square to its length. Both
// are limits of yield: to hold them against the wire's break load would mean nothing.
//
// Source: after EN 1993-1-8:2005, 3.13.2, table 3.10 (published); gM0 after EN 1993-1-4
// (memory).
func table310bearing() clauses.Clause {
	reads := pinReads(clauses.Number("fitting.thickness", "mm"), clauses.Number("fitting.metal.yield", "MPa"), clauses.Word("fitting.metal.family"), clauses.Number("pin_yield", "MPa"))
	from := clauses.Names(reads)
	return clauses.Clause{
		Clause: "3.13.2, table 3.10, bearing",
		Covers: "bearing between pin and plate, and of a pin that is to come out again; the fork's cheeks are not judged, since nobody says what they are made of",
		Kind:   "landing",
		Reads:  reads,
		Facts: []clauses.Fact{
			{Name: "pin_bearing", Unit: "N", Bears: true, From: from,
				Meaning: "design load at which pin or plate yields where they bear on each other, for 1.5 times the load at work",
				Reckon:  clauses.By(reckonPinBearing, func(p pinBearing) float64 { return p.design }, "Fb,EN", "Fb,Rd")},
			{Name: "pin_bearing_service", Unit: "N", Bears: true, From: from,
				Meaning: "load up to which pin and plate bear on each other so lightly that the pin comes out again, for the load at work",
				Reckon:  clauses.By(reckonPinBearing, func(p pinBearing) float64 { return p.service }, "Fb,Rd,ser")},
		},
	}
}

type pinBearing struct {
	strength.BearingResult
	thickness, pin, yield float64
	gammaM0               float64
	design, service       float64
}

func reckonPinBearing(r clauses.Row) (pinBearing, error) {
	err := square(r)
	if err == nil {
		err = clauses.Steel("the plate", r.Word("fitting.metal.family"))
	}
	if err != nil {
		return pinBearing{}, err
	}
	p := pinBearing{thickness: r.Number("fitting.thickness"), pin: r.Number("pin_diameter"), yield: min(r.Number("pin_yield"), r.Number("fitting.metal.yield"))}
	p.gammaM0 = max(gammaM0(r.Word("pin_family")), gammaM0(r.Word("fitting.metal.family")))
	p.BearingResult, err = strength.Bearing{Thickness: p.thickness, Pin: p.pin, Yield: p.yield}.Reckon()
	p.design = p.EN / p.gammaM0
	p.service = 0.6 * p.thickness * p.pin * p.yield / gammaM6
	return p, err
}

// Working writes the calculation down.
func (p pinBearing) Working() []working.Step {
	return append(p.BearingResult.Working(),
		working.Step{Symbol: "Fb,Rd", Meaning: "design load at which pin or plate yields", Formula: "Fb,EN/gM0", Inputs: clauses.Inputs("Fb,EN", p.EN, "N", "gM0", p.gammaM0, ""), Value: p.design, Unit: "N", Source: partial},
		working.Step{Symbol: "Fb,Rd,ser", Meaning: "load up to which the pin comes out again", Formula: "0.6 t d fy/gM6", Inputs: clauses.Inputs("t", p.thickness, "mm", "d", p.pin, "mm", "fy", p.yield, "MPa", "gM6", gammaM6, ""), Value: p.service, Unit: "N",
			Source: after("3.13.2, table 3.10", working.Published, "the form of the equation")})
}
