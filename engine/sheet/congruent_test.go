package sheet

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// handed is a chainplate that has a hand: its bolts lie to one side and it is folded.
func handed(t testing.TB) Flat {
	f := chainplate(t)
	f.Holes[1].At.Y, f.Holes[2].At.Y = 6, 6
	f.Folds[0].Skew = 8
	return f
}

// laidOver is a flat turned end for end, or mirrored, or both.
func laidOver(f Flat, endForEnd, mirrored bool) Flat {
	f.Outline, f.Holes, f.Folds = slices.Clone(f.Outline), slices.Clone(f.Holes), slices.Clone(f.Folds)
	if mirrored {
		f = f.Mirrored()
	}
	if endForEnd {
		_, high := f.Outline.Bounds()
		for i, v := range f.Outline {
			f.Outline[i].X, f.Outline[i].Y = high.X-v.X, -v.Y
		}
		for i, h := range f.Holes {
			f.Holes[i].At = Point{high.X - h.At.X, -h.At.Y}
		}
		for i := range f.Folds {
			f.Folds[i].At = high.X - f.Folds[i].At
		}
		slices.Reverse(f.Folds)
	}
	return f
}

// foldedBack is a flat with all folds the other way.
func foldedBack(f Flat) Flat {
	f.Folds = slices.Clone(f.Folds)
	for i := range f.Folds {
		f.Folds[i].Angle = -f.Folds[i].Angle
	}
	return f
}

func relation(t testing.TB, a, b Flat, l Likeness) Relation {
	t.Helper()
	r, err := Congruent(a, b, l)
	if err != nil {
		t.Fatal(err)
	}
	back, err := Congruent(b, a, l)
	if err != nil {
		t.Fatal(err)
	}
	if r.SamePart != back.SamePart || r.OtherHand != back.OtherHand {
		t.Errorf("one way %+v, the other %+v", r, back)
	}
	return r
}

// TestHandOfFlats: the four ways to lay one on the other, with and without a hand.
func TestHandOfFlats(t *testing.T) {
	f := handed(t)
	for _, c := range []struct {
		what       string
		other      Flat
		same, hand bool
	}{
		{"itself", f, true, false},
		{"end for end", laidOver(f, true, false), true, false},
		{"its other face", foldedBack(laidOver(f, false, true)), true, false},
		{"the other hand", laidOver(f, false, true), false, true},
		{"the other hand, end for end", laidOver(f, true, true), false, true},
		{"folded the other way", foldedBack(f), false, true},
	} {
		if r := relation(t, f, c.other, LikeDrawings); r.SamePart != c.same || r.OtherHand != c.hand || r.Outline > 1e-6 || r.Holes > 1e-6 {
			t.Errorf("%s: %+v", c.what, r)
		}
	}
	if r := relation(t, chainplate(t), chainplate(t), LikeDrawings); !r.Unhanded() {
		t.Errorf("a part that is the same both ways round: %+v", r)
	}
	marked := handed(t)
	marked.OneSided = true
	for _, c := range []struct {
		what       string
		other      Flat
		same, hand bool
	}{{"itself", marked, true, false}, {"the other hand", laidOver(marked, false, true), false, true}, {"its other face", foldedBack(laidOver(marked, false, true)), false, false}, {"folded the other way", foldedBack(marked), false, false}} {
		if r := relation(t, marked, c.other, LikeDrawings); r.SamePart != c.same || r.OtherHand != c.hand {
			t.Errorf("one-sided, %s: %+v", c.what, r)
		}
	}
}

// Parts are two that differ in a hole which is drilled when they are folded, and such a
// hole beside the centre line gives a part its hand.
func TestLaterHoles(t *testing.T) {
	plain := chainplate(t)
	drilled := func(y float64) Flat {
		f := plain
		f.Later = []Hole{{At: Point{plain.Folds[0].At + 3, y}, Diameter: 8}}
		return f
	}
	if r := relation(t, plain, drilled(0), LikeMeasured); r.Alike() {
		t.Errorf("a hole more: %+v", r)
	}
	if r := relation(t, drilled(0), drilled(0), LikeDrawings); !r.Unhanded() {
		t.Errorf("on the centre line: %+v", r)
	}
	if r := relation(t, drilled(5), drilled(5).Mirrored(), LikeDrawings); r.SamePart || !r.OtherHand {
		t.Errorf("beside the centre line: %+v", r)
	}
	if r := relation(t, drilled(5), drilled(9), LikeDrawings); r.Alike() {
		t.Errorf("in another place: %+v", r)
	}
}

func longer(t testing.TB, by float64) Flat {
	f := handed(t)
	c, err := Strip{266 + by, 40, End{Shape: RoundedEnd}, End{Corner: 6}}.Contour()
	if err != nil {
		t.Fatal(err)
	}
	f.Outline = c
	return f
}

// TestLikeness: what measuring leaves is taken, what makes another part is not.
func TestLikeness(t *testing.T) {
	f := handed(t)
	noisy := handed(t)
	draws := rand.New(rand.NewPCG(1, 2))
	for i := range noisy.Holes {
		noisy.Holes[i].At = noisy.Holes[i].At.plus(Point{0.2 * (2*draws.Float64() - 1), 0.2 * (2*draws.Float64() - 1)})
	}
	change := func(with func(*Flat)) Flat {
		g := handed(t)
		with(&g)
		return g
	}
	for _, c := range []struct {
		what string
		g    Flat
		like bool
	}{
		{"holes off by 0.2 mm", noisy, true},
		{"0.8 mm longer", longer(t, 0.8), true},
		{"3 mm longer", longer(t, 3), false},
		{"a hole 1.5 mm off", change(func(f *Flat) { f.Holes[2].At.X += 1.5 }), false},
		{"a hole 0.5 mm wider", change(func(f *Flat) { f.Holes[1].Diameter += 0.5 }), false},
		{"0.5 mm thicker", change(func(f *Flat) { f.Thickness = 6.5 }), false},
		{"another metal", change(func(f *Flat) { f.Metal = "304" }), false},
		{"a fold of 3 degrees more", change(func(f *Flat) { f.Folds[0].Angle += 3 }), false},
		{"a fold 5 mm further", change(func(f *Flat) { f.Folds[0].At += 5 }), false},
		{"a fold of another radius", change(func(f *Flat) { f.Folds[0].Radius += 4 }), false},
		{"a fold less", change(func(f *Flat) { f.Folds = nil }), false},
		{"a hole less", change(func(f *Flat) { f.Holes = f.Holes[:3] }), false},
		{"a round hole for the square one", change(func(f *Flat) { f.Holes[3].Square = false }), false},
		{"the square hole turned", change(func(f *Flat) { f.Holes[3].Turn = 20 }), false},
		{"the square hole turned by a quarter", change(func(f *Flat) { f.Holes[3].Turn = 90 }), true},
		{"a corner cut off", change(func(f *Flat) { f.Outline[0].Bulge = 0 }), false},
	} {
		if r := relation(t, f, c.g, LikeMeasured); r.SamePart != c.like {
			t.Errorf("%s: %+v", c.what, r)
		}
	}
	if r := relation(t, f, longer(t, 0.8), LikeMeasured); r.Outline < 0.39 || r.Outline > 0.8 {
		t.Errorf("0.8 mm longer leaves %g", r.Outline)
	}
	if r := relation(t, f, noisy, LikeDrawings); r.Alike() {
		t.Error("to the tolerance of drawings a measured part is the same")
	}
}

// TestTurnedAnyWay: a flat without folds may lie anywhere; so may one that has no long
// axis, with holes or without.
func TestTurnedAnyWay(t *testing.T) {
	if testing.Short() {
		t.Skip("long, and run in full before the race detector")
	}
	plate, err := Strip{60, 60, End{Corner: 10}, End{Corner: 10}}.Contour()
	if err != nil {
		t.Fatal(err)
	}
	strip := handed(t)
	strip.Folds = nil
	for what, f := range map[string]Flat{
		"strip":           strip,
		"square plate":    {Thickness: 6, Outline: plate, Holes: []Hole{{At: Point{15, 5}, Diameter: 8}, {At: Point{45, -10}, Diameter: 8}, {At: Point{30, 12}, Diameter: 6}}},
		"plate, one hole": {Thickness: 6, Outline: plate, Holes: []Hole{{At: Point{20, 7}, Diameter: 8}}},
		"plain plate":     {Thickness: 6, Outline: plate},
	} {
		for _, degree := range []float64{17, 133.3} {
			for _, mirrored := range []bool{false, true} {
				p := pose{mirrored: mirrored, shift: Point{300, -70}}
				p.sin, p.cos = math.Sincos(radians(degree))
				g := f
				g.Outline, g.Holes = slices.Clone(f.Outline), slices.Clone(f.Holes)
				if mirrored {
					g.Outline = g.Outline.Mirrored()
				}
				turn := pose{sin: p.sin, cos: p.cos, shift: p.shift}
				for i, v := range g.Outline {
					at := turn.place(Point{v.X, v.Y})
					g.Outline[i].X, g.Outline[i].Y = at.X, at.Y
				}
				for i, h := range g.Holes {
					g.Holes[i].At = p.place(h.At)
					g.Holes[i].Turn = h.Turn + degree
					if mirrored {
						g.Holes[i].Turn = -h.Turn + degree
					}
				}
				if r := relation(t, f, g, LikeDrawings); !r.SamePart || r.Outline > 1e-3 {
					t.Errorf("%s turned by %g, mirrored %v: %+v", what, degree, mirrored, r)
				}
			}
		}
	}
}
