package drawing

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"chainwale/engine/sheet"
)

// chainplate is a fitting with a fold each way, four holes, one of them square, and one
// to drill later.
func chainplate(t testing.TB) Part {
	t.Helper()
	c, err := sheet.Strip{Length: 266.444903, Width: 40, Start: sheet.End{Shape: sheet.RoundedEnd}, Finish: sheet.End{Corner: 6}}.Contour()
	if err != nil {
		t.Fatal(err)
	}
	return Part{
		Name: "CP-01", Title: "Upper shroud chainplate", Plan: "Quillfish, refit of the rig",
		Quantity: 2, OtherHand: 2, Hand: "starboard", OppositeHand: "port",
		Metal: "316L plate, annealed, 1.4404", Certificate: "with a 3.1 certificate of the melt; heat number on every part",
		Finish: "bead blast off, pickle and passivate after folding", Edges: "break all edges 0.5 mm; round the outside of every fold to 1 mm before folding",
		Tolerances: []string{"outline ±0.3, holes ±0.2 from the pin hole", "fold lines ±0.5, angles ±1°", "elsewhere ISO 2768-m"},
		Notes:      []string{"Length along the rolling direction of the sheet.", "Bend a test strip of the same sheet first and write down what it springs back."},
		Warnings:   []string{"Fold P2 may be up to 0.6 mm off in length: the methods for the neutral line differ by so much."},
		Flat: sheet.Flat{Name: "CP-01", Metal: "316L", Thickness: 8, Outline: c,
			Folds: []sheet.Fold{{At: 119.353884, Angle: 15, Radius: 16}, {At: 207.576335, Angle: -25, Radius: 16}},
			Holes: []sheet.Hole{{Name: "pin", At: sheet.Point{X: 20}, Diameter: 16.2}, {At: sheet.Point{X: 60}, Diameter: 10.5}, {At: sheet.Point{X: 155, Y: 6}, Diameter: 10.5}, {At: sheet.Point{X: 180, Y: -6}, Diameter: 10.5}, {At: sheet.Point{X: 250}, Diameter: 10, Square: true}}},
		Holes: []HoleUse{{Role: "pin hole", Fastener: "16 mm clevis pin", Make: "ream to 16.2 H11", Cut: 15.5}, {Role: "bolt hole", Fastener: "M10 A4-80"}, {Role: "bolt hole", Fastener: "M10 A4-80"}, {Role: "bolt hole", Fastener: "M10 A4-80"}, {Role: "square hole", Fastener: "M10 carriage bolt"}},
		Later: []LaterHole{{Hole: sheet.Hole{At: sheet.Point{X: 232}, Diameter: 6.4}, HoleUse: HoleUse{Role: "screw hole", Fastener: "M6 A4", Make: "drill in place"}}},
		Press: []Press{{Fold: 2, From: 25.5, To: 27.5, Tool: "die 80 mm"}, {Fold: 1, From: 15.3, To: 16.5, Tool: "die 80 mm"}},
	}
}

// some is a number of samples, a fifth of it where the tests are to be short.
func some(n int) int {
	if testing.Short() {
		return max(1, n/5)
	}
	return n
}

// parts draws fittings at random: strips of many sizes with up to three folds.
func parts(t testing.TB, n int) []Part {
	t.Helper()
	draws := rand.New(rand.NewPCG(11, 4))
	between := func(low, high float64) float64 { return low + (high-low)*draws.Float64() }
	var list []Part
	for i := range n {
		p := chainplate(t)
		p.Name = fmt.Sprintf("CP-%03d", i+1)
		length, width := between(220, 620), between(30, 70)
		ends := []sheet.End{{Shape: sheet.RoundedEnd}, {Corner: between(2, 8)}, {}, {Shape: sheet.TaperedEnd, Nose: 24, Taper: between(40, 60)}}
		c, err := sheet.Strip{Length: length, Width: width, Start: ends[draws.IntN(2)], Finish: ends[draws.IntN(4)]}.Contour()
		if err != nil {
			t.Fatal(err)
		}
		f := &p.Flat
		f.Outline, f.Thickness = c, []float64{5, 6, 8, 10}[draws.IntN(4)]
		f.Folds, f.Holes, p.Holes, p.Later, p.Press = nil, []sheet.Hole{{Name: "pin", At: sheet.Point{X: width / 2}, Diameter: 16.2}}, p.Holes[:1], nil, nil
		for k := range draws.IntN(4) {
			f.Folds = append(f.Folds, sheet.Fold{At: length * (0.35 + 0.2*float64(k)), Angle: between(-30, 30), Radius: 2 * f.Thickness, Skew: between(-4, 4)})
		}
		if len(f.Folds) == 0 {
			p.OtherHand = 0
		}
		for _, share := range []float64{0.25, 0.45, 0.65, 0.85} {
			f.Holes = append(f.Holes, sheet.Hole{At: sheet.Point{X: share * length, Y: between(-4, 4)}, Diameter: between(6, 12), Square: draws.IntN(4) == 0, Turn: between(0, 45)})
		}
		if err := p.Check(); err != nil {
			t.Fatalf("%s: %v", p.Name, err)
		}
		list = append(list, p)
	}
	return list
}

// odd are parts at the ends of what is drawn: a knee without folds, many holes, clips
// folded square, a tiny plate, a bare one, one with oval holes, and words that are long or
// not Latin.
func odd(t testing.TB) []Part {
	base := chainplate(t)
	knee := base
	knee.Name, knee.Title = "KN-1", "Łódź kolenplåt "+strings.Repeat("with a very long title indeed ", 6)+"Ж"
	knee.Plan = strings.Repeat("plan of the boat ", 10)
	knee.Flat.Folds, knee.Press, knee.Later, knee.OtherHand, knee.Quantity = nil, nil, nil, 0, 1
	knee.Hand = ""
	knee.Flat.Outline = sheet.Contour{{}, {X: 180}, {X: 200, Y: 30}, {X: 120, Y: 60, Bulge: -0.2}, {X: 60, Y: 120}, {X: 50, Y: 180, Bulge: 0.4}, {Y: 180}}
	knee.Flat.Holes = []sheet.Hole{{At: sheet.Point{X: 25, Y: 150}, Diameter: 14}, {At: sheet.Point{X: 25, Y: 25}, Diameter: 10}, {At: sheet.Point{X: 90, Y: 20}, Diameter: 10}, {At: sheet.Point{X: 160, Y: 20}, Diameter: 10}, {At: sheet.Point{X: 25, Y: 90}, Diameter: 30}}
	knee.Holes = []HoleUse{{Role: "pin hole"}}
	for i := range 20 {
		knee.Notes = append(knee.Notes, fmt.Sprint("note ", i, strings.Repeat(" words of a note", 3+i)))
	}
	many := base
	many.Name, many.Flat.Folds, many.Press, many.Later, many.OtherHand = "MANY", nil, nil, nil, 0
	many.Flat.Outline = sheet.Contour(rectangle(0, -100, 900, 200))
	many.Flat.Holes, many.Holes = nil, nil
	for i := range 60 {
		many.Flat.Holes = append(many.Flat.Holes, sheet.Hole{At: sheet.Point{X: 20 + 14*float64(i), Y: 80 * math.Sin(float64(i))}, Diameter: 6 + float64(i%3)})
	}
	u := base
	u.Name, u.Title = "U-90", "U clip"
	o, err := sheet.OutsideLegs{Thickness: 4, Width: 50, Legs: []float64{60, 80, 60}, Folds: []sheet.Fold{{Angle: 90, Radius: 8}, {Angle: 90, Radius: 8}}}.Develop()
	if err != nil {
		t.Fatal(err)
	}
	u.Flat = sheet.Flat{Thickness: 4, Outline: sheet.Contour(rectangle(0, -25, o.Length, 50)), Folds: o.Folds, Holes: []sheet.Hole{{At: sheet.Point{X: 20}, Diameter: 12}, {At: sheet.Point{X: o.Length - 20}, Diameter: 12}, {At: sheet.Point{X: o.Length / 2}, Diameter: 20}}}
	u.Holes, u.Press, u.Later = []HoleUse{{Role: "pin hole"}}, nil, nil
	down := u
	down.Name = "U-DOWN"
	down.Flat.Folds = []sheet.Fold{u.Flat.Folds[0], u.Flat.Folds[1]}
	down.Flat.Folds[0].Angle, down.Flat.Folds[1].Angle = -90, -90
	z := u
	z.Name = "Z-90"
	z.Flat.Folds = []sheet.Fold{u.Flat.Folds[0], u.Flat.Folds[1]}
	z.Flat.Folds[1].Angle = -60
	tiny := base
	tiny.Name, tiny.Flat.Folds, tiny.Press, tiny.Later, tiny.OtherHand, tiny.Holes = "TINY", nil, nil, nil, 0, nil
	tiny.Flat.Outline = sheet.Contour(rectangle(0, -8, 30, 16))
	tiny.Flat.Thickness = 3
	tiny.Flat.Holes = []sheet.Hole{{At: sheet.Point{X: 8}, Diameter: 5}, {At: sheet.Point{X: 22}, Diameter: 5}}
	bare := tiny
	bare.Name, bare.Flat.Holes, bare.Flat.Outline = "BARE", nil, sheet.Contour(rectangle(100, 50, 2600, 300))
	return []Part{knee, many, u, down, z, tiny, bare, slotted(t)}
}
