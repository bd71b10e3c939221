package strength

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestObliqueLoad(t *testing.T) {
	square := golden
	square.EndRadius = 0
	low := golden
	low.End = 30
	for _, c := range []struct {
		name      string
		plate     PinPlate
		angle     float64
		end, side float64
	}{
		{"straight, square", square, 0, 25, 25},
		{"straight, round", golden, 0, 25, 25},
		{"a round end about the hole is the same all around", golden, 20, 25, 25},
		{"a square end is farther away off the axis", square, 20, 25 / math.Cos(20*math.Pi/180), 25 / math.Cos(20*math.Pi/180)},
		{"a hole below the round end", low, 0, 30, 25},
		{"and off its axis", low, 30, 5*math.Cos(math.Pi/6) + math.Sqrt(25*25-math.Pow(5*math.Sin(math.Pi/6), 2)), 5*math.Cos(math.Pi/3) + math.Sqrt(25*25-math.Pow(5*math.Sin(math.Pi/3), 2))},
	} {
		r, err := ObliqueLoad{Plate: c.plate, Angle: c.angle}.Reckon()
		if err != nil {
			t.Fatal(c.name, err)
		}
		near(t, c.name+": end", r.End, c.end, 1e-12)
		near(t, c.name+": side", r.Side, c.side, 1e-12)
		checkWorking(t, r.Working(), map[string]float64{"e": r.End, "s": r.Side, "w'": r.As.Width})
		if r.As.Width != 2*r.Side || r.As.End != r.End || r.As.Across != 0 {
			t.Errorf("%s: the stand-in is %+v", c.name, r.As)
		}
		if _, err := r.As.Reckon(); err != nil {
			t.Errorf("%s: the stand-in: %v", c.name, err)
		}
	}
}

func TestObliqueLoadRefuses(t *testing.T) {
	for says, o := range map[string]ObliqueLoad{
		"holds to 45 deg":      {Plate: golden, Angle: 46},
		"NaN deg":              {Plate: golden, Angle: math.NaN()},
		"shoulders":            {Plate: PinPlate{Thickness: 8, Width: 50, Hole: 16.3, Pin: 16, End: 25, EndRadius: 15, Yield: 205, Ultimate: 515}},
		"larger than the hole": {Plate: PinPlate{Thickness: 8, Width: 50, Hole: 16, Pin: 17, End: 25, Yield: 205, Ultimate: 515}},
	} {
		if _, err := o.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error that says %q, got %v", says, err)
		}
	}
}

// TestObliqueMirror: a load to port and a hole to port are a load and a hole to
// starboard seen in a mirror, and straight on nothing changes.
func TestObliqueMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := plates(t)
		p.Across = rapid.Float64Range(-1, 1).Draw(t, "across") * (p.Width - p.Hole) / 8
		angle := rapid.Float64Range(-40, 40).Draw(t, "angle")
		m := p
		m.Across = -p.Across
		a, errA := ObliqueLoad{p, angle}.Reckon()
		b, errB := ObliqueLoad{m, -angle}.Reckon()
		if (errA == nil) != (errB == nil) || errA == nil && (math.Abs(a.End-b.End) > 1e-9*a.End || math.Abs(a.Side-b.Side) > 1e-9*a.Side) {
			t.Fatalf("%+v, %v against %+v, %v", a, errA, b, errB)
		}
		straight, err := ObliqueLoad{p, 0}.Reckon()
		if err != nil {
			return
		}
		side := p.Width/2 - math.Abs(p.Across)
		// Where the hole stands in the round of the end, the end narrows the side too.
		inEnd := p.EndRadius > 0 && p.End < p.EndRadius
		if math.Abs(straight.End-p.End) > 1e-9*p.End || straight.Side > side*(1+1e-9) || !inEnd && straight.Side < side*(1-1e-9) {
			t.Fatalf("straight on, the end is %g of %g and the side %g of %g", straight.End, p.End, straight.Side, side)
		}
	})
}
