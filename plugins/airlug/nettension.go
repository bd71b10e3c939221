package airlug

import (
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// netTension is the strength of the lug across its hole.
//
// Returns the load at which the lug breaks across its hole (net_tension), N.
//
// Equation:
//
//	Ptu = kt(w/D, metal) Fu (w - D) t
//
// Symbols: width w (twice the poorer side), hole D, thickness t, mm; ultimate Fu, MPa;
// kt bare, from the metal's curve; result N.
//
// Holds for an axial load, or one within 10 deg of it in the lug's plane and 2 deg out of
// it (judgement), a pin that fits, w/D up to 5; 18-8 stainless steel, for
// which the lower of the curves annealed and full hard counts, and 4130 steel. Load
// basis: nominal ultimate, to be held against the wire's break load.
//
// Source: after NASA TM X-73305, 1975, figure B2.1.0-4, as digitised in AA-SM-009-005;
// Niu, Airframe Stress Analysis and Sizing, 1999, equation 9.8.2 (published, Niu's
// edition from memory; which of our metals follow which curve is judgement). Errors:
// sizes or strengths that can't be; outside the chart; a metal without a curve; a loose
// pin; a wire that leans farther.
func netTension() clauses.Clause {
	return clauses.Clause{
		Clause: "9.8.2",
		Covers: "net tension across the hole, by the curves of 18-8 stainless and 4130 steel",
		Kind:   "landing",
		Reads:  lugReads,
		Facts: []clauses.Fact{{
			Name: "net_tension", Unit: "N", Bears: true, From: fromTension,
			Meaning: "load at which the plate breaks across its pin hole: nominal ultimate without a factor, to be held against the wire's break load",
			Reckon: func(r clauses.Row) (clauses.Result, error) {
				l, err := tensionOf(r)
				if err != nil {
					return clauses.Result{}, err
				}
				return clauses.Result{Value: l.Tension, Working: func() []working.Step { return clauses.Steps(l, "kt", "Ptu") }}, nil
			},
		}},
	}
}

// tensionOf reckons the lug across its hole. Its end is not asked for, so one that the
// other chart holds for stands in.
func tensionOf(r clauses.Row) (strength.AirLugResult, error) {
	if err := axial(r); err != nil {
		return strength.AirLugResult{}, err
	}
	l, err := lugOf(r)
	if err != nil {
		return strength.AirLugResult{}, err
	}
	if l.Curve, err = curveOf(r.Word("fitting.metal.name"), r.Word("fitting.metal.family")); err != nil {
		return strength.AirLugResult{}, err
	}
	l.End = 1.5 * l.Hole
	return l.Reckon()
}
