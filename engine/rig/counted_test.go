package rig

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// heldBy is what a state counts on by name.
func heldBy(t *testing.T, s State, name string) Held {
	t.Helper()
	for _, h := range s.On {
		if h.Name == name {
			return h
		}
	}
	t.Fatalf("%s does not hold", name)
	return Held{}
}

func before(t *testing.T, r Rig) State {
	t.Helper()
	got, err := Standing{Rig: r, Demand: Demand{PerSquare: 8000, Gust: 8}}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	return got.Before
}

// A turnbuckle that is weaker than its wire is all that the wire is counted on for.
func TestWeakEnds(t *testing.T) {
	r := exampleRig()
	wire := r.Stays[0]
	whole := heldBy(t, before(t, r), wire.Name)
	r.Stays[0].Ends = whole.Allowable * 3 / 2
	half := heldBy(t, before(t, r), wire.Name)
	if math.Abs(half.Allowable-whole.Allowable/2) > 1e-6 || half.Governs != "its turnbuckle or terminal" {
		t.Errorf("half the ends hold %v, whole ones %v", half, whole)
	}
	r.Stays[0].Ends = 100 * wire.BreakLoad
	if again := heldBy(t, before(t, r), wire.Name); again != whole {
		t.Errorf("strong ends hold %v, not %v", again, whole)
	}
}

// A forestay on a bowsprit is counted on for no more than its bobstay's plate lets it be:
// what it carries at rest until somebody has looked, nothing with a crack in it.
func TestPlateUnderWhatIsNeeded(t *testing.T) {
	for _, c := range []struct {
		plate  Plate
		inLine bool
		most   float64
		says   string
	}{
		{Plate{}, false, 0.10, "the plate of bobstay, not seen"},
		{Plate{State: Seen}, false, 0.10, "the plate of bobstay, whose strength is not given"},
		{Plate{State: Cracked, Strength: 1e5}, false, 0, "a crack was seen"},
		{Plate{State: Seen, Strength: 1e5}, false, 1. / 3, "its wire"},
		{Plate{State: Seen, Strength: 3000}, false, 1. / 3, "its wire"},
		{Plate{State: Seen, Strength: 3000}, true, 1000, "the plate of bobstay"},
	} {
		r := exampleRig()
		at := slices.IndexFunc(r.Stays, func(s Stay) bool { return s.Role == Forestay })
		stay := &r.Stays[at]
		stay.Plate, stay.Needs, c.plate.Name = "stem", []string{"bobstay"}, "bobstay plate"
		r.Others = []Other{{Name: "bobstay", Plate: "bobstay plate", InLine: c.inLine}}
		r.Plates = append(r.Plates, Plate{Name: "stem", State: Seen, Strength: 1e6}, c.plate)
		want := c.most
		if want < 1 {
			want *= stay.BreakLoad
		}
		if h := heldBy(t, before(t, r), stay.Name); math.Abs(h.Allowable-want) > 1e-6 || !strings.Contains(h.Governs, c.says) {
			t.Errorf("%+v: %v, not %g", c.plate, h, want)
		}
	}
}

// Two stand-ins on one plate share what it carries.
func TestStandInsShareAPlate(t *testing.T) {
	r := exampleRig()
	plate := r.Stays[0].Plate
	if plate == "" {
		plate = "under it"
		r.Stays[0].Plate, r.Plates = plate, append(r.Plates, Plate{Name: plate, State: Seen, Strength: 1e5})
	}
	strong := StandInStrength{Path: MadeFast, Elements: []ElementStrength{{LineElement, 1e6}, {KnotElement, 1e6}, {MastElement, 1e6}, {PlateElement, 1e6}}}
	for _, name := range []string{"one", "two"} {
		r.StandIns = append(r.StandIns, StandIn{Name: name, Line: r.Stays[0].Line, Strength: strong, Plate: plate})
	}
	got, err := Standing{Rig: r, Demand: Demand{PerSquare: 8000, Gust: 8}, Steps: []Step{
		{Fit: []string{"one"}, Remove: []string{r.Stays[0].Name}, Attended: true}, {Fit: []string{"two"}, Attended: true}}}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	alone := heldBy(t, got.Steps[0].During, "one").Allowable
	for _, name := range []string{"one", "two"} {
		if h := heldBy(t, got.Steps[1].During, name); math.Abs(h.Allowable-alone/2) > 1e-6 {
			t.Errorf("%s of two is counted on for %g, one alone for %g", name, h.Allowable, alone)
		}
	}
}

// A share above the usual one is told among the assumptions.
func TestGenerousCreditIsTold(t *testing.T) {
	told := func(c Credit) string {
		r := exampleRig()
		r.Credit = c
		got, err := Standing{Rig: r, Demand: Demand{PerSquare: 8000, Gust: 8}}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		return strings.Join(got.Assumptions, "\n")
	}
	if text := told(Credit{}); strings.Contains(text, "more than the usual") {
		t.Error(text)
	}
	for _, c := range []Credit{{Wire: 0.5}, {UnseenPlate: 0.3}, {StandIn: 0.4}, {Unattended: 0.2}} {
		if text := told(c); strings.Count(text, "more than the usual") != 1 {
			t.Errorf("%+v: %s", c, text)
		}
	}
}

// Stays that all lead one way hold nothing of a wind from right behind them either.
func TestRoseOfOneStay(t *testing.T) {
	r := exampleRig()
	r.Stays = []Stay{{Name: "only", Role: InnerForestay, BreakLoad: 40000, Line: StayLine{Foot: Point{X: 4000}, Height: 13000}}}
	s := before(t, r)
	for deg := 0.0; deg < 360; deg += 5 {
		if v := s.UsedUpFrom(deg, s.Wanted); v != 0 {
			t.Errorf("from %g deg one stay holds a gust of %g m/s", deg, v)
		}
	}
}
