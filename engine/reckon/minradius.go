package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/sheet"
	"chainwale/engine/table"
)

var minRadius = Formula{
	Name:  "min-radius",
	Title: "the smallest inside radius that plate of a metal is folded to",
	Holds: "annealed plate with rounded edges, up to 20 mm; the working shows the radius to ask for; cold-worked strip needs up to 6 times its thickness",
	Inputs: []Input{
		called("metal", "316L", "the metal by its plain name"),
		above("thickness", quantity.Length, "6 mm", "thickness of the plate"),
		oneOf("grain", []string{string(sheet.AcrossGrain), string(sheet.AlongGrain), string(sheet.UnknownGrain)}, "across", "how the fold line runs to the rolling direction; unknown counts as along"),
	},
	Results: []Output{gives("radius", quantity.Length, "below it a fold is not to be made")},
	run:     runMinRadius,
}

func runMinRadius(in *inputs) (outcome, error) {
	m, err := table.MetalFor(in.word("metal"), in.number("thickness"), false)
	if err := in.looked("metal", err); err != nil || in.refusal() != nil {
		return outcome{}, beyond(err)
	}
	r, err := sheet.MinRadius{Metal: m.Family, Thickness: in.number("thickness"), Grain: sheet.Grain(in.word("grain"))}.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	return outcome{results: map[string]any{"radius": r.Radius}, working: r.Working()}, nil
}
