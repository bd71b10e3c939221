package strength

import (
	"math"

	"chainwale/engine/working"
)

// LugAcross is a lug that is pulled at right angles to its length, in its plane.
//
// Returns the load in N that the metal on one side of the hole bears alone, as a
// short cantilever that is cut at the hole's far side (Load): what it would bear in
// bending alone (Bending) and in shear alone (Shear) stand beside it.
//
// Equation:
//
//	c = (w - D)/2
//	Bending = Fu t c^2/(2 D);  Shear = 0.6 Fu t c
//	Load/Bending + (Load/Shear)^2 = 1
//
// Symbols: Thickness t, Width w, Hole D, End (hole's centre to the end), mm;
// Ultimate Fu, MPa; c is the metal beside the hole, mm; results N. A hole off the
// centre line is reckoned with a width of twice its poorer side.
//
// Holds for a ductile metal. The longest lever, half the hole, is taken together
// with the least metal, and what stands beyond the hole and on its other side is
// left out; so it is less than the charts of transverse strength would give, which
// have no curve for stainless steel.
//
// Source: statics of a plastic cantilever (computed); that it stands for a lug's
// transverse strength is this project's (judgement). Errors: sizes or strengths that
// are missing, negative or not finite; a hole that breaks out.
type LugAcross struct {
	Thickness, Width, Hole, End float64
	Ultimate                    float64
}

// LugAcrossResult is what a LugAcross holds, N.
type LugAcrossResult struct {
	Load, Bending, Shear float64

	of   LugAcross
	side float64
}

var lugCantilever = working.Source{Title: "this project's stand-in for a chart of transverse strength", As: working.Judgement, For: "a plastic cantilever in place of the chart"}

// Reckon gives the loads.
func (l LugAcross) Reckon() (LugAcrossResult, error) {
	var in inputs
	in.positive("the ultimate strength of the lug", l.Ultimate, "MPa")
	if in.err != nil {
		return LugAcrossResult{}, in.err
	}
	plate := PinPlate{Thickness: l.Thickness, Width: l.Width, Hole: l.Hole, Pin: l.Hole, End: l.End, Yield: l.Ultimate, Ultimate: l.Ultimate}
	if err := plate.check(); err != nil {
		return LugAcrossResult{}, err
	}
	r := LugAcrossResult{of: l, side: (l.Width - l.Hole) / 2}
	r.Bending = l.Ultimate * l.Thickness * r.side * r.side / (2 * l.Hole)
	r.Shear = 0.6 * l.Ultimate * l.Thickness * r.side
	// The root is written so that it does not cancel where one of the two is far greater.
	k := r.Shear / (2 * r.Bending)
	r.Load = r.Shear / (k + math.Sqrt(k*k+1))
	return r, nil
}

// Working writes the calculation down.
func (r LugAcrossResult) Working() []working.Step {
	l := r.of
	return []working.Step{
		{Symbol: "c", Meaning: "metal beside the hole", Formula: "(w - D)/2", Inputs: given("w", l.Width, "mm", "D", l.Hole, "mm"), Value: r.side, Unit: "mm", Source: statics},
		{Symbol: "Pm", Meaning: "load that folds it aside", Formula: "Fu t c^2/(2 D)", Inputs: given("Fu", l.Ultimate, "MPa", "t", l.Thickness, "mm", "c", r.side, "mm", "D", l.Hole, "mm"), Value: r.Bending, Unit: "N", Source: lugCantilever},
		{Symbol: "Pq", Meaning: "load that shears it", Formula: "0.6 Fu t c", Inputs: given("Fu", l.Ultimate, "MPa", "t", l.Thickness, "mm", "c", r.side, "mm"), Value: r.Shear, Unit: "N", Source: lugCantilever},
		{Symbol: "Ptru", Meaning: "load across the lug that it bears at least", Formula: "the P of P/Pm + (P/Pq)^2 = 1", Inputs: given("Pm", r.Bending, "N", "Pq", r.Shear, "N"), Value: r.Load, Unit: "N", Source: lugCantilever},
	}
}
