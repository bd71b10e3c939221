package fact

import (
	"errors"
	"math"

	"chainwale/engine/plan"
	"chainwale/engine/rig"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

// stayOnRig works out how a stay stands and what its ends are worth, where the plan
// says anything of the mast as a whole.
func (b *builder) stayOnRig(s *Stay, side string) {
	p := s.plan
	s.MastTold.Give(mastTold(b.plan), p.At)
	holdsMast(s, p)
	s.TensionTold.Give(p.Tension.Given, p.Tension.At)
	turnbuckle(s, p)
	if s.MastTold.Yes() || s.TensionTold.Yes() {
		tension(s)
	}
	if !s.MastTold.Yes() {
		return
	}
	foot(s, side)
	b.over(s, side)
	s.angles()
}

// mastReach is how far from the mast's line, which rakes and bends, the upper end of its
// stay can be, mm (judgement). Another mast stands further off.
const mastReach = 1000

// holdsMast tells whether a stay ends on the mast: by its role, and by where its upper
// end is, for a mizzen's stays have the same roles.
func holdsMast(s *Stay, p *plan.Stay) {
	s.HoldsMast.Give(false, p.Role.At)
	if !plan.HoldsMast(p.Role.Value) {
		return
	}
	for _, off := range []plan.Amount{p.Upper.X, p.Upper.Y} {
		if !off.Given {
			s.HoldsMast.known = false
			s.HoldsMast.WouldStand(off.At)
			return
		}
	}
	s.HoldsMast.Give(math.Hypot(p.Upper.X.Value, p.Upper.Y.Value) <= mastReach, p.Upper.X.At)
}

// foot takes the ends of a stay over. The plan gives a pair as its port one.
func foot(s *Stay, side string) {
	p := s.plan
	give(&s.FootX, p.Lower.X)
	give(&s.FootY, p.Lower.Y)
	give(&s.FootZ, p.Lower.Z)
	give(&s.Top, p.Upper.Z)
	if side == "starboard" && s.FootY.Known() {
		s.FootY.Give(-abs(s.FootY.Float()), s.FootY.at)
	}
}

// turnbuckle takes over what is said of the ends of the wire.
func turnbuckle(s *Stay, p *plan.Stay) {
	ends := func(told *YesNo, times *Number, given plan.Amount, proven plan.YesNo, any bool) {
		told.Give(any || given.Given || proven.Given, p.At)
		if !told.Yes() {
			return
		}
		var load Number
		give(&load, given)
		if !given.Given && proven.Given && proven.Value {
			times.Give(1, proven.At)
			return
		}
		arithmetic(times, "n", "what it breaks at / break load of the wire", "", values(&load.Value, &s.BreakLoad.Value),
			func() float64 { return load.Float() / s.BreakLoad.Float() })
	}
	t, e := &p.Turnbuckle, &p.Terminals
	ends(&s.TurnbuckleTold, &s.TurnbuckleTimes, t.BreakLoad, t.Proven, t.Thread.Given || t.Metal.Given)
	ends(&s.TerminalsTold, &s.TerminalsTimes, e.BreakLoad, e.Proven, e.Kind.Given || e.LookedAt.Given)
	giveWord(&s.TurnbuckleMetal, t.Metal)
	brass(&s.TurnbuckleBrass, &s.TurnbuckleMetal)
}

// leastBreak is what the wire breaks at where its strength is counted on: the weaker
// wire, where the metal is not known.
func leastBreak(s *Stay) {
	if s.plan.Wire.BreakLoad.Given {
		s.LeastBreak = Number{s.BreakLoad.Value}
		return
	}
	s.LeastBreak.Derive(values(&s.WireDiameter.Value, &s.Construction.Value),
		func() (float64, error) {
			row, err := wireRow(s)
			return row.BreakLoad, err
		},
		func() []working.Step {
			row, err := wireRow(s)
			if err != nil {
				return nil
			}
			return oneStep("F_least", "by the table of wire: "+describe(row), row.BreakLoad, "N", row.Source)()
		})
}

// tension is the pull at rest, and how stiff the wire is.
func tension(s *Stay) {
	leastBreak(s)
	give(&s.Tension, s.plan.Tension)
	arithmetic(&s.TensionShare, "T/F", "pull at rest / break load", "", values(&s.Tension.Value, &s.LeastBreak.Value),
		func() float64 { return s.Tension.Float() / s.LeastBreak.Float() })
	reckon(&s.Stiffness, values(&s.WireDiameter.Value, &s.Construction.Value), func() (formula[rig.WireResult], error) {
		return rig.Wire{Construction: s.Construction.Text(), Metal: s.WireMetal.Text(), Diameter: s.WireDiameter.Float()}, nil
	}, func(r rig.WireResult) float64 { return r.EA })
}

// turn is what one turn of the turnbuckle does to the pull, at the most.
func (s *Stay) turn() {
	var thread Word
	giveWord(&thread, s.plan.Turnbuckle.Thread)
	reckon(&s.PullATurn, values(&thread.Value, &s.Stiffness.Value, &s.Length.Value), func() (formula[rig.TurnResult], error) {
		row, err := table.Thread(thread.Text())
		return rig.Turn{Pitch: row.Pitch, Length: s.Length.Float(), EA: s.Stiffness.Float()}, err
	}, func(r rig.TurnResult) float64 { return r.Rise })
}

var errElsewhere = errors.New("it does not end on this mast")

// over finds the tips of the spreaders that a stay leads over, the lowest first.
func (b *builder) over(s *Stay, side string) {
	p := s.plan
	spreaders := b.plan.Boat.Mast.Spreaders
	leads := p.Role.Value == "cap shroud" || p.Role.Value == "intermediate"
	if p.OverSpreaders.Given {
		leads = p.OverSpreaders.Value
	}
	if !leads || !s.Top.Known() {
		return
	}
	if len(spreaders) == 0 {
		at := b.plan.Boat.Mast.At
		at.Pointer += "/spreaders"
		s.spreaders.WouldStand(at)
		s.spreaders.Refuse("")
		return
	}
	s.spreaders.Give(0, p.At)
	for i := range spreaders {
		if h := spreaders[i].Height.Value; h < s.Top.Float()-nearSpreader {
			tip := rig.Point{X: -spreaders[i].Sweep.Value, Y: spreaders[i].HalfLength.Value, Z: h}
			if side == "starboard" {
				tip.Y = -tip.Y
			}
			s.tips = append(s.tips, tip)
		}
	}
}

// nearSpreader is how far above a spreader's root a wire that belongs to it can end, mm
// (judgement).
const nearSpreader = 300

// lineFrom is what has to be known before a stay's line is.
func (s *Stay) lineFrom() []*Value {
	from := values(&s.FootX.Value, &s.FootY.Value, &s.FootZ.Value, &s.Top.Value, &s.HoldsMast.Value)
	if s.spreaders.at.File != "" {
		from = append(from, &s.spreaders.Value)
	}
	return from
}

// line is the stay as the mast as a whole feels it: by its lowest part.
func (s *Stay) line() rig.StayLine {
	l := rig.StayLine{Foot: rig.Point{X: s.FootX.Float(), Y: s.FootY.Float(), Z: s.FootZ.Float()}, Height: s.Top.Float()}
	if len(s.tips) > 0 {
		l.Over = s.tips[0]
	}
	return l
}

// angles are that of its part at the mast, with its length, over the highest spreader that it leads over.
func (s *Stay) angles() {
	if s.HoldsMast.No() {
		for _, n := range []*Number{&s.Angle, &s.Length} {
			n.WouldStand(s.plan.Role.At)
			n.Refuse(errElsewhere.Error())
		}
		return
	}
	atMast := func() (formula[rig.StayLineResult], error) {
		l := s.line()
		if n := len(s.tips); n > 0 {
			l.Over = s.tips[n-1]
		}
		return l, nil
	}
	reckon(&s.Angle, s.lineFrom(), atMast, func(r rig.StayLineResult) float64 { return r.Angle })
	reckon(&s.Length, s.lineFrom(), atMast, func(r rig.StayLineResult) float64 { return r.Length })
	s.turn()
}

// mixed tells whether the wires of one role differ on this mast; those of another mast
// are of their own sizes.
func (b *builder) mixed() {
	for _, s := range b.facts.Stays {
		from := values(&s.Role.Value)
		alike := true
		for _, o := range b.facts.Stays {
			if o.Role.number != s.Role.number || !o.Role.Known() || o.HoldsMast.No() != s.HoldsMast.No() {
				continue
			}
			from = append(from, &o.Construction.Value, &o.WireMetal.Value, &o.WireDiameter.Value)
			alike = alike && o.Construction.number == s.Construction.number && o.WireMetal.number == s.WireMetal.number && abs(o.WireDiameter.number-s.WireDiameter.number) <= nearDiameter*s.WireDiameter.number
		}
		if s.Mixed.follows(from) {
			s.Mixed.Give(!alike, s.plan.Wire.At)
		}
	}
}

// nearDiameter is how near two readings of one size of wire lie (judgement).
const nearDiameter = 0.03
