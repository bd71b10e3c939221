package fact

import (
	"math"

	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/strength"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

// bolts makes the bolt group of a fitting under the pull of one stay: how the
// bolts share the load in the plate's plane, and at which pull of the wire the
// one that carries most shears.
func (b *builder) bolts(p *plan.Fitting, f *Fitting, s *Stay, pin *plan.Hole) {
	g := &BoltGroup{Subject: Subject{ID: s.ID, Name: "the bolts of " + f.Name, At: p.Mounting.Bolts.At}, Stay: s, Fitting: f}
	holes := boltHoles(g, p)
	give(&g.Lean, s.plan.Lean.InPlane)
	oneBolt(g, p.Mounting.Bolts)
	share(g, holes, pin)
	g.BoltsUltimate.Derive([]*Value{&g.BoltShear.Value, &g.LargestShare.Value},
		func() (float64, error) { return g.BoltShear.Float() / g.LargestShare.Float(), nil },
		func() []working.Step {
			return []working.Step{{Symbol: "F", Meaning: "pull of the wire at which the bolt that carries most shears", Formula: "F_bolt / share",
				Inputs: []working.Input{{Symbol: "F_bolt", Value: g.BoltShear.Float(), Unit: "N"}, {Symbol: "share", Value: g.LargestShare.Float()}},
				Value:  g.BoltsUltimate.Float(), Unit: "N", Source: working.Source{Title: "statics", As: working.Computed}}}
		})
	timesWire(&g.BoltsTimesWire, &g.BoltsUltimate, s)
	b.facts.BoltGroups = append(b.facts.BoltGroups, g)
}

// boltHoles gathers the places of the bolts, the plate's loaded end at the origin,
// y up towards the wire. A hole without a place is unknown and so is the count.
func boltHoles(g *BoltGroup, p *plan.Fitting) []strength.GroupBolt {
	var at []strength.GroupBolt
	for i := range p.Holes {
		h := &p.Holes[i]
		if h.Role.Value != "bolt" {
			continue
		}
		if !h.Along.Given {
			g.Count.WouldStand(h.Along.At)
			return nil
		}
		x := 0.0
		if h.Across.Given {
			x = h.Across.Value
		}
		at = append(at, strength.GroupBolt{X: x, Y: -h.Along.Value})
	}
	place := finding.Place{File: p.At.File, Line: p.At.Line, Column: p.At.Column, Pointer: p.At.Pointer + "/holes"}
	if len(at) == 0 {
		g.Count.WouldStand(place)
		return nil
	}
	g.Count.Give(float64(len(at)), place)
	return at
}

// oneBolt looks up at what load one bolt shears.
func oneBolt(g *BoltGroup, p plan.Bolts) {
	giveWord(&g.Thread, p.Thread)
	giveWord(&g.Grade, p.Grade)
	giveYesNo(&g.ThreadsInPlane, p.ThreadsInPlane)
	reckon(&g.BoltShear, values(&g.Thread.Value, &g.Grade.Value, &g.ThreadsInPlane.Value),
		func() (formula[strength.BoltResult], error) {
			thread, err := table.Thread(g.Thread.Text())
			if err != nil {
				return nil, err
			}
			grade, err := table.BoltGradeAt(g.Grade.Text(), thread.Diameter)
			return strength.Bolt{StressArea: thread.StressArea, Diameter: thread.Diameter, Yield: grade.Yield, Ultimate: grade.Ultimate, ThreadsInPlane: g.ThreadsInPlane.Yes()}, err
		},
		func(r strength.BoltResult) float64 { return r.Shear })
}

// share works out, by the elastic method, which share of the wire's pull the bolt
// that carries most takes. The pull acts at the pin hole and leans as the wire does.
func share(g *BoltGroup, holes []strength.GroupBolt, pin *plan.Hole) {
	along := &Value{at: g.At}
	if pin != nil && pin.Along.Given {
		along.at = pin.Along.At
		along.set(pin.Along.Value)
	}
	reckon(&g.LargestShare, values(&g.Count.Value, &g.Lean.Value, along),
		func() (formula[strength.BoltGroupResult], error) {
			at := strength.Vector{Y: -along.number}
			if pin.Across.Given {
				at.X = pin.Across.Value
			}
			lean := g.Lean.Float() * math.Pi / 180
			return strength.BoltGroup{Bolts: holes, Force: strength.Vector{X: math.Sin(lean), Y: math.Cos(lean)}, At: at}, nil
		},
		func(r strength.BoltGroupResult) float64 { return r.Largest })
}
