package rig

import (
	"fmt"
	"math"

	"chainwale/engine/working"
)

// ShroudLevel is a height at which a side of the rig takes hold of the mast.
type ShroudLevel struct {
	// Height is above the deck, at the spreader's root; Tip is the half length of the
	// spreader there, 0 at the highest level or where there is none. mm.
	Height, Tip float64
	// Force is the side force on the mast at this height, N.
	Force float64
}

// Shrouds is the weather side of a rig with any number of spreaders.
//
// Returns for each level the pull in the Diagonal that ends there, in the Vertical
// that leads down from the spreader's tip there, and the thrust in the Spreader.
//
// Equation, i = 1 lowest, V_n = 0:
//
//	D_n = F_n/sin(beta_n)
//	V_i = (D_i+1 cos(beta_i+1) + V_i+1 cos(gamma_i+1))/cos(gamma_i)
//	C_i = D_i+1 sin(beta_i+1) + V_i+1 sin(gamma_i+1) - V_i sin(gamma_i)
//	D_i = (F_i + C_i)/sin(beta_i)
//	closure: sum(F_i h_i) = b (D_1 cos(beta_1) + V_1 cos(gamma_1))
//
// Symbols: Levels from the lowest; HalfBeam b, mast to chainplate across, mm; beta_i
// the angle of a diagonal, gamma_i that of a vertical to the mast, positive where it
// leads outward on its way down.
//
// Holds for a mast hinged at each level and at the deck, straight stays in one plane
// across the boat, spreaders that thrust and no more: the mast's own stiffness would
// only help. A diagonal D_1 that comes out slack or a spreader that pulls is an error.
//
// Source: statics (computed). Errors: no level, heights that don't rise, a spreader
// missing below the top or given at the top, a shroud plate on the centreline, a
// diagonal that leads inward, a slack diagonal, numbers that are not finite.
type Shrouds struct {
	HalfBeam float64
	Levels   []ShroudLevel
}

// LevelPull is what the parts of a level bear, N; angles in deg.
type LevelPull struct {
	Diagonal, Vertical, Spreader float64
	// DiagonalAngle and VerticalAngle are to the mast.
	DiagonalAngle, VerticalAngle float64
}

// ShroudsResult is what the weather side bears.
type ShroudsResult struct {
	Levels []LevelPull
	// HeelingMoment is sum(F h), HeldMoment what the chainplate holds: they are one, N mm.
	HeelingMoment, HeldMoment float64

	of Shrouds
}

// Residual is how far the two moments are apart, as a part of the heeling moment.
func (r ShroudsResult) Residual() float64 {
	if r.HeelingMoment == 0 {
		return 0
	}
	return math.Abs(r.HeldMoment-r.HeelingMoment) / r.HeelingMoment
}

// mostLevels bounds what a mast can have.
const mostLevels = 20

func (s Shrouds) check() error {
	var in inputs
	in.must(s.HalfBeam != 0, "the shroud plate stands on the centreline: it can't hold the mast sideways")
	in.positive("the distance from the mast to the shroud plate across", s.HalfBeam, "mm")
	in.must(len(s.Levels) > 0, "shrouds need at least one level")
	in.must(len(s.Levels) <= mostLevels, "%d levels are more than the %d that are covered", len(s.Levels), mostLevels)
	below := 0.0
	for i, l := range s.Levels {
		in.positive(fmt.Sprintf("the height of level %d", i+1), l.Height, "mm")
		in.must(l.Height > below, "level %d must stand above the one below it: %g mm is not above %g mm", i+1, l.Height, below)
		in.notNegative(fmt.Sprintf("the side force at level %d", i+1), l.Force, "N")
		in.notNegative(fmt.Sprintf("the spreader of level %d", i+1), l.Tip, "mm")
		top := i == len(s.Levels)-1
		in.must(!top || l.Tip == 0, "the highest level has no spreader: its shroud leads down from the mast itself")
		in.must(top || l.Tip > 0, "level %d has no spreader: without one it holds nothing of what is above it", i+1)
		below = l.Height
	}
	return in.err
}

// Reckon gives the pulls.
func (s Shrouds) Reckon() (ShroudsResult, error) {
	if err := s.check(); err != nil {
		return ShroudsResult{}, err
	}
	r := ShroudsResult{Levels: make([]LevelPull, len(s.Levels)), of: s}
	var above LevelPull
	for i := len(s.Levels) - 1; i >= 0; i-- {
		p := s.angles(i)
		beta, gamma := radians(p.DiagonalAngle), radians(p.VerticalAngle)
		if i < len(s.Levels)-1 {
			betaUp, gammaUp := radians(above.DiagonalAngle), radians(above.VerticalAngle)
			p.Vertical = (above.Diagonal*math.Cos(betaUp) + above.Vertical*math.Cos(gammaUp)) / math.Cos(gamma)
			p.Spreader = above.Diagonal*math.Sin(betaUp) + above.Vertical*math.Sin(gammaUp) - p.Vertical*math.Sin(gamma)
		}
		p.Diagonal = (s.Levels[i].Force + p.Spreader) / math.Sin(beta)
		if p.Spreader < 0 || p.Diagonal < 0 {
			return ShroudsResult{}, fmt.Errorf("level %d would have to push on its shroud or pull on its spreader: these spreaders are too short for the chainplate's width", i+1)
		}
		r.Levels[i], above = p, p
		r.HeelingMoment += s.Levels[i].Force * s.Levels[i].Height
	}
	r.HeldMoment = s.HalfBeam * (above.Diagonal*math.Cos(radians(above.DiagonalAngle)) + above.Vertical*math.Cos(radians(above.VerticalAngle)))
	return r, nil
}

// angles are those of the stays that lead down from a level.
func (s Shrouds) angles(i int) LevelPull {
	foot, base := s.HalfBeam, 0.0
	if i > 0 {
		foot, base = s.Levels[i-1].Tip, s.Levels[i-1].Height
	}
	rise := s.Levels[i].Height - base
	return LevelPull{DiagonalAngle: degrees(math.Atan2(foot, rise)), VerticalAngle: degrees(math.Atan2(foot-s.Levels[i].Tip, rise))}
}

// Working writes the calculation down.
func (r ShroudsResult) Working() []working.Step {
	var steps []working.Step
	for i := len(r.Levels) - 1; i >= 0; i-- {
		p, l, n := r.Levels[i], r.of.Levels[i], fmt.Sprint(i+1)
		if p.Vertical > 0 {
			steps = append(steps,
				working.Step{Symbol: "V" + n, Meaning: "pull of the vertical below the tip of level " + n, Formula: "(D cos(beta) + V cos(gamma) of the level above)/cos(gamma)", Inputs: given("gamma", p.VerticalAngle, "deg"), Value: p.Vertical, Unit: "N", Source: statics},
				working.Step{Symbol: "C" + n, Meaning: "thrust of the spreader at level " + n, Formula: "D sin(beta) + V sin(gamma) of the level above - V sin(gamma)", Inputs: given("V", p.Vertical, "N", "gamma", p.VerticalAngle, "deg"), Value: p.Spreader, Unit: "N", Source: statics})
		}
		steps = append(steps, working.Step{Symbol: "D" + n, Meaning: "pull of the diagonal from level " + n, Formula: "(F + C)/sin(beta)", Inputs: given("F", l.Force, "N", "C", p.Spreader, "N", "beta", p.DiagonalAngle, "deg"), Value: p.Diagonal, Unit: "N", Source: statics})
	}
	return append(steps, working.Step{Symbol: "Mb", Meaning: "moment that the chainplate holds, beside the heeling moment sum(F h)", Formula: "b (D1 cos(beta1) + V1 cos(gamma1))", Inputs: given("b", r.of.HalfBeam, "mm", "sum(F h)", r.HeelingMoment, "N mm"), Value: r.HeldMoment, Unit: "N mm", Source: statics})
}
