package sheet

import (
	"fmt"
	"math"
)

// MatchedHole is a hole of a new part and where the old part or the boat has it.
type MatchedHole struct {
	Name string
	// New is its place in the new part, Measured that of the hole it must meet; both in
	// the flat, or both square to the holes' common face.
	New, Measured Point
	// Hole is the diameter in the new part, Other that of the hole it meets (0 takes the
	// bolt's own), Bolt the bolt's, mm.
	Hole, Other, Bolt float64
	// Slack is how far an oval hole of the new part lets its bolt go from the middle either
	// way along its length: half of what it is longer than wide, mm; 0 for a hole that is
	// none. Turn is how that length runs, deg from the new part's X.
	Slack, Turn float64
	// Within is how far the place of the hole may be off as cut, mm.
	Within float64
	// Largest is the diameter that the hole may be reamed to, 0 for no bound.
	Largest float64
}

// HoleMatch asks whether the holes of a new part meet those measured. Mirrored tries
// the part turned over as well, and takes it only where it fits better.
type HoleMatch struct {
	Holes    []MatchedHole
	Mirrored bool
}

// HoleMatchResult is the best way to lay the part on, and how each hole then stands.
type HoleMatchResult struct {
	// Turn is the angle of the part, deg, Shift where its X = Y = 0 comes to lie.
	Turn     float64
	Shift    Point
	Mirrored bool
	Holes    []HoleMiss
	// Root is the root mean square of all misses, mm.
	Root    float64
	Verdict MatchVerdict
	// Worst is the name of the hole that lacks most, or has least to spare.
	Worst string
}

// HoleMiss is how one hole stands.
type HoleMiss struct {
	Name string
	// Miss is how far the middles are apart, Off in which direction, both beyond what an
	// oval hole lets its bolt go along its length; Freedom how far they
	// may be; Lacks what is missing of that, less than 0 if there is room to spare. mm.
	Miss    float64
	Off     Point
	Freedom float64
	Lacks   float64
	// Ream is the diameter at which the bolt goes through, 0 if it does as it is.
	Ream float64
}

// MatchVerdict sums a match up.
type MatchVerdict string

const (
	// DropsOn: every bolt goes through as cut.
	DropsOn MatchVerdict = "drops on"
	// NeedsReaming: every bolt goes through once some holes are reamed.
	NeedsReaming MatchVerdict = "needs reaming"
	// DoesNotFit: a hole would have to be larger than it may.
	DoesNotFit MatchVerdict = "does not fit"
)

// Reckon lays the part on and judges each hole.
//
// Equation:
//
//	freedom = ((Hole - Bolt) + (Other - Bolt))/2 - Within
//	lacks   = miss - freedom,  Ream = Hole + 2 lacks
//
// The part is laid on with the least sum of squared misses. If a bolt then doesn't go
// through, it is shifted to where what lacks is least, each miss counting only by what it
// exceeds its freedom; and if some still don't, to where the fewest holes need reaming.
//
// An oval hole takes from its miss what lies along its length, up to its slack; what is
// left counts as a round hole's.
//
// Symbols: all mm. Holds for bolts square to the face, two holes at least. Source: geometry (computed). Errors: holes that are none, smaller than their
// bolt, or in one place.
func (m HoleMatch) Reckon() (HoleMatchResult, error) {
	if err := m.check(); err != nil {
		return HoleMatchResult{}, err
	}
	best := m.lay(false)
	if m.Mirrored {
		if over := m.lay(true); over.Root < best.Root-1e-9 {
			best = over
		}
	}
	return best, nil
}

func (m HoleMatch) check() error {
	if len(m.Holes) < 2 {
		return fmt.Errorf("one hole says nothing of how a part lies: two are needed at least, not %d", len(m.Holes))
	}
	widest := 0.0
	for i, h := range m.Holes {
		var in inputs
		name := m.name(i)
		in.must(h.New.finite() && h.Measured.finite(), "%s has a place that is not finite", name)
		in.positive("the bolt of "+name, h.Bolt, "mm")
		in.must(h.Hole >= h.Bolt && h.Hole <= most, "%s is %g mm and its bolt %g mm: it does not go through", name, h.Hole, h.Bolt)
		in.must(h.Other == 0 || h.Other >= h.Bolt && h.Other <= most, "what %s meets is a hole of %g mm for a bolt of %g mm", name, h.Other, h.Bolt)
		in.notNegative("how far the place of "+name+" may be off", h.Within, "mm")
		in.notNegative("how far "+name+" lets its bolt go along its length", h.Slack, "mm")
		in.finite("how the length of "+name+" runs", h.Turn, "deg")
		in.must(h.Largest == 0 || h.Largest >= h.Hole, "%s may be reamed to %g mm and is %g mm already", name, h.Largest, h.Hole)
		if in.err != nil {
			return in.err
		}
		widest = max(widest, h.New.distance(m.Holes[0].New))
	}
	if widest < touching {
		return fmt.Errorf("all holes are in one place")
	}
	return nil
}

func (m HoleMatch) name(i int) string { return holeName(Hole{Name: m.Holes[i].Name}, i) }

func (h MatchedHole) freedom() float64 {
	other := h.Other
	if other == 0 {
		other = h.Bolt
	}
	return (h.Hole-h.Bolt+other-h.Bolt)/2 - h.Within
}

// beyondSlots takes from misses what oval holes leave their bolts along their length, as
// the part lies.
func (m HoleMatch) beyondSlots(p pose, misses []Point) []Point {
	list := make([]Point, len(misses))
	for i, h := range m.Holes {
		list[i] = misses[i]
		if h.Slack > 0 {
			sin, cos := math.Sincos(radians(h.Turn))
			along := p.place(Point{cos, sin}).minus(p.place(Point{}))
			list[i] = misses[i].minus(along.times(min(h.Slack, max(-h.Slack, misses[i].dot(along)))))
		}
	}
	return list
}

// lay lays the part on one way round.
func (m HoleMatch) lay(mirrored bool) HoleMatchResult {
	points, targets := make([]Point, len(m.Holes)), make([]Point, len(m.Holes))
	for i, h := range m.Holes {
		points[i], targets[i] = h.New, h.Measured
	}
	first := m.judge(bestPose(points, targets, nil, mirrored), points, targets)
	if first.Verdict == DropsOn {
		return first
	}
	shifted := m.judge(m.ease(points, targets, false, mirrored), points, targets)
	if shifted.Verdict == DropsOn {
		return shifted
	}
	few := m.judge(m.ease(points, targets, true, mirrored), points, targets)
	if few.reamed() < shifted.reamed() {
		return few
	}
	return shifted
}

// reamed is how many holes need reaming.
func (r HoleMatchResult) reamed() int {
	n := 0
	for _, h := range r.Holes {
		if h.Ream > 0 {
			n++
		}
	}
	return n
}

// trifle is a lack that no bolt notices, mm.
const trifle = 0.001

// ease moves the part so that misses count only by what exceeds their freedom: each
// target is moved towards its point as far as the hole is free, the part is laid on the
// moved targets, and so again. Both steps bring it nearer to a place where all bolts go
// through, if there is one. With few, what exceeds counts by itself and not by its
// square, so that it gathers at as few holes as can be.
func (m HoleMatch) ease(points, targets []Point, few, mirrored bool) pose {
	p := bestPose(points, targets, nil, mirrored)
	moved := make([]Point, len(targets))
	margin := trifle / 2
	var weights []float64
	if few {
		// What exceeds little is drawn in slowly, so it is given a wider berth.
		margin, weights = 5*trifle, make([]float64, len(targets))
	}
	for range 500 {
		misses := p.misses(points, targets)
		beyond := m.beyondSlots(p, misses)
		for i, h := range m.Holes {
			free, size := max(0, h.freedom()-margin), beyond[i].size()
			moved[i] = targets[i].plus(misses[i])
			if size > free {
				moved[i] = moved[i].minus(beyond[i].times(1 - free/size))
			}
			if few {
				weights[i] = 1 / (trifle + max(0, size-free))
			}
		}
		p = bestPose(points, moved, weights, mirrored)
	}
	return p
}

func (m HoleMatch) judge(p pose, points, targets []Point) HoleMatchResult {
	misses := m.beyondSlots(p, p.misses(points, targets))
	r := HoleMatchResult{Turn: p.turned(), Shift: p.shift, Mirrored: p.mirrored, Root: root(misses), Verdict: DropsOn}
	worst := math.Inf(-1)
	for i, h := range m.Holes {
		miss := HoleMiss{Name: m.name(i), Miss: misses[i].size(), Off: misses[i], Freedom: h.freedom()}
		miss.Lacks = miss.Miss - miss.Freedom
		if miss.Lacks > trifle {
			miss.Ream = h.Hole + 2*miss.Lacks
			if r.Verdict == DropsOn {
				r.Verdict = NeedsReaming
			}
			if h.Largest > 0 && miss.Ream > h.Largest {
				r.Verdict = DoesNotFit
			}
		}
		if miss.Lacks > worst {
			worst, r.Worst = miss.Lacks, miss.Name
		}
		r.Holes = append(r.Holes, miss)
	}
	return r
}
