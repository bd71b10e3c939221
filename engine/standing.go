package engine

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/pattern"
	"chainwale/engine/plan"
	"chainwale/engine/quantity"
	"chainwale/engine/rig"
)

// Standing says what the mast stands in each step of a plan's order of work, and judges
// the plan. With suggest it looks for an order as well. A plan that has none gives a
// problem.
func Standing(ctx context.Context, p *plan.Plan, o Options, suggest bool) (finding.Standing, finding.Report, error) {
	report, facts, err := checkFacts(ctx, p, o)
	if err != nil {
		return finding.Standing{}, report, err
	}
	s := finding.Standing{Chainwale: o.Version, On: report.On, Plan: p.File, Boat: report.Boat, Place: p.Standing.Place.Value,
		Cautions: standingCautions(p), StepCautions: stepCautions(p), StateSheet: stateSheet(p, facts),
		Steps: []finding.StandingStep{}, Findings: []finding.Finding{}, Measure: []finding.Measure{}, Assumptions: []string{}, StandIns: []finding.StandInWorth{}, Lines: []finding.Line{}}
	takeStanding(&s, report)
	w := facts.Standing
	if w == nil {
		return s, report, nil
	}
	sheet := standingSheet{plan: p, facts: facts, work: w, on: o.On}
	for _, in := range facts.StandIns {
		s.StandIns = append(s.StandIns, worthOf(in))
	}
	s.Lines, s.CantTell = sheet.lines(), w.Why
	if w.Result != nil {
		s.Assumptions = w.Result.Assumptions
		s.Before = held(&w.Result.Before)
		if at := w.Result.Weakest; at >= 0 {
			s.Weakest = p.Standing.Steps[at].ID.Value
		}
	}
	for i := range p.Standing.Steps {
		s.Steps = append(s.Steps, sheet.step(i))
	}
	if suggest {
		s.Suggested = sheet.suggest()
		if err := judgeSuggested(ctx, p, o, s.Suggested); err != nil {
			return s, report, err
		}
	}
	return s, report, nil
}

// judgeSuggested judges an order that was found as if it stood in the plan, and keeps what
// fails: what can't be told of it is asked for once it does.
func judgeSuggested(ctx context.Context, p *plan.Plan, o Options, found *finding.SuggestedOrder) error {
	if !found.Found {
		return nil
	}
	other := *p
	other.Standing.Steps = nil
	for i := range found.Steps {
		other.Standing.Steps = append(other.Standing.Steps, stepOf(&found.Steps[i], o.On))
	}
	report, _, err := checkFacts(ctx, &other, o)
	for _, f := range report.Findings {
		if strings.HasPrefix(f.Subject, "step:") && f.Outcome == finding.Fails {
			found.Findings = append(found.Findings, f)
		}
	}
	return err
}

// stepOf is a suggested step as the plan would have it: nobody goes aloft, and who is
// away is so from the day judged on.
func stepOf(s *finding.StandingStep, on time.Time) plan.Step {
	word := func(text string) plan.Text { return plan.Text{Given: text != "", Value: text, At: s.At} }
	words := func(list []string) (all []plan.Text) {
		for _, text := range list {
			all = append(all, word(text))
		}
		return all
	}
	t := plan.Step{At: s.At, ID: word(s.ID), Does: word(s.Does), Fit: words(s.Fit), Remove: words(s.Remove), Replace: words(s.Replace),
		Attended: plan.YesNo{Given: true, Value: s.Attended == "yes", At: s.At}, Aloft: plan.YesNo{Given: true, At: s.At}}
	until := on.AddDate(0, 0, int(math.Ceil(s.Days)))
	t.On = plan.Day{Given: true, Text: on.Format(time.DateOnly), First: on, Last: on, At: s.At}
	t.Until = plan.Day{Given: true, Text: until.Format(time.DateOnly), First: until, Last: until, At: s.At}
	return t
}

// NoStanding is the problem of a plan that has no order of work.
func NoStanding(p *plan.Plan) []finding.Problem {
	at := p.Standing.At
	at.Pointer = "/standing"
	return []finding.Problem{{At: at, Message: "the plan says nothing of an order of work with the mast up",
		Expected: "standing: with place, gust, roll, stand_ins and steps; chainwale new writes a plan that shows them"}}
}

// HasStanding tells whether a plan says anything of an order of work.
func HasStanding(p *plan.Plan) bool { return p.Standing.Given() }

// standingKinds are the kinds of subjects that the sheet is about.
var standingKinds = []string{"step:", "stand_in:", "mast:"}

// takeStanding takes over from the report what is of the steps.
func takeStanding(s *finding.Standing, report finding.Report) {
	of := func(subject string) bool {
		return slices.ContainsFunc(standingKinds, func(kind string) bool { return strings.HasPrefix(subject, kind) })
	}
	rules := map[string]bool{}
	for _, f := range report.Findings {
		if of(f.Subject) {
			s.Findings = append(s.Findings, f)
			rules[f.Rule] = true
		}
	}
	for _, m := range report.Measure {
		if slices.ContainsFunc(m.Settles, func(r string) bool { return rules[r] }) {
			s.Measure = append(s.Measure, m)
		}
	}
}

// standingSheet writes a plan's order of work down.
type standingSheet struct {
	plan  *plan.Plan
	facts *fact.Facts
	work  *fact.Standing
	on    time.Time
}

// lines are all that stands between mast and hull.
func (s standingSheet) lines() []finding.Line {
	lines := []finding.Line{}
	finite := func(x, y float64) bool { return !math.IsNaN(x) && !math.IsNaN(y) }
	for _, stay := range s.work.Rig.Stays {
		if finite(stay.Line.Foot.X, stay.Line.Foot.Y) {
			lines = append(lines, finding.Line{Name: stay.Name, X: stay.Line.Foot.X, Y: stay.Line.Foot.Y})
		}
	}
	for _, in := range s.work.Rig.StandIns {
		if finite(in.Line.Foot.X, in.Line.Foot.Y) {
			lines = append(lines, finding.Line{Name: in.Name, X: in.Line.Foot.X, Y: in.Line.Foot.Y, StandIn: true})
		}
	}
	return lines
}

// step is one step of the plan.
func (s standingSheet) step(i int) finding.StandingStep {
	p := &s.plan.Standing.Steps[i]
	t := finding.StandingStep{ID: p.ID.Value, Does: p.Does.Value, At: p.At, Fit: texts(p.Fit), Remove: texts(p.Remove), Replace: texts(p.Replace),
		On: p.On.Text, Until: p.Until.Text, Tighten: []string{}, Watch: []string{}}
	if p.Attended.Given {
		t.Attended = "no"
		if p.Attended.Value {
			t.Attended = "yes"
		}
	}
	if s.work.Result == nil {
		return t
	}
	r := &s.work.Result.Steps[i]
	t.During, t.After = held(&r.During), held(&r.After)
	t.Tighten, t.Watch = tightenOn(r.Tighten, p.On), append(t.Watch, r.Watch...)
	if f := s.facts.Steps[i]; f.Elastic.Known() {
		t.Shared = shared(f, t.During)
	}
	return t
}

// shared is what sharing by stiffness makes of a step.
func shared(f *fact.Step, during *finding.Held) *finding.Shared {
	s := &finding.Shared{Hardest: f.Hardest.Text(), Used: f.Elastic.Float(), Sways: f.Sways.Float()}
	for _, h := range during.Holding {
		if h.Name == s.Hardest {
			s.Pull = s.Used * h.Pull
		}
	}
	return s
}

func texts(list []plan.Text) []string {
	names := []string{}
	for _, t := range list {
		names = append(names, t.Value)
	}
	return names
}

// tightenOn says when lines are hauled tight again: as days where the step has one.
func tightenOn(days []float64, on plan.Day) []string {
	list := []string{}
	for _, d := range days {
		switch {
		case d < 1:
			list = append(list, "an hour after they are set")
		case on.Given:
			list = append(list, on.First.AddDate(0, 0, int(d)).Format(time.DateOnly))
		default:
			list = append(list, fmt.Sprintf("%.0f d after", d))
		}
	}
	return list
}

// roseSteps is in how many directions the wind is looked at.
const roseSteps = 72

const knots = 1 / rig.KnotInMetresPerSecond

// held is what a rig holds, in the report's words.
func held(s *rig.State) *finding.Held {
	h := &finding.Held{Off: append([]string{}, s.Off...), Holding: holdings(s.On), Uncounted: holdings(s.Uncounted), Margin: s.Margin, Wanted: s.Wanted,
		AfterLoss: s.AfterLoss, WantedAfterLoss: s.WantedAfterLoss, Lost: s.Lost, Falls: s.Falls, Weakest: s.Toward, Governs: s.Governs, Because: s.Because,
		Gust: s.Gust * knots, UsedUp: s.UsedUp * knots, Gone: s.Gone * knots, Concerns: []string{}}
	for i := range roseSteps {
		v := s.UsedUpFrom(float64(i)*360/roseSteps, s.Wanted) * knots
		if math.IsInf(v, 1) {
			v = -1
		}
		h.Rose = append(h.Rose, v)
	}
	for _, c := range s.Concerns {
		h.Concerns = append(h.Concerns, c.Says)
	}
	return h
}

func holdings(list []rig.Held) []finding.Holding {
	all := []finding.Holding{}
	for _, h := range list {
		all = append(all, finding.Holding{Name: h.Name, Pull: h.Allowable, Because: h.Governs, StandIn: h.StandIn})
	}
	return all
}

// worthOf is what a stand-in is worth.
func worthOf(in *fact.StandIn) finding.StandInWorth {
	w := finding.StandInWorth{Name: in.ID}
	if in.Strength.Known() {
		load := in.Strength.Float()
		w.Strength = &load
		w.Says = "its " + in.Weakest.Text() + " gives first"
		return w
	}
	w.Says = "it counts as nothing: " + in.Lacks()
	return w
}

// suggest looks for an order of the jobs.
func (s standingSheet) suggest() *finding.SuggestedOrder {
	o := &finding.SuggestedOrder{StandIns: []string{}, Steps: []finding.StandingStep{}, Findings: []finding.Finding{}}
	if len(s.work.Lacks) > 0 {
		o.Says = "no order can be looked for: " + s.lacks()
		return o
	}
	if len(s.work.Jobs) == 0 {
		o.Says = "no order is looked for: no fitting of the plan is remade or new, and standing: lists no jobs"
		return o
	}
	found, err := rig.Suggest{Rig: s.work.Rig, Demand: s.work.Demand, Jobs: s.jobs(), Away: s.work.Away}.Reckon()
	if err != nil {
		o.Says = "no order can be looked for: " + strings.ReplaceAll(err.Error(), "\n", "; ")
		return o
	}
	if wet := s.nearWater(); len(wet) > 0 {
		o.Says = "no order is suggested while she is afloat: " + strings.Join(wet, ", ") + " may stand near or under the water, and comes out ashore; say by exposure where it stands, or leave it out of jobs"
		return o
	}
	o.Found, o.Says, o.Way, o.Margin, o.Exact, o.Visited = found.Found, found.Says, string(found.Way), found.Margin, found.Exact, found.Visited
	o.StandIns = append(o.StandIns, found.StandIns...)
	for i := range found.Standing.Steps {
		r := &found.Standing.Steps[i]
		t := finding.StandingStep{ID: suggestedID(r.Step), Does: r.Step.Name, At: s.work.At, Fit: append([]string{}, r.Step.Fit...), Remove: append([]string{}, r.Step.Remove...),
			Replace: append([]string{}, r.Step.Replace...), Attended: "no", Days: r.Step.Days, During: held(&r.During), After: held(&r.After), Tighten: tightenOn(r.Tighten, plan.Day{}), Watch: append([]string{}, r.Watch...)}
		if r.Step.Attended {
			t.Attended = "yes"
		}
		o.Steps = append(o.Steps, t)
	}
	return o
}

// nearWater are the jobs that open the hull under water, or may do so, while she is afloat.
func (s standingSheet) nearWater() (names []string) {
	if s.plan.Standing.Place.Value == "ashore" {
		return nil
	}
	for _, job := range s.work.Jobs {
		for _, f := range s.facts.Fittings {
			if f.ID == job.Name && !f.UnderWater.No() {
				names = append(names, f.ID)
			}
		}
	}
	return names
}

// suggestedID is a short name for a step that was looked for.
func suggestedID(s rig.Step) string {
	switch {
	case len(s.Replace) > 0:
		return "change-" + s.Replace[0]
	case len(s.Remove) > 0 && len(s.Fit) > 0:
		return "copy-" + s.Remove[0]
	case len(s.Remove) > 0:
		return "stand-ins-down"
	}
	return "stand-ins-up"
}

// lacks names what is missing, by its place.
func (s standingSheet) lacks() string {
	var list []string
	for _, v := range s.work.Lacks {
		for _, root := range v.Missing() {
			if at := root.At().Pointer; !slices.Contains(list, at) {
				list = append(list, at)
			}
		}
	}
	return "the plan lacks " + strings.Join(list, ", ")
}

// jobs are what has to be changed, plates of one flat known as such: then one can be
// copied for all.
func (s standingSheet) jobs() []rig.Job {
	jobs := slices.Clone(s.work.Jobs)
	parts, _ := pattern.Of(s.plan, s.facts)
	if groups, err := pattern.Group(parts...); err == nil {
		parts = groups
	}
	for i := range jobs {
		for _, part := range parts {
			is := func(c pattern.Copy) bool {
				return c.Fitting == jobs[i].Name || slices.Contains(s.facts.FittingIDs(c.Fitting), jobs[i].Name)
			}
			if slices.ContainsFunc(part.Copies, is) {
				jobs[i].Flat = part.Name
			}
		}
	}
	return jobs
}

// pullOf prints a load for the state sheet, in the units of the plan.
func pullOf(a plan.Amount, p *plan.Plan) string {
	if !a.Given {
		return ""
	}
	system := quantity.Metric
	if p.Boat.Units.Value == "us" {
		system = quantity.US
	}
	return quantity.Format(a.Value, quantity.Force, system)
}

// stateSheet is what to write down before anything is eased.
func stateSheet(p *plan.Plan, facts *fact.Facts) []finding.StateLine {
	lines := []finding.StateLine{}
	add := func(of, what, tool, has string) {
		lines = append(lines, finding.StateLine{Of: of, What: what, Tool: tool, Has: has})
	}
	for _, s := range facts.Stays {
		tension := ""
		for i := range p.Stays {
			if s.ID == p.Stays[i].ID.Value || strings.HasPrefix(s.ID, p.Stays[i].ID.Value+"-") {
				tension = pullOf(p.Stays[i].Tension, p)
			}
		}
		add(s.ID, "threads showing in the turnbuckle, above and below", "rule or calipers", "")
		add(s.ID, "pull at rest", "tension gauge, or the stretch of 2 m of wire by a clamped rule", tension)
		add(s.ID, "photographs: both ends, turnbuckle, pins and how they are locked", "camera", "")
	}
	add("mast", "rake: how far aft of the mast a weight on the main halyard hangs at the boom, in still air", "plumb line and rule", "")
	add("mast", "bend: greatest gap to a halyard hauled tight from masthead to heel, seen from abeam and from astern", "rule", "")
	add("mast", "wedges: number, thickness and place of each at the partners; or chocks under a mast on deck", "calipers and camera", "")
	add("mast", "heel: its place in the step, and marks across both so that it goes back", "pencil and camera", "")
	add("spreaders", "angle to the mast and to the shroud above and below, each side", "bevel gauge and camera", "")
	add("boat", "trim and heel as she lies, so that plumb lines can be read again", "water level or bubble", "")
	return lines
}

// standingCautions stand at the top and at the bottom of the sheet.
func standingCautions(p *plan.Plan) []string {
	lies := "Berth her out of wakes, lines doubled"
	if p.Standing.Place.Value == "ashore" {
		lies = "Ashore look at the stands first, for they can shift, and make no line fast to one"
	}
	return []string{
		"chainwale advises. No margin here says that a mast is safe: it says what is held under the assumptions that are named. A qualified rigger decides, and local codes and the harbour's rules stand above this sheet.",
		"Nobody goes aloft, and nobody stands under the mast, while any stay is off. " + lies + "; stop when the wind reaches the gust of the step.",
		"If a step does not hold what is wanted, it is not done this way: unstep the mast, or hold it with a crane.",
		"Old plates that nobody has seen are credited because they stand today, not because they are sound.",
		"Eyes against what splitters and grinders throw; no flame on laminate or sealant; dust of glass, resin and old paint wants a mask and extraction; catch what falls; no bolt out near the water while she floats.",
		"When all is on again: pins in and locked before any load, both sides set up by turns and in stages, a rigger's look; the first sail in light wind, with an eye on the leeward wires, and all of it looked at again after 1, 10 and 50 hours.",
	}
}

// stepCautions stand at the top and at the bottom of each step.
func stepCautions(p *plan.Plan) []string {
	gust := "the gust of the step"
	if g := p.Standing.Gust; g.Given {
		gust = quantity.Format(g.Value, quantity.Speed, quantity.Metric)
	}
	return []string{
		"A margin under these assumptions, never a safe mast. Nobody aloft or under it; stand clear of loaded lines; two people; stop above " + gust + ", or sooner where less than that uses the wanted margin up.",
		"Before the next step: all lines hauled tight, pins in and locked, and a rigger content with what he sees. If not, back to the step before, or a crane.",
		"A margin under these assumptions, never a safe mast, and nobody stands by: nobody aboard below it or aloft, lines doubled, somebody named who looks at her each day, hauls the lines tight and comes before it blows.",
	}
}
