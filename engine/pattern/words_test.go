package pattern_test

import (
	"slices"
	"strings"
	"testing"

	"chainwale/engine/pattern"
)

// TestLongID: an id that no drawing's title holds is cut and numbered, and the list has
// it in full.
func TestLongID(t *testing.T) {
	long := strings.Repeat("the-long-plate-", 4) + "aft"
	of := []pattern.Copy{{Boat: "Quillfish", Side: "port"}}
	parts := pattern.Named([]pattern.Part{{Name: long, Copies: of}, {Name: "short", Copies: of}, {Name: long + "-two", Copies: of}})
	for i, want := range []string{long[:38] + "-1", "short", long[:38] + "-2"} {
		if parts[i].Name != want {
			t.Errorf("%q, want %q", parts[i].Name, want)
		}
	}
	grouped, problems := patterns(t, "q.yaml", strings.ReplaceAll(boat(t, "quillfish-mended.yaml"), "cap-plate", long))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	grouped = pattern.Named(grouped)
	if err := grouped[0].Drawing().Check(); err != nil {
		t.Error(err)
	}
	if !strings.Contains(string(pattern.List(grouped)), long+"-port") {
		t.Error("the list does not name the fitting in full")
	}
}

// TestTooSharpToLayFlat: the problem stands at the fold's radius.
func TestTooSharpToLayFlat(t *testing.T) {
	src := strings.Replace(boat(t, "quillfish-mended.yaml"), "angle: 8 deg, way: toward, radius: 12 mm }\n    grain", "angle: 8 deg, way: toward, radius: 1 mm }\n    grain", 1)
	_, problems := patterns(t, "q.yaml", src)
	if len(problems) != 1 || !strings.HasSuffix(problems[0].At.Pointer, "/folds/1/radius") || !strings.Contains(problems[0].Message, "its lower fold has an inside radius of 1 mm in 8 mm") {
		t.Fatal(problems)
	}
	strip := strings.Replace(src, "radius: 1 mm }\n    grain", "radius: 1 mm, neutral_line: 0.3 }\n    grain", 1)
	if _, problems := patterns(t, "q.yaml", strip); len(problems) > 0 {
		t.Errorf("with a test strip's neutral line: %v", problems)
	}
}

// TestWhatTheShopIsAsked: the drawing asks for what the match is reckoned with, says how a
// pin's hole is finished and which hole is which, and what nobody has said.
func TestWhatTheShopIsAsked(t *testing.T) {
	p := aftPlate(t)
	d := p.Drawing()
	for _, want := range []string{"holes: centres within 0.2 mm of their places in the flat", "reamed to 13.1 H11: 0 to +0.11 mm"} {
		if !slices.Contains(d.Tolerances, want) {
			t.Errorf("%q is not in %q", want, d.Tolerances)
		}
	}
	if d.Holes[0].Make != "ream to 13.1 H11" || d.Holes[4].Called != "low" {
		t.Errorf("%+v", d.Holes)
	}
	if w := strings.Join(aftPlate(t, "head: hex", "head: countersunk").Warnings, "\n"); !strings.Contains(w, "heads are countersunk: which face") {
		t.Error(w)
	}
	// Without a name it is called by its place; the drawing's numbers are others than the
	// plan's.
	near := aftPlate(t, "{ name: third, role: bolt, diameter: 10 mm, along: 260 mm }", "{ role: bolt, diameter: 7 mm, along: 260 mm }", "      - { hole: third, along: 120 mm, diameter: 10 mm, is: round, within: 0.2 mm }\n", "")
	if w := strings.Join(near.Warnings, "\n"); !strings.Contains(w, "the bolt hole at 238 mm along is narrower than the plate is thick") {
		t.Error(w)
	}
	later := aftPlate(t, "name: pin, role: pin, diameter: 13.1 mm, along: 22 mm", "name: pin, role: pin, diameter: 13.1 mm, along: 32 mm", "hole: pin, leg: 1, along: 22 mm", "hole: pin, leg: 1, along: 32 mm",
		"      - { from: pin, to: top, length: 115.7 mm }\n", "", "from: pin, to: low, length: 297.9 mm", "from: top, to: low, length: 183.1 mm")
	if l := later.Drawing().Later; len(l) != 1 || l[0].Make != "ream to 13.1 H11" || !slices.Contains(later.Warnings, "hole pin is drilled after folding: mark its centre in the flat") {
		t.Errorf("%+v\n%q", l, later.Warnings)
	}
	src := boat(t, "quillfish-mended.yaml")
	from, to := strings.Index(src, "    # the old plate on the bench\n"), strings.Index(src, "    # the holes in the knee, from")
	parts, problems := patterns(t, "q.yaml", src[:from]+src[to:])
	if len(problems) > 0 || !slices.ContainsFunc(parts, func(p pattern.Part) bool {
		return slices.Contains(p.Warnings, "made to holes measured in the hull: make one, try it at the boat, then make the rest")
	}) {
		t.Errorf("%v: a part that is made to the hull's holes alone is not said to be", problems)
	}
}

// TestSkewOnThePressSheet: a fold line that is turned is told by both sides of the strip,
// as on the drawing: 40.5 mm and 20 mm times tan(8 deg) either way.
func TestSkewOnThePressSheet(t *testing.T) {
	text := string(aftPlate(t, "angle: 12 deg, way: toward, radius: 12 mm }\n      - { name: lower", "angle: 12 deg, way: toward, radius: 12 mm, skew: 8 deg }\n      - { name: lower").PressSheet(0))
	if !strings.Contains(text, "37.7 mm at the lower edge, 43.3 mm at the upper") {
		t.Error(text)
	}
	steep := string(aftPlate(t, "angle: 12 deg, way: toward, radius: 12 mm }\n      - { name: lower", "angle: 12 deg, way: toward, radius: 12 mm, skew: 12 deg }\n      - { name: lower").PressSheet(0))
	if strings.Count(steep, "card model") != 1 {
		t.Error(steep)
	}
}
