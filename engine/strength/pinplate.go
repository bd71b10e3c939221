package strength

import (
	"math"

	"chainwale/engine/working"
)

// PinPlate is a plate that holds a pin in a round hole and is pulled along its
// length, away from the end beyond the hole.
//
// Returns the loads at which the plate tears: across the hole (Net), along one
// plane beyond it (SinglePlane), along the two planes beside the pin
// (DoublePlane); Ultimate is the least of the three. Bearing is the load at which
// the hole begins to grow, a yield limit, and stands apart.
//
// Equation, with a design factor of 1 and the 1.20 kept:
//
//	be   = width/2 - |across| - hole/2          a = end - hole/2
//	beff = min(4 t, 0.6 be (Fu/Fy) sqrt(hole/be), be)
//	Cr   = 1 for hole/pin <= 1.1, else 1 - 0.275 sqrt(1 - (pin/hole)^2)
//	Pt   = Cr Fu/1.20 * 2 t beff
//	Pb   = Cr Fu/1.20 * (1.13 a + 0.92 be/(1 + be/hole)) t
//	Pv   = 0.70 Fu/1.20 * 2 (a - Z' + pin/2 (1 - cos phi)) t,  phi = 55 pin/hole deg
//	Z'   = what a round end falls away by at pin/2 sin phi from the hole's line
//	Pp   = 1.25 Fy pin t
//
// Symbols: Thickness t, Width, Hole, Pin, End (hole's centre to the end, along the
// load), EndRadius (0 for a square end), Across (how far the hole stands off the
// plate's centre line), all mm; Yield Fy, Ultimate Fu, MPa; results N.
//
// Holds for a flat plate loaded in its own plane; bending out of it and dishing
// are not covered. With the hole off the centre line the smaller side counts on
// both sides and the further shear plane on both.
//
// Source: ASME BTH-1, 3-3.3, equation numbers of the 2005 edition, as used in a
// published lug calculation sheet whose numbers it reproduces (published); the
// hole off the centre line is statics on top of it (computed). Errors: a size
// that is missing, negative or not finite, a pin larger than the hole, a hole
// larger than the plate, a hole that breaks out of the end, an end radius smaller
// than the distance of the shear planes.
type PinPlate struct {
	Thickness, Width, Hole, Pin, End float64
	EndRadius, Across                float64
	Yield, Ultimate                  float64
}

// PinPlateResult is what a PinPlate holds, N.
type PinPlateResult struct {
	Net, SinglePlane, DoublePlane float64
	Ultimate, Bearing             float64
	// Governs is "net", "single plane" or "double plane".
	Governs string

	plate                            PinPlate
	side, beyond, effective          float64
	clearanceFactor, angle, fallAway float64
	shearArea                        float64
}

var bth = working.Source{Title: "after ASME BTH-1", Edition: "2005", Clause: "3-3.3", As: working.Published, For: "the form of the equation"}

// Reckon gives the strengths of the plate.
func (p PinPlate) Reckon() (PinPlateResult, error) {
	if err := p.check(); err != nil {
		return PinPlateResult{}, err
	}
	r := PinPlateResult{plate: p}
	r.side = p.Width/2 - math.Abs(p.Across) - p.Hole/2
	r.beyond = p.End - p.Hole/2
	r.effective = min(4*p.Thickness, 0.6*r.side*(p.Ultimate/p.Yield)*math.Sqrt(p.Hole/r.side), r.side)
	r.clearanceFactor = 1
	if p.Hole/p.Pin > 1.1 {
		r.clearanceFactor = 1 - 0.275*math.Sqrt(1-math.Pow(p.Pin/p.Hole, 2))
	}
	r.angle = 55 * p.Pin / p.Hole
	plane := p.Pin / 2 * math.Sin(radians(r.angle))
	r.fallAway = p.fallAway(plane)
	remains := r.beyond - r.fallAway + p.Pin/2*(1-math.Cos(radians(r.angle)))
	if !(remains > 0) {
		in := inputs{}
		in.refuse("the round end leaves no metal beyond the pin: %.3g mm beyond the hole, which falls away by %.3g mm", r.beyond, r.fallAway)
		return PinPlateResult{}, in.err
	}
	r.shearArea = 2 * remains * p.Thickness

	stress := p.Ultimate / 1.20
	r.Net = r.clearanceFactor * stress * 2 * p.Thickness * r.effective
	r.SinglePlane = r.clearanceFactor * stress * (1.13*r.beyond + 0.92*r.side/(1+r.side/p.Hole)) * p.Thickness
	r.DoublePlane = 0.70 * stress * r.shearArea
	r.Bearing = 1.25 * p.Yield * p.Pin * p.Thickness
	r.Ultimate, r.Governs = leastOf(named{"net", r.Net}, named{"single plane", r.SinglePlane}, named{"double plane", r.DoublePlane})
	return r, nil
}

func (p PinPlate) check() error {
	var in inputs
	in.positive("the thickness of the plate", p.Thickness, "mm")
	in.positive("the width of the plate", p.Width, "mm")
	in.positive("the hole", p.Hole, "mm")
	in.positive("the pin", p.Pin, "mm")
	in.positive("the end distance", p.End, "mm")
	in.notNegative("the end radius", p.EndRadius, "mm")
	in.finite("the offset of the hole", p.Across, "mm")
	in.metal("plate", p.Yield, p.Ultimate)
	in.must(p.Pin <= p.Hole, "the pin (%g mm) is larger than the hole (%g mm)", p.Pin, p.Hole)
	in.must(p.Hole < p.Width, "the hole (%g mm) is not smaller than the plate is wide (%g mm)", p.Hole, p.Width)
	in.must(math.Abs(p.Across)+p.Hole/2 < p.Width/2, "the hole breaks out of the side: it stands %g mm off the centre line of a plate %g mm wide", p.Across, p.Width)
	in.must(p.Hole/2 < p.End, "the hole (%g mm) breaks out of the end, %g mm from its centre", p.Hole, p.End)
	if p.EndRadius > 0 {
		plane := math.Abs(p.Across) + p.Pin/2*math.Sin(radians(55*p.Pin/p.Hole))
		in.must(p.EndRadius >= plane, "an end of %g mm radius does not reach the shear planes, %.3g mm from the centre line", p.EndRadius, plane)
	}
	return in.err
}

// fallAway is Z': how much less metal than on the hole's own line lies beyond a
// shear plane, where the end is round about the plate's centre line.
func (p PinPlate) fallAway(plane float64) float64 {
	if p.EndRadius == 0 {
		return 0
	}
	across := math.Abs(p.Across)
	height := func(x float64) float64 { return math.Sqrt(p.EndRadius*p.EndRadius - x*x) }
	return height(across) - height(across+plane)
}

// named is a number with a name.
type named struct {
	name  string
	value float64
}

// leastOf gives the least of some numbers and its name; the first among equals.
func leastOf(all ...named) (float64, string) {
	best := all[0]
	for _, n := range all[1:] {
		if n.value < best.value {
			best = n
		}
	}
	return best.value, best.name
}

// Working writes the calculation down.
func (r PinPlateResult) Working() []working.Step {
	p := r.plate
	return []working.Step{
		{Symbol: "be", Meaning: "metal beside the hole, the smaller side", Formula: "w/2 - |across| - hole/2", Inputs: given("w", p.Width, "mm", "across", p.Across, "mm", "hole", p.Hole, "mm"), Value: r.side, Unit: "mm", Source: statics},
		{Symbol: "a", Meaning: "metal beyond the hole", Formula: "end - hole/2", Inputs: given("end", p.End, "mm", "hole", p.Hole, "mm"), Value: r.beyond, Unit: "mm", Source: statics},
		{Symbol: "beff", Meaning: "metal that counts beside the hole", Formula: "min(4 t, 0.6 be (Fu/Fy) sqrt(hole/be), be)", Inputs: given("t", p.Thickness, "mm", "be", r.side, "mm", "Fu", p.Ultimate, "MPa", "Fy", p.Yield, "MPa", "hole", p.Hole, "mm"), Value: r.effective, Unit: "mm", Source: bth},
		{Symbol: "Cr", Meaning: "what a loose pin leaves", Formula: "1 for hole/pin <= 1.1, else 1 - 0.275 sqrt(1 - (pin/hole)^2)", Inputs: given("hole", p.Hole, "mm", "pin", p.Pin, "mm"), Value: r.clearanceFactor, Source: bth},
		{Symbol: "phi", Meaning: "angle of the shear planes", Formula: "55 pin/hole", Inputs: given("pin", p.Pin, "mm", "hole", p.Hole, "mm"), Value: r.angle, Unit: "deg", Source: bth},
		{Symbol: "Z'", Meaning: "what a round end falls away by at the shear planes", Formula: "r - sqrt(r^2 - (pin/2 sin phi)^2), 0 for a square end", Inputs: given("r", p.EndRadius, "mm", "pin", p.Pin, "mm", "phi", r.angle, "deg", "across", p.Across, "mm"), Value: r.fallAway, Unit: "mm", Source: bth},
		{Symbol: "Av", Meaning: "area of both shear planes", Formula: "2 (a - Z' + pin/2 (1 - cos phi)) t", Inputs: given("a", r.beyond, "mm", "Z'", r.fallAway, "mm", "pin", p.Pin, "mm", "phi", r.angle, "deg", "t", p.Thickness, "mm"), Value: r.shearArea, Unit: "mm2", Source: bth},
		{Symbol: "Pt", Meaning: "tears across the hole", Formula: "Cr Fu/1.20 * 2 t beff", Inputs: given("Cr", r.clearanceFactor, "", "Fu", p.Ultimate, "MPa", "t", p.Thickness, "mm", "beff", r.effective, "mm"), Value: r.Net, Unit: "N", Source: bth},
		{Symbol: "Pb", Meaning: "tears along one plane beyond the hole", Formula: "Cr Fu/1.20 * (1.13 a + 0.92 be/(1 + be/hole)) t", Inputs: given("Cr", r.clearanceFactor, "", "Fu", p.Ultimate, "MPa", "a", r.beyond, "mm", "be", r.side, "mm", "hole", p.Hole, "mm", "t", p.Thickness, "mm"), Value: r.SinglePlane, Unit: "N", Source: bth},
		{Symbol: "Pv", Meaning: "tears along the two planes beside the pin", Formula: "0.70 Fu/1.20 * Av", Inputs: given("Fu", p.Ultimate, "MPa", "Av", r.shearArea, "mm2"), Value: r.DoublePlane, Unit: "N", Source: bth},
		{Symbol: "Pu", Meaning: "the plate breaks: " + r.Governs, Formula: "min(Pt, Pb, Pv)", Inputs: given("Pt", r.Net, "N", "Pb", r.SinglePlane, "N", "Pv", r.DoublePlane, "N"), Value: r.Ultimate, Unit: "N", Source: bth},
		{Symbol: "Pp", Meaning: "the hole begins to grow", Formula: "1.25 Fy pin t", Inputs: given("Fy", p.Yield, "MPa", "pin", p.Pin, "mm", "t", p.Thickness, "mm"), Value: r.Bearing, Unit: "N", Source: bth},
	}
}
