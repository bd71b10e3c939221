package rig

import (
	"fmt"
	"math"

	"chainwale/engine/working"
)

// HeldStay is a stay with the pull it may bear.
type HeldStay struct {
	Name string
	Line StayLine
	// Allowable is the pull that it is counted on for, N.
	Allowable float64
}

// Capacity is what a set of stays can hold of a mast that is hinged at its heel.
//
// Returns the moment that the set holds in the direction it is weakest in, N mm, and
// the directions in which the mast falls first.
//
// Equation:
//
//	m_i = T_i h_i sin(a_i) u_i          moment of stay i at its allowable pull
//	h(n) = sum max(0, m_i . n)          the most the set pulls towards n
//	worst = min over n of h(n) = min over i and both signs of h(+-m_i turned by 90 deg)
//	in a direction d of pull: min over the same n with n . d > 0 of h(n)/(n . d)
//
// Symbols: Stays with allowable pulls T, N; Partners, a moment that wedges at the
// partners of a keel-stepped mast hold in any direction, N mm, 0 if they are not counted on.
//
// Holds for stays that only pull and that share a load as well as can be: for brittle
// wire an upper bound, so allowable pulls should stand well below what breaks them.
// Bending and buckling of the mast, and its heel, are other questions.
//
// Source: statics; the support function of a zonotope is exact (computed). Errors: no
// stay, more than 60, a stay above the masthead or that lands in the mast's line,
// numbers that are missing, negative or not finite.
type Capacity struct {
	Stays    []HeldStay
	Partners float64
	// Masthead is the height of the mast, mm, 0 if it is not known.
	Masthead float64
}

// CapacityResult is what the set holds.
type CapacityResult struct {
	Worst float64
	// Falls are the directions that the mast falls in first, deg, 0 forward, 90 port:
	// the lowest first. Several are equally near where a rig is symmetric.
	Falls []float64
	// Holds says whether the set holds the mast against a small push from anywhere.
	Holds bool

	of Capacity
	m  []vector
}

const mostStays = 60

func (c Capacity) check() error {
	var in inputs
	in.must(len(c.Stays) > 0, "no stay is given: without one nothing holds the mast")
	in.must(len(c.Stays) <= mostStays, "%d stays are more than the %d that are covered", len(c.Stays), mostStays)
	in.moment("the moment at the partners", c.Partners)
	in.notNegative("the height of the masthead", c.Masthead, "mm")
	for i, s := range c.Stays {
		in.stay(s.named(i), s.Line, c.Masthead)
		in.notNegative("the allowable pull of "+s.named(i), s.Allowable, "N")
	}
	return in.err
}

func (s HeldStay) named(i int) string {
	if s.Name == "" {
		return fmt.Sprintf("stay %d", i+1)
	}
	return s.Name
}

// stay asks for a stay that can hold a mast.
func (in *inputs) stay(name string, l StayLine, masthead float64) {
	if err := l.check(); err != nil {
		in.must(false, "%s: %s", name, err)
	}
	in.must(masthead == 0 || l.Height <= masthead*(1+1e-9), "%s is attached at %g mm, above the masthead at %g mm", name, l.Height, masthead)
}

// Reckon gives the capacity.
func (c Capacity) Reckon() (CapacityResult, error) {
	if err := c.check(); err != nil {
		return CapacityResult{}, err
	}
	r := CapacityResult{of: c}
	for _, s := range c.Stays {
		r.m = append(r.m, s.Line.moment().times(s.Allowable))
	}
	found := pushing{wind: 1}.tightest(r.m)
	r.Worst, r.Falls, r.Holds = found.margin+c.Partners, found.falls, found.margin > 0
	return r, nil
}

// Against is the moment that the set holds when the mast is pushed towards a
// direction, deg, 0 forward, 90 port, N mm.
func (r CapacityResult) Against(push float64) float64 {
	return along(r.m, toward(push).times(-1)) + r.of.Partners
}

// along is the most that a set pulls in a direction without pulling any other way.
func along(m []vector, pull vector) float64 {
	best := math.Inf(1)
	eachNormal(m, func(p vector, h, _ float64) {
		// A direction along the face of the set is not held back by it.
		if facing := p.dot(pull); facing > 1e-12*p.size() {
			best = min(best, h/facing)
		}
	})
	if math.IsInf(best, 1) {
		return 0
	}
	return best
}

// Working writes the calculation down.
func (r CapacityResult) Working() []working.Step {
	var steps []working.Step
	for i, s := range r.of.Stays {
		steps = append(steps, working.Step{Symbol: fmt.Sprintf("m%d", i+1), Meaning: "moment of " + s.named(i) + " at its allowable pull", Formula: "T h sin(a)",
			Inputs: given("T", s.Allowable, "N", "h", s.Line.Height, "mm", "x", s.Line.Foot.X, "mm", "y", s.Line.Foot.Y, "mm"), Value: r.m[i].size(), Unit: "N mm", Source: statics})
	}
	worst := working.Step{Symbol: "Mworst", Meaning: "moment held in the weakest direction, the mast a stiff strut hinged at its heel and its stays sharing a push as well as they can; it does not say that the mast is safe", Formula: "min over n of sum max(0, m . n)", Value: r.Worst, Unit: "N mm", Source: statics}
	if r.of.Partners > 0 {
		worst.Formula, worst.Inputs = "min over n of sum max(0, m . n) + Mp", given("Mp", r.of.Partners, "N mm")
	}
	return append(steps, worst)
}
