package strength

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

var goldenPin = Pin{Diameter: 16, Plate: 8, Cheek: 6, Gap: 0.5, Force: 60000, Yield: 450, Ultimate: 700}

func TestPin(t *testing.T) {
	r, err := goldenPin.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "shear", r.Shear, 168892, 1e-5)
	near(t, "moment", r.Moment, 165000, 1e-9)
	near(t, "bending", r.Bending, 159700, 1e-3)
	near(t, "plastic moment", r.PlasticMoment, 450*4096.0/6, 1e-12)
	checkWorking(t, r.Working(), map[string]float64{"V": r.Shear, "M": r.Moment, "Fb": r.Bending, "Mp": r.PlasticMoment})
}

// TestPinGaps: gaps multiply the moment, as (b+4c+2a)/(b+2a).
func TestPinGaps(t *testing.T) {
	p := goldenPin
	p.Gap = 0
	tight, _ := p.Reckon()
	for gap, want := range map[float64]float64{0.5: 1.10, 1: 1.20, 2: 1.40, 3: 1.60} {
		p.Gap = gap
		r, _ := p.Reckon()
		near(t, "the moment with gaps", r.Moment/tight.Moment, want, 1e-9)
	}
}

func TestPinRefuses(t *testing.T) {
	for says, change := range map[string]func(*Pin){
		"diameter":               func(p *Pin) { p.Diameter = 0 },
		"gap":                    func(p *Pin) { p.Gap = -0.1 },
		"cheek":                  func(p *Pin) { p.Cheek = math.NaN() },
		"thickness of the plate": func(p *Pin) { p.Plate = 1e308 },
		"force":                  func(p *Pin) { p.Force = math.Inf(1) },
		"ultimate strength":      func(p *Pin) { p.Ultimate = -700 },
	} {
		p := goldenPin
		change(&p)
		if r, err := p.Reckon(); err == nil || !strings.Contains(err.Error(), says) || r.Shear != 0 {
			t.Errorf("want an error that says %q, got %v", says, err)
		}
	}
}

// TestPinBendingIsWhereItSaysItIs: at the force of Bending the moment is 1.56 Fu W;
// a wider gap never helps.
func TestPinBendingIsWhereItSaysItIs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Pin{Diameter: rapid.Float64Range(3, 40).Draw(t, "d"), Plate: rapid.Float64Range(1, 30).Draw(t, "b"), Cheek: rapid.Float64Range(1, 20).Draw(t, "a"),
			Gap: rapid.Float64Range(0, 10).Draw(t, "c"), Yield: 205, Ultimate: rapid.Float64Range(300, 1200).Draw(t, "fu")}
		r, err := p.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		p.Force = r.Bending
		again, _ := p.Reckon()
		limit := 1.56 * p.Ultimate * math.Pi * math.Pow(p.Diameter, 3) / 32
		if math.Abs(again.Moment/limit-1) > 1e-9 {
			t.Fatalf("moment %g at the folding force, limit %g", again.Moment, limit)
		}
		p.Gap += rapid.Float64Range(0.01, 5).Draw(t, "more gap")
		if wider, _ := p.Reckon(); wider.Bending >= r.Bending {
			t.Fatal("a wider gap makes the pin stronger")
		}
	})
}

// TestPinShear holds that a pin without a measured fork shears at what it would in one.
func TestPinShear(t *testing.T) {
	r, err := PinShear{Diameter: goldenPin.Diameter, Ultimate: goldenPin.Ultimate}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	whole, _ := goldenPin.Reckon()
	near(t, "shear", r.Shear, whole.Shear, 1e-12)
	checkWorking(t, r.Working(), map[string]float64{"F_shear": r.Shear})
	for _, bad := range []PinShear{{0, 700}, {16, 0}, {math.NaN(), 700}, {16, math.Inf(1)}, {-16, 700}} {
		if r, err := bad.Reckon(); err == nil {
			t.Errorf("%+v gave %g", bad, r.Shear)
		}
	}
}
