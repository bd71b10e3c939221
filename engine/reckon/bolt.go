package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/strength"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

var bolt = Formula{
	Name:  "bolt",
	Title: "what one bolt holds across and along its length",
	Holds: "a bolt that bears on metal, one shear plane; in timber or laminate it also bends, see host; preload is not credited",
	Inputs: []Input{
		called("thread", "M10", "the thread: M10, 3/8-16 UNC"),
		called("grade", "A4-70", "the marking of its grade: A4-70, F593G, 8.8"),
		{Name: "threads_in_plane", Takes: YesNo, Example: "yes", Means: "whether the threads reach into the shear plane"},
		optional(from("pull", quantity.Force, "5 kN", "a pull along the bolt; none if left out")),
	},
	Results: []Output{
		gives("area", quantity.Area, "the area in the shear plane"),
		gives("shear", quantity.Force, "it shears"),
		gives("tension", quantity.Force, "it breaks along its length"),
		gives("together", quantity.Force, "the shear it still holds under the pull"),
	},
	run: runBolt,
}

func runBolt(in *inputs) (outcome, error) {
	thread, err := table.Thread(in.word("thread"))
	if err := in.looked("thread", err); err != nil {
		return outcome{}, err
	}
	named, err := table.BoltGrade(in.word("grade"))
	if err := in.looked("grade", err); err != nil || in.refusal() != nil {
		return outcome{}, err
	}
	grade, err := table.BoltGradeAt(in.word("grade"), thread.Diameter)
	if err != nil {
		return outcome{}, beyond(err)
	}
	r, err := strength.Bolt{StressArea: thread.StressArea, Diameter: thread.Diameter, Yield: grade.Yield, Ultimate: grade.Ultimate,
		ThreadsInPlane: in.yes("threads_in_plane"), Pull: in.number("pull")}.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	of := "the grade"
	if grade.Name != named.Name {
		of = "the class that " + named.Name + " counts as in this size"
	}
	steps := []working.Step{
		fromTable("As", "stress area of the thread", thread.Name, thread.StressArea, "mm2", thread.Source),
		fromTable("Fy", "yield strength of "+of, grade.Name, grade.Yield, "MPa", grade.Source),
		fromTable("Fu", "ultimate strength of "+of, grade.Name, grade.Ultimate, "MPa", grade.Source),
	}
	return outcome{results: map[string]any{"area": r.Area, "shear": r.Shear, "tension": r.Tension, "together": r.Together}, working: append(steps, r.Working()...)}, nil
}

// fromTable is the step of a look-up: which row a number comes from.
func fromTable(symbol, meaning, row string, value float64, unit string, source working.Source) working.Step {
	return working.Step{Symbol: symbol, Meaning: meaning, Formula: "from the table: " + row, Value: value, Unit: unit, Source: source}
}
