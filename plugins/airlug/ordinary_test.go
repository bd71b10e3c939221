package airlug

import (
	"testing"

	"chainwale/engine/strength"
	"chainwale/plugins/bth1"
	"chainwale/plugins/clauses/clausetest"
)

// TestOrdinaryPlates: with the wire in line none of nine ordinary plates is stopped or
// mended; with the wire ten degrees off its line one alone is, B3, a lower shroud's
// plate that is known to be slight.
func TestOrdinaryPlates(t *testing.T) {
	for _, p := range clausetest.OrdinaryPlates(t) {
		a := ask(t, p.Facts)
		for name, times := range map[string]float64{"shear_bearing": 1.15, "net_tension": 1.15, "oblique": 1.15, "pin_shear": 1.15, "pin_bending": 1.0, "yield": 1 / 2.5} {
			if a.Fact(name) < times*p.Break {
				t.Errorf("%s: %s is %.3f times the wire, below %.2f", p.ID, name, a.Fact(name)/p.Break, times)
			}
		}
		leaning := ask(t, p.Facts.With(clausetest.Facts{"lean_in": 10.0})).Fact("oblique")
		if leaning < p.Break != (p.ID == "B3") {
			t.Errorf("%s: with the wire 10 deg off %.2f times the wire", p.ID, leaning/p.Break)
		}
		a.Shown()
	}
}

// TestMethodSpread: on the golden plate the methods lie within a third of each other,
// and the one that the program's own rules take is the lowest.
func TestMethodSpread(t *testing.T) {
	b, err := bth1.Standard()
	if err != nil {
		t.Fatal(err)
	}
	plate := golden.Only(t, "hole", "end", "across", "pin_diameter", "lean_in", "lean_out", "fitting.thickness", "fitting.width", "fitting.metal.yield", "fitting.metal.ultimate")
	bth := clausetest.Landing(t, b, plate).Fact("plate")
	lug := ask(t, golden).Fact("plate")
	planes, err := strength.ShearOut{Thickness: 8, Width: 50, Hole: 16.3, End: 25, Ultimate: 515}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	aisc, err := strength.AISCPinPlate{Thickness: 8, Width: 50, Hole: 16.3, Pin: 16, End: 25, Yield: 205, Ultimate: 515}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		method     string
		load, want float64
	}{
		{"BTH-1, its 1.20 kept", bth, 91.5e3},
		{"planes at 40 deg", min(planes.Net, planes.ShearOut), 92.7e3},
		{"Air Force and NASA", lug, 100.3e3},
		{"BTH-1, its 1.20 taken out", 1.2 * bth, 109.9e3},
		{"AISC 360, nominal", min(aisc.Tension, aisc.Shear), 122.9e3},
	} {
		clausetest.Near(t, c.method, c.load, c.want, 0.001)
		if c.load < bth || c.load > 1.35*bth {
			t.Errorf("%s gives %.1f kN, BTH-1 %.1f kN", c.method, c.load/1e3, bth/1e3)
		}
	}
}
