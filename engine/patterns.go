package engine

import (
	"context"
	"slices"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/pattern"
	"chainwale/engine/plan"
)

// Patterned is a plan's patterns, and what was found of the plan.
type Patterned struct {
	Parts []pattern.Part
	// Gaps is what a pattern can't do without; Held are the findings that hold up cutting
	// one of the parts. They stand among the part's warnings as well.
	Gaps   []finding.Problem
	Held   []finding.Finding
	Report finding.Report
}

// Patterns makes the patterns of a plan, and judges it first.
func Patterns(ctx context.Context, p *plan.Plan, o Options) (Patterned, error) {
	report, facts, err := checkFacts(ctx, p, o)
	if err != nil {
		return Patterned{}, err
	}
	made := Patterned{Report: report}
	made.Parts, made.Gaps = pattern.Of(p, facts)
	for _, f := range report.Findings {
		if f.HoldsUp == cutting && f.Refuses(finding.Stop) && made.holdUp(facts, f) {
			made.Held = append(made.Held, f)
		}
	}
	return made, nil
}

// cutting is what a stop of the metal holds up.
const cutting = "cutting"

// holdUp notes a finding on the parts that it is of, and tells whether there are any. A
// standard that does not answer is of all of them.
func (m Patterned) holdUp(facts *fact.Facts, f finding.Finding) (any bool) {
	ofAll := strings.HasPrefix(f.Subject, standardSubject)
	for i := range m.Parts {
		part := &m.Parts[i]
		of := slices.ContainsFunc(part.Copies, func(c pattern.Copy) bool {
			return c.Fitting == f.Part || slices.Contains(facts.FittingIDs(c.Fitting), f.Part)
		})
		if !of && !ofAll {
			continue
		}
		any = true
		if warning := "NOT TO BE CUT: " + f.Message; !slices.Contains(part.Warnings, warning) {
			part.Warnings = append(part.Warnings, warning)
		}
	}
	return any
}
