package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/sheet"
)

var holeToBend = Formula{
	Name:  "hole-to-bend",
	Title: "how far a hole stays clear of a fold",
	Holds: "round holes beside a fold in an open die; nearer holes are drilled after folding, and not at all within the distance that the working calls least",
	Inputs: []Input{
		above("thickness", quantity.Length, "6 mm", "thickness of the plate"),
		above("radius", quantity.Length, "12 mm", "inside radius of the fold"),
		above("angle", quantity.Angle, "20 deg", "how far the fold turns the metal from flat"),
		above("die", quantity.Length, "48 mm", "opening of the die"),
	},
	Results: []Output{gives("distance", quantity.Length, "from the middle line of the fold to the near edge of the hole")},
	run:     runHoleToBend,
}

func runHoleToBend(in *inputs) (outcome, error) {
	in.lessThanAFullFold("angle")
	r, err := sheet.HoleToFold{Thickness: in.number("thickness"), Radius: in.number("radius"), Angle: in.number("angle"), Die: in.number("die")}.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	return outcome{results: map[string]any{"distance": r.Distance}, working: r.Working()}, nil
}
