package strength

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// line4 is four bolts in a line up the plate, the load eight degrees off it.
var line4 = BoltGroup{
	Bolts: []GroupBolt{{X: 0, Y: 0}, {X: 0, Y: 60}, {X: 0, Y: 120}, {X: 0, Y: 180}},
	Force: Vector{40000 * math.Sin(8*math.Pi/180), 40000 * math.Cos(8*math.Pi/180)},
	At:    Vector{10, 260},
}

func TestBoltGroup(t *testing.T) {
	r, err := line4.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "Mz", r.momentAtCentre, -550269.859, 1e-8)
	for i, want := range []float64{9995.58135774707, 9914.04780069438, 10168.277204335425, 10734.439864688049} {
		near(t, "a bolt", r.Bolts[i].Size(), want, 1e-9)
	}
	if r.Governs != 3 || r.Largest != r.Bolts[3].Size() {
		t.Errorf("bolt %d governs with %g", r.Governs, r.Largest)
	}
	checkWorking(t, r.Working(), map[string]float64{"Mz": r.momentAtCentre, "F1": r.Bolts[0].Size(), "F4": r.Largest})
}

func TestOneBolt(t *testing.T) {
	one := BoltGroup{Bolts: []GroupBolt{{X: 5, Y: 7}}, Force: Vector{300, 400}, At: Vector{5, 7}}
	r, err := one.Reckon()
	if err != nil || r.Bolts[0] != (Vector{300, 400}) || r.Largest != 500 {
		t.Errorf("one bolt: %+v, %v", r, err)
	}
	one.At = Vector{5 + 3, 7 + 4}
	if _, err = one.Reckon(); err != nil {
		t.Errorf("the line of the force runs through the bolt: %v", err)
	}
	for _, turned := range []BoltGroup{
		{Bolts: one.Bolts, Force: one.Force, At: Vector{6, 7}},
		{Bolts: one.Bolts, Force: one.Force, At: Vector{5, 7}, Moment: 1},
		{Bolts: one.Bolts, Moment: 1000},
	} {
		if _, err := turned.Reckon(); err == nil || !strings.Contains(err.Error(), "turn about it") {
			t.Errorf("one bolt with a moment: %v", err)
		}
	}
}

func TestBoltGroupRefuses(t *testing.T) {
	for says, change := range map[string]func(*BoltGroup){
		"at least one bolt":        func(g *BoltGroup) { g.Bolts = nil },
		"bolts 1 and 3 are in one": func(g *BoltGroup) { g.Bolts[2] = g.Bolts[0] },
		"area: give it for all":    func(g *BoltGroup) { g.Bolts[1].Area = 58 },
		"area of bolt 2":           func(g *BoltGroup) { g.Bolts[1].Area = -58 },
		"place of bolt 4 along y":  func(g *BoltGroup) { g.Bolts[3].Y = math.NaN() },
		"force along x":            func(g *BoltGroup) { g.Force.X = math.Inf(-1) },
		"place of the force":       func(g *BoltGroup) { g.At.Y = 1e308 },
		"the moment":               func(g *BoltGroup) { g.Moment = math.NaN() },
		"more than":                func(g *BoltGroup) { g.Bolts = make([]GroupBolt, 501) },
	} {
		g := line4
		g.Bolts = append([]GroupBolt(nil), line4.Bolts...)
		change(&g)
		if r, err := g.Reckon(); err == nil || !strings.Contains(err.Error(), says) || r.Bolts != nil {
			t.Errorf("want an error that says %q, got %v", says, err)
		}
	}
}

// groups draws bolt groups, alike or of different areas.
func groups(t *rapid.T) BoltGroup {
	n := rapid.IntRange(2, 8).Draw(t, "bolts")
	g := BoltGroup{
		Force:  Vector{rapid.Float64Range(-5e4, 5e4).Draw(t, "Px"), rapid.Float64Range(-5e4, 5e4).Draw(t, "Py")},
		At:     Vector{rapid.Float64Range(-300, 300).Draw(t, "xp"), rapid.Float64Range(-300, 300).Draw(t, "yp")},
		Moment: rapid.Float64Range(-1e6, 1e6).Draw(t, "M0"),
	}
	areas := rapid.Bool().Draw(t, "areas")
	for i := range n {
		b := GroupBolt{X: float64(i*40) + rapid.Float64Range(-10, 10).Draw(t, "x"), Y: rapid.Float64Range(-100, 100).Draw(t, "y")}
		if areas {
			b.Area = rapid.Float64Range(15, 250).Draw(t, "area")
		}
		g.Bolts = append(g.Bolts, b)
	}
	return g
}

// TestBoltForcesSumToTheLoad: the bolts carry the applied force and its moment,
// about any point, and no more.
func TestBoltForcesSumToTheLoad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := groups(t)
		r, err := g.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		var sum Vector
		moment, scale := 0.0, math.Abs(g.Moment)+g.Force.Size()*500+1
		for i, f := range r.Bolts {
			sum.X += f.X
			sum.Y += f.Y
			moment += g.Bolts[i].X*f.Y - g.Bolts[i].Y*f.X
			scale += 500 * f.Size()
		}
		applied := g.At.X*g.Force.Y - g.At.Y*g.Force.X + g.Moment
		if sum.minus(g.Force).Size() > 1e-9*scale/500 || math.Abs(moment-applied) > 1e-9*scale {
			t.Fatalf("the bolts sum to %v and %g, applied are %v and %g", sum, moment, g.Force, applied)
		}
	})
}

// TestBoltGroupMirror: a group and its load seen in a mirror carry the same sizes.
func TestBoltGroupMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := groups(t)
		m := BoltGroup{Force: Vector{-g.Force.X, g.Force.Y}, At: Vector{-g.At.X, g.At.Y}, Moment: -g.Moment}
		for _, b := range g.Bolts {
			m.Bolts = append(m.Bolts, GroupBolt{X: -b.X, Y: b.Y, Area: b.Area})
		}
		a, errA := g.Reckon()
		b, errB := m.Reckon()
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		for i := range a.Bolts {
			if math.Abs(a.Bolts[i].X+b.Bolts[i].X)+math.Abs(a.Bolts[i].Y-b.Bolts[i].Y) > 1e-9*(1+a.Largest) {
				t.Fatalf("bolt %d: %v against %v in the mirror", i, a.Bolts[i], b.Bolts[i])
			}
		}
	})
}
