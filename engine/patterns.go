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

// Patterned is a plan's patterns, one for each fitting and side, and what was found of
// the plan.
type Patterned struct {
	Parts []pattern.Part
	// Gaps is what a pattern can't do without; Held are the findings that hold up cutting
	// one of the parts. They stand on the part's copy as well.
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

// holdUp notes a finding on the copies that it is of, and tells whether there are any. A
// standard that does not answer is of all of them.
func (m Patterned) holdUp(facts *fact.Facts, f finding.Finding) (any bool) {
	ofAll := strings.HasPrefix(f.Subject, standardSubject)
	for _, part := range m.Parts {
		for i := range part.Copies {
			c := &part.Copies[i]
			if !ofAll && c.Fitting != f.Part && !slices.Contains(facts.FittingIDs(c.Fitting), f.Part) {
				continue
			}
			any = true
			if !slices.Contains(c.Held, f.Message) {
				c.Held = append(c.Held, f.Message)
			}
		}
	}
	return any
}

// GroupPatterns puts the patterns of several plans together that one cutting program
// serves, and gives each group a name of its own. An error is a fault of the program: each
// flat was checked by itself.
func GroupPatterns(of ...Patterned) ([]pattern.Part, error) {
	var all []pattern.Part
	for _, m := range of {
		all = append(all, m.Parts...)
	}
	grouped, err := pattern.Group(all...)
	return pattern.Named(grouped), err
}
