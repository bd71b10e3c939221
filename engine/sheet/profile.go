package sheet

import (
	"fmt"
	"math"
)

// PressTools are the press and the tools that stand in a part's way. Lengths in mm; all
// are asked for.
type PressTools struct {
	// Die is the opening of the die, Block the width of the block it is cut into.
	Die, Block float64
	// Punch is the width of the bar above the punch's nose, Nose how far the nose reaches
	// below the bar.
	Punch, Nose float64
	// Room is the height above the die in which nothing of the frame stands.
	Room float64
}

func (p PressTools) check() error {
	var in inputs
	in.positive("the opening of the die", p.Die, "mm")
	in.positive("the width of the die's block", p.Block, "mm")
	in.positive("the width of the punch", p.Punch, "mm")
	in.positive("the height of the punch's nose", p.Nose, "mm")
	in.positive("the room above the die", p.Room, "mm")
	in.must(p.Block > p.Die, "a die of %g mm is not cut into a block of %g mm", p.Die, p.Block)
	return in.err
}

// PressStep is one fold made at the press, with what is left of the way, mm: less than
// pressMargin counts as a collision.
type PressStep struct {
	// Fold is the fold that is made, counted from 1. FaceUp is the face that lies towards
	// the punch.
	Fold   int
	FaceUp Face
	// Punch, Die and Room are the least clearances to punch, die block and frame while the
	// fold is pressed, at the most the length of the strip; Flange is how much longer the
	// shorter flat beside it is than the die needs.
	Punch, Die, Room, Flange float64
}

// pressMargin is the clearance that a step needs, mm: profiles are sampled every
// millimetre, and no part is gauged better (judgement).
const pressMargin = 1.0

// Clear tells whether the step can be made.
func (s PressStep) Clear() bool { return s.Least() >= pressMargin && s.Flange >= 0 }

// Least is the least clearance of the step.
func (s PressStep) Least() float64 { return min(s.Punch, s.Die, s.Room) }

// overPressed is how many times its angle a fold is pressed to, since it springs back
// when the press lets go: shallow folds of annealed stainless of the usual radius by some
// 1.5 per cent of their angle, and as much again in reserve (judgement).
const overPressed = 1.03

// pressStep follows one fold from flat to a little beyond its angle, with the folds in
// done finished and the others flat. The part is looked at from the side, the fold's
// inside up and its middle under the punch.
func (s FoldedStrip) pressStep(fold int, done []bool, tools PressTools) (PressStep, error) {
	step := PressStep{Fold: fold + 1, FaceUp: FaceA, Punch: s.Length, Die: s.Length, Room: s.Length}
	f := s.Folds[fold]
	if f.Angle < 0 {
		step.FaceUp = FaceB
	}
	var err error
	if step.Flange, err = s.flangeSpare(fold, done, tools); err != nil {
		return step, err
	}
	const shares = 12
	for k := range shares + 1 {
		turned := make([]float64, len(s.Folds))
		for i := range turned {
			if done[i] {
				turned[i] = 1
			}
		}
		turned[fold] = overPressed * float64(k) / shares
		p := s.profile(turned, fold)
		step.Punch = min(step.Punch, p.toPunch(tools))
		die, room := p.toDie(tools)
		step.Die, step.Room = min(step.Die, die), min(step.Room, room)
	}
	return step, nil
}

// flangeSpare is how much longer the flat metal beside a fold is, on the shorter side,
// than what the die needs to carry it.
func (s FoldedStrip) flangeSpare(fold int, done []bool, tools PressTools) (float64, error) {
	f := s.Folds[fold]
	die, err := Die{Thickness: s.Thickness, Angle: math.Abs(f.Angle), Given: tools.Die}.Reckon()
	if err != nil {
		return 0, fmt.Errorf("%s: %w", foldName(fold), err)
	}
	before, behind := 0.0, s.Length
	for i, o := range s.Folds {
		if half := o.allowance(s.Thickness) / 2; done[i] && i < fold {
			before = max(before, o.At+half)
		} else if done[i] && i > fold {
			behind = min(behind, o.At-half)
		}
	}
	straight := f
	straight.Skew = 0
	needed := die.Flange - straight.setback(s.Thickness) + straight.allowance(s.Thickness)/2
	return min(f.At-before, behind-f.At) - needed, nil
}

// resting is how far the underside may seem to sink into the die by rounding, mm: far
// below what is gauged, far above what a float loses (judgement).
const resting = 1e-3

// profile is the part from the side, in the frame of the fold that is being made: X
// across the die, Y up from the inside of the fold.
type profile struct {
	// points are on both faces, a millimetre apart.
	points []Point
	// turn and radius are those of the fold as far as it is pressed.
	thickness, turn, radius float64
}

// profile draws the part with its folds turned to shares of their angles. A fold that is
// on its way keeps its allowance, so its radius is the wider.
func (s FoldedStrip) profile(turned []float64, fold int) profile {
	p := profile{thickness: s.Thickness}
	part := s
	part.Folds = nil
	at := s.Folds[fold].At
	for i, f := range s.Folds {
		f.Skew = 0
		allowance := f.allowance(s.Thickness)
		f.K = f.neutral(s.Thickness)
		if math.Abs(turned[i]*f.Angle) < 1e-3 {
			continue
		}
		f.Angle *= turned[i]
		f.Radius = allowance/radians(math.Abs(f.Angle)) - f.K*s.Thickness
		if i == fold {
			p.turn, p.radius = radians(math.Abs(f.Angle)), f.Radius
		}
		part.Folds = append(part.Folds, f)
	}
	folding := part.folding()
	inside, outside := folding.Fold(Point{X: at}, 0), folding.Fold(Point{X: at}, s.Thickness)
	if s.Folds[fold].Angle < 0 {
		inside, outside = outside, inside
	}
	origin := Point{inside.X, inside.Z}
	up := origin.minus(Point{outside.X, outside.Z}).times(1 / s.Thickness)
	n := int(math.Ceil(s.Length))
	p.points = make([]Point, 0, 2*(n+1))
	for i := range n + 1 {
		for _, depth := range []float64{0, s.Thickness} {
			x := folding.Fold(Point{X: s.Length * float64(i) / float64(n)}, depth)
			d := Point{x.X, x.Z}.minus(origin)
			p.points = append(p.points, Point{up.cross(d), up.dot(d)})
		}
	}
	return p
}

// toPunch is the least way from the part to the bar above the nose, sideways.
func (p profile) toPunch(tools PressTools) float64 {
	least := math.Inf(1)
	for _, at := range p.points {
		if at.Y > tools.Nose {
			least = min(least, math.Abs(at.X)-tools.Punch/2)
		}
	}
	return least
}

// toDie is the least way from the part to the block below and to the frame above. The
// die's top is where the outside of the part lies on its shoulders.
func (p profile) toDie(tools PressTools) (die, room float64) {
	top := p.restsAt(tools.Die / 2)
	die, room = math.Inf(1), math.Inf(1)
	for _, at := range p.points {
		room = min(room, tools.Room-(at.Y-top))
		// What lies on the shoulders is no collision.
		if top-at.Y > resting && math.Abs(at.X) > tools.Die/2 {
			die = min(die, math.Abs(at.X)-tools.Block/2)
		}
	}
	return die, room
}

// restsAt is the height of the part's underside over the shoulders of the die: that of
// the flats beside the fold, or of its outer arc if that is wider than the die.
func (p profile) restsAt(shoulder float64) float64 {
	if p.turn == 0 {
		return -p.thickness
	}
	outer, half := p.radius+p.thickness, p.turn/2
	if shoulder < outer*math.Sin(half) {
		return p.radius - math.Sqrt(outer*outer-shoulder*shoulder)
	}
	return p.radius - outer/math.Cos(half) + shoulder*math.Tan(half)
}
