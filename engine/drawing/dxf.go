package drawing

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"

	"chainwale/engine/sheet"
)

// DXFVersion is an edition of the cutting file.
type DXFVersion string

const (
	// R12 is the old edition that everything reads, R2000 the one that knows units and
	// closed lines of lines and arcs. Shops differ in which they ask for.
	R12   DXFVersion = "r12"
	R2000 DXFVersion = "r2000"
)

// DXFOptions choose a cutting file.
type DXFOptions struct {
	Version DXFVersion
	// CutOnly leaves nothing but outline and holes, as shops that quote from the file
	// alone want it.
	CutOnly bool
}

// The layers of a cutting file.
const (
	OutlineLayer    = "outline"
	HolesLayer      = "holes"
	FoldTowardLayer = "fold-toward"
	FoldAwayLayer   = "fold-away"
	MarksLayer      = "marks"
	WordsLayer      = "words"
)

// dxfLayer is a layer with its line type and colour number: 7 is black on white, 5 the
// accent, 8 grey.
type dxfLayer struct {
	name, lineType string
	colour         int
}

// layers are all of them; a file declares those that it draws on, and 0, which every file
// has.
var layers = []dxfLayer{
	{"0", "CONTINUOUS", 7}, {OutlineLayer, "CONTINUOUS", 7}, {HolesLayer, "CONTINUOUS", 7},
	{FoldTowardLayer, "DASHED", 5}, {FoldAwayLayer, "DASHDOT", 5}, {MarksLayer, "CONTINUOUS", 8}, {WordsLayer, "CONTINUOUS", 8},
}

// lineTypes are the patterns: a stroke, a gap as a negative number, and so on, mm.
var lineTypes = []struct {
	name, look string
	pattern    []float64
}{
	{"CONTINUOUS", "Solid line", nil}, {"DASHED", "__ __ __ __", []float64{6, -3}}, {"DASHDOT", "__ . __ . __", []float64{6, -2, 0, -2}},
}

// wordHeight is how high letters of a cutting file are, and wordLine how long a line of
// running text becomes, mm.
const (
	wordHeight = 4.0
	wordLine   = 240.0
)

// DXF writes the flat at full size in mm, closed contours and circles, each kind on a
// layer of its own. Errors: an edition that is none, and what Check refuses; then
// nothing is written.
func DXF(w io.Writer, p Part, o DXFOptions) error {
	if o.Version != R12 && o.Version != R2000 {
		return fmt.Errorf("a DXF is written as %s or %s, not %q", R12, R2000, string(o.Version))
	}
	if err := p.Check(); err != nil {
		return err
	}
	shapes, err := p.dxfShapes(o.CutOnly)
	if err != nil {
		return err
	}
	d := &dxf{modern: o.Version == R2000, handle: firstHandle}
	d.low, d.high = extents(shapes)
	d.layers = layersOf(shapes)
	d.write(shapes)
	_, err = w.Write(d.b)
	return err
}

// layersOf are the layers that shapes are drawn on, in their order.
func layersOf(shapes []dxfShape) []dxfLayer {
	return slices.DeleteFunc(slices.Clone(layers), func(l dxfLayer) bool {
		return l.name != layers[0].name && !slices.ContainsFunc(shapes, func(s dxfShape) bool { return s.layer == l.name })
	})
}

// dxfShape is one entity: a closed contour, a circle, a line or a word.
type dxfShape struct {
	layer   string
	contour sheet.Contour
	circle  bool
	line    bool
	at      sheet.Point
	size    float64
	word    string
}

// dxfShapes lists all entities in the order in which they are written: cuts inside
// before the one outside, as they are cut.
func (p Part) dxfShapes(cutOnly bool) ([]dxfShape, error) {
	var list []dxfShape
	for i := range p.Flat.Holes {
		h := p.cut(i)
		if h.Square || h.Long > 0 {
			list = append(list, dxfShape{layer: HolesLayer, contour: h.Contour()})
			continue
		}
		list = append(list, dxfShape{layer: HolesLayer, circle: true, at: h.At, size: h.Diameter / 2})
	}
	list = append(list, dxfShape{layer: OutlineLayer, contour: p.Flat.Outline})
	if cutOnly {
		return list, nil
	}
	folds, err := bands(p.Flat)
	if err != nil {
		return nil, err
	}
	for _, b := range folds {
		layer := FoldAwayLayer
		if b.toward() {
			layer = FoldTowardLayer
		}
		list = append(list, dxfShape{layer: layer, line: true, contour: between(b.from, b.to)})
	}
	for _, h := range p.Later {
		for _, c := range cross(h.At, markReach(h.Diameter)) {
			list = append(list, dxfShape{layer: MarksLayer, line: true, contour: c})
		}
	}
	low, _ := p.Flat.Outline.Bounds()
	for i, w := range p.dxfWords() {
		at := sheet.Point{X: low.X, Y: low.Y - (1.5+1.6*float64(i))*wordHeight - wordHeight}
		list = append(list, dxfShape{layer: WordsLayer, word: w, at: at, size: wordHeight})
	}
	return list, nil
}

// dxfWords stand below the flat. They are for reading, never for cutting.
func (p Part) dxfWords() []string {
	low, high := p.Flat.Outline.Bounds()
	list := append(p.holds(), line(p.Name+"  "+p.Title), size(p.Flat.Thickness)+" mm  "+line(p.Metal)+"  "+p.off(),
		"sizes in mm, 1:1, seen on face A; a print at 100 % measures "+size(high.X-low.X)+" x "+size(high.Y-low.Y))
	if len(p.Flat.Folds) > 0 {
		list = append(list, "lay X along the rolling direction; fold lines are for the press, not for cutting")
	}
	return append(append(list, tryFirst), wrap(advises, wordLine, wordHeight/capital, false)...)
}

// extents are the corners of what is drawn.
func extents(shapes []dxfShape) (low, high sheet.Point) {
	low, high = sheet.Point{X: math.Inf(1), Y: math.Inf(1)}, sheet.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	take := func(a, b sheet.Point) {
		low = sheet.Point{X: min(low.X, a.X), Y: min(low.Y, a.Y)}
		high = sheet.Point{X: max(high.X, b.X), Y: max(high.Y, b.Y)}
	}
	for _, s := range shapes {
		switch {
		case s.circle:
			take(sheet.Point{X: s.at.X - s.size, Y: s.at.Y - s.size}, sheet.Point{X: s.at.X + s.size, Y: s.at.Y + s.size})
		case s.word != "":
			take(s.at, sheet.Point{X: s.at.X + textWidth(line(s.word), s.size/capital, false), Y: s.at.Y + s.size})
		case s.line:
			for _, v := range s.contour {
				take(sheet.Point{X: v.X, Y: v.Y}, sheet.Point{X: v.X, Y: v.Y})
			}
		default:
			take(s.contour.Bounds())
		}
	}
	return low, high
}

// dxf is a cutting file as it grows: lines of a group code and lines of its value.
type dxf struct {
	b         []byte
	modern    bool
	handle    int
	low, high sheet.Point
	layers    []dxfLayer
}

func (d *dxf) word(code int, value string) {
	d.b = fmt.Appendf(d.b, "%3d\r\n", code)
	d.b = append(append(d.b, value...), "\r\n"...)
}

func (d *dxf) integer(code, value int) { d.word(code, strconv.Itoa(value)) }

// number writes a decimal point always, and as many digits as keep area and perimeter
// to a millionth of a millimetre.
func (d *dxf) number(code int, v float64) {
	s := strconv.FormatFloat(v, 'f', 12, 64)
	end := len(s)
	for s[end-1] == '0' && s[end-2] != '.' {
		end--
	}
	if s = s[:end]; s == "-0.0" {
		s = "0.0"
	}
	d.word(code, s)
}

func (d *dxf) point(code int, p sheet.Point) {
	d.number(code, p.X)
	d.number(code+10, p.Y)
	d.number(code+20, 0)
}

// longestWord is how many letters a text of the old edition holds, less the longest
// that one letter here becomes.
const longestWord = 255 - 10

// dxfText writes a text in plain letters: what the format has no letter for goes by its
// number. What is too long is cut.
func dxfText(s string) string {
	var b []byte
	for _, r := range line(s) {
		if len(b) > longestWord {
			return string(append(b, "..."...))
		}
		switch {
		case r == '°':
			b = append(b, "%%d"...)
		case r == '±':
			b = append(b, "%%p"...)
		case r == 'Ø':
			b = append(b, "%%c"...)
		case r == '−' || r == '–':
			b = append(b, '-')
		case r == '%' && len(b) > 0 && b[len(b)-1] == '%':
			b = append(b, " %"...)
		case r == '^':
			b = append(b, "^ "...)
		case r > 0xffff:
			b = append(b, '?')
		case r > 126:
			b = fmt.Appendf(b, "\\U+%04X", r)
		default:
			b = append(b, byte(r))
		}
	}
	return string(b)
}
