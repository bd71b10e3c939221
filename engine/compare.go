package engine

import (
	"context"
	"slices"
	"time"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/rule"
	"chainwale/engine/standard"
)

// Compare asks the standards about every landing of a plan.
func Compare(ctx context.Context, p *plan.Plan, named []Named, on time.Time) (finding.SideBySide, error) {
	facts, list, catalogue, err := factsBy(ctx, p, named, on)
	if err != nil {
		return finding.SideBySide{}, err
	}
	packs, err := builtIn()
	if err != nil {
		return finding.SideBySide{}, err
	}
	_ = standardJudges(catalogue, list, packs) // what clashes is at fault here as it is in a check
	c := finding.SideBySide{On: on.Format(time.DateOnly), Plan: p.File, Boat: p.Boat.Name.Value, Standards: []finding.StandardSaid{}, Landings: []finding.LandingSaid{}}
	for _, a := range list {
		s := finding.StandardSaid{ID: a.ID, Edition: a.description.Edition, Basis: string(a.description.Basis)}
		if a.description.ID != "" {
			s.Hash = a.description.Hash()
		}
		s.Fault = a.why()
		c.Standards = append(c.Standards, s)
	}
	for _, l := range facts.Landings {
		c.Landings = append(c.Landings, compareLanding(l, facts, list))
	}
	return c, nil
}

// factsBy builds the facts of a plan with those that the standards derive.
func factsBy(ctx context.Context, p *plan.Plan, named []Named, on time.Time) (*fact.Facts, []*asked, *fact.Catalogue, error) {
	catalogue, err := fact.TheCatalogue()
	if err != nil {
		return nil, nil, nil, err
	}
	list := describeAll(ctx, named)
	catalogue = widen(catalogue, list)
	facts, err := fact.Build(catalogue, p, on)
	if err != nil {
		return nil, nil, nil, err
	}
	answerAll(ctx, facts, list)
	return facts, list, catalogue, nil
}

func compareLanding(l *fact.Landing, facts *fact.Facts, list []*asked) finding.LandingSaid {
	c := finding.LandingSaid{Fitting: l.Fitting.ID, Stay: l.Stay.ID, Said: []finding.Said{}}
	if l.Stay.BreakLoad.Known() {
		c.BreakLoad = l.Stay.BreakLoad.Float()
	}
	var breaks []float64
	for _, a := range list {
		said := a.says(l, facts)
		c.Said = append(c.Said, said)
		if said.Breaks != nil && said.Breaks.Load > 0 {
			breaks = append(breaks, said.Breaks.Load)
		}
	}
	if len(breaks) > 1 {
		c.Spread = slices.Max(breaks) / slices.Min(breaks)
	}
	return c
}

// says gathers what a standard derived of the landing and of the bolts and sections
// that bear the same stay on the same fitting, and which clause governs by its rules.
func (a *asked) says(l *fact.Landing, facts *fact.Facts) finding.Said {
	said := finding.Said{Standard: a.ID, FailsBeside: []string{}, NotCovered: []string{}, Lacks: []string{}}
	if a.fault != nil || a.pack == nil {
		return said
	}
	for _, s := range facts.Subjects() {
		if !sameLanding(s, l) {
			continue
		}
		table, ok := a.description.Table(s.Kind.Name)
		if !ok {
			continue
		}
		a.beside(&said, s, table)
		for _, d := range table.Derives {
			if slot, ok := s.Kind.SlotOf(a.description.Prefix + "." + d.Name); ok && d.Bears {
				a.hear(&said, s, s.Value(slot), d)
			}
		}
	}
	slices.Sort(said.NotCovered)
	slices.Sort(said.Lacks)
	return said
}

// beside notes the rules that fail on a subject and are about no load of the wire.
func (a *asked) beside(said *finding.Said, s *fact.Subject, table standard.Table) {
	loads := map[string]bool{}
	for _, d := range table.Derives {
		loads[a.description.Prefix+"."+d.Name] = d.Bears
	}
	for _, r := range a.pack.Rules {
		if s.Kind.Is(r.Kind) && !loads[r.Have] && r.Evaluate(s.Row()).Outcome == finding.Fails && !slices.Contains(said.FailsBeside, r.Title) {
			said.FailsBeside = append(said.FailsBeside, r.Title)
		}
	}
}

// sameLanding tells whether a subject is the landing or bears the same stay on the
// same fitting.
func sameLanding(s *fact.Subject, l *fact.Landing) bool {
	fitting, stay := s.Neighbour("fitting"), s.Neighbour("stay")
	return s == l.Base() || fitting != nil && stay != nil && fitting.ID == l.Fitting.ID && stay.ID == l.Stay.ID
}

// hear takes in one load of the wire, by the rules that judge it.
func (a *asked) hear(said *finding.Said, s *fact.Subject, v *fact.Value, d standard.Derive) {
	if !v.Known() {
		lacks(said, v)
		return
	}
	for _, r := range a.pack.Rules {
		if r.Have != a.description.Prefix+"."+d.Name || !s.Kind.Is(r.Kind) {
			continue
		}
		verdict := r.Evaluate(s.Row())
		if slices.Contains(r.Reads, breakLoad) {
			govern(said, &said.Breaks, s, verdict, finding.Governs{Load: v.Float(), Clause: d.Clause, Fact: d.Name, Rule: r.ID}, breakLoad)
		} else if slices.Contains(r.Reads, workingLoad) {
			govern(said, &said.AtWork, s, verdict, finding.Governs{Load: v.Float(), Clause: d.Clause, Fact: d.Name, Rule: r.ID}, workingLoad)
		}
	}
}

// The facts of the wire that a load is held against.
const (
	breakLoad   = "stay.break_load"
	workingLoad = "stay.working_load"
)

// lacks notes why a value is unknown: what is missing of the plan, and who does not
// cover it.
func lacks(said *finding.Said, v *fact.Value) {
	for _, m := range v.Missing() {
		if m.Column() != nil && (m != v || m.Why() == "") && !slices.Contains(said.Lacks, m.Column().Means) {
			said.Lacks = append(said.Lacks, m.Column().Means)
		}
	}
	if why := v.Why(); why != "" && !slices.Contains(said.NotCovered, why) {
		said.NotCovered = append(said.NotCovered, why)
	}
}

// govern keeps what comes nearest to its limit, or is farthest beyond it.
func govern(said *finding.Said, worst **finding.Governs, s *fact.Subject, v rule.Verdict, g finding.Governs, against string) {
	slot, ok := s.Kind.SlotOf(against)
	if !ok {
		return
	}
	if !s.Value(slot).Known() {
		lacks(said, s.Value(slot))
		return
	}
	reference := s.Value(slot).Float()
	if !(v.Need > 0) || !(reference > 0) {
		return // the rule does not apply here
	}
	g.Times, g.Asked = g.Load/reference, v.Need/reference
	if *worst == nil || g.Times/g.Asked < (*worst).Times/(*worst).Asked {
		*worst = &g
	}
}
