package sheet

import (
	"chainwale/engine/working"
)

// HardenedSpringback is the range in which a fold opens, for metal that hardens as it
// is folded.
//
// Returns Springback for the metal as it is delivered (Least), as it most likely
// becomes (Likely) and at the most (Most); and the angles to press to with the give
// of the legs in an open die added (LeastAngle, LikelyAngle, MostAngle).
//
// Equation, Y the stress put into Springback:
//
//	Least   Y = yield strength
//	Likely  Y = ultimate strength, for austenitic stainless held within 600 and 900
//	Most    Y = 1000 for austenitic stainless, else 1.3 times the ultimate strength
//	the legs give 0.5, 1.25 and 2 deg
//
// Symbols: Thickness, Radius, mm; Angle, deg; Yield, Ultimate, Modulus, MPa.
//
// Holds as a guide to where to begin and what to be ready for. Bend a test strip of
// the same sheet: nothing here stands for one.
//
// Source: this project's reading of published springback factors of 18/8 strip, which
// come to flow stresses of 800 to 1080 MPa (judgement). Errors: as Springback; an
// ultimate strength below the yield strength.
type HardenedSpringback struct {
	Thickness, Radius, Angle float64
	Yield, Ultimate, Modulus float64
	Austenitic               bool
}

// HardenedSpringbackResult is the range.
type HardenedSpringbackResult struct {
	Least, Likely, Most                SpringbackResult
	LeastAngle, LikelyAngle, MostAngle float64
}

// What the legs of a fold in an open die give under load, deg.
const (
	legsLeast  = 0.5
	legsLikely = 1.25
	legsMost   = 2
)

var hardenSource = working.Source{Title: "this project's reading of published springback factors of 18/8 strip", As: working.Judgement, For: "the stress at which worked metal flows, and the give of the legs"}

// Reckon gives the range.
func (h HardenedSpringback) Reckon() (HardenedSpringbackResult, error) {
	var in inputs
	in.positive("the yield strength", h.Yield, "MPa")
	in.positive("the ultimate strength", h.Ultimate, "MPa")
	in.must(h.Yield <= h.Ultimate, "the yield strength (%g MPa) is above the ultimate strength (%g MPa)", h.Yield, h.Ultimate)
	if in.err != nil {
		return HardenedSpringbackResult{}, in.err
	}
	likely, top := h.Ultimate, 1.3*h.Ultimate
	if h.Austenitic {
		likely, top = min(max(h.Ultimate, 600), 900), max(1000, h.Ultimate)
	}
	var r HardenedSpringbackResult
	for _, end := range []struct {
		flow, legs float64
		result     *SpringbackResult
		angle      *float64
	}{{h.Yield, legsLeast, &r.Least, &r.LeastAngle}, {likely, legsLikely, &r.Likely, &r.LikelyAngle}, {top, legsMost, &r.Most, &r.MostAngle}} {
		one, err := Springback{h.Thickness, h.Radius, h.Angle, end.flow, h.Modulus}.Reckon()
		if err != nil {
			return HardenedSpringbackResult{}, err
		}
		*end.result, *end.angle = one, one.FormAngle+end.legs
	}
	return r, nil
}

// Working writes the calculation down.
func (r HardenedSpringbackResult) Working() []working.Step {
	step := func(symbol, meaning string, of SpringbackResult, legs, value float64) working.Step {
		return working.Step{Symbol: symbol, Meaning: meaning, Formula: "angle under the press at Y, and the give of the legs",
			Inputs: given("Y", of.of.Yield, "MPa", "ai", of.FormAngle, "deg", "legs", legs, "deg"), Value: value, Unit: "deg", Source: hardenSource}
	}
	return append(r.Likely.Working(),
		step("aleast", "press to this at the least", r.Least, legsLeast, r.LeastAngle),
		step("alikely", "press to this most likely", r.Likely, legsLikely, r.LikelyAngle),
		step("amost", "press to this at the most", r.Most, legsMost, r.MostAngle))
}
