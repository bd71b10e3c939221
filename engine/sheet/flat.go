package sheet

import (
	"fmt"
	"slices"
)

// Flat is a part before it is folded: outline, holes, folds. Folds count X along the
// strip's centre line, Y = 0, from the outline's own X = 0.
type Flat struct {
	Name      string
	Metal     string
	Thickness float64
	Outline   Contour
	Holes     []Hole
	Folds     []Fold
	// Later are holes that are drilled when the part is folded. No cutting program has
	// them, but parts that differ in them are two.
	Later []Hole
	// OneSided says that its two faces differ: a countersunk hole, a mark, a polished
	// side. Such a flat can't be turned over.
	OneSided bool
}

// Strip is the folded strip that the flat becomes: as long as its outline and as wide
// as the wider side of its centre line asks.
func (f Flat) Strip() FoldedStrip {
	low, high := f.Outline.Bounds()
	if len(f.Folds) == 0 {
		// Without folds it lies where it lies.
		return FoldedStrip{Thickness: f.Thickness, Width: high.Y - low.Y, Length: high.X - low.X}
	}
	return FoldedStrip{Thickness: f.Thickness, Width: 2 * max(-low.Y, high.Y), Length: high.X, Folds: f.Folds}
}

// Folding is the map from the flat to the part.
func (f Flat) Folding() (*Folding, error) {
	if err := f.Outline.Check(); err != nil {
		return nil, err
	}
	if low, _ := f.Outline.Bounds(); len(f.Folds) > 0 && low.X < -touching {
		return nil, fmt.Errorf("the outline reaches to X = %.4g mm; a folded strip begins at 0", low.X)
	}
	return NewFolding(f.Strip())
}

// Mirrored is the flat of the other hand: outline, holes and fold lines mirrored across
// the centre line, every fold turned the same way.
func (f Flat) Mirrored() Flat {
	f.Outline = f.Outline.Mirrored()
	f.Holes, f.Later = mirrored(f.Holes), mirrored(f.Later)
	f.Folds = FoldedStrip{Folds: f.Folds}.Mirrored().Folds
	return f
}

func mirrored(holes []Hole) []Hole {
	list := slices.Clone(holes)
	for i := range list {
		h := &list[i]
		h.At.Y, h.Turn = -h.At.Y, -h.Turn
	}
	return list
}

// Check refuses a flat that can't be cut and folded: an outline that is none, a hole
// that breaks through an edge, into another or into a fold, and folds that overlap.
// Errors name the hole and the fold.
func (f Flat) Check() error {
	folding, err := f.Folding()
	if err != nil {
		return err
	}
	for i, h := range f.Holes {
		name := holeName(h, i)
		if err := h.check(name); err != nil {
			return err
		}
		if !(h.ToEdge(f.Outline) > 0) {
			return fmt.Errorf("%s does not lie within the outline", name)
		}
		for j, o := range f.Holes[:i] {
			if !(h.Apart(o) > 0) {
				return fmt.Errorf("%s and %s run into each other", holeName(o, j), name)
			}
		}
		for j, p := range folding.folds {
			if !(h.toLine(p) > p.half) {
				return fmt.Errorf("%s lies in %s: drill it after folding and leave it out of the flat", name, foldName(j))
			}
		}
	}
	return nil
}

// Distance is the metal between two things of a flat, mm.
type Distance struct {
	From, To string
	Clear    float64
}

// EdgeName is what Distances calls the outline.
const EdgeName = "edge"

// Distances are the metal between each hole and the edge, each two holes, and each
// hole and the middle line of each fold, in that order for every hole.
func (f Flat) Distances() ([]Distance, error) {
	folding, err := f.Folding()
	if err != nil {
		return nil, err
	}
	var list []Distance
	for i, h := range f.Holes {
		name := holeName(h, i)
		if err := h.check(name); err != nil {
			return nil, err
		}
		list = append(list, Distance{name, EdgeName, h.ToEdge(f.Outline)})
		for j, o := range f.Holes[:i] {
			list = append(list, Distance{name, holeName(o, j), h.Apart(o)})
		}
		for j, p := range folding.folds {
			list = append(list, Distance{name, foldName(j), h.toLine(p)})
		}
	}
	return list, nil
}

// Area is the metal that is left within the outline, mm2.
func (f Flat) Area() float64 {
	area := f.Outline.Area()
	for _, h := range f.Holes {
		area -= h.Contour().Area()
	}
	return area
}

// Cut is the length of all cuts, mm.
func (f Flat) Cut() float64 {
	length := f.Outline.Perimeter()
	for _, h := range f.Holes {
		length += h.Contour().Perimeter()
	}
	return length
}
