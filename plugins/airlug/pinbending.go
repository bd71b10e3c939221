package airlug

import (
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// pinBending is the strength of the pin as a beam between the cheeks of its fork.
//
// Returns the load at which the pin is bent out (pin_bending), N.
//
// Equation:
//
//	P = 2 M/arm,  M = Kb Fu pi Dp^3/32,  Kb = 1.56,  arm = t1/2 + g + t2/4
//
// Symbols: pin Dp, cheek t1, plate t2, gap g on each side, mm; ultimate Fu of the pin,
// MPa; Kb bare; moment M, N mm; result N.
//
// Holds for a solid round pin of a ductile metal (more than 5 % elongation), the plate
// midway in its fork and as broad as it is, pulled square to its length or within 2 deg of
// it (judgement): the load that shifts to its faces (a gamma
// below 1) is not counted. Load basis: nominal ultimate, to be held against the wire's
// break load.
//
// Source: after Niu, Airframe Stress Analysis and Sizing, 1999, equations 9.8.8 and
// 9.8.9, for the arm (published, Niu's edition from memory); Kb after AFFDL-TR-69-42,
// 1969, chapter 9 (memory). Errors: a size or a strength that can't be; a plate thicker
// than its fork is open; a wire that leans farther.
func pinBending() clauses.Clause {
	return clauses.Clause{
		Clause: "9.8.8 and 9.8.9",
		Covers: "bending of a ductile pin across the gaps of its fork, with the whole thickness of the plate",
		Kind:   "landing",
		Reads:  pinReads,
		Facts: []clauses.Fact{{
			Name: "pin_bending", Unit: "N", Bears: true,
			From:    []string{"lean_out", "pin_diameter", "pin_yield", "pin_ultimate", "fork_opening", "fork_cheek", "fitting.thickness"},
			Meaning: "load at which the pin is bent out across the gaps of its fork: nominal ultimate without a factor, to be held against the wire's break load",
			Reckon: func(r clauses.Row) (clauses.Result, error) {
				if err := squareToPin(r); err != nil {
					return clauses.Result{}, err
				}
				plate := r.Number("fitting.thickness")
				p, err := strength.Pin{
					Diameter: r.Number("pin_diameter"), Plate: plate, Cheek: r.Number("fork_cheek"), Gap: (r.Number("fork_opening") - plate) / 2,
					Yield: r.Number("pin_yield"), Ultimate: r.Number("pin_ultimate"),
				}.Reckon()
				if err != nil {
					return clauses.Result{}, err
				}
				return clauses.Result{Value: p.Bending, Working: func() []working.Step { return clauses.Steps(p, "W", "Fb") }}, nil
			},
		}},
	}
}
