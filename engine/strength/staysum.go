package strength

import (
	"fmt"
	"math"

	"chainwale/engine/working"
)

// Direction is a direction in space, x forward, y to port, z up; its length doesn't matter.
type Direction struct{ X, Y, Z float64 }

func (d Direction) size() float64 { return math.Sqrt(d.X*d.X + d.Y*d.Y + d.Z*d.Z) }

func (d Direction) times(k float64) Direction { return Direction{k * d.X, k * d.Y, k * d.Z} }

func (d Direction) plus(e Direction) Direction { return Direction{d.X + e.X, d.Y + e.Y, d.Z + e.Z} }

func (d Direction) dot(e Direction) float64 { return d.X*e.X + d.Y*e.Y + d.Z*e.Z }

// Pull is one wire that lands on a fitting: its force in N, and where it leads.
type Pull struct {
	Force  float64
	Toward Direction
}

// StaySum is a fitting that several wires land on.
//
// Returns their sum, N: as a vector, its Size, and its parts Along the fitting's
// axis, Across it in its plane, and Off its plane (Normal), with the angles that
// they make.
//
// Equation:
//
//	sum = sum(F u),  Along = sum . axis,  Off = sum . normal,  Across = the rest
//	In = atan2(Across, Along),  Out = asin(Off/Size)
//
// Symbols: Pulls, forces F in N and directions u; Axis of the fitting, from its
// fixed part towards its pin, and Normal to its plane; angles In and Out, deg.
//
// Holds for wires that meet in one point. Break loads of all wires at once are more
// than a fitting can meet; the forces are whatever case is asked about.
//
// Source: statics (computed). Errors: no wire, a direction without length, an axis
// that isn't at right angles to the normal, forces that are negative or not finite.
type StaySum struct {
	Pulls        []Pull
	Axis, Normal Direction
}

// StaySumResult is the sum of a StaySum.
type StaySumResult struct {
	Sum                Direction
	Size               float64
	Along, Across, Off float64
	In, Out            float64

	of StaySum
}

// Reckon gives the sum and its parts.
func (s StaySum) Reckon() (StaySumResult, error) {
	if err := s.check(); err != nil {
		return StaySumResult{}, err
	}
	r := StaySumResult{of: s}
	for _, p := range s.Pulls {
		r.Sum = r.Sum.plus(p.Toward.times(p.Force / p.Toward.size()))
	}
	axis, normal := s.Axis.times(1/s.Axis.size()), s.Normal.times(1/s.Normal.size())
	// Axis, across and normal are a right-handed set: across = normal x axis.
	across := Direction{normal.Y*axis.Z - normal.Z*axis.Y, normal.Z*axis.X - normal.X*axis.Z, normal.X*axis.Y - normal.Y*axis.X}
	r.Size = r.Sum.size()
	r.Along, r.Across, r.Off = r.Sum.dot(axis), r.Sum.dot(across), r.Sum.dot(normal)
	if r.Size > 0 {
		r.In = math.Atan2(r.Across, r.Along) * 180 / math.Pi
		r.Out = math.Asin(max(-1, min(1, r.Off/r.Size))) * 180 / math.Pi
	}
	return r, nil
}

func (s StaySum) check() error {
	var in inputs
	in.must(len(s.Pulls) > 0, "a sum of wires needs at least one")
	for i, p := range s.Pulls {
		in.notNegative(fmt.Sprintf("the force of wire %d", i+1), p.Force, "N")
		in.direction(fmt.Sprintf("wire %d", i+1), p.Toward)
	}
	in.direction("the fitting's axis", s.Axis)
	in.direction("the normal to the fitting", s.Normal)
	in.must(math.Abs(s.Axis.dot(s.Normal)) <= 1e-6*s.Axis.size()*s.Normal.size(), "the fitting's axis does not lie in its plane")
	return in.err
}

// direction asks for a direction that leads somewhere.
func (in *inputs) direction(what string, d Direction) {
	size := d.size()
	in.must(size >= least && size <= most, "%s leads nowhere: (%g, %g, %g)", what, d.X, d.Y, d.Z)
}

// Working writes the calculation down.
func (r StaySumResult) Working() []working.Step {
	var steps []working.Step
	for i, p := range r.of.Pulls {
		steps = append(steps, working.Step{Symbol: fmt.Sprintf("F%d", i+1), Meaning: fmt.Sprintf("pull of wire %d", i+1), Formula: "given", Inputs: given("ux", p.Toward.X, "", "uy", p.Toward.Y, "", "uz", p.Toward.Z, ""), Value: p.Force, Unit: "N", Source: statics})
	}
	return append(steps,
		working.Step{Symbol: "F", Meaning: "all of them together", Formula: "|sum(F u)|", Inputs: given("Fx", r.Sum.X, "N", "Fy", r.Sum.Y, "N", "Fz", r.Sum.Z, "N"), Value: r.Size, Unit: "N", Source: statics},
		working.Step{Symbol: "Fa", Meaning: "along the fitting", Formula: "sum . axis", Value: r.Along, Unit: "N", Source: statics},
		working.Step{Symbol: "Fc", Meaning: "across it in its plane", Formula: "sum . (normal x axis)", Value: r.Across, Unit: "N", Source: statics},
		working.Step{Symbol: "Fo", Meaning: "off its plane", Formula: "sum . normal", Value: r.Off, Unit: "N", Source: statics})
}
