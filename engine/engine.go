// Package engine strings the stages together: a plan becomes facts, packs judge
// the facts, and the findings become a report. It is the face for Go callers.
package engine

import (
	"cmp"
	"context"
	"slices"
	"strings"
	"time"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/near"
	"chainwale/engine/plan"
	"chainwale/engine/quantity"
	"chainwale/engine/rule"
)

// Options say how a plan is judged.
type Options struct {
	// Version of the program, printed in the report.
	Version string
	// On is the day that ages are judged on.
	On time.Time
	// RefuseFrom is the mildest grade that refuses the plan.
	RefuseFrom finding.Grade
	// All keeps what holds and what does not apply among the findings.
	All bool
	// Root is the folder under which packs that a plan names must lie; "" is the plan's own.
	Root string
	// Packs are folders of rule packs that judge beside those of the program.
	Packs []string
	// Standards are the design standards that judge, in the order they are named.
	Standards []Named
	// Kept is what checks of other plans have made already, for whoever checks many; nil
	// if each is to make its own.
	Kept *Kept
}

// Check judges a plan. What the owner got wrong is in the report; an error is a
// fault of the program or of a pack that came with it.
func Check(ctx context.Context, p *plan.Plan, o Options) (finding.Report, error) {
	report, _, err := checkFacts(ctx, p, o)
	return report, err
}

// checkFacts judges a plan, and gives the facts that it was judged on.
func checkFacts(ctx context.Context, p *plan.Plan, o Options) (finding.Report, *fact.Facts, error) {
	report := blank(p.File, o)
	report.Plan.Hash, report.Boat = p.Hash, p.Boat.Name.Value
	catalogue, err := fact.TheCatalogue()
	if err != nil {
		return report, nil, err
	}
	standards := describeAll(ctx, o.Standards)
	for _, a := range standards {
		a.kept = o.Kept
	}
	catalogue = o.Kept.widen(catalogue, standards)
	facts, err := fact.Build(catalogue, p, o.On)
	if err != nil {
		return report, nil, err
	}
	answerAll(ctx, facts, standards)
	packs, problems, err := packsFor(catalogue, p, o)
	if err != nil {
		return report, nil, err
	}
	report.Problems = append(report.Problems, problems...)
	judges := append(judgesOf(packs), standardJudges(catalogue, standards, packs)...)
	report.Problems = append(report.Problems, layer(catalogue, judges)...)
	judged, err := judge(ctx, judges, facts.Subjects(), rule.JudgeOptions{All: o.All, System: system(p)})
	if err != nil {
		return report, nil, err
	}
	gather(&report, judges, judged)
	tellStandards(&report, standards, countsOf(judges, judged))
	finish(&report, facts)
	settle(&report, p, o.On, judges, facts)
	return report, facts, nil
}

// judging is a pack that judges, and the worst grade it may give; "" for no limit.
type judging struct {
	*rule.Pack
	atMost finding.Grade
	// changed says what other packs have made otherwise in it.
	changed []string
}

func judgesOf(packs []*rule.Pack) []judging {
	judges := make([]judging, len(packs))
	for i, pack := range packs {
		judges[i].Pack = pack
	}
	return judges
}

// judge lets the packs judge, one after the other: all of them together take a tenth of
// a millisecond, less than it costs to wake others for it.
func judge(ctx context.Context, packs []judging, subjects []*fact.Subject, o rule.JudgeOptions) ([]rule.Judged, error) {
	judged := make([]rule.Judged, len(packs))
	for i, pack := range packs {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		o := o
		o.AtMost = pack.atMost
		judged[i] = pack.Judge(subjects, o)
	}
	return judged, ctx.Err()
}

// gather puts what the packs made of the plan into the report, in their order.
func gather(r *finding.Report, packs []judging, judged []rule.Judged) {
	var gaps []rule.Gap
	found := 0
	for _, j := range judged {
		found += len(j.Findings)
	}
	r.Findings = slices.Grow(r.Findings, found)
	for i, pack := range packs {
		r.Findings = append(r.Findings, judged[i].Findings...)
		count(&r.Counts, judged[i].Counts)
		gaps = append(gaps, judged[i].Missing...)
		r.Packs = append(r.Packs, finding.PackUsed{ID: pack.ID, Edition: pack.Edition, Hash: pack.Hash, Changed: append([]string{}, pack.changed...)})
		r.NotSeen = append(r.NotSeen, notCovered(pack.Pack)...)
	}
	r.Measure = append(r.Measure, rule.Measures(gaps)...)
}

// countsOf are the outcomes by the pack that gave them.
func countsOf(judges []judging, judged []rule.Judged) map[string]finding.Counts {
	counts := map[string]finding.Counts{}
	for i, j := range judges {
		counts[j.ID] = judged[i].Counts
	}
	return counts
}

// blank is a report before anything is found; its lists are empty, never absent.
func blank(file string, o Options) finding.Report {
	return finding.Report{
		Chainwale: o.Version, Version: finding.ReportVersion, On: o.On.Format(time.DateOnly),
		Plan: finding.PlanRead{File: file}, RefuseAt: o.RefuseFrom,
		Problems: []finding.Problem{}, Findings: []finding.Finding{}, Measure: []finding.Measure{},
		Packs: []finding.PackUsed{}, Standards: []finding.StandardUsed{}, NotSeen: []string{}, Cautions: reportCautions(),
	}
}

// NotJudged is the report of a plan with problems: they are listed, nothing is judged.
func NotJudged(file string, problems []finding.Problem, o Options) finding.Report {
	report := blank(file, o)
	report.Problems = problems
	return report
}

func system(p *plan.Plan) quantity.System {
	if p.Boat.Units.Value == "us" {
		return quantity.US
	}
	return quantity.Metric
}

// finish puts findings in their order and counts the grades.
func finish(r *finding.Report, facts *fact.Facts) {
	subjects := subjectsOf(r.Findings, facts.Subjects())
	for i := range r.Findings {
		f := &r.Findings[i]
		if s := subjects[refOf(f.Subject)]; s != nil {
			f.Part = part(s)
		}
		grade(&r.Counts, *f)
	}
	slices.SortStableFunc(r.Findings, func(a, b finding.Finding) int {
		return cmp.Or(cmp.Compare(b.Grade.Weight(), a.Grade.Weight()), cmp.Compare(a.Subject, b.Subject), cmp.Compare(a.Rule, b.Rule))
	})
	r.NotSeen = append(unseen(facts), r.NotSeen...)
}

// ref is a subject's kind and id, as a finding names it with a colon between.
type ref struct{ kind, id string }

func refOf(subject string) ref {
	kind, id, _ := strings.Cut(subject, ":")
	return ref{kind, id}
}

// subjectsOf are the subjects that findings are about: a few of the many there are.
func subjectsOf(findings []finding.Finding, all []*fact.Subject) map[ref]*fact.Subject {
	about := map[ref]*fact.Subject{}
	for i := range findings {
		about[refOf(findings[i].Subject)] = nil
	}
	for _, s := range all {
		r := ref{s.Kind.Name, s.ID}
		if _, wanted := about[r]; wanted {
			about[r] = s
		}
	}
	return about
}

// part is what a reader looks a subject up under: the fitting it hangs on, or itself.
func part(s *fact.Subject) string {
	if f := s.Neighbour("fitting"); f != nil {
		return f.Name
	}
	if alone, ok := standAlone[s.Kind.Name]; ok {
		return alone + s.Name
	}
	return s.Name
}

// standAlone are the kinds whose ids may be those of a part as well.
var standAlone = map[string]string{"step": "step ", "stand_in": "stand-in "}

// grade counts fails and cannot-tells by grade: an unknown weighs as much.
func grade(c *finding.Counts, f finding.Finding) {
	if f.Outcome != finding.Fails && f.Outcome != finding.CannotTell {
		return
	}
	switch f.Grade {
	case finding.Stop:
		c.Stop++
	case finding.Mend:
		c.Mend++
	case finding.Watch:
		c.Watch++
	}
}

func count(c *finding.Counts, more finding.Counts) {
	c.Holds += more.Holds
	c.Fails += more.Fails
	c.CannotTell += more.CannotTell
	c.DoesNotApply += more.DoesNotApply
}

// Behind gives the subjects that hang on a fitting, itself first, and where none
// is called so the names that are near.
//
// What the standards derive stands behind the other facts of each subject. Faults say
// which of them did not answer rightly, in a sentence each.
func Behind(ctx context.Context, p *plan.Plan, fitting string, on time.Time, standards []Named) (subjects []*fact.Subject, nearby, faults []string, err error) {
	facts, list, _, err := factsBy(ctx, p, standards, on)
	if err != nil {
		return nil, nil, nil, err
	}
	for _, a := range list {
		if a.fault != nil {
			faults = append(faults, a.finding().Message)
		}
	}
	names := facts.FittingIDs(fitting)
	for _, id := range names {
		for _, s := range facts.Subjects() {
			if s.Kind.Name == "fitting" && s.ID == id || s.Neighbour("fitting") != nil && s.Neighbour("fitting").ID == id {
				subjects = append(subjects, s)
			}
		}
	}
	return subjects, near.Words(fitting, facts.AllFittingIDs(), 3), append(faults, facts.Show(subjects)...), nil
}
