package fact

import (
	"fmt"
	"math"
	"slices"

	"chainwale/engine/plan"
	"chainwale/engine/rig"
	"chainwale/engine/working"
)

// required works out what break load the righting moment asks of each stay, what the
// wire has of it, and the load that its plate has to outlast.
func (b *builder) required() {
	if !b.facts.Mast.Told.Yes() {
		for _, s := range b.facts.Stays {
			s.RightingTold.Give(false, b.plan.Boat.RightingMoment.At)
			s.designIsBreak()
		}
		return
	}
	r := &rigLoads{builder: b}
	r.gather()
	r.ruleOfThumb()
	for _, s := range b.facts.Stays {
		s.RightingTold.Give(b.plan.Boat.RightingMoment.How.Given, b.plan.Boat.RightingMoment.At)
		s.RequiredBy = Word{b.facts.Mast.KnownBy.Value}
		r.stay(s)
		arithmetic(&s.TimesRequired, "F/Freq", "break load of the wire / break load that it must have", "", values(&s.LeastBreak.Value, &s.Required.Value),
			func() float64 { return s.LeastBreak.Float() / s.Required.Float() })
		b.designLoad(s)
	}
}

var designSource = working.Source{Title: "this project's choice", As: working.Judgement, For: "only a moment that is given or found by an inclining test raises what a plate has to outlast"}

// designLoad is the load that a plate has to outlast: that of the wire fitted, or what
// is required of it where that is more and well enough known. Where a good righting
// moment asks something of the wire and what is not known, neither is this.
func (b *builder) designLoad(s *Stay) {
	asked := plan.HoldsMast(s.Role.Text()) && b.facts.Mast.loadsPlates() && !s.unasked
	switch {
	case asked && !s.Required.Known():
		s.DesignLoad.follows(values(&s.BreakLoad.Value, &s.Required.Value))
		return
	case !asked || !s.BreakLoad.Known() || s.Required.Float() <= s.BreakLoad.Float():
		s.designIsBreak()
		return
	}
	s.DesignLoad.Derive(values(&s.BreakLoad.Value, &s.Required.Value), func() (float64, error) { return s.Required.Float(), nil },
		func() []working.Step {
			return []working.Step{{Symbol: "F_design", Meaning: "load that the plate has to outlast", Formula: "the larger of what the wire breaks at and what is required of it",
				Inputs: []working.Input{{Symbol: "F_break", Value: s.BreakLoad.Float(), Unit: "N"}, {Symbol: "F_req", Value: s.Required.Float(), Unit: "N"}}, Value: s.Required.Float(), Unit: "N", Source: designSource}}
		})
}

// notAsked notes that no rule here says what the wire must break at.
func (s *Stay) notAsked(why string, args ...any) {
	s.unasked = true
	s.Required.WouldStand(s.plan.Role.At)
	s.Required.Refuse(fmt.Sprintf(why, args...))
}

// designIsBreak has the wire's break load count as the load that its plate has to
// outlast.
func (s *Stay) designIsBreak() {
	if s.DesignLoad.follows(values(&s.BreakLoad.Value)) {
		s.DesignLoad.work = s.BreakLoad.work
		s.DesignLoad.set(s.BreakLoad.number)
	}
}

// rigLoads is what the stays of one mast have in common when their loads are asked for.
type rigLoads struct {
	*builder
	// from is what the shrouds' loads rest on, worst the larger pulls of both cases.
	from  []*Value
	worst *reckoned[shroudLoads]
	// cap is the cap shroud that sets the width, forestay the one of the highest top.
	cap, forestay *Stay
}

// gather finds the cap shroud and the forestay and works the shrouds out once.
func (r *rigLoads) gather() {
	for _, s := range r.facts.Stays {
		if s.HoldsMast.No() {
			continue
		}
		if s.Role.Is("cap shroud") && r.cap == nil {
			r.cap = s
		}
		if s.Role.Is("forestay") && (r.forestay == nil || s.Top.Float() > r.forestay.Top.Float()) {
			r.forestay = s
		}
	}
	if r.cap == nil {
		return
	}
	m, main := r.facts.Mast, &r.plan.Boat.ReefedMain
	var boom, head, centre Number
	give(&boom, main.Boom)
	give(&head, main.Head)
	give(&centre, main.Centre)
	r.from = append(values(&m.RightingMoment.Value, &m.Deck.Value, &m.Freeboard.Value, &boom.Value, &head.Value, &centre.Value, &r.cap.FootY.Value), r.cap.lineFrom()...)
	if slices.ContainsFunc(r.from, func(v *Value) bool { return !v.known }) {
		return
	}
	deck := m.Deck.Float()
	r.worst = reckonedBy[shroudLoads](shroudsOf{
		half: abs(r.cap.FootY.Float()), levels: r.levels(deck),
		cases: rig.LoadCases{RightingMoment: m.RightingMoment.Float(), Freeboard: m.Freeboard.Float(), Boom: boom.Float() - deck, Head: head.Float() - deck, ReefCentre: centre.Float() - deck},
	})
}

// ruleOfThumb is what the oldest published rule makes of the righting moment, to hold
// the statics against.
func (r *rigLoads) ruleOfThumb() {
	m := r.facts.Mast
	if r.cap == nil {
		return
	}
	from := values(&m.RightingMoment.Value, &r.cap.FootY.Value)
	by := func() (formula[rig.ShroudTensionResult], error) {
		return rig.ShroudTension{RightingMoment: m.RightingMoment.Float(), HalfBeam: abs(r.cap.FootY.Float())}, nil
	}
	reckon(&m.SidePull, from, by, func(t rig.ShroudTensionResult) float64 { return t.Shrouds })
	reckon(&m.Thrust, from, by, func(t rig.ShroudTensionResult) float64 { return t.Mast })
}

// levels are the heights above the deck at which a side of the rig takes hold.
func (r *rigLoads) levels(deck float64) []rig.ShroudLevel {
	var levels []rig.ShroudLevel
	for _, tip := range r.cap.tips {
		levels = append(levels, rig.ShroudLevel{Height: tip.Z - deck, Tip: abs(tip.Y)})
	}
	return append(levels, rig.ShroudLevel{Height: r.cap.Top.Float() - deck})
}

// shroudsOf are the shrouds of one side under both load cases.
type shroudsOf struct {
	half   float64
	levels []rig.ShroudLevel
	cases  rig.LoadCases
}

// shroudLoads are the larger pulls of the two cases, level by level.
type shroudLoads struct {
	cases  rig.LoadCasesResult
	both   [2]rig.ShroudsResult
	levels []rig.LevelPull
}

// Reckon takes both cases.
func (s shroudsOf) Reckon() (shroudLoads, error) {
	for _, l := range s.levels {
		s.cases.Heights = append(s.cases.Heights, l.Height)
	}
	cases, err := s.cases.Reckon()
	if err != nil {
		return shroudLoads{}, err
	}
	r := shroudLoads{cases: cases, levels: make([]rig.LevelPull, len(s.levels))}
	for i, forces := range [][]float64{cases.Foresail, cases.ReefedMain} {
		levels := slices.Clone(s.levels)
		for k := range levels {
			levels[k].Force = forces[k]
		}
		if r.both[i], err = (rig.Shrouds{HalfBeam: s.half, Levels: levels}).Reckon(); err != nil {
			return r, err
		}
		for k, pull := range r.both[i].Levels {
			w := &r.levels[k]
			w.Diagonal, w.Vertical = math.Max(w.Diagonal, pull.Diagonal), math.Max(w.Vertical, pull.Vertical)
		}
	}
	return r, nil
}

// Working writes both cases down.
func (s shroudLoads) Working() []working.Step {
	return slices.Concat(s.cases.Working(), s.both[0].Working(), s.both[1].Working())
}

// requiredOf is a required break load with the working behind it.
type requiredOf struct {
	load  float64
	steps []working.Step
}

func (r requiredOf) Working() []working.Step { return r.steps }

// stay works out what is required of one stay.
func (r *rigLoads) stay(s *Stay) {
	role := s.Role.Text()
	if plan.HoldsMast(role) && s.HoldsMast.No() {
		s.notAsked("it ends on another mast, and what that asks of its wires is for a naval architect")
		return
	}
	switch role {
	case "cap shroud", "intermediate", "fore lower", "aft lower":
		r.shroud(s)
	case "bobstay", "whisker":
		r.bowsprit(s, rig.StayRole(role))
	case "forestay", "inner forestay", "backstay":
		r.endStay(s, rig.StayRole(role))
	default:
		s.notAsked("what a %s must break at is for a naval architect: no rule here covers it", role)
	}
}

// shroud asks for the pull of the level that a shroud belongs to.
func (r *rigLoads) shroud(s *Stay) {
	if r.cap == nil {
		s.notAsked("the plan has no cap shroud, which sets how wide the rig stands")
		return
	}
	reckon(&s.Required, append(s.lineFrom(), r.from...), func() (formula[requiredOf], error) { return requiredShroud{r, s}, nil },
		func(q requiredOf) float64 { return q.load })
}

type requiredShroud struct {
	of   *rigLoads
	stay *Stay
}

// Reckon asks for the larger of what its parts bear, each with its own factor. A wire
// that leads over spreaders bears, below the highest of them, that level's vertical pull.
func (q requiredShroud) Reckon() (requiredOf, error) {
	loads, err := q.of.worst.Reckon()
	if err != nil {
		return requiredOf{}, err
	}
	level, err := q.level()
	if err != nil {
		return requiredOf{}, err
	}
	role, pulls := rig.StayRole(q.stay.Role.Text()), []rig.RequiredShroud{}
	switch role {
	case rig.CapShroud:
		pulls = append(pulls, rig.RequiredShroud{Role: rig.Intermediate, Pull: loads.levels[level].Diagonal})
		if level > 0 {
			pulls = append(pulls, rig.RequiredShroud{Role: rig.CapShroud, Pull: loads.levels[level-1].Vertical})
		}
	case rig.Intermediate:
		pulls = append(pulls, rig.RequiredShroud{Role: rig.Intermediate, Pull: loads.levels[level].Diagonal})
	default:
		if q.of.alone(q.stay) {
			role = rig.SingleLower
		}
		pulls = append(pulls, rig.RequiredShroud{Role: role, Pull: loads.levels[level].Diagonal})
	}
	r := requiredOf{steps: loads.Working()}
	for _, p := range pulls {
		required, err := p.Reckon()
		if err != nil {
			return r, err
		}
		r.steps = append(r.steps, required.Working()...)
		r.load = max(r.load, required.BreakLoad)
	}
	return r, nil
}

// level is that at which the shroud takes hold of the mast.
func (q requiredShroud) level() (int, error) {
	top := len(q.of.cap.tips)
	if q.stay.Role.Is("cap shroud") {
		return top, nil
	}
	for i, tip := range q.of.cap.tips {
		if abs(tip.Z-q.stay.Top.Float()) <= levelReach {
			return i, nil
		}
	}
	return 0, fmt.Errorf("%s ends at %.0f mm, and no spreader stands within %d mm of that", q.stay.Name, q.stay.Top.Float(), levelReach)
}

// levelReach is how far from a spreader's root the shroud of its level can end, mm (judgement).
const levelReach = 600

// alone tells whether a lower is the only one of its side; those of another mast don't count.
func (r *rigLoads) alone(s *Stay) bool {
	for _, o := range r.facts.Stays {
		if o != s && !o.HoldsMast.No() && (o.Role.Is("fore lower") || o.Role.Is("aft lower")) && math.Signbit(o.FootY.Float()) == math.Signbit(s.FootY.Float()) {
			return false
		}
	}
	return true
}

// fractional is the share of the mast's height below which a forestay that ends there
// makes the rig a fractional one (judgement).
const fractional = 0.96

// endStay asks for the break load of a stay fore and aft.
func (r *rigLoads) endStay(s *Stay, role rig.StayRole) {
	m := r.facts.Mast
	from := append(values(&m.RightingMoment.Value, &m.Deck.Value, &m.Freeboard.Value), s.lineFrom()...)
	if role == rig.Backstay {
		if r.forestay == nil {
			s.notAsked("the plan has no forestay that the backstay stands against")
			return
		}
		from = append(append(from, r.forestay.lineFrom()...), &m.Height.Value)
	}
	reckon(&s.Required, from, func() (formula[rig.Required], error) {
		q := rig.RequiredStay{Role: role, RightingMoment: m.RightingMoment.Float(), Height: s.Top.Float() - m.Deck.Float(), Freeboard: m.Freeboard.Float(), Angle: s.Angle.Float()}
		if role == rig.Backstay {
			q.ForestayAngle = r.forestay.Angle.Float()
			q.Fractional = r.forestay.Top.Float() < fractional*m.Height.Float()
			q.Height = r.forestay.Top.Float() - m.Deck.Float()
		}
		return q, nil
	}, func(q rig.Required) float64 { return q.BreakLoad })
}

// bowsprit asks that what holds a bowsprit outlasts the forestay on it.
func (r *rigLoads) bowsprit(s *Stay, role rig.StayRole) {
	if r.forestay == nil {
		s.notAsked("the plan has no forestay that the %s holds against", role)
		return
	}
	s.RequiredBy.Give("the forestay", s.plan.Role.At)
	var end, heel, up point
	end.take(r.forestay.plan.Lower)
	heel.take(r.builder.plan.Boat.Bowsprit.Heel)
	up.take(s.plan.Upper)
	from := slices.Concat(values(&r.forestay.LeastBreak.Value, &r.forestay.Top.Value, &s.FootX.Value, &s.FootY.Value, &s.FootZ.Value), end.values(), heel.values(), up.values())
	reckon(&s.Required, from, func() (formula[rig.BowspritStayResult], error) {
		spar := heel.less(end)
		mast := vector3{-end.x.Float(), -end.y.Float(), r.forestay.Top.Float() - end.z.Float()}
		stay := vector3{s.FootX.Float() - up.x.Float(), abs(s.FootY.Float()) - abs(up.y.Float()), s.FootZ.Float() - up.z.Float()}
		return rig.BowspritStay{Role: role, ForestayBreak: r.forestay.LeastBreak.Float(), ForestayAngle: spar.angle(mast), Angle: spar.angle(stay)}, nil
	}, func(q rig.BowspritStayResult) float64 { return q.BreakLoad })
}

// point is a place of the plan whose parts may not be known.
type point struct{ x, y, z Number }

func (p *point) take(at plan.Point) {
	give(&p.x, at.X)
	give(&p.y, at.Y)
	give(&p.z, at.Z)
}

func (p *point) values() []*Value { return values(&p.x.Value, &p.y.Value, &p.z.Value) }

func (p *point) less(q point) vector3 {
	return vector3{p.x.Float() - q.x.Float(), p.y.Float() - q.y.Float(), p.z.Float() - q.z.Float()}
}

type vector3 [3]float64

// angle is that between two directions, deg.
func (v vector3) angle(w vector3) float64 {
	var dot, a, b float64
	for i := range v {
		dot, a, b = dot+v[i]*w[i], a+v[i]*v[i], b+w[i]*w[i]
	}
	return math.Acos(max(-1, min(1, dot/math.Sqrt(a*b)))) * 180 / math.Pi
}
