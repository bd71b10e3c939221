package drawing

import (
	"math"
	"math/rand/v2"
	"testing"

	"chainwale/engine/sheet"
)

// TestChords holds our lines across the flat against those that the sheet draws of the
// folded part: where each fold begins and ends on each face.
func TestChords(t *testing.T) {
	for _, p := range append(parts(t, some(60)), chainplate(t)) {
		lines, err := p.Flat.Drawing(0.01)
		if err != nil {
			t.Fatal(err)
		}
		folds, err := bands(p.Flat)
		if err != nil {
			t.Fatal(err)
		}
		folding, _ := p.Flat.Folding()
		var tangents []sheet.Polyline
		for _, l := range lines {
			if l.Kind == sheet.TangentLine {
				tangents = append(tangents, l)
			}
		}
		if len(tangents) != 4*len(folds) {
			t.Fatalf("%s: %d tangent lines of %d folds", p.Name, len(tangents), len(folds))
		}
		i := 0
		for _, depth := range []float64{0, p.Flat.Thickness} {
			for _, b := range folds {
				for _, beyond := range []float64{-b.half, b.half} {
					from, to := b.chord(p.Flat.Outline, beyond)
					for k, at := range []sheet.Point{from, to} {
						if d := minus(folding.Fold(at, depth), tangents[i].Points[k]); math.Sqrt(dot(d, d)) > 1e-9 {
							t.Errorf("%s: the end of a fold is off by %v", p.Name, d)
						}
					}
					i++
				}
			}
		}
	}
}

// TestArcs holds points of an arc against the sheet's own polygon.
func TestArcs(t *testing.T) {
	c := sheet.Contour{{Bulge: 0.3}, {X: 40, Bulge: -0.5}, {X: 50, Y: 30, Bulge: 2}, {Y: 30, Bulge: 1}}
	for i, v := range c {
		a := newArc(v, c[(i+1)%len(c)])
		for k := range 11 {
			if d := c.Distance(a.at(float64(k) / 10)); d > 1e-9 {
				t.Errorf("piece %d leaves the contour by %g", i, d)
			}
		}
	}
}

// TestProfileLegs folds strips of known outside legs, and finds the legs in the profile.
func TestProfileLegs(t *testing.T) {
	for _, o := range []sheet.OutsideLegs{
		{Thickness: 8, Width: 40, Legs: []float64{120, 90, 60}, Folds: []sheet.Fold{{Angle: 15, Radius: 16}, {Angle: -25, Radius: 16}}},
		{Thickness: 4, Width: 40, Legs: []float64{60, 80, 60}, Folds: []sheet.Fold{{Angle: 90, Radius: 8}, {Angle: 90, Radius: 8}}},
		{Thickness: 4, Width: 40, Legs: []float64{60, 80, 60, 55}, Folds: []sheet.Fold{{Angle: -90, Radius: 8}, {Angle: 60, Radius: 8}, {Angle: 20, Radius: 8}}},
		{Thickness: 4, Width: 40, Legs: []float64{60}},
	} {
		s, err := o.Develop()
		if err != nil {
			t.Fatal(err)
		}
		p := chainplate(t)
		p.Flat = sheet.Flat{Thickness: o.Thickness, Folds: s.Folds, Outline: sheet.Contour(rectangle(0, -20, s.Length, 40))}
		if len(s.Folds) == 0 {
			p.Flat.Outline = sheet.Contour(rectangle(0, -20, 60, 40))
		}
		m, err := newModel(p.Flat, slantedEye)
		if err != nil {
			t.Fatal(err)
		}
		profile := newProfile(p, m)
		if len(profile.legs) != len(o.Legs) {
			t.Fatalf("%d legs", len(profile.legs))
		}
		for i, l := range profile.legs {
			if math.Abs(l.length()-o.Legs[i]) > 1e-9 {
				t.Errorf("leg %d is %.9f long, want %g", i+1, l.length(), o.Legs[i])
			}
		}
	}
}

// TestProfileBounds holds the overall sizes against the reference strip: 120/90/60 outside
// with folds of 15 and -25 deg in 8 mm (computed apart).
func TestProfileBounds(t *testing.T) {
	p := chainplate(t)
	m, err := newModel(p.Flat, slantedEye)
	if err != nil {
		t.Fatal(err)
	}
	if b := newProfile(p, m).bounds; math.Abs(b.width()-263.951237) > 1e-4 {
		t.Errorf("the part is %.6f long overall", b.width())
	}
}

// TestSeen asks of random spots on the part whether something hides them, and compares
// with a sight walked step by step through the metal.
func TestSeen(t *testing.T) {
	draws := rand.New(rand.NewPCG(5, 5))
	asked, differ := 0, 0
	for _, p := range append(parts(t, some(8)), odd(t)[2:5]...) {
		m, err := newModel(p.Flat, slantedEye)
		if err != nil {
			t.Fatal(err)
		}
		for range 50 {
			s := spot{sheet.Point{X: m.bounds.left + draws.Float64()*m.bounds.width(), Y: m.bounds.low + draws.Float64()*m.bounds.height()}, m.thick * float64(draws.IntN(2))}
			if !m.metal(s.Point) {
				continue
			}
			hidden, sure := m.walked(s)
			if !sure {
				continue
			}
			asked++
			if m.seen(s) == hidden {
				differ++
				if differ < 5 {
					t.Logf("%s: %v: seen %v, walked hidden %v", p.Name, s, m.seen(s), hidden)
				}
			}
		}
	}
	if asked < some(250) || differ > asked/200 {
		t.Errorf("%d of %d spots differ", differ, asked)
	}
}

// walked goes from a spot to the eye in small steps and looks whether a step lies in
// metal. It is not sure where a sight only grazes metal.
func (m *model) walked(s spot) (hidden, sure bool) {
	x := m.folding.Fold(s.Point, s.depth)
	run := 0
	const pace = 0.25
	for k := 2; k < 1200; k++ {
		at, depth, err := m.folding.Unfold(plus(x, times(m.eye.toward, pace*float64(k))))
		if err == nil && depth > 0 && depth < m.thick && m.metal(at) {
			run++
		}
	}
	return run > 0, run == 0 || run > int(m.thick/pace/2)
}

// TestApart spreads places: in order, with room between, and no further than needed.
func TestApart(t *testing.T) {
	draws := rand.New(rand.NewPCG(3, 3))
	for range 300 {
		var wanted []float64
		at := 0.0
		for range 1 + draws.IntN(12) {
			at += 6 * draws.Float64()
			wanted = append(wanted, at)
		}
		got := apart(wanted, 4)
		moved, sum := false, 0.0
		for i, v := range got {
			if i > 0 && v-got[i-1] < 4-1e-9 {
				t.Fatalf("%v become %v", wanted, got)
			}
			moved = moved || math.Abs(v-wanted[i]) > 1e-9
			sum += v - wanted[i]
		}
		if math.Abs(sum) > 1e-6*float64(len(wanted)) {
			t.Fatalf("%v drift to %v", wanted, got)
		}
		if free := roomy(wanted, 4); free == moved {
			t.Fatalf("%v become %v", wanted, got)
		}
	}
}

func roomy(wanted []float64, room float64) bool {
	for i := 1; i < len(wanted); i++ {
		if wanted[i]-wanted[i-1] < room {
			return false
		}
	}
	return true
}

func TestCrosses(t *testing.T) {
	b := box{0, 0, 10, 5}
	for _, c := range []struct {
		p, q sheet.Point
		want bool
	}{
		{sheet.Point{X: -1, Y: 2}, sheet.Point{X: 11, Y: 2}, true},
		{sheet.Point{X: 2, Y: 2}, sheet.Point{X: 3, Y: 3}, true},
		{sheet.Point{X: -1, Y: 4.5}, sheet.Point{X: 2, Y: 7.5}, false},
		{sheet.Point{X: -1, Y: 4}, sheet.Point{X: 2, Y: 4.9}, true},
		{sheet.Point{X: 11, Y: -1}, sheet.Point{X: 11, Y: 9}, false},
		{sheet.Point{X: 5, Y: -9}, sheet.Point{X: 5, Y: 9}, true},
	} {
		if got := crosses(b, c.p, c.q); got != c.want {
			t.Errorf("%v to %v: %v", c.p, c.q, got)
		}
	}
}
