package strength

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestStrip(t *testing.T) {
	for _, c := range []struct{ offset, plastic, first float64 }{
		{0, 1.0, 82000}, {1, 0.780776, 46857.1}, {2, 0.618034, 32800}, {4, 0.414214, 20500},
	} {
		r, err := Strip{Thickness: 8, Width: 50, Offset: c.offset, Yield: 205, Ultimate: 515}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "plastic", r.Plastic/82000, c.plastic, 1e-5)
		near(t, "first yield", r.FirstYield, c.first, 1e-5)
		near(t, "gross", r.Gross, 82000, 1e-12)
		checkWorking(t, r.Working(), map[string]float64{"Np": r.Plastic, "N1": r.FirstYield, "Ng": r.Gross, "Nu": r.Net})
	}
	holed, _ := Strip{Thickness: 8, Width: 50, Hole: 16.3, Yield: 205, Ultimate: 515}.Reckon()
	near(t, "net", holed.Net, 138844, 1e-12)
	for _, bad := range []Strip{{0, 50, 0, 0, 205, 515}, {8, 50, 50, 0, 205, 515}, {8, 50, 0, -1, 205, 515}, {8, 50, 0, math.NaN(), 205, 515}, {8, 1e308, 0, 0, 205, 515}, {8, 50, 0, 0, 600, 515}} {
		if r, err := bad.Reckon(); err == nil {
			t.Errorf("%+v gave %+v", bad, r)
		}
	}
}

// TestSectionOfOrdinaryBoats holds the use of yield at working load of an ordinary
// 26-footer's lower (30 x 5 mm, 8 kN, 35 mm from pin to the first hold) two and
// five degrees out of plane and ten in it.
func TestSectionOfOrdinaryBoats(t *testing.T) {
	s := Section{Thickness: 5, Width: 30, Force: 8000, Lever: 35, Yield: 170}
	for _, c := range []struct{ out, in, want float64 }{{2, 0, 0.77}, {5, 0, 1.46}, {0, 10, 0.69}} {
		s.Out, s.In = c.out, c.in
		r, err := s.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "use of yield", r.Elastic, c.want, 0.006)
		if r.Plastic >= r.Elastic {
			t.Errorf("the plastic use %g is not below the elastic %g", r.Plastic, r.Elastic)
		}
		checkWorking(t, r.Working(), map[string]float64{"ue": r.Elastic, "up": r.Plastic, "N": r.Tension, "Mo": r.OutMoment, "Mi": r.InMoment})
	}
}

// TestSectionAgreesWithStrip: a wire in line but off the mid-plane is the strip's own case.
func TestSectionAgreesWithStrip(t *testing.T) {
	strip, _ := Strip{Thickness: 8, Width: 50, Hole: 12, Offset: 3, Yield: 205, Ultimate: 515}.Reckon()
	first, _ := Section{Thickness: 8, Width: 50, Hole: 12, Offset: -3, Force: strip.FirstYield, Yield: 205}.Reckon()
	near(t, "elastic use at first yield", first.Elastic, 1, 1e-12)
	full, _ := Section{Thickness: 8, Width: 50, Hole: 12, Offset: 3, Force: strip.Plastic, Yield: 205}.Reckon()
	near(t, "plastic use when all has yielded", full.Plastic, 1, 1e-12)
}

// TestSectionWithHole: bent in its plane, a strip has lost only the middle.
func TestSectionWithHole(t *testing.T) {
	r, err := Section{Thickness: 8, Width: 50, Hole: 20, Force: 10000, Lever: 100, In: 30, Yield: 200}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	tension, moment := 10000*math.Cos(math.Pi/6), 10000*0.5*100
	near(t, "elastic", r.Elastic, (tension/240+moment/3120)/200, 1e-9)
	near(t, "plastic", r.Plastic, math.Pow(tension/240/200, 2)+moment/(4200*200), 1e-9)
}

func TestSectionRefuses(t *testing.T) {
	good := Section{Thickness: 5, Width: 30, Force: 8000, Lever: 35, Yield: 170}
	for says, change := range map[string]func(*Section){
		"out of the strip's plane": func(s *Section) { s.Out = 60 },
		"in the strip's plane":     func(s *Section) { s.In = math.NaN() },
		"hole":                     func(s *Section) { s.Hole = 30 },
		"lever":                    func(s *Section) { s.Lever = -1 },
		"mid-plane":                func(s *Section) { s.Offset = math.Inf(1) },
		"yield":                    func(s *Section) { s.Yield = 0 },
	} {
		s := good
		change(&s)
		if _, err := s.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error that says %q, got %v", says, err)
		}
	}
}

// TestSectionGrows: more angle, lever or offset never uses less of the yield, and
// left is as right.
func TestSectionGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Section{Thickness: rapid.Float64Range(2, 15).Draw(t, "t"), Width: rapid.Float64Range(20, 80).Draw(t, "w"), Force: rapid.Float64Range(100, 5e4).Draw(t, "F"),
			Lever: rapid.Float64Range(1, 200).Draw(t, "lever"), Out: rapid.Float64Range(0, 20).Draw(t, "out"), In: rapid.Float64Range(0, 20).Draw(t, "in"), Yield: 170}
		r, err := s.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		mirror := s
		mirror.Out, mirror.In = -s.Out, -s.In
		if m, _ := mirror.Reckon(); m.Elastic != r.Elastic || m.Plastic != r.Plastic {
			t.Fatal("left and right differ")
		}
		more := s
		more.Lever += rapid.Float64Range(0, 100).Draw(t, "more lever")
		if m, _ := more.Reckon(); m.Elastic < r.Elastic || m.Plastic < r.Plastic {
			t.Fatal("a longer lever uses less")
		}
	})
}

func TestFold(t *testing.T) {
	for ratio, want := range map[float64]float64{0.5: 1.523, 1: 1.288, 1.5: 1.200, 2: 1.153, 3: 1.105, 5: 1.064, 10: 1.033} {
		r, err := Fold{Force: 10000, Turn: 8, Thickness: 6, InsideRadius: 6 * ratio}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "curve factor", r.CurveFactor, want, 5e-4)
		near(t, "reaction", r.Reaction, 20000*math.Sin(4*math.Pi/180), 1e-12)
		checkWorking(t, r.Working(), map[string]float64{"R": r.Reaction, "Ki": r.CurveFactor})
	}
	for _, bad := range []Fold{{10, 8, 6, 0}, {10, 8, 6, 1}, {10, 181, 6, 6}, {10, -1, 6, 6}, {10, math.NaN(), 6, 6}, {-1, 8, 6, 6}, {10, 8, 0, 6}, {10, 8, 1, 1e6}} {
		if r, err := bad.Reckon(); err == nil {
			t.Errorf("%+v gave %+v", bad, r)
		}
	}
}
