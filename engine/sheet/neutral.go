package sheet

import (
	"fmt"
	"math"

	"chainwale/engine/working"
)

// NeutralMethod says where the neutral line of a fold is taken to lie.
type NeutralMethod string

const (
	// DIN6935 follows the curve of DIN 6935; it is what stands where nothing is said.
	DIN6935 NeutralMethod = "DIN 6935"
	// StepRule is the rule of the textbooks with its step at R = 2 t.
	StepRule NeutralMethod = "step at two thicknesses"
	// Aircraft is the empirical formula of aircraft repair.
	Aircraft NeutralMethod = "aircraft"
	// HandbookSoft, HandbookMedium and HandbookHard are the three materials of a
	// machinist's handbook: soft brass and copper; soft steel, half-hard copper and
	// brass, aluminium; bronze, hard copper, cold-rolled and spring steel.
	HandbookSoft   NeutralMethod = "handbook, soft"
	HandbookMedium NeutralMethod = "handbook, medium"
	HandbookHard   NeutralMethod = "handbook, hard"
	// AsGiven takes the factor that is given, as from a test strip.
	AsGiven NeutralMethod = "as given"
)

// NeutralMethods are all methods that give a factor of their own.
func NeutralMethods() []NeutralMethod {
	return []NeutralMethod{DIN6935, StepRule, Aircraft, HandbookSoft, HandbookMedium, HandbookHard}
}

var (
	dinSource      = working.Source{Title: "after DIN 6935", As: working.Published, For: "the correction factor k = 0.65 + 0.5 lg(r/s), halved to count thicknesses"}
	stepSource     = working.Source{Title: "Kalpakjian, Manufacturing Engineering and Technology", Edition: "6th SI", Clause: "p. 418", As: working.Published, For: "0.33 below two thicknesses, 0.5 from there"}
	aircraftSource = working.Source{Title: "bend allowance (0.01743 R + 0.0078 T) N of US Navy and FAA handbooks", As: working.Memory, For: "the constants; a Navy text with 0.0173 was seen"}
	handbookSource = working.Source{Title: "Machinery's Handbook", Edition: "31", Clause: "p. 1421", As: working.Published, For: "the constants 0.55, 0.64 and 0.71"}
	stripSource    = working.Source{Title: "factor as given", As: working.Judgement}
)

// NeutralFactor is how far the neutral line of a fold lies from its inside face, as
// a share K of the thickness.
//
// Equation:
//
//	DIN 6935   K = (0.65 + 0.5 lg(R/t))/2, at most 0.5 (from R = 5 t on)
//	step       K = 0.33 below R = 2 t, 0.5 from there
//	aircraft   K = 0.0078/0.01743
//	handbook   K = c/(pi/2), c = 0.55, 0.64 or 0.71
//
// Symbols: inside radius R, thickness t, mm; K bare. DIN's own k multiplies s/2, not
// s, and is twice K.
//
// Holds for R from 0.25 t: below that the curve runs towards nothing. The methods
// differ by up to 0.17 t on the same fold, and none was made for narrow strip.
//
// Source: see the five above. Errors: a size that is missing, negative or not finite;
// a fold sharper than 0.25 t; a method that is not known.
func NeutralFactor(method NeutralMethod, radius, thickness float64) (float64, error) {
	var in inputs
	in.positive("the thickness", thickness, "mm")
	in.positive("the inside radius", radius, "mm")
	in.must(radius >= 0.25*thickness, "an inside radius of %g mm in %g mm is sharper than any method for the neutral line reaches, 0.25 times the thickness", radius, thickness)
	if in.err != nil {
		return 0, in.err
	}
	switch method {
	case DIN6935, "":
		return dinFactor(radius / thickness), nil
	case StepRule:
		if radius < 2*thickness {
			return stepLow, nil
		}
		return stepHigh, nil
	case Aircraft:
		return 0.0078 / 0.01743, nil
	case HandbookSoft:
		return 0.55 / (math.Pi / 2), nil
	case HandbookMedium:
		return 0.64 / (math.Pi / 2), nil
	case HandbookHard:
		return 0.71 / (math.Pi / 2), nil
	}
	return 0, fmt.Errorf("no method for the neutral line is called %q", string(method))
}

// The two values of the step rule are the ends of what the methods give for folds of
// 1 t and more.
const (
	stepLow  = 0.33
	stepHigh = 0.50
)

func dinFactor(ratio float64) float64 {
	return min(0.5, (0.65+0.5*math.Log10(ratio))/2)
}

// factorRange is the lowest and highest factor that any of the methods gives for a
// fold. The step rule counts with both its values: its jump at two thicknesses is
// nobody's measurement.
func factorRange(radius, thickness float64) (low, high float64) {
	return min(stepLow, dinFactor(radius/thickness)), stepHigh
}

// factorStep says how a factor came about.
func factorStep(method NeutralMethod, k, radius, thickness float64) working.Step {
	s := working.Step{Symbol: "K", Meaning: "neutral line from the inside face, in thicknesses", Value: k}
	size := given("R", radius, "mm", "t", thickness, "mm")
	switch method {
	case DIN6935, "":
		s.Formula, s.Inputs, s.Source = "min(0.5, (0.65 + 0.5 lg(R/t))/2)", size, dinSource
	case StepRule:
		s.Formula, s.Inputs, s.Source = "0.33 if R < 2 t, else 0.5", size, stepSource
	case Aircraft:
		s.Formula, s.Source = "0.0078/0.01743", aircraftSource
	case AsGiven:
		s.Formula, s.Source = "as given", stripSource
	default:
		s.Formula, s.Source = "c/(pi/2), c of the "+string(method), handbookSource
	}
	return s
}
