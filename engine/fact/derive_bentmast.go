package fact

import (
	"fmt"
	"math"
	"slices"

	"chainwale/engine/rig"
	"chainwale/engine/working"
)

// bending bends the mast between what still holds it, the worst of four ways.
func (b *builder) bending(s *Standing, t *Step, i int) {
	m := b.facts.Mast
	from := append(values(&t.Margin.Value, &m.BearsBending.Value, &m.Height.Value, &m.Windage.Value), &m.Step.Value)
	reckon(&t.Bending, from, func() (formula[mastBending], error) {
		state := s.Result.Steps[i]
		return mastBent{mast: m, rig: &s.Rig, states: []rig.State{state.During, state.After}}, nil
	}, func(r mastBending) float64 { return r.used })
}

// mastBent is a mast between what holds it.
type mastBent struct {
	mast   *Mast
	rig    *rig.Rig
	states []rig.State
}

type mastBending struct {
	used   float64
	moment rig.MastBendingResult
	bears  float64
	toward string
}

// Reckon looks at four ways of pushing in each state. The wind's moment about the heel,
// and across the boat the roll's with it, is spread evenly over the height.
func (b mastBent) Reckon() (mastBending, error) {
	worst := mastBending{bears: b.mast.BearsBending.Float()}
	height := b.mast.Height.Float()
	for i := range b.states {
		s := &b.states[i]
		for _, deg := range []float64{0, 90, 180, 270} {
			push := s.Wind
			if deg == 90 || deg == 270 {
				push += s.Roll
			}
			load := 2 * push / (height * height)
			supports := b.supports(s, deg)
			if len(supports) < 2 {
				return worst, fmt.Errorf("pushed %s, nothing holds the mast but its heel", rig.InWords(deg))
			}
			bent, err := rig.MastBending{Supports: supports, Top: height, Load: load}.Reckon()
			if err != nil {
				return worst, err
			}
			if used := abs(bent.Largest) / worst.bears; used >= worst.used {
				worst.used, worst.moment, worst.toward = used, bent, rig.InWords(deg)
			}
		}
	}
	return worst, nil
}

// supports are the heights that hold the mast when it is pushed a way: its heel, the
// partners of one that is wedged, and where stays take hold that pull against the push.
// A spreader is none: what the wire over its tip presses it with goes the way of the
// push. What holds the mast at its root are the shrouds that end there.
func (b mastBent) supports(s *rig.State, deg float64) []float64 {
	heights := []float64{0}
	if !b.rig.DeckStepped && b.mast.Wedged.Yes() && b.mast.Deck.Known() && b.mast.Deck.Float() > 0 {
		heights = append(heights, b.mast.Deck.Float())
	}
	for _, h := range s.On {
		line, ok := b.lineOf(h.Name)
		if !ok || h.Allowable <= 0 || !pullsAgainst(line, deg) {
			continue
		}
		heights = append(heights, line.Height)
	}
	slices.Sort(heights)
	return slices.CompactFunc(heights, func(a, b float64) bool { return abs(a-b) < nearSupports })
}

// nearSupports is how near two places that hold the mast count as one, mm (judgement).
const nearSupports = 200

func (b mastBent) lineOf(name string) (rig.StayLine, bool) {
	for i := range b.rig.Stays {
		if b.rig.Stays[i].Name == name {
			return b.rig.Stays[i].Line, true
		}
	}
	for i := range b.rig.StandIns {
		if b.rig.StandIns[i].Name == name {
			return b.rig.StandIns[i].Line, true
		}
	}
	return rig.StayLine{}, false
}

// againstFan is within how many degrees of straight against a push a stay holds the mast
// where it ends, so that the lowers, which lead out far more than fore and aft, count for
// both ways (judgement).
const againstFan = 75

// pullsAgainst tells whether a stay pulls against a push.
func pullsAgainst(l rig.StayLine, deg float64) bool {
	r, err := l.Reckon()
	if err != nil {
		return false
	}
	return abs(math.Remainder(r.Direction-deg-180, 360)) <= againstFan
}

// Working writes the worst way down.
func (r mastBending) Working() []working.Step {
	return append(r.moment.Working(), working.Step{Symbol: "u", Meaning: "share of what the section bears, pushed " + r.toward, Formula: "M/Mb",
		Inputs: []working.Input{{Symbol: "M", Value: abs(r.moment.Largest), Unit: "N mm"}, {Symbol: "Mb", Value: r.bears, Unit: "N mm"}}, Value: r.used, Source: arithmeticSource})
}
