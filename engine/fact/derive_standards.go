package fact

import (
	"chainwale/engine/table"
	"chainwale/engine/working"
)

// What design standards ask of bolts and pins beyond what the program's own rules do:
// the sizes and strengths that its own formulas take in as they go.

// familyOf tells which family of alloys a metal belongs to: "steel", "stainless",
// "bronze". One that the table doesn't have is of none that is known.
func familyOf(w, metal *Word) {
	if !w.follows(values(&metal.Value)) {
		return
	}
	m, err := metalCalled(metal.Text())
	if err != nil {
		w.Refuse(err.Error())
		return
	}
	w.Give(m.Kind, metal.at)
}

// forStandards gives what one bolt is.
func (o *boltsOf) forStandards() {
	g := o.group
	familyOf(&g.BoltFamily, &g.BoltMetal)
	giveWord(&g.BoltHead, o.plan.Mounting.Bolts.Head)
	g.BoltStressArea.Derive(values(&g.Thread.Value), func() (float64, error) {
		thread, err := table.Thread(g.Thread.Text())
		return thread.StressArea, err
	}, func() []working.Step {
		thread, _ := table.Thread(g.Thread.Text())
		return oneStep("As", "by the table of threads", thread.StressArea, "mm2", thread.Source)()
	})
	g.BoltUltimate.Derive(values(&g.Grade.Value, &g.BoltDiameter.Value), func() (float64, error) {
		row, err := o.gradeAt()
		return row.Ultimate, err
	}, func() []working.Step {
		row, _ := o.gradeAt()
		return oneStep("fub", "least value of "+row.Name+", "+row.Standard, row.Ultimate, "MPa", row.Source)()
	})
}
