package iso12215

import (
	"fmt"

	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// strength is what a part bears, N, and how it gives way.
type strength struct {
	means string
	load  float64
}

// factor is the least of some strengths over the design load of a role.
func (v *values) factor(role string, strengths ...strength) (clauses.Result, error) {
	load, err := v.find(role, "design_load")
	if err != nil {
		return clauses.Result{}, err
	}
	least := strengths[0]
	for _, s := range strengths {
		if !(s.load > 0) {
			return clauses.Result{}, fmt.Errorf("a strength must be above 0 N, not %g", s.load)
		}
		if s.load < least.load {
			least = s
		}
	}
	return clauses.Result{Value: least.load / load.number, Working: func() []working.Step {
		own := working.Source{Title: "the program's own workings", As: working.Computed, For: "the strength"}
		over := working.Source{Title: "this project", As: working.Judgement, For: "the program's own strength in place of the standard's"}
		return []working.Step{
			v.step(load, "Fd", "design_load", "N"),
			{Symbol: "Ru", Meaning: least.means, Formula: "see its own working", Value: least.load, Unit: "N", Source: own},
			{Symbol: "k", Meaning: "how many times the design load that is", Formula: "Ru/Fd", Inputs: []working.Input{{Symbol: "Ru", Value: least.load, Unit: "N"}, {Symbol: "Fd", Value: load.number, Unit: "N"}}, Value: least.load / load.number, Source: over},
		}
	}}, nil
}

// asked is the fact of a factor that the file asks for, by its key there.
func (v *values) asked(key, meaning string) clauses.Fact {
	return clauses.Fact{
		Name: key + "_asked", Unit: "", Meaning: meaning, From: []string{"stay.role"},
		Reckon: func(r clauses.Row) (clauses.Result, error) {
			found, err := v.find(r.Word("stay.role"), key)
			if err != nil {
				return clauses.Result{}, err
			}
			return clauses.Result{Value: found.number, Working: func() []working.Step { return []working.Step{v.step(found, "k_asked", key, "")} }}, nil
		},
	}
}
