package engine

import (
	"time"

	"chainwale/engine/accept"
	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
)

// settle lays what people took on themselves over what was found.
func settle(r *finding.Report, p *plan.Plan, on time.Time, judges []judging, facts *fact.Facts) {
	if len(p.Accepted) == 0 {
		return
	}
	known := accept.Known{Sided: sidedIDs(p, facts)}
	for _, j := range judges {
		for _, rule := range j.Rules {
			known.Rules = append(known.Rules, rule.ID)
		}
	}
	for _, s := range facts.Subjects() {
		known.Subjects = append(known.Subjects, accept.Subject{Ref: s.Ref(), Part: part(s)})
	}
	var list []accept.Accepted
	for _, a := range p.Accepted {
		list = append(list, accept.Accepted{
			Rule: a.Rule.Value, Subject: a.Subject.Value, Grade: finding.Grade(a.Grade.Value), Who: a.Who.Value, Why: a.Why.Value, Until: a.Until.Last,
			At: a.At, RuleAt: a.Rule.At, SubjectAt: a.Subject.At, UntilAt: a.Until.At,
		})
	}
	accept.Apply(r, list, on, known)
}

// sidedIDs gives for an id of the plan which ids it stands for.
func sidedIDs(p *plan.Plan, facts *fact.Facts) map[string][]string {
	sided := map[string][]string{}
	for _, f := range p.Fittings {
		sided[f.ID.Value] = facts.FittingIDs(f.ID.Value)
	}
	for _, s := range p.Stays {
		if s.Side.Value == "both" {
			sided[s.ID.Value] = append(sided[s.ID.Value], s.ID.Value+"-port", s.ID.Value+"-starboard")
		}
	}
	return sided
}
