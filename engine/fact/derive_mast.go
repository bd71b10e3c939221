package fact

import (
	"fmt"

	"chainwale/engine/plan"
	"chainwale/engine/quantity"
	"chainwale/engine/rig"
	"chainwale/engine/table"
)

// second is a second in the canonical unit of time.
const second = quantity.Second

// mast makes the mast of the boat. What the plan says nothing of is not worked out:
// rules that need it ask Told first.
func (b *builder) mast() {
	boat := &b.plan.Boat
	m := &Mast{Subject: Subject{ID: "mast", Name: "the mast", At: boat.Mast.At}}
	b.facts.Mast = m
	m.Told.Give(mastTold(b.plan), boat.Mast.At)
	giveWord(&m.Step, boat.MastStep)
	if !m.Told.Yes() {
		return
	}
	give(&m.Height, boat.Mast.Height)
	deckOf(m, boat)
	giveYesNo(&m.Wedged, boat.Mast.Wedged)
	give(&m.Displacement, boat.Displacement)
	give(&m.Freeboard, boat.Freeboard)
	give(&m.Mass, boat.Mast.Mass)
	spreadersAt := boat.Mast.At
	spreadersAt.Pointer += "/spreaders"
	m.Spreaders.WouldStand(spreadersAt)
	if len(boat.Mast.Spreaders) > 0 {
		m.Spreaders.Give(float64(len(boat.Mast.Spreaders)), spreadersAt)
	}
	rightingMoment(m, boat)
	b.windage(m)
	b.roll(m)
	b.credit(m)
	bearsBending(m, boat)
}

// mastTold tells whether the plan says anything of the mast as a whole.
func mastTold(p *plan.Plan) bool {
	m := &p.Boat.Mast
	return m.Height.Given || m.Deck.Given || m.Mass.Given || m.Section.Broad.Given || m.Section.Long.Given || len(m.Spreaders) > 0 ||
		p.Boat.RightingMoment.How.Given || p.Standing.Given()
}

// deckOf is the height of the deck above the heel: nothing for a mast that stands on it.
func deckOf(m *Mast, boat *plan.Boat) {
	give(&m.Deck, boat.Mast.Deck)
	if !m.Deck.Known() && m.Step.Is("deck-stepped") {
		m.Deck.Give(0, boat.MastStep.At)
	}
}

// rightingMoment takes the moment the way that the plan says it is known.
func rightingMoment(m *Mast, boat *plan.Boat) {
	p := &boat.RightingMoment
	giveWord(&m.KnownBy, p.How)
	var at30, weight, distance, heel, period, beam, waterline Number
	give(&at30, p.Moment)
	give(&weight, p.Weight)
	give(&distance, p.Distance)
	give(&heel, p.Heel)
	give(&period, p.Period)
	give(&beam, boat.Beam)
	give(&waterline, boat.Waterline)
	from := values(&m.KnownBy.Value)
	var of func() formula[rig.RightingMoment]
	switch m.KnownBy.Text() {
	case "given":
		from, of = append(from, &at30.Value), func() formula[rig.RightingMoment] { return rig.GivenMoment{At30: at30.Float(), By: p.By.Value} }
	case "inclined":
		from = append(from, &m.Displacement.Value, &weight.Value, &distance.Value, &heel.Value)
		of = func() formula[rig.RightingMoment] {
			return rig.InclinedMoment{Mass: m.Displacement.Float(), Weight: weight.Float(), Distance: distance.Float(), Heel: heel.Float()}
		}
	case "roll period":
		from = append(from, &m.Displacement.Value, &beam.Value, &period.Value)
		of = func() formula[rig.RightingMoment] {
			return rig.RolledMoment{Mass: m.Displacement.Float(), Beam: beam.Float(), Period: period.Float() / second}
		}
	case "estimated":
		from, of = append(from, &waterline.Value), func() formula[rig.RightingMoment] { return rig.EstimatedMoment{Waterline: waterline.Float()} }
	}
	reckon(&m.RightingMoment, from, func() (formula[rig.RightingMoment], error) { return of(), nil }, func(r rig.RightingMoment) float64 { return r.At30 })
}

// loadsPlates tells whether the moment may raise what a plate has to bear: only what is
// given or found by an inclining test may.
func (m *Mast) loadsPlates() bool { return m.KnownBy.Is("given") || m.KnownBy.Is("inclined") }

// windage adds up what the wind pushes on: the mast by its widest side, its wires, and
// what else the plan names. A mast whose section is not known leaves it unknown.
func (b *builder) windage(m *Mast) {
	p := &b.plan.Boat.Mast
	var long, broad Number
	give(&long, p.Section.Long)
	give(&broad, p.Section.Broad)
	from := values(&m.Height.Value, &long.Value, &broad.Value)
	bottom := 0.0
	if m.Deck.Known() {
		bottom = max(0, m.Deck.Float())
	}
	parts := []rig.Aloft{}
	for _, s := range b.facts.Stays {
		if s.HoldsMast.No() {
			continue
		}
		from = append(from, &s.WireDiameter.Value, &s.FootZ.Value, &s.Top.Value)
		parts = append(parts, rig.Aloft{Name: s.Name, Diameter: s.WireDiameter.Float(), Bottom: max(0, s.FootZ.Float()), Top: s.Top.Float(), Carried: 0.5})
	}
	for i := range p.Windage {
		w := &p.Windage[i]
		carried := 1.0
		if w.Carried.Given {
			carried = w.Carried.Value
		}
		parts = append(parts, rig.Aloft{Name: w.Name.Value, Diameter: w.Diameter.Value, Bottom: max(0, w.Bottom.Value), Top: w.Top.Value, Carried: carried})
	}
	reckon(&m.Windage, from, func() (formula[rig.MastWindageResult], error) {
		mast := rig.Aloft{Name: "mast", Diameter: max(long.Float(), broad.Float()), Bottom: bottom, Top: m.Height.Float(), Carried: 1}
		return rig.MastWindage{Parts: append([]rig.Aloft{mast}, parts...)}, nil
	}, func(r rig.MastWindageResult) float64 { return r.PerSquare })
}

// credit tells whether the plan counts on more than is usual.
func (b *builder) credit(m *Mast) {
	c := &b.plan.Standing.Credit
	usual := true
	for _, s := range []struct {
		of    plan.Amount
		usual float64
	}{{c.Wire, rig.UsualCredit.Wire}, {c.StandIn, rig.UsualCredit.StandIn}, {c.Unattended, rig.UsualCredit.Unattended}, {c.UnseenPlate, rig.UsualCredit.UnseenPlate}} {
		usual = usual && (!s.of.Given || s.of.Value <= s.usual*(1+1e-9))
	}
	m.CreditUsual.Give(usual, c.At)
}

// roll is what a roll does where she lies: ashore nothing.
func (b *builder) roll(m *Mast) {
	s := &b.plan.Standing
	var place Word
	giveWord(&place, s.Place)
	if place.Is("ashore") {
		m.Roll.Give(0, s.Place.At)
		return
	}
	var angle, period Number
	give(&angle, s.Roll.Angle)
	give(&period, s.Roll.Period)
	axis := max(0, s.Roll.Axis.Value)
	from := values(&place.Value, &m.Mass.Value, &m.Height.Value, &angle.Value, &period.Value)
	if m.Step.Is("deck-stepped") {
		// Its heel stands well above the axis: left out, the roll would push less than it does.
		var above Number
		give(&above, s.Roll.Axis)
		from = append(from, &above.Value)
	}
	reckon(&m.Roll, from, func() (formula[rig.DockRollResult], error) {
		if err := tooLight(&b.plan.Boat.Mast, m.Mass.Float(), m.Height.Float()); err != nil {
			return nil, err
		}
		return rig.DockRoll{MassPerLength: m.Mass.Float() / m.Height.Float() * 1000, Height: m.Height.Float(), RollAxis: axis, Angle: angle.Float(), Period: period.Float() / second}, nil
	}, func(r rig.DockRollResult) float64 { return r.Moment })
}

// tooLight refuses a mass below that of the bare aluminium tube that the plan gives, or
// a roll would push less than it does. A tenth is left for walls that are thinner above.
func tooLight(p *plan.Mast, mass, height float64) error {
	s := p.Section
	if _, err := table.SparAlloy(p.Alloy.Value, s.Wall.Value); err != nil || !s.Long.Given || !s.Broad.Given {
		return nil
	}
	tube, err := rig.MastSection{Long: s.Long.Value, Broad: s.Broad.Value, Wall: s.Wall.Value}.Reckon()
	if bare := tube.Mass * height / 1000; err == nil && mass < 0.9*bare {
		return fmt.Errorf("the mast's mass of %.3g kg is less than that of its bare tube, %.3g kg", mass, bare)
	}
	return nil
}

// bearsBending is the bending moment that the mast's section may bear, the weaker way.
func bearsBending(m *Mast, boat *plan.Boat) {
	s := boat.Mast.Section
	var long, broad, wall Number
	var alloy Word
	give(&long, s.Long)
	give(&broad, s.Broad)
	give(&wall, s.Wall)
	giveWord(&alloy, boat.Mast.Alloy)
	reckon(&m.BearsBending, values(&long.Value, &broad.Value, &wall.Value, &alloy.Value), func() (formula[rig.SparBendingResult], error) {
		row, err := table.SparAlloy(alloy.Text(), wall.Float())
		if err != nil {
			return nil, err
		}
		section, err := rig.MastSection{Long: long.Float(), Broad: broad.Float(), Wall: wall.Float()}.Reckon()
		return rig.SparBending{Modulus: min(section.AcrossW, section.AlongW), Yield: row.Yield}, err
	}, func(r rig.SparBendingResult) float64 { return r.Moment })
}
