package plan

import (
	"math"
	"slices"

	"chainwale/engine/quantity"
)

// holes checks each hole's stay, that the hole lies within the plate, and that it
// leaves the holes before it alone.
func (c *crossChecker) holes(f Fitting) {
	for i, h := range f.Holes {
		c.holeStay(f, h)
		c.holeOval(h)
		c.holeAlong(f.Outline, h)
		c.holeAcross(f.Outline, h)
		c.holeApart(h, f.Holes[:i])
	}
}

// holeApart refuses a hole that runs into an earlier one. A hole without a place, as
// one that is drilled at the boat, or without a size can't be told to.
func (c *crossChecker) holeApart(h Hole, earlier []Hole) {
	if !h.Along.Given || !h.Diameter.Given {
		return
	}
	for _, o := range earlier {
		if !o.Along.Given || !o.Diameter.Given {
			continue
		}
		apart := math.Hypot(h.Along.Value-o.Along.Value, h.Across.Value-o.Across.Value)
		switch reach := radiusOf(h) + radiusOf(o); {
		case (h.Oval() || o.Oval()) && apart > 0:
			if h.Sheet().Apart(o.Sheet()) > 0 {
				continue
			}
			c.wrong(h.Along.At, "holes with metal between them; along and across are measured to a hole's centre", "this hole runs into the one in %s", line(o.At, h.Along.At))
		case apart == 0:
			c.wrong(h.Along.At, "each hole once, and its own place for each", "this hole stands where the one in %s stands", line(o.At, h.Along.At))
		case apart <= reach:
			c.wrong(h.Along.At, "holes with metal between them; along and across are measured to a hole's centre",
				"this hole runs into the one in %s: their centres are %s apart and their radii together %s", line(o.At, h.Along.At), c.length(apart), c.length(reach))
		default:
			continue
		}
		return
	}
}

// holeStay sees to it that the pin's stay is one that the fitting serves.
func (c *crossChecker) holeStay(f Fitting, h Hole) {
	if !h.Stay.Given {
		return
	}
	stays := c.stays.parts[h.Stay.Value]
	if stays == nil {
		c.add(c.stays.unknown(h.Stay))
		return
	}
	var served []part
	for _, ref := range f.Serves {
		known := c.stays.parts[ref.Value]
		if known == nil {
			return // That is told where it stands, and may be this stay misspelt.
		}
		served = append(served, known...)
	}
	if len(f.Serves) == 0 && !c.clean {
		return
	}
	if !slices.ContainsFunc(stays, func(s part) bool { return slices.Contains(served, s) }) {
		c.wrong(h.Stay.At, "one of the stays under serves", "%s does not serve %s", called(f.ID), h.Stay.Value)
	}
}

// holeAlong checks the hole against the two ends of the strip. Where only the
// centre is known, only the centre is checked.
func (c *crossChecker) holeAlong(o Outline, h Hole) {
	if !h.Along.Given {
		return
	}
	along, radius := h.Along.Value, h.ReachAlong()
	switch {
	case o.Length.Given && along > o.Length.Value:
		c.wrong(h.Along.At, "the distance from the loaded end, which is less than the length",
			"this hole lies outside the plate, which is %s long", c.length(o.Length.Value))
	case o.Length.Given && along+radius >= o.Length.Value:
		c.wrong(h.Along.At, "a hole with metal all round it",
			"this hole cuts through the far end: its edge is %s from the loaded end and the plate is %s long", c.length(along+radius), c.length(o.Length.Value))
	case along <= radius && radius > 0:
		c.wrong(h.Along.At, "a hole with metal all round it; along is measured to the hole's centre",
			"this hole cuts through the loaded end: its centre is %s from there and %s is %s", c.length(along), h.half(), c.length(radius))
	}
}

// holeAcross checks the hole against the two sides of the strip. A hole on the
// centre line need not say so.
func (c *crossChecker) holeAcross(o Outline, h Hole) {
	if !o.Width.Given {
		return
	}
	half, radius, across := o.Width.Value/2, h.ReachAcross(), 0.0
	if h.Across.Given {
		across = math.Abs(h.Across.Value)
	}
	switch {
	case radius >= half:
		c.wrong(h.AcrossPull().At, "a hole narrower than the plate",
			"this hole is %s wide and the plate only %s", c.length(2*radius), c.length(o.Width.Value))
	case across > half:
		c.wrong(h.Across.At, "the distance from the centre line, which is less than half the width",
			"this hole lies outside the plate, whose edge is %s from the centre line", c.length(half))
	case across+radius >= half:
		c.wrong(h.Across.At, "a hole with metal all round it",
			"this hole cuts through the plate's side: its edge is %s from the centre line and the plate's is %s", c.length(across+radius), c.length(half))
	}
}

// radiusOf is half a hole's diameter or width, nought if that is not known.
func radiusOf(h Hole) float64 {
	if !h.Diameter.Given {
		return 0
	}
	return h.Diameter.Value / 2
}

// length prints millimetres in the units that the owner reads.
func (c *crossChecker) length(mm float64) string {
	return quantity.Format(mm, quantity.Length, c.units)
}
