package sheet

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func contour(t *testing.T, s Strip) Contour {
	t.Helper()
	c, err := s.Contour()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestKnownOutlines: areas and lengths that follow from the school's formulas.
func TestKnownOutlines(t *testing.T) {
	quarter := math.Tan(math.Pi / 8)
	for _, c := range []struct {
		name            string
		outline         Contour
		area, perimeter float64
	}{
		{"stadium", contour(t, Strip{200, 40, End{Shape: RoundedEnd}, End{Shape: RoundedEnd}}), 160*40 + 400*math.Pi, 320 + 40*math.Pi},
		{"plain", contour(t, Strip{200, 40, End{}, End{Shape: SquareEnd}}), 8000, 480},
		{"corners", contour(t, Strip{200, 40, End{Corner: 5}, End{Corner: 5}}), 8000 - (4-math.Pi)*25, 480 - 40 + 10*math.Pi},
		{"whole corners", contour(t, Strip{200, 40, End{Corner: 20}, End{}}), 180*40 + 200*math.Pi, 2*180 + 40 + 20*math.Pi},
		{"flat arc", contour(t, Strip{100, 40, End{}, End{Shape: RoundedEnd, Radius: 25}}), 90*40 + 625*math.Asin(0.8) - 15*20, 90*2 + 40 + 50*math.Asin(0.8)},
		{"circle", Contour{{-5, 0, 1}, {5, 0, 1}}, 25 * math.Pi, 10 * math.Pi},
		{"clockwise circle", Contour{{-5, 0, -1}, {5, 0, -1}}, 25 * math.Pi, 10 * math.Pi},
		// An arc that turns clockwise takes its segment away.
		{"bite", Contour{{0, 0, 0}, {10, 0, -quarter}, {20, 10, 0}, {0, 10, 0}}, 150 - (25*math.Pi - 50), 10 + 5*math.Pi + 20 + 10},
	} {
		near(t, c.name+" area", c.outline.Area(), c.area, 1e-9*c.area)
		near(t, c.name+" perimeter", c.outline.Perimeter(), c.perimeter, 1e-9*c.perimeter)
		if err := c.outline.Check(); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		m := c.outline.Mirrored()
		near(t, c.name+" mirrored", m.signed(), c.outline.signed(), 1e-9*c.area)
		if err := m.Check(); err != nil {
			t.Errorf("%s mirrored: %v", c.name, err)
		}
	}
}

// anyStripOutline draws a strip with any ends.
func anyOutline(t *rapid.T) (Strip, Contour) {
	s := Strip{Length: rapid.Float64Range(220, 400).Draw(t, "length"), Width: rapid.Float64Range(20, 60).Draw(t, "width")}
	end := func(what string) End {
		switch rapid.IntRange(0, 2).Draw(t, what) {
		case 0:
			return End{Corner: s.Width / 2 * rapid.Float64Range(0, 1).Draw(t, "corner")}
		case 1:
			return End{Shape: RoundedEnd, Radius: s.Width / 2 * rapid.Float64Range(1, 3).Draw(t, "radius")}
		}
		nose := s.Width * rapid.Float64Range(0.4, 1.4).Draw(t, "nose")
		return End{Shape: TaperedEnd, Nose: nose, Taper: nose/2 + s.Width*rapid.Float64Range(0.5, 1).Draw(t, "taper")}
	}
	s.Start, s.Finish = end("start"), end("finish")
	c, err := s.Contour()
	if err != nil {
		t.Fatalf("%+v: %v", s, err)
	}
	return s, c
}

// TestOutlineAgainstItsPolygon: area, length, distance and containment agree with a
// fine polygon worked on by other means.
func TestOutlineAgainstItsPolygon(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, c := anyOutline(t)
		polygon := c.Flatten(0.001)
		var area, perimeter float64
		for i, p := range polygon {
			q := polygon[(i+1)%len(polygon)]
			area += p.cross(q) / 2
			perimeter += p.distance(q)
		}
		if math.Abs(area-c.Area()) > 0.001*c.Perimeter() || math.Abs(perimeter-c.Perimeter()) > 0.01 || c.signed() < 0 {
			t.Fatalf("area %g and %g, perimeter %g and %g", c.signed(), area, c.Perimeter(), perimeter)
		}
		low, high := c.Bounds()
		if math.Abs(low.X) > 1e-9 || math.Abs(high.X-s.Length) > 1e-9 {
			t.Fatalf("it reaches from %g to %g", low.X, high.X)
		}
		at := Point{rapid.Float64Range(-20, s.Length+20).Draw(t, "x"), rapid.Float64Range(-50, 50).Draw(t, "y")}
		turns, nearest := 0.0, math.Inf(1)
		for i, p := range polygon {
			q := polygon[(i+1)%len(polygon)]
			turns += math.Atan2(p.minus(at).cross(q.minus(at)), p.minus(at).dot(q.minus(at)))
			nearest = min(nearest, segment{from: p, to: q}.distanceTo(at))
		}
		if math.Abs(nearest-c.Distance(at)) > 0.0011 {
			t.Fatalf("%v lies %g from the edge, by the polygon %g", at, c.Distance(at), nearest)
		}
		if inside := math.Abs(turns) > math.Pi; nearest > 0.002 && inside != c.Contains(at) {
			t.Fatalf("%v inside: %v, by the polygon %v", at, c.Contains(at), inside)
		}
	})
}

// TestPiecesApart: distances of lines and arcs against points laid along both.
func TestPiecesApart(t *testing.T) {
	vertex := rapid.Custom(func(t *rapid.T) Vertex {
		bulge := 0.0
		if rapid.Bool().Draw(t, "arc") {
			bulge = rapid.Float64Range(-2, 2).Draw(t, "bulge")
		}
		return Vertex{rapid.Float64Range(-50, 50).Draw(t, "x"), rapid.Float64Range(-50, 50).Draw(t, "y"), bulge}
	})
	rapid.Check(t, func(t *rapid.T) {
		a := newSegment(vertex.Draw(t, "a"), vertex.Draw(t, "b"))
		b := newSegment(vertex.Draw(t, "c"), vertex.Draw(t, "d"))
		if a.from.distance(a.to) < 1 || b.from.distance(b.to) < 1 {
			return
		}
		const n = 300
		least := math.Inf(1)
		for i := range n + 1 {
			least = min(least, b.distanceTo(a.at(float64(i)/n)))
		}
		got, step := a.apart(b), a.length()/n
		if got > least+1e-6 || got < least-step {
			t.Fatalf("%+v and %+v are %g apart, by points %g", a, b, got, least)
		}
		for _, p := range a.crossings(b) {
			if a.distanceTo(p) > 1e-4 || b.distanceTo(p) > 1e-4 {
				t.Fatalf("%v is no crossing of %+v and %+v", p, a, b)
			}
		}
	})
}

func TestOutlineRefuses(t *testing.T) {
	for says, c := range map[string]Contour{
		"two corners":     {{0, 0, 0}},
		"is not finite":   {{0, 0, 0}, {10, math.NaN(), 0}, {10, 10, 0}},
		"with a bulge":    {{0, 0, 1e6}, {10, 0, 0}, {10, 10, 0}},
		"in one place":    {{0, 0, 0}, {10, 0, 0}, {10, 0, 0}, {0, 10, 0}},
		"corners 3 and 1": {{0, 0, 0}, {10, 0, 0}, {0, 0, 0}},
		"meets itself at": {{0, 0, 0}, {10, 10, 0}, {10, 0, 0}, {0, 10, 0}},
		"(5, 0)":          {{0, 0, 0}, {10, 0, 0}, {10, 10, 0}, {5, 0, 0}, {0, 10, 0}},
		"corners 2 and 3": {{0, 0, 0}, {20, 0, 0}, {20, 10, -1.5}, {10, 10, 0}, {0, 10, 0}},
		"corners 1 and 2": {{0, 0, 0}, {20, 0, 0}, {10, 0, 0}, {10, 10, 0}},
		"encloses":        {{0, 0, 0}, {20, 0, 0}},
	} {
		if err := c.Check(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v", says, err)
		}
	}
	for says, s := range map[string]Strip{
		"the far end":       {100, 40, End{}, End{Corner: 21}},
		"the near end":      {100, 40, End{Shape: RoundedEnd, Radius: 19}, End{}},
		"too short":         {100, 40, End{Shape: TaperedEnd, Nose: 30, Taper: 15}, End{}},
		"needs the":         {100, 40, End{Shape: TaperedEnd}, End{}},
		"the ends take":     {30, 40, End{Shape: RoundedEnd}, End{Shape: RoundedEnd}},
		"not \"pointed\"":   {30, 40, End{Shape: "pointed"}, End{}},
		"the width":         {100, math.NaN(), End{}, End{}},
		"a corner of NaN":   {100, 40, End{Corner: math.NaN()}, End{}},
		"length of the str": {-1, 40, End{}, End{}},
	} {
		if c, err := s.Contour(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v %v", says, err, c)
		}
	}
}

// chainplate is a strip with a round head, a pin hole, three bolts and a fold.
func chainplate(t testing.TB) Flat {
	c, err := Strip{266, 40, End{Shape: RoundedEnd}, End{Corner: 6}}.Contour()
	if err != nil {
		t.Fatal(err)
	}
	return Flat{Metal: "316L", Thickness: 6, Outline: c, Folds: []Fold{{At: 80, Angle: 15, Radius: 12}},
		Holes: []Hole{{Name: "pin", At: Point{20, 0}, Diameter: 16.3}, {At: Point{130, 0}, Diameter: 10.5}, {At: Point{190, 0}, Diameter: 10.5}, {Name: "square", At: Point{250, 0}, Diameter: 10, Square: true}}}
}

func TestFlat(t *testing.T) {
	f := chainplate(t)
	if err := f.Check(); err != nil {
		t.Fatal(err)
	}
	list, err := f.Distances()
	if err != nil || len(list) != 4+6+4 {
		t.Fatalf("%d distances, %v", len(list), err)
	}
	want := map[string]float64{"pin edge": 20 - 8.15, "pin fold 1": 60 - 8.15, "hole 2 pin": 110 - 8.15 - 5.25, "hole 3 hole 2": 60 - 10.5, "square edge": 11, "square hole 3": 60 - 5 - 5.25, "hole 2 edge": 20 - 5.25, "square fold 1": 165}
	for _, d := range list {
		if w, ok := want[d.From+" "+d.To]; ok {
			near(t, d.From+" to "+d.To, d.Clear, w, 1e-9)
			delete(want, d.From+" "+d.To)
		}
	}
	if len(want) > 0 {
		t.Errorf("not given: %v in %v", want, list)
	}
	near(t, "cut", f.Cut()-f.Outline.Perimeter(), math.Pi*(16.3+21)+40, 1e-9)
	near(t, "area", f.Outline.Area()-f.Area(), math.Pi/4*(16.3*16.3+2*10.5*10.5)+100, 1e-9)
}

func TestFlatRefuses(t *testing.T) {
	for says, change := range map[string]func(*Flat){
		"pin does not lie":               func(f *Flat) { f.Holes[0].At.X = 5 },
		"hole 2 does not lie":            func(f *Flat) { f.Holes[1].At.Y = 16 },
		"square does not lie":            func(f *Flat) { f.Holes[3].At.Y = 15.5 },
		"hole 2 and hole 3 run":          func(f *Flat) { f.Holes[2].At.X = 140 },
		"hole 3 and square run":          func(f *Flat) { f.Holes[2].At.X = 245 },
		"hole 2 lies in fold 1":          func(f *Flat) { f.Holes[1].At.X = 86 },
		"hole 2 can't be 0":              func(f *Flat) { f.Holes[1].Diameter = 0 },
		"the place of pin is not finite": func(f *Flat) { f.Holes[0].At.Y = math.Inf(1) },
		"the outline meets":              func(f *Flat) { f.Outline[0].Y = 30 },
		"begins at 0": func(f *Flat) {
			for i := range f.Outline {
				f.Outline[i].X -= 5
			}
		},
		"fold 1 turns": func(f *Flat) { f.Folds[0].Angle = 200 },
	} {
		f := chainplate(t)
		change(&f)
		if err := f.Check(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v", says, err)
		}
	}
}

// What lies to either side of a point: a round end, a notch, and a point outside.
func TestAcross(t *testing.T) {
	end := Contour{{20, -20, 0}, {100, -20, 0}, {100, 20, 0}, {20, 20, 1}}
	notched := Contour{{0, -20, 0}, {100, -20, 0}, {100, 20, 0}, {60, 20, 0}, {60, 5, 0}, {40, 5, 0}, {40, 20, 0}, {0, 20, 0}}
	for _, c := range []struct {
		contour   Contour
		at        Point
		low, high float64
		ok        bool
	}{
		{end, Point{8, 3}, -16, 16, true}, // sqrt(20^2 - 12^2)
		{end, Point{50, 0}, -20, 20, true},
		{end, Point{0.1, 10}, 0, 0, false},
		{notched, Point{50, 0}, -20, 5, true},
		{notched, Point{40, 0}, -20, 5, true}, // along the notch's side
		{notched, Point{50, 10}, 0, 0, false},
	} {
		low, high, ok := c.contour.Across(c.at)
		if ok != c.ok || !(math.Abs(low-c.low) < 1e-9) || !(math.Abs(high-c.high) < 1e-9) {
			t.Errorf("at %v: from %v to %v, %v; wanted %v to %v", c.at, low, high, ok, c.low, c.high)
		}
	}
}
