package strength

import (
	"math"
	"strings"
	"testing"
)

func TestENPinPlate(t *testing.T) {
	p := ENPinPlate{Thickness: 8, Width: 50, Hole: 16.3, End: 25, Force: 60000, Yield: 205, GammaM0: 1}
	r, err := p.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "a", r.EndNeeded, 29.159349593495936, 1e-12)
	near(t, "c", r.SideNeeded, 23.726016260162602, 1e-12)
	near(t, "load by a", r.LoadByEnd, 19625.333333333336, 1e-9)
	near(t, "load by c", r.LoadBySide, 37446.66666666667, 1e-9)
	near(t, "thickness of type B", r.ThicknessNeeded, 11.97558491875622, 1e-12)
	near(t, "a has", r.EndHas, 16.85, 1e-12)
	checkWorking(t, r.Working(), map[string]float64{"a,min": r.EndNeeded, "Fc": r.LoadBySide, "t,min": r.ThicknessNeeded})
	p.Force = 36000
	work, _ := p.Reckon()
	near(t, "a at the working load", work.EndNeeded, 21.85, 1e-3)
	near(t, "c at the working load", work.SideNeeded, 16.41, 1e-3)
	p.End = 12
	if short, _ := p.Reckon(); short.LoadByEnd != 0 {
		t.Errorf("an end below the rule's own minimum carries %g N", short.LoadByEnd)
	}
	for _, bad := range []ENPinPlate{{}, {8, 50, 16.3, 8, 60000, 205, 1}, {8, 50, 50, 60, 60000, 205, 1}, {8, 50, 16.3, 25, 60000, 205, 0.9}, {8, 50, 16.3, 25, math.NaN(), 205, 1}, {8, 50, 16.3, 25, 60000, 205, math.NaN()}} {
		if r, err := bad.Reckon(); err == nil {
			t.Errorf("%+v gave %+v", bad, r)
		}
	}
}

var enGolden = ENPin{Diameter: 16, Hole: 16.3, Plate: 8, Cheek: 6, Gap: 0.5, Force: 60000, Service: 24000, Yield: 450, Ultimate: 700, PlateYield: 205, Modulus: 200000, GammaM0: 1, GammaM2: 1.25, GammaM6: 1}

func TestENPin(t *testing.T) {
	r, err := enGolden.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "shear", r.ShearPlane, 67556.80842279491, 1e-12)
	near(t, "moment", r.Moment, 271433.60527015815, 1e-12)
	near(t, "acting", r.Acting, 165000, 1e-12)
	near(t, "service moment", r.ServiceMoment, r.Moment*0.8/1.5, 1e-12)
	near(t, "combined", r.Combined, 0.5667211018657258, 1e-12)
	near(t, "contact", r.Contact, 495.56856551339143, 1e-12)
	near(t, "contact limit", r.ContactLimit, 512.5, 1e-12)
	checkWorking(t, r.Working(), map[string]float64{"Fv,Rd": r.ShearPlane, "MRd": r.Moment, "u": r.Combined, "sh": r.Contact})
	for says, change := range map[string]func(*ENPin){
		"larger than the hole": func(p *ENPin) { p.Diameter = 17 },
		"gap":                  func(p *ENPin) { p.Gap = -1 },
		"partial factor":       func(p *ENPin) { p.GammaM2 = 0 },
		"elastic modulus":      func(p *ENPin) { p.Modulus = math.NaN() },
		"service load":         func(p *ENPin) { p.Service = math.Inf(1) },
	} {
		p := enGolden
		change(&p)
		if _, err := p.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error that says %q, got %v", says, err)
		}
	}
}

func TestAirLug(t *testing.T) {
	l := AirLug{Thickness: 8, Width: 50, Hole: 16.3, End: 25, Ultimate: 515, Curve: LugAnnealed}
	r, err := l.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "kbr", r.BearingFactor, 1.494, 1e-3)
	near(t, "kt", r.TensionFactor, 0.735, 1e-3)
	near(t, "shear-bearing", r.ShearBearing, 100300, 1e-3)
	near(t, "tension", r.Tension, 102000, 1e-3)
	checkWorking(t, r.Working(), map[string]float64{"Pbru": r.ShearBearing, "Ptu": r.Tension, "kbr": r.BearingFactor})
	wide := l
	wide.Width, wide.Curve = 65, LugUnknown
	unknown, _ := wide.Reckon()
	wide.Curve = LugAnnealed
	soft, _ := wide.Reckon()
	wide.Curve = LugFullHard
	hard, _ := wide.Reckon()
	if unknown.TensionFactor != min(soft.TensionFactor, hard.TensionFactor) || soft.TensionFactor == hard.TensionFactor {
		t.Errorf("unknown temper %g, annealed %g, hard %g", unknown.TensionFactor, soft.TensionFactor, hard.TensionFactor)
	}
	near(t, "kbr at e/D 1.25", must125(t), 1.165, 1e-3)
	for says, change := range map[string]func(*AirLug){
		"more than 0.5": func(l *AirLug) { l.End = 8 },
		"up to 3.4":     func(l *AirLug) { l.End = 60 },
		"up to 5":       func(l *AirLug) { l.Width = 90 },
		"up to 20":      func(l *AirLug) { l.Thickness = 0.5 },
		"no lug curve":  func(l *AirLug) { l.Curve = "tin" },
		"not smaller":   func(l *AirLug) { l.Width = 16 },
		"thickness":     func(l *AirLug) { l.Thickness = math.NaN() },
		"ultimate":      func(l *AirLug) { l.Ultimate = 0 },
	} {
		bad := l
		change(&bad)
		if _, err := bad.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error that says %q, got %v", says, err)
		}
	}
}

// must125 is kbr at e/D = 1.25 and a thick lug, where another handbook's chart gives 1.178.
func must125(t *testing.T) float64 {
	t.Helper()
	r, err := AirLug{Thickness: 10, Width: 50, Hole: 20, End: 25, Ultimate: 515, Curve: LugAnnealed}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	return r.BearingFactor
}

func TestShearOut(t *testing.T) {
	r, err := ShearOut{Thickness: 8, Width: 50, Hole: 16.3, End: 25, Ultimate: 515}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "net", r.Net, 138844, 1e-9)
	near(t, "shear-out", r.ShearOut, 92700, 1e-3)
	checkWorking(t, r.Working(), map[string]float64{"Nu": r.Net, "Vu": r.ShearOut})
	for _, bad := range []ShearOut{{}, {8, 50, 16.3, 8, 515}, {8, 16, 16.3, 25, 515}, {8, 50, 16.3, 25, math.NaN()}} {
		if _, err := bad.Reckon(); err == nil {
			t.Errorf("%+v gave no error", bad)
		}
	}
}

// TestAirLugCharts holds points of the charts, and that more metal beyond or beside
// the hole never helps less.
func TestAirLugCharts(t *testing.T) {
	lug := func(end, thin, wide float64, curve LugCurve) AirLugResult {
		r, err := AirLug{Thickness: 20 / thin, Width: 20 * wide, Hole: 20, End: 20 * end, Ultimate: 500, Curve: curve}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	for _, c := range []struct{ end, thin, want float64 }{
		{0.55, 2, 0.10}, {0.6, 2, 0.20}, {1.0, 3, 0.84}, {1.4, 5, 1.33}, {1.8, 4, 1.72}, {2.2, 6, 1.79}, {2.6, 8, 1.59}, {3.0, 10, 1.32}, {3.4, 15, 0.87}, {3.4, 20, 0.645}, {1.4, 1, 1.36},
	} {
		near(t, "kbr", lug(c.end, c.thin, 2, LugAnnealed).BearingFactor, c.want, 1e-9)
	}
	for _, c := range []struct {
		wide, steel, soft, hard float64
	}{{1.5, .99, .955, .98}, {2, .97, .90, .94}, {2.5, .95, .83, .90}, {3, .925, .745, .84}, {3.5, .91, .67, .65}, {4, .895, .62, .515}, {4.5, .855, .575, .425}, {5, .76, .535, .355}} {
		for curve, want := range map[LugCurve]float64{LugAlloySteel: c.steel, LugAnnealed: c.soft, LugFullHard: c.hard} {
			near(t, "kt", lug(1.5, 3, c.wide, curve).TensionFactor, want, 1e-9)
		}
	}
	for thin := 2.0; thin <= 20; thin += 0.5 {
		last := 0.0
		for end := 0.55; end <= 3.4; end += 0.05 {
			now := lug(end, thin, 2, LugAnnealed).BearingFactor
			if now < last || now > end {
				t.Fatalf("kbr at e/D %.2f, D/t %g is %g after %g", end, thin, now, last)
			}
			last = now
		}
	}
}
