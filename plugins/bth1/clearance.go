package bth1

import (
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// clearance is how the pin fits its hole.
//
// Returns how much wider than its pin the hole is (hole_over_pin), and what a loose
// pin leaves of the strength across the hole and beyond it (clearance_factor), bare.
//
// Equation:
//
//	ratio = Dh/Dp
//	Cr    = 1 for Dh/Dp <= 1.1, else 1 - 0.275 sqrt(1 - (Dp/Dh)^2)
//
// Symbols: hole Dh, pin Dp (as measured, or else nominal), mm; results bare.
//
// Holds for a round hole. The clause itself is remembered to ask only for what the
// connection needs to work; the ratio of 1.1 is the one from which 3-3.3.1 begins to
// take strength away.
//
// Source: after ASME BTH-1, 2005: Cr of 3-3.3.1 in a published calculation sheet
// (published), the purpose of 3-3.3.5 (memory). Errors: those of the plate; a pin
// larger than its hole.
func clearance() clauses.Clause {
	return clauses.Clause{
		Clause: "3-3.3.5",
		Covers: "the fit of pin and hole, by the ratio from which 3-3.3.1 takes strength away; the clause names no number, as far as is remembered",
		Kind:   "landing",
		Reads:  reads,
		Facts: []clauses.Fact{
			{
				Name: "hole_over_pin", Unit: "", From: []string{"hole", "pin_diameter"},
				Meaning: "diameter of the pin hole over that of its pin",
				Reckon: func(r clauses.Row) (clauses.Result, error) {
					hole, pin := r.Number("hole"), r.Number("pin_diameter")
					fits, err := strength.PinFit{Hole: hole, Pin: pin}.Reckon()
					if err != nil {
						return clauses.Result{}, err
					}
					return clauses.Result{Value: fits.Ratio, Working: fits.Working}, nil
				},
			},
			{
				Name: "clearance_factor", Unit: "", From: fromPlate,
				Meaning: "what a loose pin leaves of the plate's strength across the hole and on one plane beyond it",
				Reckon: func(r clauses.Row) (clauses.Result, error) {
					p, err := plateOf(r).Reckon()
					if err != nil {
						return clauses.Result{}, err
					}
					return clauses.Result{Value: stepOf("Cr")(p), Working: func() []working.Step { return cited(p, "3-3.3.1", []string{"Cr"}) }}, nil
				},
			},
		},
	}
}
