package rule

import (
	"math"
	"testing"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/rules"
)

// TestEvaluator holds that an evaluator says what the rule says, on row after row,
// and allocates nothing.
func TestEvaluator(t *testing.T) {
	c, err := fact.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	p, problems := Load(rules.FS, "strength", "rules/strength", c, LoadOptions{SkipSchema: true})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for _, r := range p.Rules {
		e := r.Evaluator()
		rows := [][]float64{make([]float64, len(r.Kind.Slots)), make([]float64, len(r.Kind.Slots)), make([]float64, len(r.Kind.Slots))}
		for i := range rows[1] {
			rows[1][i], rows[2][i] = float64(i)+0.5, math.NaN()
		}
		for _, row := range rows {
			if got, want := e.Outcome(row), r.Evaluate(row).Outcome; got != want {
				t.Errorf("%s: the evaluator says %s, the rule %s", r.ID, got, want)
			}
		}
		for _, row := range rows {
			if e.Holds(row) != (e.Outcome(row) == finding.Holds) || e.Holds(nil) {
				t.Errorf("%s: Holds and Outcome differ", r.ID)
			}
		}
		if got := e.Outcome(nil); got != finding.CannotTell {
			t.Errorf("%s: a row of no facts gives %s", r.ID, got)
		}
		if n := testing.AllocsPerRun(20, func() { e.Outcome(rows[1]) }); n != 0 {
			t.Errorf("%s: %v allocations", r.ID, n)
		}
	}
}
