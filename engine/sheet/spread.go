package sheet

import (
	"fmt"
	"math"
	"slices"
)

// Uncertain is a length with how well it is known.
type Uncertain struct {
	Value float64
	Spread
}

// Spread is a standard uncertainty, mm, and what it comes from.
type Spread struct {
	Uncertainty float64
	// Shares are the parts that the inputs have in its square, the largest first.
	Shares []Share
}

// Share is the part, 0 to 1, that one input has in an uncertainty.
type Share struct {
	What string
	Part float64
}

// Dominant is the input that an uncertainty mostly comes from, "" if there is none.
func (s Spread) Dominant() string {
	if len(s.Shares) == 0 {
		return ""
	}
	return s.Shares[0].What
}

// Limit is what the true value stays within in 19 cases of 20, mm.
func (s Spread) Limit() float64 { return 2 * s.Uncertainty }

// derivatives of all places by each input, central differences over a tenth of its
// uncertainty. The neutral line of the new part is another than the flat was laid out
// by, so in the folded places it alone changes between cutting and folding.
func (m Measured) derivatives(inputs []source) [][]float64 {
	x := nominal(inputs)
	all := make([][]float64, len(inputs))
	for i, s := range inputs {
		if s.uncertainty == 0 {
			continue
		}
		h := s.uncertainty / 10
		at := func(step float64) []float64 {
			moved := slices.Clone(x)
			moved[i] += step
			if !s.neutral {
				return m.places(moved, moved)
			}
			return m.mixed(m.places(moved, moved), m.places(x, moved))
		}
		up, down := at(h), at(-h)
		all[i] = make([]float64, len(up))
		for k := range up {
			all[i][k] = (up[k] - down[k]) / (2 * h)
		}
	}
	return all
}

// mixed takes what concerns the flat from one list of places and what concerns the
// folded part from another.
func (m Measured) mixed(flat, folded []float64) []float64 {
	list := slices.Clone(folded)
	first := 1 + len(m.Folds)
	copy(list, flat[:first])
	for i := range m.Holes {
		copy(list[first+5*i:], flat[first+5*i:first+5*i+2])
	}
	for i := range m.Chords {
		// Chords are read on the old part: its neutral line does not come into them.
		k := first + 5*len(m.Holes) + i
		list[k] = flat[k]
	}
	return list
}

// spread gives the development with its uncertainties.
func (m Measured) spread(strip FoldedStrip, inputs []source) (Development, error) {
	x, by := nominal(inputs), m.derivatives(inputs)
	places, holes := m.places(x, x), m.laid(x).holes
	of := func(indices ...int) Spread { return combine(inputs, by, indices) }
	d := Development{Strip: strip, Length: Uncertain{places[0], of(0)}}
	for i := range strip.Folds {
		d.Folds = append(d.Folds, Uncertain{places[1+i], of(1 + i)})
	}
	k := 1 + len(strip.Folds)
	for i := range m.Holes {
		d.Holes = append(d.Holes, LaidHole{m.holeName(i), holes[i], of(k, k+1), of(k+2, k+3, k+4)})
		k += 5
	}
	for i, c := range m.Chords {
		checked := CheckedChord{c.From, c.To, c.Length.Mean(), places[k+i], math.Hypot(of(k+i).Uncertainty, c.Length.Uncertainty())}
		if miss := math.Abs(checked.Read - checked.Folded); !(miss <= 3*checked.Uncertainty) {
			return Development{}, fmt.Errorf("from %s to %s the straight distance was read as %.5g mm, and the other readings make it %.5g mm give or take %.2g: one of them is wrong",
				c.From, c.To, checked.Read, checked.Folded, checked.Uncertainty)
		}
		d.Chords = append(d.Chords, checked)
	}
	return d, nil
}

// combine adds the parts of all inputs in one or more places, as squares.
func combine(inputs []source, by [][]float64, places []int) Spread {
	var s Spread
	square := 0.0
	for i, input := range inputs {
		part := 0.0
		for _, k := range places {
			if by[i] != nil {
				part += math.Pow(by[i][k]*input.uncertainty, 2)
			}
		}
		if part > 0 {
			s.Shares = append(s.Shares, Share{input.what, part})
			square += part
		}
	}
	for i := range s.Shares {
		s.Shares[i].Part /= square
	}
	slices.SortStableFunc(s.Shares, func(a, b Share) int {
		switch {
		case a.Part > b.Part:
			return -1
		case a.Part < b.Part:
			return 1
		}
		return 0
	})
	s.Uncertainty = math.Sqrt(square)
	return s
}
