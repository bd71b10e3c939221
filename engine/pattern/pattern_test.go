package pattern_test

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/pattern"
	"chainwale/engine/plan"
)

// each makes a pattern for each fitting and side of a plan.
func each(t *testing.T, name, src string) ([]pattern.Part, []finding.Problem) {
	t.Helper()
	p, problems, err := plan.Parse(name, []byte(src))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	c, err := fact.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	facts, err := fact.Build(c, p, time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC))
	if err != nil {
		t.Fatal(err)
	}
	return pattern.Of(p, facts)
}

// patterns makes the patterns of a plan, equal ones together.
func patterns(t *testing.T, name, src string) ([]pattern.Part, []finding.Problem) {
	t.Helper()
	parts, problems := each(t, name, src)
	grouped, err := pattern.Group(parts...)
	if err != nil {
		t.Fatal(err)
	}
	return grouped, problems
}

func boat(t *testing.T, name string) string {
	t.Helper()
	src, err := os.ReadFile("../../testdata/boats/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return string(src)
}

// The new plates of the mended boat are four patterns for seven parts.
func TestMendedBoat(t *testing.T) {
	parts, problems := patterns(t, "quillfish-mended.yaml", boat(t, "quillfish-mended.yaml"))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	made := map[string]int{}
	for _, p := range parts {
		made[p.Name] = p.Quantity()
		if err := p.Flat.Check(); err != nil {
			t.Errorf("%s: %v", p.Name, err)
		}
	}
	for name, n := range map[string]int{"cap-plate": 2, "fore-lower-plate": 2, "aft-lower-plate": 2, "backstay-plate": 1} {
		if made[name] != n {
			t.Errorf("%d of %s, not %d", made[name], name, n)
		}
	}
	aft := parts[slices.IndexFunc(parts, func(p pattern.Part) bool { return p.Name == "aft-lower-plate" })]
	if len(aft.Folds) != 2 || aft.Folds[0].Angle != 12 || aft.Folds[0].Bend == nil || aft.Folds[1].Press == nil {
		t.Errorf("folds %+v", aft.Folds)
	}
	if len(aft.Orders) != 2 || !aft.Orders[0].Clear() || aft.PressWhy != "" {
		t.Errorf("orders %+v, %q", aft.Orders, aft.PressWhy)
	}
	if aft.Copies[1].Fitting != "aft-lower-plate-starboard" || aft.Copies[1].Hand != pattern.EitherHand {
		t.Errorf("copies %+v", aft.Copies)
	}
	if l := aft.Landing; l == nil || !(l.Miss < l.Clearance) || !(l.Uncertainty < l.Clearance) {
		t.Errorf("landing %+v", l)
	}
	if aft.Holes[1].Fastener != "bolt 3/8-16 UNC A4-70 hex" || aft.Metal.Name != "316L" || aft.Metal.Certificate == "" || aft.Grain != "across" || aft.Follows != "wire" {
		t.Errorf("%+v", aft)
	}
}

// The first boat's copy takes its folds from the old plate, and says that a hole is off.
func TestMeasuredPart(t *testing.T) {
	parts, problems := patterns(t, "quillfish.yaml", boat(t, "quillfish.yaml"))
	if len(problems) > 0 || len(parts) != 1 {
		t.Fatal(problems, len(parts))
	}
	p := parts[0]
	if p.Old == nil || math.Abs(p.Old.Length.Value-340) > 0.2 || !(p.Old.Length.Uncertainty > 0) {
		t.Errorf("the old part laid flat: %+v", p.Old)
	}
	if math.Abs(p.Folds[0].At-62.5) > 0.2 || math.Abs(p.Folds[1].At-101.5) > 0.2 {
		t.Errorf("fold lines at %v and %v", p.Folds[0].At, p.Folds[1].At)
	}
	if !slices.ContainsFunc(p.Warnings, func(s string) bool { return strings.HasPrefix(s, "hole low is 2.7") }) {
		t.Errorf("warnings %q", p.Warnings)
	}
}

const plain = `chainwale: 1
boat: { name: BOAT }
fittings:
  - id: plate
    state: new
    kind: chainplate
    side: both
    metal: { name: 316L }
    thickness: 8 mm
    outline: { width: 60 mm, length: 300 mm, end: round }
    folds: [{ name: only, along: 100 mm, angle: 15 deg, radius: 16 mm, way: toward }]
    holes:
      - { name: pin, role: pin, diameter: 13 mm, along: 30 mm }
      - { name: beside, role: bolt, diameter: 10 mm, along: 125 mm }
      - { name: off, role: bolt, diameter: 10 mm, along: 200 mm, across: 8 mm }
      - { name: last, role: bolt, diameter: 10 mm, drill_at_boat: yes }
`

// Holes that are made later are left out of the flat, and a part with a hole to one side
// has an other hand.
func TestHandsAndLaterHoles(t *testing.T) {
	parts, problems := patterns(t, "p.yaml", plain)
	if len(problems) > 0 || len(parts) != 1 {
		t.Fatal(problems, len(parts))
	}
	p := parts[0]
	if p.Quantity() != 2 || p.Copies[0].Hand != pattern.AsDrawn || p.Copies[1].Hand != pattern.OtherHand {
		t.Errorf("copies %+v", p.Copies)
	}
	var made []pattern.Making
	for _, h := range p.Holes {
		made = append(made, h.Made)
	}
	if later := p.Flat.Later; len(later) != 1 || later[0].Name != "beside" {
		t.Errorf("later %+v", later)
	}
	if want := []pattern.Making{pattern.Cut, pattern.AfterFolding, pattern.Cut, pattern.AtTheBoat}; !slices.Equal(made, want) {
		t.Errorf("made %v", made)
	}
	if len(p.Flat.Holes) != 2 || p.PressWhy == "" || p.Orders != nil {
		t.Errorf("%d holes are cut; press: %q", len(p.Flat.Holes), p.PressWhy)
	}
}

// What a drawing can't do without is told at its place, and nothing is drawn.
func TestGaps(t *testing.T) {
	for name, c := range map[string]struct{ old, new, want string }{
		"thickness":     {"    thickness: 8 mm\n", "", "without its thickness"},
		"metal":         {"metal: { name: 316L }", "metal: { condition: annealed }", "without its metal"},
		"end":           {", end: round", "", "without the shape of its loaded end"},
		"place":         {"diameter: 13 mm, along: 30 mm", "diameter: 13 mm", "without the place of each hole"},
		"way":           {", way: toward", "", "without the way each fold turns"},
		"hole in fold":  {"along: 125 mm", "along: 103 mm, drill_at_boat: no", ""},
		"no size":       {"diameter: 13 mm, ", "", "without the diameter of each hole"},
		"fold unplaced": {"along: 100 mm, angle", "angle", "without the place of each fold"},
	} {
		t.Run(name, func(t *testing.T) {
			parts, problems := patterns(t, "p.yaml", strings.Replace(plain, c.old, c.new, 1))
			if c.want == "" {
				if len(parts) != 1 || parts[0].Holes[1].Made != pattern.AfterFolding {
					t.Errorf("%v %v", parts, problems)
				}
				return
			}
			if len(parts) != 0 || len(problems) == 0 || !strings.Contains(problems[0].Message, c.want) || problems[0].At.Line == 0 {
				t.Errorf("%d parts, %v", len(parts), problems)
			}
		})
	}
}

// A part that stays, and one that is no plate, have no pattern.
func TestNoPattern(t *testing.T) {
	for _, c := range [][2]string{{"state: new", "state: kept"}, {"kind: chainplate", "kind: u-bolt"}} {
		if parts, problems := patterns(t, "p.yaml", strings.Replace(plain, c[0], c[1], 1)); len(parts)+len(problems) > 0 {
			t.Errorf("%s: %d parts, %v", c[1], len(parts), problems)
		}
	}
}

// Where nobody knows how near to a fold a hole may be, it is drilled after folding.
func TestFoldDistanceUnknown(t *testing.T) {
	parts, problems := patterns(t, "p.yaml", strings.NewReplacer("thickness: 8 mm", "thickness: 18 mm", "radius: 16 mm", "radius: 36 mm").Replace(plain))
	if len(problems) > 0 || len(parts) != 1 {
		t.Fatal(problems, len(parts))
	}
	for _, h := range parts[0].Holes {
		if h.Made == pattern.Cut {
			t.Errorf("%s is cut", h.Name)
		}
	}
}

// A drawing says of a hole that it is not known to meet any, and names the one whose place
// is known least well.
func TestLandingWarnings(t *testing.T) {
	const second = "      - { hole: second, along: 60.1 mm, diameter: 10 mm, is: round, within: 0.2 mm }\n"
	warned := func(src, want string) bool {
		parts, problems := patterns(t, "q.yaml", src)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		aft := parts[slices.IndexFunc(parts, func(p pattern.Part) bool { return p.Name == "aft-lower-plate" })]
		return slices.ContainsFunc(aft.Warnings, func(s string) bool { return strings.HasPrefix(s, want) })
	}
	const untold = "it can't be told whether the bolt holes meet"
	src := boat(t, "quillfish-mended.yaml")
	if warned(src, untold) || !warned(strings.Replace(src, second, "", 1), untold) {
		t.Error("a hole that meets nothing is warned of where there is none, or not where there is")
	}
	if !warned(strings.Replace(src, "hole: third, along: 120 mm, diameter: 10 mm, is: round, within: 0.2 mm", "hole: third, along: 120 mm, diameter: 10 mm, is: round, within: 4 mm", 1), "hole third may be 4.62 mm off") {
		t.Error("the hole whose place is known least well is not named")
	}
}

// The list of what is cut does not send a part to the cutter whose holes are not settled.
func TestUnsettledIsNotCut(t *testing.T) {
	const second = "      - { hole: second, along: 60.1 mm, diameter: 10 mm, is: round, within: 0.2 mm }\n"
	const settled = "not before its holes are settled"
	listed := func(src string) int {
		parts, problems := patterns(t, "q.yaml", src)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		return strings.Count(string(pattern.List(parts)), settled)
	}
	src := boat(t, "quillfish-mended.yaml")
	for what, c := range map[string]struct {
		src  string
		want int
	}{
		"as it is":                  {src, 0},
		"a hole that meets nothing": {strings.Replace(src, second, "", 1), 2},
		"a hole 6 mm off its mate":  {strings.Replace(src, "hole: second, along: 60.1 mm", "hole: second, along: 66.1 mm", 1), 2},
	} {
		if got := listed(c.src); got != c.want {
			t.Errorf("%s: %d parts wait for their holes, wanted %d", what, got, c.want)
		}
	}
}

// An oval pin hole is cut smaller all round and dressed by hand, for no reamer makes it;
// the drawing asks whether it is meant.
func TestOvalPinHole(t *testing.T) {
	parts, problems := patterns(t, "p.yaml", strings.Replace(plain, "diameter: 13 mm, along: 30 mm", "shape: oval, diameter: 13 mm, long: 20 mm, along: 30 mm", 1))
	if len(problems) > 0 || len(parts) != 1 {
		t.Fatal(problems, len(parts))
	}
	d := parts[0].Drawing()
	if err := d.Check(); err != nil {
		t.Error(err)
	}
	if h := d.Flat.Holes[0]; h.Long != 20 || h.Diameter != 13 || d.Holes[0].Cut != 12 || strings.Contains(d.Holes[0].Make, "ream to") {
		t.Errorf("%+v, %+v", h, d.Holes[0])
	}
	if !slices.Contains(d.Warnings, "the pin hole is oval, and a pin knocks in it: is that meant?") || slices.Contains(d.Warnings, "pin holes are cut undersize and reamed to size, square to the face") {
		t.Errorf("%q", d.Warnings)
	}
}
