package engine

import (
	"context"
	"slices"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/pattern"
	"chainwale/engine/plan"
)

// Patterns makes the patterns of a plan, and judges it first: a part of which a finding
// holds up cutting has that among its warnings. held are those findings, gaps what a
// pattern can't do without.
func Patterns(ctx context.Context, p *plan.Plan, o Options) (parts []pattern.Part, gaps []finding.Problem, held []finding.Finding, err error) {
	report, err := Check(ctx, p, o)
	if err != nil {
		return nil, nil, nil, err
	}
	catalogue, err := fact.TheCatalogue()
	if err != nil {
		return nil, nil, nil, err
	}
	facts, err := fact.Build(catalogue, p, o.On)
	if err != nil {
		return nil, nil, nil, err
	}
	parts, gaps = pattern.Of(p, facts)
	for _, f := range report.Findings {
		if f.HoldsUp == cutting && f.Refuses(finding.Stop) {
			if holdUp(parts, facts, f) {
				held = append(held, f)
			}
		}
	}
	return parts, append(gaps, report.Problems...), held, nil
}

// cutting is what a stop of the metal holds up.
const cutting = "cutting"

// holdUp notes a finding on the parts that it is of, and tells whether there are any.
func holdUp(parts []pattern.Part, facts *fact.Facts, f finding.Finding) (any bool) {
	for i := range parts {
		if slices.ContainsFunc(parts[i].Copies, func(c pattern.Copy) bool {
			return c.Fitting == f.Part || slices.Contains(facts.FittingIDs(c.Fitting), f.Part)
		}) {
			any = true
			warning := "NOT TO BE CUT: " + f.Message
			if !slices.Contains(parts[i].Warnings, warning) {
				parts[i].Warnings = append(parts[i].Warnings, warning)
			}
		}
	}
	return any
}
