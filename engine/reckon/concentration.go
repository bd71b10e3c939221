package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/strength"
)

var stressConcentration = Formula{
	Name:  "stress-concentration",
	Title: "how much higher the stress peaks at a hole than it is on average",
	Holds: "a round hole in the middle of a flat strip; for ranking places that can't be seen, never for static strength",
	Inputs: []Input{
		above("width", quantity.Length, "50 mm", "width of the strip"),
		above("hole", quantity.Length, "10 mm", "diameter of the hole"),
		oneOf("kind", []string{string(strength.OpenHole), string(strength.PinHole)}, "open", "open for an empty hole, pin for one that a close pin pulls on"),
	},
	Results: []Output{bare("net_factor", "peak stress over the mean stress of the section at the hole")},
	run:     runStressConcentration,
}

func runStressConcentration(in *inputs) (outcome, error) {
	in.below("hole", "width")
	r, err := strength.StressConcentration{Kind: strength.HoleLoad(in.word("kind")), Width: in.number("width"), Hole: in.number("hole")}.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	return outcome{results: map[string]any{"net_factor": r.NetFactor}, working: r.Working()}, nil
}
