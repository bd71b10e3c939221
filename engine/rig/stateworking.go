package rig

import (
	"fmt"

	"chainwale/engine/working"
)

var credited = working.Source{Title: "this project's judgement of what may be counted on", As: working.Judgement, For: "the part of a strength that is counted on"}

// Working writes down how the numbers of a state came about.
func (s State) Working() []working.Step {
	var steps []working.Step
	for i, h := range s.On {
		steps = append(steps, working.Step{Symbol: fmt.Sprintf("T%d", i+1), Meaning: "pull that " + h.Name + " is counted on for", Formula: "what hangs on " + h.Governs, Value: h.Allowable, Unit: "N", Source: credited})
	}
	push := given("Mw", s.Wind, "N mm", "Mr", s.Roll, "N mm")
	return append(steps,
		working.Step{Symbol: "Mworst", Meaning: "moment held in the weakest direction", Formula: "min over n of sum max(0, T h sin(a) u . n)", Value: s.Worst, Unit: "N mm", Source: statics},
		working.Step{Symbol: "Mw", Meaning: "moment of the gust", Formula: "c V^2", Inputs: given("V", s.Gust, "m/s"), Value: s.Wind, Unit: "N mm", Source: cylinders},
		working.Step{Symbol: "Mr", Meaning: "moment of the roll, to either side", Formula: "as DockRoll has it", Value: s.Roll, Unit: "N mm", Source: statics},
		working.Step{Symbol: "n", Meaning: "times that the push is held; it does not say that the mast is safe", Formula: "min over n of h(n)/(Mw + Mr |n_y|)", Inputs: push, Value: s.Margin, Source: statics},
		working.Step{Symbol: "n1", Meaning: "the same with " + orNone(s.Lost) + " gone too", Formula: "the least with any one more left out", Inputs: push, Value: s.AfterLoss, Source: statics},
		working.Step{Symbol: "Vu", Meaning: "gust at which the wanted margin is used up", Formula: "the V at which n is what is wanted", Inputs: given("wanted", s.Wanted, ""), Value: s.UsedUp, Unit: "m/s", Source: statics})
}

func orNone(name string) string {
	if name == "" {
		return "nothing more"
	}
	return name
}
