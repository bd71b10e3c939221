package fact

import (
	"math"
	"slices"

	"chainwale/engine/corrosion"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/strength"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

// boltsOf is what the derivations of one bolt group share: the plan's words, the
// bolt holes with their places in the flat (the loaded end at the origin, y up
// towards the wire), and where the wire pulls.
type boltsOf struct {
	group *BoltGroup
	plan  *plan.Fitting
	holes []*plan.Hole
	at    []strength.GroupBolt
	// sheared is the group under one newton in its plane, once somebody has asked for it.
	sheared *reckoned[strength.BoltGroupResult]
	// widths are the plate's widths at the holes, once somebody has asked for them.
	widths []holeWidth
	// beyond is how much nearer to the plate's ends each hole comes than a round one.
	beyond []float64
	// grade is the row of the bolts' grade, once somebody has asked for it.
	grade *gradeRow
	// pinned is the pin hole, which has a place only if the group's PinAlong is known.
	pinned strength.Vector
}

// bolts makes the bolt group of a fitting under the pull of one stay, and each of
// its holes.
func (b *builder) bolts(p *plan.Fitting, f *Fitting, s *Stay, pin *plan.Hole) {
	g := &BoltGroup{Subject: Subject{ID: s.ID, Name: "the bolts of " + f.Name, At: p.Mounting.Bolts.At}, Stay: s, Fitting: f}
	of := &boltsOf{group: g, plan: p}
	of.places(pin)
	give(&g.Lean, s.plan.Lean.InPlane)
	give(&g.LeanOut, s.plan.Lean.OutOfPlane)
	give(&g.Length, p.Outline.Length)
	of.oneBolt()
	of.shares()
	of.ultimate()
	of.spacing()
	of.host()
	b.facts.BoltGroups = append(b.facts.BoltGroups, g)
	b.facts.BoltHoles = append(b.facts.BoltHoles, of.boltHoles()...)
	b.section(of)
}

// places gathers the places of the bolts. A hole without a place is unknown and
// so is the count; and so are all of them where they are glassed in.
func (o *boltsOf) places(pin *plan.Hole) {
	place := finding.Place{File: o.plan.At.File, Line: o.plan.At.Line, Column: o.plan.At.Column, Pointer: o.plan.At.Pointer + "/holes"}
	o.group.PinAlong.WouldStand(place)
	if pin != nil {
		give(&o.group.PinAlong, pin.Along)
	}
	if o.group.PinAlong.Known() {
		o.pinned = strength.Vector{X: pin.Across.Value, Y: -pin.Along.Value}
	}
	if !o.group.Fitting.BoltsAre.Known() {
		o.group.Count.WouldStand(place)
		hide(&o.group.Count.Value, o.group.Fitting)
		return
	}
	room := len(o.plan.Holes)
	o.at, o.holes, o.beyond = make([]strength.GroupBolt, 0, room), make([]*plan.Hole, 0, room), make([]float64, 0, room)
	for i := range o.plan.Holes {
		h := &o.plan.Holes[i]
		if h.Role.Value != "bolt" {
			continue
		}
		if !h.Along.Given {
			o.group.Count.WouldStand(h.Along.At)
			o.at, o.holes, o.beyond = nil, nil, nil
			return
		}
		o.holes, o.beyond = append(o.holes, h), append(o.beyond, h.Beyond())
		o.at = append(o.at, strength.GroupBolt{X: h.Across.Value, Y: -h.Along.Value})
	}
	if len(o.at) == 0 {
		o.group.Count.WouldStand(place)
		return
	}
	o.group.Count.Give(float64(len(o.at)), o.holes[0].At)
}

// oneBolt looks up at what load one bolt shears and breaks, and what it is made of.
func (o *boltsOf) oneBolt() {
	g, p := o.group, o.plan.Mounting.Bolts
	giveWord(&g.Thread, p.Thread)
	giveWord(&g.Grade, p.Grade)
	giveYesNo(&g.ThreadsInPlane, p.ThreadsInPlane)
	bolt := func() (formula[strength.BoltResult], error) {
		thread, err := table.Thread(g.Thread.Text())
		if err != nil {
			return nil, err
		}
		if err := o.tooThick(thread.Diameter); err != nil {
			return nil, err
		}
		grade, err := table.BoltGradeAt(g.Grade.Text(), thread.Diameter)
		return strength.Bolt{StressArea: thread.StressArea, Diameter: thread.Diameter, Yield: grade.Yield, Ultimate: grade.Ultimate,
			ThreadsInPlane: g.ThreadsInPlane.Yes(), Countersunk: p.Head.Value == "countersunk"}, err
	}
	from := values(&g.Thread.Value, &g.Grade.Value, &g.ThreadsInPlane.Value)
	one := onceReckoned(bolt)
	reckon(&g.BoltShear, from, one, func(r strength.BoltResult) float64 { return r.Shear })
	reckon(&g.BoltTension, from, one, func(r strength.BoltResult) float64 { return r.Tension })
	g.BoltDiameter.Derive(values(&g.Thread.Value), func() (float64, error) {
		thread, err := table.Thread(g.Thread.Text())
		return thread.Diameter, err
	}, func() []working.Step {
		thread, _ := table.Thread(g.Thread.Text())
		return oneStep("d", "by the table of threads", thread.Diameter, "mm", thread.Source)()
	})
	o.boltMetal(p)
	o.forStandards()
}

// boltMetal takes what the bolts are made of, as the plan names it or as their grade
// does, and works out how well it stands up to pitting and whether it loses its zinc.
func (o *boltsOf) boltMetal(p plan.Bolts) {
	g := o.group
	switch {
	case p.Metal.Given:
		g.BoltMetal.Give(p.Metal.Value, p.Metal.At)
	case g.BoltMetal.follows(values(&g.Grade.Value)):
		grade, err := table.BoltGrade(g.Grade.Text())
		if err != nil {
			g.BoltMetal.Refuse(err.Error())
			break
		}
		g.BoltMetal.Give(grade.Metal, p.Grade.At)
	}
	brass(&g.BoltBrass, &g.BoltMetal)
	if g.BoltBrass.No() {
		hide(&g.BoltBrass.Value, g.Fitting)
	}
	reckon(&g.BoltPREN, values(&g.BoltMetal.Value), func() (formula[corrosion.PittingResistanceResult], error) {
		row, err := metalCalled(g.BoltMetal.Text())
		return (*pittingOf)(row), err
	}, func(r corrosion.PittingResistanceResult) float64 { return r.PREN })
	hide(&g.BoltPREN.Value, g.Fitting)
}

// shares works out, by the elastic method, which share of the wire's load shears
// the bolt that carries most, and which share pulls at the bolt that is pulled most.
func (o *boltsOf) shares() {
	g := o.group
	reckon(&g.LargestShare, values(&g.Count.Value, &g.Lean.Value, &g.PinAlong.Value), o.inPlane, func(r strength.BoltGroupResult) float64 { return r.Largest })
	reckon(&g.PullShare, values(&g.Count.Value, &g.LeanOut.Value, &g.Length.Value, &g.Fitting.Thickness.Value, &g.PinAlong.Value), o.outOfPlane,
		func(r strength.BoltPullResult) float64 { return r.Largest })
}

// inPlane is the bolt group under one newton of the wire, which leans in the
// plate's plane and pulls at the pin hole.
func (o *boltsOf) inPlane() (formula[strength.BoltGroupResult], error) {
	if o.sheared == nil {
		bolts, err := o.carrying()
		if err != nil {
			return nil, err
		}
		o.sheared = reckonedBy(o.under(bolts))
	}
	return o.sheared, nil
}

// under is a group of bolts under one newton of the wire.
func (o *boltsOf) under(bolts []strength.GroupBolt) strength.BoltGroup {
	lean := o.group.Lean.Float() * math.Pi / 180
	return strength.BoltGroup{Bolts: bolts, Force: strength.Vector{X: math.Sin(lean), Y: math.Cos(lean)}, At: o.pinned}
}

// outOfPlane is the bolt group under one newton of the wire, which leans out of
// the plate's plane. The plate heels about its far end. A wire that leans towards
// the host counts as one that leans away: the picture is the same upside down.
func (o *boltsOf) outOfPlane() (formula[strength.BoltPullResult], error) {
	g := o.group
	lean := math.Abs(g.LeanOut.Float()) * math.Pi / 180
	arm := g.Fitting.Thickness.Float() / 2
	if stand := o.plan.Mounting.StandOff; stand.Given {
		arm = stand.Value
	}
	return strength.BoltPull{Rows: o.rows(), Force: math.Cos(lean), Arm: arm, Normal: math.Sin(lean), NormalHeight: g.Length.Float() - g.PinAlong.Float()}, nil
}

// rows counts the bolts at each height above the plate's far end.
func (o *boltsOf) rows() []strength.BoltRow {
	rows := make([]strength.BoltRow, 0, len(o.at))
	for _, b := range o.at {
		height := o.group.Length.Float() + b.Y
		i := slices.IndexFunc(rows, func(r strength.BoltRow) bool { return math.Abs(r.Height-height) < 0.5 })
		if i < 0 {
			rows = append(rows, strength.BoltRow{Height: height})
			i = len(rows) - 1
		}
		rows[i].Bolts++
	}
	return rows
}

// ultimate works out at which load of the wire the bolts give way, sheared and
// pulled together. The bolt that is sheared most counts as the one that is pulled
// most, which is on the safe side.
func (o *boltsOf) ultimate() {
	g := o.group
	reckon(&g.BoltsUltimate, values(&g.BoltShear.Value, &g.BoltTension.Value, &g.LargestShare.Value, &g.PullShare.Value),
		func() (formula[strength.BoltTogetherResult], error) {
			return strength.BoltTogether{Shear: g.LargestShare.Float(), Pull: g.PullShare.Float(), ShearStrength: g.BoltShear.Float(), Tension: g.BoltTension.Float()}, nil
		},
		func(r strength.BoltTogetherResult) float64 { return r.Ratio })
	timesWire(&g.BoltsTimesWire, &g.BoltsUltimate, g.Stay)
	arithmetic(&g.PullAtWork, "T_work", "pull share * load at work", "N", values(&g.PullShare.Value, &g.Stay.WorkingLoad.Value),
		func() float64 { return g.PullShare.Float() * g.Stay.WorkingLoad.Float() })
}

// spacing is the least distance between two bolts, over the larger of their holes.
func (o *boltsOf) spacing() {
	g := o.group
	if g.Count.Known() && len(o.at) < 2 {
		g.Spacing.WouldStand(g.Count.at)
		g.Spacing.Refuse("one bolt has no distance to another")
		return
	}
	sizes, from := make([]Number, len(o.holes)), make([]*Value, 1, 1+len(o.holes))
	from[0] = &g.Count.Value
	for i, h := range o.holes {
		give(&sizes[i], h.AcrossPull())
		from = append(from, &sizes[i].Value)
	}
	arithmetic(&g.Spacing, "p/d0", "least distance from bolt to bolt / hole", "", from, func() float64 {
		least := math.Inf(1)
		for i := range o.at {
			for j := range o.at[:i] {
				least = min(least, o.apart(i, j)/max(sizes[i].number, sizes[j].number))
			}
		}
		return least
	})
}
