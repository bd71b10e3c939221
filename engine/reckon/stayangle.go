package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/rig"
)

var stayAngle = Formula{
	Name:  "stay-angle",
	Title: "how a stay stands to the mast, and how much of its pull goes sideways",
	Holds: "a straight stay and an upright mast; practice keeps shrouds at 10 to 12 deg or more, and 9 is the floor",
	Inputs: []Input{
		either("x", quantity.Length, "0 m", "how far forward of the mast it lands"),
		either("y", quantity.Length, "1.45 m", "how far to port of the mast it lands"),
		either("z", quantity.Length, "1.2 m", "how high above the heel it lands"),
		above("height", quantity.Length, "13 m", "height of its attachment above the heel"),
	},
	Results: []Output{
		gives("angle", quantity.Angle, "angle to the mast"),
		bare("horizontal_share", "part of its pull that goes sideways"),
	},
	run: runStayAngle,
}

func runStayAngle(in *inputs) (outcome, error) {
	r, err := rig.StayLine{Foot: rig.Point{X: in.number("x"), Y: in.number("y"), Z: in.number("z")}, Height: in.number("height")}.Reckon()
	if in.impossible("height", err) {
		return outcome{}, nil
	}
	return outcome{results: map[string]any{"angle": r.Angle, "horizontal_share": r.Sideways}, working: r.Working()}, nil
}
