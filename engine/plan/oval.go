package plan

import "chainwale/engine/sheet"

// An oval hole has half circles for ends: its diameter is its width, and long its whole
// length. A hole that wear has drawn out is written so, and one that is cut long so that
// the part can be shifted.

// Sheet is the hole as the geometry counts it.
func (h Hole) Sheet() sheet.Hole {
	s := sheet.Hole{Name: h.Name.Value, At: sheet.Point{X: h.Along.Value, Y: h.Across.Value}, Diameter: h.Diameter.Value, Square: h.Shape.Value == "square"}
	if h.Oval() && s.Diameter > 0 && h.Long.Value > s.Diameter {
		s.Long = h.Long.Value
		if h.LiesAcross() {
			s.Turn = 90
		}
	}
	return s
}

// Oval tells whether the hole is oval. Its length is known then, for no plan without it
// is taken; its width need not be.
func (h Hole) Oval() bool { return h.Shape.Value == "oval" && h.Long.Given }

// LiesAcross tells whether it is oval and its length runs across the strip.
func (h Hole) LiesAcross() bool { return h.Oval() && h.LongWay.Value == "across" }

// AcrossPull is what the hole takes out of the strip's width: its diameter, or the length
// of an oval one that lies across.
func (h Hole) AcrossPull() Amount {
	if h.LiesAcross() {
		return h.Long
	}
	return h.Diameter
}

// Longest is the hole's greatest inside measure: its diameter, or an oval one's length.
func (h Hole) Longest() Amount {
	if h.Oval() {
		return h.Long
	}
	return h.Diameter
}

// Beyond is how much nearer to the plate's ends an oval hole comes than a round one of its
// width: 0 for one that lies across.
func (h Hole) Beyond() float64 { return h.ReachAlong() - radiusOf(h) }

// ReachAlong and ReachAcross are how far the hole reaches from its centre along the strip
// and across it; nought if its size is not known.
func (h Hole) ReachAlong() float64 {
	if h.Oval() && !h.LiesAcross() {
		return h.Long.Value / 2
	}
	return radiusOf(h)
}

// ReachAcross is told of at ReachAlong.
func (h Hole) ReachAcross() float64 {
	if h.LiesAcross() {
		return h.Long.Value / 2
	}
	return radiusOf(h)
}

// half is what a message calls how far it reaches along the strip.
func (h Hole) half() string {
	if h.Oval() && !h.LiesAcross() {
		return "half its length"
	}
	return "its radius"
}

// holeOval sees to it that an oval hole has its length, that this is one, and that no
// other hole has any.
func (c *crossChecker) holeOval(h Hole) {
	const example = "shape: oval, diameter: 12 mm, long: 20 mm"
	switch oval := h.Shape.Value == "oval"; {
	case oval && !h.Long.Given:
		c.wrong(h.Shape.At, "its whole length as long beside diameter, its width: "+example, "an oval hole is known by its width and its length, and this one has no long")
	case !oval && h.Long.Given:
		c.wrong(h.Long.At, "leave long out, or write "+example, "only an oval hole has a long")
	case !oval && h.LongWay.Given:
		c.wrong(h.LongWay.At, "leave long_way out, or write "+example+", long_way: "+h.LongWay.Value, "only an oval hole has a long_way")
	case oval && h.Diameter.Given && h.Long.Value <= h.Diameter.Value:
		c.wrong(h.Long.At, "the whole length from end to end, which is more than diameter, the width",
			"this hole is %s long and %s wide: that is not oval", c.length(h.Long.Value), c.length(h.Diameter.Value))
	}
}
