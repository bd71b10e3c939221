package reckon

import (
	"chainwale/engine/corrosion"
	"chainwale/engine/quantity"
)

var pittingResistance = Formula{
	Name:  "pitting-resistance",
	Title: "the number that ranks stainless steels against pits and crevices",
	Holds: "stainless steels; take the least chemistry of the specification, or a certificate's own",
	Inputs: []Input{
		{Name: "cr", Takes: Share, Example: "17 %", Means: "chromium by mass"},
		{Name: "mo", Takes: Share, Example: "2 %", Means: "molybdenum by mass"},
		{Name: "n", Takes: Share, Example: "0.05 %", Means: "nitrogen by mass"},
	},
	Results: []Output{bare("pren", "pitting resistance equivalent number: the more, the better")},
	run:     runPittingResistance,
}

func runPittingResistance(in *inputs) (outcome, error) {
	in.must(in.number("cr")+in.number("mo")+in.number("n") <= 1, "cr", "chromium, molybdenum and nitrogen add up to more than the whole")
	var percent [3]float64
	for i, name := range []string{"cr", "mo", "n"} {
		var err error
		if percent[i], err = (quantity.Quantity{Value: in.number(name)}).In("%"); err != nil {
			return outcome{}, err
		}
	}
	r, err := corrosion.PittingResistance{Chromium: percent[0], Molybdenum: percent[1], Nitrogen: percent[2]}.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	return outcome{results: map[string]any{"pren": r.PREN}, working: r.Working()}, nil
}
