package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/strength"
	"chainwale/engine/working"
)

var strip = Formula{
	Name:  "strip",
	Title: "what a flat strip holds in tension, with a hole in it and out of line",
	Holds: "a solid rectangular section, bent out of its plane if at all; first_yield and plastic are those of the section at the hole",
	Inputs: []Input{
		above("thickness", quantity.Length, "8 mm", "thickness of the strip"),
		above("width", quantity.Length, "50 mm", "width of the strip"),
		optional(from("hole", quantity.Length, "12 mm", "diameter of a hole in the section; none if left out")),
		optional(from("offset", quantity.Length, "2 mm", "how far the load's line lies off the middle of the thickness; nought if left out")),
		from("force", quantity.Force, "15 kN", "the force that the tensions are held against in the working"),
		above("yield", quantity.Stress, "205 MPa", "yield strength of the strip"),
		above("ultimate", quantity.Stress, "515 MPa", "ultimate strength of the strip"),
	},
	Results: []Output{
		gives("gross", quantity.Force, "the whole section yields"),
		gives("net", quantity.Force, "the section at the hole breaks"),
		gives("first_yield", quantity.Force, "one face begins to yield"),
		gives("plastic", quantity.Force, "the section has yielded through and through"),
	},
	run: runStrip,
}

func runStrip(in *inputs) (outcome, error) {
	in.below("hole", "width")
	in.atMost("yield", "ultimate")
	r, err := strength.Strip{
		Thickness: in.number("thickness"), Width: in.number("width"), Hole: in.number("hole"), Offset: in.number("offset"),
		Yield: in.number("yield"), Ultimate: in.number("ultimate"),
	}.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	steps := r.Working()
	force := in.number("force")
	for _, of := range []struct {
		use, tension, meaning string
		value                 float64
	}{
		{"Ug", "Ng", "part that the force uses of the yield of the whole section", r.Gross},
		{"Uu", "Nu", "part that it uses of the break at the hole", r.Net},
		{"U1", "N1", "part that it uses of the first yield", r.FirstYield},
		{"Up", "Np", "part that it uses of the yield through and through", r.Plastic},
	} {
		steps = append(steps, working.Step{Symbol: of.use, Meaning: of.meaning, Formula: "F/" + of.tension,
			Inputs: []working.Input{{Symbol: "F", Value: force, Unit: "N"}, {Symbol: of.tension, Value: of.value, Unit: "N"}},
			Value:  force / of.value, Source: working.Source{Title: "statics", As: working.Computed}})
	}
	return outcome{results: map[string]any{"gross": r.Gross, "net": r.Net, "first_yield": r.FirstYield, "plastic": r.Plastic}, working: steps}, nil
}
