package sheet

import (
	"math"

	"chainwale/engine/working"
)

// FoldStrain is what a fold does to the metal in it.
//
// Returns the stretch of the outer face (Outer), the thickness that is left
// (Thinned) and, as an upper bound, how much an edge of a narrow strip bulges
// sideways at the inside (Bulge, both edges together).
//
// Equation:
//
//	Outer   = (1 - K) t/(R + K t)
//	Thinned = -R + sqrt(R^2 + 2 t (R + K t))
//	Bulge   = 0.5 K t/(R + K t) w
//
// Symbols: Thickness t, inside Radius R, Width w, mm; K bare; results bare and mm.
//
// Holds for wide plate (Outer, Thinned: plane strain, constant volume); Bulge for
// strips narrower than about 8 t and as a bound only.
//
// Source: geometry and constant volume (computed). Errors: sizes that are missing,
// negative or not finite; a fold sharper than 0.25 t.
type FoldStrain struct{ Thickness, Radius, Width float64 }

// FoldStrainResult is what a FoldStrain gives.
type FoldStrainResult struct {
	Outer, Thinned, Bulge float64

	of FoldStrain
	k  float64
}

// Reckon gives strain, thickness and bulge.
func (f FoldStrain) Reckon() (FoldStrainResult, error) {
	var in inputs
	in.notNegative("the width of the strip", f.Width, "mm")
	if in.err != nil {
		return FoldStrainResult{}, in.err
	}
	k, err := NeutralFactor(DIN6935, f.Radius, f.Thickness)
	if err != nil {
		return FoldStrainResult{}, err
	}
	neutral := f.Radius + k*f.Thickness
	return FoldStrainResult{of: f, k: k,
		Outer:   (1 - k) * f.Thickness / neutral,
		Thinned: math.Sqrt(f.Radius*f.Radius+2*f.Thickness*neutral) - f.Radius,
		Bulge:   0.5 * k * f.Thickness / neutral * f.Width}, nil
}

// Working writes the calculation down.
func (r FoldStrainResult) Working() []working.Step {
	f := r.of
	size := given("K", r.k, "", "t", f.Thickness, "mm", "R", f.Radius, "mm")
	volume := working.Source{Title: "constant volume", As: working.Computed, For: "the form of the equation"}
	return []working.Step{
		factorStep(DIN6935, r.k, f.Radius, f.Thickness),
		{Symbol: "e", Meaning: "stretch of the outer face", Formula: "(1 - K) t/(R + K t)", Inputs: size, Value: r.Outer, Source: geometry},
		{Symbol: "tb", Meaning: "thickness left in the fold", Formula: "-R + sqrt(R^2 + 2 t (R + K t))", Inputs: size, Value: r.Thinned, Unit: "mm", Source: volume},
		{Symbol: "dw", Meaning: "bulge of the inside edges, at most", Formula: "0.5 K t/(R + K t) w", Inputs: append(size, given("w", f.Width, "mm")...), Value: r.Bulge, Unit: "mm", Source: volume},
	}
}
