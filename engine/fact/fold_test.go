package fact

import (
	"math"
	"os"
	"strings"
	"testing"
	"time"

	"chainwale/engine/plan"
)

// foldedBoat is the facts of the mended demo, with texts replaced in pairs.
func foldedBoat(t *testing.T, replace ...string) *Facts {
	t.Helper()
	src, err := os.ReadFile("../../testdata/boats/quillfish-mended.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := string(src)
	for i := 0; i < len(replace); i += 2 {
		if !strings.Contains(text, replace[i]) {
			t.Fatalf("the demo has no %q", replace[i])
		}
		text = strings.ReplaceAll(text, replace[i], replace[i+1])
	}
	p, problems, err := plan.Parse("boat.yaml", []byte(text))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	c, err := TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	f, err := Build(c, p, time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func closeTo(t *testing.T, what string, n *Number, want, within float64) {
	t.Helper()
	if got := n.Float(); !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, not %v: %s", what, got, want, n.Why())
	}
}

// The numbers of a fold of 12 deg and 12 mm in 8 mm plate, worked out by hand: BA/2 =
// 1.5657, OSSB = 20 tan 6 deg = 2.1021; the next fold of 8 deg has BA/2 = 1.0438.
func TestBendByHand(t *testing.T) {
	b := foldedBoat(t).Bends[0]
	if b.ID != "aft-lower-plate-port/upper" {
		t.Fatal(b.ID)
	}
	closeTo(t, "R/t", &b.RadiusRatio, 1.5, 1e-12)
	closeTo(t, "least radius of 316L", &b.RadiusLeast, 8, 1e-12)
	closeTo(t, "radius to ask for", &b.RadiusWanted, 12, 1e-12)
	closeTo(t, "die", &b.Die, 64, 0)
	closeTo(t, "to the pin hole's edge", &b.Clear, 62.5-22-6.55, 1e-9)
	closeTo(t, "drilled before", &b.Distance, 33, 1e-9)
	closeTo(t, "drilled at all", &b.Least, 9.5657, 1e-3)
	closeTo(t, "flange", &b.Flange, 39-1.0438-1.5657+2.1021, 1e-3)
	closeTo(t, "least flange", &b.FlangeLeast, 32/math.Cos(6*math.Pi/180)+5, 1e-9)
	closeTo(t, "force at 670 MPa", &b.Force, 1.5*670*40*64/64, 1e-6)
	closeTo(t, "deduction", &b.Deduction, 2*2.1021-2*1.5657, 1e-3)
	if !(b.SpringLeast.Float() < b.SpringLikely.Float() && b.SpringLikely.Float() < b.SpringMost.Float()) || !(b.SpringLeast.Float() > 12) {
		t.Errorf("press to %v, %v, %v", b.SpringLeast.Float(), b.SpringLikely.Float(), b.SpringMost.Float())
	}
	if !b.Reachable.Yes() || !b.Annealed.Yes() {
		t.Error("a fold that can be made in soft metal is not said to be")
	}
	for name, n := range map[string]*Number{"wanted": &b.RadiusWanted, "clear": &b.Clear, "flange": &b.Flange, "force": &b.Force, "spring": &b.SpringMost, "spread": &b.Spread} {
		if len(n.Working()) == 0 {
			t.Errorf("%s shows no working", name)
		}
	}
}

// Grain that nobody knows counts as along; other alloys have other radii.
func TestBendMetals(t *testing.T) {
	for _, c := range []struct {
		metal, grain  string
		least, wanted float64
	}{{"316L", "across", 8, 12}, {"316L", "unknown", 8, 12}, {"2205", "across", 20, 20}, {"2205", "unknown", 20, 25}, {"2205", "along", 20, 25}} {
		f := foldedBoat(t, "metal: { name: 316L, condition: annealed", "metal: { name: "+c.metal+", condition: annealed", "grain: across", "grain: "+c.grain)
		closeTo(t, c.metal+" "+c.grain+" least", &f.Bends[0].RadiusLeast, c.least, 1e-9)
		closeTo(t, c.metal+" "+c.grain+" wanted", &f.Bends[0].RadiusWanted, c.wanted, 1e-9)
	}
	if b := foldedBoat(t, "name: 316L, condition: annealed", "name: silicon bronze, condition: annealed").Bends[0]; b.RadiusLeast.Known() || b.RadiusLeast.Why() == "" {
		t.Error("a metal without a row has a least radius, or nothing says why not")
	}
}

// What the plan leaves out of a fold leaves unknown what rests on it.
func TestBendUnknown(t *testing.T) {
	b := foldedBoat(t, "along: 62.5 mm, angle: 12 deg", "along: 62.5 mm").Bends[0]
	for name, v := range map[string]*Value{"distance": &b.Distance.Value, "flange": &b.Flange.Value, "spring": &b.SpringMost.Value, "reachable": &b.Reachable.Value} {
		if v.Known() || len(v.Missing()) == 0 {
			t.Errorf("%s is known, or nothing is asked for", name)
		}
	}
	if b := foldedBoat(t, "block: 90 mm, ", "").Bends[0]; b.Reachable.Known() || len(b.Reachable.Missing()) != 1 {
		t.Error("whether a fold can be reached is known without the tools")
	}
}

// The wire leads 14.406 deg inboard seen from astern, the bolted leg leans atan(0.1)
// outboard and the folds turn the loaded leg 20 deg from it.
func TestOffWire(t *testing.T) {
	lean := 20*math.Pi/180 - math.Atan(0.1)
	wire := [3]float64{0.55, -1.4, 5.45}
	off := func(lean float64) float64 {
		across := -wire[1]*math.Cos(lean) - wire[2]*math.Sin(lean)
		return math.Asin(math.Abs(across)/math.Sqrt(wire[0]*wire[0]+wire[1]*wire[1]+wire[2]*wire[2])) * 180 / math.Pi
	}
	f := foldedBoat(t)
	for _, m := range f.Matches {
		closeTo(t, m.ID, &m.OffWire, off(lean), 1e-9)
	}
	f = foldedBoat(t, "angle: 12 deg, way: toward, radius: 12 mm }\n      - { name: lower", "angle: 12 deg, way: away, radius: 12 mm }\n      - { name: lower")
	closeTo(t, "one fold the other way", &f.Matches[0].OffWire, off(lean-24*math.Pi/180), 1e-9)
	if m := foldedBoat(t, "face: { x: 0 mm, y: -1000 mm, z: 100 mm }", "face: { x: 0 mm, y: -1000 mm, z: 900 mm }").Matches[0]; m.OffWire.Known() || !strings.Contains(m.OffWire.Why(), "not square") {
		t.Errorf("directions far off square give %v", m.OffWire.Float())
	}
}

// The holes of the hull against those of the part: laid on, the second is off most.
func TestMatch(t *testing.T) {
	f := foldedBoat(t)
	m := f.Matches[0]
	if len(f.Matches) != 2 || m.Worst.Text() != "second" {
		t.Fatalf("%d matches, the worst hole %s", len(f.Matches), m.Worst.Text())
	}
	closeTo(t, "miss", &m.Miss, 0.075, 1e-6) // 0.1 mm less the mean of 0, 0.1, 0, 0
	closeTo(t, "clearance", &m.Clearance, 10-9.525-0.2, 1e-9)
	closeTo(t, "uncertainty", &m.Uncertainty, 0.4/math.Sqrt(3), 1e-9)
	closeTo(t, "reamed", &m.Reamed, 0, 0)
	closeTo(t, "flat", &m.FlatLength, 340, 0.2)
	if m.OldFailed.Known() && m.OldFailed.Yes() || len(m.Miss.Working()) == 0 || len(m.FlatLength.Working()) == 0 {
		t.Error("the old part failed, or workings are missing")
	}
	m = foldedBoat(t, "along: 183 mm, diameter", "along: 186 mm, diameter").Matches[0]
	if m.Worst.Text() != "low" || !(m.Reamed.Float() == 1) || !(m.Ream.Float() > 14.5) {
		t.Errorf("a hole 3 mm off: worst %s, %v reamed to %v", m.Worst.Text(), m.Reamed.Float(), m.Ream.Float())
	}
}

// Holes that are drilled at the boat need not meet, left-over ones are counted, and
// holes of the hull on two sides of a fold say nothing.
func TestMatchSorts(t *testing.T) {
	m := foldedBoat(t, "{ hole: low, along: 183 mm, diameter: 10 mm, is: round", "{ along: 183 mm, diameter: 10 mm, is: round").Matches[0]
	closeTo(t, "left over", &m.ToFill, 1, 0)
	if m.Matched.Known() {
		t.Error("a hole that meets nothing counts as drilled at the boat")
	}
	m = foldedBoat(t, "along: 183 mm, diameter: 10 mm, is: round", "along: 183 mm, diameter: 10 mm, is: drill at the boat").Matches[0]
	closeTo(t, "to fill", &m.ToFill, 0, 0)
	closeTo(t, "to drill", &m.ToDrill, 1, 0)
	closeTo(t, "matched", &m.Matched, 3, 0)
	m = foldedBoat(t, "name: lower, along: 101.5 mm", "name: lower, along: 168 mm").Matches[0]
	if m.Miss.Known() || !strings.Contains(m.Miss.Why(), "the lower fold lies among the bolt holes") {
		t.Errorf("miss %v: %s", m.Miss.Float(), m.Miss.Why())
	}
}

// A tapered end has its nose's width at the pin.
func TestTaperedWidth(t *testing.T) {
	f := foldedBoat(t, "outline: { width: 45 mm, length: 400 mm, end: round }", "outline: { width: 60 mm, length: 400 mm, end: tapered, nose: 50 mm, taper: 80 mm }")
	closeTo(t, "width", &f.Fittings[0].Width, 50, 0)
}
