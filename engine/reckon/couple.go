package reckon

import (
	"chainwale/engine/corrosion"
	"chainwale/engine/quantity"
	"chainwale/engine/table"
)

var couple = Formula{
	Name:  "couple",
	Title: "what two metals do to each other that touch where it is salt and wet",
	Holds: "sea water and its film, stainless in its passive state as in the open; it ranks and says nothing of how fast metal goes",
	Inputs: []Input{
		called("a", "316", "one metal by its plain name"),
		called("b", "silicon bronze", "the other metal"),
		optional(above("area_a", quantity.Area, "300 cm2", "wetted area of a; of both metals or of neither")),
		optional(above("area_b", quantity.Area, "10 cm2", "wetted area of b")),
		oneOf("exposure", []string{string(corrosion.Harsh), string(corrosion.Normal), string(corrosion.Controlled), string(corrosion.SeaWater)}, "harsh",
			"harsh for splash and bilge, normal for deck and aloft, controlled for a dry cabin, sea water for under water"),
	},
	Results: []Output{
		gives("difference", quantity.Potential, "how far apart they stand, by the means of their ranges"),
		gives("worst", quantity.Potential, "how far apart at most, by the ends of their ranges"),
		word("anode", "the metal that is eaten"),
		word("verdict", "compatible, conditional or incompatible"),
	},
	run: runCouple,
}

func runCouple(in *inputs) (outcome, error) {
	exposure, err := corrosion.ExposureNamed(in.word("exposure"))
	if err != nil {
		return outcome{}, err
	}
	c := corrosion.Couple{Exposure: exposure, AreaA: in.number("area_a"), AreaB: in.number("area_b")}
	c.A, err = table.Galvanic(in.word("a"))
	if err := in.looked("a", err); err != nil {
		return outcome{}, err
	}
	c.B, err = table.Galvanic(in.word("b"))
	if err := in.looked("b", err); err != nil {
		return outcome{}, err
	}
	in.together("area_a", "area_b")
	r, err := c.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	return outcome{results: map[string]any{"difference": r.Difference, "worst": r.Worst, "anode": r.Anode, "verdict": string(r.Verdict)}, working: r.Working()}, nil
}
