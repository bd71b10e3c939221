package strength

import "chainwale/engine/working"

// ENBolt is one bolt by the design rules of EN 1993-1-8.
//
// Returns design resistances in N: Shear of one plane, Tension along the bolt.
//
// Equation:
//
//	Shear   = av fub As/gM2        threads in the shear plane, av by the bolt's class
//	        = 0.6 fub pi d^2/4/gM2 shank in it
//	Tension = k2 fub As/gM2,       k2 = 0.9, 0.63 with a countersunk head
//
// Symbols: StressArea As, mm2; Diameter d, mm; Ultimate fub, MPa; ThreadFactor av,
// 0.6 for classes 4.6, 5.6 and 8.8, 0.5 for 4.8, 5.8, 6.8, 10.9 and stainless, bare;
// GammaM2, bare; results N.
//
// Holds for the bolt itself. Long joints, packing and prying aren't in it.
//
// Source: after EN 1993-1-8:2005, table 3.4 (published for 0.6, 0.5 and 0.9; memory
// for 0.63 and for the classes that take 0.5), the 0.5 of stainless after EN
// 1993-1-4, 6.2 (memory). Errors: a size, a strength or a factor that is missing,
// not finite or none of the standard's; a stress area above the shank's.
type ENBolt struct {
	StressArea, Diameter  float64
	Ultimate              float64
	ThreadFactor, GammaM2 float64
	ThreadsInPlane        bool
	Countersunk           bool
}

// ENBoltResult is what an ENBolt holds by design, N.
type ENBoltResult struct {
	Shear, Tension float64

	of                               ENBolt
	area, shearFactor, stretchFactor float64
}

var (
	enBoltDesign  = working.Source{Title: "after EN 1993-1-8", Edition: "2005", Clause: "table 3.4", As: working.Published, For: "the form of the equation"}
	enClassFactor = working.Source{Title: "after EN 1993-1-8 and EN 1993-1-4", Edition: "2005, 2006", Clause: "table 3.4; 6.2", As: working.Memory, For: "which classes of bolt take 0.5 in the threads"}
)

// Reckon gives the design resistances of the bolt.
func (b ENBolt) Reckon() (ENBoltResult, error) {
	var in inputs
	in.positive("the stress area of the bolt", b.StressArea, "mm2")
	in.positive("the diameter of the bolt", b.Diameter, "mm")
	in.positive("the ultimate strength of the bolt", b.Ultimate, "MPa")
	in.must(b.ThreadFactor == 0.5 || b.ThreadFactor == 0.6, "a thread's shear factor of %g is none: 0.5 or 0.6", b.ThreadFactor)
	in.must(b.GammaM2 >= 1 && b.GammaM2 <= 3, "a partial factor of %g is none: 1 to 3", b.GammaM2)
	in.must(b.StressArea <= roundArea(b.Diameter), "the stress area (%g mm2) is above that of the shank (%.4g mm2)", b.StressArea, roundArea(b.Diameter))
	if in.err != nil {
		return ENBoltResult{}, in.err
	}
	r := ENBoltResult{of: b, area: roundArea(b.Diameter), shearFactor: 0.6, stretchFactor: 0.9}
	if b.ThreadsInPlane {
		r.area, r.shearFactor = b.StressArea, b.ThreadFactor
	}
	if b.Countersunk {
		r.stretchFactor = 0.63
	}
	r.Shear = r.shearFactor * b.Ultimate * r.area / b.GammaM2
	r.Tension = r.stretchFactor * b.Ultimate * b.StressArea / b.GammaM2
	return r, nil
}

// Working writes the calculation down.
func (r ENBoltResult) Working() []working.Step {
	b := r.of
	area := working.Step{Symbol: "A", Meaning: "area in the shear plane: the shank's", Formula: "pi d^2/4", Inputs: given("d", b.Diameter, "mm"), Value: r.area, Unit: "mm2", Source: statics}
	if b.ThreadsInPlane {
		area = working.Step{Symbol: "A", Meaning: "area in the shear plane: the thread's", Formula: "As", Inputs: given("As", b.StressArea, "mm2"), Value: r.area, Unit: "mm2", Source: enClassFactor}
	}
	return []working.Step{
		area,
		{Symbol: "Fv,Rd", Meaning: "design shear of one bolt in one plane", Formula: "av fub A/gM2", Inputs: given("av", r.shearFactor, "", "fub", b.Ultimate, "MPa", "A", r.area, "mm2", "gM2", b.GammaM2, ""), Value: r.Shear, Unit: "N", Source: enBoltDesign},
		{Symbol: "Ft,Rd", Meaning: "design tension of one bolt", Formula: "k2 fub As/gM2", Inputs: given("k2", r.stretchFactor, "", "fub", b.Ultimate, "MPa", "As", b.StressArea, "mm2", "gM2", b.GammaM2, ""), Value: r.Tension, Unit: "N", Source: enBoltDesign},
	}
}
