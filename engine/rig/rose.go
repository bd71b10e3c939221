package rig

import "math"

// UsedUpFrom is the gust, m/s, that uses a margin up when it blows from a direction in
// deg, 0 from ahead, 90 from port, while a roll to either side comes with it; 0 where
// the roll alone does.
//
// Equation, over the normals p of the faces of what the set can hold:
//
//	c V^2 = min over p with d . p > 0 of ((h(p) + Mp)/wanted - Mr |p_y|)/(d . p)
//
// with d the way that the mast is held against: towards the wind. The least over all
// directions is State.UsedUp for the margin that is wanted.
func (s *State) UsedUpFrom(deg, wanted float64) float64 {
	into := toward(deg)
	square := math.Inf(1)
	s.push.eachNormal(s.m, func(p vector, h, _ float64) {
		size := p.size()
		left := (h/size+s.push.partners)/wanted - s.push.roll*math.Abs(p.y)/size
		if left <= 0 && math.Abs(p.y) > 0 && s.push.roll > 0 {
			square = 0 // the roll alone does it, wherever the wind is
			return
		}
		if across := into.dot(p) / size; across > alike {
			square = min(square, max(0, left)/(s.perSquare*across))
		}
	})
	// Stays that all lead one way have no face that looks at a wind from right ahead of
	// or behind them: nothing is counted on there.
	if math.IsInf(square, 1) {
		square = max(0, s.push.partners/wanted-s.push.roll) / s.perSquare
	}
	return math.Sqrt(square)
}
