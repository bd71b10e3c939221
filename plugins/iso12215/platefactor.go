package iso12215

import (
	"chainwale/engine/standard"
	"chainwale/plugins/clauses"
)

// plateFactor is how many times its design load a plate bears.
//
// Returns the factor that the plate has (plate_factor) and the one that the user's
// file asks for (plate_factor_asked), bare.
//
// Equation:
//
//	factor = Ru/Fd
//
// Symbols: Ru the program's own least ultimate strength of the plate at its pin hole,
// Fd design load, N; result bare.
//
// Holds for the roles that the file names. Load basis: nominal ultimate strength over
// the design load of the user's file.
//
// Source: after ISO 12215-10, 2020 or what edition the file names, in the user's own
// copy, for load and factor asked for (published there, not seen here); that the
// program's own strength of the plate stands for the standard's is this project's
// (judgement). Errors: no file; a role or a factor that it does not give.
func plateFactor(v *values) clauses.Clause {
	reads := []standard.Read{clauses.Word("stay.role"), clauses.Number("plate_ultimate", "N")}
	return clauses.Clause{
		Clause: "factor of the plate",
		Covers: "the plate's ultimate strength over the design load, beside the factor asked for, from " + v.from,
		Kind:   "landing",
		Reads:  reads,
		Facts: []clauses.Fact{
			{
				Name: "plate_factor", Unit: "", From: clauses.Names(reads),
				Meaning: "nominal ultimate strength of the plate at its pin hole over the design load of the user's file",
				Reckon: func(r clauses.Row) (clauses.Result, error) {
					return v.factor(r.Word("stay.role"), strength{"the plate breaks at its pin hole, as the program reckons it", r.Number("plate_ultimate")})
				},
			},
			v.asked("plate_factor", "factor that the user's file of values asks of the plate, on its design load"),
		},
	}
}
