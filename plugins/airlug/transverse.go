package airlug

import (
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// transverse is the strength of the lug at right angles to its length, in its plane.
//
// Returns a load across the plate that the lug bears at least (transverse), N.
//
// Equation, in place of the charts of ktru, which have no curve for stainless steel:
//
//	P/Pm + (P/Pq)^2 = 1,  Pm = Fu t c^2/(2 D),  Pq = 0.6 Fu t c
//
// Symbols: c metal beside the hole on its poorer side, hole D, thickness t, mm;
// ultimate Fu, MPa; result N.
//
// Holds for ductile metals and a pin that fits, whichever way the wire leans. The metal
// on one side of the hole is taken as a short cantilever and all other metal is left out,
// so it is less than the charts would give. Load basis: nominal ultimate.
//
// Source: the place of the strength in the method after Niu, Airframe Stress Analysis
// and Sizing, 1999, 9.8.10 and 9.8.11 (published, Niu's edition from memory); the
// cantilever is statics (computed), and that it stands for the chart is this project's
// (judgement). Errors: sizes or strengths that can't be; a hole that breaks out; a loose
// pin.
func transverse() clauses.Clause {
	return clauses.Clause{
		Clause: "9.8.10 and 9.8.11",
		Covers: "strength across the lug, by a cautious stand-in for the chart, which has no curve for stainless steel",
		Kind:   "landing",
		Reads:  lugReads,
		Facts: []clauses.Fact{{
			Name: "transverse", Unit: "N", From: fromAcross,
			Meaning: "load across the plate, in its plane, that it bears at its pin hole at least: nominal ultimate without a factor, by a stand-in for the method's chart",
			Reckon: func(r clauses.Row) (clauses.Result, error) {
				a, err := acrossOf(r)
				return clauses.Result{Value: a.Load, Working: a.Working}, err
			},
		}},
	}
}

// acrossOf reckons the lug across.
func acrossOf(r clauses.Row) (strength.LugAcrossResult, error) {
	l, err := lugOf(r)
	if err != nil {
		return strength.LugAcrossResult{}, err
	}
	return strength.LugAcross{Thickness: l.Thickness, Width: l.Width, Hole: l.Hole, End: l.End, Ultimate: l.Ultimate}.Reckon()
}
