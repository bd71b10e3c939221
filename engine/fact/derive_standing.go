package fact

import (
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
			s.Why = strings.ReplaceAll(err.Error(), "\n", "; ")
		} else {
			s.Result = &result
		}
	}
	for i := range p.Steps {
		b.step(s, i)
	}
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
			Attended: p.Attended.Given && p.Attended.Value, Days: b.daysOf(i)})
	}
	for _, job := range b.plan.Standing.Jobs {
		for _, id := range b.single(job.Value) {
			s.Jobs = append(s.Jobs, rig.Job{Name: id})
		}
	}
	if len(b.plan.Standing.Jobs) == 0 {
		for _, f := range b.facts.Fittings {
			if _, lands := b.plate(f); lands && !f.State.Is("kept") && f.State.Known() {
				s.Jobs = append(s.Jobs, rig.Job{Name: b.rigPlate(f.ID)})
			}
		}
	}
	s.Away = b.plan.Standing.Away.Value / quantity.Day
}

// daysOf is how many days the rig stands as a step leaves it: until its last day, or
// until the next step begins. 0 where the plan doesn't say.
func (b *builder) daysOf(i int) float64 {
	steps := b.plan.Standing.Steps
	p, until := &steps[i], steps[i].Until
	if !until.Given && i+1 < len(steps) {
		until = steps[i+1].On
	}
	if !p.On.Given || !until.Given {
		return 0
	}
	return max(0, until.Last.Sub(p.On.First).Hours()/24)
}

// daysKnown tells whether the plan says how long that is.
func (b *builder) daysKnown(i int) bool {
	steps := b.plan.Standing.Steps
	return steps[i].On.Given && (steps[i].Until.Given || i+1 < len(steps) && steps[i+1].On.Given)
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
	if b.daysKnown(i) {
		t.Days.Give(b.daysOf(i)*quantity.Day, p.Until.At)
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
	numbers := []*Number{&t.Gust, &t.Margin, &t.AfterLoss, &t.UsedUp, &t.Gone, &t.Off, &t.OffAfter, &t.Uncounted, &t.StandIns, &t.OnTrust}
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
	if after.Margin < during.Margin*(1-1e-6) {
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
	number(&t.OffAfter, float64(len(after.Off)))
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

// onTrust counts the stays that are held by plates that nobody has seen, or of which
// nobody knows what they hold.
func onTrust(s *rig.State) (n int) {
	for _, h := range s.On {
		if h.OnTrust {
			n++
		}
	}
	return n
}
