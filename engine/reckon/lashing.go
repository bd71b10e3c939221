package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/rig"
)

var lashing = Formula{
	Name:  "lashing",
	Title: "what a line holds in one part or in turns, with its splice or knot and its bend",
	Holds: "smooth rounds, turns hauled tight one by one; the fibre is not asked for, so that a knot counts as in the one it is weakest in",
	Inputs: []Input{
		above("line_break", quantity.Force, "13.6 kN", "least break load of the line"),
		counted("parts", "6", "parts that share the load, two a full turn"),
		called("splice_or_knot", "turns", "how its end is made fast: splice, bowline, knot, joining knot, turns"),
		from("pin", quantity.Length, "12 mm", "diameter of the round that it bends over; 0 mm where a thimble takes the bend"),
		above("rope", quantity.Length, "4 mm", "diameter of the line"),
	},
	Results: []Output{
		gives("break_load", quantity.Force, "the lashing breaks"),
		{Name: "factors", Gives: Parted, Many: true, Means: "what was counted", Parts: []Output{word("what", "end, bend or parts"), bare("factor", "what it leaves or adds")}},
	},
	run: runLashing,
}

func runLashing(in *inputs) (outcome, error) {
	r, err := rig.Lashing{LineBreak: in.number("line_break"), Parts: in.count("parts"), End: in.word("splice_or_knot"), Pin: in.number("pin"), Line: in.number("rope")}.Reckon()
	if err != nil {
		return outcome{}, beyond(in.looked("splice_or_knot", err))
	}
	factors := []map[string]any{}
	for _, f := range r.Factors {
		factors = append(factors, map[string]any{"what": f.What, "factor": f.Factor})
	}
	return outcome{results: map[string]any{"break_load": r.BreakLoad, "factors": factors}, working: r.Working()}, nil
}
