package quantity

import (
	"math"
	"strconv"
	"strings"
)

// step is a unit that numbers are printed in as long as they stay below a limit,
// counted in that unit. The last step of a scale has no limit.
type step struct {
	unit  string
	below float64
}

// scale is the units that a dimension is printed in, the smallest first, and the
// one that nought is printed in.
type scale struct {
	nought string
	steps  []step
}

// scales are those of the metric system, and for the US system those that differ.
var scales = [...]map[Dimension]scale{
	Metric: {
		Length:         {"mm", []step{{"mm", 1e4}, {"m", 0}}},
		Area:           {"mm2", []step{{"mm2", 1e4}, {"cm2", 1e4}, {"m2", 0}}},
		Volume:         {"ml", []step{{"mm3", 100}, {"ml", 1000}, {"L", 0}}},
		Force:          {"N", []step{{"N", 1000}, {"kN", 0}}},
		Stress:         {"MPa", []step{{"Pa", 1000}, {"kPa", 1000}, {"MPa", 1e4}, {"GPa", 0}}},
		Moment:         {"N m", []step{{"N mm", 1000}, {"N m", 1000}, {"kN m", 0}}},
		Mass:           {"kg", []step{{"g", 1000}, {"kg", 1e4}, {"t", 0}}},
		Time:           {"years", []step{{"s", 60}, {"minutes", 60}, {"hours", 48}, {"days", 60}, {"months", 12}, {"years", 0}}},
		Potential:      {"V", []step{{"mV", 1000}, {"V", 0}}},
		Angle:          {"deg", []step{{"deg", 0}}},
		Temperature:    {"degC", []step{{"degC", 0}}},
		ForcePerLength: {"N/mm", []step{{"N/m", 1000}, {"N/mm", 0}}},
		SecondMoment:   {"mm4", []step{{"mm4", 1e4}, {"cm4", 0}}},
		Density:        {"kg/m3", []step{{"kg/m3", 0}}},
		MassPerLength:  {"kg/m", []step{{"g/m", 1000}, {"kg/m", 0}}},
		// Corrosion eats mm/year; what moves faster than a hundredth of a knot is wind.
		Speed: {"kn", []step{{"mm/year", 0.01 * Knot}, {"kn", 0}}},
	},
	US: {
		Length:         {"in", []step{{"in", 120}, {"ft", 0}}},
		Area:           {"in2", []step{{"in2", 1440}, {"sq ft", 0}}},
		Volume:         {"US fl oz", []step{{"US fl oz", 128}, {"US gal", 0}}},
		Force:          {"lbf", []step{{"lbf", 0}}},
		Stress:         {"psi", []step{{"psi", 1000}, {"ksi", 0}}},
		Moment:         {"lbf ft", []step{{"lbf in", 120}, {"lbf ft", 0}}},
		Mass:           {"lb", []step{{"oz", 16}, {"lb", 0}}},
		Temperature:    {"degF", []step{{"degF", 0}}},
		ForcePerLength: {"lbf/in", []step{{"lbf/in", 0}}},
		SecondMoment:   {"in4", []step{{"in4", 0}}},
		Density:        {"lb/ft3", []step{{"lb/ft3", 0}}},
		MassPerLength:  {"lb/ft", []step{{"lb/ft", 0}}},
		Speed:          {"kn", []step{{"in/year", 0.01 * Knot / inch}, {"kn", 0}}},
	},
}

// Format prints a value in canonical units for people: in a unit of the system
// that suits its size, with three significant figures, or four from a thousand
// on; angles and temperatures to a tenth, money to a hundredth. It is for reading
// and not for reckoning: String keeps every digit. What isn't finite is "unknown".
func Format(value float64, d Dimension, s System) string {
	switch {
	case !finite(value):
		return Unknown
	case d == Bare:
		return rounded(value)
	case d == Money:
		return withUnit(hundredths(value), d.Unit())
	}
	sc, ok := scales[s][d]
	if !ok {
		sc, ok = scales[Metric][d]
	}
	if !ok {
		return withUnit(rounded(value), d.Unit())
	}
	return sc.print(value, d)
}

// print chooses the unit. A number that is rounded up to a unit's limit goes on
// to the next ("1 kN", not "1000 N") unless it would be less than one there
// ("12 months", not "0.997 years").
func (sc scale) print(value float64, d Dimension) string {
	if value == 0 && d != Temperature {
		return "0 " + sc.nought
	}
	last := len(sc.steps) - 1
	for i, step := range sc.steps[:last] {
		if sc.size(i, value, d) < step.below || sc.size(i+1, value, d) < 1 {
			return inUnit(value, step.unit, d)
		}
	}
	return inUnit(value, sc.steps[last].unit, d)
}

// size is how large the number is that step i would print.
func (sc scale) size(i int, value float64, d Dimension) float64 {
	reading := spelled[sc.steps[i].unit].fromCanonical(value)
	if !finite(reading) {
		return math.Inf(1)
	}
	return math.Abs(printed(reading, d))
}

// inUnit prints the value in one unit. A value that overflows there is printed in
// the canonical one.
func inUnit(value float64, unit string, d Dimension) string {
	reading := spelled[unit].fromCanonical(value)
	if !finite(reading) {
		return withUnit(rounded(value), d.Unit())
	}
	number := figures(reading, d)
	if d == Time && number == "1" {
		unit = strings.TrimSuffix(unit, "s")
	}
	return withUnit(number, unit)
}

// figures is the number with the digits that its dimension deserves.
func figures(v float64, d Dimension) string {
	if d == Angle || d == Temperature {
		return tenths(v)
	}
	return rounded(v)
}

// printed is the number that figures writes down.
func printed(v float64, d Dimension) float64 {
	if d != Angle && d != Temperature {
		return toFigures(v)
	}
	var room [32]byte
	r, _ := strconv.ParseFloat(string(strconv.AppendFloat(room[:0], v, 'f', 1, 64)), 64)
	return r
}

// shortExponent takes out of an exponent what says nothing: 1e+07 is 1e7.
var shortExponent = strings.NewReplacer("e+0", "e", "e-0", "e-", "e+", "e")

// rounded writes three significant figures, or four from a thousand on, without
// zeros that say nothing.
func rounded(v float64) string {
	r := toFigures(v)
	size := math.Abs(r)
	switch {
	case size == 0:
		return "0"
	case size < 1e-4 || size >= 1e7:
		text := strconv.FormatFloat(r, 'e', -1, 64)
		return shortExponent.Replace(text)
	}
	return exact(r)
}

// toFigures is the number with three significant figures, or four from a thousand on.
func toFigures(v float64) float64 {
	digits := 3
	if math.Abs(v) >= 1000 {
		digits = 4
	}
	var room [32]byte
	r, err := strconv.ParseFloat(string(strconv.AppendFloat(room[:0], v, 'e', digits-1, 64)), 64)
	if err != nil {
		return v // rounded up beyond the largest number there is
	}
	return r
}

// tenths writes one decimal, or none where it is nought.
func tenths(v float64) string {
	text := strings.TrimSuffix(strconv.FormatFloat(v, 'f', 1, 64), ".0")
	if text == "-0" {
		return "0"
	}
	return text
}
