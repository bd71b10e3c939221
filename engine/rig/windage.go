package rig

import (
	"fmt"

	"chainwale/engine/table"
	"chainwale/engine/working"
)

// Windage is the wind's push on a round that stands up from a hinge at its foot: a
// bare mast, a furled sail.
//
// Returns the drag per length, N/mm, the force, N, and its moment about the foot, N mm.
//
// Equation:
//
//	q = rho V^2/2,  drag = q Cd D,  F = drag L,  M = F L/2
//
// Symbols: Diameter D, across the wind with track, halyards and what hangs there, and
// Length L, mm; Wind V, m/s; Gust, the factor that the wind is multiplied by, 1 if left
// 0 (V is then the gust itself; 1.4 is usual on a mean wind); rho 1.225 kg/m3; Cd 1.2.
//
// Holds across the wind. At 15 to 50 kn a mast stands in the drag crisis, where
// measured drag scatters: 1.2 takes no credit for it.
//
// Source: definition of the drag coefficient (computed), 1.2 after agreed data on
// smooth cylinders (published), the gust factor (judgement). Errors: a diameter or
// length that is missing or not positive, a wind outside 0 to 100 m/s, a gust outside
// 1 to 3.
type Windage struct {
	Diameter, Length float64
	Wind, Gust       float64
}

// WindageResult is the push.
type WindageResult struct {
	// Pressure is in MPa, Drag in N/mm, Force in N, Moment in N mm.
	Pressure, Drag, Force, Moment float64
	// Reynolds is the Reynolds number, for the record.
	Reynolds float64

	of Windage
}

// dragUsed is the drag coefficient of everything round aloft.
const dragUsed = 1.2

// UsualGust is a gust over the mean wind.
const UsualGust = 1.4

// KnotInMetresPerSecond is one knot.
const KnotInMetresPerSecond = 1852.0 / 3600

var (
	pressure  = working.Source{Title: "Bernoulli's equation at 1.225 kg/m3", As: working.Computed, For: "the form of the equation"}
	cylinders = working.Source{Title: "agreed data on the drag of smooth circular cylinders below the drag crisis, taken for all rounds aloft", As: working.Published, For: "the drag coefficient 1.2"}
)

// wind asks for a wind that blows on earth.
func (in *inputs) wind(v float64) {
	in.must(v >= 0 && v <= 100, "a wind of %g m/s is not covered: 0 to 100 m/s are", v)
}

// windPressure is the dynamic pressure in MPa of a wind in m/s.
func windPressure(v float64) float64 { return airDensity * v * v / 2 * 1e-6 }

// Reckon gives the push.
func (w Windage) Reckon() (WindageResult, error) {
	if w.Gust == 0 {
		w.Gust = 1
	}
	var in inputs
	in.positive("the diameter", w.Diameter, "mm")
	in.positive("the length", w.Length, "mm")
	in.wind(w.Wind)
	in.must(w.Gust >= 1 && w.Gust <= 3, "a gust is 1 to 3 times the wind, not %g", w.Gust)
	if in.err != nil {
		return WindageResult{}, in.err
	}
	v := w.Gust * w.Wind
	r := WindageResult{Pressure: windPressure(v), Reynolds: v * w.Diameter / 1000 / airViscosity, of: w}
	r.Drag = r.Pressure * dragUsed * w.Diameter
	r.Force = r.Drag * w.Length
	r.Moment = r.Force * w.Length / 2
	return r, nil
}

// Working writes the calculation down.
func (r WindageResult) Working() []working.Step {
	return []working.Step{
		{Symbol: "q", Meaning: "pressure of the gust", Formula: "rho (k V)^2/2", Inputs: given("rho", airDensity, "kg/m3", "k", r.of.Gust, "", "V", r.of.Wind, "m/s"), Value: r.Pressure, Unit: "MPa", Source: pressure},
		{Symbol: "w", Meaning: "drag per length", Formula: "q Cd D", Inputs: given("Cd", dragUsed, "", "D", r.of.Diameter, "mm"), Value: r.Drag, Unit: "N/mm", Source: cylinders},
		{Symbol: "F", Meaning: "force of the wind", Formula: "w L", Inputs: given("L", r.of.Length, "mm"), Value: r.Force, Unit: "N", Source: statics},
		{Symbol: "M", Meaning: "its moment about the foot", Formula: "F L/2", Inputs: given("F", r.Force, "N", "L", r.of.Length, "mm"), Value: r.Moment, Unit: "N mm", Source: statics},
	}
}

// Aloft is something that the wind pushes on: part of the mast, a wire, a furled sail, a radar.
type Aloft struct {
	Name string
	// Diameter is across the wind, Bottom and Top are heights above the heel, mm.
	Diameter, Bottom, Top float64
	// Carried is the part of its drag that the mast takes: 1 for what is on the mast, a
	// half for a wire or a furled sail on its stay, whose other end is on the hull.
	Carried float64
}

// MastWindage is the wind's push on a mast with all that is on it.
//
// Returns the moment about the heel for a wind, and per square of the wind's speed.
//
// Equation:
//
//	M = sum q Cd D (top^2 - bottom^2)/2 * carried          what is on the mast
//	M = sum q Cd D (top - bottom) * top * carried          stays and sails furled on them
//
// Symbols: Parts; q = rho V^2/2; heights above the heel, mm; a part that is carried
// whole pushes where it is, one that is carried by half pushes at its upper end.
//
// Holds for wind from anywhere: each part counts with its widest side, so it is not a
// little too much from most directions.
//
// Source: as Windage; halves of stays are statics (computed). Errors: no part, sizes
// that are missing or not positive, a part that is upside down, a share outside 0 to 1.
type MastWindage struct{ Parts []Aloft }

// MastWindageResult is the moment per square of the wind's speed, N mm/(m/s)^2.
type MastWindageResult struct {
	PerSquare float64

	of    MastWindage
	parts []float64
}

// At is the moment in N mm of a wind in m/s.
func (r MastWindageResult) At(wind float64) float64 { return r.PerSquare * wind * wind }

// Reckon adds the parts up.
func (w MastWindage) Reckon() (MastWindageResult, error) {
	var in inputs
	in.must(len(w.Parts) > 0, "nothing stands in the wind: give the mast at least")
	r := MastWindageResult{of: w}
	for _, p := range w.Parts {
		in.positive("the diameter of "+p.Name, p.Diameter, "mm")
		in.notNegative("the bottom of "+p.Name, p.Bottom, "mm")
		in.positive("the top of "+p.Name, p.Top, "mm")
		in.must(p.Top > p.Bottom, "%s is upside down: its top at %g mm is not above its bottom at %g mm", p.Name, p.Top, p.Bottom)
		in.share("the part of the drag of "+p.Name+" that the mast takes", p.Carried)
		lever := (p.Top + p.Bottom) / 2
		if p.Carried < 1 {
			lever = p.Top
		}
		moment := windPressure(1) * dragUsed * p.Diameter * (p.Top - p.Bottom) * lever * p.Carried
		r.parts = append(r.parts, moment)
		r.PerSquare += moment
	}
	return r, in.err
}

// Working writes the calculation down, for a wind of 1 m/s.
func (r MastWindageResult) Working() []working.Step {
	var steps []working.Step
	for i, p := range r.of.Parts {
		steps = append(steps, working.Step{Symbol: fmt.Sprintf("M%d", i+1), Meaning: "moment of " + p.Name + " in 1 m/s of wind", Formula: "q Cd D (top - bottom) lever carried",
			Inputs: given("D", p.Diameter, "mm", "top", p.Top, "mm", "bottom", p.Bottom, "mm", "carried", p.Carried, ""), Value: r.parts[i], Unit: "N mm", Source: cylinders})
	}
	return append(steps, working.Step{Symbol: "M", Meaning: "moment of all in 1 m/s of wind", Formula: "sum M", Value: r.PerSquare, Unit: "N mm", Source: statics})
}

// DragPublished is what is published of the drag of a shape at a wind and a diameter,
// beside the 1.2 that is counted.
func DragPublished(shape string, diameter, wind float64) (table.DragRow, error) {
	var in inputs
	in.positive("the diameter", diameter, "mm")
	in.wind(wind)
	if in.err != nil {
		return table.DragRow{}, in.err
	}
	return table.Drag(shape, wind*diameter/1000/airViscosity)
}
