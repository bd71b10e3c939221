package engine_test

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"chainwale/engine"
	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
)

// order loads the demo's order of work with some texts changed, each of which must
// stand in it once.
func order(t *testing.T, changes ...string) *plan.Plan {
	t.Helper()
	dir := t.TempDir()
	for _, name := range []string{"quillfish-order.yaml", "quillfish-mended.yaml"} {
		src, err := os.ReadFile(filepath.Join("../testdata/boats", name))
		if err != nil {
			t.Fatal(err)
		}
		text := string(src)
		for i := 0; name == "quillfish-order.yaml" && i < len(changes); i += 2 {
			if n := strings.Count(text, changes[i]); n != 1 {
				t.Fatalf("%q stands %d times in the plan", changes[i], n)
			}
			text = strings.Replace(text, changes[i], changes[i+1], 1)
		}
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	p, problems, err := plan.Load(filepath.Join(dir, "quillfish-order.yaml"), plan.Options{})
	if err != nil || len(problems) > 0 {
		t.Fatal(problems, err)
	}
	return p
}

var april = time.Date(2027, 4, 1, 0, 0, 0, 0, time.UTC)

func standingOf(t *testing.T, suggest bool, changes ...string) (finding.Standing, finding.Report) {
	t.Helper()
	s, report, err := engine.Standing(context.Background(), order(t, changes...), engine.Options{On: april, RefuseFrom: finding.Mend}, suggest)
	if err != nil || len(report.Problems) > 0 {
		t.Fatal(report.Problems, err)
	}
	return s, report
}

func factsOf(t *testing.T, changes ...string) *fact.Facts {
	t.Helper()
	c, err := fact.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	f, err := fact.Build(c, order(t, changes...), april)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// The numbers of the demo's first state, worked out anew from the plan's own sizes: the
// windage, the roll, and the moment by which each stay holds the mast.
func TestStandingFromThePlan(t *testing.T) {
	f := factsOf(t)
	near := func(what string, got, want float64) {
		t.Helper()
		if math.IsNaN(got) || math.Abs(got-want) > 2e-3*math.Abs(want) {
			t.Errorf("%s is %g, worked out anew %g", what, got, want)
		}
	}
	// N m in 1 m/s: half of 1.225 kg/m3 times 1.2, times breadth, length and height of
	// the middle, or for half of a wire its breadth, length and upper end.
	const q = 0.5 * 1.225 * 1.2
	mast := q * (0.170*(13.7-1.75)*(13.7+1.75)/2 + 0.040*(13.6-1.75)*(13.6+1.75)/2 + 0.150*0.1*13.65)
	wires := q / 2 * (2*0.008*(13.6-1.75)*13.6 + 4*0.007*(7.2-1.75)*7.2 + 0.007*(13.6-1.6)*13.6 + 0.008*(13.6-1.9)*13.6)
	near("the windage", f.Mast.Windage.Float()/1000, mast+wires)
	// m' g sin(3 deg) H^2/2 + m' w^2 3 deg (H^3/3 + 0.4 H^2/2)
	per, phi, omega, h := 62/13.7, 3*math.Pi/180, 2*math.Pi/3.5, 13.7
	near("the roll", f.Mast.Roll.Float()/1000, per*9.80665*math.Sin(phi)*h*h/2+per*omega*omega*phi*(h*h*h/3+0.4*h*h/2))
	near("the righting moment", f.Mast.RightingMoment.Float()/1e6, 30*9.80665*100*1.6/math.Tan(1.8*math.Pi/180)*math.Sin(math.Pi/180)/1000)
	state := f.Standing.Result.Before
	// The cap shroud leads over a tip 1.05 m out at 7.3 m: its lowest part, drawn on,
	// meets the mast where it would cross the middle.
	meets := 1.75 + (7.3-1.75)*1.45/(1.45-1.05)
	lever := meets * 1.45 / math.Hypot(1.45, meets-1.75)
	lower := func(x float64) (float64, float64) {
		length := math.Sqrt(x*x + 1.4*1.4 + (7.2-1.75)*(7.2-1.75))
		return 7.2 * x / length, 7.2 * 1.4 / length
	}
	_, aside := lower(0.55)
	// To starboard hold the cap at 6 kN and two lowers at 3.4 kN, as they are set up:
	// nobody has seen their plates.
	near("what is held abeam", state.ByDirection[2]/1e6, 6*lever+2*3.4*aside)
	ahead, _ := lower(0.55)
	// Pushed aft, the forestay's plate has been seen: a third of its wire counts.
	fore := 45.5 / 3 * 13.6 * 4.3 / math.Hypot(4.3, 13.6-1.9)
	near("what is held aft", state.ByDirection[4]/1e6, fore+2*3.4*ahead)
}

// Only a moment that is given or found by an inclining test raises what a plate has to
// outlast; an estimate of any size never does.
func TestEstimateNeverLoadsPlates(t *testing.T) {
	const inclined = "righting_moment: { how: inclined, weight: 100 kg, distance: 1.6 m, heel: 1.8 deg }"
	for what, c := range map[string]struct {
		righting string
		raises   bool
	}{
		"given":       {"righting_moment: { how: given, moment: 60 kN m, by: her papers }", true},
		"inclined":    {"righting_moment: { how: inclined, weight: 100 kg, distance: 1.6 m, heel: 0.8 deg }", true},
		"roll period": {"righting_moment: { how: roll period, period: 1.7 s }", false},
		"estimated":   {"waterline: 11 m\n  righting_moment: { how: estimated }", false},
	} {
		f := factsOf(t, inclined, c.righting)
		for _, s := range f.Stays {
			if !s.Role.Is("cap shroud") {
				continue
			}
			if !(s.Required.Float() > s.BreakLoad.Float()) {
				t.Fatalf("%s: the wire is strong enough for %g N, so this shows nothing", what, s.Required.Float())
			}
			if raised := s.DesignLoad.Float() > s.BreakLoad.Float(); raised != c.raises || c.raises && s.DesignLoad.Float() != s.Required.Float() {
				t.Errorf("%s: %g N are required of a wire that breaks at %g N, and its plate has to outlast %g N", what, s.Required.Float(), s.BreakLoad.Float(), s.DesignLoad.Float())
			}
		}
		// Kinney: 1.5 times the moment over the half beam, and 1.85 times that on the mast.
		if want := 1.5 * f.Mast.RightingMoment.Float() / 1450; math.Abs(f.Mast.SidePull.Float()-want) > 1e-6*want || math.Abs(f.Mast.Thrust.Float()-1.85*want) > 1e-6*want {
			t.Errorf("%s: a side pulls %g N and the mast bears %g N", what, f.Mast.SidePull.Float(), f.Mast.Thrust.Float())
		}
	}
}

// Where a good moment asks something of a wire and nobody can say what, the load that its
// plate has to outlast is not known either; a plate weaker than the wire still stops.
func TestRequirementUnknown(t *testing.T) {
	f := factsOf(t, "  reefed_main: { boom: 3.1 m, head: 9.9 m, centre: 5.4 m }\n", "")
	for _, s := range f.Stays {
		if shroud := strings.Contains(s.ID, "shroud") || strings.Contains(s.ID, "lower"); s.DesignLoad.Known() == shroud || !s.BreakLoad.Known() {
			t.Errorf("%s: the design load is known: %v", s.ID, s.DesignLoad.Known())
		}
	}
	_, report := standingOf(t, false, "  reefed_main: { boom: 3.1 m, head: 9.9 m, centre: 5.4 m }\n", "")
	if !slices.ContainsFunc(report.Findings, func(f finding.Finding) bool {
		return f.Rule == "plate-outlasts-wire" && f.Outcome == finding.CannotTell
	}) || !slices.ContainsFunc(report.Measure, func(m finding.Measure) bool { return strings.HasPrefix(m.At.Pointer, "/boat/reefed_main") }) {
		t.Error("plates are judged against a load that nobody knows, or nobody is asked for it")
	}
}

// What the partners hold is counted on only where the plan asks for it and says that the
// mast is wedged.
func TestPartnersAreOffByDefault(t *testing.T) {
	without, _ := standingOf(t, false)
	counted, _ := standingOf(t, false, "wedged: yes", "wedged: yes\n    count_partners: yes")
	loose, _ := standingOf(t, false, "wedged: yes", "wedged: no\n    count_partners: yes")
	if !(counted.Before.Margin > without.Before.Margin) || loose.Before.Margin != without.Before.Margin {
		t.Errorf("held %g times, with the partners %g, with loose ones %g", without.Before.Margin, counted.Before.Margin, loose.Before.Margin)
	}
}

// Both sides of a pair are mirrored, whatever sign the plan writes.
func TestStandingMirrors(t *testing.T) {
	f := factsOf(t)
	for _, s := range f.Stays {
		if port, ok := strings.CutSuffix(s.ID, "-port"); ok {
			for _, o := range f.Stays {
				if o.ID == port+"-starboard" && (o.FootY.Float() != -s.FootY.Float() || o.FootX.Float() != s.FootX.Float() || o.Required.Float() != s.Required.Float()) {
					t.Errorf("%s stands at %g, %g and its twin at %g, %g", s.ID, s.FootX.Float(), s.FootY.Float(), o.FootX.Float(), o.FootY.Float())
				}
			}
		}
	}
}

// A stand-in with a part that nobody knows the strength of counts as nothing, says so,
// and leaves the margin where it is without it.
func TestStandInWithoutStrength(t *testing.T) {
	whole, _ := standingOf(t, false)
	lacking, report := standingOf(t, false, "      cleat: 12 kN\n      deck_fitting: 15 kN\n    - id: topping-lift", "      deck_fitting: 15 kN\n    - id: topping-lift")
	without, _ := standingOf(t, false, "fit: [main-halyard, topping-lift]", "fit: [topping-lift]", "remove: [main-halyard, topping-lift]", "remove: [topping-lift]")
	if got, want := lacking.Steps[1].During.Margin, without.Steps[1].During.Margin; got != want {
		t.Errorf("with a stand-in of unknown strength %g are held, without it %g", got, want)
	}
	if slices.Equal(whole.Steps[0].During.Rose, lacking.Steps[0].During.Rose) {
		t.Error("the stand-in makes no difference at all")
	}
	if u := lacking.Steps[0].During.Uncounted; len(u) != 1 || u[0].Name != "main-halyard" || !strings.Contains(u[0].Because, "cleat") {
		t.Errorf("counted as nothing are %v", u)
	}
	if !slices.ContainsFunc(report.Findings, func(f finding.Finding) bool { return f.Subject == "stand_in:main-halyard" }) {
		t.Error("no finding says that its strength is not known")
	}
}

// What is missing leaves every step untold, asks for the reading, and never holds.
func TestStandingLacks(t *testing.T) {
	for what, change := range map[string][2]string{
		"/boat/mast/height":             {"    height: 13.7 m\n", ""},
		"/boat/mast/section/long":       {"long: 170 mm, broad: 115 mm, ", ""},
		"/standing/gust":                {"  gust: 15 kn\n", ""},
		"/standing/roll/angle":          {"angle: 3 deg, ", ""},
		"/boat/mast/mass":               {"    mass: 62 kg\n", ""},
		"/boat/mast/spreaders":          {"    spreaders:\n      - { height: 7.3 m, half_length: 1.05 m, sweep: 0 mm }\n", ""},
		"/standing/stand_ins/2/lower/y": {"lower: { x: -6 m, y: 1 m, z: 1.7 m }", "lower: { x: -6 m, z: 1.7 m }"},
	} {
		s, report := standingOf(t, true, change[0], change[1])
		if s.Before != nil || s.Steps[1].During != nil || s.Suggested.Found {
			t.Errorf("without %s something is told: %+v", what, s.Before)
		}
		open := 0
		for _, f := range report.Findings {
			if strings.HasPrefix(f.Subject, "step:") && f.Outcome == finding.CannotTell {
				open++
			}
		}
		if open < 2*len(s.Steps) {
			t.Errorf("without %s only %d judgements of %d steps can't be told", what, open, len(s.Steps))
		}
		asked := slices.ContainsFunc(s.Measure, func(m finding.Measure) bool { return strings.HasPrefix(m.At.Pointer, what) || m.At.Pointer == what })
		if !asked && !strings.Contains(s.Suggested.Says, what) {
			t.Errorf("nobody is asked for %s: %+v", what, s.Measure)
		}
	}
}

// A plate that is changed counts as new from then on; before that the old one does.
func TestStandingRenews(t *testing.T) {
	s, _ := standingOf(t, false)
	pull := func(step int, name string) float64 {
		for _, h := range s.Steps[step].After.Holding {
			if h.Name == name {
				return h.Pull
			}
		}
		t.Fatalf("%s does not hold in step %d", name, step)
		return 0
	}
	if before, after := pull(0, "fore-lower-port"), pull(2, "fore-lower-port"); before != 3400 || math.Abs(after-35500.0/3) > 1 {
		t.Errorf("the fore lower is counted on for %g N on its old plate and %g N on its new one", before, after)
	}
}

// A worse wind, a missing stand-in, a stay more off: the margins fall, and rules say so.
func TestStandingGetsWorse(t *testing.T) {
	calm, _ := standingOf(t, false)
	windy, report := standingOf(t, false, "gust: 15 kn\n  storm", "gust: 44 kn\n  storm")
	for i := range calm.Steps {
		if !(windy.Steps[i].During.Margin < calm.Steps[i].During.Margin) {
			t.Errorf("step %d holds %g times in 44 kn and %g in 15", i+1, windy.Steps[i].During.Margin, calm.Steps[i].During.Margin)
		}
	}
	if !slices.ContainsFunc(report.Findings, func(f finding.Finding) bool {
		return strings.HasPrefix(f.Subject, "step:") && f.Outcome == finding.Fails && f.Grade == finding.Mend
	}) {
		t.Error("44 kn of gust are no finding")
	}
	alone, _ := standingOf(t, false, "      replace: [fore-lower-plate-port]\n      attended: yes\n      on: 2027-04-11", "      replace: [fore-lower-plate-port]\n      attended: no\n      on: 2027-04-11\n      until: 2027-04-11")
	if got := alone.Steps[2].During; got.Gust < 44.9 || got.Wanted != 1.5 || got.Margin >= calm.Steps[2].During.Margin {
		t.Errorf("alone, a step is reckoned with %g kn and %g wanted", got.Gust, got.Wanted)
	}
}

// Nobody looks for an order without being asked, and the one that is found holds.
func TestStandingSuggests(t *testing.T) {
	if s, _ := standingOf(t, false); s.Suggested != nil {
		t.Error("an order was looked for though nobody asked")
	}
	s, _ := standingOf(t, true)
	if !s.Suggested.Found || len(s.Suggested.Steps) == 0 || !s.Suggested.Exact {
		t.Fatalf("%+v", s.Suggested)
	}
	for _, step := range s.Suggested.Steps {
		if step.During.Margin < step.During.Wanted || step.During.AfterLoss < step.During.WantedAfterLoss {
			t.Errorf("%s does not hold what is wanted", step.ID)
		}
	}
	if len(s.Suggested.Findings) > 0 {
		t.Errorf("the order that is found has %v", s.Suggested.Findings[0].Message)
	}
	// It is judged as if it stood in the plan: in 18 kn a stay is off in too much wind.
	windy, _ := standingOf(t, true, "gust: 15 kn\n  storm", "gust: 18 kn\n  storm")
	if !slices.ContainsFunc(windy.Suggested.Findings, func(f finding.Finding) bool {
		return f.Rule == "gust-below-fifteen-knots" && f.Outcome == finding.Fails && strings.HasPrefix(f.Subject, "step:change-")
	}) {
		t.Errorf("nothing is found of an order in 18 kn: %v", windy.Suggested.Findings)
	}
	none, _ := standingOf(t, true, "gust: 15 kn\n  storm", "gust: 60 kn\n  storm", "storm_gust: 45 kn", "storm_gust: 60 kn")
	if none.Suggested.Found || !strings.Contains(none.Suggested.Says, "unstep the mast, or hold it with a crane") {
		t.Errorf("in 60 kn: %s", none.Suggested.Says)
	}
}

// Orders of work that have brought masts down: each is refused by the right rule, on the
// right step.
func TestDangerousOrders(t *testing.T) {
	const backstay = "      replace: [backstay-plate]\n      attended: yes\n      on: 2027-04-10\n      aloft: no\n      below_water: no"
	const lower = "      replace: [fore-lower-plate-port]\n      attended: yes\n      on: 2027-04-11\n      aloft: no\n      below_water: no"
	const brace = "      fit: [main-halyard, topping-lift]\n      attended: yes\n      on: 2027-04-10\n"
	for name, c := range map[string]struct {
		changes []string
		rule    string
		subject string
		grade   finding.Grade
	}{
		"a man aloft while a stay is off":        {[]string{backstay, strings.Replace(backstay, "aloft: no", "aloft: yes", 1)}, "nobody-aloft-with-a-stay-off", "step:backstay-plate-out", finding.Stop},
		"forestay and backstay off together":     {[]string{backstay, strings.Replace(backstay, "replace: [backstay-plate]", "replace: [backstay-plate, forestay]", 1)}, "forestay-or-backstay-not-both", "step:backstay-plate-out", finding.Stop},
		"the backstay off with nothing for it":   {[]string{brace, strings.Replace(brace, "      fit: [main-halyard, topping-lift]\n", "", 1), "remove: [main-halyard, topping-lift]", "fit: []"}, "end-stay-has-two-stand-ins", "step:backstay-plate-out", finding.Stop},
		"cap and lower of a side off together":   {[]string{lower, strings.Replace(lower, "replace: [fore-lower-plate-port]", "replace: [fore-lower-plate-port, cap-plate-port]", 1)}, "never-cap-and-lower-of-a-side", "step:fore-lowers", finding.Mend},
		"a bolt out near the water afloat":       {[]string{lower, strings.Replace(lower, "below_water: no", "below_water: yes", 1)}, "nothing-out-near-the-water-afloat", "step:fore-lowers", finding.Stop},
		"a storm while nobody stands by":         {[]string{lower, strings.Replace(strings.Replace(lower, "attended: yes", "attended: no", 1), "on: 2027-04-11", "on: 2027-04-11\n      until: 2027-04-11", 1), "storm_gust: 45 kn", "storm_gust: 75 kn"}, "margin-while-unattended", "step:fore-lowers", finding.Stop},
		"weeks without an end":                   {[]string{lower, strings.Replace(lower, "attended: yes", "attended: no", 1), "[fore-lower-plate-starboard]\n      attended: yes\n      on: 2027-04-11\n", "[fore-lower-plate-starboard]\n      attended: yes\n"}, "stay-off-has-an-end", "step:fore-lowers", finding.Mend},
		"a gale while somebody stands by":        {[]string{"gust: 15 kn\n  storm_gust: 45 kn", "gust: 70 kn\n  storm_gust: 70 kn"}, "margin-while-attended", "step:fore-lowers", finding.Stop},
		"a stand-in that nobody knows":           {[]string{"      mast_fitting: 15 kN\n", ""}, "stand-in-strength-is-known", "stand_in:topping-lift", finding.Watch},
		"a deck-stepped mast left alone":         {[]string{"mast_step: keel-stepped", "mast_step: deck-stepped", "    deck: 1.75 m\n", "", lower, strings.Replace(lower, "attended: yes", "attended: no", 1)}, "deck-stepped-mast-is-not-left-alone", "step:fore-lowers", finding.Watch},
		"wedges out":                             {[]string{"wedged: yes", "wedged: no"}, "wedges-in", "step:fore-lowers", finding.Watch},
		"nobody says whether a man goes aloft":   {[]string{lower, strings.Replace(lower, "      aloft: no\n", "", 1)}, "nobody-aloft-with-a-stay-off", "step:fore-lowers", finding.Mend},
		"nobody says whether somebody stands by": {[]string{lower, strings.Replace(lower, "      attended: yes\n", "", 1)}, "margin-while-attended", "step:fore-lowers", finding.Mend},
	} {
		t.Run(name, func(t *testing.T) {
			_, report := standingOf(t, false, c.changes...)
			for _, f := range report.Findings {
				if f.Rule == c.rule && f.Subject == c.subject {
					if f.Grade != c.grade || f.At.Line == 0 || !strings.HasSuffix(f.At.File, "quillfish-order.yaml") {
						t.Errorf("%s at %+v, wanted %s: %s", f.Grade, f.At, c.grade, f.Message)
					}
					return
				}
			}
			t.Errorf("%s finds nothing of %s", c.rule, c.subject)
		})
	}
}
