package iso12215

import (
	"chainwale/engine/standard"
	"chainwale/plugins/clauses"
)

// pinFactor is how many times its design load a pin bears.
//
// Returns the factor that the pin has (pin_factor) and the one that the user's file
// asks for (pin_factor_asked), bare.
//
// Equation:
//
//	factor = min(Vu, Bu)/Fd
//
// Symbols: Vu and Bu the program's own ultimate loads of the pin in shear and in
// bending, Fd design load, N; result bare.
//
// Holds for the roles that the file names. Load basis: nominal ultimate strength over
// the design load of the user's file.
//
// Source: after ISO 12215-10, 2020 or what edition the file names, in the user's own
// copy, for load and factor asked for (published there, not seen here); that the
// program's own strengths of the pin stand for the standard's is this project's
// (judgement). Errors: no file; a role or a factor that it does not give.
func pinFactor(v *values) clauses.Clause {
	reads := []standard.Read{clauses.Word("stay.role"), clauses.Number("pin_shear", "N"), clauses.Number("pin_bending", "N")}
	return clauses.Clause{
		Clause: "factor of the pin",
		Covers: "the pin's ultimate strength over the design load, beside the factor asked for, from " + v.from,
		Kind:   "landing",
		Reads:  reads,
		Facts: []clauses.Fact{
			{
				Name: "pin_factor", Unit: "", From: clauses.Names(reads),
				Meaning: "nominal ultimate strength of the pin, the lesser of shear and bending, over the design load of the user's file",
				Reckon: func(r clauses.Row) (clauses.Result, error) {
					return v.factor(r.Word("stay.role"),
						strength{"the pin shears, as the program reckons it", r.Number("pin_shear")},
						strength{"the pin is bent out, as the program reckons it", r.Number("pin_bending")})
				},
			},
			v.asked("pin_factor", "factor that the user's file of values asks of the pin, on its design load"),
		},
	}
}
