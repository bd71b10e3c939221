package strength

import (
	"math"

	"chainwale/engine/working"
)

// HoleDistances is a hole in a strip, seen by its distances from end and side.
//
// Returns ratios to the hole: End (from the hole's centre to the end), Side (the
// width of a strip with the smaller side on both sides).
//
// Equation:
//
//	End  = end/hole
//	Side = 2 (width/2 - |across|)/hole
//
// Symbols: Width, Hole, End (hole's centre to the end along the load), Across (the
// hole off the centre line), mm; results are bare ratios.
//
// Holds for any round hole; for a square one give its width across flats.
//
// Source: geometry (computed). Errors: a size that is missing, negative or not
// finite, a hole that breaks out of the strip.
type HoleDistances struct{ Width, Hole, End, Across float64 }

// HoleDistancesResult are the ratios of a HoleDistances.
type HoleDistancesResult struct {
	End, Side float64

	of HoleDistances
}

// Reckon gives the ratios.
func (h HoleDistances) Reckon() (HoleDistancesResult, error) {
	var in inputs
	in.positive("the width", h.Width, "mm")
	in.positive("the hole", h.Hole, "mm")
	in.positive("the end distance", h.End, "mm")
	in.finite("the offset of the hole", h.Across, "mm")
	side := h.Width/2 - math.Abs(h.Across)
	in.must(h.Hole/2 < side, "the hole (%g mm) breaks out of the side, %.4g mm from its centre", h.Hole, side)
	in.must(h.Hole/2 < h.End, "the hole (%g mm) breaks out of the end, %g mm from its centre", h.Hole, h.End)
	if in.err != nil {
		return HoleDistancesResult{}, in.err
	}
	return HoleDistancesResult{End: h.End / h.Hole, Side: 2 * side / h.Hole, of: h}, nil
}

// Working writes the calculation down.
func (r HoleDistancesResult) Working() []working.Step {
	h := r.of
	return []working.Step{
		{Symbol: "e/d0", Meaning: "end distance over the hole", Formula: "e/d0", Inputs: given("e", h.End, "mm", "d0", h.Hole, "mm"), Value: r.End, Source: statics},
		{Symbol: "w/d0", Meaning: "width over the hole, the smaller side on both sides", Formula: "2 (w/2 - |across|)/d0", Inputs: given("w", h.Width, "mm", "across", h.Across, "mm", "d0", h.Hole, "mm"), Value: r.Side, Source: statics},
	}
}
