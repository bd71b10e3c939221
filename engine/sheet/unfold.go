package sheet

import (
	"fmt"
	"math"
)

// unfoldWithin is how far a point may lie off the metal and still count as on it, mm.
const unfoldWithin = 1e-6

// Unfold gives where a point of the folded strip lies in the flat, and how deep below
// face A. It is the inverse of Fold to 1e-9 mm. Errors: a point that is not in the
// metal, with how far it is off.
func (f *Folding) Unfold(x Point3) (Point, float64, error) {
	if !x.finite() {
		return Point{}, 0, fmt.Errorf("a point of the folded strip is not finite: %v", x)
	}
	at, depth, off := f.Nearest(x)
	if off > unfoldWithin {
		return Point{}, 0, fmt.Errorf("the point (%.4g, %.4g, %.4g) mm lies %.3g mm off the metal", x.X, x.Y, x.Z, off)
	}
	return at, depth, nil
}

// Nearest is Unfold for a measured point that need not lie in the metal exactly: the
// place in the flat that it stands for, and how far at the most it lies outside the
// bounds of the leg or fold that it is given to.
func (f *Folding) Nearest(x Point3) (at Point, depth, off float64) {
	off = math.Inf(1)
	take := func(p Point, d, o float64) {
		if o < off {
			at, depth, off = p, d, o
		}
	}
	for i := range len(f.folds) + 1 {
		take(f.onLeg(i, x))
		if i < len(f.folds) {
			take(f.inFold(i, x))
		}
	}
	return at, depth, off
}

// onLeg takes a point as one of the flat leg before fold i, or behind all folds.
func (f *Folding) onLeg(i int, x Point3) (Point, float64, float64) {
	move := f.behind
	if i < len(f.folds) {
		move = f.folds[i].before
	}
	p := move.back(x)
	at, depth := Point{p.X, p.Y}, -p.Z
	off := max(f.offSheet(at, depth), 0)
	if i > 0 {
		off = max(off, f.folds[i-1].half-f.folds[i-1].beyond(at))
	}
	if i < len(f.folds) {
		off = max(off, f.folds[i].beyond(at)+f.folds[i].half)
	}
	return at, depth, off
}

// inFold takes a point as one of the curved metal of fold i.
func (f *Folding) inFold(i int, x Point3) (Point, float64, float64) {
	p := f.folds[i]
	local := p.before.back(x)
	flat := Point{local.X, local.Y}
	in, z := p.beyond(flat)+p.half, local.Z-p.g*p.radius
	reach, turn := math.Hypot(in, z), math.Atan2(in, -z*p.g)
	at := flat.plus(p.normal.times(turn/p.turn*2*p.half - in))
	depth := (reach - p.radius) * p.g
	off := max(f.offSheet(at, depth), -turn*reach, (turn-p.turn)*reach, 0)
	return at, depth, off
}

// offSheet is how far a place lies outside the bounds of the flat.
func (f *Folding) offSheet(at Point, depth float64) float64 {
	s := f.strip
	return max(-depth, depth-s.Thickness, -at.X, at.X-s.Length, math.Abs(at.Y)-s.Width/2)
}
