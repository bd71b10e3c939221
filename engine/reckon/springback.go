package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/sheet"
)

var springback = Formula{
	Name:  "springback",
	Title: "what a fold is pressed to, so that the wanted one is left when the press lets go",
	Holds: "metal of one stress at which it flows: annealed austenitic stainless hardens in the fold to three to five times its yield strength, so that its own yield gives a lower bound; " +
		"the legs give 0.5 to 2 deg more; bend a test strip",
	Inputs: []Input{
		above("thickness", quantity.Length, "6 mm", "thickness of the plate"),
		above("radius", quantity.Length, "12 mm", "inside radius that is wanted"),
		above("angle", quantity.Angle, "20 deg", "angle that is wanted, from flat"),
		above("yield", quantity.Stress, "600 MPa", "stress at which the worked metal flows"),
		above("elastic_modulus", quantity.Stress, "193 GPa", "how stiff the metal is"),
	},
	Results: []Output{
		gives("form_angle", quantity.Angle, "angle under the press"),
		gives("form_radius", quantity.Length, "inside radius under the press"),
		bare("ratio", "radius under the press over the radius left"),
	},
	run: runSpringback,
}

func runSpringback(in *inputs) (outcome, error) {
	in.lessThanAFullFold("angle")
	in.below("yield", "elastic_modulus")
	r, err := sheet.Springback{Thickness: in.number("thickness"), Radius: in.number("radius"), Angle: in.number("angle"),
		Yield: in.number("yield"), Modulus: in.number("elastic_modulus")}.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	return outcome{results: map[string]any{"form_angle": r.FormAngle, "form_radius": r.FormRadius, "ratio": r.Ratio}, working: r.Working()}, nil
}
