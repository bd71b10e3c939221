package strength

import (
	"fmt"
	"math"

	"chainwale/engine/working"
)

// BoltGroupUltimate is a group of like bolts taken to its ultimate load about an
// instantaneous centre, the point about which the plate turns.
//
// Returns the force each bolt carries at the applied load (they add up to it), the
// ultimate strength that one bolt must have for the group to hold it (BoltNeeded),
// and Coefficient, the load over that strength: how many bolts the group is worth.
//
// Equation, with d the distance of a bolt from the centre:
//
//	D  = Dmax d/dmax;   R = Rult (1 - exp(-mu D))^0.55
//	the centre is where sum(R) across d equals the load and sum(R d) its moment
//	Coefficient = |P|/Rult
//
// Symbols: as in BoltGroup; mu = 10/in = 0.3937/mm, Dmax = 0.34 in = 8.636 mm.
//
// Holds for like bolts in metal that can stretch: the curve was measured on 3/4 in
// A325 bolts in steel, not on A4 bolts, and never in timber or laminate. It is for
// information beside the elastic method. Without a moment about the bolts'
// centre (an arm below a ten-thousandth of the group's reach) they share alike, and
// the coefficient is 0.98 of their number, the curve's end.
//
// Source: after AISC Manual, eccentrically loaded bolt groups, the load-deformation curve
// of its tables of C (published). Errors: those of BoltGroup; bolts of unlike
// areas; no force; a group for which no centre was found.
type BoltGroupUltimate struct {
	Bolts  []GroupBolt
	Force  Vector
	At     Vector
	Moment float64
}

// BoltGroupUltimateResult is what a BoltGroupUltimate gives.
type BoltGroupUltimateResult struct {
	Bolts       []Vector
	Largest     float64
	BoltNeeded  float64
	Coefficient float64
	// Centre is the instantaneous centre in mm; HasCentre is false where the bolts share alike.
	Centre    Vector
	HasCentre bool

	group  BoltGroup
	moment float64
}

const (
	curveRate    = 10 / 25.4
	curvePower   = 0.55
	curveStretch = 0.34 * 25.4
	// centred is the arm of the load, as a part of the group's reach, below which the
	// centre lies too far away to be found and makes no difference.
	centred = 1e-4
)

var aiscCentre = working.Source{Title: "after the AISC Manual, eccentrically loaded bolt groups", Clause: "instantaneous centre of rotation, tables of C", As: working.Published, For: "the form of the equation"}

// share is the part of its ultimate strength that a bolt gives at a part of the
// farthest bolt's stretch.
func share(part float64) float64 {
	return math.Pow(1-math.Exp(-curveRate*curveStretch*part), curvePower)
}

// Reckon finds the centre and gives the forces.
func (g BoltGroupUltimate) Reckon() (BoltGroupUltimateResult, error) {
	group := BoltGroup(g)
	elastic, err := group.Reckon()
	if err != nil {
		return BoltGroupUltimateResult{}, err
	}
	for _, b := range g.Bolts {
		if math.Abs(b.Area-g.Bolts[0].Area) > 1e-6*b.Area {
			return BoltGroupUltimateResult{}, fmt.Errorf("the instantaneous centre holds for like bolts only: areas %g and %g mm2", g.Bolts[0].Area, b.Area)
		}
	}
	load := g.Force.Size()
	if load == 0 {
		return BoltGroupUltimateResult{}, fmt.Errorf("the instantaneous centre needs a force on the group")
	}
	s := newSpin(elastic)
	r := BoltGroupUltimateResult{group: group, moment: elastic.momentAtCentre}
	if math.Abs(s.moment) <= centred*load*s.reach() {
		return r.alike(load), nil
	}
	if err := s.solve(); err != nil {
		return BoltGroupUltimateResult{}, err
	}
	r.Bolts, r.BoltNeeded = s.forces, s.needed
	r.Centre, r.HasCentre = Vector{s.at.X + elastic.centre.X, s.at.Y + elastic.centre.Y}, true
	r.finish(load)
	return r, nil
}

// alike shares a load without a moment evenly, each bolt at the end of the curve.
func (r BoltGroupUltimateResult) alike(load float64) BoltGroupUltimateResult {
	n := float64(len(r.group.Bolts))
	for range r.group.Bolts {
		r.Bolts = append(r.Bolts, Vector{r.group.Force.X / n, r.group.Force.Y / n})
	}
	r.BoltNeeded = load / n / share(1)
	r.finish(load)
	return r
}

func (r *BoltGroupUltimateResult) finish(load float64) {
	for _, f := range r.Bolts {
		r.Largest = max(r.Largest, f.Size())
	}
	r.Coefficient = load / r.BoltNeeded
}

// Working writes the calculation down.
func (r BoltGroupUltimateResult) Working() []working.Step {
	g := r.group
	var steps []working.Step
	if r.HasCentre {
		steps = append(steps,
			working.Step{Symbol: "Mz", Meaning: "moment of the load about the bolts' centre", Formula: "(xp-xc) Py - (yp-yc) Px + M0", Inputs: given("Px", g.Force.X, "N", "Py", g.Force.Y, "N", "xp", g.At.X, "mm", "yp", g.At.Y, "mm", "M0", g.Moment, "N mm"), Value: r.moment, Unit: "N mm", Source: statics},
			working.Step{Symbol: "xi", Meaning: "the plate turns about this point, along x", Formula: "where the bolts' forces add up to the load", Value: r.Centre.X, Unit: "mm", Source: aiscCentre},
			working.Step{Symbol: "yi", Meaning: "the plate turns about this point, along y", Formula: "where the bolts' forces add up to the load", Value: r.Centre.Y, Unit: "mm", Source: aiscCentre})
	}
	for i, f := range r.Bolts {
		steps = append(steps, working.Step{Symbol: fmt.Sprintf("F%d", i+1), Meaning: fmt.Sprintf("force on bolt %d", i+1), Formula: "Rult (1 - exp(-mu Dmax d/dmax))^0.55",
			Inputs: given("Rult", r.BoltNeeded, "N", "mu", curveRate, "1/mm", "Dmax", curveStretch, "mm", "Fx", f.X, "N", "Fy", f.Y, "N"), Value: f.Size(), Unit: "N", Source: aiscCentre})
	}
	return append(steps, working.Step{Symbol: "C", Meaning: "how many bolts the group is worth", Formula: "P/Rult", Inputs: given("P", g.Force.Size(), "N", "Rult", r.BoltNeeded, "N"), Value: r.Coefficient, Source: aiscCentre})
}
