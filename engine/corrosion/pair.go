package corrosion

import (
	"math"
	"slices"

	"chainwale/engine/table"
)

// pair is one row against another: twice the difference of the means and the
// spread of the ranges in whole millivolts, so that a limit is met exactly.
type pair struct {
	a, b            table.GalvanicRow
	twice, apart    int
	anodeIsA, level bool
	verdict         Verdict
}

func millivolts(v float64) int { return int(math.Round(v * 1000)) }

func newPair(a, b table.GalvanicRow, limit int) pair {
	twice := millivolts(a.Low) + millivolts(a.High) - millivolts(b.Low) - millivolts(b.High)
	p := pair{a: a, b: b, anodeIsA: twice < 0, level: twice == 0, twice: max(twice, -twice), verdict: Incompatible}
	p.apart = max(millivolts(a.High)-millivolts(b.Low), millivolts(b.High)-millivolts(a.Low))
	switch {
	case p.twice <= 2*limit:
		p.verdict = Compatible
	case p.twice <= 2*(limit+100):
		p.verdict = Conditional
	}
	return p
}

// pairs sets every row of one side against every row of the other.
func pairs(a, b []table.GalvanicRow, limit int) []pair {
	var all []pair
	for _, x := range a {
		for _, y := range b {
			all = append(all, newPair(x, y, limit))
		}
	}
	return all
}

// governing is the pair of the worst verdict, and of the widest difference among those.
func governing(all []pair) pair {
	return slices.MaxFunc(all, func(p, q pair) int {
		if v, w := slices.Index(verdicts, p.verdict), slices.Index(verdicts, q.verdict); v != w {
			return v - w
		}
		return p.twice - q.twice
	})
}

// open leaves the active state out where the metal has another.
func open(rows []table.GalvanicRow) []table.GalvanicRow {
	passive := slices.DeleteFunc(slices.Clone(rows), func(g table.GalvanicRow) bool { return g.State == "active" })
	if len(passive) == 0 {
		return rows
	}
	return passive
}

// anode is the metal that is eaten.
func (p pair) anode() string {
	switch {
	case p.level:
		return "neither"
	case p.anodeIsA:
		return p.a.String()
	}
	return p.b.String()
}
