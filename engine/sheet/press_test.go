package sheet

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestSpringbackVectors(t *testing.T) {
	v := vectors(t)
	if len(v.Springback) != 20 {
		t.Fatalf("%d cases", len(v.Springback))
	}
	for _, c := range v.Springback {
		for angle, want := range map[float64]float64{90: c.FormFor90, 20: c.FormFor20} {
			r, err := Springback{Thickness: 1, Radius: c.RiOverT / c.RiOverRf, Angle: angle, Yield: c.Y, Modulus: c.E}.Reckon()
			if err != nil {
				t.Fatal(err)
			}
			near(t, "radius under the press", r.FormRadius, c.RiOverT, 1e-7)
			near(t, "ratio", r.Ratio, c.RiOverRf, 1e-7)
			near(t, "part that stays", r.kept, c.Ks, 1e-7)
			near(t, "angle under the press", r.FormAngle, want, 1e-5)
			checkWorking(t, r.Working(), map[string]float64{"Ri": r.FormRadius, "ai": r.FormAngle, "Ri/Rf": r.Ratio})
		}
	}
}

// TestSpringbackHoldsItsEquation for any radius, also where repeated substitution
// would run away.
func TestSpringbackHoldsItsEquation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Springback{Thickness: rapid.Float64Range(0.5, 20).Draw(t, "t"), Angle: rapid.Float64Range(0.1, 60).Draw(t, "angle"),
			Yield: rapid.Float64Range(100, 1200).Draw(t, "yield"), Modulus: rapid.Float64Range(70e3, 210e3).Draw(t, "modulus")}
		s.Radius = s.Thickness * rapid.Float64Range(0.3, 300).Draw(t, "ratio")
		r, err := s.Reckon()
		if err != nil {
			return
		}
		x := r.FormRadius * s.Yield / (s.Modulus * s.Thickness)
		if !(x < 0.5) || math.Abs(4*x*x*x-3*x+1-r.Ratio) > 1e-9 || !(r.FormAngle > s.Angle) || !(r.FormRadius < s.Radius) {
			t.Fatalf("%+v gave %+v, X %g", s, r, x)
		}
	})
}

func TestHardenedSpringback(t *testing.T) {
	r, err := HardenedSpringback{Thickness: 8, Radius: 16, Angle: 20, Yield: 230, Ultimate: 600, Modulus: 193000, Austenitic: true}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "likely", r.Likely.FormAngle, 20.30, 0.005)
	if !(r.LeastAngle < r.LikelyAngle && r.LikelyAngle < r.MostAngle && r.MostAngle < 23) {
		t.Errorf("%g, %g, %g", r.LeastAngle, r.LikelyAngle, r.MostAngle)
	}
	checkWorking(t, r.Working(), map[string]float64{"aleast": r.LeastAngle, "alikely": r.LikelyAngle, "amost": r.MostAngle})
	duplex, err := HardenedSpringback{Thickness: 8, Radius: 16, Angle: 20, Yield: 460, Ultimate: 750, Modulus: 200000}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "likely of 2205", duplex.Likely.FormAngle, 20.37, 0.015)
	if _, err := (HardenedSpringback{Thickness: 8, Radius: 16, Angle: 20, Yield: 700, Ultimate: 600, Modulus: 193000}).Reckon(); err == nil {
		t.Error("a yield above the ultimate strength is taken")
	}
}

func TestPressForce(t *testing.T) {
	for _, c := range []struct {
		t, w, die, fu          float64
		textbook, chart, ohler float64
	}{{6, 40, 48, 600, 23.9, 25.6, 27.0}, {10, 50, 80, 600, 49.9, 53.2, 56.2}, {10, 50, 80, 750, 62.3, 66.6, 70.3}} {
		for method, want := range map[ForceMethod]float64{Textbook: c.textbook, Charted: c.chart, Oehler: c.ohler, GreaterForce: c.ohler} {
			r, err := PressForce{Thickness: c.t, Length: c.w, Die: c.die, Ultimate: c.fu, Method: method}.Reckon()
			if err != nil {
				t.Fatal(err)
			}
			near(t, string(method), r.Force/1000, want, 0.06)
			checkWorking(t, r.Working(), map[string]float64{"F": r.Force, "C": r.constant})
		}
	}
	if r, _ := (PressForce{Thickness: 10, Length: 50, Die: 180, Ultimate: 600}).Reckon(); r.method != Charted {
		t.Errorf("over a wide die the chart governs, not %s", r.method)
	}
	for _, p := range []PressForce{{10, 50, 49, 600, ""}, {10, 50, 201, 600, ""}, {1, 50, 8, 600, Charted}, {12, 50, 120, 600, Oehler}, {8, 50, 64, 600, "guess"}, {8, math.NaN(), 64, 600, ""}, {8, 50, 64, -1, ""}} {
		if r, err := p.Reckon(); err == nil {
			t.Errorf("%+v gave %g", p, r.Force)
		}
	}
}

func TestDie(t *testing.T) {
	for thick, times := range map[float64]float64{2: 6, 2.5: 6, 2.8: 8, 3: 8, 8: 8, 8.5: 10, 10: 10, 12: 10, 15: 12} {
		r, err := Die{Thickness: thick, Angle: 20}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "opening", r.Opening, times*thick, 1e-9)
		checkWorking(t, r.Working(), map[string]float64{"Vt": r.Opening, "Rn": r.NaturalRadius, "b": r.Flange})
	}
	square, _ := Die{Thickness: 6, Angle: 90, Given: 50}.Reckon()
	near(t, "flange without roll-off", square.Flange-4, 0.7071*50, 1e-2)
	if v, _ := OpeningFor(16); math.Abs(v-16/0.163) > 1e-9 {
		t.Errorf("opening %g", v)
	}
	for _, d := range []Die{{17, 20, 0}, {8, 121, 0}, {8, 0, 0}, {8, 20, -1}, {math.NaN(), 20, 0}} {
		if r, err := d.Reckon(); err == nil {
			t.Errorf("%+v gave %+v", d, r)
		}
	}
}

func TestRamTravel(t *testing.T) {
	cases := vectors(t).AirBend
	if len(cases) != 21 {
		t.Fatalf("%d cases", len(cases))
	}
	for _, c := range cases {
		r, err := RamTravel{Die: c.V, Shoulder: c.Rd, Thickness: c.T, Radius: c.R, Angle: c.Alpha}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "travel", r.Travel, c.D, 1e-6)
		near(t, "slope", r.Slope, c.DegPerMM, 1e-6)
		checkWorking(t, r.Working(), map[string]float64{"D": r.Travel, "a'": r.Slope})
	}
	if r, err := (RamTravel{Die: 48, Shoulder: 4, Thickness: 6, Radius: 40, Angle: 90}).Reckon(); err == nil {
		t.Errorf("a fold wider than the die gave %+v", r)
	}
}

func TestMinRadius(t *testing.T) {
	for _, c := range []struct {
		metal         string
		t             float64
		grain         Grain
		elongation    float64
		radius, usual float64
	}{
		{"316L", 6, AcrossGrain, 0, 6, 12}, {"316L", 6, AlongGrain, 0, 7, 14}, {"316L", 6, UnknownGrain, 40, 7, 14}, {"316L", 6, AcrossGrain, 8, 34.5, 34.5},
		{"2205", 8, AcrossGrain, 25, 20, 24}, {"titanium grade 2", 1.8, AcrossGrain, 0, 3.6, 3.6}, {"titanium grade 2", 3, AcrossGrain, 0, 7.5, 7.5}, {"titanium grade 5", 4.75, AcrossGrain, 10, 23.75, 28.5},
	} {
		r, err := MinRadius{c.metal, c.t, c.grain, c.elongation}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.metal, r.Radius, c.radius, 1e-9)
		near(t, c.metal+" usual", r.Usual, c.usual, 1e-9)
		checkWorking(t, r.Working(), map[string]float64{"Rmin": r.Radius, "Rusual": r.Usual})
	}
	for _, m := range []MinRadius{{"lead", 6, AcrossGrain, 0}, {"titanium grade 5", 6, AcrossGrain, 0}, {"316", 21, AcrossGrain, 0}, {"316", 20, AlongGrain, 0}, {"316", 6, "", 0}, {"316", math.NaN(), AcrossGrain, 0}, {"316", 6, AcrossGrain, -1}, {"316", 6, AcrossGrain, math.NaN()}} {
		if r, err := m.Reckon(); err == nil {
			t.Errorf("%+v gave %+v", m, r)
		}
	}
	names, err := RadiusMetals()
	if err != nil || len(names) != 7 {
		t.Errorf("%v %v", names, err)
	}
}

func TestHoleToFold(t *testing.T) {
	r, err := HoleToFold{Thickness: 8, Radius: 16, Angle: 20, Die: 63}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "die rule", r.Distance, 32.5, 1e-9)
	near(t, "least", r.Least, 6.7027834/2+8, 1e-7)
	r, _ = HoleToFold{Thickness: 8, Radius: 16, Angle: 90, Die: 48}.Reckon()
	near(t, "metal rule", r.Distance, 30.162525301/2+20, 1e-7)
	checkWorking(t, r.Working(), map[string]float64{"d": r.Distance, "dleast": r.Least})
	if _, err := (HoleToFold{Thickness: 8, Radius: 16, Angle: 20}).Reckon(); err == nil {
		t.Error("a die that is missing is taken")
	}
}

func TestTolerances(t *testing.T) {
	for nominal, want := range map[float64][2]float64{5: {.150, .195}, 6: {.150, .195}, 8: {.180, .240}, 12: {.220, .290}, 18: {.220, .290}, 20: {.260, .340}, 40: {.320, .410}} {
		for i, grade := range []int{11, 12} {
			r, err := Fit{nominal, grade, 11}.Reckon()
			if err != nil {
				t.Fatal(err)
			}
			near(t, "clearance", r.Most, want[i], 1e-9)
			checkWorking(t, r.Working(), map[string]float64{"cmost": r.Most})
		}
	}
	for _, c := range []struct{ class, t, nominal, want float64 }{{1, 3, 2, .10}, {1, 3.15, 35, .25}, {1, 6, 34.9, .25}, {1, 10, 200, .35}, {1, 12, 1500, .65}, {2, 6, 2, .7}, {2, 10, 50, 1.3}, {2, 12, 500, 2.3}} {
		v, err := CutTolerance(int(c.class), c.t, c.nominal)
		if err != nil || v != c.want {
			t.Errorf("%+v gave %g, %v", c, v, err)
		}
	}
	for _, c := range [][3]float64{{1, 8, 2}, {1, 16, 50}, {3, 8, 50}, {1, 8, 2000}, {1, 8, -1}, {1, math.NaN(), 50}, {1, 8, math.NaN()}, {1, 1, 50}} {
		if v, err := CutTolerance(int(c[0]), c[1], c[2]); err == nil {
			t.Errorf("%v gave %g", c, v)
		}
	}
	for quality, want := range map[int]float64{1: .08, 2: .22, 3: .5} {
		u, err := CutSlant(quality, 10)
		near(t, "slant", u, want, 1e-9)
		if err != nil {
			t.Error(err)
		}
	}
	if v, err := GeneralTolerance("m", 120); err != nil || v != .3 {
		t.Errorf("%g %v", v, err)
	}
	for _, c := range []string{"x", "over", "v"} {
		if v, err := GeneralTolerance(c, 1); err == nil {
			t.Errorf("class %s gave %g", c, v)
		}
	}
}

// The metal between a hole and a fold's line, by hand: 20 mm along and 10 mm across from a
// line at 30 deg is 20 cos 30 - 10 sin 30 from it.
func TestToFold(t *testing.T) {
	f := Fold{At: 100, Skew: 30}
	for _, c := range []struct {
		hole Hole
		want float64
	}{
		{Hole{At: Point{120, 10}, Diameter: 8}, 20*math.Sqrt(3)/2 - 5 - 4},
		{Hole{At: Point{80, -10}, Diameter: 8}, 20*math.Sqrt(3)/2 - 5 - 4},
		{Hole{At: Point{120, 10}, Diameter: 8, Square: true}, 20*math.Sqrt(3)/2 - 5 - 4*math.Sqrt2},
		{Hole{At: Point{100, 0}, Diameter: 8}, -4},
	} {
		if got := c.hole.ToFold(f); !(math.Abs(got-c.want) < 1e-9) {
			t.Errorf("%+v: %v, wanted %v", c.hole, got, c.want)
		}
	}
}
