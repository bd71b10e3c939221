package en1993

import (
	"math"

	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// table310together is table 3.10, shear and bending of the pin together.
//
// Equation:
//
//	(MEd/MRd)^2 + (Fv,Ed/Fv,Rd)^2 <= 1
//
// and, since both loads grow with the wire's, the design load at which it is 1:
//
//	F = 1/sqrt(1/Fm^2 + 1/(2 Fv,Rd)^2)
//
// Symbols: Fm, the design load at which bending alone uses the pin up, and 2 Fv,Rd, at
// which shear does, N; F, the design load, for 1.5 times the wire's load at work, N.
//
// Holds where table 3.10 does for shear and for bending.
//
// Source: after EN 1993-1-8:2005, 3.13.2, table 3.10 (published); the load is the same
// equation turned round (computed).
func table310together() clauses.Clause {
	reads := bentPinReads()
	return clauses.Clause{
		Clause: "3.13.2, table 3.10, shear and bending",
		Covers: "shear and bending of a solid steel pin together",
		Kind:   "landing",
		Reads:  reads,
		Facts: []clauses.Fact{{
			Name: "pin_together", Unit: "N", Bears: true, From: clauses.Names(reads),
			Meaning: "design load at which shear and bending together use the pin up, for 1.5 times the load at work",
			Reckon:  clauses.By(reckonTogether, func(p pinTogether) float64 { return p.design }, "Fv,Rd", "MRd", "F", "Ft"),
		}},
	}
}

type pinTogether struct {
	bentPin
	design float64
}

func reckonTogether(r clauses.Row) (pinTogether, error) {
	p, err := reckonBentPin(r)
	if err != nil {
		return pinTogether{}, err
	}
	// The formula was given 1 N, so that what one newton uses tells how many there may be.
	return pinTogether{p, 1 / math.Sqrt(p.Combined)}, nil
}

// Working writes the calculation down.
func (p pinTogether) Working() []working.Step {
	return append(p.bentPin.Working(), working.Step{Symbol: "Ft", Meaning: "design load at which shear and bending together use the pin up", Formula: "1/sqrt(1/F^2 + 1/(2 Fv,Rd)^2)",
		Inputs: clauses.Inputs("F", p.load(p.Moment), "N", "Fv,Rd", p.ShearPlane, "N"), Value: p.design, Unit: "N", Source: after("3.13.2, table 3.10", working.Published, "(M/MRd)^2 + (F/2/Fv,Rd)^2 = 1")})
}
