package drawing

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"chainwale/engine/sheet"
)

// slotted is the chainplate with oval holes: a pin hole that is cut smaller than it
// becomes, slots along and across and one at a slant, and one to drill later.
func slotted(t testing.TB) Part {
	p := chainplate(t)
	p.Name = "SLOT"
	p.Flat.Holes = []sheet.Hole{{Name: "pin", At: sheet.Point{X: 20}, Diameter: 16.2, Long: 18}, {At: sheet.Point{X: 60}, Diameter: 12, Long: 20},
		{At: sheet.Point{X: 155}, Diameter: 12, Long: 20, Turn: 90}, {At: sheet.Point{X: 180}, Diameter: 10, Long: 16, Turn: -30}}
	p.Holes = []HoleUse{{Role: "pin hole", Cut: 15.2, Make: "dress to size"}}
	p.Later = []LaterHole{{Hole: sheet.Hole{At: sheet.Point{X: 240}, Diameter: 6, Long: 9, Turn: 90}, HoleUse: HoleUse{Role: "screw hole"}}}
	return p
}

// TestOvalIsSaid: size and lie of each oval hole stand in the list of holes.
func TestOvalIsSaid(t *testing.T) {
	p := slotted(t)
	want := [][2]string{{"oval 16.2 x 18", "cut oval 15.2 x 17; its length along; dress to size"}, {"oval 12 x 20", "its length along"}, {"oval 12 x 20", "its length across"},
		{"oval 10 x 16", "its length turned −30°"}, {"oval 6 x 9", "its length across; mark in the flat, drill after folding"}}
	for i, row := range p.holeList().rows {
		made := strings.Split(row[5], "; ")
		for _, part := range strings.Split(want[i][1], "; ") {
			if row[3] != want[i][0] || !strings.Contains("; "+row[5]+"; ", "; "+strings.ReplaceAll(part, "−", "-")+"; ") && !strings.Contains("; "+row[5]+"; ", "; "+part+"; ") {
				t.Errorf("hole %d: %q, made %q; want %q", i+1, row[3], made, want[i])
			}
		}
	}
	for name, write := range map[string]func(*bytes.Buffer) error{
		"drawing":  func(b *bytes.Buffer) error { return DrawingPDF(b, p, PDFOptions{Paper: A4}) },
		"template": func(b *bytes.Buffer) error { return TemplatePDF(b, p, TemplateOptions{Paper: A4}) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		if n := strings.Count(b.String(), "oval 12 x 20"); n < 2 {
			t.Errorf("the %s says oval 12 x 20 %d times", name, n)
		}
	}
}

// TestOvalIsCut: the cutting file has each slot as one closed contour of two straight
// lines and two half circles, of the right area.
func TestOvalIsCut(t *testing.T) {
	p := slotted(t)
	for _, o := range everyDXF {
		var b bytes.Buffer
		if err := DXF(&b, p, o); err != nil {
			t.Fatal(err)
		}
		if err := checkDXF(b.Bytes(), p, o); err != nil {
			t.Errorf("%+v: %v", o, err)
		}
		f, err := readDXF(b.Bytes())
		if err != nil {
			t.Fatal(err)
		}
		var areas []float64
		for _, e := range f.entities {
			if e.layer != HolesLayer {
				continue
			}
			if e.kind == "CIRCLE" || len(e.contour) != 4 || !e.closed {
				t.Fatalf("a slot is a %s with %d corners, closed %v", e.kind, len(e.contour), e.closed)
			}
			areas = append(areas, e.contour.Area())
		}
		for i, want := range []float64{math.Pi*15.2*15.2/4 + 1.8*15.2, math.Pi*36 + 96, math.Pi*36 + 96, math.Pi*25 + 60} {
			if len(areas) != 4 || math.Abs(areas[i]-want) > 1e-6 {
				t.Errorf("%+v: areas %v, the one at %d is to be %v", o, areas, i, want)
			}
		}
	}
	p.Later[0].Long = 5
	if err := p.Check(); err == nil || !strings.Contains(err.Error(), "an oval hole is longer than it is wide") {
		t.Errorf("a later hole that is shorter than wide: %v", err)
	}
}

// TestInsideAnOvalHole: what is hidden goes by the hole's real edge.
func TestInsideAnOvalHole(t *testing.T) {
	h := sheet.Hole{At: sheet.Point{X: 10, Y: 5}, Diameter: 12, Long: 20, Turn: 90}
	for p, want := range map[sheet.Point]bool{{X: 10, Y: 14.9}: true, {X: 10, Y: 15.1}: false, {X: 15.9, Y: 5}: true, {X: 16.1, Y: 5}: false, {X: 15, Y: 14}: false, {X: 15.9, Y: 8}: true} {
		if inHole(h, p) != want || h.Contour().Contains(p) != want {
			t.Errorf("%v: %v, by its contour %v", p, inHole(h, p), h.Contour().Contains(p))
		}
	}
}
