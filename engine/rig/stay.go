package rig

import (
	"math"

	"chainwale/engine/working"
)

// Point is a place or a direction: x forward, y to port, z up from the mast's heel, mm.
type Point struct{ X, Y, Z float64 }

// StayLine is a stay as a straight line from the mast down to the hull.
//
// Returns its angle to the mast, its length and how much of its pull goes sideways.
//
// Equation:
//
//	angle = atan(sqrt(x^2 + y^2)/(h - z)),  sideways = sin(angle),  down = cos(angle)
//
// Symbols: Foot, where it lands on the hull (x, y, z); Height h of its attachment on
// the mast; mm.
//
// Holds for a straight stay. One that leads over a spreader takes the spreader's tip
// for its Foot when the angle at the mast is asked, and the height at which its lowest
// part, drawn on, meets the mast when the mast as a whole is.
//
// Source: geometry (computed). Errors: numbers that are not finite, an attachment that
// is not above the foot, a foot in the mast's own line.
type StayLine struct {
	Foot   Point
	Height float64
}

// StayLineResult is how a stay stands. mm and deg.
type StayLineResult struct {
	Angle, Length, Spread float64
	// Sideways and Down are the parts of the pull, of 1.
	Sideways, Down float64
	// Lever is the moment about the mast's heel per unit of pull, mm, towards Direction (deg, 0 forward, 90 port).
	Lever, Direction float64

	of StayLine
}

func (s StayLine) check() error {
	var in inputs
	in.finite("the foot's x", s.Foot.X, "mm")
	in.finite("the foot's y", s.Foot.Y, "mm")
	in.finite("the foot's z", s.Foot.Z, "mm")
	in.positive("the height of the attachment", s.Height, "mm")
	in.must(s.Height > s.Foot.Z, "the attachment at %g mm is not above the foot at %g mm", s.Height, s.Foot.Z)
	in.must(math.Hypot(s.Foot.X, s.Foot.Y) >= least, "the foot stands in the line of the mast: it can't hold it any way")
	return in.err
}

// Reckon gives the angle and its parts.
func (s StayLine) Reckon() (StayLineResult, error) {
	if err := s.check(); err != nil {
		return StayLineResult{}, err
	}
	spread, rise := math.Hypot(s.Foot.X, s.Foot.Y), s.Height-s.Foot.Z
	r := StayLineResult{Spread: spread, Length: math.Hypot(spread, rise), Angle: degrees(math.Atan2(spread, rise)), Direction: around(s.Foot.X, s.Foot.Y), of: s}
	r.Sideways, r.Down = spread/r.Length, rise/r.Length
	r.Lever = s.Height * r.Sideways
	return r, nil
}

// moment is the vector of the moment about the heel per unit of pull, mm, as it pulls the mast.
func (s StayLine) moment() vector {
	spread := math.Hypot(s.Foot.X, s.Foot.Y)
	lever := s.Height / math.Hypot(spread, s.Height-s.Foot.Z)
	return vector{lever * s.Foot.X, lever * s.Foot.Y}
}

// Working writes the calculation down.
func (r StayLineResult) Working() []working.Step {
	return []working.Step{
		{Symbol: "a", Meaning: "angle of the stay to the mast", Formula: "atan(sqrt(x^2 + y^2)/(h - z))", Inputs: given("x", r.of.Foot.X, "mm", "y", r.of.Foot.Y, "mm", "z", r.of.Foot.Z, "mm", "h", r.of.Height, "mm"), Value: r.Angle, Unit: "deg", Source: geometry},
		{Symbol: "s", Meaning: "part of the pull that goes sideways", Formula: "sin(a)", Inputs: given("a", r.Angle, "deg"), Value: r.Sideways, Source: geometry},
	}
}

// vector is a horizontal vector, x forward and y to port.
type vector struct{ x, y float64 }

func (v vector) dot(w vector) float64 { return v.x*w.x + v.y*w.y }

// size needs no guard against overflow: moments stay far below where squares do.
func (v vector) size() float64 { return math.Sqrt(v.x*v.x + v.y*v.y) }

func (v vector) times(k float64) vector { return vector{k * v.x, k * v.y} }

func (v vector) plus(w vector) vector { return vector{v.x + w.x, v.y + w.y} }

// toward is the unit vector of a direction in deg, 0 forward, 90 port. Quarter turns
// are exact, so that what is forward has nothing of port in it.
func toward(deg float64) vector {
	switch math.Mod(math.Mod(deg, 360)+360, 360) {
	case 0:
		return vector{1, 0}
	case 90:
		return vector{0, 1}
	case 180:
		return vector{-1, 0}
	case 270:
		return vector{0, -1}
	}
	return vector{math.Cos(radians(deg)), math.Sin(radians(deg))}
}

// compassWords are the eight directions of a boat.
var compassWords = [8]string{"forward", "forward and to port", "to port", "aft and to port", "aft", "aft and to starboard", "to starboard", "forward and to starboard"}

// InWords is a direction in deg, 0 forward, 90 port, as a person says it.
func InWords(deg float64) string {
	eighth := int(math.Round(deg/45)) % 8
	return compassWords[(eighth+8)%8]
}
