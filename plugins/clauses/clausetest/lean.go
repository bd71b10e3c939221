package clausetest

import (
	"testing"

	"chainwale/engine/standard"
)

// Lean holds that no load of the wire that a standard derives of a landing is known
// where nobody has measured how the wire leans out of the plate's plane, and that each
// is refused where it leans too far, to either side. The facts are of a landing whose
// wire pulls straight, of which all such loads are known.
func Lean(t testing.TB, s standard.Standard, facts Facts) {
	t.Helper()
	straight, unknown := Landing(t, s, facts), Landing(t, s, facts.With(Facts{"lean_out": nil}))
	loads := 0
	for _, d := range tableOf(t, s, "landing").Derives {
		if !d.Bears {
			continue
		}
		loads++
		straight.Fact(d.Name)
		if _, known := unknown.Known[d.Name]; known || len(unknown.Refused) > 0 {
			t.Errorf("%s is known, or refused, with a lean that nobody has measured: %v", d.Name, unknown.Refused)
		}
		for _, lean := range []float64{2.1, -2.1, 30} {
			Landing(t, s, facts.With(Facts{"lean_out": lean})).Refuses(d.Name, "deg out of the plate's plane")
		}
	}
	if loads == 0 {
		t.Error("the standard derives no load of the wire")
	}
}
