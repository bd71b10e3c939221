package plan

import (
	"fmt"
	"math"

	"chainwale/engine/sheet"
)

// What a plate bears at its pin is reckoned with one width, beside whatever contour is
// drawn: the two have to be of one plate. At each bolt hole it is reckoned with what the
// outline has there.

// widthOff is how far a width may be off the contour's own, mm, as a drawing is read
// (judgement).
const widthOff = 0.5

// WidthAtPin is the plate's width at the pin hole: that of the strip or, where its loaded
// end is tapered, of its nose if that is narrower.
func (o Outline) WidthAtPin() Amount {
	if o.End.Value == "tapered" && (!o.Nose.Given || o.Nose.Value < o.Width.Value || !o.Width.Given) {
		return o.Nose
	}
	return o.Width
}

// width refuses a width that the contour does not have: beyond its bounds, or another
// than it has at the pin hole.
func (c *crossChecker) width(f Fitting, shape sheet.Contour) {
	o := f.Outline
	if len(o.Contour) == 0 {
		return
	}
	low, high := shape.Bounds()
	if widest := high.Y - low.Y; o.Width.Given && o.Width.Value > widest+widthOff {
		c.wrong(o.Width.At, "the contour's own width at the pin hole, or none", "the contour is %s across at its widest, and strengths would be reckoned with %s", c.length(widest), c.length(o.Width.Value))
		return
	}
	width := o.WidthAtPin()
	if counts := narrowest(f, shape); width.Given && math.Abs(width.Value-counts) > widthOff && !math.IsInf(counts, 1) {
		c.wrong(width.At, c.length(counts)+", or none",
			"the contour counts as %s across at the pin hole, twice what it reaches to the nearer side of y = 0, and strengths would be reckoned with %s", c.length(counts), c.length(width.Value))
	}
}

// narrowest is what counts of a contour's width at its pin holes, mm: twice the way from
// the centre line to the nearer side, as strengths are reckoned. Without a pin hole that
// has a place it is infinite.
func narrowest(f Fitting, shape sheet.Contour) float64 {
	counts := math.Inf(1)
	for _, h := range f.Holes {
		if h.Role.Value != "pin" || !h.Along.Given {
			continue
		}
		if low, high, ok := shape.Across(sheet.Point{X: h.Along.Value, Y: h.Across.Value}); ok {
			counts = min(counts, 2*max(0, min(high, -low)))
		}
	}
	return counts
}

// PlainAt tells whether the plate is as wide as the strip over a hole: neither a contour
// nor a shaped end has a say there.
func (o Outline) PlainAt(h Hole) bool {
	reach := h.ReachAlong()
	if len(o.Contour) > 0 || h.Along.Value-reach < o.shapedFrom() {
		return false
	}
	far := o.FarEnd
	if far.Corner.Value == 0 && (!far.Shape.Given || far.Shape.Value == "square") {
		return true
	}
	shaped := max(far.Corner.Value, far.Taper.Value)
	if far.Shape.Value == "round" {
		shaped = o.roundOf(far.Radius)
	}
	return o.Length.Given && h.Along.Value+reach <= o.Length.Value-shaped
}

// shapedFrom is how far the loaded end's shape reaches.
func (o Outline) shapedFrom() float64 {
	switch o.End.Value {
	case "square":
		return o.Corner.Value
	case "tapered":
		return o.Taper.Value
	}
	return o.roundOf(o.EndRadius)
}

// roundOf is how far a round end reaches at the most.
func (o Outline) roundOf(radius Amount) float64 {
	if radius.Given {
		return radius.Value
	}
	return o.Width.Value / 2
}

// HoleWidth is what counts of the plate's width at a hole of a drawn outline, mm: twice
// the way from the centre line to the nearer side, the least over the hole, as strengths
// are reckoned. Errors: an outline that is not known whole, or does not hold the hole.
func (o Outline) HoleWidth(h Hole) (float64, error) {
	shape, err := o.whole()
	if err != nil {
		return 0, err
	}
	least := math.Inf(1)
	for _, part := range []float64{-1, -0.5, 0, 0.5, 1} {
		low, high, ok := shape.Across(sheet.Point{X: h.Along.Value + part*h.ReachAlong(), Y: h.Across.Value})
		if !ok {
			return 0, fmt.Errorf("the outline does not hold this hole")
		}
		least = min(least, 2*max(0, min(high, -low)))
	}
	return least, nil
}

// Breadth is how far the outline reaches from side to side on the centre line's point at a
// distance from the loaded end, mm. Errors: as HoleWidth.
func (o Outline) Breadth(along float64) (float64, error) {
	shape, err := o.whole()
	if err != nil {
		return 0, err
	}
	low, high, ok := shape.Across(sheet.Point{X: along})
	if !ok {
		return 0, fmt.Errorf("the outline's centre line does not run there")
	}
	return high - low, nil
}

// whole is the outline if it is known from end to end.
func (o Outline) whole() (sheet.Contour, error) {
	shape, ok, err := o.Shape()
	if err == nil && !ok {
		err = fmt.Errorf("the outline is not known whole")
	}
	return shape, err
}
