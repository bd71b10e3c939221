package rig

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// exampleRig is a masthead rig of eight stays, 8 mm caps and 7 mm lowers, each on a
// plate of its own that nobody has seen, with two halyards to bow and stern.
func exampleRig() Rig {
	r := Rig{Masthead: 13000}
	add := func(name string, role StayRole, x, y, h, load float64) {
		plate := name + " plate"
		r.Stays = append(r.Stays, Stay{Name: name, Role: role, Line: StayLine{Foot: Point{x, y, 0}, Height: h}, BreakLoad: load, Plate: plate})
		r.Plates = append(r.Plates, Plate{Name: plate, Strength: 1.2 * load, Renewed: 1.6 * load})
	}
	add("cap port", CapShroud, 0, 1450, 13000, 45500)
	add("cap starboard", CapShroud, 0, -1450, 13000, 45500)
	add("fore lower port", ForeLower, 550, 1400, 6600, 35500)
	add("fore lower starboard", ForeLower, 550, -1400, 6600, 35500)
	add("aft lower port", AftLower, -550, 1400, 6600, 35500)
	add("aft lower starboard", AftLower, -550, -1400, 6600, 35500)
	add("forestay", Forestay, 4200, 0, 13000, 45500)
	add("backstay", Backstay, -6300, 0, 13000, 45500)
	line := func(name string, x, y float64) {
		r.StandIns = append(r.StandIns, StandIn{Name: name, Line: StayLine{Foot: Point{x, y, 600}, Height: 12900}, Strength: halyard(20000)})
	}
	line("jib halyard to port bow", 3800, 500)
	line("spare halyard to starboard bow", 3800, -500)
	line("main halyard to port", -300, 1500)
	line("topping lift to starboard", -300, -1500)
	return r
}

// exampleDemand is a bare mast at 15 kn of wind, gusts to 22, with a five-degree roll.
func exampleDemand(t *testing.T) Demand {
	t.Helper()
	w := must(MastWindage{[]Aloft{{"mast", 170, 0, 13000, 1}, {"rigging", 60, 0, 13000, 0.5}}}.Reckon())(t)
	return Demand{PerSquare: w.PerSquare, Roll: 0.3e6, Gust: 15 * KnotInMetresPerSecond}
}

func TestStandingThroughSteps(t *testing.T) {
	s := Standing{Rig: exampleRig(), Demand: exampleDemand(t), Steps: []Step{
		{Name: "rig the bow", Fit: []string{"jib halyard to port bow", "spare halyard to starboard bow"}, Attended: true},
		{Name: "forestay", Replace: []string{"forestay plate"}, Attended: true},
		{Name: "lower", Remove: []string{"fore lower port"}, Days: 14},
		{Name: "lower back", Fit: []string{"fore lower port"}, Attended: true},
	}}
	r := must(s.Reckon())(t)
	if len(r.Steps) != 4 || len(r.Before.On) != 8 || r.Weakest < 0 {
		t.Fatalf("%+v", r)
	}
	rigged, forestay, lower, back := r.Steps[0], r.Steps[1], r.Steps[2], r.Steps[3]
	if !(rigged.During.Margin >= r.Before.Margin) || len(rigged.During.On) != 10 {
		t.Errorf("stand-ins take %g to %g", r.Before.Margin, rigged.During.Margin)
	}
	if !slices.Contains(forestay.During.Off, "forestay") || len(forestay.After.Off) != 0 || forestay.During.ByDirection[4] >= rigged.During.ByDirection[4] {
		t.Errorf("the forestay: %+v", forestay.During)
	}
	if len(forestay.During.Concerns) != 0 {
		t.Errorf("two stand-ins lead the forestay's way: %+v", forestay.During.Concerns)
	}
	if lower.During.Gust != StormGust || lower.During.Wanted != 1.5 || len(lower.Tighten) != 15 {
		t.Errorf("nobody stands by for 14 days: gust %g, wanted %g, %d days to tighten", lower.During.Gust, lower.During.Wanted, len(lower.Tighten))
	}
	if lower.During.Lost == "" || lower.During.AfterLoss > lower.During.Margin || lower.During.Governs == "" || lower.During.Toward == "" {
		t.Errorf("%+v", lower.During)
	}
	for _, value := range []float64{lower.During.Margin, lower.During.AfterLoss, lower.During.UsedUp, lower.During.Worst, lower.During.Wind, lower.During.On[0].Allowable} {
		checkWorking(t, lower.During.Working(), value)
	}
	if len(back.After.Off) != 0 {
		t.Errorf("off at the end: %v", back.After.Off)
	}
	if got := heldOf(back.After, "forestay"); got.Governs != "its wire" || math.Abs(got.Allowable-45500.0/3) > 1e-9 {
		t.Errorf("the renewed forestay: %+v", got)
	}
	if got := heldOf(back.After, "backstay"); math.Abs(got.Allowable-4550) > 1e-9 || !strings.Contains(got.Governs, "not because it is sound") {
		t.Errorf("the old backstay: %+v", got)
	}
	if !strings.Contains(strings.Join(r.Assumptions, "\n"), "no margin says that the mast is safe") {
		t.Error("the assumptions don't say that no mast is safe")
	}
}

func heldOf(s State, name string) Held {
	for _, h := range s.On {
		if h.Name == name {
			return h
		}
	}
	return Held{}
}

// TestWorth: what a stay is counted on for hangs on wire, plate and what was seen of it.
func TestWorth(t *testing.T) {
	stay := Stay{BreakLoad: 30000}
	rig := Rig{Credit: UsualCredit}
	for _, c := range []struct {
		plate  Plate
		atRest float64
		want   float64
		says   string
	}{
		{Plate{}, 0, 3000, "not seen"},
		{Plate{}, 4500, 4500, "not seen"},
		{Plate{Strength: 6000}, 0, 2000, "its plate"},
		{Plate{State: Seen, Strength: 60000}, 0, 10000, "its wire"},
		{Plate{State: Seen, Strength: 15000}, 0, 5000, "its plate"},
		{Plate{State: Seen}, 0, 3000, "strength is not given"},
		{Plate{State: New, Strength: 45000}, 0, 10000, "its wire"},
		{Plate{State: New}, 0, 3000, "strength is not given"},
		{Plate{State: Seen, Strength: 45000, Renewed: 45000}.renewed(), 0, 10000, "its wire"},
		{Plate{State: Seen, Strength: 45000}.renewed(), 0, 3000, "strength is not given"},
		{Plate{State: Cracked, Strength: 45000}, 4500, 0, "a crack was seen"},
		{Plate{State: Cracked, Strength: 45000, Renewed: 45000}.renewed(), 0, 10000, "its wire"},
	} {
		stay.AtRest = c.atRest
		got := rig.worth(stay, c.plate, "its plate")
		if math.Abs(got.pull-c.want) > 1e-9 || !strings.Contains(got.governs, c.says) {
			t.Errorf("%+v at rest %g: %v; want %g, %s", c.plate, c.atRest, got, c.want, c.says)
		}
		sound := c.plate.Strength > 0 && c.plate.State != Unseen || c.plate.State == Cracked
		if got.onTrust == sound {
			t.Errorf("%+v: on trust is %v", c.plate, got.onTrust)
		}
	}
}

// TestStandInsThatCountAsNothing: of unknown strength, or on a plate that bears a stay.
func TestStandInsThatCountAsNothing(t *testing.T) {
	s := Standing{Rig: exampleRig(), Demand: exampleDemand(t), Steps: []Step{{Fit: []string{"jib halyard to port bow", "main halyard to port"}, Attended: true}, {Remove: []string{"cap port"}, Attended: true}}}
	s.Rig.StandIns[0].Strength.Elements[2].Strength = 0
	s.Rig.StandIns[2].Plate = "cap port plate"
	r := must(s.Reckon())(t)
	first := r.Steps[0].During
	if len(first.Uncounted) != 2 || !strings.Contains(first.Uncounted[0].Governs, "sheave") || !strings.Contains(first.Uncounted[1].Governs, "bears a stay already") {
		t.Errorf("%+v", first.Uncounted)
	}
	if first.Margin != r.Before.Margin {
		t.Errorf("what counts as nothing takes %g to %g", r.Before.Margin, first.Margin)
	}
	if held := heldOf(r.Steps[1].During, "main halyard to port"); held.Allowable != 4000 {
		t.Errorf("with the cap off its plate bears the halyard: %+v", held)
	}
}

// TestConcerns: what the trade doesn't do whatever the numbers say.
func TestConcerns(t *testing.T) {
	for _, c := range []struct {
		fit, off []string
		about    []Matter
	}{
		{nil, []string{"fore lower port"}, nil},
		{nil, []string{"forestay"}, []Matter{ForeAndAft}},
		{[]string{"jib halyard to port bow"}, []string{"forestay plate"}, []Matter{ForeAndAft}},
		{[]string{"jib halyard to port bow", "spare halyard to starboard bow"}, []string{"forestay"}, nil},
		{[]string{"jib halyard to port bow", "spare halyard to starboard bow"}, []string{"backstay"}, []Matter{ForeAndAft}},
		{nil, []string{"forestay", "backstay"}, []Matter{ForeAndAft, ForeAndAft, BothEnds}},
		{nil, []string{"cap port", "aft lower port"}, []Matter{CapAndLower}},
		{nil, []string{"cap port", "aft lower starboard"}, nil},
		{nil, []string{"cap port", "cap starboard"}, []Matter{CapsOff}},
	} {
		r := must(Standing{Rig: exampleRig(), Demand: exampleDemand(t), Steps: []Step{{Fit: c.fit, Remove: c.off, Attended: true}}}.Reckon())(t)
		var about []Matter
		for _, concern := range r.Steps[0].During.Concerns {
			about = append(about, concern.About)
		}
		if !slices.Equal(about, c.about) {
			t.Errorf("%v off with %v: %v, want %v", c.off, c.fit, about, c.about)
		}
	}
}

// TestBadStandings are refused in sentences that name the stay, all of them at once.
func TestBadStandings(t *testing.T) {
	steps := func(steps ...Step) func(*Standing) { return func(s *Standing) { s.Steps = steps } }
	for _, c := range []struct {
		says string
		make func(*Standing)
	}{
		{"step 2 (again): cap port is off already", steps(Step{Remove: []string{"cap port"}}, Step{Name: "again", Remove: []string{"cap port"}})},
		{"step 2: cap port is off already", steps(Step{Remove: []string{"cap port plate"}}, Step{Remove: []string{"cap port"}})},
		{"step 2: cap port plate is out already", steps(Step{Remove: []string{"cap port plate"}}, Step{Replace: []string{"cap port plate"}})},
		{"step 1: cap port is on already", steps(Step{Fit: []string{"cap port"}})},
		{"step 1: cap port plate is in already", steps(Step{Fit: []string{"cap port plate"}})},
		{"step 3: cap port can't be put on while its plate cap port plate is out", steps(Step{Remove: []string{"cap port"}}, Step{Remove: []string{"cap port plate"}}, Step{Fit: []string{"cap port"}})},
		{"step 1: nothing on this rig is called \"mizzen\"", steps(Step{Remove: []string{"mizzen"}})},
		{"jib halyard to port bow is up already", steps(Step{Fit: []string{"jib halyard to port bow"}}, Step{Fit: []string{"jib halyard to port bow"}})},
		{"main halyard to port is not up, so it can't be taken down", steps(Step{Remove: []string{"main halyard to port"}})},
		{"it can't last -3 days", steps(Step{Days: -3})},
		{"main halyard to port is made fast to cap port plate, which is out", func(s *Standing) {
			s.Rig.StandIns[2].Plate = "cap port plate"
			s.Steps = []Step{{Fit: []string{"main halyard to port"}, Remove: []string{"cap port plate"}}}
		}},
		{"cap port is attached at 14000 mm, above the masthead at 13000 mm", func(s *Standing) { s.Rig.Stays[0].Line.Height = 14000 }},
		{"cap port: its plate stands on the centreline", func(s *Standing) { s.Rig.Stays[0].Line.Foot.Y = 0 }},
		{"cap port: the height of the attachment must be above 0 mm, not -6600", func(s *Standing) { s.Rig.Stays[0].Line.Height = -6600 }},
		{"break load of cap port", func(s *Standing) { s.Rig.Stays[0].BreakLoad = 0 }},
		{"cap port can't stand at rest with 40.0 kN", func(s *Standing) { s.Rig.Stays[0].AtRest = 40000 }},
		{"cap port lands on \"nowhere\"", func(s *Standing) { s.Rig.Stays[0].Plate = "nowhere" }},
		{"topping lift to starboard lands on \"nowhere\"", func(s *Standing) { s.Rig.StandIns[3].Plate = "nowhere" }},
		{"\"cap port\" stands twice", func(s *Standing) { s.Rig.StandIns[0].Name = "cap port" }},
		{"has no name", func(s *Standing) { s.Rig.Stays[0].Name = "" }},
		{"is no state of a plate", func(s *Standing) { s.Rig.Plates[0].State = "shiny" }},
		{"no stay is given", func(s *Standing) { s.Rig.Stays = nil }},
		{"no stays, no mast", func(s *Standing) { s.Rig.DeckStepped, s.Rig.Partners = true, 1e6 }},
		{"moment of the wind is missing", func(s *Standing) { s.Demand.PerSquare = 0 }},
		{"gust while somebody stands by must be above 0", func(s *Standing) { s.Demand.Gust = math.NaN() }},
		{"is below the one while somebody does", func(s *Standing) { s.Demand.Gust, s.Demand.Storm = 20, 15 }},
		{"margin of 0.5", func(s *Standing) { s.Demand.Wanted = 0.5 }},
		{"at most 1, not 2", func(s *Standing) { s.Rig.Credit.Wire = 2 }},
	} {
		s := Standing{Rig: exampleRig(), Demand: exampleDemand(t)}
		c.make(&s)
		if _, err := s.Reckon(); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("got %v, want an error that says %q", err, c.says)
		}
	}
	two := Standing{Rig: exampleRig(), Demand: exampleDemand(t), Steps: []Step{{Remove: []string{"mizzen"}}, {Fit: []string{"cap port"}}}}
	if _, err := two.Reckon(); err == nil || strings.Count(err.Error(), "\n") != 1 {
		t.Errorf("two faults: %v", err)
	}
}

// TestStandingNeverPanics: any step whatever gives a result or a sentence, and one that
// is not refused has finite numbers.
func TestStandingNeverPanics(t *testing.T) {
	demand := exampleDemand(t)
	names := append(exampleRig().names(), "nowhere", "")
	rapid.Check(t, func(t *rapid.T) {
		s := Standing{Rig: exampleRig(), Demand: demand}
		some := rapid.SliceOfN(rapid.SampledFrom(names), 0, 4)
		for range rapid.IntRange(0, 4).Draw(t, "steps") {
			s.Steps = append(s.Steps, Step{Fit: some.Draw(t, "fit"), Remove: some.Draw(t, "remove"), Replace: some.Draw(t, "replace"), Attended: rapid.Bool().Draw(t, "attended"), Days: rapid.Float64Range(-1, 50).Draw(t, "days")})
		}
		r, err := s.Reckon()
		if err != nil {
			if err.Error() == "" {
				t.Fatal("an error that says nothing")
			}
			return
		}
		for _, step := range r.Steps {
			for _, state := range []State{step.During, step.After} {
				for _, v := range append([]float64{state.Margin, state.AfterLoss, state.Worst, state.UsedUp, state.Gone, state.Falls}, state.ByDirection[:]...) {
					if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
						t.Fatalf("%+v", state)
					}
				}
				if state.UsedUp > state.Gone {
					t.Fatalf("the wanted margin is used up at %g, all of it at %g", state.UsedUp, state.Gone)
				}
			}
		}
	})
}

// TestNothingHolds: with all of one side off there is no margin, and the words say so.
func TestNothingHolds(t *testing.T) {
	r := must(Standing{Rig: exampleRig(), Demand: exampleDemand(t), Steps: []Step{{Remove: []string{"cap port", "fore lower port", "aft lower port"}, Attended: true}}}.Reckon())(t)
	s := r.Steps[0].During
	if s.Margin != 0 || s.UsedUp != 0 || s.Gone != 0 || s.Holds || s.AfterLoss != 0 || s.Toward != "to starboard" {
		t.Errorf("%+v", s)
	}
	var all []string
	for _, stay := range exampleRig().Stays {
		all = append(all, stay.Name)
	}
	r = must(Standing{Rig: exampleRig(), Demand: exampleDemand(t), Steps: []Step{{Remove: all, Attended: true}}}.Reckon())(t)
	if s := r.Steps[0].During; s.Margin != 0 || s.Holds || !strings.Contains(s.Toward, "nothing holds it") {
		t.Errorf("%+v", s)
	}
}

// TestPartnersAddTheirMoment: counted on, they add the same in every direction.
func TestPartnersAddTheirMoment(t *testing.T) {
	rig := exampleRig()
	rig.Partners = 2e6
	with := must(Standing{Rig: rig, Demand: exampleDemand(t)}.Reckon())(t).Before
	bare := must(Standing{Rig: exampleRig(), Demand: exampleDemand(t)}.Reckon())(t).Before
	near(t, "worst", with.Worst, bare.Worst+2e6, 1e-9)
	for i := range directions {
		near(t, "each direction", with.ByDirection[i], bare.ByDirection[i]+2e6, 1e-9)
	}
	if with.Margin <= bare.Margin {
		t.Error("the partners add nothing")
	}
}

// A forestay on a bowsprit falls with its bobstay, and a plate under the bobstay counts
// as the forestay's.
func TestNeeds(t *testing.T) {
	r := exampleRig()
	for i := range r.Stays {
		if r.Stays[i].Role == Forestay {
			r.Stays[i].Needs = []string{"bobstay"}
		}
	}
	r.Others = []Other{{Name: "bobstay", Plate: "bobstay plate"}}
	r.Plates = append(r.Plates, Plate{Name: "bobstay plate"})
	for _, taken := range []string{"bobstay", "bobstay plate", "forestay"} {
		got, err := Standing{Rig: r, Demand: Demand{PerSquare: 8000, Gust: 8}, Steps: []Step{{Remove: []string{taken}, Attended: true}, {Fit: []string{taken}, Attended: true}}}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Contains(got.Steps[0].During.Off, "forestay") || got.Steps[0].During.Margin >= got.Before.Margin {
			t.Errorf("%s off: off are %v, margin %g of %g", taken, got.Steps[0].During.Off, got.Steps[0].During.Margin, got.Before.Margin)
		}
		if after := got.Steps[1].After; len(after.Off) > 0 || after.Margin != got.Before.Margin {
			t.Errorf("%s back on: off are still %v, margin %g of %g", taken, after.Off, after.Margin, got.Before.Margin)
		}
	}
	_, err := Standing{Rig: r, Demand: Demand{PerSquare: 8000, Gust: 8}, Steps: []Step{{Remove: []string{"bobstay"}}, {Remove: []string{"bobstay"}}}}.Reckon()
	if err == nil || !strings.Contains(err.Error(), "bobstay is off already") {
		t.Errorf("twice off: %v", err)
	}
}
