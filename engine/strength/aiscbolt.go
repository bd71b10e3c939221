package strength

import "chainwale/engine/working"

// AISCBolt is one bolt by the AISC rules, sheared in one plane and perhaps pulled.
//
// Returns nominal strengths in N, Shear and Tension, and Share, the part of them
// that a shear and a pull together use (0 where there is neither).
//
// Equation, on the area of the shank, whatever the plane goes through:
//
//	Tension = 0.75 Fu Ab;   Ab = pi d^2/4                 (J3-1, table J3.2)
//	Shear   = 0.450 Fu Ab   threads in the shear plane
//	        = 0.563 Fu Ab   threads out of it
//	Share   = max(V/Shear, T/Tension, (V/Shear + T/Tension)/1.3)      (J3-3)
//
// Symbols: Diameter d, mm; Ultimate Fu of the bolt, MPa; the loads on it, Sheared V
// and Pulled T, N; results N and bare.
//
// Holds for a steel bolt by itself, snug or tight. Share takes the code's straight
// line between shear and pull with its factor taken out of both, as for nominal
// strengths it must be. Prying isn't in it.
//
// Source: after AISC 360-10, J3.6, J3.7 and table J3.2 (published). Errors: a size or a
// strength that is missing, negative or not finite; loads that are negative or not
// finite.
type AISCBolt struct {
	Diameter, Ultimate float64
	ThreadsInPlane     bool
	Sheared, Pulled    float64
}

// AISCBoltResult is what an AISCBolt holds.
type AISCBoltResult struct {
	Shear, Tension, Share float64

	of                AISCBolt
	area, shearFactor float64
}

var (
	aiscJ36 = working.Source{Title: "after AISC 360", Edition: "2010", Clause: "J3.6, table J3.2", As: working.Published, For: "the form of the equation, without its factors"}
	aiscJ37 = working.Source{Title: "after AISC 360", Edition: "2010", Clause: "J3.7", As: working.Published, For: "shear together with pull, without its factors"}
)

// Reckon gives the strengths of the bolt and what its loads use of them.
func (b AISCBolt) Reckon() (AISCBoltResult, error) {
	var in inputs
	in.positive("the diameter of the bolt", b.Diameter, "mm")
	in.positive("the ultimate strength of the bolt", b.Ultimate, "MPa")
	in.notNegative("the shear on the bolt", b.Sheared, "N")
	in.notNegative("the pull on the bolt", b.Pulled, "N")
	if in.err != nil {
		return AISCBoltResult{}, in.err
	}
	r := AISCBoltResult{of: b, area: roundArea(b.Diameter), shearFactor: 0.563}
	if b.ThreadsInPlane {
		r.shearFactor = 0.450
	}
	r.Shear = r.shearFactor * b.Ultimate * r.area
	r.Tension = 0.75 * b.Ultimate * r.area
	v, t := b.Sheared/r.Shear, b.Pulled/r.Tension
	r.Share = max(v, t, (v+t)/1.3)
	return r, nil
}

// Working writes the calculation down.
func (r AISCBoltResult) Working() []working.Step {
	b := r.of
	return []working.Step{
		{Symbol: "Ab", Meaning: "area of the shank", Formula: "pi d^2/4", Inputs: given("d", b.Diameter, "mm"), Value: r.area, Unit: "mm2", Source: statics},
		{Symbol: "Rn,v", Meaning: "nominal shear of one bolt in one plane", Formula: "k Fu Ab", Inputs: given("k", r.shearFactor, "", "Fu", b.Ultimate, "MPa", "Ab", r.area, "mm2"), Value: r.Shear, Unit: "N", Source: aiscJ36},
		{Symbol: "Rn,t", Meaning: "nominal tension of one bolt", Formula: "0.75 Fu Ab", Inputs: given("Fu", b.Ultimate, "MPa", "Ab", r.area, "mm2"), Value: r.Tension, Unit: "N", Source: aiscJ36},
		{Symbol: "U", Meaning: "part of the bolt's strength that shear and pull use", Formula: "max(V/Rn,v, T/Rn,t, (V/Rn,v + T/Rn,t)/1.3)", Inputs: given("V", b.Sheared, "N", "Rn,v", r.Shear, "N", "T", b.Pulled, "N", "Rn,t", r.Tension, "N"), Value: r.Share, Source: aiscJ37},
	}
}
