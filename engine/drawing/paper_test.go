package drawing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image/png"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"chainwale/engine/sheet"
	"chainwale/testdata/outside/tool"
)

// scan is a sheet as a renderer sees it: how white each point is, rows from the top.
type scan struct {
	wide, high int
	perMM      float64
	white      []byte
}

// dark is how dark a point is, 0 to 1.
func (s scan) dark(x, y int) float64 { return 1 - float64(s.white[y*s.wide+x])/255 }

// render has a PDF rendered, and gives its sheets.
func render(t *testing.T, pdf []byte, dpi int) []scan {
	t.Helper()
	pdftoppm := tool.Need(t, "pdftoppm")
	dir := t.TempDir()
	name := filepath.Join(dir, "in.pdf")
	if err := os.WriteFile(name, pdf, 0o644); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command(pdftoppm, "-r", strconv.Itoa(dpi), "-gray", name, filepath.Join(dir, "p")).CombinedOutput(); err != nil || len(out) > 0 {
		t.Fatalf("%v\n%s", err, out)
	}
	files, _ := filepath.Glob(filepath.Join(dir, "p*.pgm"))
	var list []scan
	for _, f := range files {
		b, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		s := scan{perMM: float64(dpi) / 25.4}
		most := 0
		if _, err := fmt.Sscanf(string(b[:40]), "P5\n%d %d\n%d\n", &s.wide, &s.high, &most); err != nil || most != 255 {
			t.Fatalf("%q: %v", b[:20], err)
		}
		s.white = b[len(b)-s.wide*s.high:]
		list = append(list, s)
	}
	return list
}

// lines are the middles of the lines that a straight cut across the sheet meets, mm from
// the left: at a height above the lower edge, between two places.
func (s scan) lines(height, from, to float64) []float64 {
	row := s.high - 1 - int(height*s.perMM)
	return s.middles(int(from*s.perMM), int(to*s.perMM), func(i int) float64 { return s.dark(i, row) })
}

// upright is the same up the sheet, mm from the lower edge.
func (s scan) upright(along, from, to float64) []float64 {
	column := int(along * s.perMM)
	return s.middles(int(from*s.perMM), min(int(to*s.perMM), s.high-1), func(i int) float64 { return s.dark(column, s.high-1-i) })
}

// middles weighs each run of dark points.
func (s scan) middles(from, to int, dark func(int) float64) []float64 {
	var list []float64
	sum, moment := 0.0, 0.0
	for i := from; i <= to; i++ {
		if v := dark(i); v > 0.05 && i < to {
			sum += v
			moment += v * (float64(i) + 0.5)
			continue
		}
		if sum > 0 {
			list = append(list, moment/sum/s.perMM)
		}
		sum, moment = 0, 0
	}
	return list
}

// bar is a plate whose template is measured: 120 x 40 mm, a hole of 20 mm in its middle.
func bar(t *testing.T) Part {
	p := chainplate(t)
	p.Flat = sheet.Flat{Thickness: 6, Outline: sheet.Contour(rectangle(0, -20, 120, 40)), Holes: []sheet.Hole{{At: sheet.Point{X: 60}, Diameter: 20}}}
	p.OtherHand, p.Press, p.Later, p.Holes = 0, nil, nil, nil
	return p
}

// TestTemplateMeasures renders templates at 300 dpi and measures what a user would:
// square, rulers and the part, on both papers and with a printer's error undone.
func TestTemplateMeasures(t *testing.T) {
	if testing.Short() {
		t.Skip("long, and run in full before the race detector")
	}
	// A renderer lays thin lines on whole points, and a point is 0.085 mm.
	const tolerance = 0.09
	is := func(what string, got, want float64) {
		t.Helper()
		if !(math.Abs(got-want) <= tolerance) {
			t.Errorf("%s measures %.3f mm, want %.3f", what, got, want)
		}
	}
	for _, o := range []TemplateOptions{{Paper: A4}, {Paper: Letter}, {Paper: A4, ScaleX: 1.01, ScaleY: 0.985}, {Paper: Letter, ScaleX: 0.97, ScaleY: 1.03}} {
		var b bytes.Buffer
		if err := TemplatePDF(&b, bar(t), o); err != nil {
			t.Fatal(err)
		}
		s := render(t, b.Bytes(), 300)[0]
		if err := o.check(); err != nil {
			t.Fatal(err)
		}
		is("the sheet across", float64(s.wide)/s.perMM, o.Paper.Width)
		is("the sheet along", float64(s.high)/s.perMM, o.Paper.Height)
		name := fmt.Sprintf("%g mm paper, %g x %g: ", o.Paper.Width, o.ScaleX, o.ScaleY)
		low, left := s.High()-templateMargin-squareSize*o.ScaleY, templateMargin+1.0
		edges := s.lines(low+5, 5, 5+squareSize*o.ScaleX+10)
		if len(edges) != 2 {
			t.Fatalf("%sthe square has %d sides", name, len(edges))
		}
		is(name+"the square across", edges[1]-edges[0], 50*o.ScaleX)
		edges = s.upright(left+5, low-5, s.High()-3)
		is(name+"the square along", edges[len(edges)-1]-edges[0], 50*o.ScaleY)
		// The longest marks of the rulers reach 6 mm from the corner of the tile.
		corner := templateMargin + templateStrip
		ticks := s.lines(corner-5.5, corner-2, corner+rulerLength*o.ScaleX+2)
		if len(ticks) != 16 {
			t.Fatalf("%sthe ruler across has %d long marks: %v", name, len(ticks), ticks)
		}
		is(name+"the ruler across", ticks[15]-ticks[0], 150*o.ScaleX)
		ticks = s.upright(corner-5.5, corner-2, corner+rulerLength*o.ScaleY+2)
		if len(ticks) != 16 {
			t.Fatalf("%sthe ruler along has %d long marks", name, len(ticks))
		}
		is(name+"the ruler along", ticks[15]-ticks[0], 150*o.ScaleY)
		middle := corner + 0.5*(s.High()-2*templateMargin-templateHead-templateStrip)
		across := s.lines(middle-15*o.ScaleY, corner+1, o.Paper.Width-templateMargin-1)
		is(name+"the plate along its length", across[len(across)-1]-across[0], 120*o.ScaleX)
		along := s.upright(across[0]+10, corner+1, middle+60)
		is(name+"the plate across", along[len(along)-1]-along[0], 40*o.ScaleY)
		// Below its cross, the hole is wide by its chord.
		chord := 2 * math.Sqrt(100-36)
		across = s.lines(middle-6*o.ScaleY, across[0]+48*o.ScaleX, across[0]+72*o.ScaleX)
		is(name+"the hole", across[len(across)-1]-across[0], chord*o.ScaleX)
	}
}

// High is the height of the sheet, mm.
func (s scan) High() float64 { return float64(s.high) / s.perMM }

// TestTemplateJoins looks whether what two neighbouring sheets show alike lies alike
// from the cross that joins them.
func TestTemplateJoins(t *testing.T) {
	p := chainplate(t)
	o := TemplateOptions{Paper: A4, ScaleX: 1.02, ScaleY: 0.99}
	tp, err := newTemplate(p, o)
	if err != nil {
		t.Fatal(err)
	}
	if tp.nx*tp.ny != 2 || len(tp.joins) != 2 {
		t.Fatalf("%d x %d sheets with %d crosses", tp.nx, tp.ny, len(tp.joins))
	}
	var b bytes.Buffer
	if err := TemplatePDF(&b, p, o); err != nil {
		t.Fatal(err)
	}
	sheets := render(t, b.Bytes(), 300)
	corner := templateMargin + templateStrip
	var cuts [2][]float64
	for i := range 2 {
		shows := tp.at(i, 0)
		c := tp.joins[0].at
		x, y := corner+(c.X-shows.left)*o.ScaleX, corner+(c.Y-shows.low)*o.ScaleY
		// 3.5 mm above the middle only the cross's upright arm is met, and nothing within 4 mm.
		arm := sheets[i].lines(y+3.5, x-2, x+2)
		if len(arm) != 1 || math.Abs(arm[0]-x) > 0.05 {
			t.Fatalf("sheet %d has the cross at %v, want %.2f", i+1, arm, x)
		}
		for _, v := range sheets[i].upright(x+4.3, corner+1, corner+shows.height()*o.ScaleY-1) {
			cuts[i] = append(cuts[i], v-y)
		}
	}
	if len(cuts[0]) == 0 || len(cuts[0]) != len(cuts[1]) {
		t.Fatalf("beside the cross the sheets show %v and %v", cuts[0], cuts[1])
	}
	for i := range cuts[0] {
		if math.Abs(cuts[0][i]-cuts[1][i]) > 0.1 {
			t.Errorf("beside the cross the sheets show lines at %.2f and %.2f mm", cuts[0][i], cuts[1][i])
		}
	}
}

func TestTiles(t *testing.T) {
	for _, part := range []box{{0, 0, 10, 10}, {-5, -20, 261, 20}, {0, 0, 178, 211}, {0, 0, 178.1, 211}, {100, 50, 2600, 900}} {
		tl := newTiles(part, 178, 211)
		if first, last := tl.at(0, 0), tl.at(tl.nx-1, tl.ny-1); first.left > part.left+1e-9 || first.low > part.low+1e-9 || last.right < part.right-1e-9 || last.high < part.high-1e-9 {
			t.Errorf("%v is not covered by %v to %v", part, first, last)
		}
		for i := range tl.nx - 1 {
			if lap := tl.at(i, 0).right - tl.at(i+1, 0).left; lap < overlap-1e-9 {
				t.Errorf("%v: sheets overlap by %g", part, lap)
			}
		}
		if part.width() <= 178 && tl.nx != 1 || part.height() <= 211 && tl.ny != 1 {
			t.Errorf("%v takes %d x %d sheets", part, tl.nx, tl.ny)
		}
		for _, c := range tl.crosses(&places{}) {
			shown := 0
			for i := range tl.nx {
				for j := range tl.ny {
					if (box{c.at.X, c.at.Y, c.at.X, c.at.Y}).grown(crossReach).within(tl.at(i, j)) {
						shown++
					}
				}
			}
			if shown < 2 {
				t.Errorf("cross %s is whole on %d sheets", c.name, shown)
			}
		}
	}
	if a, b, c := letters(0), letters(25), letters(26); a != "a" || b != "z" || c != "aa" {
		t.Error(a, b, c)
	}
}

// TestLetterWidths holds our widths of letters against those that pdftotext has for the
// same typefaces.
func TestLetterWidths(t *testing.T) {
	pdftotext := tool.Need(t, "pdftotext")
	s := &page{Paper: Paper{2000, 5000}}
	var want []words
	for i, bold := range []bool{false, true} {
		for k, r := range printable() {
			w := words{at: sheet.Point{X: 50 + 900*float64(i), Y: 4900 - 20*float64(k)}, text: strings.Repeat(string(r), 10), height: 10, bold: bold}
			s.text(w)
			want = append(want, w)
		}
	}
	name := filepath.Join(t.TempDir(), "w.pdf")
	if err := os.WriteFile(name, writePDF("widths", []*page{s}), 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(pdftotext, "-bbox", name, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	// A place says which line it is; the letter itself may come back under another name.
	found := map[string]float64{}
	for _, m := range regexp.MustCompile(`xMin="([0-9.]+)" yMin="([0-9.]+)" xMax="([0-9.]+)"`).FindAllStringSubmatch(string(out), -1) {
		left, _ := strconv.ParseFloat(m[1], 64)
		top, _ := strconv.ParseFloat(m[2], 64)
		right, _ := strconv.ParseFloat(m[3], 64)
		key := fmt.Sprint(math.Round(left/pointsPerMillimetre), " ", math.Round((5000-top/pointsPerMillimetre)/20))
		found[key] = (right - left) / pointsPerMillimetre
	}
	missing := 0
	for _, w := range want {
		got, ok := found[fmt.Sprint(math.Round(w.at.X), " ", math.Round((w.at.Y+8)/20))]
		if !ok {
			missing++
			continue
		}
		if math.Abs(got-w.width()) > 0.02*10 {
			t.Errorf("%q (bold %v) runs %.2f mm wide, and we reckon %.2f", w.text, w.bold, got, w.width())
		}
	}
	if missing > 6 {
		t.Errorf("%d of %d letters were not found again", missing, len(want))
	}
}

// printable are all letters of the typeface but the blanks.
func printable() []rune {
	var list []rune
	for r := rune(33); r < 127; r++ {
		list = append(list, r)
	}
	for _, r := range high {
		if r != 0 {
			list = append(list, r)
		}
	}
	for r := rune(161); r <= 255; r++ {
		if r != 173 {
			list = append(list, r)
		}
	}
	return list
}

// TestPDFForm looks at the bones of a PDF: every object stands where the list says, every
// stream is as long as it says, printers are told not to scale, and nothing is of today.
func TestPDFForm(t *testing.T) {
	for _, p := range []Part{chainplate(t), odd(t)[0]} {
		var b bytes.Buffer
		if err := DrawingPDF(&b, p, PDFOptions{}); err != nil {
			t.Fatal(err)
		}
		text := b.String()
		start, _ := strconv.Atoi(regexp.MustCompile(`startxref\n(\d+)\n%%EOF\n$`).FindStringSubmatch(text)[1])
		entries := regexp.MustCompile(`(\d{10}) 00000 n `).FindAllStringSubmatch(text[start:], -1)
		for i, e := range entries {
			at, _ := strconv.Atoi(e[1])
			if want := fmt.Sprintf("%d 0 obj\n", i+1); !strings.HasPrefix(text[at:], want) {
				t.Errorf("object %d is not at %d", i+1, at)
			}
		}
		if len(entries) != strings.Count(text, " 0 obj\n") || !strings.HasPrefix(text[start:], "xref\n0 "+strconv.Itoa(len(entries)+1)+"\n") {
			t.Errorf("%d objects listed", len(entries))
		}
		for _, m := range regexp.MustCompile(`(?s)/Length (\d+)>>\nstream\n(.*?)\nendstream`).FindAllStringSubmatch(text, -1) {
			if strconv.Itoa(len(m[2])) != m[1] {
				t.Errorf("a stream of %d bytes says %s", len(m[2]), m[1])
			}
		}
		if !strings.Contains(text, "/PrintScaling/None") || strings.Contains(text, "Date") {
			t.Error("scaling is not off, or there is a date")
		}
	}
}

// TestSVGMeasures renders the flat at 10 points a millimetre and measures it, and reads
// both pictures as XML.
func TestSVGMeasures(t *testing.T) {
	if testing.Short() {
		t.Skip("long, and run in full before the race detector")
	}
	rsvg := tool.Need(t, "rsvg-convert")
	p := bar(t)
	var b bytes.Buffer
	if err := SVG(&b, p); err != nil {
		t.Fatal(err)
	}
	command := exec.Command(rsvg, "-d", "254", "-p", "254", "-b", "white")
	command.Stdin = &b
	out, err := command.Output()
	if err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	bounds := picture.Bounds()
	s := scan{wide: bounds.Dx(), high: bounds.Dy(), perMM: 10}
	for y := range s.high {
		for x := range s.wide {
			r, g, bl, _ := picture.At(x, y).RGBA()
			s.white = append(s.white, byte((r+g+bl)/3>>8))
		}
	}
	// The picture's edge stands 10 mm off, the plate is 40 high and the hole in its middle.
	middle := s.High() - 10 - 20
	across := s.lines(middle, 0, float64(s.wide)/10)
	if len(across) != 4 {
		t.Fatalf("lines at %v", across)
	}
	for i, want := range []float64{10, 60, 80, 130} {
		if math.Abs(across[i]-want) > 0.06 {
			t.Errorf("a line at %.3f mm, want %g", across[i], want)
		}
	}
	along := s.upright(20, middle-25, s.High())
	if d := along[len(along)-1] - along[0]; math.Abs(d-40) > 0.06 {
		t.Errorf("the plate is %.3f mm high: %v", d, along)
	}
}

// TestSVGIsXML reads the pictures of many parts, the odd words among them.
func TestSVGIsXML(t *testing.T) {
	for _, p := range append(odd(t), chainplate(t)) {
		p.Title = "a <b> & \"c\" \x01 \ufffe " + p.Title
		for _, write := range []func(io.Writer, Part) error{SVG, FoldedSVG} {
			var b bytes.Buffer
			if err := write(&b, p); err != nil {
				t.Fatal(err)
			}
			d := xml.NewDecoder(&b)
			for {
				if _, err := d.Token(); err == io.EOF {
					break
				} else if err != nil {
					t.Fatalf("%s: %v", p.Name, err)
				}
			}
		}
	}
}
