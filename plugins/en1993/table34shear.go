package en1993

import (
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// table34shear is table 3.4, shear of one bolt in one plane.
//
// Equation:
//
//	Fv,Rd = av fub A/gM2
//
// Symbols: A, the stress area with threads in the plane, else the shank's, mm2; av, 0.6
// of the shank and of threads of classes 4.6, 5.6 and 8.8, 0.5 of threads of others and
// of stainless; fub of the bolt, MPa; gM2 1.25; result N, a design value: for a bolt's
// share of 1.5 times the wire's load at work.
//
// Holds for a bolt of steel by itself. What it goes through is judged elsewhere: in
// timber and laminate a bolt also bends.
//
// Source: after EN 1993-1-8:2005, 3.6.1, table 3.4 (published for 0.6 and 0.5); the 0.5 of
// stainless after EN 1993-1-4, 6.2 (memory).
func table34shear() clauses.Clause {
	reads := boltReads()
	return clauses.Clause{
		Clause: "3.6.1, table 3.4, shear",
		Covers: "shear of one steel or stainless bolt in one plane, the threads in it or not",
		Kind:   "bolt_group",
		Reads:  reads,
		Facts: []clauses.Fact{{
			Name: "bolt_shear", Unit: "N", From: clauses.Names(reads),
			Meaning: "design load that shears one bolt, for its share of 1.5 times the load at work",
			Reckon:  clauses.By(reckonBolt, func(r strength.ENBoltResult) float64 { return r.Shear }, "A", "Fv,Rd"),
		}},
	}
}
