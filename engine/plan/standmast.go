package plan

import (
	"slices"
)

// shroudRoles are the stays that hold a mast sideways.
var shroudRoles = []string{"cap shroud", "intermediate", "fore lower", "aft lower"}

// atBowsprit are the stays that hold a bowsprit and not the mast.
var atBowsprit = []string{"bobstay", "whisker"}

// HoldsMast tells whether a stay of a role has its upper end on the mast.
func HoldsMast(role string) bool { return !slices.Contains(atBowsprit, role) }

// mast checks what can't be of a mast and of the stays on it.
func (c *crossChecker) mast(p *Plan) {
	m := p.Boat.Mast
	c.below(m.Deck, m.Height, "the deck", "the masthead")
	if p.Boat.MastStep.Value == "deck-stepped" && m.Deck.Given && m.Deck.Value > onDeck {
		c.wrong(m.Deck.At, "keel-stepped, or no deck: a mast that stands on deck has it at its heel", "the mast is deck-stepped, and its deck is %s above its heel", c.length(m.Deck.Value))
	}
	for i, s := range m.Spreaders {
		c.below(s.Height, m.Height, "this spreader", "the masthead")
		if i > 0 {
			c.below(m.Spreaders[i-1].Height, s.Height, "the spreader below", "this one")
		}
	}
	for _, w := range m.Windage {
		c.below(w.Bottom, w.Top, "the lower end", "the upper end")
		c.atMost(w.Top, m.Height, "the upper end")
	}
	if s := m.Section; s.Wall.Given && s.Broad.Given && s.Long.Given && 2*s.Wall.Value >= min(s.Broad.Value, s.Long.Value) {
		c.wrong(s.Wall.At, "the thickness of the wall, a few millimetres", "a wall of %s is more than half of the tube", c.length(s.Wall.Value))
	}
	c.below(p.Boat.ReefedMain.Boom, p.Boat.ReefedMain.Head, "the boom", "the head of the reefed sail")
	c.below(p.Boat.ReefedMain.Boom, p.Boat.ReefedMain.Centre, "the boom", "the middle of the reefed sail")
	c.below(p.Boat.ReefedMain.Centre, p.Boat.ReefedMain.Head, "the middle of the reefed sail", "its head")
	for _, s := range p.Stays {
		c.stayOnMast(s, m)
	}
}

// onDeck is how far the deck can stand above the heel of a mast on deck: its step in a
// well, mm.
const onDeck = 500

// stayOnMast checks that a stay leads down from the mast, and a shroud to its side.
func (c *crossChecker) stayOnMast(s Stay, m Mast) {
	if !HoldsMast(s.Role.Value) {
		return
	}
	c.below(s.Lower.Z, s.Upper.Z, "the lower end of "+called(s.ID), "its upper end")
	if s.Upper.Z.Given && m.Height.Given && s.Upper.Z.Value > m.Height.Value {
		c.wrong(s.Upper.Z.At, "heights above the mast's heel, of both", "%s ends %s above the heel and the mast is only %s long", called(s.ID), c.length(s.Upper.Z.Value), c.length(m.Height.Value))
	}
	if slices.Contains(shroudRoles, s.Role.Value) && s.Lower.Y.Given && s.Lower.Y.Value == 0 {
		c.wrong(s.Lower.Y.At, "how far to port or starboard its plate stands; both for a pair", "the plate of %s stands on the centreline, and a %s there can't hold the mast sideways", called(s.ID), s.Role.Value)
	}
}

// below sees to it that one height is less than another.
func (c *crossChecker) below(low, high Amount, lower, upper string) {
	if low.Given && high.Given && low.Value >= high.Value {
		c.wrong(low.At, "heights above the mast's heel, the lower one first", "%s is at %s and %s at %s", lower, c.length(low.Value), upper, c.length(high.Value))
	}
}

func (c *crossChecker) atMost(high, most Amount, what string) {
	if high.Given && most.Given && high.Value > most.Value {
		c.wrong(high.At, "a height above the mast's heel", "%s is at %s and the mast is only %s long", what, c.length(high.Value), c.length(most.Value))
	}
}

// standing checks the order of work: names that lead nowhere, and steps that take off
// what is off.
func (c *crossChecker) standing(p *Plan) {
	s := &p.Standing
	c.standIns = c.roster("stand-in", entriesOf(s.StandIns, func(s StandIn) entry { return entry{s.ID, oneAlone} }))
	c.roster("step", entriesOf(s.Steps, func(s Step) entry { return entry{s.ID, oneAlone} }))
	for _, in := range s.StandIns {
		c.standIn(in, p.Boat.Mast)
	}
	if s.Gust.Given && s.StormGust.Given && s.StormGust.Value < s.Gust.Value {
		c.wrong(s.StormGust.At, "the higher of the two gusts", "the gust while nobody stands by is below the one while somebody does")
	}
	if s.Gust.Given && s.Wind.Given && s.Gust.Value < s.Wind.Value {
		c.wrong(s.Gust.At, "the gust, which is more than the mean wind, or the wind alone", "the gust is below the mean wind")
	}
	o := &order{crossChecker: c, off: map[string]bool{}, up: map[string]bool{}, holds: c.holders(p)}
	for i := range s.Steps {
		o.step(&s.Steps[i])
	}
	for _, job := range s.Jobs {
		if t := o.find(job); t.kind == "stand-in" {
			c.wrong(job.At, "a fitting or a stay that is to be changed", "%s is a stand-in: there is nothing to be changed of it", job.Value)
		}
	}
	c.days(s.Steps)
}

// standIn checks one stand-in.
func (c *crossChecker) standIn(s StandIn, m Mast) {
	c.atMost(s.Height, m.Height, called(s.ID))
	c.below(s.Lower.Z, s.Height, "its lower end", "its upper end")
	if s.Line.Parts.Given && (s.Line.Parts.Value < 1 || s.Line.Parts.Value > mostParts) {
		c.wrong(s.Line.Parts.At, "one part, or two for each turn of a lashing, up to 40", "a line in %d parts is none", s.Line.Parts.Value)
	}
	if s.LandsOn.Given {
		c.add(c.fittings.unknown(s.LandsOn))
		if parts := c.fittings.parts[s.LandsOn.Value]; len(parts) > 1 {
			c.wrong(s.LandsOn.At, "one of the two: "+parts[0].id+" or "+parts[1].id, "%s is two fittings, and a line lands on one", s.LandsOn.Value)
		}
	}
}

// mostParts is in how many parts a lashing can lead.
const mostParts = 40

// days checks that each step is over before the next begins.
func (c *crossChecker) days(steps []Step) {
	var last, until Day
	for _, s := range steps {
		if s.On.Given && s.Until.Given && s.Until.Last.Before(s.On.First) {
			c.wrong(s.Until.At, "a day after "+s.On.Text, "%s is over before it begins", called(s.ID))
		}
		if s.On.Given && last.Given && s.On.Last.Before(last.First) {
			c.wrong(s.On.At, "the steps in the order in which they are done", "%s is done before the step that stands before it (%s)", called(s.ID), last.Text)
		} else if s.On.Given && until.Given && s.On.Last.Before(until.First) {
			c.wrong(s.On.At, "a day on which the step before is over, or an earlier until there", "%s begins before the step that stands before it is over (%s)", called(s.ID), until.Text)
		}
		until = s.Until
		if s.On.Given {
			last = s.On
		}
	}
}

// holders are the fittings that hold the lower ends of the single stays.
func (c *crossChecker) holders(p *Plan) map[string]string {
	holds := map[string]string{}
	for _, f := range p.Fittings {
		for _, one := range c.fittings.parts[f.ID.Value] {
			for _, ref := range f.Serves {
				for _, s := range c.stays.parts[ref.Value] {
					if ends[f.Kind.Value] != "upper" && meet(one.side, s.side) {
						holds[s.id] = one.id
					}
				}
			}
		}
	}
	return holds
}

// order goes through the steps with what is off and what is up.
type order struct {
	*crossChecker
	off, up map[string]bool
	holds   map[string]string
}

// named is what a name in a step stands for: single stays, fittings or a stand-in.
type named struct {
	kind string
	ids  []string
}

func (o *order) step(s *Step) {
	for _, name := range s.Fit {
		if t := o.find(name); t.kind == "stand-in" && o.up[name.Value] {
			o.wrong(name.At, "a stand-in that is not up yet", "%s is up already", name.Value)
		} else if t.kind == "stand-in" {
			o.up[name.Value] = true
		}
	}
	for _, name := range slices.Concat(s.Remove, s.Replace) {
		o.takeOff(name)
	}
	for _, name := range slices.Concat(s.Fit, s.Replace) {
		o.putOn(name)
	}
}

func (o *order) takeOff(name Text) {
	t := o.find(name)
	for _, id := range t.ids {
		switch {
		case t.kind == "stand-in" && !o.up[id]:
			o.wrong(name.At, "a stand-in that an earlier step fits", "%s is not up, so it can't be taken down", id)
		case t.kind == "stand-in":
			o.up[id] = false
		case o.off[t.kind+id]:
			o.wrong(name.At, "something that is still on", "%s is off already", id)
		case t.kind == "stay" && o.off["fitting"+o.holds[id]]:
			o.wrong(name.At, "something that is still on", "%s is off already: its plate %s is out", id, o.holds[id])
		default:
			o.off[t.kind+id] = true
		}
	}
}

func (o *order) putOn(name Text) {
	t := o.find(name)
	for _, id := range t.ids {
		switch {
		case t.kind == "stand-in":
		case !o.off[t.kind+id]:
			o.wrong(name.At, "something that is off", "%s is on already", id)
		case t.kind == "stay" && o.off["fitting"+o.holds[id]]:
			o.wrong(name.At, "its plate first", "%s can't be put on while its plate %s is out", id, o.holds[id])
		default:
			o.off[t.kind+id] = false
		}
	}
}

// find looks up what a name stands for, and tells of one that stands for nothing or for
// two things. It tells once: putOn asks after takeOff for the same name.
func (o *order) find(name Text) named {
	if !name.Given {
		return named{}
	}
	stays, fittings, standIns := o.stays.parts[name.Value], o.fittings.parts[name.Value], o.standIns.parts[name.Value]
	found := 0
	for _, parts := range [][]part{stays, fittings, standIns} {
		found += min(1, len(parts))
	}
	switch {
	case found > 1 && !o.told(name.At):
		o.wrong(name.At, "an id of its own for each stay, fitting and stand-in that a step names", "%s is the id of more than one thing here", name.Value)
	case found == 0 && !o.told(name.At) && o.stays.whole && o.fittings.whole && o.standIns.whole:
		o.wrong(name.At, o.anyOf(name), "no stay, fitting or stand-in has the id %s", name.Value)
	}
	switch {
	case found != 1:
		return named{}
	case len(stays) > 0:
		return named{"stay", idsOf(stays)}
	case len(fittings) > 0:
		return named{"fitting", idsOf(fittings)}
	}
	return named{"stand-in", idsOf(standIns)}
}

// anyOf says what would be right, with the nearest ids.
func (o *order) anyOf(name Text) string {
	for _, r := range []*roster{o.stays, o.fittings, o.standIns} {
		if problem := r.unknown(name); problem != nil && len(problem.Expected) > 3 && problem.Expected[:3] == "did" {
			return problem.Expected
		}
	}
	return "the id of a stay, a fitting or a stand-in of this plan"
}

func idsOf(parts []part) []string {
	ids := make([]string, len(parts))
	for i, p := range parts {
		ids[i] = p.id
	}
	return ids
}
