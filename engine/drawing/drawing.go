// Package drawing lays a part down for the people who make it: the cutting file, the
// dimensioned drawing, the paper template at full size and the picture of the folded
// part.
//
// It takes a Part, which says all there is to print, and computes nothing about
// strength: flat, holes and folds come from engine/sheet, words from the caller.
//
//	drawing check words            what is drawn, what is refused, how numbers are written
//	lines bands space              lines and folds of the flat, points in space
//	picture glyphs place           marks on paper in mm, letters, and room for words
//	svg pdf                        a picture as SVG; pages as PDF
//	dxf dxfsections dxftables      cutting files
//	flatview ordinates             the flat with its sizes from one datum
//	sideview slanted hidden        the folded part: from the side, and as one knows it
//	layout titles tables lists     the sheets of the drawing
//	template tiles                 the paper template, calibration and sheets that join
//
// All bytes follow from the Part alone: no date, no random number, no map order.
// Lengths are in mm; X runs along the strip, Y across it, the viewer looks on face A.
// A picture speaks by line, mark and word, with one accent colour, and stays readable
// printed in black.
package drawing

import (
	"slices"

	"chainwale/engine/sheet"
)

// Part is a fitting to be made, or a group of equal ones.
type Part struct {
	// Name is short and of the plan: "CP-01". Title says what it is, Plan whose it is.
	Name, Title, Plan string
	// Quantity is how many are made as drawn, OtherHand how many with every fold turned
	// the other way. Hand and OppositeHand say where each goes ("starboard", "port"); ""
	// if the part has no hand.
	Quantity, OtherHand int
	Hand, OppositeHand  string
	// Hold says why none of them may be made: it stands on every sheet and file that has
	// words. "" for a part that nothing holds up.
	Hold string
	// Metal, Certificate, Finish and Edges are sentences for the shop.
	Metal, Certificate, Finish, Edges string
	// Tolerances, Notes and Warnings are printed as they stand, a line each.
	Tolerances, Notes, Warnings []string

	Flat sheet.Flat
	// Datum is the index of the hole from which all sizes count: the pin hole. A flat
	// without holes counts from its near end on the centre line.
	Datum int
	// Holes says what each hole of the flat is for, in the order of Flat.Holes; it may be
	// shorter.
	Holes []HoleUse
	// Later are holes that are drilled after folding, which no cutting file holds.
	Later []LaterHole
	// Press is the folds in the order in which they are made, each once; nil takes them
	// as they stand along the strip.
	Press []Press
}

// HoleUse says what a hole is for and how it is made.
type HoleUse struct {
	// Role is "pin hole", "bolt hole"; Called what the plan calls it, "" for nothing; Fastener
	// what goes through it; Make how it is finished: "ream to 16.2 H11".
	Role, Called, Fastener, Make string
	// Cut is the size that is cut in the flat where the hole is finished later, mm; 0 cuts
	// it to size.
	Cut float64
}

// LaterHole is a hole that is drilled after folding.
type LaterHole struct {
	sheet.Hole
	HoleUse
}

// Press is one step at the press.
type Press struct {
	// Fold is the fold along the strip, counted from 1.
	Fold int
	// From and To are the range under the press, deg, before the metal springs back; both
	// 0 if it is not known.
	From, To float64
	// Tool is the die and the punch: "die 63 mm, punch 16 mm".
	Tool string
}

// order is the press order: the one given, or the folds as they stand.
func (p Part) order() []Press {
	if p.Press != nil {
		return p.Press
	}
	list := make([]Press, len(p.Flat.Folds))
	for i := range list {
		list[i].Fold = i + 1
	}
	return list
}

// letter is what the drawing calls a fold by its index: P1 is pressed first. Faces have
// the plain letters.
func (p Part) letter(fold int) string {
	for at, step := range p.order() {
		if step.Fold == fold+1 {
			return "P" + whole(at+1)
		}
	}
	return ""
}

// datum is the point from which all sizes count.
func (p Part) datum() sheet.Point {
	if len(p.Flat.Holes) == 0 {
		low, _ := p.Flat.Outline.Bounds()
		return sheet.Point{X: low.X}
	}
	return p.Flat.Holes[p.Datum].At
}

// datumName is what the drawing calls that point.
func (p Part) datumName() string {
	switch {
	case len(p.Flat.Holes) == 0:
		return "the near end, on the centre line"
	case p.Datum < len(p.Holes) && p.Holes[p.Datum].Role != "":
		return "the centre of hole " + whole(p.Datum+1) + ", the " + p.Holes[p.Datum].Role
	}
	return "the centre of hole " + whole(p.Datum+1)
}

// cut is the hole at an index as the cutting file has it.
func (p Part) cut(i int) sheet.Hole {
	h := p.Flat.Holes[i]
	if c := p.use(i).Cut; c != 0 {
		if h.Long > 0 {
			h.Long -= h.Diameter - c
		}
		h.Diameter = c
	}
	return h
}

// folded is the flat with all holes of the finished part, those that are drilled after
// folding among them.
func (p Part) folded() sheet.Flat {
	f := p.Flat
	f.Holes = append(slices.Clone(f.Holes), laterHoles(p.Later)...)
	return f
}

// use is what the hole at an index is for.
func (p Part) use(i int) HoleUse {
	if i < len(p.Holes) {
		return p.Holes[i]
	}
	return HoleUse{}
}
