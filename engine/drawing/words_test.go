package drawing

import (
	"math"
	"slices"
	"testing"

	"chainwale/engine/sheet"
)

// corners are those of the rectangle that words fill, small letters reaching below the
// line left out of it.
func (w words) corners() [4]sheet.Point {
	sin, cos := math.Sincos(w.turn * math.Pi / 180)
	back, long := w.width()*float64(w.align), w.width()
	at := func(x, y float64) sheet.Point {
		return sheet.Point{X: w.at.X + x*cos - y*sin, Y: w.at.Y + x*sin + y*cos}
	}
	high := capital * w.height
	return [4]sheet.Point{at(-back, 0), at(long-back, 0), at(long-back, high), at(-back, high)}
}

// meet tells whether two convex figures meet: no side of either parts them.
func meet(a, b []sheet.Point) bool {
	for _, pair := range [2][2][]sheet.Point{{a, b}, {b, a}} {
		p, q := pair[0], pair[1]
		for i := range p {
			s, e := p[i], p[(i+1)%len(p)]
			nx, ny := e.Y-s.Y, s.X-e.X
			side := func(list []sheet.Point) (low, high float64) {
				low, high = math.Inf(1), math.Inf(-1)
				for _, v := range list {
					d := (v.X-s.X)*nx + (v.Y-s.Y)*ny
					low, high = min(low, d), max(high, d)
				}
				return low, high
			}
			al, ah := side(p)
			bl, bh := side(q)
			if ah <= bl+1e-9 || bh <= al+1e-9 {
				return false
			}
		}
	}
	return true
}

// wordsOf are all words of a sheet that show.
func wordsOf(s *page) []words {
	var list []words
	for _, m := range s.marks {
		if m.words != nil {
			list = append(list, *m.words)
		}
	}
	for _, m := range s.clipped {
		if m.words != nil && m.words.box().within(s.within) {
			list = append(list, *m.words)
		}
	}
	return list
}

// checkWords looks for words that stand on each other or leave the paper's margin, and
// for words on a heavy line; it gives how many of the last there are.
func checkWords(t *testing.T, name string, s *page) (onLines int) {
	t.Helper()
	list := wordsOf(s)
	for i, w := range list {
		c := w.corners()
		for _, p := range c {
			if p.X < 5 || p.Y < 5 || p.X > s.Width-5 || p.Y > s.Height-5 {
				t.Errorf("%s: %q leaves the paper at (%.1f, %.1f)", name, w.text, p.X, p.Y)
				break
			}
		}
		if w.height < 2.5 {
			t.Errorf("%s: %q is %g mm high, too small to be read", name, w.text, w.height)
		}
		for _, o := range list[:i] {
			oc := o.corners()
			if meet(c[:], oc[:]) {
				t.Errorf("%s: %q stands on %q", name, w.text, o.text)
			}
		}
		for _, m := range s.marks {
			if m.words == nil && m.pen.width >= edgePen.width && slices.ContainsFunc(segmentsOf(m), func(l [2]sheet.Point) bool { return meet(c[:], l[:]) }) {
				onLines++
			}
		}
	}
	return onLines
}

func segmentsOf(m mark) [][2]sheet.Point {
	points := flatten(m.path, m.closed)
	var list [][2]sheet.Point
	for i := 1; i < len(points); i++ {
		list = append(list, [2]sheet.Point{points[i-1], points[i]})
	}
	return list
}

// TestWordsHaveRoom lays out many parts on both papers and looks whether all words can
// be read.
func TestWordsHaveRoom(t *testing.T) {
	if testing.Short() {
		t.Skip("long, and run in full before the race detector")
	}
	for _, paper := range []Paper{A4, Letter} {
		crossed, sheets := 0, 0
		for _, p := range slices.Concat([]Part{chainplate(t)}, odd(t), parts(t, some(20))) {
			drawn, err := p.sheets(paper.turned())
			if err != nil {
				t.Fatal(err)
			}
			template, err := p.templateSheets(TemplateOptions{Paper: paper, ScaleX: 1, ScaleY: 1})
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range drawn {
				crossed += checkWords(t, p.Name, s)
			}
			for _, s := range template {
				checkWords(t, p.Name+" template", s)
			}
			sheets += len(drawn)
		}
		if crossed > 0 {
			t.Errorf("%d words stand on edges of the part, in %d sheets", crossed, sheets)
		}
	}
}
