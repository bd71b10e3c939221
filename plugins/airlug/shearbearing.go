package airlug

import (
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// shearBearing is the strength of the lug beyond its pin.
//
// Returns the load at which the pin shears out of the lug or crushes it
// (shear_bearing), N.
//
// Equation:
//
//	Pbru = kbr(e/D, D/t) Fu D t
//
// Symbols: e from hole centre to the end, hole D, thickness t, mm; ultimate Fu, MPa;
// kbr bare, from the chart; result N.
//
// Holds for an axial load, or one within 10 deg of it in the lug's plane and 2 deg out of
// it (judgement), a pin that fits, e/D from 0.5 to 3.4, D/t up to 20, lugs of
// steel (to 160 ksi) and aluminium. Load basis: nominal ultimate, to be held against
// the wire's break load.
//
// Source: after NASA TM X-73305, 1975, figure B2.1.0-3, as digitised in AA-SM-009-005;
// Niu, Airframe Stress Analysis and Sizing, 1999, equation 9.8.1 (published, Niu's
// edition from memory; the metals it is for are memory). Errors: sizes or strengths that
// can't be; outside the chart; another metal; a loose pin; a wire that leans farther.
func shearBearing() clauses.Clause {
	return clauses.Clause{
		Clause: "9.8.1",
		Covers: "shear-bearing beyond the pin, by the chart of e/D and D/t",
		Kind:   "landing",
		Reads:  lugReads,
		Facts: []clauses.Fact{{
			Name: "shear_bearing", Unit: "N", Bears: true, From: fromBearing,
			Meaning: "load at which the pin shears out of the plate or crushes it: nominal ultimate without a factor, to be held against the wire's break load",
			Reckon: func(r clauses.Row) (clauses.Result, error) {
				l, err := bearingOf(r)
				if err != nil {
					return clauses.Result{}, err
				}
				return clauses.Result{Value: l.ShearBearing, Working: func() []working.Step { return clauses.Steps(l, "kbr", "Pbru") }}, nil
			},
		}},
	}
}

// bearingOf reckons the lug beyond its pin. Its width is not asked for, so one that
// every curve holds for stands in.
func bearingOf(r clauses.Row) (strength.AirLugResult, error) {
	if err := axial(r); err != nil {
		return strength.AirLugResult{}, err
	}
	l, err := lugOf(r)
	if err != nil {
		return strength.AirLugResult{}, err
	}
	if err := charted(r.Word("fitting.metal.family"), l.Ultimate); err != nil {
		return strength.AirLugResult{}, err
	}
	l.Width, l.Curve = 2*l.Hole, strength.LugUnknown
	return l.Reckon()
}
