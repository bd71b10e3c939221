package rig

import (
	"math"

	"chainwale/engine/working"
)

// BowspritStay is a bobstay or a pair of whisker stays that keep a bowsprit where it is.
//
// Returns the pull in it when the forestay pulls, and the break load it must have to
// outlast the forestay, N.
//
// Equation:
//
//	bobstay:  F = Ff sin(af)/sin(ab)        angles to the bowsprit
//	whisker:  F = side share * Ff sin(af)/sin(ab)
//
// Symbols: ForestayPull Ff and ForestayBreak, N; ForestayAngle af up from the
// bowsprit, Angle ab of the stay to the bowsprit, deg; SideShare, how much of the
// forestay's lift turns sideways when the sail is full, 0.2 if left 0, for whiskers only.
//
// Holds for a bowsprit hinged at its heel, which takes the thrust.
//
// Source: statics (computed), the side share (judgement). Errors: a role that is
// neither, an angle outside 2 to 90 deg, forces that are negative or not finite.
type BowspritStay struct {
	Role                        StayRole
	ForestayPull, ForestayBreak float64
	ForestayAngle, Angle        float64
	SideShare                   float64
}

// BowspritStayResult is the pull and the break load, N.
type BowspritStayResult struct {
	Pull, BreakLoad float64

	share float64
	of    BowspritStay
}

const whiskerSideShare = 0.2

func (b BowspritStay) check() error {
	var in inputs
	in.must(b.Role == Bobstay || b.Role == WhiskerStay, "a %s is neither a bobstay nor a whisker", b.Role)
	in.notNegative("the pull of the forestay", b.ForestayPull, "N")
	in.notNegative("the break load of the forestay", b.ForestayBreak, "N")
	in.must(b.ForestayAngle >= 2 && b.ForestayAngle <= 90, "the forestay's angle to the bowsprit must lie between 2 and 90 deg, not %g", b.ForestayAngle)
	in.must(b.Angle >= 2 && b.Angle <= 90, "the %s's angle to the bowsprit must lie between 2 and 90 deg, not %g", b.Role, b.Angle)
	in.must(b.SideShare >= 0 && b.SideShare <= 1, "the side share must lie between 0 and 1, not %g", b.SideShare)
	return in.err
}

// Reckon gives the pull and the break load.
func (b BowspritStay) Reckon() (BowspritStayResult, error) {
	if err := b.check(); err != nil {
		return BowspritStayResult{}, err
	}
	r := BowspritStayResult{share: 1, of: b}
	if b.Role == WhiskerStay {
		r.share = b.SideShare
		if r.share == 0 {
			r.share = whiskerSideShare
		}
	}
	lift := r.share * math.Sin(radians(b.ForestayAngle)) / math.Sin(radians(b.Angle))
	r.Pull, r.BreakLoad = lift*b.ForestayPull, lift*b.ForestayBreak
	return r, nil
}

// Working writes the calculation down.
func (r BowspritStayResult) Working() []working.Step {
	source := statics
	if r.of.Role == WhiskerStay {
		source = judgement
	}
	from := given("s", r.share, "", "af", r.of.ForestayAngle, "deg", "ab", r.of.Angle, "deg")
	return []working.Step{
		{Symbol: "F", Meaning: "pull of the " + string(r.of.Role), Formula: "s Ff sin(af)/sin(ab)", Inputs: append(from, given("Ff", r.of.ForestayPull, "N")...), Value: r.Pull, Unit: "N", Source: source},
		{Symbol: "Freq", Meaning: "break load with which the " + string(r.of.Role) + " outlasts the forestay", Formula: "s Fbreak sin(af)/sin(ab)", Inputs: append(from[:3:3], given("Fbreak", r.of.ForestayBreak, "N")...), Value: r.BreakLoad, Unit: "N", Source: source},
	}
}
