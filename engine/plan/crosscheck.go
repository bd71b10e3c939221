package plan

import (
	"fmt"
	"slices"

	"chainwale/engine/finding"
	"chainwale/engine/plan/document"
	"chainwale/engine/quantity"
)

// A schema judges one value at a time. Here stands what takes two to be wrong:
// ids that are used twice or lead nowhere, holes beside the plate or in each other,
// strengths that can't belong together. Slips of the unit and of the calipers stand
// in slips.go.

// crossCheck gathers what is wrong between values. Where the schema already found
// fault, ids that may be part of that fault are not called unknown.
func crossCheck(p *Plan, root *document.Node, clean bool) []finding.Problem {
	c := &crossChecker{served: map[landing]Text{}, roles: map[string]string{}}
	if p.Boat.Units.Value == "us" {
		c.units = quantity.US
	}
	c.stays = c.roster("stay", entriesOf(p.Stays, func(s Stay) entry { return entry{s.ID, s.Side} }))
	c.fittings = c.roster("fitting", entriesOf(p.Fittings, func(f Fitting) entry { return entry{f.ID, f.Side} }))
	c.clean = clean
	c.roster("contact", entriesOf(p.Contacts, func(x Contact) entry { return entry{x.ID, oneAlone} }))
	c.roster("record", entriesOf(p.Records, func(x Record) entry { return entry{x.ID, oneAlone} }))
	if !clean {
		c.stays.whole = c.stays.whole && isList(root, "stays")
		c.fittings.whole = c.fittings.whole && isList(root, "fittings")
	}
	for _, s := range p.Stays {
		for _, id := range SidedIDs(s.ID.Value, s.Side.Value) {
			c.roles[id] = s.Role.Value
		}
		c.strengths(s.Pin.Yield, s.Pin.Ultimate)
		c.staySlips(s)
	}
	for _, f := range p.Fittings {
		c.serves(f)
		c.holes(f)
		c.part(f)
		c.strengths(f.Metal.Yield, f.Metal.Ultimate)
		c.fittingSlips(f)
	}
	c.mast(p)
	c.standing(p)
	for _, r := range p.Records {
		if r.Fitting.Given {
			c.add(c.fittings.unknown(r.Fitting))
		}
	}
	return c.problems
}

// oneAlone is the side of what has none.
var oneAlone = Text{Given: true, Value: Centre}

func entriesOf[T any](from []T, of func(T) entry) []entry {
	entries := make([]entry, len(from))
	for i, e := range from {
		entries[i] = of(e)
	}
	return entries
}

func isList(root *document.Node, key string) bool {
	n := root.Member(key)
	return n != nil && n.Kind == document.List
}

type crossChecker struct {
	problems []finding.Problem
	// clean tells that the schema found no fault.
	clean bool
	// units are those that messages print.
	units           quantity.System
	stays, fittings *roster
	// standIns are those of the order of work.
	standIns *roster
	// roles are those of the single stays by their ids.
	roles map[string]string
	// served tells which fitting holds which end of a stay.
	served map[landing]Text
}

// landing is one end of one stay.
type landing struct{ stay, end string }

func (c *crossChecker) add(problem *finding.Problem) {
	if problem != nil {
		c.problems = append(c.problems, *problem)
	}
}

func (c *crossChecker) wrong(at finding.Place, expected, message string, args ...any) {
	c.problems = append(c.problems, finding.Problem{At: at, Message: fmt.Sprintf(message, args...), Expected: expected})
}

func (c *crossChecker) roster(what string, entries []entry) *roster {
	r, problems := newRoster(what, entries)
	c.problems = append(c.problems, problems...)
	return r
}

// serves checks the stays that a fitting holds.
func (c *crossChecker) serves(f Fitting) {
	held := map[string]bool{}
	for _, ref := range f.Serves {
		if !ref.Given {
			continue
		}
		stays := c.stays.parts[ref.Value]
		if stays == nil {
			c.add(c.stays.unknown(ref))
			continue
		}
		if slices.ContainsFunc(stays, func(s part) bool { return held[s.id] }) {
			c.wrong(ref.At, "each stay once", "%s serves %s twice", called(f.ID), ref.Value)
			continue
		}
		reached := c.reached(f, stays)
		if len(reached) == 0 {
			c.wrong(ref.At, "a stay on the same side", "%s stands on the %s side, and %s does not", called(f.ID), f.Side.Value, ref.Value)
			continue
		}
		for _, s := range reached {
			held[s.id] = true
		}
		c.claim(f, reached, ref)
	}
}

// called is how a sentence calls a fitting, even one whose id is missing.
func called(id Text) string {
	if !id.Given {
		return "the fitting"
	}
	return id.Value
}

// line says where a value stands, as told at a place: in another file, with its name.
func line(of, at finding.Place) string {
	if of.File != at.File {
		return fmt.Sprintf("line %d of %s", of.Line, of.File)
	}
	return fmt.Sprintf("line %d", of.Line)
}

// reached are those of the stays that the fitting can hold: a plate to port
// leaves the starboard shroud alone.
func (c *crossChecker) reached(f Fitting, stays []part) (found []part) {
	for _, s := range stays {
		for _, side := range sidesOf(f.Side.Value) {
			if meet(side, s.side) {
				found = append(found, s)
				break
			}
		}
	}
	return found
}

// ends tells at which end of a stay each kind of fitting stands. A toggle plate
// joins stays to each other and a tie rod carries a plate's load on, so they hold
// no end alone.
var ends = map[string]string{
	"chainplate": "lower", "stemhead": "lower", "backstay plate": "lower", "u-bolt": "lower",
	"tang": "upper",
}

// claim notes that a fitting holds an end of the stays and reports a second one. A
// bobstay and a whisker stay have both ends on the hull or the bowsprit, so two
// plates are right for them.
func (c *crossChecker) claim(f Fitting, stays []part, ref Text) {
	end := ends[f.Kind.Value]
	if !knownSide(f.Side) {
		return
	}
	for _, s := range stays {
		if role := c.roles[s.id]; end == "" || role == "bobstay" || role == "whisker" {
			continue
		}
		key := landing{s.id, end}
		if first, taken := c.served[key]; taken && first.At != f.ID.At {
			c.wrong(ref.At, "one fitting for each end of a stay", "the %s end of %s is already held by %s in %s", end, s.id, called(first), line(first.At, ref.At))
			return
		}
		c.served[key] = f.ID
	}
}

// strongest is more than any metal of a rig breaks at, in MPa.
const strongest = 2500

// strengths refuses a metal that would yield only after it has broken, and one that
// is stronger than any.
func (c *crossChecker) strengths(yield, ultimate Amount) {
	for _, s := range []Amount{yield, ultimate} {
		if s.Given && s.Value > strongest {
			c.wrong(s.At, "the strength with its unit: 205 MPa is not 205 ksi", "no metal is as strong as %s", quantity.Format(s.Value, quantity.Stress, c.units))
		}
	}
	if yield.Given && ultimate.Given && yield.Value > ultimate.Value {
		c.wrong(yield.At, "the two the other way round, or as the certificate has them", "this yield strength is more than the ultimate strength in %s", line(ultimate.At, yield.At))
	}
}
