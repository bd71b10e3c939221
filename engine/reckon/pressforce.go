package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/sheet"
)

var pressForce = Formula{
	Name:  "press-force",
	Title: "what a press must push with to fold plate in an open die",
	Holds: "dies of 5 to 20 times the thickness; charted for 2 to 12 mm, oehler for 0.5 to 10 mm, the greater of both if no method is named; a press is held to 0.8 of its rating",
	Inputs: []Input{
		above("thickness", quantity.Length, "6 mm", "thickness of the plate"),
		above("length", quantity.Length, "40 mm", "length of the fold: the width of the strip"),
		above("die", quantity.Length, "48 mm", "opening of the die"),
		above("ultimate", quantity.Stress, "700 MPa", "upper ultimate strength of the metal, not the least of its specification"),
		optional(oneOf("method", []string{string(sheet.Charted), string(sheet.Oehler)}, "charted", "where the constant comes from; the greater of the two if left out")),
	},
	Results: []Output{gives("force", quantity.Force, "the press pushes")},
	run:     runPressForce,
}

func runPressForce(in *inputs) (outcome, error) {
	in.below("thickness", "die")
	r, err := sheet.PressForce{Thickness: in.number("thickness"), Length: in.number("length"), Die: in.number("die"),
		Ultimate: in.number("ultimate"), Method: sheet.ForceMethod(in.word("method"))}.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	return outcome{results: map[string]any{"force": r.Force}, working: r.Working()}, nil
}
