// Package rig holds the mechanics of a stayed mast: what the stays have to bear,
// what wire and line are worth, how a mast stands while some of its stays are off,
// and in which order they may come off.
//
// A formula is a struct of inputs with a Reckon method, as in package strength; its
// result's Working writes down how the numbers came about. Lengths are in mm, forces
// in N, moments in N mm, stresses in MPa, angles in deg, masses in kg, wind in m/s,
// times in s. The axes are x forward, y to port, z up, from the mast's heel.
//
// The planner (Standing, Suggest) takes stays, stand-ins, steps and a demand as plain
// data and gives plain data. It knows nothing of plan files or rules.
//
// Nothing here ever calls a mast safe: there are margins, and the assumptions they
// rest on (Assumptions).
package rig

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"chainwale/engine/working"
)

const (
	// gravity is standard gravity, m/s2.
	gravity = 9.80665
	// airDensity is that of air at 15 degC, kg/m3.
	airDensity = 1.225
	// airViscosity is the kinematic one, m2/s.
	airViscosity = 1.46e-5
)

// A number outside these bounds is no size, force or moment of a boat, and could
// only overflow or vanish on its way through a formula.
const (
	least = 1e-9
	most  = 1e9
)

// inputs collects what is wrong with the numbers given to a formula. The first
// fault stands.
type inputs struct{ err error }

// must notes a fault unless a condition holds. A comparison with NaN is false, so
// an unknown number never slips through.
func (in *inputs) must(ok bool, format string, args ...any) {
	if !ok && in.err == nil {
		in.err = fmt.Errorf(format, args...)
	}
}

// positive asks for a finite number above zero.
func (in *inputs) positive(what string, v float64, unit string) {
	in.must(v >= least && v <= most, "%s must be above 0%s, not %g", what, spaced(unit), v)
}

// notNegative asks for a finite number, zero or above.
func (in *inputs) notNegative(what string, v float64, unit string) {
	in.must(v >= 0 && v <= most, "%s can't be %g%s: it must be 0 or more", what, v, spaced(unit))
}

// finite asks for a finite number of either sign.
func (in *inputs) finite(what string, v float64, unit string) {
	in.must(math.Abs(v) <= most, "%s can't be %g%s", what, v, spaced(unit))
}

// moment asks for a finite moment, zero or above.
func (in *inputs) moment(what string, v float64) {
	in.must(v >= 0 && v <= most*1e6, "%s can't be %g N mm: it must be 0 or more", what, v)
}

// share asks for a part of a whole, above zero.
func (in *inputs) share(what string, v float64) {
	in.must(v > 0 && v <= 1, "%s must be above 0 and at most 1, not %g", what, v)
}

func spaced(unit string) string {
	if unit == "" {
		return ""
	}
	return " " + unit
}

// given makes the inputs of a step out of symbol, value, unit.
func given(parts ...any) []working.Input {
	var list []working.Input
	for i := 0; i+2 < len(parts); i += 3 {
		list = append(list, working.Input{Symbol: parts[i].(string), Value: parts[i+1].(float64), Unit: parts[i+2].(string)})
	}
	return list
}

var (
	statics   = working.Source{Title: "statics", As: working.Computed, For: "the form of the equation"}
	geometry  = working.Source{Title: "geometry", As: working.Computed, For: "the form of the equation"}
	judgement = working.Source{Title: "this project's judgement", As: working.Judgement, For: "the value; put your own in its place"}
)

// radians turns degrees, which the outside speaks, into what the sine wants.
func radians(deg float64) float64 { return deg * math.Pi / 180 }

// degrees turns them back.
func degrees(rad float64) float64 { return rad * 180 / math.Pi }

// around is an angle of a direction in the plane of the deck: 0 forward, 90 port, 0 to 360.
func around(x, y float64) float64 {
	a := degrees(math.Atan2(y, x))
	if a < -1e-9 {
		a += 360
	}
	return max(0, a)
}

// joined makes one sentence list of words: "a, b and c".
func joined(words []string) string {
	n := len(words)
	if n < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
}

// errorsOf joins faults, a line each.
func errorsOf(faults []error) error { return errors.Join(faults...) }
