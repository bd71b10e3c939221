package fact

import (
	"fmt"
	"math"
	"sync"

	"chainwale/engine/plan"
	"chainwale/engine/sheet"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

// CutWithin is how far a hole's place may be off as it is cut, mm, either way (judgement):
// what the match is reckoned with, and what the drawing asks for.
const CutWithin = 0.2

var (
	laidOn    = working.Source{Title: "the part laid on with the least misses that hinder a bolt", As: working.Computed, For: "the form of the equation"}
	cutSource = working.Source{Title: "holes cut to 0.2 mm of their place", As: working.Judgement, For: "the tolerance"}
)

// match makes what a part that is to be made anew has to meet, if the plan tells of the
// old part or of the holes in the hull.
func (b *builder) match(p *plan.Fitting, f *Fitting, side side) {
	if p.State.Value == "kept" || len(p.HullHoles) == 0 && !p.Measured.Given() {
		return
	}
	m := &matchOf{match: &Match{Subject: Subject{ID: f.ID, Name: f.Name, At: p.At}, Fitting: f}, plan: p}
	shared := b.madeOf(p)
	if shared.old != nil {
		m.old, m.laid = *shared.old, true
	}
	m.match.At = p.Measured.At
	if !p.Measured.Given() {
		m.match.At = p.HullHoles[0].At
	}
	m.count()
	if shared.match == nil {
		shared.match = sync.OnceValues(m.lay)
	}
	m.meet(shared.match)
	m.uncertainty(shared.match)
	m.flatLength()
	giveWord(&m.match.Follows, p.Follows)
	b.offWire(m, side)
	b.oldFailed(m, p)
	b.facts.Matches = append(b.facts.Matches, m.match)
}

// matchOf is a match with the plan's words on it.
type matchOf struct {
	match *Match
	plan  *plan.Fitting
	// old is the old part laid flat, if laid.
	old  sheet.Development
	laid bool
	// holes are those that have to meet, from what they are known by.
	holes []meeting
	from  []*Value
	// open are bolt holes that meet nothing and are not drilled at the boat: whether they
	// land is not known.
	open []*Value
}

// meet takes over how the part lies on what it has to meet.
func (m *matchOf) meet(lay func() (laidMatch, error)) {
	n := m.match
	thread := &Word{}
	giveWord(thread, m.plan.Mounting.Bolts.Thread)
	m.from = append(m.open[:len(m.open):len(m.open)], &thread.Value)
	for _, x := range m.holes {
		m.from = append(m.from, amounts(x.hole.Along, x.hole.Diameter)...)
		if x.hole.Oval() {
			m.from = append(m.from, amounts(x.hole.Long)...)
		}
		if x.hull != nil {
			m.from = append(m.from, amounts(x.hull.Along)...)
		}
	}
	with := func() (formula[laidMatch], error) { return once[laidMatch](lay), nil }
	reckon(&n.Miss, m.from, with, func(r laidMatch) float64 { return r.worst().Miss })
	reckon(&n.Clearance, m.from, with, func(r laidMatch) float64 { return r.worst().Freedom })
	reckon(&n.Ream, m.from, with, func(r laidMatch) float64 { return r.widest() })
	reckon(&n.Reamed, m.from, with, func(r laidMatch) float64 { return r.reamed() })
	n.Worst.WouldStand(n.At)
	if n.Miss.Known() {
		r, _ := lay()
		worst := m.named(r.Worst).hole
		n.Worst.Give(r.Worst, worst.At)
		n.Miss.at, n.Clearance.at = worst.Along.At, worst.Diameter.At
	}
}

// lay lays the part on what it has to meet.
func (m *matchOf) lay() (laidMatch, error) {
	bolt, err := table.Thread(m.plan.Mounting.Bolts.Thread.Value)
	if err != nil {
		return laidMatch{}, err
	}
	if err := m.oneFace(); err != nil {
		return laidMatch{}, err
	}
	if err := m.foldedAlike(); err != nil {
		return laidMatch{}, err
	}
	return matching{m: m, bolt: bolt.Diameter}.Reckon()
}

// once is a formula that several facts are picked from and that is reckoned once.
type once[R worked] func() (R, error)

// Reckon gives the result.
func (o once[R]) Reckon() (R, error) { return o() }

// oneFace refuses holes of the hull that a fold parts: they were measured on one face.
func (m *matchOf) oneFace() error {
	if m.plan.Measured.Given() && !m.laid && len(m.plan.HullHoles) == 0 {
		return fmt.Errorf("what was measured on the old part is not whole")
	}
	if len(m.holes) < 2 || m.holes[0].hull == nil {
		return nil
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, x := range m.holes {
		low, high = min(low, x.hole.Along.Value), max(high, x.hole.Along.Value)
	}
	for _, f := range m.plan.Folds {
		if !f.Along.Given || f.Along.Value > low && f.Along.Value < high {
			return fmt.Errorf("the %s fold lies among the bolt holes, and hull_holes are those of one face: measure the old part instead", f.Name.Value)
		}
	}
	return nil
}

func (m *matchOf) named(name string) *meeting {
	for i := range m.holes {
		if m.holes[i].hole.Name.Value == name {
			return &m.holes[i]
		}
	}
	return &m.holes[0]
}

// matching is the match as a formula.
type matching struct {
	m    *matchOf
	bolt float64
}

// laidMatch is how the part lies, with what it needs to be written down.
type laidMatch struct {
	sheet.HoleMatchResult
	bolt  float64
	holes []sheet.MatchedHole
}

// Reckon lays the part on.
func (x matching) Reckon() (laidMatch, error) {
	r := laidMatch{bolt: x.bolt}
	for _, h := range x.m.holes {
		r.holes = append(r.holes, x.matched(h))
	}
	var err error
	r.HoleMatchResult, err = sheet.HoleMatch{Holes: r.holes}.Reckon()
	return r, err
}

// matched is one hole as the geometry wants it. A hole of the hull of which no size is
// known is taken to be no wider than its bolt. Of an oval hole in the hull only the width
// counts; the plan knows none there.
func (x matching) matched(h meeting) sheet.MatchedHole {
	one := sheet.MatchedHole{Name: h.hole.Name.Value, New: h.hole.Sheet().At, Hole: h.hole.Diameter.Value, Bolt: x.bolt, Within: CutWithin}
	if s := h.hole.Sheet(); s.Long > 0 {
		one.Slack, one.Turn = (s.Long-s.Diameter)/2, s.Turn
	}
	if h.hull == nil {
		one.Measured = x.m.old.Holes[h.old].At
		return one
	}
	one.Measured = sheet.Point{X: h.hull.Along.Value, Y: h.hull.Across.Value}
	one.Other = h.hull.Diameter.Value
	return one
}

// missFormula says from where to where a hole is off.
func missFormula(h sheet.MatchedHole) string {
	if h.Slack > 0 {
		return fmt.Sprintf("middle to middle, the part laid on, beyond the %.4g mm either way along the oval hole", h.Slack)
	}
	return "middle to middle, the part laid on"
}

func (r laidMatch) worst() sheet.HoleMiss {
	for _, h := range r.Holes {
		if h.Name == r.Worst {
			return h
		}
	}
	return sheet.HoleMiss{Miss: math.NaN(), Freedom: math.NaN()}
}

func (r laidMatch) widest() float64 {
	widest := 0.0
	for _, h := range r.Holes {
		widest = max(widest, h.Ream)
	}
	return widest
}

func (r laidMatch) reamed() float64 {
	n := 0.0
	for _, h := range r.Holes {
		if h.Ream > 0 {
			n++
		}
	}
	return n
}

// Working writes the match down, hole by hole.
func (r laidMatch) Working() []working.Step {
	steps := []working.Step{{Symbol: "e", Meaning: "how far a hole's place may be off as cut", Formula: "as cut", Value: CutWithin, Unit: "mm", Source: cutSource}}
	for i, h := range r.Holes {
		of := r.holes[i]
		other := of.Other
		if other == 0 {
			other = of.Bolt
		}
		steps = append(steps,
			working.Step{Symbol: "c", Meaning: h.Name + ": how far it may be off", Formula: "((d0 - d) + (dh - d))/2 - e",
				Inputs: []working.Input{{Symbol: "d0", Value: of.Hole, Unit: "mm"}, {Symbol: "dh", Value: other, Unit: "mm"}, {Symbol: "d", Value: of.Bolt, Unit: "mm"}, {Symbol: "e", Value: of.Within, Unit: "mm"}},
				Value:  h.Freedom, Unit: "mm", Source: laidOn},
			working.Step{Symbol: "miss", Meaning: h.Name + ": how far it is off", Formula: missFormula(of), Inputs: []working.Input{{Symbol: "dx", Value: h.Off.X, Unit: "mm"}, {Symbol: "dy", Value: h.Off.Y, Unit: "mm"}},
				Value: h.Miss, Unit: "mm", Source: laidOn})
		if h.Ream > 0 {
			steps = append(steps, working.Step{Symbol: "dream", Meaning: h.Name + ": reamed to this, its bolt goes through", Formula: "d0 + 2 (miss - c)",
				Inputs: []working.Input{{Symbol: "d0", Value: of.Hole, Unit: "mm"}, {Symbol: "miss", Value: h.Miss, Unit: "mm"}, {Symbol: "c", Value: h.Freedom, Unit: "mm"}}, Value: h.Ream, Unit: "mm", Source: laidOn})
		}
	}
	return steps
}
