package rig

import (
	"errors"
	"fmt"

	"chainwale/engine/working"
)

// ElasticStay is a stay with its stiffness and the pull it has at rest.
type ElasticStay struct {
	Name string
	Line StayLine
	// EA is its stiffness and AtRest its pull before the load comes, N.
	EA, AtRest float64
}

// Sharing is how stays of their own stiffness share a push on a stiff mast that is
// hinged at its heel. A stay that goes slack drops out.
//
// Returns each stay's pull, N, and how far the mast leans, deg.
//
// Equation, small leans theta (x, y):
//
//	T_i = max(0, T0_i - EA_i/L_i h_i sin(a_i) (u_i . theta)),  sum T_i h_i sin(a_i) u_i + M = 0
//
// Symbols: Stays with EA_i, pull at rest T0_i, N, length L_i, height h_i, mm, and the
// direction u_i each leads in; Push M, N mm, towards Toward, deg, 0 forward, 90 port.
//
// Holds for small leans and a mast that doesn't bend: real masts bend, and then the
// pulls are more even below and less above. The pulls at rest need not balance: what
// they lack leans the mast before the load comes.
//
// Source: statics and Hooke's law (computed). Errors: as for Capacity, a stiffness that
// is missing or not positive, a set that can't hold the push.
type Sharing struct {
	Stays  []ElasticStay
	Push   float64
	Toward float64
}

// SharingResult is how they share.
type SharingResult struct {
	Pulls []float64
	// Lean is in deg, towards LeansTo in deg.
	Lean, LeansTo float64
	// Slack are the stays that bear nothing, by their places in the list.
	Slack []int
	// Residual is the moment that is left over, as a part of the push.
	Residual float64

	of    Sharing
	theta vector
}

// errFalls says that a set of stays can't hold a push.
var errFalls = errors.New("these stays do not hold the mast against this push")

const mostRounds = 200

func (s Sharing) check() error {
	var in inputs
	in.must(len(s.Stays) > 0 && len(s.Stays) <= mostStays, "sharing takes 1 to %d stays, not %d", mostStays, len(s.Stays))
	in.moment("the push", s.Push)
	in.finite("the direction of the push", s.Toward, "deg")
	for i, e := range s.Stays {
		name := HeldStay{Name: e.Name}.named(i)
		in.stay(name, e.Line, 0)
		in.positive("the stiffness of "+name, e.EA, "N")
		in.notNegative("the pull at rest of "+name, e.AtRest, "N")
	}
	return in.err
}

// Reckon shares the push. The lean makes the energy least; the energy is convex and
// smooth, so Newton's step with halving always gets there.
func (s Sharing) Reckon() (SharingResult, error) {
	if err := s.check(); err != nil {
		return SharingResult{}, err
	}
	push := toward(s.Toward).times(s.Push)
	scale := s.Push
	for _, e := range s.Stays {
		scale += e.Line.moment().size() * e.AtRest
	}
	var lean vector
	for range mostRounds {
		left, k := s.left(lean, push)
		if left.size() <= 1e-12*scale {
			return s.result(lean, push), nil
		}
		step := k.solve(left)
		t := 1.0
		for now := s.energy(lean, push); t > 1e-9 && s.energy(lean.plus(step.times(t)), push) > now; {
			t /= 2
		}
		if lean = lean.plus(step.times(t)); lean.size() > 0.5 {
			return SharingResult{}, errFalls
		}
	}
	if left, _ := s.left(lean, push); left.size() <= 1e-6*scale {
		return s.result(lean, push), nil
	}
	return SharingResult{}, errFalls
}

// pull is what a stay bears at a lean.
func (e ElasticStay) pull(lean vector) float64 { return max(0, e.stretched(lean)) }

// stretched is the same with the pushes that a slack stay can't bear.
func (e ElasticStay) stretched(lean vector) float64 {
	return e.AtRest - e.EA/e.length()*e.Line.moment().dot(lean)
}

func (e ElasticStay) length() float64 { return e.Line.length() }

// energy is what stays and push have stored at a lean.
func (s Sharing) energy(lean, push vector) float64 {
	sum := -push.dot(lean)
	for _, e := range s.Stays {
		t := e.pull(lean)
		sum += t * t * e.length() / e.EA / 2
	}
	return sum
}

// left is the moment that nothing holds at a lean, and the stiffness of what isn't
// slack. A stay about to go slack or to come tight counts as tight. A trace of every
// stay's stiffness stays in, so that a lean that nothing resists leads far out and is
// seen there.
func (s Sharing) left(lean, push vector) (vector, stiffness) {
	var k stiffness
	for _, e := range s.Stays {
		m, by := e.Line.moment(), e.EA/e.length()
		t := e.stretched(lean)
		if t >= 0 {
			push = push.plus(m.times(t))
			k.add(m, by)
		}
		trace := 1e-9 * by * m.dot(m)
		k.xx, k.yy = k.xx+trace, k.yy+trace
	}
	return push, k
}

// stiffness is a symmetric matrix of two by two.
type stiffness struct{ xx, xy, yy float64 }

func (k *stiffness) add(m vector, by float64) {
	k.xx += by * m.x * m.x
	k.xy += by * m.x * m.y
	k.yy += by * m.y * m.y
}

// solve divides by the matrix, which is positive definite.
func (k stiffness) solve(b vector) vector {
	det := k.xx*k.yy - k.xy*k.xy
	return vector{(k.yy*b.x - k.xy*b.y) / det, (k.xx*b.y - k.xy*b.x) / det}
}

func (s Sharing) result(lean, push vector) SharingResult {
	r := SharingResult{of: s, theta: lean, Lean: degrees(lean.size()), LeansTo: around(lean.x, lean.y)}
	for i, e := range s.Stays {
		t := e.pull(lean)
		r.Pulls = append(r.Pulls, t)
		if t == 0 {
			r.Slack = append(r.Slack, i)
		}
	}
	if left, _ := s.left(lean, push); s.Push > 0 {
		r.Residual = left.size() / s.Push
	}
	return r
}

// Moves is how far the mast moves at a height in mm: x forward, y to port, mm.
func (r SharingResult) Moves(height float64) (x, y float64) {
	return r.theta.x * height, r.theta.y * height
}

// Working writes the calculation down.
func (r SharingResult) Working() []working.Step {
	var steps []working.Step
	for i, t := range r.Pulls {
		e := r.of.Stays[i]
		steps = append(steps, working.Step{Symbol: fmt.Sprintf("T%d", i+1), Meaning: "pull of " + HeldStay{Name: e.Name}.named(i), Formula: "max(0, T0 - EA/L h sin(a) (u . theta))",
			Inputs: given("T0", e.AtRest, "N", "EA", e.EA, "N", "L", e.length(), "mm"), Value: t, Unit: "N", Source: statics})
	}
	return append(steps, working.Step{Symbol: "theta", Meaning: "the mast leans", Formula: "where the energy is least", Inputs: given("M", r.of.Push, "N mm"), Value: r.Lean, Unit: "deg", Source: statics})
}
