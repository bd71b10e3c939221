package fact

import (
	"math"
	"os"
	"strings"
	"testing"

	"chainwale/engine/plan"
)

// The texts of the mended demo's holes in the hull and of its record of the old plate.
const (
	hullSecond = "      - { hole: second, along: 60.1 mm, diameter: 10 mm, is: round, within: 0.2 mm }\n"
	hullThird  = "hole: third, along: 120 mm, diameter: 10 mm, is: round, within: 0.2 mm"
	hullList   = "    hull_holes:\n      - { hole: top, along: 0 mm, diameter: 10 mm, is: round, within: 0.2 mm }\n" + hullSecond +
		"      - { hole: third, along: 120 mm, diameter: 10 mm, is: round, within: 0.2 mm }\n" +
		"      - { hole: low, along: 183 mm, diameter: 10 mm, is: round, within: 0.2 mm }\n"
)

// A bolt hole that is cut and meets no hole that is known may land on nothing.
func TestHoleThatMeetsNothing(t *testing.T) {
	for name, remove := range map[string]string{"not in the hull": hullSecond, "not on the old part": hullList} {
		f := foldedBoat(t, remove, "")
		at := lineOf(t, "{ name: second")
		for _, m := range f.Matches {
			for what, v := range map[string]*Value{"matched": &m.Matched.Value, "miss": &m.Miss.Value, "uncertainty": &m.Uncertainty.Value, "to drill": &m.ToDrill.Value, "clearance": &m.Clearance.Value} {
				if v.Known() || v.At().Line != at || !strings.Contains(v.Why(), "the bolt hole second is not drilled at the boat") {
					t.Errorf("%s: %s is known, or points at line %d and not %d: %q", name, what, v.At().Line, at, v.Why())
				}
			}
		}
	}
	for _, is := range []string{"drill at the boat", "filled"} {
		m := foldedBoat(t, hullSecond, strings.Replace(hullSecond, "round", is, 1)).Matches[0]
		closeTo(t, is+": matched", &m.Matched, 3, 0)
		closeTo(t, is+": to drill", &m.ToDrill, 1, 0)
	}
	m := foldedBoat(t, hullSecond, "", "name: second, role: bolt,", "name: second, role: bolt, drill_at_boat: yes,").Matches[0]
	closeTo(t, "drilled at the boat: matched", &m.Matched, 3, 0)
}

// lineOf is the line of the mended demo in which a text first stands.
func lineOf(t *testing.T, text string) int {
	t.Helper()
	src, err := os.ReadFile("../../testdata/boats/quillfish-mended.yaml")
	if err != nil {
		t.Fatal(err)
	}
	before, _, found := strings.Cut(string(src), text)
	if !found {
		t.Fatalf("the demo has no %q", text)
	}
	return 1 + strings.Count(before, "\n")
}

// Of a hull of whose holes nothing is said, nobody knows that none is left over.
func TestLeftOverUnknown(t *testing.T) {
	m := foldedBoat(t, hullList, "").Matches[0]
	if m.ToFill.Known() || !strings.HasSuffix(m.ToFill.At().Pointer, "/hull_holes") {
		t.Errorf("%v left over, asked for at %s", m.ToFill.Float(), m.ToFill.At().Pointer)
	}
}

// How well the holes were measured goes by the hole that lacks most for it, wherever the
// worst place is, and by the tool of each.
func TestLeastSure(t *testing.T) {
	m := foldedBoat(t, hullThird, strings.Replace(hullThird, "0.2 mm", "40 mm", 1)).Matches[0]
	closeTo(t, "uncertainty", &m.Uncertainty, 2*40/1.7320508, 1e-5)
	closeTo(t, "its play", &m.LeastSurePlay, 10-9.525-0.2, 1e-9)
	if m.LeastSure.Text() != "third" || m.Worst.Text() != "second" || m.Dominated.Text() != "place of third in the hull" {
		t.Errorf("least sure %s, worst %s, mostly %s", m.LeastSure.Text(), m.Worst.Text(), m.Dominated.Text())
	}
	m = foldedBoat(t, hullThird, strings.Replace(hullThird, ", within: 0.2 mm", "", 1)).Matches[0]
	for what, v := range map[string]*Value{"uncertainty": &m.Uncertainty.Value, "least sure": &m.LeastSure.Value, "play": &m.LeastSurePlay.Value, "mostly": &m.Dominated.Value} {
		if v.Known() || len(v.Missing()) != 1 || !strings.HasSuffix(v.Missing()[0].At().Pointer, "/hull_holes/2/within") {
			t.Errorf("%s is known without the tool of each hole, or that is not asked for", what)
		}
	}
	if !m.Miss.Known() {
		t.Error("the miss wants to know the tools")
	}
	// A hole with less play is the least sure of two that are known alike.
	m = foldedBoat(t, "name: top, role: bolt, diameter: 10 mm", "name: top, role: bolt, diameter: 9.8 mm").Matches[0]
	if m.LeastSure.Text() != "top" {
		t.Errorf("least sure %s", m.LeastSure.Text())
	}
}

// That the old part did not fail takes a look at crack, pin and hole, taken on the old
// part on a day that has been. That it did takes any record.
func TestOldFailed(t *testing.T) {
	const autumn = "fitting: cap-plate, on: 2026-11-14, did: looked at, crack: none seen, leak: none seen, rust_weep: none seen, pits: none seen, ovality: 1 %, pin_bent: none seen"
	const seen = "on: 2022-02-13, did: drawn and looked at, crack: none seen, ovality: 1 %, pin_bent: none seen"
	for _, c := range []struct{ record, want string }{
		{seen, "no"},
		{strings.Replace(seen, "pin_bent: none seen", "pin_bent: not looked for", 1), "unknown"},
		{strings.Replace(seen, ", pin_bent: none seen", "", 1), "unknown"},
		{strings.Replace(seen, ", ovality: 1 %", "", 1), "unknown"},
		{strings.Replace(seen, "crack: none seen", "crack: not looked for", 1), "unknown"},
		{strings.Replace(seen, "drawn and looked at", "looked at", 1), "unknown"},
		{strings.Replace(seen, "2022", "2029", 1), "unknown"},
		{strings.Replace(strings.Replace(seen, "2022", "2029", 1), "ovality: 1 %", "ovality: 4 %", 1), "yes"},
		{"on: 2022-02-13, did: looked at, pin_bent: seen", "yes"},
	} {
		m := foldedBoat(t, autumn, "fitting: aft-lower-plate, "+c.record).Matches[0]
		got := "unknown"
		if m.OldFailed.Known() {
			got = map[bool]string{true: "yes", false: "no"}[m.OldFailed.Yes()]
		}
		if got != c.want {
			t.Errorf("%s: %s, wanted %s", c.record, got, c.want)
		}
	}
	// A look at the new part says nothing of the old one.
	if m := foldedBoat(t, autumn, "fitting: aft-lower-plate, "+strings.Replace(seen, "2022-02-13", "2026-11-20", 1)).Matches[0]; m.OldFailed.Known() {
		t.Error("the new part's record is taken for the old one's")
	}
}

// Readings in the hull that scatter are known less well than one: 119.7 and 120.3 mm scatter by
// 0.3 mm about their mean, which two readings tell to sqrt(3) times that.
func TestHullReadings(t *testing.T) {
	one := foldedBoat(t, "hole: third, along: 120 mm, diameter: 10 mm, is: round, within: 0.2 mm", "hole: third, along: 120 mm, diameter: 10 mm, is: round, within: 0.4 mm").Matches[0]
	two := foldedBoat(t, "hole: third, along: 120 mm, diameter: 10 mm, is: round, within: 0.2 mm", "hole: third, along: [119.7 mm, 120.3 mm], diameter: 10 mm, is: round, within: 0.4 mm").Matches[0]
	closeTo(t, "one reading", &one.Uncertainty, 2*0.4/math.Sqrt(3), 1e-9)
	closeTo(t, "two readings", &two.Uncertainty, 2*math.Hypot(math.Sqrt(3)*0.3, 0.4/math.Sqrt(3)), 1e-9)
	if one.LeastSure.Text() != "third" || two.LeastSure.Text() != "third" {
		t.Errorf("least sure %s and %s", one.LeastSure.Text(), two.LeastSure.Text())
	}
}

// A square end with rounded corners, or an end drawn by a contour, counts as round.
func TestCorneredEnd(t *testing.T) {
	given := func(v float64) plan.Amount { return plan.Amount{Given: true, Value: v, Readings: 1} }
	text := func(v string) plan.Text { return plan.Text{Given: true, Value: v} }
	drawn := []plan.Corner{{X: given(0), Y: given(-20)}, {X: given(300), Y: given(-20)}, {X: given(300), Y: given(20)}, {X: given(0), Y: given(20)}}
	for name, c := range map[string]struct {
		outline plan.Outline
		want    float64
	}{
		"square":                {plan.Outline{End: text("square")}, 0},
		"square, no corner":     {plan.Outline{End: text("square"), Corner: given(0)}, 0},
		"square, corners":       {plan.Outline{End: text("square"), Corner: given(5)}, 20},
		"square, contour":       {plan.Outline{End: text("square"), Contour: drawn}, 20},
		"flat, contour":         {plan.Outline{End: text("round"), EndRadius: given(200), Contour: drawn}, 20},
		"sharp, contour":        {plan.Outline{End: text("round"), EndRadius: given(15), Contour: drawn}, 15},
		"flat, without contour": {plan.Outline{End: text("round"), EndRadius: given(200)}, 200},
		"nothing is said of it": {plan.Outline{}, 20},
		"tapered":               {plan.Outline{End: text("tapered"), Nose: given(30)}, 15},
	} {
		if got := endRadius(c.outline, 40); got != c.want {
			t.Errorf("%s: %v, wanted %v", name, got, c.want)
		}
	}
}

// A press has to overcome what a sheet of the grade may have, whatever its certificate says.
func TestForceByTheGrade(t *testing.T) {
	force := func(ultimate string) *Number {
		return &foldedBoat(t, "certificate: mill certificate of the new plate", "certificate: heat 4711, yield: 205 MPa, ultimate: "+ultimate).Bends[0].Force
	}
	closeTo(t, "a weak certificate", force("520 MPa"), 1.5*670*40*64/64, 1e-6)
	closeTo(t, "a strong certificate", force("690 MPa"), 1.5*690*40*64/64, 1e-6)
}
