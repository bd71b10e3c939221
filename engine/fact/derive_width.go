package fact

import (
	"chainwale/engine/plan"
)

// holeWidth is the plate's width at one of its holes.
type holeWidth struct {
	of *plan.Hole
	is *Number
}

// width is what counts of the plate's width at a hole: the strip's, or what its contour
// or shaped end has there. The width at the pin is another where they differ.
func (o *boltsOf) width(h *plan.Hole) *Number {
	outline := &o.plan.Outline
	if outline.PlainAt(*h) && outline.End.Value != "tapered" {
		return &o.group.Fitting.Width
	}
	for _, w := range o.widths {
		if w.of == h {
			return w.is
		}
	}
	n := &Number{}
	switch contour := outline.Contour; {
	case len(contour) == 0 && (outline.PlainAt(*h) || !outline.Width.Given):
		give(n, outline.Width)
	case len(contour) == 0 && !outline.Length.Given:
		give(n, outline.Length)
	default:
		n.at = outline.Width.At
		if len(contour) > 0 {
			n.at = contour[0].At
		}
		width, err := outline.HoleWidth(*h)
		if err != nil {
			n.Refuse(err.Error())
			break
		}
		n.Give(width, n.at)
	}
	o.widths = append(o.widths, holeWidth{h, n})
	return n
}
