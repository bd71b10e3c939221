package aisc360

import (
	"errors"

	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// j37 is section J3.7: shear and tension together, of the bolt of the group that
// carries most.
//
// Equation, with the factor taken out of both loads, as for nominal strengths:
//
//	V/Rnv <= 1;   T/Rnt <= 1;   V/Rnv + T/Rnt <= 1.3    (J3-3)
//
// with V and T as shares of the wire's load, which gives the load at which the bolt is
// used up.
//
// Symbols: Rnv and Rnt, nominal shear and tension of one bolt, N; the shares, bare;
// result N: the load of the wire, for its break load.
//
// Holds where J3.6 does. The bolt that is sheared most counts as the one that is pulled
// most. The shares are the program's own: elastic, by statics.
//
// Source: after AISC 360, 2010, J3.7 (published).
func j37() clauses.Clause {
	reads := append(boltReads(), clauses.Number("largest_share", ""), clauses.Number("pull_share", ""))
	return clauses.Clause{
		Clause: "J3.7",
		Covers: "shear and tension together of the steel or stainless bolt that carries most",
		Kind:   "bolt_group",
		Reads:  reads,
		Facts: []clauses.Fact{{
			Name: "bolts", Unit: "N", Bears: true, From: clauses.Names(reads),
			Meaning: "nominal load of the wire at which the bolt that carries most gives way, sheared and pulled together, for its break load",
			Reckon:  clauses.By(reckonBolts, func(b boltsTogether) float64 { return b.wire }),
		}},
	}
}

type boltsTogether struct {
	strength.AISCBoltResult
	wire float64
}

func reckonBolts(r clauses.Row) (boltsTogether, error) {
	// One newton of the wire gives the bolt its shares in newtons.
	one, err := reckonBolt(r, r.Number("largest_share"), r.Number("pull_share"))
	if err == nil && one.Share == 0 {
		err = errors.New("the bolts carry no share of the wire's load")
	}
	return boltsTogether{one, 1 / one.Share}, err
}

// Working writes the calculation down.
func (b boltsTogether) Working() []working.Step {
	return append(b.AISCBoltResult.Working(), working.Step{Symbol: "F", Meaning: "load of the wire at which the bolt gives way, since U is what one newton of it uses", Formula: "1/U",
		Inputs: clauses.Inputs("U", b.Share, ""), Value: b.wire, Unit: "N", Source: working.Source{Title: "statics", As: working.Computed, For: "the share of the bolt"}})
}
