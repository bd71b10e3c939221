package reckon

import (
	"errors"
	"fmt"

	"chainwale/engine/quantity"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

var wire = Formula{
	Name:  "wire",
	Title: "what a wire breaks at, and how that is known",
	Holds: "new wire to its specification; where no row of the table has the diameter, the least that the rows near it bear out; a certificate is better than any table",
	Inputs: []Input{
		called("construction", "1x19", "how it is made: 1x19, 7x19, 7x7, compacted, rod"),
		called("metal", "316", "its metal: 316, 304, galvanised; stainless if no more is known"),
		above("diameter", quantity.Length, "8 mm", "its diameter"),
	},
	Results: []Output{
		gives("break_load", quantity.Force, "the least load that it breaks at"),
		word("how", "how that is known, and from where"),
	},
	run: runWire,
}

func runWire(in *inputs) (outcome, error) {
	build, err := table.WireBuildOf(in.word("construction"))
	if err := in.looked("construction", err); err != nil || in.refusal() != nil {
		return outcome{}, err
	}
	w, err := table.Wire(build.Construction, in.word("metal"), in.number("diameter"))
	var unknown *table.UnknownName
	switch {
	case errors.As(err, &unknown):
		return outcome{}, in.looked("metal", err)
	case err != nil:
		return outcome{}, beyond(err)
	}
	how := string(w.Source.As) + ": " + sourceText(w.Source)
	if w.Note != "" {
		how += "; " + w.Note
	}
	return outcome{results: map[string]any{"break_load": w.BreakLoad, "how": how}, working: []working.Step{wireStep(w)}}, nil
}

// wireStep says which row the break load comes from, or that it follows from the
// rows near by.
func wireStep(w table.WireRow) working.Step {
	row := fmt.Sprintf("%s of %s, %s", w.Construction, w.Metal, w.Size)
	if !w.FromFormula {
		return fromTable("Fbreak", "the wire breaks", row, w.BreakLoad, "N", w.Source)
	}
	return working.Step{Symbol: "Fbreak", Meaning: "the wire breaks", Formula: fmt.Sprintf("c d^2, the least c of %s of %s near this diameter", w.Construction, w.Metal),
		Inputs: []working.Input{{Symbol: "d", Value: w.Diameter, Unit: "mm"}}, Value: w.BreakLoad, Unit: "N", Source: w.Source}
}
