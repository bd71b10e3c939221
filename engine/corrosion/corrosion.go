// Package corrosion holds what can be reckoned about pitting and about unlike
// metals that touch. It ranks and warns; it never tells how long a metal lasts.
//
// As in package strength, a formula is a struct of inputs with a Reckon method,
// and its result's Working method writes the calculation down.
package corrosion

import (
	"fmt"

	"chainwale/engine/working"
)

// inputs collects what is wrong with the numbers given to a formula. The first
// fault stands; a comparison with NaN is false, so an unknown never slips through.
type inputs struct{ err error }

func (in *inputs) must(ok bool, format string, args ...any) {
	if !ok && in.err == nil {
		in.err = fmt.Errorf(format, args...)
	}
}

// given makes the inputs of a step out of symbol, value, unit.
func given(parts ...any) []working.Input {
	var list []working.Input
	for i := 0; i+2 < len(parts); i += 3 {
		list = append(list, working.Input{Symbol: parts[i].(string), Value: parts[i+1].(float64), Unit: parts[i+2].(string)})
	}
	return list
}
