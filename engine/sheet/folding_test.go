package sheet

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// strip120 is the strip of the vectors: legs of 120, 90 and 60 mm outside, two folds.
var strip120 = OutsideLegs{Thickness: 8, Width: 40, Legs: []float64{120, 90, 60}, Folds: []Fold{{Angle: 15, Radius: 16}, {Angle: -25, Radius: 16}}}

func TestDevelopVector(t *testing.T) {
	v := vectors(t).Fold
	s, err := strip120.Develop()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "length of the flat", s.Length, v.Flat, 1e-9)
	for i, b := range v.Bends {
		near(t, "place of the fold", s.Folds[i].At, b.C, 1e-9)
	}
	f, _ := NewFolding(s)
	checkPoints(t, f, v.Points)
}

func checkPoints(t *testing.T, f *Folding, points []flatPoint) {
	t.Helper()
	if len(points) < 8 {
		t.Fatalf("only %d points", len(points))
	}
	for _, p := range points {
		got, want := f.Fold(Point{p.U, p.W}, p.D), Point3{p.XYZ[0], p.XYZ[1], p.XYZ[2]}
		if d := got.distance(want); !(d < 1e-8) {
			t.Errorf("(%g, %g, %g) goes to %v, want %v", p.U, p.W, p.D, got, want)
		}
	}
}

func TestSkewVector(t *testing.T) {
	v := vectors(t).Skew
	s := FoldedStrip{Thickness: v.T, Width: 40, Length: 250}
	for _, b := range v.Bends {
		s.Folds = append(s.Folds, Fold{At: b.C, Angle: b.Phi, Radius: b.R, Skew: b.Psi})
	}
	f, err := NewFolding(s)
	if err != nil {
		t.Fatal(err)
	}
	checkPoints(t, f, v.Points)
}

// anyStrip draws a strip of one to three folds that stand apart.
func anyStrip(t *rapid.T) FoldedStrip {
	s := FoldedStrip{Thickness: rapid.Float64Range(2, 12).Draw(t, "thickness"), Width: rapid.Float64Range(20, 60).Draw(t, "width")}
	at := 0.0
	for range rapid.IntRange(1, 3).Draw(t, "folds") {
		f := Fold{Angle: rapid.Float64Range(1, 150).Draw(t, "angle"), Radius: s.Thickness * rapid.Float64Range(0.5, 4).Draw(t, "radius"), Skew: rapid.Float64Range(-35, 35).Draw(t, "skew")}
		if rapid.Bool().Draw(t, "away") {
			f.Angle = -f.Angle
		}
		reach := f.allowance(s.Thickness)/2 + s.Width/2*math.Tan(radians(math.Abs(f.Skew)))
		at += reach + rapid.Float64Range(0, 80).Draw(t, "gap")
		f.At = at
		at += reach
		s.Folds = append(s.Folds, f)
	}
	s.Length = at + rapid.Float64Range(0.1, 80).Draw(t, "end")
	return s
}

// TestFoldAndBack: every point of the metal comes back to where it was, in any strip
// whose folds don't lay it through itself.
func TestFoldAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyStrip(t)
		f, err := NewFolding(s)
		if err != nil {
			t.Fatal(err)
		}
		at := Point{rapid.Float64Range(0, s.Length).Draw(t, "x"), rapid.Float64Range(-s.Width/2, s.Width/2).Draw(t, "y")}
		depth := rapid.Float64Range(0, s.Thickness).Draw(t, "depth")
		x := f.Fold(at, depth)
		back, d, err := f.Unfold(x)
		if err != nil {
			t.Fatal(err)
		}
		if off := back.distance(at) + math.Abs(d-depth); off > 1e-9*(1+s.Length) {
			// Metal may lie through metal: then another place folds to the same point.
			if again := f.Fold(back, d).distance(x); again > 1e-8 {
				t.Fatalf("%v at %g comes back as %v at %g, which folds %g mm away", at, depth, back, d, again)
			}
		}
	})
}

// TestFoldKeepsTheMetal: distances on a leg, the thickness and the neutral line stay
// what they are, and nothing jumps where a fold begins.
func TestFoldKeepsTheMetal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyStrip(t)
		f, err := NewFolding(s)
		if err != nil {
			t.Fatal(err)
		}
		at := Point{rapid.Float64Range(0, s.Length).Draw(t, "x"), rapid.Float64Range(-s.Width/2, s.Width/2).Draw(t, "y")}
		if d := f.Fold(at, 0).distance(f.Fold(at, s.Thickness)); math.Abs(d-s.Thickness) > 1e-9 {
			t.Fatalf("the metal is %g mm thick at %v", d, at)
		}
		for i, p := range f.folds {
			for _, side := range []float64{-p.half, p.half} {
				y := rapid.Float64Range(-s.Width/2, s.Width/2).Draw(t, "edge")
				line := Point{p.along(y, side), y}
				step := p.normal.times(1e-7)
				if d := f.Fold(line.minus(step), 3).distance(f.Fold(line.plus(step), 3)); d > 1e-6 {
					t.Fatalf("%s: the metal jumps by %g mm", foldName(i), d)
				}
			}
			b, err := Bend{Thickness: s.Thickness, Radius: p.Radius, Angle: math.Abs(p.Angle)}.Reckon()
			if err != nil {
				t.Fatal(err)
			}
			depth := b.K * s.Thickness
			if p.g < 0 {
				depth = s.Thickness - depth
			}
			const steps = 500
			sum, from := 0.0, Point{X: p.At}.minus(p.normal.times(p.half))
			for n := range steps {
				a := from.plus(p.normal.times(2 * p.half * float64(n) / steps))
				c := from.plus(p.normal.times(2 * p.half * float64(n+1) / steps))
				sum += f.Fold(a, depth).distance(f.Fold(c, depth))
			}
			if math.Abs(sum-b.Allowance) > 1e-5*b.Allowance {
				t.Fatalf("%s: the neutral line is %g mm long, not %g", foldName(i), sum, b.Allowance)
			}
		}
	})
}

// TestOutsideLengthsComeBack: the outer corners of a developed strip stand as far
// apart as the legs that it was developed from.
func TestOutsideLengthsComeBack(t *testing.T) {
	s, _ := strip120.Develop()
	f, _ := NewFolding(s)
	corner := func(i int) Point3 {
		p := f.folds[i]
		setback, _ := Bend{Thickness: 8, Radius: 16, Angle: math.Abs(p.Angle)}.Reckon()
		depth := 0.0
		if p.g > 0 {
			depth = s.Thickness
		}
		before := Point{X: p.At - p.half}
		return p.before.place(Point3{before.X + setback.OutsideSetback, 0, -depth})
	}
	near(t, "first leg", corner(0).minus(f.Fold(Point{}, 8)).X, 120, 1e-9)
	along := f.folds[1].before.x
	near(t, "second leg", corner(1).minus(corner(0)).dot(along), 90, 1e-9)
	along, _ = f.Direction()
	near(t, "third leg", f.Fold(Point{X: s.Length}, 0).minus(corner(1)).dot(along), 60, 1e-9)
}

// TestHands: mirrored twice is the same; the other hand folds to the mirror image,
// and face B shows the same part.
func TestHands(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyStrip(t)
		f, _ := NewFolding(s)
		other, err := NewFolding(s.Mirrored())
		if err != nil {
			t.Fatal(err)
		}
		behind, err := NewFolding(s.FromFaceB())
		if err != nil {
			t.Fatal(err)
		}
		twice := s.Mirrored().Mirrored()
		for i := range s.Folds {
			if s.Folds[i] != twice.Folds[i] {
				t.Fatal("mirrored twice is not the same")
			}
		}
		at := Point{rapid.Float64Range(0, s.Length).Draw(t, "x"), rapid.Float64Range(-s.Width/2, s.Width/2).Draw(t, "y")}
		depth := rapid.Float64Range(0, s.Thickness).Draw(t, "depth")
		x, flip := f.Fold(at, depth), Point{at.X, -at.Y}
		if d := other.Fold(flip, depth).distance(Point3{x.X, -x.Y, x.Z}); d > 1e-9 {
			t.Fatalf("the other hand lies %g mm off the mirror image", d)
		}
		// Seen from behind: turned over about the strip's own line.
		turned := Point3{x.X, -x.Y, -x.Z - s.Thickness}
		if d := behind.Fold(flip, s.Thickness-depth).distance(turned); d > 1e-9 {
			t.Fatalf("from face B the part lies %g mm off", d)
		}
	})
}

func TestFoldingRefuses(t *testing.T) {
	good := FoldedStrip{8, 40, 300, []Fold{{At: 100, Angle: 20, Radius: 16}, {At: 200, Angle: -20, Radius: 16}}}
	change := func(with func(*FoldedStrip)) FoldedStrip {
		s := good
		s.Folds = append([]Fold{}, good.Folds...)
		with(&s)
		return s
	}
	for says, s := range map[string]FoldedStrip{
		"5 folds":                          change(func(s *FoldedStrip) { s.Folds = make([]Fold, 5) }),
		"fold 2 begins":                    change(func(s *FoldedStrip) { s.Folds[1].At = 105 }),
		"before fold 1 has ended":          change(func(s *FoldedStrip) { s.Folds[1].At = 50 }),
		"fold 2 turns by 180 deg":          change(func(s *FoldedStrip) { s.Folds[1].Angle = 180 }),
		"fold 1 turns by 0 deg":            change(func(s *FoldedStrip) { s.Folds[0].Angle = 0 }),
		"fold 1 has an inside radius of -": change(func(s *FoldedStrip) { s.Folds[0].Radius = -16 }),
		"fold 1 has an inside radius of 1": change(func(s *FoldedStrip) { s.Folds[0].Radius = 1 }),
		"fold 2 is turned 70 deg":          change(func(s *FoldedStrip) { s.Folds[1].Skew = 70 }),
		"fold 1 begins":                    change(func(s *FoldedStrip) { s.Folds[0].At = 1 }),
		"fold 2 ends":                      change(func(s *FoldedStrip) { s.Folds[1].At = 299 }),
		"fold 2 begins 8.1 mm":             change(func(s *FoldedStrip) { s.Folds[0].Skew, s.Folds[1].At, s.Folds[1].Skew = 50, 150, -50 }),
		"the place of fold 1":              change(func(s *FoldedStrip) { s.Folds[0].At = math.NaN() }),
		"fold 1 turns by NaN":              change(func(s *FoldedStrip) { s.Folds[0].Angle = math.NaN() }),
		"the width of the strip":           change(func(s *FoldedStrip) { s.Width = math.Inf(1) }),
		"fold 1 has its neutral line":      change(func(s *FoldedStrip) { s.Folds[0].K = 0.7 }),
	} {
		if _, err := NewFolding(s); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v", says, err)
		}
	}
	f, _ := NewFolding(good)
	for _, x := range []Point3{{50, 0, 5}, {math.NaN(), 0, 0}, {50, 30, -4}, {-10, 0, -4}} {
		if at, _, err := f.Unfold(x); err == nil {
			t.Errorf("%v is no point of the strip and comes back as %v", x, at)
		}
	}
}

func TestDevelopRefuses(t *testing.T) {
	legs := func(thickness float64, legs []float64, folds ...Fold) OutsideLegs {
		return OutsideLegs{thickness, 40, legs, folds}
	}
	fold := Fold{Angle: 90, Radius: 16}
	for says, o := range map[string]OutsideLegs{
		"leg 2 is 40 mm outside, shorter than the 48": legs(8, []float64{100, 40, 100}, fold, fold),
		"leg 1 is 20 mm outside":                      legs(8, []float64{20, 100}, fold),
		"leg 2 is 20 mm outside":                      legs(8, []float64{100, 20}, fold),
		"1 folds part a strip into 2 legs":            legs(8, []float64{100}, fold),
		"leg 2 can't be NaN":                          legs(8, []float64{100, math.NaN()}, fold),
		"leg 1 can't be -5":                           legs(8, []float64{-5, 50}, fold),
		"with 4 folds":                                legs(8, []float64{50, 50, 50, 50, 50}, fold, fold, fold, fold),
		"fold 1 turns by 180":                         legs(8, []float64{100, 100}, Fold{Angle: 180, Radius: 16}),
		"thickness":                                   legs(math.NaN(), []float64{100, 100}, fold),
	} {
		if s, err := o.Develop(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v %+v", says, err, s)
		}
	}
}
