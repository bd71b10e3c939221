package airlug

import (
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// oblique is the strength of the lug under a wire that leans in the plate's plane.
//
// Returns the load of the leaning wire at which the lug gives way (oblique), N.
//
// Equation: the P of
//
//	(P cos(lean)/Pu)^1.6 + (P sin(lean)/Ptru)^1.6 = 1
//
// Symbols: Pu and Ptru as plate and transverse, N; lean between wire and plate, deg;
// result N.
//
// Holds where both strengths do, for a wire in the lug's plane or within 2 deg of it
// (judgement). The fitting factor of 1.15 stands in the rules. Load
// basis: nominal ultimate, to be held against the wire's break load.
//
// Source: after Niu, Airframe Stress Analysis and Sizing, 1999, equation 9.8.13, and
// NASA TM X-73305, 1975, B2 (published, Niu's edition from memory). Errors: those of
// both strengths; a lean in the plane beyond 90 degrees or out of it beyond 2.
func oblique() clauses.Clause {
	return clauses.Clause{
		Clause: "9.8.13",
		Covers: "the lug under a wire that leans in the plate's plane",
		Kind:   "landing",
		Reads:  lugReads,
		Facts: []clauses.Fact{{
			Name: "oblique", Unit: "N", Bears: true, From: fromAll,
			Meaning: "load of the wire, as it leans in the plate's plane, at which the plate gives way at its pin hole at the earliest, for its strength across is reckoned low: nominal ultimate without a factor, to be held against the wire's break load",
			Reckon:  leaning,
		}},
	}
}

func leaning(r clauses.Row) (clauses.Result, error) {
	if err := inPlane(r); err != nil {
		return clauses.Result{}, err
	}
	l, err := wholeLug(r)
	if err != nil {
		return clauses.Result{}, err
	}
	a, err := acrossOf(r)
	if err != nil {
		return clauses.Result{}, err
	}
	o, err := strength.LugOblique{Axial: least(l), Across: a.Load, Angle: r.Number("lean_in")}.Reckon()
	if err != nil {
		return clauses.Result{}, err
	}
	return clauses.Result{Value: o.Load, Working: func() []working.Step {
		steps := append(l.Working(), leastStep(l))
		return append(append(steps, a.Working()...), o.Working()...)
	}}, nil
}
