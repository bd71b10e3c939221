package rig

import (
	"math"

	"chainwale/engine/working"
)

// StayRole is what a stay is for.
type StayRole string

// The roles that required break loads and working practice depend on.
const (
	Forestay      StayRole = "forestay"
	InnerForestay StayRole = "inner forestay"
	Backstay      StayRole = "backstay"
	CapShroud     StayRole = "cap shroud"
	Intermediate  StayRole = "intermediate"
	SingleLower   StayRole = "single lower"
	ForeLower     StayRole = "fore lower"
	AftLower      StayRole = "aft lower"
	RunningStay   StayRole = "running backstay"
	Bobstay       StayRole = "bobstay"
	WhiskerStay   StayRole = "whisker"
)

// Required is a required break load of a stay.
type Required struct {
	BreakLoad float64
	steps     []working.Step
}

// Working writes the calculation down.
func (r Required) Working() []working.Step { return r.steps }

var pydFactors = working.Source{Title: "after Larsson and Eliasson, Principles of Yacht Design", Clause: "ch. 11", As: working.Memory, For: "the factor"}

// shroudFactors are the required break loads over the pulls, by role.
var shroudFactors = map[StayRole]float64{CapShroud: 3.0, Intermediate: 2.3, SingleLower: 2.8, ForeLower: 2.5, AftLower: 2.5}

// RequiredShroud is the break load that a shroud must have.
//
// Returns the break load, N.
//
// Equation: F = k pull; k 3.0 for the vertical that runs down from a spreader (cap
// shroud), 2.3 for a diagonal between spreaders, 2.8 for a single lower, 2.5 for each
// of two lowers.
//
// Symbols: Role; Pull, N, by Shrouds, the larger of the load cases.
//
// Holds for wire. Whether 2.5 is for each of two lowers or for the pair is not known;
// each is the safe reading.
//
// Source: the NBS method after Larsson and Eliasson (memory). Errors: a role that is
// no shroud, a pull that is missing or negative.
type RequiredShroud struct {
	Role StayRole
	Pull float64
}

// Reckon gives the break load.
func (s RequiredShroud) Reckon() (Required, error) {
	k, ok := shroudFactors[s.Role]
	var in inputs
	in.must(ok, "a %s is no shroud with a factor of its own", s.Role)
	in.notNegative("the pull of the shroud", s.Pull, "N")
	if in.err != nil {
		return Required{}, in.err
	}
	return Required{k * s.Pull, []working.Step{{Symbol: "Freq", Meaning: "break load that the " + string(s.Role) + " must have", Formula: "k F", Inputs: given("k", k, "", "F", s.Pull, "N"), Value: k * s.Pull, Unit: "N", Source: pydFactors}}}, nil
}

// RequiredStay is the break load that a stay fore and aft must have.
//
// Returns the break load, N.
//
// Equation:
//
//	forestay              15 RM/(h + Fs)
//	inner forestay        12 RM/(h + Fs)
//	backstay to the masthead   F sin(af)/sin(aa), F of the forestay
//	backstay, fractional       2.8 RM/(h sin(aa))
//
// Symbols: Role; RightingMoment RM, N mm; Height h of its attachment above the deck
// (for a fractional backstay, of the forestay), Freeboard Fs, mm; ForestayAngle af
// and Angle aa to the mast, deg; Fractional, where the forestay ends below the masthead.
//
// Holds for monohulls with one mast. A fractional rig's swept shrouds bear part of it.
//
// Source: the NBS method after Larsson and Eliasson (memory). Errors: a role that is
// none of these, numbers that are missing, an angle outside 2 to 80 deg.
type RequiredStay struct {
	Role                 StayRole
	RightingMoment       float64
	Height, Freeboard    float64
	Angle, ForestayAngle float64
	Fractional           bool
}

// Reckon gives the break load.
func (s RequiredStay) Reckon() (Required, error) {
	var in inputs
	in.moment("the righting moment", s.RightingMoment)
	in.positive("the height of the stay's attachment", s.Height, "mm")
	in.notNegative("the freeboard", s.Freeboard, "mm")
	if s.Role == Backstay {
		in.must(s.Angle >= 2 && s.Angle <= 80, "the backstay's angle to the mast must lie between 2 and 80 deg, not %g", s.Angle)
		in.must(s.Fractional || s.ForestayAngle >= 2 && s.ForestayAngle <= 80, "the forestay's angle to the mast must lie between 2 and 80 deg, not %g", s.ForestayAngle)
	}
	in.must(s.Role == Forestay || s.Role == InnerForestay || s.Role == Backstay, "a %s is neither forestay, inner forestay nor backstay", s.Role)
	if in.err != nil {
		return Required{}, in.err
	}
	high := s.RightingMoment / (s.Height + s.Freeboard)
	step := func(symbol, formula string, value float64, from []working.Input) Required {
		return Required{value, []working.Step{{Symbol: symbol, Meaning: "break load that the " + string(s.Role) + " must have", Formula: formula, Inputs: from, Value: value, Unit: "N", Source: pydFactors}}}
	}
	lengths := given("RM", s.RightingMoment, "N mm", "h", s.Height, "mm", "Fs", s.Freeboard, "mm")
	switch {
	case s.Role == Forestay:
		return step("Freq", "15 RM/(h + Fs)", 15*high, lengths), nil
	case s.Role == InnerForestay:
		return step("Freq", "12 RM/(h + Fs)", 12*high, lengths), nil
	case s.Fractional:
		return step("Freq", "2.8 RM/(h sin(aa))", 2.8*s.RightingMoment/(s.Height*math.Sin(radians(s.Angle))), append(lengths, given("aa", s.Angle, "deg")...)), nil
	}
	value := 15 * high * math.Sin(radians(s.ForestayAngle)) / math.Sin(radians(s.Angle))
	return step("Freq", "15 RM/(h + Fs) sin(af)/sin(aa)", value, append(lengths, given("af", s.ForestayAngle, "deg", "aa", s.Angle, "deg")...)), nil
}
