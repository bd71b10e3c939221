package strength

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestTimberBoltsOfOrdinaryBoats holds the plywood rows that the limits were set
// by: bolts of class 70 through plywood of 450 kg/m3, over the working load.
func TestTimberBoltsOfOrdinaryBoats(t *testing.T) {
	for _, c := range []struct {
		id                 string
		ply, plate, bolt   float64
		count              int
		breakLoad          float64
		modes, held, press float64
	}{
		{"A1", 15, 5, 8, 3, 20.0, 1.13, 2.05, 0.82},
		{"A2", 12, 4.7625, 6.35, 3, 17.8, 1.04, 1.49, 0.60},
		{"B1", 18, 6.35, 9.525, 4, 35.5, 1.30, 2.16, 0.87},
		{"C1", 36, 10, 12, 6, 71.1, 2.31, 3.97, 1.59},
	} {
		r, err := TimberBolts{Kind: Plywood, Density: 450, Thickness: c.ply, Plate: c.plate, Bolt: c.bolt, BoltUltimate: 700, Count: c.count}.Reckon()
		if err != nil {
			t.Fatal(c.id, err)
		}
		work := c.breakLoad * 1000 / 2.5
		near(t, c.id+" over the working load", r.Capacity/work, c.modes, 0.004)
		near(t, c.id+" held on both sides", r.HeldBothSides/work, c.held, 0.006)
		near(t, c.id+" embedment over the wire", r.HeldBothSides/work/2.5, c.press, 0.01)
		checkWorking(t, r.Working(), map[string]float64{"Rk": r.Capacity, "fh": r.Embedment, "Rmax": r.HeldBothSides, "F1": r.EachBolt})
	}
}

func TestTimberBoltsModes(t *testing.T) {
	base := TimberBolts{Kind: Plywood, Density: 450, Thickness: 18, Plate: 3, Bolt: 8, BoltUltimate: 700, Count: 1}
	for _, c := range []struct {
		host, plate float64
		mode        string
		each        float64
	}{
		{18, 3, "bolt tilts", 0.4 * 45.54 * 8 * 18},
		{60, 3, "bolt bends once", 6715.5},
		{10, 8, "embedment", 45.54 * 8 * 10},
		{24, 8, "bolt bends once", 45.54 * 8 * 24 * 0.700614},
		{80, 10, "bolt bends twice", 9497.3},
	} {
		b := base
		b.Thickness, b.Plate = c.host, c.plate
		r, err := b.Reckon()
		if err != nil || r.Mode != c.mode {
			t.Errorf("%g mm host, %g mm plate: %q, %v; want %q", c.host, c.plate, r.Mode, err, c.mode)
		}
		near(t, c.mode, r.EachBolt, c.each, 1e-4)
	}
}

func TestTimberGrain(t *testing.T) {
	b := TimberBolts{Kind: Softwood, Density: 350, Thickness: 45, Plate: 6, Bolt: 12, BoltUltimate: 400, Count: 4}
	along, _ := b.Reckon()
	near(t, "embedment along the grain", along.Embedment, 0.082*0.88*350, 1e-12)
	b.Grain = 90
	across, _ := b.Reckon()
	near(t, "embedment across it", across.Embedment, along.Embedment/(1.35+0.18), 1e-12)
	b.Kind = Hardwood
	hard, _ := b.Reckon()
	near(t, "of hardwood", hard.Embedment, along.Embedment/(0.90+0.18), 1e-12)
	b.Kind, b.Grain, b.Spacing = Softwood, 0, 60
	row, _ := b.Reckon()
	near(t, "a row along the grain", row.Capacity/along.Capacity, math.Pow(4, -0.1)*math.Pow(60/156.0, 0.25), 1e-9)
	b.Grain = 90
	if r, _ := b.Reckon(); r.counted != 4 {
		t.Errorf("across the grain %g bolts count", r.counted)
	}
}

func TestTimberBoltsRefuse(t *testing.T) {
	good := TimberBolts{Kind: Plywood, Density: 450, Thickness: 18, Plate: 6, Bolt: 8, BoltUltimate: 700, Count: 3}
	for says, change := range map[string]func(*TimberBolts){
		"no timber":        func(b *TimberBolts) { b.Kind = "cork" },
		"kg/m3":            func(b *TimberBolts) { b.Density = 150 },
		"host":             func(b *TimberBolts) { b.Thickness = math.NaN() },
		"6 to 30":          func(b *TimberBolts) { b.Bolt = 40 },
		"0 bolts":          func(b *TimberBolts) { b.Count = 0 },
		"force and grain":  func(b *TimberBolts) { b.Grain = 91 },
		"strength of the":  func(b *TimberBolts) { b.BoltUltimate = 0 },
		"spacing":          func(b *TimberBolts) { b.Spacing = -1 },
		"thickness of the": func(b *TimberBolts) { b.Plate = math.Inf(1) },
	} {
		b := good
		change(&b)
		if _, err := b.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error that says %q, got %v", says, err)
		}
	}
	for name, want := range map[string]TimberKind{"plywood": Plywood, " Solid-Timber": Softwood, "hardwood": Hardwood, "timber": Softwood} {
		if k, err := TimberKindNamed(name); err != nil || k != want {
			t.Errorf("%q is %q, %v", name, k, err)
		}
	}
	if _, err := TimberKindNamed("cork"); err == nil {
		t.Error("cork is a timber")
	}
}

// TestTimberBoltsGrow: more host, plate, density or bolts never hold less, and
// never more than the embedment of all bolts held straight.
func TestTimberBoltsGrow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := TimberBolts{Kind: rapid.SampledFrom([]TimberKind{Plywood, Softwood, Hardwood}).Draw(t, "kind"), Density: rapid.Float64Range(250, 800).Draw(t, "rho"),
			Thickness: rapid.Float64Range(6, 80).Draw(t, "t"), Plate: rapid.Float64Range(1, 20).Draw(t, "tp"), Bolt: rapid.Float64Range(6, 20).Draw(t, "d"),
			BoltUltimate: rapid.Float64Range(400, 1000).Draw(t, "fu"), Count: rapid.IntRange(1, 8).Draw(t, "n"), Grain: rapid.Float64Range(0, 90).Draw(t, "grain")}
		r, err := b.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		if r.Capacity > r.HeldBothSides*(1+1e-12) {
			t.Fatalf("%g is more than the embedment %g", r.Capacity, r.HeldBothSides)
		}
		more := b
		switch rapid.IntRange(0, 3).Draw(t, "which") {
		case 0:
			more.Thickness += 5
		case 1:
			more.Plate += 5
		case 2:
			more.Density += 100
		case 3:
			more.Count++
		}
		if m, err := more.Reckon(); err != nil || m.Capacity < r.Capacity*(1-1e-9) {
			t.Fatalf("more of it holds less: %g after %g, %v", m.Capacity, r.Capacity, err)
		}
	})
}

func TestLaminateBolts(t *testing.T) {
	r, err := LaminateBolts{Thickness: 10, Bolt: 8, Washer: 24, Count: 3, GlassShare: 0.30}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "bearing strength", r.BearingStrength, 117, 1e-12)
	near(t, "punching strength", r.PunchStrength, 62, 1e-12)
	near(t, "three times the working load of a 26-footer", r.Bearing/3/8000, 1.17, 1e-9)
	checkWorking(t, r.Working(), map[string]float64{"Fb": r.Bearing, "Fp": r.PullThrough, "sb": 117})
	wide, _ := LaminateBolts{Thickness: 8, Bolt: 10, Washer: 30, Count: 1, BearingStrength: 150, PunchStrength: 62}.Reckon()
	near(t, "pull-through", wide.PullThrough, 46700, 2e-3)
	near(t, "bearing of a given strength", wide.Bearing, 12000, 1e-12)
	checkWorking(t, wide.Working(), map[string]float64{"sb": 150, "tu": 62})
	half, err := LaminateBolts{Thickness: 8, Bolt: 10, Washer: 30, Count: 1, BearingStrength: 150, GlassShare: 0.5}.Reckon()
	if err != nil || half.BearingStrength != 150 || half.PunchStrength != 78 {
		t.Errorf("one strength given and one not: %+v, %v", half, err)
	}
	if _, err := (LaminateBolts{Thickness: 8, Bolt: 10, Washer: 30, Count: 1, PunchStrength: 60}).Reckon(); err == nil {
		t.Error("a laminate of unknown glass has a bearing strength")
	}
	for _, bad := range []LaminateBolts{{}, {10, 8, 7, 3, .3, 0, 0}, {10, 8, 24, 0, .3, 0, 0}, {10, 8, 24, 3, .1, 0, 0}, {10, 8, 24, 3, math.NaN(), 0, 0}, {10, 8, 24, 3, .3, -1, 0}, {math.NaN(), 8, 24, 3, .3, 0, 0}} {
		if r, err := bad.Reckon(); err == nil {
			t.Errorf("%+v gave %+v", bad, r)
		}
	}
}

func TestBonded(t *testing.T) {
	r, err := Bonded{Area: 20000, GlassShare: 0.30}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "shear strength", r.ShearStrength, 17.25, 1e-12)
	near(t, "capacity", r.Capacity, 345000, 1e-12)
	checkWorking(t, r.Working(), map[string]float64{"ts": 17.25, "Fs": r.Capacity})
	given, _ := Bonded{Area: 1000, ShearStrength: 8}.Reckon()
	near(t, "capacity of a given strength", given.Capacity, 8000, 1e-12)
	checkWorking(t, given.Working(), map[string]float64{"ts": 8})
	for _, bad := range []Bonded{{}, {20000, 0, 0}, {20000, .9, 0}, {-1, .3, 0}, {20000, .3, math.NaN()}, {math.Inf(1), .3, 0}} {
		if r, err := bad.Reckon(); err == nil {
			t.Errorf("%+v gave %+v", bad, r)
		}
	}
}

var tang = MastTang{Wall: 3, Fastener: 6.35, Hole: 6.5, Head: 12, End: 20, Count: 4, Force: 10000, Angle: 10, Yield: 170, Ultimate: 215}

func TestMastTang(t *testing.T) {
	r, err := tang.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "slot", r.Slot, 4*1.5*3*6.35*170, 1e-12)
	near(t, "tear", r.Tear, 4*2.4*6.35*3*215, 1e-12)
	near(t, "pull-through", r.PullThrough, 4*0.6*math.Pi*12*3*215, 1e-12)
	near(t, "off the mast", r.Off, 1736.48, 1e-5)
	near(t, "ratio", r.Ratio, 1/(r.Along/r.Slot+r.Off/r.PullThrough), 1e-12)
	checkWorking(t, r.Working(), map[string]float64{"Fs": r.Slot, "Ft": r.Tear, "Fp": r.PullThrough, "k": r.Ratio})
	short := tang
	short.End, short.Angle = 10, 0
	s, err := short.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "tear of a short end", s.Tear, 4*1.2*(10-3.25)*3*215, 1e-12)
	near(t, "ratio of a wire along the mast", s.Ratio, min(s.Slot, s.Tear)/10000, 1e-12)
	for says, change := range map[string]func(*MastTang){
		"larger than its hole": func(m *MastTang) { m.Fastener = 7 },
		"goes through":         func(m *MastTang) { m.Head = 6 },
		"breaks out":           func(m *MastTang) { m.End = 3 },
		"0 fasteners":          func(m *MastTang) { m.Count = 0 },
		"force of the wire":    func(m *MastTang) { m.Force = 0 },
		"0 to 90 deg":          func(m *MastTang) { m.Angle = 90 },
		"yield":                func(m *MastTang) { m.Yield = math.NaN() },
	} {
		m := tang
		change(&m)
		if _, err := m.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error that says %q, got %v", says, err)
		}
	}
}
