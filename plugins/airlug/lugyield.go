package airlug

import (
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// lugYield is the lug's yield, and the lesser of its two strengths that it starts from.
//
// Returns the load in line with the plate at which the lug gives way (plate) and that
// at which it takes a set (yield), N.
//
// Equation:
//
//	Pu = min(Pbru, Ptu)
//	Py = C(x) (Fy/Fu) Pu,  x = Pu/(D t Fu)
//
// Symbols: Pbru and Ptu as shear_bearing and net_tension, N; hole D, thickness t, mm;
// yield Fy, ultimate Fu, MPa; C bare, from the chart; results N.
//
// Holds where both charts of strength do, for an axial load as they do. Load basis: plate
// is nominal ultimate, to be held against the wire's break load; yield is a limit of
// deformation, to be held against the load at work.
//
// Source: after Niu, Airframe Stress Analysis and Sizing, 1999, equation 9.8.3, with C
// as read off its chart at five points (published, Niu's edition from memory). Errors:
// those of both strengths; a yield strength above the ultimate.
func lugYield() clauses.Clause {
	return clauses.Clause{
		Clause: "9.8.3",
		Covers: "yield of the lug, and the lesser of shear-bearing and net tension",
		Kind:   "landing",
		Reads:  lugReads,
		Facts: []clauses.Fact{
			{
				Name: "plate", Unit: "N", From: fromAll,
				Meaning: "load in line with the plate at which it gives way at its pin hole, the lesser of shear-bearing and net tension: nominal ultimate without a factor, to be held against the wire's break load",
				Reckon: func(r clauses.Row) (clauses.Result, error) {
					if err := axial(r); err != nil {
						return clauses.Result{}, err
					}
					l, err := wholeLug(r)
					if err != nil {
						return clauses.Result{}, err
					}
					return clauses.Result{Value: least(l), Working: func() []working.Step { return append(l.Working(), leastStep(l)) }}, nil
				},
			},
			{
				Name: "yield", Unit: "N", Bears: true, From: append([]string{"fitting.metal.yield"}, fromAll...),
				Meaning: "load at which the plate takes a set at its pin hole: a limit of deformation, to be held against the load at work and never against the wire's break load",
				Reckon: func(r clauses.Row) (clauses.Result, error) {
					if err := axial(r); err != nil {
						return clauses.Result{}, err
					}
					l, err := wholeLugOf(r)
					if err != nil {
						return clauses.Result{}, err
					}
					y, err := strength.AirLugYield{Lug: l, Yield: r.Number("fitting.metal.yield")}.Reckon()
					return clauses.Result{Value: y.Set, Working: y.Working}, err
				},
			},
		},
	}
}

// wholeLug reckons the lug by both charts.
func wholeLug(r clauses.Row) (strength.AirLugResult, error) {
	l, err := wholeLugOf(r)
	if err != nil {
		return strength.AirLugResult{}, err
	}
	return l.Reckon()
}

// wholeLugOf is the lug with its curve, of a metal that both charts are of.
func wholeLugOf(r clauses.Row) (strength.AirLug, error) {
	l, err := lugOf(r)
	if err != nil {
		return l, err
	}
	if err := charted(r.Word("fitting.metal.family"), l.Ultimate); err != nil {
		return l, err
	}
	l.Curve, err = curveOf(r.Word("fitting.metal.name"), r.Word("fitting.metal.family"))
	return l, err
}

// least is the lesser of a lug's two strengths.
func least(l strength.AirLugResult) float64 { return min(l.ShearBearing, l.Tension) }

func leastStep(l strength.AirLugResult) working.Step {
	return working.Step{Symbol: "Pu", Meaning: "the lug gives way", Formula: "min(Pbru, Ptu)",
		Inputs: []working.Input{{Symbol: "Pbru", Value: l.ShearBearing, Unit: "N"}, {Symbol: "Ptu", Value: l.Tension, Unit: "N"}},
		Value:  least(l), Unit: "N", Source: working.Source{Title: "statics", As: working.Computed, For: "the form of the equation"}}
}
