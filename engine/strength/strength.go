// Package strength holds the mechanics of plates, pins, bolts, strips and hosts:
// one formula a file.
//
// A formula is a struct of inputs. Its Reckon method gives a result struct or an
// error for inputs that it does not hold for; the result's Working method writes
// down, from the values the result already holds, how they came about. Formulas
// take and give numbers in canonical units (mm, mm2, N, N mm, MPa, deg) and know
// nothing of plans, facts or rules.
//
// Every formula's comment has five parts: what it returns; the equation; the
// symbols with their units; where it holds; the source, with how it is known, and
// the errors. Ultimate strengths are nominal: no safety factor is in them unless
// the comment says so.
package strength

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

// refuse notes a fault.
func (in *inputs) refuse(format string, args ...any) {
	if in.err == nil {
		in.err = fmt.Errorf(format, args...)
	}
}

// must notes a fault unless a condition holds. A comparison with NaN is false, so
// an unknown number never slips through.
func (in *inputs) must(ok bool, format string, args ...any) {
	if !ok {
		in.refuse(format, args...)
	}
}

// positive asks for a finite number above zero.
func (in *inputs) positive(what string, v float64, unit string) {
	if !(v >= least && v <= most) {
		in.refuse("%s must be above 0 %s, not %g", what, unit, v)
	}
}

// notNegative asks for a finite number, zero or above.
func (in *inputs) notNegative(what string, v float64, unit string) {
	if !(v >= 0 && v <= most) {
		in.refuse("%s can't be %g %s: it must be 0 or more", what, v, unit)
	}
}

// finite asks for a finite number of either sign.
func (in *inputs) finite(what string, v float64, unit string) {
	if !(math.Abs(v) <= most*1e6) {
		in.refuse("%s can't be %g %s", what, v, unit)
	}
}

// metal asks for a yield and an ultimate strength that belong together.
func (in *inputs) metal(of string, yield, ultimate float64) {
	if least <= yield && yield <= ultimate && ultimate <= most {
		return // nothing is put into words for what is sound
	}
	in.positive("the yield strength of the "+of, yield, "MPa")
	in.positive("the ultimate strength of the "+of, ultimate, "MPa")
	in.must(yield <= ultimate, "the yield strength of the %s (%g MPa) is above its ultimate strength (%g MPa)", of, yield, ultimate)
}

// given makes the inputs of a step out of symbol, value, unit.
func given(parts ...any) []working.Input {
	var list []working.Input
	for i := 0; i+2 < len(parts); i += 3 {
		list = append(list, working.Input{Symbol: parts[i].(string), Value: parts[i+1].(float64), Unit: parts[i+2].(string)})
	}
	return list
}

// statics is the source of what follows from equilibrium and geometry alone.
var statics = working.Source{Title: "statics", As: working.Computed, For: "the form of the equation"}

// roundArea is the area of a circle, mm2 of mm.
func roundArea(diameter float64) float64 { return math.Pi / 4 * diameter * diameter }

// radians turns degrees, which the outside speaks, into what the sine wants.
func radians(deg float64) float64 { return deg * math.Pi / 180 }

// roundEdge is the way around a circle, mm of mm.
func roundEdge(diameter float64) float64 { return math.Pi * diameter }
