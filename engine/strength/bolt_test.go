package strength

import (
	"math"
	"strings"
	"testing"
)

var m10 = Bolt{StressArea: 58, Diameter: 10, Yield: 450, Ultimate: 700, ThreadsInPlane: true}

func TestBolt(t *testing.T) {
	r, err := m10.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "shear in the threads", r.Shear, 1.25*16240, 1e-9)
	near(t, "tension", r.Tension, 1.25*29232, 1e-9)
	near(t, "0.2 % load", r.YieldLoad, 26100, 1e-9)
	if r.Together != r.Shear || r.Area != 58 {
		t.Errorf("without a pull: %+v", r)
	}
	checkWorking(t, r.Working(), map[string]float64{"Fv": r.Shear, "Ft": r.Tension, "Fvt": r.Together, "F02": r.YieldLoad, "A": 58})
	shank := m10
	shank.ThreadsInPlane = false
	s, _ := shank.Reckon()
	near(t, "shear of the shank", s.Shear, 0.6*700*math.Pi*25, 1e-12)
	checkWorking(t, s.Working(), map[string]float64{"A": s.Area})
}

func TestBoltUnderPull(t *testing.T) {
	b := m10
	b.Pull = 36540
	r, err := b.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "shear at the full pull", r.Together, r.Shear*(1-1/1.4), 1e-9)
	b.Countersunk, b.Pull = true, 10000
	c, err := b.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "a countersunk head", c.Tension, 0.63*700*58, 1e-12)
	near(t, "shear under its pull", c.Together, c.Shear*(1-10000/(1.4*c.Tension)), 1e-12)
}

func TestBoltRefuses(t *testing.T) {
	for says, change := range map[string]func(*Bolt){
		"above what the bolt holds": func(b *Bolt) { b.Pull = 40000 },
		"above that of the shank":   func(b *Bolt) { b.StressArea = 79 },
		"stress area":               func(b *Bolt) { b.StressArea = 0 },
		"diameter of the bolt":      func(b *Bolt) { b.Diameter = math.NaN() },
		"pull on the bolt":          func(b *Bolt) { b.Pull = -1 },
		"above its ultimate":        func(b *Bolt) { b.Yield = 701 },
	} {
		b := m10
		change(&b)
		if _, err := b.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error that says %q, got %v", says, err)
		}
	}
}
