package fact

import (
	"fmt"
	"math"

	"chainwale/engine/plan"
	"chainwale/engine/sheet"
	"chainwale/engine/working"
)

// offWire works out how far the wire stands off the flat of the loaded leg, as the folds
// turn it: the angle that bends the plate, and that folds can mend. In its own plane the
// leg lets the wire swing on the pin.
func (b *builder) offWire(m *matchOf, side side) {
	n, p := m.match, m.plan
	l := p.Lies
	from := amounts(l.Along.X, l.Along.Y, l.Along.Z, l.Face.X, l.Face.Y, l.Face.Z)
	for _, f := range p.Folds {
		from = append(from, amounts(f.Along, f.Angle, f.Radius)...)
	}
	var wires []sheet.Point3
	for _, landing := range b.facts.Landings {
		if landing.Fitting != n.Fitting {
			continue
		}
		s := landing.Stay.plan
		from = append(from, amounts(s.Lower.X, s.Lower.Y, s.Lower.Z, s.Upper.X, s.Upper.Y, s.Upper.Z)...)
		wires = append(wires, wireOf(s, p, side))
	}
	if len(wires) == 0 {
		n.OffWire.WouldStand(l.At)
		n.OffWire.Refuse("no stay lands on it")
		return
	}
	reckon(&n.OffWire, from, func() (formula[offWireResult], error) {
		strip, ok, err := p.Strip()
		if err == nil && !ok {
			err = fmt.Errorf("the flat is not known whole")
		}
		return offWireOf{strip, point3(l.Along), point3(l.Face), wires}, err
	}, func(r offWireResult) float64 { return r.worst })
}

// wireOf is where a wire leads from its lower pin, as the plan describes the fitting: to
// port where it stands for both.
func wireOf(s *plan.Stay, p *plan.Fitting, side side) sheet.Point3 {
	d := sheet.Point3{X: s.Upper.X.Value - s.Lower.X.Value, Y: s.Upper.Y.Value - s.Lower.Y.Value, Z: s.Upper.Z.Value - s.Lower.Z.Value}
	ours := s.Side.Value == "both" && p.Side.Value == "starboard"
	theirs := s.Side.Value == "starboard" && p.Side.Value == "both" && side.name == "starboard"
	if ours || theirs {
		d.Y = -d.Y
	}
	return d
}

func point3(p plan.Point) sheet.Point3 {
	return sheet.Point3{X: p.X.Value, Y: p.Y.Value, Z: p.Z.Value}
}

// offWireOf are a folded strip, how its bolted leg lies, and where wires lead.
type offWireOf struct {
	strip       sheet.FoldedStrip
	along, face sheet.Point3
	wires       []sheet.Point3
}

type offWireResult struct {
	off   []float64
	worst float64
	face  sheet.Point3
}

// Reckon carries the face of the bolted leg back through the folds to the loaded leg.
//
// Equation: with D the axes of the leg behind all folds in those of the loaded leg, and B
// the same axes on the boat, the loaded leg's face lies along B D^T (0, 0, 1), and a wire
// w stands asin(w . face) off its flat.
func (o offWireOf) Reckon() (offWireResult, error) {
	var r offWireResult
	folding, err := sheet.NewFolding(o.strip)
	if err != nil {
		return r, err
	}
	down, face, ok := square(times(o.along, -1), o.face)
	if !ok {
		return r, fmt.Errorf("lies: face is not square to along")
	}
	x, z := folding.Direction()
	across, side := cross(face, down), cross(z, x)
	// The loaded leg's face in the axes of the bolted one, and so on the boat.
	r.face = plus(plus(times(down, x.Z), times(across, side.Z)), times(face, z.Z))
	for _, w := range o.wires {
		size := math.Sqrt(dot(w, w))
		if !(size > 0) {
			return r, fmt.Errorf("the wire has no length")
		}
		off := math.Asin(abs(dot(w, r.face))/size) * 180 / math.Pi
		r.off = append(r.off, off)
		r.worst = max(r.worst, off)
	}
	return r, nil
}

// Working writes it down.
func (r offWireResult) Working() []working.Step {
	source := working.Source{Title: "geometry", As: working.Computed}
	var steps []working.Step
	for _, axis := range []struct {
		name  string
		value float64
	}{{"x", r.face.X}, {"y", r.face.Y}, {"z", r.face.Z}} {
		steps = append(steps, working.Step{Symbol: "n" + axis.name, Meaning: "face A of the loaded leg, on the boat", Formula: "the bolted leg's face, turned back through the folds", Value: axis.value, Source: source})
	}
	for _, off := range r.off {
		steps = append(steps, working.Step{Symbol: "off", Meaning: "wire off the flat of the loaded leg", Formula: "asin(|w . n|/|w|)", Value: off, Unit: "deg", Source: source})
	}
	return steps
}

// leastSquare is how far off square two directions may have been read, as a cosine: 5 deg
// (judgement).
const leastSquare = 0.0872

// square makes two directions of length one and the second square to the first; ok is
// false if they were read too far off square.
func square(a, b sheet.Point3) (along, face sheet.Point3, ok bool) {
	sizeA, sizeB := math.Sqrt(dot(a, a)), math.Sqrt(dot(b, b))
	if !(sizeA > 0 && sizeB > 0) {
		return a, b, false
	}
	along, face = times(a, 1/sizeA), times(b, 1/sizeB)
	off := dot(along, face)
	face = plus(face, times(along, -off))
	return along, times(face, 1/math.Sqrt(dot(face, face))), abs(off) <= leastSquare
}

func times(p sheet.Point3, k float64) sheet.Point3 {
	return sheet.Point3{X: k * p.X, Y: k * p.Y, Z: k * p.Z}
}
func plus(a, b sheet.Point3) sheet.Point3 {
	return sheet.Point3{X: a.X + b.X, Y: a.Y + b.Y, Z: a.Z + b.Z}
}
func dot(a, b sheet.Point3) float64 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }
func cross(a, b sheet.Point3) sheet.Point3 {
	return sheet.Point3{X: a.Y*b.Z - a.Z*b.Y, Y: a.Z*b.X - a.X*b.Z, Z: a.X*b.Y - a.Y*b.X}
}
