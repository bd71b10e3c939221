package airlug

import (
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// pinShear is the strength of the pin in double shear.
//
// Returns the load at which the pin shears on both sides of the plate (pin_shear), N.
//
// Equation:
//
//	Pps = 2 Fsu pi Dp^2/4,  Fsu = 0.6 Fu
//
// Symbols: pin Dp, mm; shear strength Fsu, ultimate Fu of the pin, MPa; result N.
//
// Holds for a solid round pin of a ductile metal in a fork, pulled square to its length
// or within 2 deg of it (judgement). Load basis: nominal ultimate, to be held against the
// wire's break load.
//
// Source: after Niu, Airframe Stress Analysis and Sizing, 1999, equation 9.8.6
// (published, Niu's edition from memory); 0.6 of the ultimate strength where no shear
// strength is given (common practice). Errors: a size or a strength that can't be; a
// wire that leans farther.
func pinShear() clauses.Clause {
	return clauses.Clause{
		Clause: "9.8.6",
		Covers: "double shear of the pin, with 0.6 of its ultimate strength",
		Kind:   "landing",
		Reads:  pinReads,
		Facts: []clauses.Fact{{
			Name: "pin_shear", Unit: "N", Bears: true, From: []string{"lean_out", "pin_diameter", "pin_ultimate"},
			Meaning: "load at which the pin shears on both sides of the plate: nominal ultimate without a factor, to be held against the wire's break load",
			Reckon: func(r clauses.Row) (clauses.Result, error) {
				if err := squareToPin(r); err != nil {
					return clauses.Result{}, err
				}
				p, err := strength.PinShear{Diameter: r.Number("pin_diameter"), Ultimate: r.Number("pin_ultimate")}.Reckon()
				if err != nil {
					return clauses.Result{}, err
				}
				return clauses.Result{Value: p.Shear, Working: func() []working.Step {
					return cited(p.Working(), working.Source{Title: "after Niu, Airframe Stress Analysis and Sizing", Clause: "equation 9.8.6", As: working.Published, For: "the form of the equation; 0.6 of the ultimate strength is common practice"}, "F_shear")
				}}, nil
			},
		}},
	}
}

// cited names another source for some of the steps: the same equation stands in
// several books.
func cited(steps []working.Step, source working.Source, symbols ...string) []working.Step {
	for i, s := range steps {
		for _, symbol := range symbols {
			if s.Symbol == symbol {
				steps[i].Source = source
			}
		}
	}
	return steps
}
