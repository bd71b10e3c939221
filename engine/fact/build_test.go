package fact

import (
	"math"
	"strings"
	"testing"
	"time"

	"chainwale/engine/plan"
)

var today = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

// sloop is a small plan; tests change a line of it.
const sloop = `chainwale: 1
boat: { name: Test, waters: coastal, climate: tropical }
stays:
  - id: cap-shroud
    role: cap shroud
    side: both
    wire: { construction: 1x19, metal: 316, diameter: 8 mm }
    pin: { diameter: 15.9 mm, measured: 15.8 mm, metal: 316 }
    fork: { opening: 10 mm, cheek: 7 mm }
    lean: { in_plane: 2 deg }
  - id: backstay
    role: backstay
    side: centre
    wire: { construction: 1x19, diameter: 7 mm }
fittings:
  - id: cap-plate
    state: kept
    kind: chainplate
    side: both
    serves: [cap-shroud]
    metal: { name: 316L }
    thickness: 8 mm
    outline: { width: 45 mm, length: 345 mm, end: round }
    holes:
      - { role: pin, diameter: 16.2 mm, along: 25 mm }
      - { role: bolt, along: 140 mm }
      - { role: bolt, along: 200 mm }
    installed: 2014-11-25
    mounting:
      to: hull
      through_deck: yes
      glassed_in: no
      bolts: { thread: M10, grade: A4-70, threads_in_plane: yes }
records:
  - { id: look, fitting: cap-plate-port, on: 2022-11-25, did: drawn and looked at, crack: none seen }
`

// built makes facts of the sloop with some lines changed (old, new, old, new …).
func built(t *testing.T, changes ...string) *Facts {
	t.Helper()
	src := sloop
	for i := 0; i < len(changes); i += 2 {
		if !strings.Contains(src, changes[i]) {
			t.Fatalf("the sloop has no %q", changes[i])
		}
		src = strings.ReplaceAll(src, changes[i], changes[i+1])
	}
	p, problems, err := plan.Parse("test.yaml", []byte(src))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	c, err := TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	f, err := Build(c, p, today)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func near(a, b, tolerance float64) bool { return math.Abs(a-b) <= tolerance*math.Abs(b) }

// TestSides holds that what stands for both sides is two subjects of each kind,
// and that each plate holds the wire of its own side.
func TestSides(t *testing.T) {
	f := built(t)
	if len(f.Stays) != 3 || len(f.Fittings) != 2 || len(f.Landings) != 2 || len(f.BoltGroups) != 2 {
		t.Fatalf("%d stays, %d fittings, %d landings, %d bolt groups", len(f.Stays), len(f.Fittings), len(f.Landings), len(f.BoltGroups))
	}
	for _, l := range f.Landings {
		_, of, _ := strings.Cut(l.Fitting.ID, "cap-plate-")
		if l.Stay.ID != "cap-shroud-"+of {
			t.Errorf("%s holds %s", l.Fitting.ID, l.Stay.ID)
		}
	}
	if len(f.Records) != 1 || f.Records[0].Fitting.ID != "cap-plate-port" {
		t.Errorf("a record of the port plate became %d records", len(f.Records))
	}
	if f.Fittings[0].Seen == f.Fittings[1].Seen {
		t.Error("a record of the port plate counts for the starboard plate")
	}
}

// TestStrengthOfADemoPlate holds the facts to the plate that the calibration
// reckoned by hand: 45 x 8 mm with a 15.9 mm pin is 1.86 times the 8 mm wire.
func TestStrengthOfADemoPlate(t *testing.T) {
	l := built(t, "measured: 15.8 mm, ", "", "16.2 mm", "16.1 mm").Landings[0]
	if got := l.PlateTimesWire.Float(); !near(got, 1.86, 0.005) {
		t.Errorf("%.3f times the wire, wanted 1.86", got)
	}
}

// TestPlace holds how a part comes to be hidden or under water.
func TestPlace(t *testing.T) {
	for _, test := range []struct {
		name          string
		changes       []string
		hidden, water string
	}{
		{"through the deck, at the hull", nil, "yes", "unknown"},
		{"through the deck, though it is called open", []string{"    installed:", "    exposure: open\n    installed:"}, "yes", "no"},
		{"at a knee, neither buried nor described", []string{"to: hull", "to: knee", "through_deck: yes", "through_deck: no"}, "no", "no"},
		{"nobody says", []string{"      through_deck: yes\n      glassed_in: no\n", ""}, "unknown", "unknown"},
		{"under water", []string{"    installed:", "    exposure: under water\n    installed:", "through_deck: yes", "through_deck: no"}, "yes", "yes"},
	} {
		f := built(t, test.changes...).Fittings[0]
		if got := yesNo(&f.Hidden); got != test.hidden {
			t.Errorf("%s: hidden %s, wanted %s", test.name, got, test.hidden)
		}
		if got := yesNo(&f.UnderWater); got != test.water {
			t.Errorf("%s: under water %s, wanted %s", test.name, got, test.water)
		}
	}
}

func yesNo(y *YesNo) string {
	switch {
	case y.Yes():
		return "yes"
	case y.No():
		return "no"
	}
	return "unknown"
}

// TestAges holds ages, looks and lives.
func TestAges(t *testing.T) {
	port, starboard := built(t).Fittings[0], built(t).Fittings[1]
	if age := port.Age.Float(); !near(age, 12, 0.001) {
		t.Errorf("the plate is %v years old", age)
	}
	if since := port.SinceLook.Float(); !near(since, 4, 0.001) {
		t.Errorf("the port plate was looked at %v years ago", since)
	}
	if since := starboard.SinceLook.Float(); !near(since, 12, 0.001) {
		t.Errorf("the starboard plate was made %v years ago and not looked at since", since)
	}
	if port.Life.Float() != lifeHiddenTropics {
		t.Errorf("hidden in the tropics it is trusted for %v years", port.Life.Float())
	}
	open := built(t, "through_deck: yes", "through_deck: no").Fittings
	if open[0].Life.Float() != lifeOpenSeen || open[1].Life.Float() != lifeUsual {
		t.Errorf("in the open: %v years seen, %v years not seen", open[0].Life.Float(), open[1].Life.Float())
	}
	future := built(t, "installed: 2014-11-25", "installed: 2027").Fittings[0]
	if future.Age.Known() || !strings.Contains(future.Age.Why(), "later than the day judged on") {
		t.Errorf("a plate of next year is %v old (%q)", future.Age.Float(), future.Age.Why())
	}
	year := built(t, "installed: 2014-11-25", "installed: 2014").Fittings[0]
	if age := year.Age.Float(); !near(age, 12.9, 0.001) {
		t.Errorf("a plate of some day in 2014 is %v old, not as old as it can be", age)
	}
}

// TestWireIsTheLoad holds that a wire of unknown metal counts as the stronger one.
func TestWireIsTheLoad(t *testing.T) {
	stronger := built(t).Stays[2].BreakLoad.Float()
	known := built(t, "wire: { construction: 1x19, diameter: 7 mm }", "wire: { construction: 1x19, metal: 316, diameter: 7 mm }").Stays[2].BreakLoad.Float()
	if known != 35500 || stronger <= known {
		t.Errorf("316 breaks at %v, unknown metal at %v", known, stronger)
	}
}

// TestUnknownsCarryThrough takes one value away at a time and holds that what
// rests on it is unknown, names it, and points at where it would stand.
func TestUnknownsCarryThrough(t *testing.T) {
	for _, test := range []struct {
		name, take, leave string
		of                func(*Facts) *Value
		lacks, pointer    string
	}{
		{"plate without thickness", "    thickness: 8 mm\n", "", plateUltimate, "thickness", "/fittings/0/thickness"},
		{"plate without metal", "metal: { name: 316L }", "metal: {}", plateUltimate, "metal.name", "/fittings/0/metal/name"},
		{"no pin hole", "      - { role: pin, diameter: 16.2 mm, along: 25 mm }\n", "", plateUltimate, "hole", "/fittings/0/holes"},
		{"fork not measured", "opening: 10 mm, ", "", func(f *Facts) *Value { return &f.Landings[0].PinBending.Value }, "fork_opening", "/stays/0/fork/opening"},
		{"pin not measured", "measured: 15.8 mm, ", "", func(f *Facts) *Value { return &f.Landings[0].PinClearance.Value }, "pin_measured", "/stays/0/pin/measured"},
		{"lean not measured", "lean: { in_plane: 2 deg }", "lean: {}", boltsUltimate, "lean", "/stays/0/lean/in_plane"},
		{"a bolt without a place", "role: bolt, along: 200 mm", "role: bolt", boltsUltimate, "count", "/fittings/0/holes/2/along"},
		{"bolts without a grade", "grade: A4-70, ", "", boltsUltimate, "grade", "/fittings/0/mounting/bolts/grade"},
	} {
		v := test.of(built(t, test.take, test.leave))
		if v.Known() {
			t.Errorf("%s: it is known all the same: %v", test.name, v.Float())
			continue
		}
		found := false
		for _, m := range v.Missing() {
			if m.Column() != nil && m.Column().Name == test.lacks {
				found = true
				if m.At().Pointer != test.pointer || m.At().Line == 0 {
					t.Errorf("%s: it would stand at %+v, wanted %s", test.name, m.At(), test.pointer)
				}
			}
		}
		if !found {
			t.Errorf("%s: nothing says that %s is missing", test.name, test.lacks)
		}
	}
}

func plateUltimate(f *Facts) *Value { return &f.Landings[0].PlateUltimate.Value }
func boltsUltimate(f *Facts) *Value { return &f.BoltGroups[0].BoltsUltimate.Value }

// TestUnknownNames holds that a metal, wire or bolt that no table has makes the
// facts unknown and says which names are near.
func TestUnknownNames(t *testing.T) {
	for _, test := range []struct {
		take, leave string
		of          func(*Facts) *Value
		why         string
	}{
		{"name: 316L", "name: 361L", plateUltimate, "316L"},
		{"thread: M10", "thread: M11", boltsUltimate, "M10"},
		{"grade: A4-70", "grade: A4-07", boltsUltimate, "A4-70"},
		{"construction: 1x19, metal: 316", "construction: 1x91, metal: 316", func(f *Facts) *Value { return &f.Stays[0].BreakLoad.Value }, "1x19"},
	} {
		v := test.of(built(t, test.take, test.leave))
		if v.Known() || !strings.Contains(v.Why(), test.why) {
			t.Errorf("%s: known %v, says %q, which has no %q", test.leave, v.Known(), v.Why(), test.why)
		}
	}
}
