package sheet

import (
	"math"

	"chainwale/engine/working"
)

// ToFold is the metal between a hole of the flat and the middle line of a fold, mm; less
// than 0 if the line goes through the hole.
//
// Equation: |(X - At) cos(skew) - Y sin(skew)| - r, with r half the diameter of a round
// hole, half the diagonal of a square one, which is the least for any turn of it, and
// for an oval one what it reaches towards the fold (see Hole.Reach).
//
// Symbols: X, Y the hole's middle, At and skew the fold's, mm and deg. Source: geometry
// (computed).
func (h Hole) ToFold(f Fold) float64 {
	sin, cos := math.Sincos(radians(f.Skew))
	r := h.Diameter / 2
	switch {
	case h.Square:
		r *= math.Sqrt2
	case h.Long > 0:
		r = h.Reach(-f.Skew)
	}
	return math.Abs((h.At.X-f.At)*cos-h.At.Y*sin) - r
}

// HoleToFold is how far a hole stays clear of a fold.
//
// Returns the Distance from the middle line of the fold to the near edge of the hole
// from which the hole can be drilled in the flat, and the Least one at which it can be
// drilled at all: nearer, it stands in metal that the fold stretches.
//
// Equation:
//
//	Distance = max(V/2 + 1 mm, BA/2 + 2.5 t)
//	Least    = BA/2 + t
//
// Symbols: Thickness t, inside Radius R, Die V, the opening, mm; Angle, deg; BA the
// allowance of the fold (see Bend), mm.
//
// Holds for round holes beside folds in an open die: within V/2 the hole's edge drags
// over the shoulder of the die. A hole between the two is drilled after folding.
//
// Source: the die rule and R + 2.5 t to R + 3 t are trade references (published);
// putting them together is this project's (judgement). Errors: as Bend; a die that is
// missing.
type HoleToFold struct{ Thickness, Radius, Angle, Die float64 }

// HoleToFoldResult is what a HoleToFold gives.
type HoleToFoldResult struct {
	Distance, Least float64

	of   HoleToFold
	bend BendResult
}

var holeSource = working.Source{Title: "trade references for holes beside folds, put together", As: working.Judgement, For: "the form of the equation"}

// Reckon gives both distances.
func (h HoleToFold) Reckon() (HoleToFoldResult, error) {
	var in inputs
	in.positive("the opening of the die", h.Die, "mm")
	if in.err != nil {
		return HoleToFoldResult{}, in.err
	}
	bend, err := Bend{Thickness: h.Thickness, Radius: h.Radius, Angle: h.Angle}.Reckon()
	if err != nil {
		return HoleToFoldResult{}, err
	}
	half := bend.Allowance / 2
	return HoleToFoldResult{of: h, bend: bend, Distance: max(h.Die/2+1, half+2.5*h.Thickness), Least: half + h.Thickness}, nil
}

// Working writes the calculation down.
func (r HoleToFoldResult) Working() []working.Step {
	h := r.of
	size := given("BA", r.bend.Allowance, "mm", "t", h.Thickness, "mm")
	return append(r.bend.Working()[:2],
		working.Step{Symbol: "dleast", Meaning: "nearer, a hole stands in stretched metal", Formula: "BA/2 + t", Inputs: size, Value: r.Least, Unit: "mm", Source: holeSource},
		working.Step{Symbol: "d", Meaning: "from here on a hole is drilled in the flat", Formula: "max(V/2 + 1 mm, BA/2 + 2.5 t)", Inputs: append(given("V", h.Die, "mm"), size...), Value: r.Distance, Unit: "mm", Source: holeSource})
}
