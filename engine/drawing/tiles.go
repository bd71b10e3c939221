package drawing

import (
	"math"

	"chainwale/engine/sheet"
)

// tiles cut a part's rectangle into sheets that overlap.
type tiles struct {
	nx, ny int
	// tile is the width and height that a sheet shows, stepX and stepY how far its
	// neighbours lie, low the corner of the first.
	width, height, stepX, stepY float64
	low                         sheet.Point
}

// overlap is how much two neighbouring sheets show alike, mm.
const overlap = 14.0

// newTiles shares the rectangle of a part among sheets, so that all show about as much.
func newTiles(part box, wide, high float64) tiles {
	t := tiles{width: wide, height: high}
	t.nx, t.stepX = share(part.width(), wide)
	t.ny, t.stepY = share(part.height(), high)
	t.low = sheet.Point{X: (part.left+part.right)/2 - (wide+float64(t.nx-1)*t.stepX)/2, Y: (part.low+part.high)/2 - (high+float64(t.ny-1)*t.stepY)/2}
	return t
}

// share is how many sheets a length takes, and how far apart they lie.
func share(length, sheet float64) (n int, step float64) {
	n = max(1, int(math.Ceil((length-overlap)/(sheet-overlap)-1e-9)))
	if n == 1 {
		return 1, 0
	}
	// The margin left over is shared by both ends.
	spare := sheet + float64(n-1)*(sheet-overlap) - length
	return n, sheet - overlap - spare/float64(n+1)
}

// at is what a sheet shows, in the part's place.
func (t tiles) at(i, j int) box {
	x, y := t.low.X+float64(i)*t.stepX, t.low.Y+float64(j)*t.stepY
	return box{x, y, x + t.width, y + t.height}
}

// takeEdges keeps words from the edges of sheets, where they would be cut.
func (t tiles) takeEdges(around *places) {
	for j := range t.ny {
		for i := range t.nx {
			b := t.at(i, j)
			corners := []sheet.Point{{X: b.left, Y: b.low}, {X: b.right, Y: b.low}, {X: b.right, Y: b.high}, {X: b.left, Y: b.high}, {X: b.left, Y: b.low}}
			around.takePoints(corners)
		}
	}
}

// crossMark is a registration cross: printed on both sheets that show its place.
type crossMark struct {
	at   sheet.Point
	name string
}

// crossReach is how far a cross and its name reach from its middle, mm.
const crossReach = 6.5

// crosses stand in the middle of every overlap, two to a side and far apart, named in
// order. They keep clear of what is drawn if there is room for that.
func (t tiles) crosses(around *places) []crossMark {
	var list []crossMark
	around.room = box{math.Inf(-1), math.Inf(-1), math.Inf(1), math.Inf(1)}
	add := func(at func(share float64) sheet.Point, shares []float64) {
		best, least := sheet.Point{}, math.Inf(1)
		for _, share := range shares {
			p := at(share)
			if n := around.crowded(box{p.X, p.Y, p.X, p.Y}.grown(crossReach)); n < least {
				best, least = p, n
			}
		}
		list = append(list, crossMark{best, letters(len(list))})
		around.takeBox(box{best.X, best.Y, best.X, best.Y}.grown(crossReach))
	}
	near, far := []float64{0.12, 0.08, 0.16, 0.2, 0.25, 0.3, 0.35, 0.4}, []float64{0.88, 0.92, 0.84, 0.8, 0.75, 0.7, 0.65, 0.6}
	for j := range t.ny {
		for i := range t.nx - 1 {
			a, b := t.at(i, j), t.at(i+1, j)
			seam := func(share float64) sheet.Point {
				return sheet.Point{X: (a.right + b.left) / 2, Y: a.low + share*t.height}
			}
			add(seam, near)
			add(seam, far)
		}
	}
	for j := range t.ny - 1 {
		for i := range t.nx {
			a, b := t.at(i, j), t.at(i, j+1)
			seam := func(share float64) sheet.Point {
				return sheet.Point{X: a.left + share*t.width, Y: (a.high + b.low) / 2}
			}
			add(seam, near)
			add(seam, far)
		}
	}
	return list
}

// letters names the cross at an index: a, b, ... z, aa, ab.
func letters(i int) string {
	if i < 26 {
		return string(rune('a' + i))
	}
	return letters(i/26-1) + letters(i%26)
}
