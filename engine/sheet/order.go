package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// PressOrder is one order in which to make the folds of a strip.
type PressOrder struct {
	Steps []PressStep
	// Turns is how often the part is turned over between steps.
	Turns int
}

// Clear tells whether every step can be made.
func (o PressOrder) Clear() bool {
	return !slices.ContainsFunc(o.Steps, func(s PressStep) bool { return !s.Clear() })
}

// Least is the least clearance of all steps.
func (o PressOrder) Least() float64 {
	least := math.Inf(1)
	for _, s := range o.Steps {
		least = min(least, s.Least())
	}
	return least
}

// mostSkewInProfile is how far a fold line may be turned from square for the part to be
// judged from its side, deg (judgement).
const mostSkewInProfile = 10

// PressOrders tries every order of a strip's folds at a press and gives them all, the
// best first: those that are clear, with the fewest turnings over, the outer folds
// before the inner so that long flats are left to gauge from.
//
// Each fold is followed from flat to 1.03 of its angle, the ones made before at their
// angles and the rest flat, the fold's inside up and its middle under the punch. What
// stands in the way is the bar above the punch's nose, the block of the die below its
// top, and the frame; and the flats beside the fold must reach over the die.
//
// Holds for strips with one to three folds within 10 deg of square. It sees the part
// from the side and knows no backstop. Source: geometry (computed); the margins are
// this project's (judgement). Errors name the fold that is out of reach, and tools that
// are not given.
func PressOrders(s FoldedStrip, tools PressTools) ([]PressOrder, error) {
	if err := s.pressable(tools); err != nil {
		return nil, err
	}
	var orders []PressOrder
	for _, order := range permutations(len(s.Folds)) {
		o, err := s.pressOrder(order, tools)
		if err != nil {
			return nil, err
		}
		orders = append(orders, o)
	}
	slices.SortStableFunc(orders, func(a, b PressOrder) int {
		return cmp.Or(cmp.Compare(obstructed(a), obstructed(b)), cmp.Compare(a.Turns, b.Turns), cmp.Compare(a.inward(len(s.Folds)), b.inward(len(s.Folds))), cmp.Compare(b.Least(), a.Least()))
	})
	return orders, nil
}

// CanBePressed tells whether any order of a strip's folds is clear, as PressOrders finds
// them, and looks no further than the first. Holds, source and errors: PressOrders.
func CanBePressed(s FoldedStrip, tools PressTools) (bool, error) {
	if err := s.pressable(tools); err != nil {
		return false, err
	}
	for _, order := range permutations(len(s.Folds)) {
		o, err := s.pressOrder(order, tools)
		if err != nil || o.Clear() {
			return err == nil, err
		}
	}
	return false, nil
}

// pressable tells why a strip can't be followed through a press at all.
func (s FoldedStrip) pressable(tools PressTools) error {
	if err := tools.check(); err != nil {
		return err
	}
	if _, err := NewFolding(s); err != nil {
		return err
	}
	if len(s.Folds) == 0 {
		return fmt.Errorf("a strip without folds needs no order of them")
	}
	for i, f := range s.Folds {
		if math.Abs(f.Skew) > mostSkewInProfile {
			return fmt.Errorf("%s is turned %.3g deg from square: seen from the side the part does not show what it hits; try it with a card model", foldName(i), f.Skew)
		}
	}
	return nil
}

func obstructed(o PressOrder) int {
	if o.Clear() {
		return 0
	}
	return 1
}

// inward is how late the outer folds come: the step of a fold times how far out it is.
func (o PressOrder) inward(folds int) float64 {
	late := 0.0
	for at, s := range o.Steps {
		late += float64(at) * math.Abs(float64(s.Fold)-float64(folds+1)/2)
	}
	return late
}

func (s FoldedStrip) pressOrder(order []int, tools PressTools) (PressOrder, error) {
	var o PressOrder
	done := make([]bool, len(s.Folds))
	for at, fold := range order {
		step, err := s.pressStep(fold, done, tools)
		if err != nil {
			return o, err
		}
		if at > 0 && step.FaceUp != o.Steps[at-1].FaceUp {
			o.Turns++
		}
		o.Steps = append(o.Steps, step)
		done[fold] = true
	}
	return o, nil
}

// permutations are all orders of n things, the natural one first.
func permutations(n int) [][]int {
	if n == 0 {
		return [][]int{nil}
	}
	var all [][]int
	for first := range n {
		for _, rest := range permutations(n - 1) {
			order := []int{first}
			for _, k := range rest {
				if k >= first {
					k++
				}
				order = append(order, k)
			}
			all = append(all, order)
		}
	}
	return all
}
