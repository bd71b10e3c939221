package clauses

import (
	"errors"
	"fmt"
)

// Steel says why a part is not covered by a standard for steel unless it is of steel.
func Steel(part, family string) error {
	if family == "steel" || family == "stainless" {
		return nil
	}
	return fmt.Errorf("the standard is for steel, and %s is of %s", part, family)
}

// PlainHole says why a bolt hole is not covered by a standard for steel: only a round
// hole under a plain head, in one line of bolts along a steel plate, pulled along that
// line.
func PlainHole(r Row) error {
	switch r.Word("bolt_head") {
	case "countersunk":
		return errors.New("the head is countersunk, and how deep it is sunk into the plate is not known")
	case "square-neck":
		return errors.New("a square neck stands in a square hole, and only round ones are covered")
	}
	if !r.Yes("in_line") {
		return errors.New("bolts stand beside each other, and how they share the metal between them is not covered here")
	}
	if lean := r.Number("lean"); lean > MostLeanOfBolts || lean < -MostLeanOfBolts {
		return fmt.Errorf("the wire leans %.3g deg across the plate in its plane, so its bolts are not pulled along their line; up to %d deg is covered", lean, MostLeanOfBolts)
	}
	return Steel("the plate", r.Word("fitting.metal.family"))
}
