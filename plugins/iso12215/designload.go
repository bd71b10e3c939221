package iso12215

import (
	"chainwale/engine/standard"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// designLoad is the load that a stay's attachment is designed for.
//
// Returns the design load of the stay's role (design_load), N.
//
// Equation: none, the value of the user's file for the role.
//
// Symbols: design load Fd, N.
//
// Holds for the roles that the file names. Load basis: the design load of the
// standard as the user reads it; it is neither the wire's break load nor the load at
// work.
//
// Source: after ISO 12215-10, 2020 or what edition the file names, in the user's own
// copy; the clause stands in the file (published there, not seen here). Errors: no file;
// a role that it does not name.
func designLoad(v *values) clauses.Clause {
	return clauses.Clause{
		Clause: "design load",
		Covers: "the design load by role of stay, from " + v.from,
		Kind:   "landing",
		Reads:  []standard.Read{clauses.Word("stay.role")},
		Facts: []clauses.Fact{{
			Name: "design_load", Unit: "N", From: []string{"stay.role"},
			Meaning: "load that the stay's attachment is designed for, as the user's file of values gives it",
			Reckon: func(r clauses.Row) (clauses.Result, error) {
				load, err := v.find(r.Word("stay.role"), "design_load")
				if err != nil {
					return clauses.Result{}, err
				}
				return clauses.Result{Value: load.number, Working: func() []working.Step {
					return []working.Step{v.step(load, "Fd", "design_load", "N")}
				}}, nil
			},
		}},
	}
}
