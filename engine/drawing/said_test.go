package drawing

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"chainwale/testdata/outside/tool"
)

// said is the text of a PDF, every line's blanks run together.
func said(t *testing.T, write func(*bytes.Buffer) error) string {
	t.Helper()
	pdftotext := tool.Need(t, "pdftotext")
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "d.pdf")
	if err := os.WriteFile(name, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(pdftotext, "-layout", name, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(strings.Fields(string(out)), " ")
}

// TestDrawingSays looks for all that a shop needs among the words of the drawing, as
// another program reads them.
func TestDrawingSays(t *testing.T) {
	text := said(t, func(b *bytes.Buffer) error { return DrawingPDF(b, chainplate(t), PDFOptions{Paper: Letter}) })
	for _, want := range []string{
		"CP-01", "Upper shroud chainplate", "Quillfish, refit of the rig", "8 mm 316L plate, annealed, 1.4404", "3.1 certificate",
		"4 off: 2 as drawn (starboard), 2 of the other hand (port)", "turn every fold the other way",
		"First part only. Hold the rest until released.", "released by", "checked by", "1 of 2", "2 of 2", "mm, from hole 1",
		"pickle and passivate", "break all edges 0.5 mm", "angles ±1°", "ISO 2768-m",
		"Holes, from the centre of hole 1, the pin hole", "Ø16.2", "cut Ø15.5; ream to", "10 square", "after folding",
		"Folds, in press order", "187.58", "25°, leaves 155°", "25.5 to 27.5°", "face B", "99.35", "15°, leaves 165°", "15.3 to 16.5°", "die 80 mm",
		"Every cut edge is sharp", "it cracks there", "the part can jump out", "guard shut", "a cracked fold is scrap",
		"This drawing advises; it is no survey and no approval. A qualified rigger, surveyor, naval architect and local code decide.", "none is measured off this print",
		"263.95", "outside, P2 to P1", "266.44 × 40 × 8 mm", "rolling direction", "2 × R6", "R20", "P1 away", "P2 toward",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the drawing does not say %q:\n%s", want, text)
		}
	}
	one := chainplate(t)
	one.Quantity, one.OtherHand = 1, 0
	if text := said(t, func(b *bytes.Buffer) error { return DrawingPDF(b, one, PDFOptions{}) }); !strings.Contains(text, "One part only. Not to be fitted until released.") {
		t.Error("a single part is not held back")
	}
}

func TestTemplateSays(t *testing.T) {
	text := said(t, func(b *bytes.Buffer) error {
		return TemplatePDF(b, chainplate(t), TemplateOptions{ScaleX: 1.003, ScaleY: 0.998})
	})
	for _, want := range []string{"50 × 50 mm", "sheet 1 of 2", "sheet 2 of 2", "Corrected by scale-x 1.003, scale-y 0.998", "“fit to page” off", "150/m", "face A", "150 mm", "P1 25° away from you", "1: Ø16.2 pin hole", "after folding",
		"make one, try it at the boat, then the rest; cut edges are sharp", "This template advises; it is no survey and no approval"} {
		if !strings.Contains(text, want) {
			t.Errorf("the template does not say %q:\n%s", want, text)
		}
	}
}

// A fold that turns back has no outer corner to measure a leg from.
func TestLegsWithoutCorner(t *testing.T) {
	p := chainplate(t)
	p.Flat.Folds = p.Flat.Folds[:1]
	p.Press = nil
	for angle, want := range map[float64]bool{90: true, 150: false} {
		p.Flat.Folds[0].Angle = angle
		text := said(t, func(b *bytes.Buffer) error { return DrawingPDF(b, p, PDFOptions{}) })
		if strings.Contains(text, "outside, near end to P1") != want {
			t.Errorf("%g deg: the legs are measured: %v", angle, !want)
		}
	}
}

// tags are what stands between the words of an SVG.
var tags = regexp.MustCompile("<[^>]*>")

// TestHold looks for the hold of a part on all that has words, and for the cautions.
func TestHold(t *testing.T) {
	p := chainplate(t)
	p.Hold = "hole low misses the knee"
	for _, w := range writers {
		var b bytes.Buffer
		if err := w.write(&b, p); err != nil {
			t.Fatal(err)
		}
		text := b.String()
		if strings.HasSuffix(w.ending, ".pdf") {
			text = said(t, func(b *bytes.Buffer) error { return w.write(b, p) })
		}
		text = strings.Join(strings.Fields(tags.ReplaceAllString(text, " ")), " ")
		cutOnly := strings.Contains(w.ending, "-cut-")
		for _, want := range []string{"NOT TO BE CUT", "edges are sharp", "advises; it is no survey"} {
			if strings.HasSuffix(w.ending, "drawing.pdf") && want == "edges are sharp" {
				want = "Every cut edge is sharp"
			}
			if strings.Contains(text, want) == cutOnly {
				t.Errorf("%s: %q", w.ending, want)
			}
		}
	}
}

// No word of a template is cut by the edge of a sheet.
func TestNoWordIsCut(t *testing.T) {
	for _, p := range append(parts(t, some(6)), chainplate(t)) {
		tmpl, err := newTemplate(p, TemplateOptions{Paper: A4, ScaleX: 1, ScaleY: 1})
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range tmpl.marks {
			if m.words == nil {
				continue
			}
			whole := false
			for j := range tmpl.ny {
				for i := range tmpl.nx {
					whole = whole || m.words.box().within(tmpl.at(i, j))
				}
			}
			if !whole {
				t.Errorf("%s: %q is whole on no sheet", p.Name, m.words.text)
			}
		}
	}
}

func TestSize(t *testing.T) {
	for v, want := range map[float64]string{0: "0", -0.001: "0", 40: "40", 6.35: "6.35", 119.353884: "119.35", -20: "−20", 0.1 + 0.2: "0.3", 99.999: "100"} {
		if got := size(v); got != want {
			t.Errorf("%g is written %q, want %q", v, got, want)
		}
	}
}

func TestLine(t *testing.T) {
	for s, want := range map[string]string{"a b": "a b", " a  b ": "a b", "a\nb\tc\x00d": "a b c d", "x\u200by\u202ez": "xyz", "ok\ufffe": "ok", "": ""} {
		if got := line(s); got != want {
			t.Errorf("%q becomes %q, want %q", s, got, want)
		}
	}
}

func TestEncode(t *testing.T) {
	if got := string(encode("Łódź “Ø±°×” −5 €")); got != "L\xf3dz \x93\xd8\xb1\xb0\xd7\x94 \x965 \x80" {
		t.Errorf("%q", got)
	}
	if list := unprinted("abc", "ЖØ", "漢"); string(list) != "Ж漢" {
		t.Errorf("%q", string(list))
	}
	if w := textWidth("Ø16", 10, false); w != (0.778+2*0.556)*10 {
		t.Error(w)
	}
}

func TestWrap(t *testing.T) {
	text := "a few words and averyveryverylongwordthatfitsnowhere at all"
	lines := wrap(text, 30, 3.4, false)
	for _, l := range lines {
		if textWidth(l, 3.4, false) > 30 {
			t.Errorf("%q is too wide", l)
		}
	}
	if strings.Join(strings.Fields(strings.Join(lines, "")), "") != strings.Join(strings.Fields(text), "") {
		t.Errorf("%q", lines)
	}
	if len(wrap("", 30, 3.4, false)) != 1 {
		t.Error("an empty cell takes no line")
	}
}
