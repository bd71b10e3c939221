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
//	lever: r x f of the lowest part, f its unit vector towards the foot, r its upper end:
//	       m = zr f_xy - f_z r_xy
//
// Symbols: Foot, where it lands on the hull (x, y, z); Height h of its attachment on
// the mast; Over, the tip of the lowest spreader that it leads over, left zero where it
// leads straight down; mm.
//
// Holds for stays that are straight from point to point. The angle is that of the part
// at the mast: one that leads over several spreaders is asked with the highest tip.
//
// Source: geometry (computed). Errors: numbers that are not finite, an attachment that
// is not above the foot, a foot in the mast's own line, a tip that is not between them.
type StayLine struct {
	Foot   Point
	Height float64
	Over   Point
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
	if s.straight() {
		return in.err
	}
	in.finite("the spreader tip's x", s.Over.X, "mm")
	in.finite("the spreader tip's y", s.Over.Y, "mm")
	in.must(s.Over.Z > s.Foot.Z && s.Over.Z < s.Height, "the spreader's tip at %g mm is not between the foot at %g mm and the attachment at %g mm", s.Over.Z, s.Foot.Z, s.Height)
	in.must(math.Hypot(s.Over.X, s.Over.Y) >= least, "the spreader's tip stands in the line of the mast")
	return in.err
}

// straight tells whether it leads straight from the mast to the hull.
func (s StayLine) straight() bool { return s.Over == Point{} }

// upper is the part at the mast: from there to the foot, or to the spreader's tip.
func (s StayLine) upper() (spread, rise float64) {
	to := s.Foot
	if !s.straight() {
		to = s.Over
	}
	return math.Hypot(to.X, to.Y), s.Height - to.Z
}

// Reckon gives the angle and its parts.
func (s StayLine) Reckon() (StayLineResult, error) {
	if err := s.check(); err != nil {
		return StayLineResult{}, err
	}
	spread, rise := s.upper()
	length := math.Hypot(spread, rise)
	m := s.moment()
	r := StayLineResult{Spread: math.Hypot(s.Foot.X, s.Foot.Y), Length: s.length(), Angle: degrees(math.Atan2(spread, rise)), Direction: around(m.x, m.y), of: s}
	r.Sideways, r.Down, r.Lever = spread/length, rise/length, m.size()
	return r, nil
}

// length is that of the wire, mm.
func (s StayLine) length() float64 {
	spread, rise := s.upper()
	length := math.Hypot(spread, rise)
	if !s.straight() {
		length += math.Hypot(math.Hypot(s.Over.X-s.Foot.X, s.Over.Y-s.Foot.Y), s.Over.Z-s.Foot.Z)
	}
	return length
}

// moment is the vector of the moment about the heel per unit of pull, mm, as it pulls the mast.
func (s StayLine) moment() vector {
	from := s.Over
	if s.straight() {
		from = Point{Z: s.Height}
	}
	x, y, z := s.Foot.X-from.X, s.Foot.Y-from.Y, s.Foot.Z-from.Z
	length := math.Sqrt(x*x + y*y + z*z)
	return vector{(from.Z*x - z*from.X) / length, (from.Z*y - z*from.Y) / length}
}

// Working writes the calculation down.
func (r StayLineResult) Working() []working.Step {
	to := r.of.Foot
	if !r.of.straight() {
		to = r.of.Over
	}
	return []working.Step{
		{Symbol: "a", Meaning: "angle of the stay to the mast", Formula: "atan(sqrt(x^2 + y^2)/(h - z))", Inputs: given("x", to.X, "mm", "y", to.Y, "mm", "z", to.Z, "mm", "h", r.of.Height, "mm"), Value: r.Angle, Unit: "deg", Source: geometry},
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
