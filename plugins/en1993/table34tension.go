package en1993

import (
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// table34tension is table 3.4, tension of one bolt.
//
// Equation:
//
//	Ft,Rd = k2 fub As/gM2
//
// Symbols: As, the stress area, mm2; k2 0.9, 0.63 with a countersunk head; fub of the
// bolt, MPa; gM2 1.25; result N, a design value: for a bolt's share of 1.5 times the
// wire's load at work.
//
// Holds for a bolt of steel by itself; prying is not in it, nor is the head pulling
// through.
//
// Source: after EN 1993-1-8:2005, 3.6.1, table 3.4 (published for 0.9, memory for 0.63).
func table34tension() clauses.Clause {
	reads := boltReads()
	return clauses.Clause{
		Clause: "3.6.1, table 3.4, tension",
		Covers: "tension of one steel or stainless bolt, countersunk or not",
		Kind:   "bolt_group",
		Reads:  reads,
		Facts: []clauses.Fact{{
			Name: "bolt_tension", Unit: "N", From: clauses.Names(reads),
			Meaning: "design load that breaks one bolt along its length, for its share of 1.5 times the load at work",
			Reckon:  clauses.By(reckonBolt, func(r strength.ENBoltResult) float64 { return r.Tension }, "Ft,Rd"),
		}},
	}
}
