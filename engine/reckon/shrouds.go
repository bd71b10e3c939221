package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/rig"
)

var shrouds = Formula{
	Name:  "shrouds",
	Title: "what the shrouds and spreaders of the weather side bear",
	Holds: "a mast hinged at each level and at the deck, straight stays in one plane across the boat, spreaders that only thrust; any number of them",
	Inputs: []Input{
		above("half_beam", quantity.Length, "1.45 m", "distance from the mast to the shroud plate across"),
		{Name: "levels", Takes: Rows, Means: "the heights at which shrouds take hold of the mast, from the lowest",
			Example: `[{"height": "6.6 m", "tip": "1.05 m", "force": "0 kN"}, {"height": "13 m", "force": "2.19 kN"}]`,
			Parts: []Input{
				above("height", quantity.Length, "6.6 m", "height above the deck"),
				optional(from("tip", quantity.Length, "1.05 m", "half length of the spreader there; none at the highest")),
				from("force", quantity.Force, "2 kN", "side force on the mast there"),
			}},
	},
	Results: []Output{
		{Name: "levels", Gives: Parted, Many: true, Means: "what the parts of each level bear, in the order given", Parts: []Output{
			gives("diagonal", quantity.Force, "pull of the shroud from this level down to the one below"),
			gives("vertical", quantity.Force, "pull of the shroud that leads down from this spreader's tip"),
			gives("spreader", quantity.Force, "thrust of the spreader"),
		}},
		bare("moment_residual", "how far the moment at the chainplate is from that of the sails, as a part of it"),
	},
	run: runShrouds,
}

func runShrouds(in *inputs) (outcome, error) {
	s := rig.Shrouds{HalfBeam: in.number("half_beam")}
	for _, l := range in.rows("levels") {
		s.Levels = append(s.Levels, rig.ShroudLevel{Height: l.number("height"), Tip: l.number("tip"), Force: l.number("force")})
	}
	r, err := s.Reckon()
	if in.impossible("levels", err) {
		return outcome{}, nil
	}
	levels := []map[string]any{}
	for _, l := range r.Levels {
		levels = append(levels, map[string]any{"diagonal": l.Diagonal, "vertical": l.Vertical, "spreader": l.Spreader})
	}
	return outcome{results: map[string]any{"levels": levels, "moment_residual": r.Residual()}, working: r.Working()}, nil
}
