package pattern_test

import (
	"slices"
	"strings"
	"testing"

	"chainwale/engine/pattern"
)

// boatNamed is the plain plan with another boat's name and texts replaced in pairs.
func boatNamed(t *testing.T, name string, replace ...string) []pattern.Part {
	t.Helper()
	src := strings.Replace(plain, "BOAT", name, 1)
	for i := 0; i < len(replace); i += 2 {
		if !strings.Contains(src, replace[i]) {
			t.Fatalf("the plan has no %q", replace[i])
		}
		src = strings.Replace(src, replace[i], replace[i+1], 1)
	}
	parts, problems := each(t, strings.ToLower(name)+".yaml", src)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return parts
}

func group(t *testing.T, parts ...[]pattern.Part) []pattern.Part {
	t.Helper()
	all, err := pattern.Group(slices.Concat(parts...)...)
	if err != nil {
		t.Fatal(err)
	}
	return pattern.Named(all)
}

// Over boats, the other hand's other hand is the part as drawn.
func TestGroupOverBoats(t *testing.T) {
	one, two := boatNamed(t, "Teal"), boatNamed(t, "Smew", "across: 8 mm", "across: -8 mm")
	other := boatNamed(t, "Garganey", "along: 200 mm", "along: 202 mm")
	all := group(t, one, two, other)
	if len(all) != 2 {
		t.Fatal(len(all))
	}
	var hands []string
	for _, c := range all[0].Copies {
		hands = append(hands, c.Boat+" "+c.Side+" "+string(c.Hand))
	}
	want := []string{"Teal port as drawn", "Teal starboard the other hand", "Smew port the other hand", "Smew starboard as drawn"}
	if !slices.Equal(hands, want) || all[1].Quantity() != 2 {
		t.Errorf("%q, and %d", hands, all[1].Quantity())
	}
	d := all[0].Drawing()
	if d.Quantity != 2 || d.OtherHand != 2 || d.Hand != "port and starboard" || d.OppositeHand != "port and starboard" || d.Plan != "teal.yaml and 1 more" {
		t.Errorf("%d as drawn (%s), %d of the other hand (%s), of %s", d.Quantity, d.Hand, d.OtherHand, d.OppositeHand, d.Plan)
	}
	if all[0].Name != "teal-plate" || all[1].Name != "garganey-plate" {
		t.Errorf("named %s and %s", all[0].Name, all[1].Name)
	}
}

// A hole that is drilled after folding, beside the centre line, gives a part its hand.
func TestLaterHoleHasAHand(t *testing.T) {
	all := group(t, boatNamed(t, "Teal", ", across: 8 mm", "", "along: 125 mm }", "along: 125 mm, across: 6 mm }"))
	if len(all) != 1 || len(all[0].Flat.Later) != 1 || all[0].Copies[1].Hand != pattern.OtherHand {
		t.Errorf("%+v", all)
	}
	// A part without that hole is another.
	if all := group(t, boatNamed(t, "Teal"), boatNamed(t, "Smew", "      - { name: beside, role: bolt, diameter: 10 mm, along: 125 mm }\n", "")); len(all) != 2 {
		t.Errorf("%d patterns", len(all))
	}
}

// The other hand of a countersunk part has a pattern and a name of its own.
func TestCountersunkHands(t *testing.T) {
	all := group(t, boatNamed(t, "Teal", "    outline:", "    mounting: { to: hull, bolts: { head: countersunk } }\n    outline:"))
	if len(all) != 2 || all[0].Name != "plate-port" || all[1].Name != "plate-starboard" {
		t.Fatalf("%d patterns", len(all))
	}
	for _, p := range all {
		if err := p.Drawing().Check(); err != nil {
			t.Error(err)
		}
	}
}

// What is held on one boat is not cut for her, and the others go on.
func TestHeldForItsBoat(t *testing.T) {
	one, two := boatNamed(t, "Teal"), boatNamed(t, "Smew")
	one[0].Copies[0].Held = []string{"it breaks"}
	all := group(t, one, two)
	if len(all) != 1 || all[0].Quantity() != 4 || len(all[0].Free()) != 3 {
		t.Fatalf("%d patterns", len(all))
	}
	d := all[0].Drawing()
	if d.Quantity != 1 || d.OtherHand != 2 || d.Hold != "" || !slices.Contains(d.Warnings, "NOT TO BE CUT for Teal plate-port: it breaks") {
		t.Errorf("%d and %d, hold %q, %q", d.Quantity, d.OtherHand, d.Hold, d.Warnings)
	}
	list := string(pattern.List(all))
	for _, want := range []string{"1 pattern, to be cut 3 times", "1 part held", "plate-port       port       NO, HELD", "NOT TO BE CUT: Teal plate-port: it breaks", "cut 3: 1 as drawn, 2 of the other hand (the mirror image", "P1, 15 deg, 3 x"} {
		if !strings.Contains(list, want) {
			t.Errorf("the list does not say %q:\n%s", want, list)
		}
	}
	for i := range all[0].Copies {
		all[0].Copies[i].Held = []string{"it breaks"}
	}
	if d := all[0].Drawing(); d.Hold == "" || d.Quantity+d.OtherHand != 4 || !slices.Contains(d.Warnings, "NOT TO BE CUT: it breaks") {
		t.Errorf("all held: %q %q", d.Hold, d.Warnings)
	}
	if list := string(pattern.List(all)); !strings.Contains(list, "plate: NOT TO BE CUT, all held") {
		t.Error(list)
	}
}

// What the drawing has of its first part alone is said of the others, and a warning says
// whose it is.
func TestDifferences(t *testing.T) {
	all := group(t, boatNamed(t, "Teal", "    outline:", "    finish: polished\n    outline:"), boatNamed(t, "Smew", "    outline:", "    press: { die: 80 mm, force: 300 kN }\n    grain: across\n    outline:"))
	if len(all) != 1 {
		t.Fatal(len(all))
	}
	want := []string{"finish for Smew plate-port, Smew plate-starboard: not said", "at the press for Smew plate-port, Smew plate-starboard: die 80 mm, press rated 300 kN"}
	if !slices.Equal(all[0].Differ, want) {
		t.Errorf("%q", all[0].Differ)
	}
	if !slices.ContainsFunc(all[0].Warnings, func(s string) bool {
		return strings.HasPrefix(s, "Teal plate-port, Teal plate-starboard: lay the length")
	}) {
		t.Errorf("%q", all[0].Warnings)
	}
	// Across and along the rolling direction don't share a program.
	if all := group(t, boatNamed(t, "Teal"), boatNamed(t, "Smew", "    outline:", "    grain: along\n    outline:")); len(all) != 2 {
		t.Errorf("%d patterns", len(all))
	}
}

// Names tell parts apart, whatever they are called, and boats of one name by their plans.
func TestNamed(t *testing.T) {
	var parts []pattern.Part
	for _, p := range [][3]string{{"cap", "Teal", "port"}, {"CAP", "Teal", "starboard"}, {"low:er", "Teal", "port"}, {"low?er", "Old Smew!", "port"}, {"stem", "Teal", "centre"}, {"stem", "Teal", "centre"}, {"stem-1", "Teal", "centre"}, {"back", "Teal", "centre"}} {
		parts = append(parts, pattern.Part{Name: p[0], Copies: []pattern.Copy{{Boat: p[1], Side: p[2]}}})
	}
	var names []string
	for _, p := range pattern.Named(parts) {
		names = append(names, p.Name)
	}
	want := []string{"cap-port", "CAP-starboard", "teal-low:er", "old-smew-low?er", "stem-2", "stem-3", "stem-1", "back"}
	if !slices.Equal(names, want) {
		t.Errorf("%q", names)
	}
	one, two := boatNamed(t, "Teal"), boatNamed(t, "Teal", "along: 200 mm", "along: 210 mm")
	for i := range two {
		two[i].Copies[0].Plan = "other.yaml"
	}
	if all := group(t, one, two); all[0].Copies[0].Boat != "Teal (teal.yaml)" || all[1].Copies[0].Boat != "Teal (other.yaml)" || all[0].Name == all[1].Name {
		t.Errorf("%s of %s, %s of %s", all[0].Name, all[0].Copies[0].Boat, all[1].Name, all[1].Copies[0].Boat)
	}
}

// A group is compared with its first part alone: small steps don't lead anywhere.
func TestGroupsDontChain(t *testing.T) {
	measured := func(name, length string) []pattern.Part {
		src := strings.NewReplacer("Quillfish", name, "length: 340 mm", "length: "+length).Replace(boat(t, "quillfish.yaml"))
		parts, problems := each(t, name+".yaml", src)
		if len(problems) > 0 || len(parts) != 2 {
			t.Fatal(problems, len(parts))
		}
		return parts
	}
	all := group(t, measured("A", "340 mm"), measured("B", "340.7 mm"), measured("C", "341.4 mm"))
	if len(all) != 2 || all[0].Quantity() != 4 || all[1].Quantity() != 2 {
		t.Errorf("%d patterns, the first of %d", len(all), all[0].Quantity())
	}
}

// An oval hole is another pattern than a round one of its width, and than one that lies
// across.
func TestOvalIsAnotherPattern(t *testing.T) {
	const round = "diameter: 10 mm, along: 200 mm"
	along, across := "shape: oval, long: 18 mm, "+round, "shape: oval, long: 18 mm, long_way: across, "+round
	for name, c := range map[string]struct {
		of   [2]string
		want int
	}{"alike": {[2]string{along, along}, 1}, "round": {[2]string{along, round}, 2}, "across": {[2]string{along, across}, 2}, "longer": {[2]string{along, strings.Replace(along, "18", "19", 1)}, 2}} {
		if all := group(t, boatNamed(t, "Teal", round, c.of[0]), boatNamed(t, "Smew", round, c.of[1])); len(all) != c.want {
			t.Errorf("%s: %d patterns, not %d", name, len(all), c.want)
		}
	}
}

// The heat stands with the certificate on the drawing, and where heats differ that is said.
func TestHeat(t *testing.T) {
	const metal = "metal: { name: 316L }"
	papers := func(heat string) string { return "metal: { name: 316L, certificate: mill 20411, heat: " + heat + " }" }
	all := group(t, boatNamed(t, "Teal", metal, papers("4711")), boatNamed(t, "Smew", metal, papers("4712")))
	if len(all) != 1 {
		t.Fatalf("%d patterns", len(all))
	}
	if got := all[0].Drawing().Certificate; got != "mill 20411, heat 4711, and that number stays on the part" {
		t.Errorf("the drawing says %q", got)
	}
	if want := "certificate for Smew plate-port, Smew plate-starboard: mill 20411, heat 4712"; !slices.Contains(all[0].Differ, want) {
		t.Errorf("%q", all[0].Differ)
	}
}
