package sheet

import (
	"fmt"
	"math"
)

// source is one input of a development: what it is, and how well it is known.
type source struct {
	what              string
	mean, uncertainty float64
	// neutral marks the neutral line, which the new part has and the old one doesn't show.
	neutral bool
}

// inputs are all that a development rests on, in the order in which laid takes them.
func (m Measured) inputs() []source {
	var list []source
	add := func(r Reading, format string, args ...any) {
		list = append(list, source{what: fmt.Sprintf(format, args...), mean: r.Mean(), uncertainty: r.Uncertainty()})
	}
	add(m.Thickness, "thickness")
	for i, leg := range m.Legs {
		add(leg, "leg %d", i+1)
	}
	for i, f := range m.Folds {
		add(f.Angle, "angle of %s", foldName(i))
		add(f.Radius, "inside radius of %s", foldName(i))
		if f.Skew.taken() {
			add(f.Skew, "skew of %s", foldName(i))
		} else {
			list = append(list, source{what: "skew of " + foldName(i)})
		}
	}
	for i, h := range m.Holes {
		add(h.Along, "%s along its leg", m.holeName(i))
		add(h.Across, "%s across its leg", m.holeName(i))
	}
	return append(list, source{what: "neutral line", uncertainty: m.neutralSpread(), neutral: true})
}

// neutralSpread is the standard uncertainty of the neutral factor: the widest spread of
// the methods over the folds without a factor of their own, taken as even.
func (m Measured) neutralSpread() float64 {
	widest := 0.0
	for _, f := range m.Folds {
		if f.K == 0 {
			low, high := factorRange(f.Radius.Mean(), m.Thickness.Mean())
			widest = max(widest, high-low)
		}
	}
	return widest / math.Sqrt(12)
}

func nominal(inputs []source) []float64 {
	x := make([]float64, len(inputs))
	for i, s := range inputs {
		x[i] = s.mean
	}
	return x
}

// layout is a development at some values of its inputs.
type layout struct {
	strip FoldedStrip
	holes []Point
}

// laid works the flat out at some values. It checks nothing: it has to take values a
// little beyond those that were read.
func (m Measured) laid(x []float64) layout {
	next := func() float64 {
		v := x[0]
		x = x[1:]
		return v
	}
	shift := x[len(x)-1]
	l := layout{strip: FoldedStrip{Thickness: next(), Width: m.Width.Mean()}}
	legs := make([]float64, len(m.Legs))
	for i := range legs {
		legs[i] = next()
	}
	for _, f := range m.Folds {
		fold := Fold{Angle: next(), Radius: next(), Skew: next(), K: f.K}
		if fold.K == 0 {
			fold.K = dinFactor(fold.Radius/l.strip.Thickness) + shift
		}
		l.strip.Folds = append(l.strip.Folds, fold)
	}
	l.strip.lay(legs)
	for _, h := range m.Holes {
		start, end := l.legEnds(h.Leg - 1)
		at := Point{start + next(), next()}
		if h.FromFar {
			at.X = end - (at.X - start)
		}
		l.holes = append(l.holes, at)
	}
	return l
}

// legEnds are X of the outer corners of a leg, carried into the flat.
func (l layout) legEnds(leg int) (start, end float64) {
	corner := func(i int, side float64) float64 {
		f := l.strip.Folds[i]
		return f.At + side*(f.allowance(l.strip.Thickness)/2-f.setback(l.strip.Thickness))
	}
	end = l.strip.Length
	if leg > 0 {
		start = corner(leg-1, 1)
	}
	if leg < len(l.strip.Folds) {
		end = corner(leg, -1)
	}
	return start, end
}

// places are all that a development is asked for at some values of its inputs: the
// length, the fold lines, the holes in the flat and folded, the chords. made are the
// values that the flat is cut by, true those that hold when it is folded.
func (m Measured) places(made, trueX []float64) []float64 {
	l := m.laid(made)
	list := []float64{l.strip.Length}
	for _, f := range l.strip.Folds {
		list = append(list, f.At)
	}
	bent := l.strip
	bent.Folds = append([]Fold{}, bent.Folds...)
	for i, f := range m.laid(trueX).strip.Folds {
		bent.Folds[i].K = f.K
	}
	folding := bent.folding()
	folded := make([]Point3, len(l.holes))
	for i, at := range l.holes {
		folded[i] = folding.Fold(at, 0)
		list = append(list, at.X, at.Y, folded[i].X, folded[i].Y, folded[i].Z)
	}
	for _, c := range m.Chords {
		from, _ := m.hole(c.From)
		to, _ := m.hole(c.To)
		list = append(list, folded[from].distance(folded[to]))
	}
	return list
}
