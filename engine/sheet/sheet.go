// Package sheet holds what is done to flat strip on its way to a fitting: folds and
// their allowances, springback, the press, the outline and its holes, the flat that
// an old part was made from, and whether a new part's holes meet the old ones.
//
// The files go from numbers to shapes (data reads the tables behind them):
//
//	neutral bend strain springback hardened      one formula a file
//	force die travel radius holefold             one formula a file, at the press
//	tolerance                                    tables of limits and fits
//	point segment contour crossing               closed contours of lines and arcs
//	strip hole flat                              an outline, its holes and folds: a flat
//	fold folding unfold view directions          flat to folded and back, exactly
//	reading measured laid spread                 from readings on the old part to its flat
//	fit match                                    new holes against measured ones
//	shape congruent laying group                 which flats are one pattern
//	profile order bump                           at the press
//
// A formula is a struct of inputs. Its Reckon method gives a result or an error for
// inputs that it does not hold for; the result's Working method writes the
// calculation down. Every formula's comment has five parts: what it returns; the
// equation; the symbols with their units; where it holds; the source, with how it is
// known, and the errors. Numbers are in canonical units: mm, N, MPa, deg.
//
// A flat lies with X along the strip and Y across it, the viewer looking on face A.
// A fold of positive angle turns the far leg towards the viewer.
package sheet

import (
	"fmt"
	"math"

	"chainwale/engine/working"
)

// A number outside these bounds is no size, stress or force of a boat, and could
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
	in.must(v >= least && v <= most, "%s must be above 0 %s, not %g", what, unit, v)
}

// notNegative asks for a finite number, zero or above.
func (in *inputs) notNegative(what string, v float64, unit string) {
	in.must(v >= 0 && v <= most, "%s can't be %g %s: it must be 0 or more", what, v, unit)
}

// finite asks for a finite number of either sign.
func (in *inputs) finite(what string, v float64, unit string) {
	in.must(math.Abs(v) <= most, "%s can't be %g %s", what, v, unit)
}

// given makes the inputs of a step out of symbol, value, unit.
func given(parts ...any) []working.Input {
	var list []working.Input
	for i := 0; i+2 < len(parts); i += 3 {
		list = append(list, working.Input{Symbol: parts[i].(string), Value: parts[i+1].(float64), Unit: parts[i+2].(string)})
	}
	return list
}

// geometry is the source of what follows from shape alone.
var geometry = working.Source{Title: "geometry", As: working.Computed, For: "the form of the equation"}

// radians turns degrees, which the outside speaks, into what the sine wants.
func radians(deg float64) float64 { return deg * math.Pi / 180 }

// degrees is the other way round.
func degrees(rad float64) float64 { return rad * 180 / math.Pi }
