package plan

import (
	"math"

	"chainwale/engine/quantity"
)

// A size can be sound by itself and yet be no size of such a part: an inch written
// for a millimetre makes a plate strong enough for a ship, and one reading with a
// slip of the point lifts the mean of three. Neither may pass for strength.

// size is a length of the plan, what it measures and the most it can be, in mm: about
// twice what the largest sailing boats have.
type size struct {
	of   Amount
	what string
	most float64
}

// staySlips checks the sizes at a stay's lower end.
func (c *crossChecker) staySlips(s Stay) {
	c.slips([]size{
		{s.Wire.Diameter, "a wire", 60},
		{s.Pin.Diameter, "a pin", 120},
		{s.Pin.Measured, "a pin", 120},
		{s.Fork.Opening, "the opening of a fork", 150},
		{s.Fork.Cheek, "the cheek of a fork", 80},
	})
	for _, lean := range []Amount{s.Lean.InPlane, s.Lean.OutOfPlane} {
		c.agree(lean, quantity.Angle, leastTurned)
	}
	const thinnest = 1.0 // mm; the thinnest wire in the trade's tables is above it
	if d := s.Wire.Diameter; d.Given && d.Value < thinnest {
		c.wrong(d.At, "the diameter over all strands, with its unit: 8 mm or 5/16 in", "a wire of %s holds no mast", c.length(d.Value))
	}
}

const thickestPlate = 80 // mm

// fittingSlips checks the sizes of a fitting and of what it is bolted to.
func (c *crossChecker) fittingSlips(f Fitting) {
	m := f.Mounting
	c.slips([]size{
		{f.Thickness, "a plate", thickestPlate},
		{f.Outline.Width, "the width of a plate", 1000},
		{f.Outline.Length, "the length of a plate", 5000},
		{f.Outline.EndRadius, "the end of a plate", 1000},
		{m.Host.Thickness, "what bolts go through", 400},
		{m.Bolts.Washer, "a washer", 200},
		{m.Slot.Gap, "a gap", 100},
		{m.FirstFixed, "the way to the first point that holds", 3000},
	})
	for _, h := range f.Holes {
		c.agree(h.Diameter, quantity.Length, leastApart)
		c.agree(h.Long, quantity.Length, leastApart)
		c.agree(h.Along, quantity.Length, leastApart)
	}
	rod := f.Kind.Value == "u-bolt" || f.Kind.Value == "tie rod"
	if t, w := f.Thickness, f.Outline.Width; t.Given && w.Given && !rod && t.Value > w.Value && t.Value <= thickestPlate {
		c.wrong(t.At, "the thickness and the width the right way round, each with its unit", "this plate is %s thick and only %s wide", c.length(t.Value), c.length(w.Value))
	}
}

func (c *crossChecker) slips(sizes []size) {
	for _, s := range sizes {
		c.agree(s.of, quantity.Length, leastApart)
		if s.of.Given && s.of.Value > s.most {
			c.wrong(s.of.At, "the size with its unit: 6 mm is not 6 in", "%s of %s is no part of a sailing boat", s.what, quantity.Format(s.of.Value, quantity.Length, c.units))
		}
	}
}

// Readings of one size may lie apart by a tenth of it, or by what worn metal and blunt
// calipers make of a small one; those of an angle by what a bevel gauge makes of it.
const (
	shareApart  = 0.1
	leastApart  = 0.5 // mm
	leastTurned = 3   // deg
)

// agree refuses readings that can't all be of one thing: their mean would say nothing.
func (c *crossChecker) agree(a Amount, d quantity.Dimension, least float64) {
	apart := math.Max(shareApart*math.Abs(a.Value), least)
	if a.Readings < 2 || a.Spread <= apart {
		return
	}
	c.wrong(a.At, "readings that agree: take the odd one again, or write only the one that counts (the thinnest metal, the narrowest gap)",
		"these %d readings lie %s apart, so their mean says nothing%s", a.Readings, quantity.Format(a.Spread, d, c.units), c.oddOne(a, d, apart))
}
