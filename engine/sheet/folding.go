package sheet

import (
	"fmt"
	"math"
)

// Folding is the exact map between a flat strip and the strip folded.
//
// Equation, for one fold in the flat as it lies before it, with n square to the fold
// line, s the distance beyond its middle line, BA its allowance, rA the radius of face
// A in it (R if it folds towards A, else R + t) and g = 1 or -1 for towards A or away:
//
//	s <= -BA/2: unchanged
//	else        turn = angle min(1, (s + BA/2)/BA),  x = max(0, s - BA/2)
//	            foot on the entry line + n (-(z - g rA) sin(turn) g + x cos(turn))
//	            + up (g rA + (z - g rA) cos(turn) + x sin(turn) g),  z = -depth
//
// and each further fold in the flat as the folds before it have turned it.
//
// Holds for folds that stand apart over the strip's whole width; the thickness stays
// what it is, so thinning and the bulge at the edges are not in it. Source: geometry
// (computed).
type Folding struct {
	strip  FoldedStrip
	folds  []placedFold
	behind rigid
}

// placedFold is a fold with what the map needs of it.
type placedFold struct {
	Fold
	// normal is square to the fold line, forward.
	normal                Point
	half, turn, radius, g float64
	// before moves what stands before the fold.
	before rigid
}

// NewFolding checks a strip and lays out its map. Errors name the fold.
func NewFolding(s FoldedStrip) (*Folding, error) {
	var in inputs
	in.positive("the thickness", s.Thickness, "mm")
	in.positive("the width of the strip", s.Width, "mm")
	in.positive("the length of the flat", s.Length, "mm")
	in.must(len(s.Folds) <= mostFolds, "a strip with %d folds is beyond this layout, which takes up to %d", len(s.Folds), mostFolds)
	if in.err != nil {
		return nil, in.err
	}
	for i, fold := range s.Folds {
		if err := fold.check(foldName(i), s.Thickness); err != nil {
			return nil, err
		}
	}
	f := s.folding()
	return f, f.checkApart()
}

// folding lays out the map of a strip that has been checked.
func (s FoldedStrip) folding() *Folding {
	f := &Folding{strip: s, behind: still}
	for _, fold := range s.Folds {
		p := place(fold, s.Thickness)
		p.before = f.behind
		f.behind = f.behind.after(p.turning())
		f.folds = append(f.folds, p)
	}
	return f
}

func place(fold Fold, thickness float64) placedFold {
	sin, cos := math.Sincos(radians(fold.Skew))
	p := placedFold{Fold: fold, normal: Point{cos, -sin}, half: fold.allowance(thickness) * cos / 2, turn: radians(math.Abs(fold.Angle)), radius: fold.Radius, g: fold.towardsA()}
	if p.g < 0 {
		p.radius += thickness
	}
	return p
}

// beyond is how far a point lies beyond the middle line of the fold.
func (p placedFold) beyond(at Point) float64 { return at.minus(Point{X: p.At}).dot(p.normal) }

// bendPoint carries a point through the fold alone.
func (p placedFold) bendPoint(at Point, depth float64) Point3 {
	in := p.beyond(at) + p.half
	if in <= 0 {
		return Point3{at.X, at.Y, -depth}
	}
	sin, cos := math.Sincos(p.turn * min(1, in/(2*p.half)))
	x, z := max(0, in-2*p.half), -depth-p.g*p.radius
	foot := at.minus(p.normal.times(in))
	out := foot.plus(p.normal.times(x*cos - z*sin*p.g))
	return Point3{out.X, out.Y, p.g*p.radius + z*cos + x*sin*p.g}
}

// turning is how the fold moves all that stands behind it.
func (p placedFold) turning() rigid {
	exit := Point{X: p.At}.plus(p.normal.times(p.half))
	axis := Point3{-p.normal.left().X, -p.normal.left().Y, 0}
	move := about(axis, p.turn*p.g)
	move.origin = p.bendPoint(exit, 0).minus(move.turn(Point3{X: exit.X, Y: exit.Y}))
	return move
}

// touch is how far folds that touch may seem to overlap by rounding, mm.
const touch = 1e-9

// checkApart refuses folds that reach into each other or over an end of the strip, at
// either edge of it.
func (f *Folding) checkApart() error {
	s := f.strip
	for _, edge := range []float64{-s.Width / 2, s.Width / 2} {
		end, what := 0.0, "the strip"
		for i, p := range f.folds {
			entry, exit := p.along(edge, -p.half), p.along(edge, p.half)
			if !(entry >= end-touch) {
				if i == 0 {
					return fmt.Errorf("%s begins %.3g mm before %s does", foldName(i), end-entry, what)
				}
				return fmt.Errorf("%s begins %.3g mm before %s has ended", foldName(i), end-entry, what)
			}
			end, what = exit, foldName(i)
		}
		if !(end <= s.Length+touch) {
			return fmt.Errorf("%s ends %.3g mm beyond the strip", what, end-s.Length)
		}
	}
	return nil
}

// along is X of the line that lies a distance beyond the fold's middle, at a Y.
func (p placedFold) along(y, beyond float64) float64 {
	return p.At + (beyond-y*p.normal.Y)/p.normal.X
}

// Strip is the strip that is folded.
func (f *Folding) Strip() FoldedStrip { return f.strip }

// Fold gives where a point of the flat goes. Depth counts from face A into the metal.
func (f *Folding) Fold(at Point, depth float64) Point3 {
	for _, p := range f.folds {
		if p.beyond(at) <= p.half {
			return p.before.place(p.bendPoint(at, depth))
		}
	}
	return f.behind.place(Point3{at.X, at.Y, -depth})
}

// Direction is where the strip points behind all folds, and the way its face A looks.
func (f *Folding) Direction() (along, face Point3) { return f.behind.x, f.behind.z }

// InFold tells in which fold a point of the flat lies, counted from 1; 0 for none.
func (f *Folding) InFold(at Point) int {
	for i, p := range f.folds {
		if math.Abs(p.beyond(at)) < p.half {
			return i + 1
		}
	}
	return 0
}
