package rig

import (
	"fmt"
	"math"

	"chainwale/engine/working"
)

// MastBending is the bending of a mast between the places that hold it.
//
// Returns the moments over the supports, the largest anywhere, N mm, and the reactions, N.
//
// Equation, three moments over neighbouring spans L1, L2:
//
//	M_i-1 L1 + 2 M_i (L1 + L2) + M_i+1 L2 = -w (L1^3 + L2^3)/4
//	the top above the last support is a cantilever: M = -w c^2/2
//	between supports the largest moment lies where the shear is nought
//
// Symbols: Supports, heights of heel, partners and attachments that hold the mast in
// the direction asked about, lowest first, mm; Top, height of the masthead, mm; Load w
// per length, N/mm. The lowest support is a hinge.
//
// Holds for one section from heel to head, supports that don't give and a load that is
// even; compression of the mast makes moments more and is left out. Deck-stepped: the
// deck is the lowest support and a hinge. Keel-stepped: heel and partners are two.
//
// Source: Clapeyron's theorem of three moments (computed). Errors: fewer than two
// supports, which is a mast that only stands in its step; heights that don't rise;
// a top below the last support; a load that is negative or not finite.
type MastBending struct {
	Supports []float64
	Top      float64
	Load     float64
}

// MastBendingResult is how hard it is bent.
type MastBendingResult struct {
	// AtSupports are the moments over the supports, negative where the windward side is
	// pulled; Reactions what each support holds, positive against the load.
	AtSupports, Reactions []float64
	// Largest is the largest moment by size, at height At.
	Largest, At float64

	of MastBending
}

func (b MastBending) check() error {
	var in inputs
	n := len(b.Supports)
	in.must(n >= 2, "a mast with %d places that hold it has no moment at its foot: no stays, no mast", n)
	in.must(n <= mostStays, "%d supports are more than the %d that are covered", n, mostStays)
	below := math.Inf(-1)
	for i, s := range b.Supports {
		in.notNegative(fmt.Sprintf("the height of support %d", i+1), s, "mm")
		in.must(s > below, "support %d must stand above the one below it: %g mm is not above %g mm", i+1, s, below)
		below = s
	}
	in.positive("the height of the top", b.Top, "mm")
	in.must(b.Top >= below, "the top at %g mm stands below the highest support at %g mm", b.Top, below)
	in.notNegative("the load per length", b.Load, "N/mm")
	return in.err
}

// Reckon gives the moments.
func (b MastBending) Reckon() (MastBendingResult, error) {
	if err := b.check(); err != nil {
		return MastBendingResult{}, err
	}
	r := MastBendingResult{of: b, AtSupports: b.threeMoments()}
	n := len(b.Supports)
	r.Reactions = make([]float64, n)
	r.Reactions[n-1] = b.Load * (b.Top - b.Supports[n-1])
	for i := range n - 1 {
		r.span(i)
	}
	for i, m := range r.AtSupports {
		r.larger(m, b.Supports[i])
	}
	return r, nil
}

// threeMoments solves the moments over the supports from the bottom up and back.
func (b MastBending) threeMoments() []float64 {
	n := len(b.Supports)
	m := make([]float64, n)
	over := b.Top - b.Supports[n-1]
	m[n-1] = -b.Load * over * over / 2
	diagonal, right := make([]float64, n), make([]float64, n)
	for i := 1; i < n-1; i++ {
		l1, l2 := b.Supports[i]-b.Supports[i-1], b.Supports[i+1]-b.Supports[i]
		diagonal[i], right[i] = 2*(l1+l2), -b.Load*(l1*l1*l1+l2*l2*l2)/4
		if i == n-2 {
			right[i] -= m[n-1] * l2
		}
		if i > 1 {
			k := l1 / diagonal[i-1]
			diagonal[i] -= k * l1
			right[i] -= k * right[i-1]
		}
	}
	for i := n - 2; i >= 1; i-- {
		m[i] = right[i] / diagonal[i]
		if i < n-2 {
			m[i] -= (b.Supports[i+1] - b.Supports[i]) * m[i+1] / diagonal[i]
		}
	}
	return m
}

// span adds what a span puts on its supports, and looks for the largest moment in it.
func (r *MastBendingResult) span(i int) {
	b := r.of
	length := b.Supports[i+1] - b.Supports[i]
	low := b.Load*length/2 + (r.AtSupports[i+1]-r.AtSupports[i])/length
	r.Reactions[i] += low
	r.Reactions[i+1] += b.Load*length - low
	if b.Load == 0 {
		return
	}
	if x := low / b.Load; x > 0 && x < length {
		r.larger(r.AtSupports[i]+low*x/2, b.Supports[i]+x)
	}
}

// larger notes a moment if it is the largest yet.
func (r *MastBendingResult) larger(m, at float64) {
	if math.Abs(m) > r.Largest {
		r.Largest, r.At = math.Abs(m), at
	}
}

// Working writes the calculation down.
func (r MastBendingResult) Working() []working.Step {
	var steps []working.Step
	for i, m := range r.AtSupports {
		steps = append(steps, working.Step{Symbol: fmt.Sprintf("M%d", i+1), Meaning: fmt.Sprintf("moment over support %d", i+1), Formula: "three moments", Inputs: given("h", r.of.Supports[i], "mm", "w", r.of.Load, "N/mm"), Value: m, Unit: "N mm", Source: statics})
	}
	return append(steps, working.Step{Symbol: "Mmax", Meaning: "largest moment in the mast", Formula: "the largest over supports and between them", Inputs: given("at", r.At, "mm"), Value: r.Largest, Unit: "N mm", Source: statics})
}
