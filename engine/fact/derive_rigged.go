package fact

import (
	"slices"

	"chainwale/engine/plan"
	"chainwale/engine/rig"
)

// layRig lists what can hold the mast.
func (b *builder) layRig(s *Standing) {
	m := b.facts.Mast
	p := &b.plan.Standing
	s.from = append(s.from, &m.Height.Value, &m.Step.Value)
	s.Rig = rig.Rig{Masthead: m.Height.Float(), DeckStepped: m.Step.Is("deck-stepped"), Credit: creditOf(p.Credit)}
	b.partners(s)
	needs := b.others(s)
	for _, stay := range b.facts.Stays {
		if !b.holds(stay) {
			continue
		}
		s.from = append(append(s.from, stay.lineFrom()...), &stay.LeastBreak.Value)
		one := rig.Stay{Name: stay.ID, Role: roleOf(stay), Line: stay.line(), BreakLoad: stay.LeastBreak.Float(), Ends: endsBreak(stay.plan), Plate: b.plateOf(stay)}
		if stay.Tension.Known() {
			one.AtRest = stay.Tension.Float()
		}
		one.Needs = slices.Concat(needs[one.Role], b.alsoOn(s, stay, true))
		s.Rig.Stays = append(s.Rig.Stays, one)
	}
	for _, f := range b.facts.Fittings {
		if plate, ok := b.plate(f); ok {
			s.Rig.Plates = append(s.Rig.Plates, plate)
		}
	}
	for _, in := range b.facts.StandIns {
		s.from = append(s.from, &in.Height.Value, &in.FootX.Value, &in.FootY.Value, &in.FootZ.Value)
		s.Rig.StandIns = append(s.Rig.StandIns, rig.StandIn{Name: in.ID, Plate: b.landsAt(in), Strength: in.path(),
			Line: rig.StayLine{Foot: rig.Point{X: in.FootX.Float(), Y: in.FootY.Float(), Z: in.FootZ.Float()}, Height: in.Height.Float()}})
	}
}

// landsAt is the plate that a stand-in lands on, "" for a fitting of its own.
func (b *builder) landsAt(in *StandIn) string {
	if !in.plan.LandsOn.Given {
		return ""
	}
	return b.rigPlate(in.plan.LandsOn.Value)
}

// endsBreak is what the weaker of turnbuckle and terminals breaks at, 0 if neither is told.
func endsBreak(p *plan.Stay) float64 {
	weaker := 0.0
	for _, load := range []plan.Amount{p.Turnbuckle.BreakLoad, p.Terminals.BreakLoad} {
		if load.Given && (weaker == 0 || load.Value < weaker) {
			weaker = load.Value
		}
	}
	return weaker
}

// creditOf is how much of a strength is counted on. A share of nothing is written as
// nearly nothing: package rig takes a zero for what is left out.
func creditOf(c plan.Credit) rig.Credit {
	share := func(a plan.Amount) float64 {
		if a.Given && a.Value == 0 {
			return 1e-9
		}
		return a.Value
	}
	return rig.Credit{Wire: share(c.Wire), UnseenPlate: share(c.UnseenPlate), StandIn: share(c.StandIn), Unattended: share(c.Unattended)}
}

// partners counts what the partners hold, where the plan asks for it and says that the
// mast is wedged.
func (b *builder) partners(s *Standing) {
	m, p := b.facts.Mast, &b.plan.Boat.Mast
	if !p.CountPartners.Value || s.Rig.DeckStepped || !m.Wedged.Yes() {
		return
	}
	s.from = append(s.from, &m.BearsBending.Value, &m.Deck.Value)
	if m.BearsBending.Known() {
		s.Rig.Partners = m.BearsBending.Float()
	}
}

// holds tells whether a stay is counted on to hold the mast: it ends on the mast, and is
// no running backstay, which somebody has to haul tight first.
func (b *builder) holds(s *Stay) bool {
	return !s.HoldsMast.No() && !s.Role.Is("running backstay") && !s.Role.Is("backstay leg")
}

// others lists the stays that hold nothing of the mast themselves, and which roles can't
// do without them: a forestay without its bobstay and whiskers, a backstay without its legs.
func (b *builder) others(s *Standing) map[rig.StayRole][]string {
	needs := map[rig.StayRole][]string{}
	for _, stay := range b.facts.Stays {
		if b.holds(stay) {
			continue
		}
		s.Rig.Others = append(s.Rig.Others, rig.Other{Name: stay.ID, Plate: b.plateOf(stay)})
		names := append(b.alsoOn(s, stay, false), stay.ID)
		switch stay.Role.Text() {
		case "bobstay", "whisker":
			needs[rig.Forestay] = append(needs[rig.Forestay], names...)
		case "backstay leg":
			needs[rig.Backstay] = append(needs[rig.Backstay], names...)
		}
	}
	return needs
}

// roleOf is a stay's role in rig's words.
func roleOf(s *Stay) rig.StayRole { return rig.StayRole(s.Role.Text()) }

// plateOf is the fitting that a stay's lower end lands on, "" if the plan has none.
func (b *builder) plateOf(s *Stay) string {
	for _, l := range b.facts.Landings {
		if l.Stay == s {
			return b.rigPlate(l.Fitting.ID)
		}
	}
	return ""
}

// rigPlate is a fitting's name on the rig, where each thing has one of its own. A step
// can't name a fitting that shares its id with a stay: the plan's checks refuse that.
func (b *builder) rigPlate(id string) string {
	for _, s := range b.facts.Stays {
		if s.ID == id {
			return "the fitting " + id
		}
	}
	for _, in := range b.facts.StandIns {
		if in.ID == id {
			return "the fitting " + id
		}
	}
	return id
}

// alsoOn lists what else of the plan's fittings a stay hangs on beside that plate: a toggle
// plate on its way, the plate at a bobstay's other end. With any of them out the stay is
// off. Fittings on the mast have no landings here.
func (b *builder) alsoOn(s *Standing, stay *Stay, inLine bool) (names []string) {
	plate := b.plateOf(stay)
	for _, l := range b.facts.Landings {
		at := b.rigPlate(l.Fitting.ID)
		if l.Stay != stay || at == plate {
			continue
		}
		name := stay.ID + " on " + l.Fitting.ID
		s.Rig.Others = append(s.Rig.Others, rig.Other{Name: name, Plate: at, InLine: inLine})
		names = append(names, name)
	}
	return names
}

// plate is a fitting as it stands before the work: one that is to be remade or new is
// the old one until it has been changed, and what the plan draws is its successor.
func (b *builder) plate(f *Fitting) (rig.Plate, bool) {
	var from []*Value
	for _, l := range b.facts.Landings {
		if l.Fitting == f {
			from = append(from, &l.PlateUltimate.Value)
		}
	}
	for _, g := range b.facts.BoltGroups {
		if g.Fitting == f {
			from = append(from, &g.BoltsUltimate.Value)
		}
	}
	if len(from) == 0 {
		return rig.Plate{}, false
	}
	strength := 0.0
	if !slices.ContainsFunc(from, func(v *Value) bool { return !v.known }) {
		strength = max(0, least(from))
	}
	p := rig.Plate{Name: b.rigPlate(f.ID)}
	if !f.State.Is("kept") {
		p.Renewed = strength // of one that is kept the plan draws no successor
	}
	if f.State.Is("kept") {
		p.Strength = strength
	}
	switch {
	case b.cracked(f):
		p.State = rig.Cracked
	case f.State.Is("kept") && f.Seen && b.foundSound(f):
		p.State = rig.Seen
	}
	return p, true
}

// cracked tells whether somebody saw a crack in the part that stands there now. No later
// look takes that back.
func (b *builder) cracked(f *Fitting) bool {
	return slices.ContainsFunc(b.facts.Records, func(r *Record) bool {
		return r.Fitting == f && r.Crack.Is("seen") && !r.Of.Is(partIsGone) && !r.Dated.Is(datedBefore)
	})
}

// foundSound tells whether somebody who saw all of a part looked for cracks and saw none.
func (b *builder) foundSound(f *Fitting) bool {
	return slices.ContainsFunc(b.facts.Records, func(r *Record) bool {
		return r.Fitting == f && r.Crack.Is("none seen") && r.Dated.Is(datedWell) && (r.Drawn.Yes() || f.Hidden.No())
	})
}
