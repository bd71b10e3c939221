package strength

import "chainwale/engine/working"

// Bolt is one bolt with a single shear plane, and perhaps a pull along it.
//
// Returns the force in N that shears it (Shear), the pull that breaks it
// (Tension), the shear it still holds under a given pull (Together), and the pull
// at which it takes a set of 0.2 % (YieldLoad).
//
// Equation:
//
//	Shear     = 0.5 Fu As   with threads in the shear plane
//	          = 0.6 Fu pi d^2/4   with the shank in it
//	Tension   = 0.9 Fu As   (0.63 Fu As with a countersunk head)
//	Together  = Shear (1 - pull/(1.4 Tension)),  pull <= Tension
//	YieldLoad = Fy As
//
// Symbols: StressArea As, mm2; Diameter d, mm; Yield Fy, Ultimate Fu of the bolt,
// MPa; Pull, N; results N.
//
// Holds for a bolt that bears on metal. In timber or laminate the bolt also bends;
// the host has formulas of its own. Preload isn't credited: it creeps away in
// timber and laminate.
//
// Source: after EN 1993-1-8:2005, table 3.4, without partial factors (published
// for 0.5, 0.6 and 0.9; memory for 0.63 and for shear with pull), the 0.5 for
// stainless in the threads after EN 1993-1-4 (memory). Errors: a size or strength
// that is missing, negative or not finite; a stress area above the shank's; a pull
// above what the bolt holds.
type Bolt struct {
	StressArea, Diameter float64
	Yield, Ultimate      float64
	ThreadsInPlane       bool
	Countersunk          bool
	Pull                 float64
}

// BoltResult is what a Bolt holds, N.
type BoltResult struct {
	Shear, Tension, Together, YieldLoad float64
	// Area is the area in the shear plane, mm2.
	Area float64

	bolt                       Bolt
	shearFactor, tensionFactor float64
}

var (
	enBolt     = working.Source{Title: "after EN 1993-1-8", Edition: "2005", Clause: "table 3.4", As: working.Published, For: "the form of the equation, without partial factors"}
	enTogether = working.Source{Title: "after EN 1993-1-8", Edition: "2005", Clause: "table 3.4", As: working.Memory, For: "shear together with pull"}
)

// Reckon gives the strengths of the bolt.
func (b Bolt) Reckon() (BoltResult, error) {
	var in inputs
	in.positive("the stress area of the bolt", b.StressArea, "mm2")
	in.positive("the diameter of the bolt", b.Diameter, "mm")
	in.metal("bolt", b.Yield, b.Ultimate)
	in.notNegative("the pull on the bolt", b.Pull, "N")
	in.must(b.StressArea <= roundArea(b.Diameter), "the stress area (%g mm2) is above that of the shank (%.4g mm2)", b.StressArea, roundArea(b.Diameter))
	if in.err != nil {
		return BoltResult{}, in.err
	}
	r := BoltResult{bolt: b, Area: roundArea(b.Diameter), shearFactor: 0.6, tensionFactor: 0.9}
	if b.ThreadsInPlane {
		r.Area, r.shearFactor = b.StressArea, 0.5
	}
	if b.Countersunk {
		r.tensionFactor = 0.63
	}
	r.Shear = r.shearFactor * b.Ultimate * r.Area
	r.Tension = r.tensionFactor * b.Ultimate * b.StressArea
	r.YieldLoad = b.Yield * b.StressArea
	in.must(b.Pull <= r.Tension, "the pull (%.5g N) is above what the bolt holds (%.5g N)", b.Pull, r.Tension)
	r.Together = r.Shear * (1 - b.Pull/(1.4*r.Tension))
	return r, in.err
}

// Working writes the calculation down.
func (r BoltResult) Working() []working.Step {
	b := r.bolt
	area := working.Step{Symbol: "A", Meaning: "area in the shear plane: the shank's", Formula: "pi d^2/4", Inputs: given("d", b.Diameter, "mm"), Value: r.Area, Unit: "mm2", Source: statics}
	if b.ThreadsInPlane {
		area = working.Step{Symbol: "A", Meaning: "area in the shear plane: the thread's", Formula: "As", Inputs: given("As", b.StressArea, "mm2"), Value: r.Area, Unit: "mm2", Source: enBolt}
	}
	return []working.Step{
		area,
		{Symbol: "Fv", Meaning: "the bolt shears", Formula: "av Fu A", Inputs: given("av", r.shearFactor, "", "Fu", b.Ultimate, "MPa", "A", r.Area, "mm2"), Value: r.Shear, Unit: "N", Source: enBolt},
		{Symbol: "Ft", Meaning: "the bolt breaks along its length", Formula: "k2 Fu As", Inputs: given("k2", r.tensionFactor, "", "Fu", b.Ultimate, "MPa", "As", b.StressArea, "mm2"), Value: r.Tension, Unit: "N", Source: enBolt},
		{Symbol: "Fvt", Meaning: "the shear it holds under the pull", Formula: "Fv (1 - T/(1.4 Ft))", Inputs: given("Fv", r.Shear, "N", "T", b.Pull, "N", "Ft", r.Tension, "N"), Value: r.Together, Unit: "N", Source: enTogether},
		{Symbol: "F02", Meaning: "the pull at which it takes a set of 0.2 %", Formula: "Fy As", Inputs: given("Fy", b.Yield, "MPa", "As", b.StressArea, "mm2"), Value: r.YieldLoad, Unit: "N", Source: statics},
	}
}
