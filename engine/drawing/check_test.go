package drawing

import (
	"bytes"
	"math"
	"slices"
	"strings"
	"testing"

	"chainwale/engine/sheet"
)

// TestRefused hands every writer parts that can't be made: each is refused with what is
// wrong by name, and not a byte is written.
func TestRefused(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		spoil func(*Part)
		says  string
	}{
		{func(p *Part) { p.Name = "  " }, "no name"},
		{func(p *Part) { p.Name = strings.Repeat("n", 41) }, "41 letters"},
		{func(p *Part) { p.Quantity, p.OtherHand = 0, 0 }, "0 as drawn"},
		{func(p *Part) { p.Quantity = -1 }, "-1 as drawn"},
		{func(p *Part) { p.Flat.OneSided = true }, "its faces differ"},
		{func(p *Part) { p.Flat.Folds, p.Press = nil, nil }, "no other hand"},
		{func(p *Part) { p.Flat.Thickness = 0 }, "0 mm thick"},
		{func(p *Part) { p.Flat.Thickness = nan }, "NaN mm thick"},
		{func(p *Part) { p.Flat.Outline = nil }, "two corners"},
		{func(p *Part) { p.Flat.Outline[1].X = nan }, "not finite"},
		{func(p *Part) { p.Flat.Outline = sheet.Contour{{}, {X: 200}, {Y: 40}, {X: 200, Y: 40}} }, "meets itself"},
		{func(p *Part) { p.Flat.Holes[1].At.X = 25 }, "hole 2 run into each other"},
		{func(p *Part) { p.Flat.Holes[1].At.Y = 18 }, "hole 2 does not lie within"},
		{func(p *Part) { p.Flat.Holes[1].Diameter = math.Inf(1) }, "hole 2 can't be +Inf mm"},
		{func(p *Part) { p.Flat.Holes[1].At.X = 121 }, "hole 2 lies in fold 1"},
		{func(p *Part) { p.Flat.Folds[1].At = 122 }, "fold 2 begins"},
		{func(p *Part) { p.Flat.Folds[0].Angle = nan }, "fold 1 turns by NaN"},
		{func(p *Part) { p.Flat.Folds[0].Radius = 1 }, "fold 1 has an inside radius of 1 mm"},
		{func(p *Part) { p.Datum = 5 }, "hole 6"},
		{func(p *Part) { p.Datum = -1 }, "hole 0"},
		{func(p *Part) { p.Holes = append(p.Holes, HoleUse{}) }, "6 holes are described"},
		{func(p *Part) { p.Holes[0].Cut = 17 }, "hole 1 can't be cut to 17"},
		{func(p *Part) { p.Holes[0].Cut = nan }, "hole 1 can't be cut to NaN"},
		{func(p *Part) { p.Later[0].At.X = 251 }, "hole 5 run into each other"},
		{func(p *Part) { p.Later[0].Name, p.Later[0].At.Y = "screw", 30 }, "screw does not lie within"},
		{func(p *Part) { p.Later[0].Diameter = nan }, "can't be NaN mm across"},
		{func(p *Part) { p.Later[0].Cut = 5 }, "cut in no flat"},
		{func(p *Part) { p.Press = p.Press[:1] }, "leaves out fold 1"},
		{func(p *Part) { p.Press[1].Fold = 2 }, "fold 2 twice"},
		{func(p *Part) { p.Press[1].Fold = 3 }, "fold 3, and there are 2"},
		{func(p *Part) { p.Press[0].From, p.Press[0].To = 28, 27 }, "pressed to 28 to 27"},
		{func(p *Part) { p.Press[0].To = nan }, "pressed to 25.5 to NaN"},
		{func(p *Part) { p.Press[0].From, p.Press[0].To = 20, 24 }, "springs back"},
		{func(p *Part) { p.Finish = strings.Repeat("x", 601) }, "601 letters"},
		{func(p *Part) { p.Notes = make([]string, 41) }, "41 notes"},
	} {
		p := chainplate(t)
		c.spoil(&p)
		for _, w := range writers {
			var b bytes.Buffer
			err := w.write(&b, p)
			if err == nil || !strings.Contains(err.Error(), c.says) || b.Len() > 0 {
				t.Errorf("%s, want %q: %v, %d bytes", w.ending, c.says, err, b.Len())
			}
		}
	}
}

func TestOptionsRefused(t *testing.T) {
	p := chainplate(t)
	var b bytes.Buffer
	for _, o := range []TemplateOptions{{ScaleX: 1.2}, {ScaleY: math.NaN()}, {ScaleX: -1}, {Paper: Paper{100, 100}}} {
		if err := TemplatePDF(&b, p, o); err == nil {
			t.Errorf("%v is taken", o)
		}
	}
	if err := DrawingPDF(&b, p, PDFOptions{Paper: Paper{1, 1}}); err == nil {
		t.Error("paper of a millimetre is taken")
	}
	huge := p
	huge.Flat = sheet.Flat{Thickness: 5, Outline: sheet.Contour(rectangle(0, 0, 9000, 9000))}
	huge.Press, huge.Later, huge.Holes, huge.OtherHand = nil, nil, nil, 0
	if err := TemplatePDF(&b, huge, TemplateOptions{}); err == nil || !strings.Contains(err.Error(), "sheets") {
		t.Errorf("a template of thousands of sheets: %v", err)
	}
	if b.Len() > 0 {
		t.Errorf("%d bytes were written", b.Len())
	}
	if _, err := PaperNamed("a3"); err == nil {
		t.Error("a3 is taken")
	}
	if a, _ := PaperNamed("a4"); a != A4 {
		t.Error(a)
	}
	if l, _ := PaperNamed("letter"); l != Letter {
		t.Error(l)
	}
}

// TestSameBytes writes everything twice, from parts that share nothing.
func TestSameBytes(t *testing.T) {
	for _, w := range writers {
		var a, b bytes.Buffer
		if err := w.write(&a, chainplate(t)); err != nil {
			t.Fatal(err)
		}
		if err := w.write(&b, chainplate(t)); err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(a.Bytes(), b.Bytes()) || a.Len() == 0 {
			t.Errorf("%s differs from one time to the next", w.ending)
		}
	}
}

// TestPartUntouched looks whether drawing leaves the part as it is.
func TestPartUntouched(t *testing.T) {
	p, q := chainplate(t), chainplate(t)
	for _, w := range writers {
		if err := w.write(&bytes.Buffer{}, p); err != nil {
			t.Fatal(err)
		}
	}
	if !slices.Equal(p.Flat.Outline, q.Flat.Outline) || !slices.Equal(p.Flat.Holes, q.Flat.Holes) || !slices.Equal(p.Notes, q.Notes) || !slices.Equal(p.Press, q.Press) || !slices.Equal(p.Warnings, q.Warnings) {
		t.Error("the part was changed")
	}
}
