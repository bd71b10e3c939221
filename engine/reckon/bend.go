package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/sheet"
)

var bend = Formula{
	Name:  "bend",
	Title: "how much shorter a flat is than the outside of its fold, and where the fold begins",
	Holds: "a fold of less than 180 deg in plate of one thickness, outside lengths to the outer corner; without k the curve of DIN 6935, from 0.25 times the thickness on; " +
		"the working shows how far the published methods differ: at 90 deg only a test strip tells",
	Inputs: []Input{
		above("thickness", quantity.Length, "6 mm", "thickness of the plate"),
		above("radius", quantity.Length, "12 mm", "inside radius of the fold"),
		above("angle", quantity.Angle, "20 deg", "how far the fold turns the metal from flat"),
		optional(from("k", quantity.Bare, "0.42", "neutral line from the inside face in thicknesses, 0 to 0.5, as from a test strip; not the factor of DIN, which is twice that")),
	},
	Results: []Output{
		gives("allowance", quantity.Length, "length of the neutral line through the fold"),
		gives("outside_setback", quantity.Length, "from the outer corner to where the fold begins"),
		gives("deduction", quantity.Length, "the flat is shorter than both outside lengths by this"),
		bare("k", "neutral line from the inside face, in thicknesses"),
	},
	run: runBend,
}

func runBend(in *inputs) (outcome, error) {
	b := sheet.Bend{Thickness: in.number("thickness"), Radius: in.number("radius"), Angle: in.number("angle")}
	in.lessThanAFullFold("angle")
	if in.has("k") {
		b.Method, b.K = sheet.AsGiven, in.number("k")
		in.must(b.K <= 0.5, "k", "the neutral line lies no further than 0.5 thicknesses from the inside face; the factor of DIN is twice what is wanted here")
	}
	r, err := b.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	return outcome{results: map[string]any{"allowance": r.Allowance, "outside_setback": r.OutsideSetback, "deduction": r.Deduction, "k": r.K}, working: r.Working()}, nil
}

// lessThanAFullFold refuses an angle at which the metal lies back on itself.
func (in *inputs) lessThanAFullFold(name string) {
	in.must(in.number(name) < 180, name, "%s would lay the metal back on itself; a fold turns it by less than 180 deg", in.text(name))
}
