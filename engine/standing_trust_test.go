package engine_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"chainwale/engine/finding"
)

// holdingOf is what a state counts on by name, nil where it does not hold.
func holdingOf(h *finding.Held, name string) *finding.Holding {
	for i := range h.Holding {
		if h.Holding[i].Name == name {
			return &h.Holding[i]
		}
	}
	return nil
}

const stemSound = "did: drawn and looked at, crack: none seen, leak: none seen"

// A look makes a plate one that is counted on only where whoever looked searched for
// cracks and saw none; with a crack in it nothing is counted on it.
func TestLookedAtIsNotSound(t *testing.T) {
	for says, c := range map[string]struct {
		record string
		pull   float64
	}{
		"its wire":                   {stemSound, 45500.0 / 3},
		"a crack was seen":           {strings.Replace(stemSound, "crack: none seen", "crack: seen", 1), 0},
		"its plate, not seen":        {strings.Replace(stemSound, "crack: none seen, ", "", 1), 5500},
		"not seen: credited because": {strings.Replace(stemSound, "crack: none seen", "crack: not looked for", 1), 5500},
	} {
		s, _ := standingOf(t, false, stemSound, c.record)
		stay := holdingOf(s.Before, "forestay")
		if stay == nil || math.Abs(stay.Pull-c.pull) > 1 || !strings.Contains(stay.Because, says) {
			t.Errorf("%s: the forestay is counted on for %+v, not for %g", c.record, stay, c.pull)
		}
	}
}

// A turnbuckle that is weaker than its wire limits the stay.
func TestWeakTurnbuckle(t *testing.T) {
	s, _ := standingOf(t, false, "thread: 5/8-18 UNF, proven: yes", "thread: 5/8-18 UNF, break_load: 12 kN")
	if cap := holdingOf(s.Before, "cap-shroud-port"); cap == nil || math.Abs(cap.Pull-4000) > 1 || !strings.Contains(cap.Because, "turnbuckle") {
		t.Errorf("a cap shroud on a turnbuckle of 12 kN is counted on for %+v", cap)
	}
}

// A plate that is kept has no successor in the plan, so changing it makes nothing of it.
func TestKeptPlateIsNotRenewed(t *testing.T) {
	s, _ := standingOf(t, false, "replace: [backstay-plate]", "replace: [backstay-plate, stemhead]")
	if stay := holdingOf(s.Steps[1].After, "forestay"); stay == nil || stay.Pull != 5500 {
		t.Errorf("the forestay on a changed plate that nobody drew is counted on for %+v", stay)
	}
}

// Without its lowers a mast is bent over its whole length: the spreader of the caps does
// not hold it at its middle.
func TestSpreaderIsNoSupport(t *testing.T) {
	const first = "replace: [backstay-plate]"
	bent := func(changes ...string) float64 { return factsOf(t, changes...).Steps[1].Bending.Float() }
	whole, without := bent(), bent(first, "replace: [fore-lower-plate, aft-lower-plate]")
	// One span of 11.85 m between partners and cap in the place of two of 5.55 and 6.3 m.
	if without < 2.5*whole {
		t.Errorf("the mast is bent with %.3g of its section with its lowers and %.3g without", whole, without)
	}
	if calm := bent("place: afloat", "place: ashore"); calm >= whole {
		t.Errorf("rolling does not bend the mast: %g ashore, %g afloat", calm, whole)
	}
}

// A mast lighter than its own tube would roll with less than it does.
func TestMastLighterThanItsTube(t *testing.T) {
	f := factsOf(t, "mass: 62 kg", "mass: 6.2 kg")
	if f.Mast.Roll.Known() || !strings.Contains(f.Mast.Roll.Why(), "less than that of its bare tube") {
		t.Errorf("a mast of 6.2 kg rolls with %g N mm: %s", f.Mast.Roll.Float(), f.Mast.Roll.Why())
	}
}

// A line of no line's size counts as nothing.
func TestLineOfNoSize(t *testing.T) {
	for _, size := range []string{"1e308 mm", "0.1 mm", "400 mm"} {
		f := factsOf(t, "diameter: 10 mm, end: eye splice, age_known: yes }\n      sheave: 30 kN\n      cleat: 12 kN\n      deck_fitting: 15 kN\n    - id: topping-lift",
			"diameter: "+size+", end: eye splice, age_known: yes }\n      sheave: 30 kN\n      cleat: 12 kN\n      deck_fitting: 15 kN\n    - id: topping-lift")
		for _, in := range f.StandIns {
			if in.ID == "main-halyard" && (in.Strength.Known() || !strings.Contains(in.Lacks(), "is not covered")) {
				t.Errorf("a line of %s holds %g N: %s", size, in.Strength.Float(), in.Lacks())
			}
		}
	}
}

// A fitting and a stay of one id stay apart where no step names them.
func TestOneIDForStayAndFitting(t *testing.T) {
	whole, _ := standingOf(t, false)
	s, _ := standingOf(t, false, "  - id: stemhead\n", "  - id: forestay\n", "fitting: stemhead", "fitting: forestay")
	if s.Before == nil || s.Before.Margin != whole.Before.Margin || s.CantTell != "" {
		t.Errorf("the rig can't be told apart: %s", s.CantTell)
	}
}

// What the rig can't be is said where nothing is told, not put down to a reading.
func TestCantTellWhy(t *testing.T) {
	s, _ := standingOf(t, false, "  - id: cap-shroud\n    tension: 6 kN", "  - id: cap-shroud\n    tension: 30 kN")
	if s.Before != nil || strings.Count(s.CantTell, "more than half of what it breaks at") != 2 || !strings.Contains(s.CantTell, "; ") {
		t.Errorf("%q", s.CantTell)
	}
}

// No order is suggested that opens the hull near the water while she floats.
func TestNoOrderBelowTheWater(t *testing.T) {
	const wet = "fittings:\n  - { id: backstay-plate, exposure: under water }\n"
	s, _ := standingOf(t, true, "fittings:\n", wet)
	if s.Suggested.Found || !strings.Contains(s.Suggested.Says, "backstay-plate") || len(s.Suggested.Steps) > 0 {
		t.Errorf("afloat: %+v", s.Suggested)
	}
	dry, _ := standingOf(t, true, "fittings:\n", wet, "place: afloat", "place: ashore")
	if !dry.Suggested.Found {
		t.Errorf("ashore: %s", dry.Suggested.Says)
	}
	ashore := slices.ContainsFunc(dry.Cautions, func(c string) bool { return strings.Contains(c, "look at the stands first") })
	if !ashore || slices.ContainsFunc(dry.Cautions, func(c string) bool { return strings.Contains(c, "Berth her") }) {
		t.Errorf("ashore it is said: %v", dry.Cautions)
	}
}

// A mast that stands on deck is not left alone while new parts are made.
func TestDeckSteppedIsNotLeftAlone(t *testing.T) {
	s, _ := standingOf(t, true, "mast_step: keel-stepped", "mast_step: deck-stepped", "    deck: 1.75 m\n", "")
	for _, step := range s.Suggested.Steps {
		if step.Attended != "yes" {
			t.Errorf("%s leaves a mast on deck alone", step.ID)
		}
	}
	if !s.Suggested.Found {
		t.Error(s.Suggested.Says)
	}
}

// Two stand-ins to one side of a backstay's line are not two in its place.
func TestStandInsToOneSide(t *testing.T) {
	one := func(s finding.Standing) bool {
		return slices.ContainsFunc(s.Findings, func(f finding.Finding) bool {
			return f.Rule == "end-stay-has-two-stand-ins" && f.Subject == "step:backstay-plate-out" && f.Outcome == finding.Fails
		})
	}
	const quarter = "lower: { x: -6 m, y: 1 m, z: 1.7 m }"
	s, _ := standingOf(t, false, quarter, strings.Replace(quarter, "y: 1 m", "y: -1 m", 1))
	if !one(s) || !slices.ContainsFunc(s.Steps[1].During.Concerns, func(c string) bool { return strings.Contains(c, "lead to one side of its line") }) {
		t.Errorf("both to starboard: %v", s.Steps[1].During.Concerns)
	}
	for _, y := range []string{"y: 1 m", "y: 0 m"} {
		if s, _ := standingOf(t, false, quarter, strings.Replace(quarter, "y: 1 m", y, 1)); one(s) {
			t.Errorf("with the main halyard at %s: %v", y, s.Steps[1].During.Concerns)
		}
	}
}
