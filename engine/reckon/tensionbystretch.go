package reckon

import (
	"errors"

	"chainwale/engine/quantity"
	"chainwale/engine/rig"
	"chainwale/engine/table"
)

var tensionByStretch = Formula{
	Name:  "tension-by-stretch",
	Title: "the pull in a wire by how much a length of it has stretched",
	Holds: "wire that has bedded in, from slack, to half its break load; the stiffness of laid-up wire is known to 15 % either way",
	Inputs: []Input{
		called("construction", "1x19", "how it is made: 1x19, 7x19, 7x7, compacted, rod"),
		called("metal", "316", "its metal: 316, 304, galvanised; stainless if no more is known"),
		above("diameter", quantity.Length, "6 mm", "its diameter"),
		above("gauge_length", quantity.Length, "2 m", "length that the stretch is measured on"),
		from("stretch", quantity.Length, "3 mm", "how much longer it has become from slack"),
	},
	Results: []Output{
		gives("tension", quantity.Force, "the pull in the wire"),
		bare("share_of_break", "its part of the break load"),
	},
	run: runTensionByStretch,
}

func runTensionByStretch(in *inputs) (outcome, error) {
	construction, metal := in.word("construction"), in.word("metal")
	_, err := table.WireBuildOf(construction)
	if err := in.looked("construction", err); err != nil || in.refusal() != nil {
		return outcome{}, err
	}
	r, err := rig.TensionByStretch{Wire: rig.Wire{Construction: construction, Metal: metal, Diameter: in.number("diameter")},
		GaugeLength: in.number("gauge_length"), Stretch: in.number("stretch")}.Reckon()
	var unknown *table.UnknownName
	switch {
	case errors.As(err, &unknown):
		return outcome{}, in.looked("metal", err)
	case err != nil:
		return outcome{}, beyond(err)
	}
	return outcome{results: map[string]any{"tension": r.Tension, "share_of_break": r.Share}, working: r.Working()}, nil
}
