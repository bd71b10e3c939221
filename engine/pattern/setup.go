package pattern

import (
	"fmt"
	"math"

	"chainwale/engine/quantity"
)

// Setup is what the press is set up with for folds that need no change of it between
// them: the same metal and thickness, die and inside radius.
type Setup struct {
	Metal                  string
	Thickness, Die, Radius float64
	// Folds are those that are made in it, by part and by the order at its press.
	Folds []SetupFold
}

// SetupFold is a fold in a set-up.
type SetupFold struct {
	Part  string
	Step  int
	Angle float64
	// Times is how often it is pressed, over all copies that nothing holds up.
	Times int
}

// Setups sorts the folds of parts by what the press is set up with, in the order in which
// they come. Folds whose die is not known share a set-up with none.
func Setups(parts []Part) []Setup {
	var list []Setup
	type tools struct {
		metal                  string
		thickness, die, radius float64
	}
	of := map[tools]int{}
	for _, p := range parts {
		for at, step := range pressSteps(p) {
			d := p.Folds[step.Fold-1]
			key := tools{p.Flat.Metal, to(p.Flat.Thickness), to(d.Die), to(d.Radius)}
			i, known := of[key]
			if !known {
				i = len(list)
				list = append(list, Setup{Metal: p.Flat.Metal, Thickness: p.Flat.Thickness, Die: d.Die, Radius: d.Radius})
				if !math.IsNaN(d.Die) {
					of[key] = i
				}
			}
			list[i].Folds = append(list[i].Folds, SetupFold{p.Name, at + 1, math.Abs(d.Angle), len(p.Free())})
		}
	}
	return list
}

// to rounds a size to what a shop tells apart, a tenth of a millimetre.
func to(v float64) float64 { return math.Round(v*10) / 10 }

// words are the set-up in words.
func (s Setup) words() string {
	return fmt.Sprintf("%s %s, %s, inside radius %s", mm(s.Thickness), s.Metal, dieWords(s.Die), mm(s.Radius))
}

// forceWords are what the press pushes with, from the least to the most.
func (d Fold) forceWords() string {
	say := func(v float64) string { return quantity.Format(v, quantity.Force, quantity.Metric) }
	switch {
	case math.IsNaN(d.ForceMost):
		return "not known"
	case math.IsNaN(d.ForceLeast):
		return "up to " + say(d.ForceMost)
	}
	return say(d.ForceLeast) + " to " + say(d.ForceMost)
}
