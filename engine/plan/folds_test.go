package plan

import (
	"math"
	"strings"
	"testing"
)

// bent is a fitting with two folds, measured on the old part.
const bent = `chainwale: 1
boat: { name: Plover }
fittings:
  - id: plate
    state: remade
    kind: chainplate
    side: both
    thickness: 8 mm
    outline: { width: 40 mm, end: round }
    holes:
      - { name: pin, role: pin, diameter: 13 mm }
      - { name: top, role: bolt, diameter: 10.5 mm }
      - { name: low, role: bolt, diameter: 10.5 mm }
    measured:
      within: 0.3 mm
      angle_within: 0.5 deg
      legs: [{ outside: 120 mm }, { outside: [90 mm, 90.2 mm] }, { outside: 60 mm }]
      folds:
        - { angle: 15 deg, way: toward, radius: 16 mm, radius_within: 1 mm }
        - { angle: [25 deg, 24.8 deg], way: away, radius: 16 mm, radius_within: 1 mm }
      holes:
        - { hole: pin, leg: 1, along: 22 mm }
        - { hole: top, leg: 2, along: 30 mm, across: 2 mm }
        - { hole: low, leg: 3, along: 20 mm, from: far end }
      chords:
        - { from: pin, to: top, length: 125.1 mm }
`

// The flat of the part with two folds is that of the geometry's own test vector, with
// the middle leg 0.1 mm longer and the second fold 0.1 deg shallower.
func TestCompleted(t *testing.T) {
	p, problems, err := Parse("p.yaml", []byte(bent))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	f, _ := p.Fittings[0].Completed()
	if got := f.Outline.Length.Value; math.Abs(got-266.5558) > 0.01 {
		t.Errorf("the flat is %v long", got)
	}
	if len(f.Folds) != 2 || f.Folds[0].Way.Value != "toward" || f.Folds[1].Way.Value != "away" || math.Abs(f.Folds[0].Along.Value-119.3539) > 1e-3 {
		t.Errorf("folds %+v", f.Folds)
	}
	if pin := f.HoleNamed("pin"); pin.Along.Value != 22 || pin.Along.At.Line != 22 {
		t.Errorf("the pin's hole stands at %v, line %d", pin.Along.Value, pin.Along.At.Line)
	}
	if top := f.HoleNamed("top"); top.Across.Value != 2 || !(top.Along.Value > 140 && top.Along.Value < 150) {
		t.Errorf("the top hole stands at %v, %v", top.Along.Value, top.Across.Value)
	}
	if p.Fittings[0].HoleNamed("pin").Along.Given {
		t.Error("the plan itself was changed")
	}
	fresh := p.Fittings[0]
	fresh.State.Value = "new"
	if fresh, _ = fresh.Completed(); fresh.Outline.Length.Given {
		t.Error("a part of a new design was given the old one's length")
	}
}

// Each fault of a folded part is told at its place.
func TestBentFaults(t *testing.T) {
	flat := strings.Replace(bent[:strings.Index(bent, "    measured:")], "outline: { width: 40 mm", "outline: { width: 40 mm, length: 300 mm", 1)
	folds := func(list string) string { return flat + "    folds: [" + list + "]\n" }
	shaped := func(outline string) string {
		return strings.Replace(flat, "outline: { width: 40 mm, length: 300 mm, end: round }", "outline: "+outline, 1)
	}
	one := "{ name: a, along: 100 mm, angle: 20 deg, radius: 16 mm, way: toward }"
	for name, c := range map[string]struct{ src, want string }{
		"two in one place":    {folds(one + ", { name: b, along: 103 mm, angle: 20 deg, radius: 16 mm, way: away }"), "14:102 /fittings/0/folds/1/along | plate can't be folded so: fold 2 begins"},
		"beyond the end":      {folds("{ name: a, along: 299 mm, angle: 20 deg, radius: 16 mm, way: toward }"), "14:31 /fittings/0/folds/0/along | plate can't be folded so: fold 1 ends"},
		"one name twice":      {folds(one + ", { name: a, along: 200 mm }"), "two folds are called a"},
		"folded flat":         {folds("{ name: a, angle: 180 deg }"), "180 deg is more than 179 deg"},
		"negative radius":     {folds("{ name: a, radius: -3 mm }"), "-3 mm is not more than 0 mm"},
		"five folds":          {folds("{ name: a }, { name: b }, { name: c }, { name: d }, { name: e }"), "14:52 /fittings/0/folds/3 | plate has 5 folds"},
		"crossing contour":    {shaped("{ contour: [{ x: 0 mm, y: 0 mm }, { x: 100 mm, y: 40 mm }, { x: 100 mm, y: 0 mm }, { x: 0 mm, y: 40 mm }] }"), "the outline meets itself"},
		"contour elsewhere":   {shaped("{ contour: [{ x: 10 mm, y: -20 mm }, { x: 100 mm, y: -20 mm }, { x: 100 mm, y: 20 mm }, { x: 10 mm, y: 20 mm }] }"), "the contour begins at x = 10 mm"},
		"wider than drawn":    {shaped("{ width: 80 mm, contour: [{ x: 0 mm, y: -10 mm }, { x: 300 mm, y: -10 mm }, { x: 300 mm, y: 10 mm }, { x: 0 mm, y: 10 mm }] }"), "9:23 /fittings/0/outline/width | the contour is 20 mm across at its widest, and strengths would be reckoned with 80 mm"},
		"waisted at the pin":  {strings.Replace(shaped("{ width: 40 mm, contour: [{ x: 0 mm, y: -12 mm }, { x: 300 mm, y: -20 mm }, { x: 300 mm, y: 20 mm }, { x: 0 mm, y: 12 mm }] }"), "diameter: 13 mm", "diameter: 13 mm, along: 30 mm", 1), "9:23 /fittings/0/outline/width | the contour counts as 25.6 mm across at the pin hole"},
		"narrower than drawn": {strings.Replace(shaped("{ width: 30 mm, contour: [{ x: 0 mm, y: -20 mm }, { x: 300 mm, y: -20 mm }, { x: 300 mm, y: 20 mm }, { x: 0 mm, y: 20 mm }] }"), "diameter: 13 mm", "diameter: 13 mm, along: 30 mm", 1), "the contour counts as 40 mm across at the pin hole"},
		"one side short":      {strings.Replace(shaped("{ width: 40 mm, contour: [{ x: 0 mm, y: -10 mm }, { x: 300 mm, y: -10 mm }, { x: 300 mm, y: 30 mm }, { x: 0 mm, y: 30 mm }] }"), "diameter: 13 mm", "diameter: 13 mm, along: 30 mm", 1), "the contour counts as 20 mm across at the pin hole, twice what it reaches to the nearer side"},
		"hole outside":        {strings.Replace(shaped("{ contour: [{ x: 0 mm, y: -20 mm }, { x: 100 mm, y: -20 mm }, { x: 100 mm, y: 20 mm }, { x: 0 mm, y: 20 mm }] }"), "diameter: 13 mm", "diameter: 13 mm, along: 120 mm", 1), "11:57 /fittings/0/holes/0/along | this hole does not lie within the outline"},
		"tapered to nothing":  {shaped("{ width: 40 mm, length: 300 mm, end: tapered }"), "a tapered end is known by its nose and its taper"},
		"short leg":           {strings.Replace(bent, "{ outside: 60 mm }", "{ outside: 4 mm }", 1), "17:66 /fittings/0/measured/legs/2 | what was measured does not make a part: leg 3 is 4 mm"},
		"readings apart":      {strings.Replace(bent, "90.2 mm", "91 mm", 1), "these 2 readings lie 1 mm apart, and two that are good to 0.3 mm differ by 0.6 mm"},
		"one stands out":      {strings.Replace(bent, "[90 mm, 90.2 mm]", "[90 mm, 90.2 mm, 92 mm, 90.1 mm]", 1), "these 4 readings lie 2 mm apart, and two that are good to 0.3 mm differ by 0.6 mm at the most; 92 mm stands out from the others |"},
		"the low stands out":  {strings.Replace(bent, "[25 deg, 24.8 deg]", "[22 deg, 24.8 deg, 25 deg]", 1), "differ by 1 deg at the most; 22 deg stands out from the others |"},
		"none stands out":     {strings.Replace(bent, "[90 mm, 90.2 mm]", "[90 mm, 91 mm, 92 mm]", 1), "these 3 readings lie 2 mm apart, and two that are good to 0.3 mm differ by 0.6 mm at the most |"},
		"hull readings apart": {bent + "    hull_holes: [{ hole: top, along: [0 mm, 2 mm], is: round, within: 0.3 mm }]\n", "these 2 readings lie 2 mm apart"},
		"leg too few":         {strings.Replace(bent, ", { outside: 60 mm }", "", 1), "2 folds part a strip into 3 legs, and 2 are measured"},
		"chord that lies":     {strings.Replace(bent, "125.1 mm", "140 mm", 1), "26:11 /fittings/0/measured/chords/0 | what was measured does not make a part: from pin to top"},
		"unknown hole":        {strings.Replace(bent, "hole: low", "hole: lower", 1), "no hole of plate is called lower"},
		"no such leg":         {strings.Replace(bent, "leg: 3", "leg: 4", 1), "there are 3 legs, and this hole is said to lie on leg 4"},
		"hole in a fold":      {strings.Replace(bent, "leg: 2, along: 30 mm", "leg: 2, along: 1 mm", 1), "23:11 /fittings/0/measured/holes/1 | what was measured does not make a part: top comes to lie in fold 1"},
		"met twice":           {bent + "    hull_holes: [{ hole: top, along: 0 mm, is: round }, { hole: top, along: 60 mm, is: round }]\n", "top meets the hole in line 27 already"},
		"hull hole of a pin":  {bent + "    hull_holes: [{ hole: pin, along: 0 mm, is: round }]\n", "pin is a pin's hole"},
		"no way":              {strings.Replace(bent, "way: toward, ", "", 1), "this fold does not say which way it turns"},
	} {
		t.Run(name, func(t *testing.T) {
			_, problems, err := Parse("p.yaml", []byte(c.src))
			if err != nil {
				t.Fatal(err)
			}
			for _, p := range problems {
				if strings.Contains(told(p), c.want) {
					return
				}
			}
			t.Errorf("nothing says %q: %v", c.want, problems)
		})
	}
}

// A width that the contour has at the pin hole is taken, to what a drawing is read to.
func TestWidthOfContour(t *testing.T) {
	for _, width := range []string{"width: 25.6 mm, ", "width: 26 mm, ", ""} {
		outline := "{ " + width + "contour: [{ x: 0 mm, y: -12 mm }, { x: 300 mm, y: -20 mm }, { x: 300 mm, y: 20 mm }, { x: 0 mm, y: 12 mm }] }"
		src := strings.Replace(bent[:strings.Index(bent, "    measured:")], "{ width: 40 mm, end: round }", outline, 1)
		src = strings.Replace(src, "diameter: 13 mm", "diameter: 13 mm, along: 30 mm", 1)
		if _, problems, err := Parse("p.yaml", []byte(src)); err != nil || len(problems) > 0 {
			t.Errorf("%s: %v %v", width, err, problems)
		}
	}
}

// A contour takes no width over from the old part, and the flat of that comes with it.
func TestCompletedContour(t *testing.T) {
	src := strings.Replace(bent, "outline: { width: 40 mm, end: round }", "outline: { contour: [{ x: 0 mm, y: -10 mm }, { x: 266.6 mm, y: -10 mm }, { x: 266.6 mm, y: 10 mm }, { x: 0 mm, y: 10 mm }] }", 1)
	src = strings.Replace(src, "    measured:\n", "    measured:\n      width: 40 mm\n", 1)
	p, problems, err := Parse("p.yaml", []byte(src))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	f, old := p.Fittings[0].Completed()
	if f.Outline.Width.Given || old == nil || !(old.Length.Value > 266) {
		t.Errorf("width %v, the old part %+v", f.Outline.Width, old)
	}
}
