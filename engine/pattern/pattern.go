// Package pattern makes of a plan's fittings the parts that a shop cuts and folds: the
// flat with its holes and fold lines, the order of the folds at the press, what metal
// they are of, and how many of each are made. It judges nothing; that is for the rules.
package pattern

import (
	"slices"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/sheet"
)

// Part is one pattern: a flat that one cutting program serves, with all copies of it.
type Part struct {
	// Name is the fitting's id without its side, or what Named made of it where several
	// have that; Kind and State are as the plan has them.
	Name, Kind, State string
	// Copies are the fittings that are made after it; the first is as Flat lies.
	Copies []Copy
	// Flat is what is cut: holes that are made later are not in it.
	Flat sheet.Flat
	// Folds stand in their order from the loaded end.
	Folds []Fold
	// Orders are the orders of the folds at the shop's press, the best first. Where there
	// is none, PressWhy says why.
	Orders   []sheet.PressOrder
	PressWhy string
	// Rating is what the shop's press is rated to push with, N; NaN if the plan does not say.
	Rating float64
	// Holes are all holes of the part, whenever they are made.
	Holes []Hole
	Metal Metal
	// Grain is how fold lines run to the rolling: across, along, or "" if nobody says.
	// Follows says what the folds are made to: old part, wire, or "".
	Grain, Finish, Follows string
	// Old is what was measured on the old part, laid flat; nil if nothing was.
	Old *sheet.Development
	// Landing is how the part meets what is there; nil if the plan does not tell of it.
	Landing *Landing
	// Warnings are sentences to stand on the drawing, Differ those that say in what copies
	// differ that share a flat.
	Warnings, Differ []string

	// At is where the plan has the part.
	At finding.Place
}

// Quantity is how many there are, those that are held among them.
func (p Part) Quantity() int { return len(p.Copies) }

// Free are the copies that nothing holds up.
func (p Part) Free() (free []Copy) {
	for _, c := range p.Copies {
		if len(c.Held) == 0 {
			free = append(free, c)
		}
	}
	return free
}

// Hand says how a copy belongs to the flat that is drawn.
type Hand string

const (
	// AsDrawn is the part as it is drawn.
	AsDrawn Hand = "as drawn"
	// OtherHand is its mirror image: the same blank turned over, folded the same way.
	OtherHand Hand = "the other hand"
	// EitherHand is a part without a hand.
	EitherHand Hand = "either hand"
)

// Copy is one fitting that is made after a pattern.
type Copy struct {
	// Boat is the name of the boat, Plan its file, Fitting the fitting's id, Side its side.
	Boat, Plan, Fitting, Side string
	Hand                      Hand
	// Held are the sentences that say why it is not to be cut.
	Held []string
}

// name is the boat's fitting.
func (c Copy) name() string { return strings.TrimSpace(c.Boat + " " + c.Fitting) }

// Metal is what the part is cut from.
type Metal struct{ Name, Condition, Certificate, Heat string }

// Fold is a fold of the part.
type Fold struct {
	Name string
	sheet.Fold
	// Bend are its allowance and setbacks, Press the angles to press to; nil where they
	// are not known.
	Bend  *sheet.BendResult
	Press *PressAngles
	// Die is the opening of the die, mm; ForceLeast and ForceMost are between what the
	// press pushes, N. NaN where it is not known.
	Die, ForceLeast, ForceMost float64
}

// PressAngles are the angles to press to, deg: where to begin, and what to be ready for.
type PressAngles struct{ Least, Likely, Most float64 }

// Making says when a hole is made.
type Making string

const (
	// Cut is a hole in the flat.
	Cut Making = "cut"
	// AfterFolding is a hole so near a fold that the die would drag it out of round.
	AfterFolding Making = "after folding"
	// AtTheBoat is a hole that is drilled through what is there.
	AtTheBoat Making = "at the boat"
)

// Hole is a hole of the part.
type Hole struct {
	sheet.Hole
	// Called is what the plan calls it, "" for nothing.
	Called string
	// Role is pin or bolt, Stay the id of the pin's stay where the plan names it, Fastener
	// what goes through it.
	Role, Stay, Fastener string
	Made                 Making
	// Placed tells whether the plan has its place; one that is drilled at the boat need
	// have none.
	Placed bool
}

// Landing is how the bolt holes meet those that are there. Lengths in mm.
type Landing struct {
	// Worst is the name of the hole that lacks most; Miss how far it is off, Clearance how
	// far it may be. LeastSure is the name of the hole whose place is known least well
	// beside its Play, Uncertainty within what it is known in 19 cases of 20, and Dominated
	// what that mostly comes from. Meet is how many holes have to meet one that is there.
	// NaN and "" where it can't be told.
	Worst, LeastSure, Dominated              string
	Miss, Clearance, Uncertainty, Play, Meet float64
}

// flats are the kinds of fittings that are no plate.
var noPlate = []string{"u-bolt", "tie rod"}

// Of makes a pattern for every plate of a plan that is not kept, one for each side. What a
// pattern can't do without comes back as a problem at its place, and the part is left out.
// The facts must be those of the plan.
func Of(p *plan.Plan, facts *fact.Facts) ([]Part, []finding.Problem) {
	var parts []Part
	var problems []finding.Problem
	for _, f := range p.Fittings {
		if f.State.Value == "kept" || slices.Contains(noPlate, f.Kind.Value) {
			continue
		}
		whole, old := f.Completed()
		missing := gaps(whole)
		if len(missing) > 0 {
			problems = append(problems, missing...)
			continue
		}
		part, problem := one(p, &whole, old, facts)
		if problem != nil {
			problems = append(problems, *problem)
			continue
		}
		parts = append(parts, bothHands(part, f)...)
	}
	return parts, problems
}

// bothHands makes the copies of a part that stands on both sides: the plan describes the
// one to port.
func bothHands(part Part, f plan.Fitting) []Part {
	ids := plan.SidedIDs(f.ID.Value, f.Side.Value)
	part.Copies[0].Fitting = ids[0]
	if len(ids) == 1 {
		part.Copies[0].Side = f.Side.Value
		return []Part{part}
	}
	part.Copies[0].Side = plan.Port
	other := part
	other.Flat = part.Flat.Mirrored()
	other.Holes = slices.Clone(part.Holes)
	for i := range other.Holes {
		h := &other.Holes[i]
		h.At.Y, h.Turn = -h.At.Y, -h.Turn
	}
	other.Folds = slices.Clone(part.Folds)
	for i := range other.Folds {
		other.Folds[i].Fold = other.Flat.Folds[i]
	}
	other.Copies = []Copy{part.Copies[0]}
	other.Copies[0].Fitting, other.Copies[0].Side = ids[1], plan.Starboard
	return []Part{part, other}
}
