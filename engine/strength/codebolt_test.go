package strength

import (
	"math"
	"strings"
	"testing"
)

var m20 = ENBolt{StressArea: 245, Diameter: 20, Ultimate: 800, ThreadFactor: 0.6, GammaM2: 1.25, ThreadsInPlane: true}

// TestENBolt holds the values that an open program for EN 1993-1-8 tests itself
// with: double shear of M20 8.8 is 188.0 kN in the threads and 241.3 kN in the shank,
// the tension of 10.9 is 176.4 kN.
func TestENBolt(t *testing.T) {
	r, err := m20.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "double shear in the threads", 2*r.Shear, 188000, 1e-3)
	checkWorking(t, r.Working(), map[string]float64{"A": 245, "Fv,Rd": r.Shear, "Ft,Rd": r.Tension})
	shank := m20
	shank.ThreadsInPlane = false
	s, _ := shank.Reckon()
	near(t, "double shear of the shank", 2*s.Shear, 241300, 1e-3)
	checkWorking(t, s.Working(), map[string]float64{"A": math.Pi * 100, "Fv,Rd": s.Shear})
	hard := m20
	hard.Ultimate, hard.ThreadFactor = 1000, 0.5
	h, _ := hard.Reckon()
	near(t, "tension of 10.9", h.Tension, 176400, 1e-12)
	near(t, "shear of 10.9 in the threads", h.Shear, 0.5*1000*245/1.25, 1e-12)
	hard.Countersunk = true
	c, _ := hard.Reckon()
	near(t, "tension of a countersunk head", c.Tension, h.Tension*0.7, 1e-12)
}

func TestENBoltRefuses(t *testing.T) {
	for says, change := range map[string]func(*ENBolt){
		"stress area":             func(b *ENBolt) { b.StressArea = 0 },
		"above that of the shank": func(b *ENBolt) { b.StressArea = 315 },
		"diameter of the bolt":    func(b *ENBolt) { b.Diameter = math.NaN() },
		"ultimate strength":       func(b *ENBolt) { b.Ultimate = math.Inf(1) },
		"shear factor":            func(b *ENBolt) { b.ThreadFactor = 0.55 },
		"partial factor":          func(b *ENBolt) { b.GammaM2 = 0.9 },
	} {
		b := m20
		change(&b)
		if r, err := b.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error that says %q, got %+v and %v", says, r, err)
		}
	}
}

// TestENContactAgreesWithENPin: both speak of the same stress.
func TestENContactAgreesWithENPin(t *testing.T) {
	c := ENContact{Pin: 16, Hole: 16.3, Thickness: 8, Service: 24000, Yield: 205, Modulus: 200000, GammaM6: 1}
	r, err := c.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	p, _ := enGolden.Reckon()
	if r.Stress != p.Contact || r.Limit != p.ContactLimit {
		t.Errorf("%g and %g, the pin says %g and %g", r.Stress, r.Limit, p.Contact, p.ContactLimit)
	}
	checkWorking(t, r.Working(), map[string]float64{"sh": r.Stress, "fh": r.Limit})
	for says, change := range map[string]func(*ENContact){
		"larger than the hole": func(c *ENContact) { c.Hole = 15 },
		"thickness":            func(c *ENContact) { c.Thickness = 0 },
		"service load":         func(c *ENContact) { c.Service = math.NaN() },
		"elastic modulus":      func(c *ENContact) { c.Modulus = -1 },
		"partial factor":       func(c *ENContact) { c.GammaM6 = 0 },
	} {
		bad := c
		change(&bad)
		if r, err := bad.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error that says %q, got %+v and %v", says, r, err)
		}
	}
}

// TestAISCBolt holds an M10 of A4-70, whose strengths times the code's 0.75 are
// 18.56 kN in shear and 30.93 kN in tension, and what tension is left beside a
// shear of 150 MPa: 349.2 MPa by the code's line with its factor in.
func TestAISCBolt(t *testing.T) {
	b := AISCBolt{Diameter: 10, Ultimate: 700, ThreadsInPlane: true}
	r, err := b.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "shear", 0.75*r.Shear, 18560, 1e-3)
	near(t, "tension", 0.75*r.Tension, 30930, 1e-3)
	if r.Share != 0 {
		t.Errorf("no load uses %g", r.Share)
	}
	b.Sheared, b.Pulled = 150*r.area/0.75, 349.2*r.area
	both, _ := b.Reckon()
	near(t, "what is left of the tension", both.Share, 1, 1e-3)
	checkWorking(t, both.Working(), map[string]float64{"Rn,v": r.Shear, "Rn,t": r.Tension, "U": both.Share})
	b.Sheared, b.Pulled = r.Shear/2, r.Tension/10
	if some, _ := b.Reckon(); some.Share != 0.5 {
		t.Errorf("a small pull beside half the shear uses %g", some.Share)
	}
	b.Sheared, b.Pulled = r.Shear/10, r.Tension/2
	if some, _ := b.Reckon(); some.Share != 0.5 {
		t.Errorf("a small shear beside half the pull uses %g", some.Share)
	}
	b.ThreadsInPlane = false
	out, _ := b.Reckon()
	near(t, "shear out of the threads", out.Shear/r.Shear, 0.563/0.45, 1e-12)
	for _, bad := range []AISCBolt{{}, {Diameter: 10}, {Diameter: 10, Ultimate: math.NaN()}, {Diameter: 10, Ultimate: 700, Sheared: -1}, {Diameter: 10, Ultimate: 700, Pulled: math.Inf(1)}} {
		if r, err := bad.Reckon(); err == nil {
			t.Errorf("%+v gave %+v", bad, r)
		}
	}
}
