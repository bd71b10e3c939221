package en1993

import (
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// table310shear is table 3.10, shear of the pin.
//
// Equation:
//
//	Fv,Rd = 0.6 A fup/gM2     a plane;  the pin is cut through on both sides of the plate
//
// Symbols: A = pi d^2/4, mm2; fup of the pin, MPa; gM2 1.25; result N, both planes
// together: the design load, for 1.5 times the wire's load at work.
//
// Holds for a solid round pin of steel in double shear, pulled square to its length.
//
// Source: after EN 1993-1-8:2005, 3.13.2, table 3.10 (published).
func table310shear() clauses.Clause {
	reads := pinReads(clauses.Number("pin_ultimate", "MPa"))
	return clauses.Clause{
		Clause: "3.13.2, table 3.10, shear",
		Covers: "shear of a solid steel pin on both sides of the plate",
		Kind:   "landing",
		Reads:  reads,
		Facts: []clauses.Fact{{
			Name: "pin_shear", Unit: "N", Bears: true,
			Meaning: "design load at which the pin is sheared, on both sides of the plate, for 1.5 times the load at work",
			From:    clauses.Names(reads),
			Reckon:  clauses.By(reckonPinShear, func(p pinShear) float64 { return p.design }),
		}},
	}
}

type pinShear struct {
	strength.PinShearResult
	design float64
}

func reckonPinShear(r clauses.Row) (pinShear, error) {
	if err := square(r); err != nil {
		return pinShear{}, err
	}
	nominal, err := strength.PinShear{Diameter: r.Number("pin_diameter"), Ultimate: r.Number("pin_ultimate")}.Reckon()
	return pinShear{nominal, nominal.Shear / gammaM2}, err
}

// Working writes the calculation down.
func (p pinShear) Working() []working.Step {
	return append(p.PinShearResult.Working(), working.Step{Symbol: "2 Fv,Rd", Meaning: "design load that shears the pin on both sides of the plate", Formula: "F_shear/gM2",
		Inputs: clauses.Inputs("F_shear", p.Shear, "N", "gM2", gammaM2, ""), Value: p.design, Unit: "N", Source: partial})
}
