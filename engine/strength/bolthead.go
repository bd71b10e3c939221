package strength

import (
	"math"

	"chainwale/engine/working"
)

// HeadKind is the shape of a bolt's head, as far as the plate feels it.
type HeadKind string

const (
	// Hex is a head that lies on the plate: hexagon, cap or stud and nut.
	Hex HeadKind = "hex"
	// Countersunk is a head sunk into the plate.
	Countersunk HeadKind = "countersunk"
	// SquareNeck is a carriage bolt: a round head over a square neck in a square hole.
	SquareNeck HeadKind = "square-neck"
)

// BoltHead is what the head of a bolt takes from the plate that it sits in.
//
// Returns the thickness that bears on the bolt (BearingThickness) and the width of
// metal that the hole takes out of the plate (LostWidth, at right angles to the
// pull, averaged over the thickness).
//
// Equation:
//
//	hex          BearingThickness = t;          LostWidth = hole
//	countersunk  BearingThickness = t - sink/2; LostWidth = hole + sink tan(angle/2) * sink/t
//	square-neck  BearingThickness = t;          LostWidth = flats (|cos turn| + |sin turn|)
//
// Symbols: Thickness t of the plate, Hole (across flats for a square one), Sink
// (depth of the countersink), mm; Angle of the countersink, Turn of the square from
// lying along the pull, deg; results mm.
//
// Holds for a countersink that leaves metal below it.
//
// Source: half the depth of a countersink after EN 1993-1-8, 3.6.1 (memory); the
// lost width is geometry (computed). Errors: a kind that is not known, sizes that
// are missing, negative or not finite, a countersink as deep as the plate.
type BoltHead struct {
	Kind            HeadKind
	Thickness, Hole float64
	Sink, Angle     float64
	Turn            float64
}

// BoltHeadResult is what a BoltHead leaves, mm.
type BoltHeadResult struct {
	BearingThickness, LostWidth float64

	of BoltHead
}

var enCountersunk = working.Source{Title: "after EN 1993-1-8", Edition: "2005", Clause: "3.6.1", As: working.Memory, For: "half the depth of a countersink"}

// Reckon gives thickness and width.
func (h BoltHead) Reckon() (BoltHeadResult, error) {
	var in inputs
	in.positive("the thickness of the plate", h.Thickness, "mm")
	in.positive("the hole", h.Hole, "mm")
	r := BoltHeadResult{of: h, BearingThickness: h.Thickness, LostWidth: h.Hole}
	switch h.Kind {
	case Hex:
	case Countersunk:
		in.positive("the depth of the countersink", h.Sink, "mm")
		in.must(h.Sink < h.Thickness, "a countersink of %g mm goes through a plate of %g mm", h.Sink, h.Thickness)
		in.must(h.Angle >= 60 && h.Angle <= 120, "a countersink of %g deg is not made: 60 to 120", h.Angle)
		r.BearingThickness = h.Thickness - h.Sink/2
		// The cone is sink tan(angle/2) wider on each side at the top and nothing at its foot.
		r.LostWidth = h.Hole + h.Sink*math.Tan(radians(h.Angle)/2)*h.Sink/h.Thickness
	case SquareNeck:
		in.must(math.Abs(h.Turn) <= 90, "a square is turned by 0 to 90 deg, not by %g", h.Turn)
		r.LostWidth = h.Hole * (math.Abs(math.Cos(radians(h.Turn))) + math.Abs(math.Sin(radians(h.Turn))))
	default:
		in.refuse("no bolt head is called %q: it is hex, countersunk or square-neck", string(h.Kind))
	}
	if in.err != nil {
		return BoltHeadResult{}, in.err
	}
	return r, nil
}

// Working writes the calculation down.
func (r BoltHeadResult) Working() []working.Step {
	h := r.of
	thick := working.Step{Symbol: "tb", Meaning: "thickness that bears on the bolt", Formula: "t", Inputs: given("t", h.Thickness, "mm"), Value: r.BearingThickness, Unit: "mm", Source: statics}
	wide := working.Step{Symbol: "dw", Meaning: "width that the hole takes out of the plate", Formula: "hole", Inputs: given("hole", h.Hole, "mm"), Value: r.LostWidth, Unit: "mm", Source: statics}
	switch h.Kind {
	case Countersunk:
		thick.Formula, thick.Inputs, thick.Source = "t - sink/2", given("t", h.Thickness, "mm", "sink", h.Sink, "mm"), enCountersunk
		wide.Formula, wide.Inputs = "hole + sink tan(angle/2) sink/t", given("hole", h.Hole, "mm", "sink", h.Sink, "mm", "angle", h.Angle, "deg", "t", h.Thickness, "mm")
	case SquareNeck:
		wide.Formula, wide.Inputs = "flats (|cos turn| + |sin turn|)", given("flats", h.Hole, "mm", "turn", h.Turn, "deg")
	}
	return []working.Step{thick, wide}
}
