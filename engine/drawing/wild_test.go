package drawing

import (
	"bytes"
	"math"
	"math/rand/v2"
	"regexp"
	"testing"

	"chainwale/engine/sheet"
)

// wild is a part of any shape: a star of lines and arcs, holes and folds anywhere. Most
// can't be made.
func wild(t testing.TB, draws *rand.Rand) Part {
	p := chainplate(t)
	between := func(low, high float64) float64 { return low + (high-low)*draws.Float64() }
	p.Flat.Outline, p.Flat.Holes, p.Flat.Folds, p.Holes, p.Later, p.Press = nil, nil, nil, nil, nil, nil
	p.Quantity, p.OtherHand = 1+draws.IntN(3), 0
	n, large := 3+draws.IntN(9), math.Pow(10, between(1, 3.2))
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		r := large * between(0.4, 1)
		v := sheet.Vertex{X: large + r*cos, Y: 0.4 * r * sin}
		if draws.IntN(2) == 0 {
			v.Bulge = between(-0.3, 0.6)
		}
		p.Flat.Outline = append(p.Flat.Outline, v)
	}
	for range draws.IntN(6) {
		p.Flat.Holes = append(p.Flat.Holes, sheet.Hole{At: sheet.Point{X: large * between(0.5, 1.5), Y: 0.2 * large * between(-1, 1)}, Diameter: large * between(0.02, 0.15), Square: draws.IntN(3) == 0, Turn: between(-90, 90)})
	}
	for k := range draws.IntN(4) {
		p.Flat.Folds = append(p.Flat.Folds, sheet.Fold{At: large * (0.6 + 0.4*float64(k)), Angle: between(-120, 120), Radius: between(4, 30), Skew: between(-15, 15)})
	}
	p.Datum = 0
	p.Flat.Thickness = between(1, 12)
	return p
}

// noNumber is how a number that is none is written.
var noNumber = regexp.MustCompile(`NaN|[+-]Inf\b|\bInf `)

// TestWild writes parts of any shape that can be made at all: nothing panics, every
// cutting file holds, and every picture has something in it.
func TestWild(t *testing.T) {
	draws := rand.New(rand.NewPCG(23, 1))
	made := 0
	for k := 0; k < 4000 && made < some(20); k++ {
		p := wild(t, draws)
		if p.Check() != nil {
			continue
		}
		made++
		for _, w := range writers {
			var b bytes.Buffer
			if err := w.write(&b, p); err != nil {
				t.Errorf("part %d, %s: %v", k, w.ending, err)
			}
			if noNumber.Match(b.Bytes()) || b.Len() < 700 {
				t.Errorf("part %d, %s: %d bytes, with numbers that are none or next to nothing", k, w.ending, b.Len())
			}
		}
		for _, o := range everyDXF {
			var b bytes.Buffer
			if err := DXF(&b, p, o); err != nil {
				t.Fatal(err)
			}
			if err := checkDXF(b.Bytes(), p, o); err != nil {
				t.Errorf("part %d: %v", k, err)
			}
		}
		for _, paper := range []Paper{A4, Letter} {
			sheets, err := p.sheets(paper.turned())
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range sheets {
				checkWords(t, "wild", s)
			}
		}
	}
	if made < some(20) {
		t.Errorf("only %d of the shapes could be made", made)
	}
}
