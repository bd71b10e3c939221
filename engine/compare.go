package engine

import (
	"cmp"
	"context"
	"slices"
	"time"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/standard"
)

// Compare asks the standards about every landing of a plan.
func Compare(ctx context.Context, p *plan.Plan, named []Named, on time.Time) (finding.SideBySide, error) {
	facts, list, err := factsBy(ctx, p, named, on)
	if err != nil {
		return finding.SideBySide{}, err
	}
	c := finding.SideBySide{On: on.Format(time.DateOnly), Plan: p.File, Boat: p.Boat.Name.Value, Standards: []finding.StandardSaid{}, Landings: []finding.LandingSaid{}}
	for _, a := range list {
		s := finding.StandardSaid{ID: a.ID, Edition: a.description.Edition, Basis: string(a.description.Basis)}
		if a.description.ID != "" {
			s.Hash = a.description.Hash()
		}
		if a.fault != nil {
			s.Fault = standard.Why(a.fault)
		}
		c.Standards = append(c.Standards, s)
	}
	for _, l := range facts.Landings {
		c.Landings = append(c.Landings, compareLanding(l, facts, list))
	}
	return c, nil
}

// factsBy builds the facts of a plan with those that the standards derive.
func factsBy(ctx context.Context, p *plan.Plan, named []Named, on time.Time) (*fact.Facts, []*asked, error) {
	catalogue, err := fact.TheCatalogue()
	if err != nil {
		return nil, nil, err
	}
	list := describeAll(ctx, named)
	catalogue = widen(catalogue, list)
	facts, err := fact.Build(catalogue, p, on)
	if err != nil {
		return nil, nil, err
	}
	answerAll(ctx, facts, list)
	return facts, list, nil
}

func compareLanding(l *fact.Landing, facts *fact.Facts, list []*asked) finding.LandingSaid {
	c := finding.LandingSaid{Fitting: l.Fitting.ID, Stay: l.Stay.ID, Said: []finding.Said{}, Spread: map[string]float64{}}
	if l.Stay.BreakLoad.Known() {
		c.BreakLoad = l.Stay.BreakLoad.Float()
	}
	least, most := map[string]float64{}, map[string]float64{}
	told := map[string]int{}
	for _, a := range list {
		said := a.says(l, facts)
		c.Said = append(c.Said, said)
		if basis := string(a.description.Basis); said.Told {
			if told[basis]++; told[basis] == 1 {
				least[basis], most[basis] = said.Times, said.Times
			}
			least[basis], most[basis] = min(least[basis], said.Times), max(most[basis], said.Times)
		}
	}
	for basis, n := range told {
		if n > 1 && least[basis] > 0 {
			c.Spread[basis] = most[basis] / least[basis]
		}
	}
	return c
}

// says gathers what a standard derived of the landing and of the bolts and sections
// that bear the same stay on the same fitting. The least load governs.
func (a *asked) says(l *fact.Landing, facts *fact.Facts) finding.Said {
	said := finding.Said{Standard: a.ID, NotCovered: []string{}, Lacks: []string{}}
	if a.fault != nil {
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
		for _, d := range table.Derives {
			if slot, ok := s.Kind.SlotOf(a.description.Prefix + "." + d.Name); ok && d.Bears {
				hear(&said, s.Value(slot), d, l)
			}
		}
	}
	slices.Sort(said.NotCovered)
	slices.Sort(said.Lacks)
	return said
}

// sameLanding tells whether a subject is the landing or bears the same stay on the
// same fitting.
func sameLanding(s *fact.Subject, l *fact.Landing) bool {
	fitting, stay := s.Neighbour("fitting"), s.Neighbour("stay")
	return s == l.Base() || fitting != nil && stay != nil && fitting.ID == l.Fitting.ID && stay.ID == l.Stay.ID
}

// hear takes in one load.
func hear(s *finding.Said, v *fact.Value, d standard.Derive, l *fact.Landing) {
	if !v.Known() {
		for _, m := range v.Missing() {
			if m != v && m.Column() != nil && !slices.Contains(s.Lacks, m.Column().Means) {
				s.Lacks = append(s.Lacks, m.Column().Means)
			}
		}
		if why := v.Why(); why != "" && !slices.Contains(s.NotCovered, why) {
			s.NotCovered = append(s.NotCovered, why)
		}
		return
	}
	if !l.Stay.BreakLoad.Known() || l.Stay.BreakLoad.Float() <= 0 {
		return
	}
	if s.Told && cmp.Compare(v.Float(), s.Bears) >= 0 {
		return
	}
	s.Told, s.Bears, s.Times, s.Clause, s.Fact = true, v.Float(), v.Float()/l.Stay.BreakLoad.Float(), d.Clause, d.Name
}
