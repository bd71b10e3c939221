package strength

import (
	"slices"
	"testing"

	"chainwale/engine/working"
)

// checkWorking holds that every step says what it is, where it comes from and how
// that is known, and that the steps named have the values that the result has.
func checkWorking(t *testing.T, steps []working.Step, want map[string]float64) {
	t.Helper()
	seen := map[string]bool{}
	for _, s := range steps {
		if s.Symbol == "" || s.Formula == "" || s.Meaning == "" || s.Source.Title == "" || !slices.Contains(working.AllHowKnown(), s.Source.As) {
			t.Errorf("step %+v is incomplete", s)
		}
		if v, ok := want[s.Symbol]; ok {
			seen[s.Symbol] = true
			if s.Value != v {
				t.Errorf("step %s says %g, the result %g", s.Symbol, s.Value, v)
			}
		}
	}
	for symbol := range want {
		if !seen[symbol] {
			t.Errorf("no step %s", symbol)
		}
	}
}
