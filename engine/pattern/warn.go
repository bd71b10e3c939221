package pattern

import (
	"fmt"
	"math"
	"slices"

	"chainwale/engine/plan"
	"chainwale/engine/quantity"
)

// testStrip is from where on the methods for a fold differ so much that only a test
// strip tells, mm (judgement). The rule fold-needs-no-test-strip has the same limit; a
// test holds the two equal.
const testStrip = 1.0

// warn gathers the sentences that stand on the drawing. What fails a rule is in the
// report; these are for whoever has the drawing alone in hand.
func (p *Part) warn(f *plan.Fitting) {
	say := func(format string, args ...any) { p.Warnings = append(p.Warnings, fmt.Sprintf(format, args...)) }
	switch {
	case f.Measured.Given():
		say("measured from an old part: make one, try it at the boat, then make the rest")
	case len(f.HullHoles) > 0:
		say("made to holes measured in the hull: make one, try it at the boat, then make the rest")
	}
	if l := p.Landing; l != nil && l.Uncertainty > l.Play {
		say("hole %s may be %s off for all that was measured, and its bolt has %s of play", l.LeastSure, mm(l.Uncertainty), mm(l.Play))
	}
	if l := p.Landing; l.untold() {
		say("it can't be told whether the bolt holes meet those that are there: do not cut before that is settled")
	}
	if l := p.Landing; l.misses() {
		say("hole %s is %s off the one that it has to meet: do not cut before that is settled", l.Worst, mm(l.Miss))
	}
	for _, d := range p.Folds {
		switch {
		case d.Bend == nil:
			say("fold %s: what it takes of the length is not known: bend a test strip of the same sheet", d.Name)
		case d.Bend.DeductionMost-d.Bend.DeductionLeast > testStrip:
			say("fold %s: published methods differ by %s on what it takes: bend a test strip of the same sheet", d.Name, mm(d.Bend.DeductionMost-d.Bend.DeductionLeast))
		}
	}
	if len(p.Folds) > 0 && p.Grain == "" {
		say("lay the length of the part along the rolling direction, so that folds run across the grain")
	}
	if len(p.Orders) > 0 && !p.Orders[0].Clear() {
		say("no order of the folds comes clear of punch, die and frame")
	}
	p.warnHoles(say)
}

// untold tells whether it is not known that the bolt holes meet those that are there, and
// misses that one of them is known not to.
func (l *Landing) untold() bool { return l != nil && math.IsNaN(l.Miss) && !(l.Meet <= 1) }
func (l *Landing) misses() bool { return l != nil && l.Miss > l.Clearance }

// warnHoles says which holes are not simply cut.
func (p *Part) warnHoles(say func(string, ...any)) {
	for _, h := range p.Holes {
		switch {
		case h.Made == AtTheBoat:
			say("%s is drilled at the boat", p.holeWords(h))
		case h.Made == AfterFolding:
			say("%s is drilled after folding: mark its centre in the flat", p.holeWords(h))
		case h.Diameter < p.Flat.Thickness:
			say("%s is narrower than the plate is thick: drill it", p.holeWords(h))
		}
	}
	if p.Flat.OneSided {
		say("the bolts' heads are countersunk: which face, how wide and how deep is not on the plan; settle that before any is sunk")
	}
	if slices.ContainsFunc(p.Holes, func(h Hole) bool { return h.Role == "pin" && h.Made == Cut && h.Long > 0 }) {
		say("the pin hole is oval, and a pin knocks in it: is that meant?")
	}
	if slices.ContainsFunc(p.Holes, func(h Hole) bool { return h.Role == "pin" && h.Made == Cut && h.Long == 0 }) {
		say("pin holes are cut undersize and reamed to size, square to the face")
	}
}

// holeWords names a hole as the drawing's list has it: by its name in the plan, or by
// where it stands, for the plan's numbers are not the drawing's.
func (p *Part) holeWords(h Hole) string {
	switch {
	case h.Called != "":
		return "hole " + h.Called
	case !h.Placed:
		return "a " + h.Role + " hole that the plan does not place"
	}
	zero := 0.0
	if d := p.datum(); d != nil {
		zero = d.At.X
	}
	return fmt.Sprintf("the %s hole at %s along", h.Role, mm(h.At.X-zero))
}

func mm(v float64) string {
	if math.IsNaN(v) {
		return "an unknown length"
	}
	return quantity.Format(v, quantity.Length, quantity.Metric)
}
