package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/strength"
)

var pinPlate = Formula{
	Name:  "pin-plate",
	Title: "what a plate holds that is pulled by a pin in its hole",
	Holds: "a flat plate pulled along its length and in its own plane, the hole in the middle of its width; ultimate loads without a safety factor",
	Inputs: []Input{
		above("thickness", quantity.Length, "8 mm", "thickness of the plate"),
		above("width", quantity.Length, "50 mm", "width of the plate at the hole"),
		above("hole", quantity.Length, "16.3 mm", "diameter of the hole"),
		above("pin", quantity.Length, "16 mm", "diameter of the pin, as measured"),
		above("end", quantity.Length, "25 mm", "from the hole's centre to the end of the plate, along the pull"),
		optional(from("end_radius", quantity.Length, "25 mm", "radius of a round end; a square end if left out")),
		above("yield", quantity.Stress, "205 MPa", "yield strength of the plate"),
		above("ultimate", quantity.Stress, "515 MPa", "ultimate strength of the plate"),
	},
	Results: []Output{
		gives("net", quantity.Force, "it tears across the hole"),
		gives("single_plane", quantity.Force, "it tears along one plane beyond the hole"),
		gives("double_plane", quantity.Force, "it tears along the two planes beside the pin"),
		gives("bearing", quantity.Force, "the hole begins to grow: a yield limit, for the load at work"),
		gives("ultimate", quantity.Force, "it breaks: the least of the three ways to tear"),
		word("governs", "the way it tears"),
	},
	run: runPinPlate,
}

func runPinPlate(in *inputs) (outcome, error) {
	in.atMost("pin", "hole")
	in.below("hole", "width")
	in.must(in.number("hole")/2 < in.number("end"), "end", "the hole of %s breaks out of an end %s from its centre", in.text("hole"), in.text("end"))
	in.atMost("yield", "ultimate")
	r, err := strength.PinPlate{
		Thickness: in.number("thickness"), Width: in.number("width"), Hole: in.number("hole"), Pin: in.number("pin"),
		End: in.number("end"), EndRadius: in.number("end_radius"), Yield: in.number("yield"), Ultimate: in.number("ultimate"),
	}.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	return outcome{results: map[string]any{
			"net": r.Net, "single_plane": r.SinglePlane, "double_plane": r.DoublePlane,
			"bearing": r.Bearing, "ultimate": r.Ultimate, "governs": r.Governs,
		}, working: r.Working()},

		nil
}
