package strength

import (
	"math"

	"chainwale/engine/working"
)

// ObliqueLoad is a pin plate whose wire leads off the plate's axis, in its plane.
//
// Returns the straight plate that stands for it: the one with the metal that lies
// beyond the hole along the load (End) and, on the poorer side, across it (Side,
// from the hole's centre). As, which is that plate, is then reckoned as a PinPlate.
//
// Equation: the distances from the hole's centre to the outline, along the load
// and at right angles to it on both sides; the smaller of those two is Side.
//
// Symbols: Plate, as in PinPlate, mm and MPa; Angle between load and axis, deg;
// results mm.
//
// Holds for a strip with a square end or a round one of at least half its width,
// to 45 degrees. A fork turns freely on its pin, so nothing but these distances,
// the fork's own room and the bending of the strip (see Section) changes.
//
// Source: geometry (computed); that the straight plate stands for the oblique one
// is this project's (judgement). Errors: those of PinPlate; an angle beyond 45
// degrees; an end radius below half the width.
type ObliqueLoad struct {
	Plate PinPlate
	Angle float64
}

// ObliqueLoadResult is the straight plate that stands for an oblique load.
type ObliqueLoadResult struct {
	End, Side float64
	As        PinPlate

	of ObliqueLoad
}

var obliqueStandIn = working.Source{Title: "this project's stand-in for an oblique load", As: working.Judgement, For: "the plate that is reckoned in its place"}

// Reckon gives the stand-in.
func (o ObliqueLoad) Reckon() (ObliqueLoadResult, error) {
	if err := o.Plate.check(); err != nil {
		return ObliqueLoadResult{}, err
	}
	var in inputs
	in.must(math.Abs(o.Angle) <= 45, "a load %g deg off the plate's axis is not covered: the formula holds to 45 deg", o.Angle)
	in.must(o.Plate.EndRadius == 0 || o.Plate.EndRadius >= o.Plate.Width/2*(1-1e-9), "an end of %g mm radius on a plate %g mm wide has shoulders, which are not covered for an oblique load", o.Plate.EndRadius, o.Plate.Width)
	if in.err != nil {
		return ObliqueLoadResult{}, in.err
	}
	r := ObliqueLoadResult{of: o}
	r.End = o.reach(o.Angle)
	r.Side = min(o.reach(o.Angle+90), o.reach(o.Angle-90))
	r.As = o.Plate
	r.As.End, r.As.Width, r.As.Across = r.End, 2*r.Side, 0
	if r.As.EndRadius > r.Side {
		// A round end seen from off its axis is no rounder than the metal beside the hole.
		r.As.EndRadius = r.Side
	}
	in.must(o.Plate.Hole/2 < r.End && o.Plate.Hole/2 < r.Side, "the hole breaks out of the plate at %g deg", o.Angle)
	return r, in.err
}

// reach is the distance from the hole's centre to the plate's outline, in the
// direction that lies so many degrees off the axis, clockwise towards +x.
func (o ObliqueLoad) reach(degrees float64) float64 {
	p := o.Plate
	dx, dy := math.Sin(radians(degrees)), math.Cos(radians(degrees))
	far := math.Inf(1)
	if math.Abs(dx) > 1e-12 {
		far = (math.Copysign(p.Width/2, dx) - p.Across) / dx
	}
	if p.EndRadius == 0 {
		if dy > 1e-12 {
			far = min(far, p.End/dy)
		}
		return far
	}
	// The end is an arc about a point on the centre line, below the top of the hole's own line.
	centre := p.End - math.Sqrt(p.EndRadius*p.EndRadius-p.Across*p.Across)
	toX, toY := p.Across, -centre
	along := toX*dx + toY*dy
	leaves := -along + math.Sqrt(along*along-(toX*toX+toY*toY)+p.EndRadius*p.EndRadius)
	if leaves*dy > centre {
		far = min(far, leaves)
	}
	return far
}

// Working writes the calculation down.
func (r ObliqueLoadResult) Working() []working.Step {
	p := r.of.Plate
	in := given("w", p.Width, "mm", "end", p.End, "mm", "r", p.EndRadius, "mm", "across", p.Across, "mm", "angle", r.of.Angle, "deg")
	return []working.Step{
		{Symbol: "e", Meaning: "metal beyond the hole's centre along the load", Formula: "to the outline", Inputs: in, Value: r.End, Unit: "mm", Source: statics},
		{Symbol: "s", Meaning: "metal beside the hole's centre across the load, the poorer side", Formula: "to the outline", Inputs: in, Value: r.Side, Unit: "mm", Source: statics},
		{Symbol: "w'", Meaning: "width of the straight plate that stands for it", Formula: "2 s", Inputs: given("s", r.Side, "mm"), Value: r.As.Width, Unit: "mm", Source: obliqueStandIn},
	}
}
