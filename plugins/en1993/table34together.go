package en1993

import (
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// table34together is table 3.4, shear and tension of a bolt together, of the bolt of
// the group that carries most.
//
// Equation:
//
//	Fv,Ed/Fv,Rd + Ft,Ed/(1.4 Ft,Rd) <= 1,  Ft,Ed <= Ft,Rd
//
// with Fv,Ed and Ft,Ed as shares of the wire's load, which gives the load at which the
// bolt is used up.
//
// Symbols: Fv,Rd and Ft,Rd, the design shear and tension of one bolt, N; the shares,
// bare; result N: the design load of the wire, for 1.5 times its load at work.
//
// Holds where table 3.4 does for shear and for tension. The bolt that is sheared most
// counts as the one that is pulled most. The shares are the program's own: elastic, by
// statics.
//
// Source: after EN 1993-1-8:2005, 3.6.1, table 3.4 (memory).
func table34together() clauses.Clause {
	reads := append(boltReads(), clauses.Number("largest_share", ""), clauses.Number("pull_share", ""))
	return clauses.Clause{
		Clause: "3.6.1, table 3.4, shear and tension",
		Covers: "shear and tension together of the steel or stainless bolt that carries most",
		Kind:   "bolt_group",
		Reads:  reads,
		Facts: []clauses.Fact{{
			Name: "bolts", Unit: "N", Bears: true, From: clauses.Names(reads),
			Meaning: "design load of the wire at which the bolt that carries most gives way, sheared and pulled together, for 1.5 times the load at work",
			Reckon:  clauses.By(reckonBolts, func(b boltsTogether) float64 { return b.Ratio }),
		}},
	}
}

type boltsTogether struct {
	strength.BoltTogetherResult
	one strength.ENBoltResult
}

func reckonBolts(r clauses.Row) (boltsTogether, error) {
	one, err := reckonBolt(r)
	if err != nil {
		return boltsTogether{}, err
	}
	// One newton of the wire gives the bolt its shares in newtons, so the ratio is a load.
	together, err := strength.BoltTogether{Shear: r.Number("largest_share"), Pull: r.Number("pull_share"), ShearStrength: one.Shear, Tension: one.Tension}.Reckon()
	return boltsTogether{together, one}, err
}

// Working writes the calculation down.
func (b boltsTogether) Working() []working.Step {
	steps := append(b.one.Working(), b.BoltTogetherResult.Working()...)
	last := &steps[len(steps)-1]
	last.Symbol, last.Meaning, last.Unit = "F", "design load of the wire at which the bolt gives way, since U is what one newton of it uses", "N"
	return steps
}
