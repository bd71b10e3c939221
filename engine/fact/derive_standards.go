package fact

import (
	"math"

	"chainwale/engine/plan"
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
	m, err := table.MetalNamed(metal.Text())
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
	grade := func() (table.BoltGradeRow, error) {
		return table.BoltGradeAt(g.Grade.Text(), g.BoltDiameter.Float())
	}
	g.BoltUltimate.Derive(values(&g.Grade.Value, &g.BoltDiameter.Value), func() (float64, error) {
		row, err := grade()
		return row.Ultimate, err
	}, func() []working.Step {
		row, _ := grade()
		return oneStep("fub", "least value of "+row.Name+", "+row.Standard, row.Ultimate, "MPa", row.Source)()
	})
}

// holeForStandards gives where a bolt hole stands and what bolt is in it.
func (o *boltsOf) holeForStandards(bh *BoltHole, i int, h *plan.Hole) {
	g := o.group
	arithmetic(&bh.End, "e1", "length - along", "mm", values(&g.Length.Value), func() float64 { return g.Length.Float() - h.Along.Value - h.Beyond() })
	arithmetic(&bh.Side, "e2", "width/2 - |across|", "mm", values(&o.width(h).Value), func() float64 { return o.width(h).Float()/2 - abs(h.Across.Value) })
	bh.Pitch.Give(o.pitch(i), h.At)
	bh.InLine.Give(o.inLine(), h.At)
	same(&bh.Lean, &g.Lean)
	same(&bh.BoltDiameter, &g.BoltDiameter)
	same(&bh.BoltUltimate, &g.BoltUltimate)
	if bh.BoltHead.follows(values(&g.BoltHead.Value)) {
		bh.BoltHead.Give(g.BoltHead.Text(), g.BoltHead.at)
	}
}

// same gives a number that another subject has already.
func same(n, as *Number) {
	n.Derive(values(&as.Value), func() (float64, error) { return as.number, nil }, as.work)
}

// besides is how far bolts stand off one line along the plate before they stand
// beside each other, mm.
const besides = 0.5

// inLine tells whether all bolts stand in one line along the plate.
func (o *boltsOf) inLine() bool {
	for _, b := range o.at {
		if math.Abs(b.X-o.at[0].X) > besides {
			return false
		}
	}
	return true
}
