package fact

import (
	"math"
	"strings"
	"testing"
)

// TestTestStripCounts: the flat of the old part is worked out by the neutral line that a
// test strip of the new sheet gave, for it is cut from that sheet.
func TestTestStripCounts(t *testing.T) {
	const legs, plate, radius = 63.1 + 39.9 + 238.8, 8.01, 12.0
	takes := func(angle, k float64) float64 {
		a := angle * math.Pi / 180
		return 2*(radius+plate)*math.Tan(a/2) - a*(radius+k*plate)
	}
	for _, k := range []string{"0.3", "0.5"} {
		m := foldedBoat(t, "way: toward, radius: 12 mm }", "way: toward, radius: 12 mm, neutral_line: "+k+" }").Matches[0]
		of := map[string]float64{"0.3": 0.3, "0.5": 0.5}[k]
		closeTo(t, "flat by a test strip of "+k, &m.FlatLength, legs-takes(12, of)-takes(8, of), 1e-6)
		closed := false
		for _, s := range m.FlatLength.Working() {
			closed = closed || s.Symbol == "K" && s.Value == of
		}
		if !closed {
			t.Errorf("the working does not have the test strip's %s", k)
		}
	}
}

// bothSides puts the bolt hole top between the folds, by the old part as by the new one,
// and drills those at the boat that were not measured.
var bothSides = []string{
	"hole: top, leg: 3, along: 38.8 mm", "hole: top, leg: 2, along: 18 mm",
	"name: top, role: bolt, diameter: 10 mm, along: 140 mm", "name: top, role: bolt, diameter: 10 mm, along: 80.8 mm",
	"      - { from: pin, to: top, length: 115.7 mm }\n", "",
	hullList, "",
	"name: second, role: bolt,", "name: second, role: bolt, drill_at_boat: yes,",
	"name: third, role: bolt,", "name: third, role: bolt, drill_at_boat: yes,",
}

// TestFoldedAlike: holes on both sides of a fold that is folded otherwise than the old
// part's don't meet its holes, though laid flat they would.
func TestFoldedAlike(t *testing.T) {
	const lower = "name: lower, along: 101.5 mm, angle: 8 deg, way: toward, radius: 12 mm"
	m := foldedBoat(t, bothSides...).Matches[0]
	if !m.Miss.Known() {
		t.Fatalf("folds that are the old part's: %s", m.Miss.Why())
	}
	for change, want := range map[string]string{
		"name: lower, along: 101.5 mm, angle: 20 deg, way: toward, radius: 12 mm":             "which turns 20 deg toward and on the old part 8 deg toward",
		"name: lower, along: 101.5 mm, angle: 8 deg, way: away, radius: 12 mm":                "which turns 8 deg away and on the old part 8 deg toward",
		"name: lower, along: 101.5 mm, angle: 8 deg, way: toward, radius: 12 mm, skew: 9 deg": "top and low stand on both sides of the lower fold",
	} {
		m := foldedBoat(t, append([]string{lower, change}, bothSides...)...).Matches[0]
		for what, v := range map[string]*Value{"miss": &m.Miss.Value, "clearance": &m.Clearance.Value, "uncertainty": &m.Uncertainty.Value} {
			if v.Known() || !strings.Contains(v.Why(), want) && what != "uncertainty" {
				t.Errorf("%s: %s is known, or not because %q: %q", change, what, want, v.Why())
			}
		}
	}
	if m := foldedBoat(t, append([]string{"name: upper, along: 62.5 mm, angle: 12 deg", "name: upper, along: 62.5 mm, angle: 20 deg"}, bothSides...)...).Matches[0]; !m.Miss.Known() {
		t.Errorf("the upper fold stands between none of the bolts: %s", m.Miss.Why())
	}
	one := append([]string{"      - { " + lower + " }\n", ""}, bothSides...)
	if m := foldedBoat(t, one...).Matches[0]; !m.Miss.Known() {
		if !strings.Contains(m.Miss.Why(), "the old part has 2 folds where this one has 1 fold") {
			t.Error(m.Miss.Why())
		}
	} else {
		t.Error("a part with a fold less meets the old part's holes")
	}
}
