package strength

import (
	"math"
	"strings"
	"testing"
)

var m10Hole = BoltHole{Thickness: 6, Bolt: 10, Hole: 11, End: 22, Side: 25, Yield: 205, Ultimate: 515, BoltUltimate: 700}

func TestBoltHole(t *testing.T) {
	r, err := m10Hole.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "EN bearing", r.EN, 41200*1.25, 1e-4)
	near(t, "crush", r.Crush, 2.4*10*6*515, 1e-12)
	near(t, "tear-out", r.TearOut, 1.2*16.5*6*515, 1e-12)
	checkWorking(t, r.Working(), map[string]float64{"Fb": r.EN, "Rt": r.TearOut, "R": r.Lowest})
	weak := m10Hole
	weak.Stainless = true
	s, _ := weak.Reckon()
	near(t, "EN bearing of stainless", s.EN, 32900*1.25, 1e-3)
	checkWorking(t, s.Working(), map[string]float64{"fu": 411.5})
	inner := m10Hole
	inner.Pitch = 24.2
	in, _ := inner.Reckon()
	near(t, "EN bearing of a close pitch", in.EN, 2.5*(24.2/33-0.25)*515*60, 1e-9)
	near(t, "tear-out to the next hole", in.TearOut, 1.2*13.2*6*515, 1e-9)
	edge := m10Hole
	edge.Side, edge.End, edge.BoltUltimate = 13, 60, 2000
	e, _ := edge.Reckon()
	near(t, "EN bearing near the side, far from the end", e.EN, (2.8*13/11-1.7)*515*60, 1e-9)
	soft := edge
	soft.BoltUltimate = 400
	weaker, _ := soft.Reckon()
	near(t, "EN bearing of a soft bolt", weaker.EN, e.EN*400/515, 1e-9)
}

func TestBoltHoleRefuses(t *testing.T) {
	for says, change := range map[string]func(*BoltHole){
		"larger than its hole":  func(b *BoltHole) { b.Bolt = 12 },
		"breaks out of the end": func(b *BoltHole) { b.End = 5 },
		"out of the side":       func(b *BoltHole) { b.Side = 5 },
		"leaves nothing":        func(b *BoltHole) { b.Side = 5.6; b.Hole = 11.1; b.Side = 5.6 },
		"runs into":             func(b *BoltHole) { b.Pitch = 10 },
		"strength of the bolt":  func(b *BoltHole) { b.BoltUltimate = math.NaN() },
		"thickness":             func(b *BoltHole) { b.Thickness = 0 },
	} {
		b := m10Hole
		change(&b)
		if _, err := b.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error that says %q, got %v", says, err)
		}
	}
}

func TestBoltTogether(t *testing.T) {
	r, err := BoltTogether{Shear: 5000, Pull: 7000, ShearStrength: 20000, Tension: 36540}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "share", r.Share, 0.25+7000/(1.4*36540.0), 1e-12)
	near(t, "ratio", r.Ratio*r.Share, 1, 1e-12)
	pulled, _ := BoltTogether{Pull: 30000, ShearStrength: 20000, Tension: 36000}.Reckon()
	near(t, "share of pull alone", pulled.Share, 30.0/36, 1e-12)
	checkWorking(t, r.Working(), map[string]float64{"U": r.Share, "k": r.Ratio})
	for _, bad := range []BoltTogether{{}, {1, 1, 0, 5}, {-1, 1, 5, 5}, {math.NaN(), 1, 5, 5}, {1e-300, 0, 1, 1}, {1, 1, 1e308, 1}} {
		if r, err := bad.Reckon(); err == nil {
			t.Errorf("%+v gave %+v", bad, r)
		}
	}
}

// TestBoltTogetherAgreesWithBolt: what a bolt holds under a pull is where shear
// and pull together use all of it.
func TestBoltTogetherAgreesWithBolt(t *testing.T) {
	b := m10
	b.Pull = 12000
	r, _ := b.Reckon()
	both, err := BoltTogether{Shear: r.Together, Pull: b.Pull, ShearStrength: r.Shear, Tension: r.Tension}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "ratio", both.Ratio, 1, 1e-12)
}

func TestBoltHead(t *testing.T) {
	for _, c := range []struct {
		head         BoltHead
		thick, width float64
	}{
		{BoltHead{Kind: Hex, Thickness: 6, Hole: 8.4}, 6, 8.4},
		{BoltHead{Kind: Countersunk, Thickness: 6, Hole: 8.4, Sink: 4, Angle: 90}, 4, 8.4 + 16.0/6},
		{BoltHead{Kind: SquareNeck, Thickness: 6, Hole: 10}, 6, 10},
		{BoltHead{Kind: SquareNeck, Thickness: 6, Hole: 10, Turn: 45}, 6, 10 * math.Sqrt2},
		{BoltHead{Kind: SquareNeck, Thickness: 6, Hole: 10, Turn: -90}, 6, 10},
	} {
		r, err := c.head.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		near(t, string(c.head.Kind)+" bearing thickness", r.BearingThickness, c.thick, 1e-12)
		near(t, string(c.head.Kind)+" lost width", r.LostWidth, c.width, 1e-12)
		checkWorking(t, r.Working(), map[string]float64{"tb": r.BearingThickness, "dw": r.LostWidth})
	}
	for _, bad := range []BoltHead{
		{Kind: "round", Thickness: 6, Hole: 8},
		{Kind: Countersunk, Thickness: 6, Hole: 8, Sink: 6, Angle: 90},
		{Kind: Countersunk, Thickness: 6, Hole: 8, Sink: 3},
		{Kind: Countersunk, Thickness: 6, Hole: 8, Sink: math.NaN(), Angle: 90},
		{Kind: SquareNeck, Thickness: 6, Hole: 8, Turn: math.NaN()},
		{Kind: Hex, Thickness: 0, Hole: 8},
	} {
		if r, err := bad.Reckon(); err == nil {
			t.Errorf("%+v gave %+v", bad, r)
		}
	}
}
