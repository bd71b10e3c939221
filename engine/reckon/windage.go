package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/rig"
)

var windage = Formula{
	Name:  "windage",
	Title: "how hard the wind pushes on a bare mast or a furled sail",
	Holds: "a round across the wind that stands up from its foot, drag coefficient 1.2 at any wind: the drag crisis is not credited",
	Inputs: []Input{
		above("diameter", quantity.Length, "170 mm", "its width across the wind, with track and halyards"),
		above("length", quantity.Length, "13 m", "its length"),
		from("wind", quantity.Speed, "25 kn", "speed of the wind"),
		optional(above("gust", quantity.Bare, "1.4", "gust over wind, 1 to 3; if left out the wind is the gust itself")),
	},
	Results: []Output{
		gives("drag", quantity.ForcePerLength, "push for each length of it"),
		gives("force", quantity.Force, "push on all of it"),
		gives("moment", quantity.Moment, "its moment about the foot"),
	},
	run: runWindage,
}

func runWindage(in *inputs) (outcome, error) {
	r, err := rig.Windage{Diameter: in.number("diameter"), Length: in.number("length"), Wind: in.number("wind") / quantity.MetrePerSecond, Gust: in.number("gust")}.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	return outcome{results: map[string]any{"drag": r.Drag, "force": r.Force, "moment": r.Moment}, working: r.Working()}, nil
}
