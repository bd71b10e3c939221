package aisc360

import (
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// j36 is section J3.6: one bolt, sheared in one plane or pulled.
//
// Equation:
//
//	Rn = Fn Ab;   Fnt = 0.75 Fu;   Fnv = 0.450 Fu, 0.563 Fu with the threads out of the plane
//
// Symbols: Ab = pi d^2/4 of the shank, mm2; Fu of the bolt, MPa; result N, nominal: for
// a bolt's share of the wire's break load. The specification divides it by 2.00 (ASD) or
// multiplies it by 0.75 (LRFD).
//
// Holds for a steel bolt with a whole head. What it goes through is judged elsewhere:
// in timber and laminate a bolt also bends.
//
// Source: after AISC 360, 2010, J3.6 and table J3.2 (published).
func j36() clauses.Clause {
	reads := boltReads()
	reckon := func(r clauses.Row) (strength.AISCBoltResult, error) { return reckonBolt(r, 0, 0) }
	return clauses.Clause{
		Clause: "J3.6",
		Covers: "shear and tension of one steel or stainless bolt",
		Kind:   "bolt_group",
		Reads:  reads,
		Facts: []clauses.Fact{
			{Name: "bolt_shear", Unit: "N", From: clauses.Names(reads), Meaning: "nominal load that shears one bolt, for its share of the wire's break load",
				Reckon: clauses.By(reckon, func(r strength.AISCBoltResult) float64 { return r.Shear }, "Ab", "Rn,v")},
			{Name: "bolt_tension", Unit: "N", From: clauses.Names(reads), Meaning: "nominal load that breaks one bolt along its length, for its share of the wire's break load",
				Reckon: clauses.By(reckon, func(r strength.AISCBoltResult) float64 { return r.Tension }, "Ab", "Rn,t")},
		},
	}
}
