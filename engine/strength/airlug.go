package strength

import (
	"fmt"
	"math"

	"chainwale/engine/working"
)

// LugCurve names the curve of net tension that a lug's metal follows.
type LugCurve string

const (
	// LugAnnealed is 18-8 stainless, annealed (curve 7).
	LugAnnealed LugCurve = "annealed stainless"
	// LugFullHard is 18-8 stainless, full hard (curve 8).
	LugFullHard LugCurve = "full hard stainless"
	// LugAlloySteel is 4130 steel (curve 1).
	LugAlloySteel LugCurve = "4130 steel"
	// LugUnknown is a stainless of unknown temper: the lower of both.
	LugUnknown LugCurve = "stainless of unknown temper"
)

// AirLug is a lug by the method of the aircraft handbooks.
//
// Returns the loads in N at which the lug shears out or crushes (ShearBearing) and
// breaks across the hole (Tension), and the efficiencies of the charts behind them.
//
// Equation:
//
//	ShearBearing = kbr(e/D, D/t) Fu D t
//	Tension      = kt(w/D, metal) Fu (w - D) t
//
// Symbols: Thickness t, Width w, Hole D, End e (hole's centre to the end), mm;
// Ultimate Fu, MPa; Curve of the metal; results N, kbr and kt bare.
//
// Holds for an axial load, e/D from 0.5 to 3.4, w/D from 1 to 5, D/t up to 20;
// below D/t = 2 that of 2 is taken. Between the points of the charts a straight
// line, which is on the safe side.
//
// Source: NASA TM X-73305, B2 (figures B2.1.0-3 and -4), charts as digitised by
// R. Abbott, AA-SM-009-005; same charts in Niu, Airframe Stress Analysis and
// Sizing, 9.8 (published). Errors: sizes or strengths that are missing, negative or
// not finite; outside the charts; a curve that is not known.
type AirLug struct {
	Thickness, Width, Hole, End float64
	Ultimate                    float64
	Curve                       LugCurve
}

// AirLugResult is what an AirLug holds.
type AirLugResult struct {
	ShearBearing, Tension float64
	BearingFactor         float64
	TensionFactor         float64

	of AirLug
}

var (
	nasaLug = working.Source{Title: "after NASA TM X-73305", Edition: "1975", Clause: "B2, charts as digitised in AA-SM-009-005", As: working.Published, For: "the form of the equation and the charts"}

	bearingEnds  = []float64{0.5, 0.6, 1.0, 1.4, 1.8, 2.2, 2.6, 3.0, 3.4}
	bearingThins = []float64{2, 3, 4, 5, 6, 8, 10, 15, 20}
	// bearingChart is kbr: a row for each e/D, a column for each D/t.
	bearingChart = [][]float64{
		{0, 0, 0, 0, 0, 0, 0, 0, 0},
		{.20, .20, .20, .20, .20, .20, .20, .19, .17},
		{.84, .84, .84, .84, .84, .835, .83, .585, .43},
		{1.36, 1.36, 1.34, 1.33, 1.32, 1.24, 1.09, .75, .56},
		{1.76, 1.74, 1.72, 1.68, 1.62, 1.43, 1.22, .825, .61},
		{2.08, 2.04, 1.98, 1.90, 1.79, 1.54, 1.29, .86, .64},
		{2.32, 2.27, 2.17, 2.05, 1.90, 1.59, 1.32, .87, .645},
		{2.54, 2.45, 2.30, 2.15, 1.98, 1.60, 1.32, .87, .645},
		{2.72, 2.61, 2.40, 2.22, 2.04, 1.60, 1.32, .87, .645},
	}

	tensionWidths = []float64{1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5}
	tensionChart  = map[LugCurve][]float64{
		LugAlloySteel: {1, .99, .97, .95, .925, .91, .895, .855, .76},
		LugAnnealed:   {1, .955, .90, .83, .745, .67, .62, .575, .535},
		LugFullHard:   {1, .98, .94, .90, .84, .65, .515, .425, .355},
	}
)

// Reckon gives the loads.
func (l AirLug) Reckon() (AirLugResult, error) {
	var in inputs
	in.positive("the thickness of the lug", l.Thickness, "mm")
	in.positive("the width of the lug", l.Width, "mm")
	in.positive("the hole", l.Hole, "mm")
	in.positive("the end distance", l.End, "mm")
	in.positive("the ultimate strength of the lug", l.Ultimate, "MPa")
	in.must(l.Hole < l.Width, "the hole (%g mm) is not smaller than the lug is wide (%g mm)", l.Hole, l.Width)
	if in.err != nil {
		return AirLugResult{}, in.err
	}
	in.must(l.End/l.Hole > 0.5 && l.End/l.Hole <= 3.4, "an end distance of %.3g holes is outside the chart: more than 0.5, up to 3.4", l.End/l.Hole)
	in.must(l.Width/l.Hole <= 5, "a width of %.3g holes is outside the chart: up to 5", l.Width/l.Hole)
	in.must(l.Hole/l.Thickness <= 20, "a hole of %.3g thicknesses is outside the chart: up to 20", l.Hole/l.Thickness)
	if in.err != nil {
		return AirLugResult{}, in.err
	}
	r := AirLugResult{of: l}
	column := make([]float64, len(bearingEnds))
	for i, row := range bearingChart {
		column[i] = between(bearingThins, row, max(2, l.Hole/l.Thickness))
	}
	r.BearingFactor = between(bearingEnds, column, l.End/l.Hole)
	var err error
	if r.TensionFactor, err = l.tensionFactor(); err != nil {
		return AirLugResult{}, err
	}
	r.ShearBearing = r.BearingFactor * l.Ultimate * l.Hole * l.Thickness
	r.Tension = r.TensionFactor * l.Ultimate * (l.Width - l.Hole) * l.Thickness
	return r, nil
}

func (l AirLug) tensionFactor() (float64, error) {
	ratio := l.Width / l.Hole
	if l.Curve == LugUnknown {
		return min(between(tensionWidths, tensionChart[LugAnnealed], ratio), between(tensionWidths, tensionChart[LugFullHard], ratio)), nil
	}
	curve, ok := tensionChart[l.Curve]
	if !ok {
		return 0, fmt.Errorf("no lug curve is called %q: it is %s, %s, %s or %s", string(l.Curve), LugAnnealed, LugFullHard, LugAlloySteel, LugUnknown)
	}
	return between(tensionWidths, curve, ratio), nil
}

// between reads a curve given by points, in a straight line from point to point.
// The caller has held x within the points.
func between(xs, ys []float64, x float64) float64 {
	for i := 1; i < len(xs); i++ {
		if x <= xs[i] {
			return ys[i-1] + (ys[i]-ys[i-1])*(x-xs[i-1])/(xs[i]-xs[i-1])
		}
	}
	return math.NaN()
}

// Working writes the calculation down.
func (r AirLugResult) Working() []working.Step {
	l := r.of
	return []working.Step{
		{Symbol: "kbr", Meaning: "how well the metal beyond the hole is used", Formula: "chart of e/D and D/t", Inputs: given("e", l.End, "mm", "D", l.Hole, "mm", "t", l.Thickness, "mm"), Value: r.BearingFactor, Source: nasaLug},
		{Symbol: "kt", Meaning: "how well the net section is used", Formula: "chart of w/D for " + string(l.Curve), Inputs: given("w", l.Width, "mm", "D", l.Hole, "mm"), Value: r.TensionFactor, Source: nasaLug},
		{Symbol: "Pbru", Meaning: "the lug shears out or crushes", Formula: "kbr Fu D t", Inputs: given("kbr", r.BearingFactor, "", "Fu", l.Ultimate, "MPa", "D", l.Hole, "mm", "t", l.Thickness, "mm"), Value: r.ShearBearing, Unit: "N", Source: nasaLug},
		{Symbol: "Ptu", Meaning: "the lug breaks across the hole", Formula: "kt Fu (w - D) t", Inputs: given("kt", r.TensionFactor, "", "Fu", l.Ultimate, "MPa", "w", l.Width, "mm", "D", l.Hole, "mm", "t", l.Thickness, "mm"), Value: r.Tension, Unit: "N", Source: nasaLug},
	}
}
