package drawing

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"chainwale/engine/sheet"
)

// checkDXF reads a cutting file back and holds it against the part that it was made of:
// one outline, holes within it and apart, all closed, and area, perimeter, sizes and
// bounds those of the model.
func checkDXF(b []byte, p Part, o DXFOptions) error {
	f, err := readDXF(b)
	if err != nil {
		return err
	}
	var outline, holes []sheet.Contour
	var folds, marks int
	seen := map[string]bool{}
	for _, e := range f.entities {
		key := fmt.Sprint(e.kind, e.layer, e.contour, e.number(10), e.number(20), e.number(11), e.number(21), e.number(40))
		if seen[key] {
			return fmt.Errorf("a %s on %s is there twice", e.kind, e.layer)
		}
		seen[key] = true
		c, err := e.cut()
		if err != nil {
			return err
		}
		switch e.layer {
		case OutlineLayer:
			outline = append(outline, c)
		case HolesLayer:
			holes = append(holes, c)
		case FoldTowardLayer, FoldAwayLayer:
			folds++
		case MarksLayer:
			marks++
		case WordsLayer:
		default:
			return fmt.Errorf("something stands on layer %s", e.layer)
		}
		if o.CutOnly && e.layer != OutlineLayer && e.layer != HolesLayer {
			return fmt.Errorf("a %s on %s in a file for cutting only", e.kind, e.layer)
		}
	}
	if !o.CutOnly && (folds != len(p.Flat.Folds) || marks != 2*len(p.Later)) {
		return fmt.Errorf("%d folds and %d marks", folds, marks)
	}
	if err := checkCuts(outline, holes, p); err != nil {
		return err
	}
	return f.checkBounds()
}

// cut is the contour that an entity of a cut layer stands for.
func (e dxfEntity) cut() (sheet.Contour, error) {
	if e.layer != OutlineLayer && e.layer != HolesLayer {
		if e.kind != "LINE" && e.kind != "TEXT" {
			return nil, fmt.Errorf("a %s on %s", e.kind, e.layer)
		}
		return nil, nil
	}
	switch {
	case e.kind == "CIRCLE":
		if !(e.number(40) > 0) {
			return nil, fmt.Errorf("a circle of radius %g", e.number(40))
		}
		r := e.number(40)
		return sheet.Contour{{X: e.number(10) - r, Y: e.number(20), Bulge: 1}, {X: e.number(10) + r, Y: e.number(20), Bulge: 1}}, nil
	case !strings.HasSuffix(e.kind, "POLYLINE"):
		return nil, fmt.Errorf("a %s on %s can't be cut", e.kind, e.layer)
	case !e.closed:
		return nil, fmt.Errorf("a contour on %s is open", e.layer)
	}
	return e.contour, e.contour.Check()
}

// checkCuts holds contours against the flat as it is to be cut.
func checkCuts(outline, holes []sheet.Contour, p Part) error {
	if len(outline) != 1 || len(holes) != len(p.Flat.Holes) {
		return fmt.Errorf("%d outlines and %d holes, want 1 and %d", len(outline), len(holes), len(p.Flat.Holes))
	}
	area, cut := outline[0].Area(), outline[0].Perimeter()
	for i, h := range holes {
		area -= h.Area()
		cut += h.Perimeter()
		for _, v := range h {
			if !outline[0].Contains(sheet.Point{X: v.X, Y: v.Y}) {
				return fmt.Errorf("hole %d leaves the outline", i+1)
			}
		}
		if !(h.Apart(outline[0]) > 0) {
			return fmt.Errorf("hole %d breaks through the outline", i+1)
		}
		for j := range i {
			if !(h.Apart(holes[j]) > 0) || holes[j].Contains(sheet.Point{X: h[0].X, Y: h[0].Y}) || h.Contains(sheet.Point{X: holes[j][0].X, Y: holes[j][0].Y}) {
				return fmt.Errorf("holes %d and %d meet", j+1, i+1)
			}
		}
	}
	model := p.Flat
	model.Holes = nil
	for i := range p.Flat.Holes {
		model.Holes = append(model.Holes, p.cut(i))
	}
	if d := math.Abs(area - model.Area()); !(d < 1e-6) {
		return fmt.Errorf("the area is off by %g mm2", d)
	}
	if d := math.Abs(cut - model.Cut()); !(d < 1e-6) {
		return fmt.Errorf("the length of all cuts is off by %g mm", d)
	}
	return nil
}

// checkBounds holds the declared corners against what is drawn; how wide words run is
// the reader's business, so they only may not begin outside.
func (f *dxfFile) checkBounds() error {
	variable := func(name string, code int) float64 {
		for _, p := range f.variables[name] {
			if p.code == code {
				v, _ := strconv.ParseFloat(p.value, 64)
				return v
			}
		}
		return math.NaN()
	}
	declared := box{variable("$EXTMIN", 10), variable("$EXTMIN", 20), variable("$EXTMAX", 10), variable("$EXTMAX", 20)}
	drawn, words := nowhere, false
	for _, e := range f.entities {
		switch c, _ := e.cut(); {
		case c != nil:
			a, b := c.Bounds()
			drawn = drawn.and(box{a.X, a.Y, b.X, b.Y})
		case e.kind == "TEXT":
			words = true
			drawn = drawn.and(box{e.number(10), e.number(20), e.number(10), e.number(20)})
		default:
			for _, code := range []int{10, 11} {
				drawn = drawn.and(box{e.number(code), e.number(code + 10), e.number(code), e.number(code + 10)})
			}
		}
	}
	if !drawn.within(declared.grown(1e-9)) || !words && !declared.within(drawn.grown(1e-9)) {
		return fmt.Errorf("the file declares the corners %v and draws within %v", declared, drawn)
	}
	return nil
}

// everyDXF are the options that there are.
var everyDXF = []DXFOptions{{Version: R12}, {Version: R2000}, {Version: R12, CutOnly: true}, {Version: R2000, CutOnly: true}}

func TestDXF(t *testing.T) {
	list := slices.Concat([]Part{chainplate(t)}, odd(t), parts(t, some(200)))
	for _, p := range list {
		for _, o := range everyDXF {
			var b bytes.Buffer
			if err := DXF(&b, p, o); err != nil {
				t.Fatalf("%s: %v", p.Name, err)
			}
			if err := checkDXF(b.Bytes(), p, o); err != nil {
				t.Errorf("%s %s: %v", p.Name, o.Version, err)
			}
		}
	}
}

// TestDXFCheckSees spoils good files in the ways that general readers let pass, and
// looks whether the check sees each.
func TestDXFCheckSees(t *testing.T) {
	p := chainplate(t)
	for _, version := range []DXFVersion{R12, R2000} {
		var b bytes.Buffer
		o := DXFOptions{Version: version}
		if err := DXF(&b, p, o); err != nil {
			t.Fatal(err)
		}
		good := b.String()
		circle := good[strings.Index(good, "  0\r\nCIRCLE"):]
		circle = circle[:strings.Index(circle[1:], "  0\r\n")+1]
		faults := map[string][2]string{
			"comma for point":      {" 40\r\n5.25", " 40\r\n5,25"},
			"not a number":         {" 40\r\n5.25", " 40\r\nNaN"},
			"no radius":            {" 40\r\n5.25", " 40\r\n0.0"},
			"open contour":         {" 70\r\n1\r\n  ", " 70\r\n0\r\n  "},
			"other radius":         {" 40\r\n5.25", " 40\r\n5.2501"},
			"hole on hole":         {circle, strings.Replace(circle, "5.25", "5.24", 1) + circle},
			"the same twice":       {circle, circle + circle},
			"hole on the edge":     {" 10\r\n155.0", " 10\r\n-0.5"},
			"bulge lost":           {" 42\r\n1.0", " 42\r\n0.9"},
			"metres":               {"$INSUNITS\r\n 70\r\n4", "$INSUNITS\r\n 70\r\n6"},
			"layer unknown":        {"  8\r\nholes", "  8\r\nholez"},
			"words where one cuts": {"TEXT\r\n", "ELLIPSE\r\n"},
			"corners":              {"$EXTMIN\r\n 10\r\n0.0", "$EXTMIN\r\n 10\r\n5.0"},
			"no end":               {"  0\r\nEOF\r\n", ""},
			"bare line feeds":      {"\r\n", "\n"},
			"a table short":        {"  0\r\nENDTAB", "  0\r\nENDTABLE"},
			"letters":              {"CP-01", "CP-Ö1"},
		}
		if version == R2000 {
			faults["handle twice"] = [2]string{"  5\r\n41\r\n", "  5\r\n40\r\n"}
			faults["class missing"] = [2]string{"100\r\nAcDbCircle\r\n", ""}
			faults["corner miscounted"] = [2]string{" 90\r\n6", " 90\r\n7"}
			faults["owner nowhere"] = [2]string{"330\r\n1F\r\n", "330\r\nFF\r\n"}
			faults["next handle"] = [2]string{"$HANDSEED\r\n  5\r\n", "$HANDSEED\r\n  5\r\n1\r\n  5\r\n"}
		} else {
			faults["polyline without end"] = [2]string{"  0\r\nSEQEND\r\n  8\r\noutline\r\n", ""}
			faults["polyline of the newer edition"] = [2]string{"  0\r\nPOLYLINE\r\n", "  0\r\nLWPOLYLINE\r\n"}
		}
		for name, f := range faults {
			bad := strings.Replace(good, f[0], f[1], 1)
			if bad == good {
				t.Fatalf("%s %s: nothing was spoiled", version, name)
			}
			if err := checkDXF([]byte(bad), p, o); err == nil {
				t.Errorf("%s %s: the check lets it pass", version, name)
			}
		}
	}
}

func TestDXFText(t *testing.T) {
	for text, want := range map[string]string{
		"plain": "plain", "15° ±1 Ø8": "15%%d %%p1 %%c8", "Łódź": `\U+0141\U+00F3d\U+017A`, "100%%d": "100% %d", "a^J": "a^ J",
		"two\nlines\tand\x00more": "two lines and more",
		strings.Repeat("x", 300):  strings.Repeat("x", 246) + "...", "−5": "-5", "\U0001F600": "?",
	} {
		if got := dxfText(text); got != want {
			t.Errorf("%q gives %q, want %q", text, got, want)
		}
	}
}

func TestDXFOptions(t *testing.T) {
	var b bytes.Buffer
	if err := DXF(&b, chainplate(t), DXFOptions{Version: "r13"}); err == nil || b.Len() > 0 {
		t.Errorf("an edition that is none: %v, %d bytes", err, b.Len())
	}
}
