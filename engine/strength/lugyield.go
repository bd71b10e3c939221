package strength

import "chainwale/engine/working"

// AirLugYield is the load at which a lug of the aircraft handbooks takes a set.
//
// Returns that load in N (Set), and the factor C and the share x behind it.
//
// Equation:
//
//	Set = C(x) (Fy/Fu) min(Pbru, Ptu),  x = min(Pbru, Ptu)/(D t Fu)
//
// Symbols: Lug, as in AirLug, with its Pbru and Ptu, N; Yield Fy and the lug's
// ultimate strength Fu, MPa; hole D and thickness t, mm; C and x bare; result N.
//
// Holds where AirLug does, whose x never comes above 2.72, well within the chart;
// between its points a straight line. It is a limit of deformation, to be held
// against the working load.
//
// Source: after Niu, Airframe Stress Analysis and Sizing, equation 9.8.3; C as read
// off its chart at five points (published). Errors: those of AirLug; a yield strength
// that is missing, not finite or above the ultimate.
type AirLugYield struct {
	Lug   AirLug
	Yield float64
}

// AirLugYieldResult is what an AirLugYield holds.
type AirLugYieldResult struct {
	Set, Factor, Share float64

	of  AirLugYield
	lug AirLugResult
}

var (
	niuYield = working.Source{Title: "after Niu, Airframe Stress Analysis and Sizing", Clause: "equation 9.8.3", As: working.Published, For: "the form of the equation, and C as read off its chart"}

	setShares  = []float64{0, 1.15, 1.5, 2.0, 2.5, 3.0}
	setFactors = []float64{1.1, 1.1, 1.035, 0.92, 0.82, 0.71}
)

// Reckon gives the load.
func (y AirLugYield) Reckon() (AirLugYieldResult, error) {
	lug, err := y.Lug.Reckon()
	if err != nil {
		return AirLugYieldResult{}, err
	}
	r := AirLugYieldResult{of: y, lug: lug}
	r.Share = r.least() / (y.Lug.Hole * y.Lug.Thickness * y.Lug.Ultimate)
	var in inputs
	in.metal("lug", y.Yield, y.Lug.Ultimate)
	if in.err != nil {
		return AirLugYieldResult{}, in.err
	}
	r.Factor = between(setShares, setFactors, r.Share)
	r.Set = r.Factor * y.Yield / y.Lug.Ultimate * r.least()
	return r, nil
}

// least is the lesser of the lug's two ultimate loads.
func (r AirLugYieldResult) least() float64 { return min(r.lug.ShearBearing, r.lug.Tension) }

// Working writes the calculation down.
func (r AirLugYieldResult) Working() []working.Step {
	l := r.of.Lug
	return append(r.lug.Working(),
		working.Step{Symbol: "x", Meaning: "what the lug holds over hole, thickness and ultimate strength", Formula: "min(Pbru, Ptu)/(D t Fu)", Inputs: given("Pbru", r.lug.ShearBearing, "N", "Ptu", r.lug.Tension, "N", "D", l.Hole, "mm", "t", l.Thickness, "mm", "Fu", l.Ultimate, "MPa"), Value: r.Share, Source: niuYield},
		working.Step{Symbol: "C", Meaning: "how much later than its metal the lug takes a set", Formula: "chart of x", Inputs: given("x", r.Share, ""), Value: r.Factor, Source: niuYield},
		working.Step{Symbol: "Py", Meaning: "the lug takes a set", Formula: "C (Fy/Fu) min(Pbru, Ptu)", Inputs: given("C", r.Factor, "", "Fy", r.of.Yield, "MPa", "Fu", l.Ultimate, "MPa", "Pbru", r.lug.ShearBearing, "N", "Ptu", r.lug.Tension, "N"), Value: r.Set, Unit: "N", Source: niuYield})
}
