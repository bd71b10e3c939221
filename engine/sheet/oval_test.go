package sheet

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func oval(x, y, wide, long, turn float64) Hole {
	return Hole{At: Point{x, y}, Diameter: wide, Long: long, Turn: turn}
}

// TestOvalContour: two half circles and two straight sides, whichever way it is turned.
func TestOvalContour(t *testing.T) {
	for _, turn := range []float64{0, 90, 33, -120} {
		c := oval(40, -3, 12, 20, turn).Contour()
		if err := c.Check(); err != nil {
			t.Fatal(err)
		}
		near(t, "area", c.Area(), math.Pi*36+8*12, 1e-9)
		near(t, "perimeter", c.Perimeter(), math.Pi*12+16, 1e-9)
	}
	low, high := oval(40, -3, 12, 20, 90).Contour().Bounds()
	near(t, "low x", low.X, 34, 1e-9)
	near(t, "high y", high.Y, 7, 1e-9)
}

// TestOvalApart gives the metal between an oval hole and what is beside it, by hand.
func TestOvalApart(t *testing.T) {
	along, across := oval(0, 0, 12, 20, 0), oval(0, 0, 12, 20, 90)
	for _, c := range []struct {
		name string
		a, b Hole
		want float64
	}{
		{"a round hole ahead", along, Hole{At: Point{30, 0}, Diameter: 10}, 30 - 10 - 5},
		{"a round hole beside", along, Hole{At: Point{3, 20}, Diameter: 10}, 20 - 6 - 5},
		{"ahead of one that lies across", across, Hole{At: Point{30, 0}, Diameter: 10}, 30 - 6 - 5},
		{"two end to end", along, oval(25, 0, 8, 14, 0), 25 - 10 - 7},
		{"two side by side", along, oval(2, 15, 8, 14, 0), 15 - 6 - 4},
		{"two that cross", along, oval(0, 0, 4, 60, 90), -8},
		{"a small one in its end", oval(0, 0, 12, 40, 0), Hole{At: Point{12, 0}, Diameter: 4}, -8},
		{"a square one ahead", along, Hole{At: Point{30, 0}, Diameter: 10, Square: true}, 30 - 10 - 5},
	} {
		near(t, c.name, c.a.Apart(c.b), c.want, 1e-9)
		near(t, c.name+", the other way", c.b.Apart(c.a), c.want, 1e-9)
	}
	if apart := oval(0, 0, 12, 60, 0).Apart(Hole{At: Point{20, 0}, Diameter: 4, Square: true}); apart > 0 {
		t.Errorf("a square hole within an oval one is %g apart from it", apart)
	}
	plate := Contour{{0, -20, 0}, {200, -20, 0}, {200, 20, 0}, {0, 20, 0}}
	near(t, "to the end", oval(15, 0, 12, 20, 0).ToEdge(plate), 5, 1e-9)
	near(t, "to the side", oval(100, 0, 12, 20, 90).ToEdge(plate), 10, 1e-9)
	if edge := oval(9, 0, 12, 20, 0).ToEdge(plate); edge >= 0 {
		t.Errorf("an oval hole that breaks through the end leaves %g", edge)
	}
	near(t, "to a fold", oval(15, 0, 12, 20, 0).ToFold(Fold{At: 60}), 35, 1e-9)
	near(t, "to a fold, across", oval(15, 0, 12, 20, 90).ToFold(Fold{At: 60}), 39, 1e-9)
}

// TestOvalBySamples: reach, way to a fold and metal between holes are those of points all
// round the edge.
func TestOvalBySamples(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, "n") }
		draw := func() Hole {
			h := oval(n(-50, 50), n(-50, 50), n(4, 15), 0, n(-180, 180))
			h.Long = h.Diameter + n(0.5, 30)
			return h
		}
		h, o := draw(), draw()
		fold := Fold{At: n(-80, 80), Skew: n(-10, 10)}
		sin, cos := math.Sincos(radians(fold.Skew))
		reach, toFold, apart := 0.0, math.Inf(1), math.Inf(1)
		for _, p := range edge(h) {
			reach = max(reach, (p.X-h.At.X)*cos-(p.Y-h.At.Y)*sin)
			toFold = min(toFold, ((p.X-fold.At)*cos-p.Y*sin)*math.Copysign(1, (h.At.X-fold.At)*cos-h.At.Y*sin))
			apart = min(apart, o.Contour().Distance(p))
		}
		if got := h.Reach(-fold.Skew); math.Abs(got-reach) > 0.005 {
			t.Fatalf("%+v reaches %g, its points %g", h, got, reach)
		}
		if got := h.ToFold(fold); math.Abs(got-toFold) > 0.005 {
			t.Fatalf("%+v is %g from %+v, its points %g", h, got, fold, toFold)
		}
		met := h.Contour().Contains(o.At) || slices.ContainsFunc(edge(h), o.Contour().Contains)
		if got := h.Apart(o); got > 0.05 && (met || math.Abs(got-apart) > 0.05) || got < -0.05 && !met {
			t.Fatalf("%+v and %+v are %g apart, their points %g, met %v", h, o, got, apart, met)
		}
	})
}

// edge are points all round a hole, at most 0.3 mm apart on its straight sides.
func edge(h Hole) (list []Point) {
	corners := h.Contour().Flatten(0.001)
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		steps := math.Ceil(a.distance(b) / 0.3)
		for k := range int(steps) {
			list = append(list, a.between(b, float64(k)/steps))
		}
	}
	return list
}

// TestOvalIsNoRoundHole: patterns with a slot and with a round hole are two, and so are
// those whose slots lie otherwise or are of another length.
func TestOvalIsNoRoundHole(t *testing.T) {
	flat := func(h Hole) Flat {
		c := contour(t, Strip{200, 40, End{Shape: RoundedEnd}, End{Shape: SquareEnd}})
		return Flat{Thickness: 6, Outline: c, Holes: []Hole{{At: Point{20, 0}, Diameter: 12}, h}}
	}
	base := flat(oval(150, 4, 10, 18, 0))
	for _, c := range []struct {
		name  string
		other Hole
		alike bool
	}{
		{"the same", oval(150, 4, 10, 18, 0), true},
		{"turned by half", oval(150, 4, 10, 18, 180), true},
		{"a round one", Hole{At: Point{150, 4}, Diameter: 10}, false},
		{"across", oval(150, 4, 10, 18, 90), false},
		{"longer", oval(150, 4, 10, 19, 0), false},
		{"mirrored", oval(150, -4, 10, 18, 0), true},
	} {
		r, err := Congruent(base, flat(c.other), LikeMeasured)
		if err != nil {
			t.Fatal(err)
		}
		if r.Alike() != c.alike {
			t.Errorf("%s: alike %v, want %v", c.name, r.Alike(), c.alike)
		}
	}
	slanted, other := flat(oval(150, 4, 10, 18, 30)), flat(oval(150, 4, 10, 18, -30))
	for name, c := range map[string]struct {
		a, b  Flat
		alike bool
	}{"a slanted one and its mirror image": {slanted, slanted.Mirrored(), true}, "slanted the other way": {slanted, other, false}} {
		if r, err := Congruent(c.a, c.b, LikeDrawings); err != nil || r.Alike() != c.alike {
			t.Errorf("%s: %+v, %v", name, r, err)
		}
	}
	for name, h := range map[string]Hole{"shorter than wide": oval(150, 0, 10, 9, 0), "as long as wide": oval(150, 0, 10, 10, 0), "negative": oval(150, 0, 10, -3, 0), "not finite": oval(150, 0, 10, math.NaN(), 0), "square too": {At: Point{150, 0}, Diameter: 10, Long: 20, Square: true}} {
		if err := flat(h).Check(); err == nil {
			t.Errorf("%s: taken", name)
		}
	}
}
