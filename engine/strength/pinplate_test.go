package strength

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// near holds a number against what it should be, to a share of it.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s is %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

// golden is the plate that the methods were compared on: 316 of 8 x 50 mm, 16 mm pin.
var golden = PinPlate{Thickness: 8, Width: 50, Hole: 16.3, Pin: 16, End: 25, EndRadius: 25, Yield: 205, Ultimate: 515}

func TestPinPlate(t *testing.T) {
	r, err := golden.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "Pt", r.Net, 115703.33, 1e-6)
	near(t, "Pb", r.SinglePlane, 91542.627, 1e-6)
	near(t, "Pv", r.DoublePlane, 92741.282, 1e-6)
	near(t, "Pp", r.Bearing, 32800, 1e-9)
	near(t, "Z'", r.fallAway, 0.85202924, 1e-6)
	near(t, "Av", r.shearArea, 308.70885, 1e-6)
	if r.Ultimate != r.SinglePlane || r.Governs != "single plane" {
		t.Errorf("%s governs at %g", r.Governs, r.Ultimate)
	}
}

// TestPinPlateSquareEnd holds that a square end loses nothing beside the pin, and
// that a loose pin is what the published sheet makes of it.
func TestPinPlateSquareEnd(t *testing.T) {
	square := golden
	square.EndRadius = 0
	round, _ := golden.Reckon()
	r, err := square.Reckon()
	if err != nil || r.fallAway != 0 || r.DoublePlane <= round.DoublePlane || r.Net != round.Net {
		t.Errorf("square end: %+v, %v", r, err)
	}
}

// TestPinPlateLimits: a thin wide plate counts no more than 4 t beside the hole, a
// metal that hardly stretches less than is there, and a loose pin costs strength.
func TestPinPlateLimits(t *testing.T) {
	for _, c := range []struct {
		name              string
		change            func(*PinPlate)
		effective, factor float64
	}{
		{"thin and wide", func(p *PinPlate) { p.Thickness, p.Width, p.EndRadius = 2, 100, 0 }, 8, 1},
		{"hardly stretches", func(p *PinPlate) { p.Yield, p.Width, p.EndRadius = 500, 70, 0 }, 12.929, 1},
		{"loose pin", func(p *PinPlate) { p.Pin = 16.3 / 1.2 }, 16.85, 0.84799},
		{"pin just too loose", func(p *PinPlate) { p.Pin = 16.3 / 1.12 }, 16.85, 0.87615},
		{"pin just tight enough", func(p *PinPlate) { p.Pin = 16.3 / 1.09 }, 16.85, 1},
	} {
		p := golden
		c.change(&p)
		r, err := p.Reckon()
		if err != nil {
			t.Fatal(c.name, err)
		}
		near(t, c.name+": metal that counts", r.effective, c.effective, 1e-4)
		near(t, c.name+": what the pin leaves", r.clearanceFactor, c.factor, 1e-5)
		near(t, c.name+": net", r.Net, c.factor*p.Ultimate/1.2*2*p.Thickness*c.effective, 1e-4)
	}
}

// TestPinPlateHoleOffCentre holds that only the metal on the smaller side counts.
func TestPinPlateHoleOffCentre(t *testing.T) {
	p := golden
	p.Across = 4
	moved, err := p.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "the smaller side", moved.side, 12.85, 1e-9)
	p.Across = -4
	other, _ := p.Reckon()
	if moved.Ultimate != other.Ultimate || moved.DoublePlane != other.DoublePlane {
		t.Error("left and right differ")
	}
	straight, _ := golden.Reckon()
	if !(moved.Ultimate < straight.Ultimate && moved.DoublePlane < straight.DoublePlane) {
		t.Error("a hole off the centre line costs nothing")
	}
}

func TestPinPlateRefuses(t *testing.T) {
	for says, change := range map[string]func(*PinPlate){
		"larger than the hole":       func(p *PinPlate) { p.Pin = 16.31 },
		"not smaller than the plate": func(p *PinPlate) { p.Hole = 50 },
		"breaks out of the side":     func(p *PinPlate) { p.Across = 17 },
		"breaks out of the end":      func(p *PinPlate) { p.End = 8 },
		"does not reach":             func(p *PinPlate) { p.EndRadius = 5 },
		"leaves no metal":            func(p *PinPlate) { p.End, p.EndRadius, p.Pin = 8.2, 6.7, 16.3 },
		"above its ultimate":         func(p *PinPlate) { p.Yield = 600 },
		"thickness of the plate":     func(p *PinPlate) { p.Thickness = 0 },
		"width of the plate":         func(p *PinPlate) { p.Width = math.NaN() },
		"end distance":               func(p *PinPlate) { p.End = math.Inf(1) },
		"offset of the hole":         func(p *PinPlate) { p.Across = math.NaN() },
		"end radius":                 func(p *PinPlate) { p.EndRadius = -1 },
		"ultimate strength":          func(p *PinPlate) { p.Ultimate = 1e308 },
	} {
		p := golden
		change(&p)
		r, err := p.Reckon()
		if err == nil || !strings.Contains(err.Error(), says) || r.Ultimate != 0 {
			t.Errorf("want an error that says %q, got %v and %g N", says, err, r.Ultimate)
		}
	}
}

// plates draws plates that can be made.
func plates(t *rapid.T) PinPlate {
	pin := rapid.Float64Range(4, 30).Draw(t, "pin")
	hole := pin * rapid.Float64Range(1, 1.3).Draw(t, "hole/pin")
	p := PinPlate{
		Thickness: rapid.Float64Range(2, 20).Draw(t, "thickness"),
		Hole:      hole, Pin: pin,
		Width:    hole * rapid.Float64Range(1.5, 4).Draw(t, "width/hole"),
		End:      hole * rapid.Float64Range(1, 4).Draw(t, "end/hole"),
		Yield:    rapid.Float64Range(100, 400).Draw(t, "yield"),
		Ultimate: rapid.Float64Range(400, 900).Draw(t, "ultimate"),
	}
	if rapid.Bool().Draw(t, "round") {
		p.EndRadius = p.Width / 2
	}
	return p
}

// TestPinPlateScales: twice the size in every direction holds four times the load;
// twice the metal's strength twice the load; twice the thickness no less than twice.
func TestPinPlateScales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := plates(t)
		r, err := p.Reckon()
		if err != nil {
			t.Skip(err)
		}
		k := rapid.Float64Range(0.1, 10).Draw(t, "scale")
		larger := PinPlate{Thickness: k * p.Thickness, Width: k * p.Width, Hole: k * p.Hole, Pin: k * p.Pin, End: k * p.End, EndRadius: k * p.EndRadius, Yield: p.Yield, Ultimate: p.Ultimate}
		l, err := larger.Reckon()
		if err != nil || math.Abs(l.Ultimate/r.Ultimate/(k*k)-1) > 1e-6 || math.Abs(l.Bearing/r.Bearing/(k*k)-1) > 1e-9 {
			t.Fatalf("scaled by %g: %g against %g, %v", k, l.Ultimate, r.Ultimate, err)
		}
		stronger := p
		stronger.Yield, stronger.Ultimate = k*p.Yield, k*p.Ultimate
		s, err := stronger.Reckon()
		if err != nil || math.Abs(s.Ultimate/r.Ultimate/k-1) > 1e-9 {
			t.Fatalf("%g times the strength: %g against %g, %v", k, s.Ultimate, r.Ultimate, err)
		}
	})
}

// TestPinPlateGrows: more thickness, width or end distance never weakens a plate.
func TestPinPlateGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := plates(t)
		r, err := p.Reckon()
		if err != nil {
			t.Skip(err)
		}
		more := p
		switch by := rapid.Float64Range(0, 10).Draw(t, "by"); rapid.IntRange(0, 2).Draw(t, "which") {
		case 0:
			more.Thickness += by
		case 1:
			// The end stays round with the radius it has.
			more.Width += by
		case 2:
			more.End += by
		}
		if m, err := more.Reckon(); err != nil || m.Ultimate < r.Ultimate*(1-1e-12) {
			t.Fatalf("more metal holds less: %g after %g, %v", m.Ultimate, r.Ultimate, err)
		}
	})
}

// TestPinPlateWorking holds that every step's value is the one that the result has
// and that the last strength is the least.
func TestPinPlateWorking(t *testing.T) {
	r, _ := golden.Reckon()
	want := map[string]float64{"Pt": r.Net, "Pb": r.SinglePlane, "Pv": r.DoublePlane, "Pu": r.Ultimate, "Pp": r.Bearing}
	checkWorking(t, r.Working(), want)
}
