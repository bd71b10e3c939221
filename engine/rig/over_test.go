package rig

import (
	"math"
	"testing"
)

// A stay over a spreader holds the mast by its lowest part: where that part, drawn on,
// meets the mast's line, a straight stay from there has the same moment.
func TestOverSpreader(t *testing.T) {
	foot, tip := Point{Y: 1450, Z: 1750}, Point{Y: 1050, Z: 7300}
	meets := foot.Z + (tip.Z-foot.Z)*foot.Y/(foot.Y-tip.Y)
	over, straight := StayLine{Foot: foot, Height: 13600, Over: tip}.moment(), StayLine{Foot: foot, Height: meets}.moment()
	if math.Abs(over.y-straight.y) > 1e-9*straight.y || over.x != 0 {
		t.Errorf("over the spreader %v, drawn on %v", over, straight)
	}
}

// The moment about the heel is that of all parts together: the pull at the mast, and
// the spreader's thrust, which comes from both parts at its tip.
func TestOverSpreaderIsStatics(t *testing.T) {
	foot, tip, height := Point{X: -200, Y: 1450, Z: 1750}, Point{X: -150, Y: 1050, Z: 7300}, 13600.0
	unit := func(from, to Point) (v [3]float64) {
		v = [3]float64{to.X - from.X, to.Y - from.Y, to.Z - from.Z}
		size := math.Sqrt(v[0]*v[0] + v[1]*v[1] + v[2]*v[2])
		for i := range v {
			v[i] /= size
		}
		return v
	}
	up, down := unit(Point{Z: height}, tip), unit(tip, foot)
	moment := func(at Point, f [3]float64) (x, y float64) {
		return at.Z*f[0] - at.X*f[2], at.Z*f[1] - at.Y*f[2]
	}
	mx, my := moment(Point{Z: height}, up)
	var thrust [3]float64
	for i := range thrust {
		thrust[i] = down[i] - up[i]
	}
	sx, sy := moment(tip, thrust)
	got := StayLine{Foot: foot, Height: height, Over: tip}.moment()
	if math.Abs(got.x-mx-sx) > 1e-6 || math.Abs(got.y-my-sy) > 1e-6 {
		t.Errorf("moment %v, of the parts %g, %g", got, mx+sx, my+sy)
	}
}

func TestOverIsRefused(t *testing.T) {
	for _, s := range []StayLine{
		{Foot: Point{Y: 1450, Z: 1750}, Height: 13600, Over: Point{Y: 1050, Z: 14000}},
		{Foot: Point{Y: 1450, Z: 1750}, Height: 13600, Over: Point{Y: 1050, Z: 1000}},
		{Foot: Point{Y: 1450, Z: 1750}, Height: 13600, Over: Point{Z: 7000}},
		{Foot: Point{Y: 1450, Z: 1750}, Height: 13600, Over: Point{Y: math.NaN(), Z: 7000}},
	} {
		if r, err := s.Reckon(); err == nil {
			t.Errorf("%v gives %v", s, r)
		}
	}
}
