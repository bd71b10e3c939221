package fact

import (
	"fmt"
	"slices"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/quantity"
	"chainwale/engine/rig"
	"chainwale/engine/working"
)

// Standing is the order of work as package rig takes it, with what came of it.
type Standing struct {
	Rig    rig.Rig
	Demand rig.Demand
	Steps  []rig.Step
	// Jobs are the plates and stays that have to be changed.
	Jobs []rig.Job
	// Away is how long a new part takes, in days.
	Away float64
	// Result is there where all that it needs is known.
	Result *rig.StandingResult
	// Lacks are the readings without which nothing can be told.
	Lacks []*Value
	// Why says what can't be, where the readings are there.
	Why string
	// At is where the plan has it.
	At finding.Place
	// Bending is for each step what the mast's section is bent with over what it bears.
	Bending []float64

	from []*Value
}

// standing makes the steps of the plan and what the mast stands in each.
func (b *builder) standing() {
	p := &b.plan.Standing
	if !p.Given() {
		return
	}
	s := &Standing{At: p.At}
	b.facts.Standing = s
	b.standIns()
	b.layRig(s)
	b.demand(s)
	b.orderOfWork(s)
	for _, v := range s.from {
		if !v.known {
			s.Lacks = append(s.Lacks, v)
		}
	}
	if len(s.Lacks) == 0 {
		result, err := rig.Standing{Rig: s.Rig, Steps: s.Steps, Demand: s.Demand}.Reckon()
		if err != nil {
			s.Why = err.Error()
		} else {
			s.Result = &result
		}
	}
	for i := range p.Steps {
		b.step(s, i)
	}
}

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
		one := rig.Stay{Name: stay.ID, Role: roleOf(stay), Line: stay.line(), BreakLoad: stay.LeastBreak.Float(), Plate: b.plateOf(stay)}
		if stay.Tension.Known() {
			one.AtRest = stay.Tension.Float()
		}
		one.Needs = needs[one.Role]
		s.Rig.Stays = append(s.Rig.Stays, one)
	}
	for _, f := range b.facts.Fittings {
		if plate, ok := b.plate(f); ok {
			s.Rig.Plates = append(s.Rig.Plates, plate)
		}
	}
	for _, in := range b.facts.StandIns {
		s.from = append(s.from, &in.Height.Value, &in.FootX.Value, &in.FootY.Value, &in.FootZ.Value)
		s.Rig.StandIns = append(s.Rig.StandIns, rig.StandIn{Name: in.ID, Plate: in.plan.LandsOn.Value, Strength: in.path(),
			Line: rig.StayLine{Foot: rig.Point{X: in.FootX.Float(), Y: in.FootY.Float(), Z: in.FootZ.Float()}, Height: in.Height.Float()}})
	}
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
		switch stay.Role.Text() {
		case "bobstay", "whisker":
			needs[rig.Forestay] = append(needs[rig.Forestay], stay.ID)
		case "backstay leg":
			needs[rig.Backstay] = append(needs[rig.Backstay], stay.ID)
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
			return l.Fitting.ID
		}
	}
	return ""
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
	p := rig.Plate{Name: f.ID, Renewed: strength}
	if f.State.Is("kept") {
		p.Strength = strength
	}
	if f.Seen && f.State.Is("kept") {
		p.State = rig.Seen
	}
	return p, true
}

// demand is what pushes on the mast.
func (b *builder) demand(s *Standing) {
	m, p := b.facts.Mast, &b.plan.Standing
	var gust, storm Number
	give(&gust, p.Gust)
	if !p.Gust.Given && p.Wind.Given {
		gust.Give(rig.UsualGust*p.Wind.Value, p.Wind.At)
	}
	give(&storm, p.StormGust)
	s.from = append(s.from, &m.Windage.Value, &m.Roll.Value, &gust.Value)
	s.Demand = rig.Demand{PerSquare: m.Windage.Float(), Roll: m.Roll.Float(), Gust: gust.Float() / quantity.MetrePerSecond}
	if storm.Known() {
		s.Demand.Storm = storm.Float() / quantity.MetrePerSecond
	} else {
		s.Demand.Storm = max(rig.StormGust, s.Demand.Gust)
	}
}

// orderOfWork turns the plan's steps into rig's.
func (b *builder) orderOfWork(s *Standing) {
	for i := range b.plan.Standing.Steps {
		p := &b.plan.Standing.Steps[i]
		s.Steps = append(s.Steps, rig.Step{Name: p.ID.Value, Fit: b.singles(p.Fit), Remove: b.singles(p.Remove), Replace: b.singles(p.Replace),
			Attended: p.Attended.Given && p.Attended.Value, Days: daysOf(p)})
	}
	for _, job := range b.plan.Standing.Jobs {
		for _, id := range b.single(job.Value) {
			s.Jobs = append(s.Jobs, rig.Job{Name: id})
		}
	}
	if len(b.plan.Standing.Jobs) == 0 {
		for _, f := range b.facts.Fittings {
			if _, lands := b.plate(f); lands && !f.State.Is("kept") && f.State.Known() {
				s.Jobs = append(s.Jobs, rig.Job{Name: f.ID})
			}
		}
	}
	s.Away = b.plan.Standing.Away.Value / quantity.Day
}

// daysOf is how many days a step lasts, 0 where the plan doesn't say.
func daysOf(p *plan.Step) float64 {
	if !p.On.Given || !p.Until.Given {
		return 0
	}
	return p.Until.Last.Sub(p.On.First).Hours() / 24
}

// singles are the ids that names in a step stand for, one side each.
func (b *builder) singles(names []plan.Text) (ids []string) {
	for _, n := range names {
		ids = append(ids, b.single(n.Value)...)
	}
	return ids
}

func (b *builder) single(name string) []string {
	if ids := b.facts.expanded[name]; ids != nil {
		return ids
	}
	var ids []string
	for _, s := range b.facts.Stays {
		if meansStay(name, s) {
			ids = append(ids, s.ID)
		}
	}
	if ids == nil {
		return []string{name}
	}
	return ids
}

// step makes one step and what the mast stands in it.
func (b *builder) step(s *Standing, i int) {
	p := &b.plan.Standing.Steps[i]
	t := &Step{Subject: Subject{ID: p.ID.Value, Name: p.ID.Value, At: p.At}, Mast: b.facts.Mast}
	b.facts.Steps = append(b.facts.Steps, t)
	giveYesNo(&t.Attended, p.Attended)
	giveYesNo(&t.Aloft, p.Aloft)
	t.Afloat.WouldStand(b.plan.Standing.Place.At)
	if at := b.plan.Standing.Place; at.Given {
		t.Afloat.Give(at.Value == "afloat", at.At)
	}
	t.Days.WouldStand(p.Until.At)
	if p.On.Given && p.Until.Given {
		t.Days.Give(daysOf(p)*quantity.Day, p.Until.At)
	}
	b.opens(t, p)
	b.states(s, t, i)
	b.bending(s, t, i)
	b.elastic(s, t, i)
}

// opens tells whether a step takes a bolt or fitting out near the water.
func (b *builder) opens(t *Step, p *plan.Step) {
	giveYesNo(&t.Opens, p.BelowWater)
	out := append(b.singles(p.Remove), b.singles(p.Replace)...)
	for _, f := range b.facts.Fittings {
		if slices.Contains(out, f.ID) && f.UnderWater.Yes() {
			t.Opens.Give(true, p.At)
		}
	}
	if fittings := b.fittingsAmong(out); !t.Opens.Known() && fittings == 0 {
		t.Opens.Give(false, p.BelowWater.At)
	}
}

func (b *builder) fittingsAmong(ids []string) (n int) {
	for _, f := range b.facts.Fittings {
		if slices.Contains(ids, f.ID) {
			n++
		}
	}
	return n
}

// states takes over what the rig holds while the step is on and after it, the worse of
// the two for each fact.
func (b *builder) states(s *Standing, t *Step, i int) {
	from := append(values(&t.Attended.Value), s.from...)
	numbers := []*Number{&t.Gust, &t.Margin, &t.AfterLoss, &t.UsedUp, &t.Gone, &t.Off, &t.Uncounted, &t.StandIns, &t.OnTrust}
	if s.Result == nil || !t.Attended.Known() {
		for _, n := range numbers {
			if n.follows(from) {
				n.Refuse(s.Why)
			}
		}
		for _, v := range []*Value{&t.Weakest.Value, &t.Governs.Value, &t.Lost.Value, &t.BothEnds.Value, &t.LoneEnd.Value, &t.CapAndLower.Value, &t.CapsOff.Value} {
			if v.follows(from) {
				v.Refuse(s.Why)
			}
		}
		return
	}
	during, after := &s.Result.Steps[i].During, &s.Result.Steps[i].After
	worst := during
	if after.Margin < during.Margin {
		worst = after
	}
	number := func(n *Number, value float64) {
		n.follows(from)
		n.work = func() []working.Step { return worst.Working() }
		n.set(value)
	}
	number(&t.Gust, worst.Gust*quantity.MetrePerSecond)
	number(&t.Margin, worst.Margin)
	number(&t.AfterLoss, min(during.AfterLoss, after.AfterLoss))
	number(&t.UsedUp, min(during.UsedUp, after.UsedUp)*quantity.MetrePerSecond)
	number(&t.Gone, min(during.Gone, after.Gone)*quantity.MetrePerSecond)
	number(&t.Off, float64(max(len(during.Off), len(after.Off))))
	number(&t.Uncounted, float64(max(len(during.Uncounted), len(after.Uncounted))))
	number(&t.StandIns, float64(max(standInsUp(during), standInsUp(after))))
	number(&t.OnTrust, float64(max(onTrust(during), onTrust(after))))
	at := t.At
	t.Weakest.Give(worst.Toward, at)
	t.Governs.Give(orNothing(worst.Governs), at)
	t.Lost.Give(orNothing(worst.Lost), at)
	about := func(m rig.Matter) bool {
		is := func(c rig.Concern) bool { return c.About == m }
		return slices.ContainsFunc(during.Concerns, is) || slices.ContainsFunc(after.Concerns, is)
	}
	t.BothEnds.Give(about(rig.BothEnds), at)
	t.LoneEnd.Give(about(rig.ForeAndAft), at)
	t.CapAndLower.Give(about(rig.CapAndLower), at)
	t.CapsOff.Give(about(rig.CapsOff), at)
}

func orNothing(name string) string {
	if name == "" {
		return "nothing"
	}
	return name
}

func standInsUp(s *rig.State) (n int) {
	for _, h := range s.On {
		if h.StandIn {
			n++
		}
	}
	return n + len(s.Uncounted)
}

// onTrust counts the stays that are held by plates that nobody has seen.
func onTrust(s *rig.State) (n int) {
	for _, h := range s.On {
		if strings.Contains(h.Governs, "not seen") || strings.Contains(h.Governs, "not given") {
			n++
		}
	}
	return n
}

// bending bends the mast between what still holds it, the worst of four ways.
func (b *builder) bending(s *Standing, t *Step, i int) {
	m := b.facts.Mast
	from := append(values(&t.Margin.Value, &m.BearsBending.Value, &m.Height.Value, &m.Windage.Value), &m.Step.Value)
	reckon(&t.Bending, from, func() (formula[mastBending], error) {
		state := s.Result.Steps[i]
		return mastBent{mast: m, rig: &s.Rig, states: []rig.State{state.During, state.After}, perSquare: s.Demand.PerSquare}, nil
	}, func(r mastBending) float64 { return r.used })
}

// mastBent is a mast between what holds it.
type mastBent struct {
	mast      *Mast
	rig       *rig.Rig
	states    []rig.State
	perSquare float64
}

type mastBending struct {
	used   float64
	moment rig.MastBendingResult
	bears  float64
	toward string
}

// Reckon looks at four ways of pushing in each state. The wind's moment about the heel
// is spread evenly over the height.
func (b mastBent) Reckon() (mastBending, error) {
	worst := mastBending{bears: b.mast.BearsBending.Float()}
	height := b.mast.Height.Float()
	for i := range b.states {
		s := &b.states[i]
		load := 2 * b.perSquare * s.Gust * s.Gust / (height * height)
		for _, deg := range []float64{0, 90, 180, 270} {
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
		if (line.Over != rig.Point{}) {
			heights = append(heights, line.Over.Z)
		}
	}
	slices.Sort(heights)
	return slices.CompactFunc(heights, func(a, b float64) bool { return abs(a-b) < nearSupports })
}

// nearSupports is how near two places that hold the mast count as one, mm.
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

// pullsAgainst tells whether a stay pulls, within sixty degrees, against a push.
func pullsAgainst(l rig.StayLine, deg float64) bool {
	r, err := l.Reckon()
	if err != nil {
		return false
	}
	apart := abs(angleBetween(r.Direction, deg+180))
	return apart <= 75
}

func angleBetween(a, b float64) float64 {
	d := a - b
	for d > 180 {
		d -= 360
	}
	for d < -180 {
		d += 360
	}
	return d
}

// Working writes the worst way down.
func (r mastBending) Working() []working.Step {
	return append(r.moment.Working(), working.Step{Symbol: "u", Meaning: "share of what the section bears, pushed " + r.toward, Formula: "M/Mb",
		Inputs: []working.Input{{Symbol: "M", Value: abs(r.moment.Largest), Unit: "N mm"}, {Symbol: "Mb", Value: r.bears, Unit: "N mm"}}, Value: r.used, Source: arithmeticSource})
}
