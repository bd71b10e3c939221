package main

import (
	"errors"

	"chainwale/engine/standard"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// clause1 derives the load at which a plate tears across its pin hole:
//
//	N = (w - d)·t·fu
//
// with the plate's width w and the hole d (mm), its thickness t (mm) and the least
// ultimate strength fu (MPa). Valid where the hole leaves metal; the hole is taken to
// stand in the middle. Source: statics; how known: computed.
var clause1 = clauses.Clause{
	Clause: "1",
	Covers: "a plate across its pin hole, the hole in the middle",
	Kind:   "landing",
	Reads: []standard.Read{
		{Name: "hole", Type: standard.Number, Unit: "mm"},
		{Name: "fitting.width", Type: standard.Number, Unit: "mm"},
		{Name: "fitting.thickness", Type: standard.Number, Unit: "mm"},
		{Name: "fitting.metal.ultimate", Type: standard.Number, Unit: "MPa"},
	},
	Facts: []clauses.Fact{{
		Name: "plate_net", Unit: "N", Meaning: "load at which the plate tears across its pin hole",
		From:   []string{"hole", "fitting.width", "fitting.thickness", "fitting.metal.ultimate"},
		Reckon: reckonNet,
	}},
}

func reckonNet(r clauses.Row) (clauses.Result, error) {
	width, hole := r.Number("fitting.width"), r.Number("hole")
	thickness, ultimate := r.Number("fitting.thickness"), r.Number("fitting.metal.ultimate")
	if hole >= width {
		return clauses.Result{}, errors.New("the hole leaves no metal beside it")
	}
	load := (width - hole) * thickness * ultimate
	return clauses.Result{Value: load, Working: func() []working.Step {
		return []working.Step{{
			Symbol: "N", Meaning: "load at which the plate tears across its pin hole", Formula: "(w − d)·t·fu", Value: load, Unit: "N",
			Inputs: []working.Input{
				{Symbol: "w", Value: width, Unit: "mm"}, {Symbol: "d", Value: hole, Unit: "mm"},
				{Symbol: "t", Value: thickness, Unit: "mm"}, {Symbol: "fu", Value: ultimate, Unit: "MPa"},
			},
			Source: working.Source{Title: "statics of a strip with a hole", As: working.Computed},
		}}
	}}, nil
}
