package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/strength"
)

var pin = Formula{
	Name:  "pin",
	Title: "what a clevis pin holds in its fork, and how hard it is bent",
	Holds: "a solid round pin of a ductile metal, the plate midway between the cheeks; ultimate loads without a safety factor",
	Inputs: []Input{
		above("diameter", quantity.Length, "16 mm", "diameter of the pin"),
		from("force", quantity.Force, "60 kN", "the force that its moment is wanted for"),
		above("plate", quantity.Length, "8 mm", "thickness of the plate in the middle"),
		above("cheek", quantity.Length, "6 mm", "thickness of each cheek of the fork"),
		from("gap", quantity.Length, "0.5 mm", "gap between plate and cheek, on each side"),
		above("yield", quantity.Stress, "450 MPa", "yield strength of the pin"),
		above("ultimate", quantity.Stress, "700 MPa", "ultimate strength of the pin"),
	},
	Results: []Output{
		gives("shear", quantity.Force, "it shears on both planes"),
		gives("bending", quantity.Force, "it folds"),
		gives("moment", quantity.Moment, "its moment at the force given"),
	},
	run: runPin,
}

func runPin(in *inputs) (outcome, error) {
	in.atMost("yield", "ultimate")
	r, err := strength.Pin{
		Diameter: in.number("diameter"), Plate: in.number("plate"), Cheek: in.number("cheek"), Gap: in.number("gap"),
		Force: in.number("force"), Yield: in.number("yield"), Ultimate: in.number("ultimate"),
	}.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	return outcome{results: map[string]any{"shear": r.Shear, "bending": r.Bending, "moment": r.Moment}, working: r.Working()}, nil
}
