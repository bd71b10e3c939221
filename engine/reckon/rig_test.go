package reckon

import (
	"strings"
	"testing"
)

// TestRigRefusals: what can't be of a rig is refused in a plain sentence.
func TestRigRefusals(t *testing.T) {
	for _, c := range []struct{ formula, inputs, says string }{
		{"righting-moment", `{"mass": "6 t", "gm": "1 m", "weight": "100 kg"}`, "it is given beside weight"},
		{"righting-moment", `{"mass": "6 t", "weight": "100 kg"}`, "an inclining test needs weight, distance, heel"},
		{"righting-moment", `{"mass": "6 t"}`, "gm: it is missing, and so is an inclining test"},
		{"shrouds", `{"half_beam": "0 m", "levels": [{"height": "9 m", "force": "1 kN"}]}`, "half_beam"},
		{"shrouds", `{"half_beam": "1 m", "levels": [{"height": "9 m", "force": "1 kN"}, {"height": "8 m", "force": "1 kN"}]}`, "level 1 has no spreader"},
		{"shrouds", `{"half_beam": "1 m", "levels": []}`, "levels"},
		{"standing", `{"stays": [{"x": "0 m", "y": "0 m", "height": "9 m", "allowable": "5 kN"}]}`, "stay 1: the foot stands in the line of the mast"},
		{"standing", `{"stays": [{"x": "0 m", "y": "1 m", "height": "-9 m", "allowable": "5 kN"}]}`, "height of entry 1 of stays"},
		{"stay-angle", `{"x": "0 m", "y": "1 m", "z": "10 m", "height": "9 m"}`, "is not above the foot"},
		{"lashing", `{"line_break": "10 kN", "parts": 2, "splice_or_knot": "granny", "pin": "20 mm", "rope": "4 mm"}`, "no splice or knot is called"},
		{"tension-by-stretch", `{"construction": "1x19", "metal": "361", "diameter": "6 mm", "gauge_length": "2 m", "stretch": "1 mm"}`, "316"},
	} {
		_, err := Run(c.formula, mustMembers(t, c.inputs))
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s %s: got %v, want %q", c.formula, c.inputs, err, c.says)
		}
	}
}

// TestRigBeyond: what makes sense and is not covered has a reason and no number.
func TestRigBeyond(t *testing.T) {
	for _, c := range []struct{ formula, inputs, says string }{
		{"righting-moment", `{"mass": "6 t", "weight": "100 kg", "distance": "1 m", "heel": "20 deg"}`, "0.2 to 10 deg"},
		{"lashing", `{"line_break": "10 kN", "parts": 2, "splice_or_knot": "splice", "pin": "2 mm", "rope": "4 mm"}`, "thinner than itself"},
		{"lashing", `{"line_break": "10 kN", "parts": 50, "splice_or_knot": "splice", "pin": "0 mm", "rope": "4 mm"}`, "1 to 40 parts"},
		{"windage", `{"diameter": "170 mm", "length": "13 m", "wind": "250 kn"}`, "not covered"},
		{"windage", `{"diameter": "170 mm", "length": "13 m", "wind": "25 kn", "gust": "0.5"}`, "1 to 3 times"},
		{"tension-by-stretch", `{"construction": "1x19", "metal": "316", "diameter": "6 mm", "gauge_length": "2 m", "stretch": "15 mm"}`, "no longer elastic"},
	} {
		a, err := Run(c.formula, mustMembers(t, c.inputs))
		if err != nil || a.Covered || !strings.Contains(a.Why, c.says) {
			t.Errorf("%s %s: got %v, %q, want %q", c.formula, c.inputs, err, a.Why, c.says)
		}
	}
}
