package fact

import (
	"fmt"
	"math"

	"chainwale/engine/plan"
	"chainwale/engine/strength"
	"chainwale/engine/working"
)

// What an oval hole counts as. The pin or bolt pulls into its near end, which is half a
// round hole of the oval's width. So much less metal stands before it, and beside it what
// the hole takes out of the strip's width is gone: its width if it lies along the pull, its
// length if it lies across.

// sizes takes what the pin hole takes from the plate, and how far it reaches.
func (l *Landing) sizes(h *plan.Hole) {
	give(&l.Hole, h.AcrossPull())
	give(&l.HoleLong, h.Longest())
	l.narrow = &l.Hole
	if h.Oval() {
		l.narrow = &Number{}
		give(l.narrow, h.Diameter)
	}
}

// clearance is how loose the measured pin is in its hole. In an oval one it has the hole's
// length to hammer in, whichever way that lies; if it is thicker than the hole is wide, it
// doesn't go in at all, however long that is.
func (l *Landing) clearance() {
	if l.narrow == &l.Hole {
		arithmetic(&l.PinClearance, "c", "hole - measured pin", "mm", values(&l.Hole.Value, &l.PinMeasured.Value),
			func() float64 { return l.Hole.Float() - l.PinMeasured.Float() })
		return
	}
	arithmetic(&l.PinClearance, "c", "length of the oval hole - measured pin; its width - measured pin if that is not more than 0", "mm",
		values(&l.narrow.Value, &l.HoleLong.Value, &l.PinMeasured.Value), func() float64 {
			if across := l.narrow.Float() - l.PinMeasured.Float(); across <= 0 {
				return across
			}
			return l.HoleLong.Float() - l.PinMeasured.Float()
		})
}

// carrying are the bolts that carry a pull in the plate's plane from the start. One in an
// oval hole bears only when the plate has slid along it, so the others have to do without
// it. Errors: there are none but such.
func (o *boltsOf) carrying() ([]strength.GroupBolt, error) {
	var list []strength.GroupBolt
	for i, h := range o.holes {
		if !h.Oval() {
			list = append(list, o.at[i])
		}
	}
	if len(list) == 0 && len(o.at) > 0 {
		return nil, fmt.Errorf("every bolt stands in an oval hole, so the plate can slide before any of them bears, and which then does can't be told")
	}
	return list, nil
}

// sheareds is the group in its plane as one bolt sees it, and the bolt's place in it. For
// a bolt in an oval hole that is the whole group: once it bears, it carries no more than if
// its hole were round.
func (o *boltsOf) sheareds(i int) (group func() (formula[strength.BoltGroupResult], error), at int) {
	if o.holes[i].Oval() {
		return func() (formula[strength.BoltGroupResult], error) {
			if _, err := o.carrying(); err != nil {
				return nil, err
			}
			return o.under(o.at), nil
		}, i
	}
	for _, h := range o.holes[:i] {
		if !h.Oval() {
			at++
		}
	}
	return o.inPlane, at
}

// apart is how far two bolts stand from each other; in oval holes they may stand at the
// ends that face each other.
func (o *boltsOf) apart(i, j int) float64 {
	a, b := o.holes[i], o.holes[j]
	if !a.Oval() && !b.Oval() {
		return math.Hypot(o.at[i].X-o.at[j].X, o.at[i].Y-o.at[j].Y)
	}
	one, other := a.Sheet(), b.Sheet()
	return one.Apart(other) + (one.Diameter+other.Diameter)/2
}

// acrossBears is what a hole that is long across the pull bears of what a round one does.
const acrossBears = 0.6

var enAcross = working.Source{Title: "after EN 1993-1-8", Edition: "2005", Clause: "table 3.4, note 2", As: working.Memory, For: "a slot across the force"}

// inHole is a bolt in its hole, which may be long across the pull.
type inHole struct {
	strength.BoltHole
	across bool
}

// inHoleResult is what it bears, N.
type inHoleResult struct {
	strength.BoltHoleResult
	across bool
}

// Reckon gives the forces.
func (h inHole) Reckon() (inHoleResult, error) {
	r, err := h.BoltHole.Reckon()
	return inHoleResult{r, h.across}, err
}

// bears is the least of the forces, N.
func (r inHoleResult) bears() float64 {
	if r.across {
		return acrossBears * r.Lowest
	}
	return r.Lowest
}

// Working writes the calculation down.
func (r inHoleResult) Working() []working.Step {
	steps := r.BoltHoleResult.Working()
	if !r.across {
		return steps
	}
	return append(steps, working.Step{Symbol: "Fb", Meaning: "the hole is long across the pull", Formula: "0.6 R", Inputs: []working.Input{{Symbol: "R", Value: r.Lowest, Unit: "N"}}, Value: r.bears(), Unit: "N", Source: enAcross})
}
