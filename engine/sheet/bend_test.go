package sheet

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestBendVectors(t *testing.T) {
	v := vectors(t)
	if len(v.Bend) != 54 || len(v.DINV) != 66 {
		t.Fatalf("%d bends and %d values of DIN 6935", len(v.Bend), len(v.DINV))
	}
	for _, c := range v.Bend {
		r, err := Bend{Thickness: c.Thickness, Radius: c.Radius, Angle: c.Phi}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "K", r.K, c.K, 1e-9)
		near(t, "allowance", r.Allowance, c.BA, 1e-8)
		near(t, "setback", r.OutsideSetback, c.OSSB, 1e-8)
		near(t, "deduction", r.Deduction, c.BD, 1e-8)
		checkWorking(t, r.Working(), map[string]float64{"K": r.K, "BA": r.Allowance, "OSSB": r.OutsideSetback, "BD": r.Deduction, "BDlow": r.DeductionLeast, "BDhigh": r.DeductionMost})
	}
}

// TestDIN6935 holds the allowance to v of DIN 6935. Below an opening of 90 degrees the
// standard measures to the outer tangents, one R + t from where the curve begins.
func TestDIN6935(t *testing.T) {
	for _, c := range vectors(t).DINV {
		turn := 180 - c.Beta
		k, err := NeutralFactor(DIN6935, c.R, c.S)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "k", 2*k, c.K, 1e-8)
		if c.Beta <= 90 {
			arc, err := NeutralArc(c.R, c.S, k, turn)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "v", arc-2*(c.R+c.S), c.V, 1e-8)
			continue
		}
		r, err := Bend{Thickness: c.S, Radius: c.R, Angle: turn}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "v", -r.Deduction, c.V, 1e-8)
	}
}

// TestFactorMethods: the methods as their sources print them, and the spread that
// they leave at one fold.
func TestFactorMethods(t *testing.T) {
	for method, want := range map[NeutralMethod]float64{StepRule: 0.5, Aircraft: 0.4475, HandbookSoft: 0.3501, HandbookMedium: 0.4074, HandbookHard: 0.4520, DIN6935: 0.4003} {
		k, err := NeutralFactor(method, 16, 8)
		if err != nil {
			t.Fatal(err)
		}
		near(t, string(method), k, want, 5e-5)
	}
	if k, _ := NeutralFactor(StepRule, 15.9, 8); k != 0.33 {
		t.Errorf("below two thicknesses the step rule gives %g", k)
	}
	for ratio, want := range map[float64]float64{0.25: .1745, 0.5: .2497, 1: .3250, 1.5: .3690, 2.5: .4245, 3: .4443, 4: .4755, 5: .4997, 6: .5, 50: .5} {
		k, _ := NeutralFactor(DIN6935, ratio, 1)
		near(t, "DIN 6935", k, want, 5e-5)
	}
	for _, c := range []struct{ t, phi, spread float64 }{{6, 20, .36}, {8, 20, .47}, {10, 20, .59}, {8, 30, .71}, {12, 30, 1.07}, {8, 90, 2.14}, {12, 90, 3.20}} {
		r, _ := Bend{Thickness: c.t, Radius: 2 * c.t, Angle: c.phi}.Reckon()
		near(t, "spread", r.DeductionMost-r.DeductionLeast, c.spread, 0.006)
		if !(r.DeductionLeast < r.Deduction && r.Deduction < r.DeductionMost) {
			t.Errorf("%+v is not between its ends", r)
		}
	}
	if r, _ := (Bend{Thickness: 8, Radius: 16, Angle: 20, Method: AsGiven, K: 0.42}).Reckon(); r.DeductionLeast != r.DeductionMost || r.K != 0.42 {
		t.Errorf("a given factor has a spread: %+v", r)
	}
}

// TestBendProperties: no step anywhere in the angle, nothing deducted from no fold,
// more from a sharper one.
func TestBendProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		thick := rapid.Float64Range(1, 20).Draw(t, "thickness")
		radius := thick * rapid.Float64Range(0.25, 20).Draw(t, "ratio")
		at := func(angle float64) BendResult {
			r, err := Bend{Thickness: thick, Radius: radius, Angle: angle}.Reckon()
			if err != nil {
				t.Fatal(err)
			}
			return r
		}
		angle := rapid.Float64Range(0.01, 178).Draw(t, "angle")
		a, b := at(angle), at(angle+1e-6)
		slope := (thick+radius)/math.Pow(math.Cos(radians(angle)/2), 2) - (radius + a.K*thick)
		if d := b.Deduction - a.Deduction; !(slope > 0 && math.Abs(d-radians(1e-6)*slope) < 1e-3*radians(1e-6)*slope) {
			t.Fatalf("over 1e-6 deg the deduction grows by %g, not by %g", d, radians(1e-6)*slope)
		}
		if small := at(1e-6).Deduction; !(math.Abs(small) < 1e-6*thick) {
			t.Fatalf("no fold deducts %g", small)
		}
		if !(a.OutsideSetback > a.InsideSetback) {
			t.Fatal("the outside setback is not the larger")
		}
	})
}

func TestFoldStrain(t *testing.T) {
	for ratio, want := range map[float64]float64{1: .9105, 1.5: .947, 2: .967, 3: .986} {
		r, err := FoldStrain{Thickness: 10, Radius: 10 * ratio}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "thickness left", r.Thinned/10, want, 5e-4)
		checkWorking(t, r.Working(), map[string]float64{"e": r.Outer, "tb": r.Thinned, "dw": r.Bulge})
	}
	r, _ := FoldStrain{Thickness: 8, Radius: 16, Width: 40}.Reckon()
	near(t, "bulge", r.Bulge, 3.3, 0.05)
}

// TestBendRefuses what is no fold.
func TestBendRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, b := range []Bend{
		{}, {Thickness: 8, Radius: 16}, {Thickness: 8, Radius: 16, Angle: 180}, {Thickness: 8, Radius: 16, Angle: -5}, {Thickness: 8, Radius: -1, Angle: 20}, {Thickness: 8, Radius: 1.9, Angle: 20},
		{Thickness: nan, Radius: 16, Angle: 20}, {Thickness: 8, Radius: inf, Angle: 20}, {Thickness: 8, Radius: 16, Angle: nan}, {Thickness: 8, Radius: 16, Angle: 20, Method: "lead"},
		{Thickness: 8, Radius: 16, Angle: 20, Method: AsGiven, K: 0.6}, {Thickness: 8, Radius: 16, Angle: 20, Method: AsGiven, K: nan}, {Thickness: 8, Radius: 16, Angle: 20, Method: AsGiven, K: -0.1},
	} {
		if r, err := b.Reckon(); err == nil {
			t.Errorf("%+v gave %+v", b, r)
		}
	}
	if _, err := NeutralArc(1, 1, 0.4, 361); err == nil {
		t.Error("a bend of 361 degrees is taken")
	}
}
