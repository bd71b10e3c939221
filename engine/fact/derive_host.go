package fact

import (
	"errors"
	"math"

	"chainwale/engine/plan"
	"chainwale/engine/strength"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

// laminateFactor is what stands between what crushes a laminate and what it may
// carry at work.
const laminateFactor = 3

// plywoodDensity is taken where nobody weighed the plywood, kg/m3.
const plywoodDensity = 450

// host works out what the timber or laminate behind the bolts holds, and how far
// the bolts stand from its edge.
func (o *boltsOf) host() {
	g, h := o.group, o.plan.Mounting.Host
	giveWord(&g.HostKind, h.Kind)
	give(&g.HostThickness, h.Thickness)
	give(&g.Washer, o.plan.Mounting.Bolts.Washer)
	from := values(&g.HostKind.Value, &g.HostThickness.Value, &g.BoltDiameter.Value, &g.Count.Value)
	switch rot := h.Found.Value; {
	case rot == "rotten" || rot == "soft":
		o.rotten(rot)
	case g.HostKind.Is("plywood"), g.HostKind.Is("timber"):
		o.timber(from)
	case g.HostKind.Is("laminate"):
		o.laminate(from)
	default:
		if g.Host.follows(from) {
			g.Host.Refuse("a host of " + g.HostKind.Text() + " is not covered: a naval architect")
		}
		if g.PullThrough.follows(from) {
			g.PullThrough.Refuse("a host of " + g.HostKind.Text() + " is not covered: a naval architect")
		}
	}
	var edge Number
	give(&edge, h.Edge)
	g.HostEdge.Derive(values(&edge.Value, &g.BoltDiameter.Value), func() (float64, error) { return edge.Float() / g.BoltDiameter.Float(), nil },
		func() []working.Step {
			return oneStep("e/d", "edge / bolt", g.HostEdge.number, "", working.Source{Title: "arithmetic", As: working.Computed})()
		})
	if !edge.Known() {
		g.HostEdge.lack(nil) // the reading is this fact's own
		g.HostEdge.WouldStand(h.Edge.At)
	}
	hide(&g.HostEdge.Value, g.Fitting)
}

// rotten leaves unknown what a host holds that was found soft or rotten: the
// formulas are for sound stuff, whatever density and thickness the plan gives.
func (o *boltsOf) rotten(found string) {
	g, h := o.group, o.plan.Mounting.Host
	for _, n := range []*Number{&g.Host, &g.PullThrough} {
		n.WouldStand(h.Found.At)
		n.Refuse("it was found " + found + " and has no strength to reckon with")
	}
}

// timber is what plywood or timber holds by the yield modes of its bolts. Timber
// has to be named by its density; plywood counts as light where nobody weighed it.
func (o *boltsOf) timber(from []*Value) {
	g, h := o.group, o.plan.Mounting.Host
	var density Number
	give(&density, h.Density)
	if !h.Density.Given && g.HostKind.Is("plywood") {
		density.Give(plywoodDensity*kilogramPerCubicMetre, h.Density.At)
	}
	reckon(&g.Host, append(from, &density.Value, &g.Grade.Value, &g.Fitting.Thickness.Value),
		func() (formula[strength.TimberBoltsResult], error) {
			kind, err := strength.TimberKindNamed(timberName(g.HostKind.Text()))
			if err != nil {
				return nil, err
			}
			bolts, err := o.carrying()
			if err != nil {
				return nil, err
			}
			grade, err := table.BoltGradeAt(g.Grade.Text(), g.BoltDiameter.Float())
			return strength.TimberBolts{Kind: kind, Density: math.Round(density.Float()/kilogramPerCubicMetre*1000) / 1000, Thickness: g.HostThickness.Float(), Plate: g.Fitting.Thickness.Float(),
				Bolt: g.BoltDiameter.Float(), BoltUltimate: grade.Ultimate, Grain: h.Grain.Value, Count: len(bolts)}, err
		},
		func(r strength.TimberBoltsResult) float64 { return r.Capacity })
	g.PullThrough.WouldStand(h.Kind.At)
	g.PullThrough.Refuse("pulling through timber is not covered")
}

// kilogramPerCubicMetre is in the canonical unit of density, kg/mm3.
const kilogramPerCubicMetre = 1e-9

func timberName(kind string) string {
	if kind == "timber" {
		return "solid timber"
	}
	return kind
}

// laminate is what a solid laminate holds at work: a third of what crushes it, and
// for one washer what it is pulled through at.
func (o *boltsOf) laminate(from []*Value) {
	g := o.group
	// Bearing does not hang on the washer, so it does not wait for one to be measured.
	bolts := func(washer float64, count int) (formula[strength.LaminateBoltsResult], error) {
		if count == 0 {
			return nil, errors.New("there is no bolt")
		}
		return strength.LaminateBolts{Thickness: g.HostThickness.Float(), Bolt: g.BoltDiameter.Float(), Washer: washer, Count: count, GlassShare: usualGlass}, nil
	}
	reckon(&g.Host, from, func() (formula[strength.LaminateBoltsResult], error) {
		carrying, err := o.carrying()
		if err != nil {
			return nil, err
		}
		return bolts(2*g.BoltDiameter.Float(), len(carrying))
	},
		func(r strength.LaminateBoltsResult) float64 { return r.Bearing / laminateFactor })
	reckon(&g.PullThrough, append(from, &g.Washer.Value), func() (formula[strength.LaminateBoltsResult], error) { return bolts(g.Washer.Float(), 1) },
		func(r strength.LaminateBoltsResult) float64 { return r.PullThrough })
}

// usualGlass is the share of glass in a hand-laid laminate of chopped strand, by mass.
const usualGlass = 0.30

// section makes the plate at the first point that holds it fast: the top bolt,
// unless the plan says otherwise.
func (b *builder) section(o *boltsOf) {
	g, f := o.group, o.group.Fitting
	s := &Section{Subject: Subject{ID: g.Stay.ID, Name: f.Name + " at its first bolt", At: o.plan.At}, Stay: g.Stay, Fitting: f}
	lever(s, o)
	var hole Number
	var off plan.Amount
	width := &f.Width
	if top := o.topBolt(); top != nil {
		give(&hole, top.AcrossPull())
		off, width = top.Across, o.width(top)
	} else {
		hole.WouldStand(g.Count.at)
		hole.lack(values(&g.Count.Value))
	}
	m := &f.Metal
	reckon(&s.NetUltimate, values(&f.Thickness.Value, &width.Value, &hole.Value, &m.Yield.Value, &m.Ultimate.Value),
		func() (formula[strength.StripResult], error) {
			return strength.Strip{Thickness: f.Thickness.Float(), Width: width.Float(), Hole: hole.Float(), Yield: m.Yield.Float(), Ultimate: m.Ultimate.Float()}, nil
		},
		func(r strength.StripResult) float64 { return r.Net })
	at := func() (formula[strength.SectionResult], error) {
		return strength.Section{Thickness: f.Thickness.Float(), Width: width.Float(), Hole: hole.Float(), Force: g.Stay.WorkingLoad.Float(), Lever: s.Lever.Float(),
			Out: math.Abs(g.LeanOut.Float()), In: math.Abs(g.Lean.Float()), Across: math.Abs(o.pinned.X - off.Value), Yield: m.Yield.Float()}, nil
	}
	from := values(&f.Thickness.Value, &width.Value, &hole.Value, &g.Stay.WorkingLoad.Value, &s.Lever.Value, &g.Lean.Value, &g.LeanOut.Value, &m.Yield.Value)
	reckon(&s.Elastic, from, at, func(r strength.SectionResult) float64 { return r.Elastic })
	reckon(&s.Plastic, from, at, func(r strength.SectionResult) float64 { return r.Plastic })
	b.facts.Sections = append(b.facts.Sections, s)
}

// lever is how far the wire bends the plate: from the pin to the first point that
// holds it. A slot full of sealant holds nothing.
func lever(s *Section, o *boltsOf) {
	if fixed := o.plan.Mounting.FirstFixed; fixed.Given {
		s.Lever.Give(fixed.Value, fixed.At)
		return
	}
	top := o.topBolt()
	arithmetic(&s.Lever, "l", "top bolt - pin hole, along the plate", "mm", values(&o.group.Count.Value, &o.group.PinAlong.Value), func() float64 { return top.Along.Value - o.group.PinAlong.Float() })
}

// topBolt is the bolt hole nearest to the loaded end, nil if none has a place.
func (o *boltsOf) topBolt() *plan.Hole {
	var top *plan.Hole
	for _, h := range o.holes {
		if top == nil || h.Along.Value < top.Along.Value {
			top = h
		}
	}
	return top
}

// mounting makes what is known of how a fitting is held.
func (b *builder) mounting(p *plan.Fitting, f *Fitting) {
	m := &Mounting{Subject: Subject{ID: f.ID, Name: "the mounting of " + f.Name, At: p.Mounting.At}, Fitting: f}
	giveYesNo(&m.ThroughDeck, p.Mounting.ThroughDeck)
	giveWord(&m.HostKind, p.Mounting.Host.Kind)
	giveYesNo(&m.SolidUnderBolts, p.Mounting.Host.SolidUnderBolts)
	giveYesNo(&m.Backing, p.Mounting.BackingPlate)
	found(m, p.Mounting.Host)
	slot := p.Mounting.Slot
	give(&m.SlotGap, slot.Gap)
	giveYesNo(&m.EdgeSealed, slot.EdgeSealed)
	giveYesNo(&m.LetsGo, slot.LetsGo)
	attacks(m, slot)
	b.facts.Mountings = append(b.facts.Mountings, m)
}

// attacks tells whether the sealant attacks a plastic close by. Polysulphide does;
// so do solvents in others, but that one is sure.
func attacks(m *Mounting, s plan.Slot) {
	var sealant Word
	giveWord(&sealant, s.Sealant)
	giveYesNo(&m.Attacks, s.PlasticNear)
	if m.Attacks.Yes() && m.Attacks.follows(values(&sealant.Value)) {
		m.Attacks.Give(sealant.Is("polysulphide"), s.Sealant.At)
	} else if m.Attacks.Yes() {
		m.Attacks.known = false
	}
}
