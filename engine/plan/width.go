package plan

import (
	"math"

	"chainwale/engine/sheet"
)

// What a plate bears is reckoned with one width, beside whatever contour is drawn: the two
// have to be of one plate.

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
