package strength

import (
	"fmt"
	"math"

	"chainwale/engine/working"
)

// Vector is a force in N or a place in mm, in the plane: x and y.
type Vector struct{ X, Y float64 }

// Size is the length of the vector.
func (v Vector) Size() float64 { return math.Hypot(v.X, v.Y) }

func (v Vector) minus(w Vector) Vector { return Vector{v.X - w.X, v.Y - w.Y} }

// GroupBolt is a bolt of a group: its place in mm, and its area in mm2. Bolts
// without an area are alike.
type GroupBolt struct {
	X, Y float64
	Area float64
}

// BoltGroup is a plate held by a group of bolts and loaded in its own plane.
//
// Returns the force that each bolt carries, in the sense of the applied load: the
// forces add up to it, and their moments to its moment.
//
// Equation:
//
//	xc = sum(A x)/sum(A), yc likewise;  J = sum(A ((x-xc)^2 + (y-yc)^2))
//	Mz = (xp-xc) Py - (yp-yc) Px + M0
//	Fx = A (Px/sum(A) - Mz (y-yc)/J);  Fy = A (Py/sum(A) + Mz (x-xc)/J)
//
// Symbols: bolts at x, y in mm with areas A in mm2 (1 for all if none is given);
// Force P in N acting At xp, yp in mm; Moment M0 in N mm, counter-clockwise; forces N.
//
// Holds while the bolts are elastic and the plate does not bend in its plane.
// Bolts that bear on timber or laminate are better taken as alike.
//
// Source: Shigley, Mechanical Engineering Design, 9th edition, 8-12, equations
// 8-56 and 8-57 (published). Errors: no bolt; two bolts in one place; areas on
// some bolts only; a single bolt with a moment about it, which is a mechanism;
// numbers that are not finite.
type BoltGroup struct {
	Bolts  []GroupBolt
	Force  Vector
	At     Vector
	Moment float64
}

// BoltGroupResult is what each bolt of a group carries.
type BoltGroupResult struct {
	// Bolts are in the order of the group, N.
	Bolts []Vector
	// Largest is the greatest of their sizes, N, Governs the place of that bolt in the list.
	Largest float64
	Governs int

	group                          BoltGroup
	areas                          []float64
	centre                         Vector
	areaSum, polar, momentAtCentre float64
}

var shigley = working.Source{Title: "Shigley, Mechanical Engineering Design", Edition: "9th", Clause: "8-12, equations 8-56 and 8-57", As: working.Published, For: "the form of the equation"}

// mostBolts bounds a group: no plate of a boat has more, and every pair is compared.
const mostBolts = 500

// Reckon gives the force on each bolt.
func (g BoltGroup) Reckon() (BoltGroupResult, error) {
	if err := g.check(); err != nil {
		return BoltGroupResult{}, err
	}
	r := BoltGroupResult{group: g, areas: g.areas()}
	for i, b := range g.Bolts {
		r.areaSum += r.areas[i]
		r.centre.X += r.areas[i] * b.X
		r.centre.Y += r.areas[i] * b.Y
	}
	r.centre = Vector{r.centre.X / r.areaSum, r.centre.Y / r.areaSum}
	for i, b := range g.Bolts {
		d := Vector{b.X, b.Y}.minus(r.centre)
		r.polar += r.areas[i] * (d.X*d.X + d.Y*d.Y)
	}
	arm := g.At.minus(r.centre)
	r.momentAtCentre = arm.X*g.Force.Y - arm.Y*g.Force.X + g.Moment
	if len(g.Bolts) == 1 {
		return r.single()
	}
	for i, b := range g.Bolts {
		d := Vector{b.X, b.Y}.minus(r.centre)
		r.Bolts = append(r.Bolts, Vector{
			X: r.areas[i] * (g.Force.X/r.areaSum - r.momentAtCentre*d.Y/r.polar),
			Y: r.areas[i] * (g.Force.Y/r.areaSum + r.momentAtCentre*d.X/r.polar),
		})
	}
	r.findLargest()
	return r, nil
}

// single gives one bolt the whole force. A moment about it would turn the plate.
func (r BoltGroupResult) single() (BoltGroupResult, error) {
	arm := r.group.At.minus(r.centre).Size()
	if math.Abs(r.momentAtCentre) > 1e-9*(r.group.Force.Size()*arm+math.Abs(r.group.Moment)) {
		return BoltGroupResult{}, fmt.Errorf("one bolt alone can't hold a moment of %.4g N mm: the plate would turn about it", r.momentAtCentre)
	}
	r.Bolts = []Vector{r.group.Force}
	r.findLargest()
	return r, nil
}

func (r *BoltGroupResult) findLargest() {
	for i, f := range r.Bolts {
		if f.Size() > r.Largest {
			r.Largest, r.Governs = f.Size(), i
		}
	}
}

// areas are those of the bolts, or 1 for each where none has any.
func (g BoltGroup) areas() []float64 {
	list := make([]float64, len(g.Bolts))
	for i, b := range g.Bolts {
		list[i] = b.Area
		if b.Area == 0 {
			list[i] = 1
		}
	}
	return list
}

func (g BoltGroup) check() error {
	var in inputs
	in.must(len(g.Bolts) > 0, "a bolt group needs at least one bolt")
	in.must(len(g.Bolts) <= mostBolts, "a group of %d bolts is more than the %d that are covered", len(g.Bolts), mostBolts)
	in.finite("the force along x", g.Force.X, "N")
	in.finite("the force along y", g.Force.Y, "N")
	in.finite("the place of the force along x", g.At.X, "mm")
	in.finite("the place of the force along y", g.At.Y, "mm")
	in.finite("the moment", g.Moment, "N mm")
	if in.err == nil {
		checkBolts(&in, g.Bolts)
	}
	return in.err
}

func checkBolts(in *inputs, bolts []GroupBolt) {
	withArea := 0
	for i, b := range bolts {
		if !b.sound() { // nothing is put into words for what is sound
			in.finite(fmt.Sprintf("the place of bolt %d along x", i+1), b.X, "mm")
			in.finite(fmt.Sprintf("the place of bolt %d along y", i+1), b.Y, "mm")
			in.notNegative(fmt.Sprintf("the area of bolt %d", i+1), b.Area, "mm2")
		}
		if b.Area > 0 {
			withArea++
		}
		for j := range bolts[:i] {
			if apart := math.Hypot(b.X-bolts[j].X, b.Y-bolts[j].Y); !(apart > 1e-3) {
				in.refuse("bolts %d and %d are in one place", j+1, i+1)
			}
		}
	}
	in.must(withArea == 0 || withArea == len(bolts), "%d of the %d bolts have an area: give it for all of them or for none", withArea, len(bolts))
}

// sound tells whether place and area of a bolt are numbers to reckon with.
func (b GroupBolt) sound() bool {
	var in inputs
	in.finite("", b.X, "")
	in.finite("", b.Y, "")
	in.notNegative("", b.Area, "")
	return in.err == nil
}

// Working writes the calculation down.
func (r BoltGroupResult) Working() []working.Step {
	g := r.group
	polarUnit, areaUnit := "mm2", ""
	if g.Bolts[0].Area > 0 {
		polarUnit, areaUnit = "mm4", "mm2"
	}
	steps := []working.Step{
		{Symbol: "xc", Meaning: "centre of the bolts along x", Formula: "sum(A x)/sum(A)", Value: r.centre.X, Unit: "mm", Source: shigley},
		{Symbol: "yc", Meaning: "centre of the bolts along y", Formula: "sum(A y)/sum(A)", Value: r.centre.Y, Unit: "mm", Source: shigley},
		{Symbol: "J", Meaning: "how far the bolts are spread", Formula: "sum(A ((x-xc)^2 + (y-yc)^2))", Value: r.polar, Unit: polarUnit, Source: shigley},
		{Symbol: "Mz", Meaning: "moment of the load about the centre", Formula: "(xp-xc) Py - (yp-yc) Px + M0", Inputs: given("Px", g.Force.X, "N", "Py", g.Force.Y, "N", "xp", g.At.X, "mm", "yp", g.At.Y, "mm", "M0", g.Moment, "N mm"), Value: r.momentAtCentre, Unit: "N mm", Source: shigley},
	}
	for i, f := range r.Bolts {
		b := g.Bolts[i]
		steps = append(steps, working.Step{Symbol: fmt.Sprintf("F%d", i+1), Meaning: fmt.Sprintf("force on bolt %d", i+1),
			Formula: "hypot(A (Px/sum(A) - Mz (y-yc)/J), A (Py/sum(A) + Mz (x-xc)/J))",
			Inputs:  given("x", b.X, "mm", "y", b.Y, "mm", "A", r.areas[i], areaUnit, "Mz", r.momentAtCentre, "N mm", "J", r.polar, polarUnit, "Fx", f.X, "N", "Fy", f.Y, "N"),
			Value:   f.Size(), Unit: "N", Source: shigley})
	}
	return steps
}
