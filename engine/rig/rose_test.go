package rig

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The least gust of all directions is the one at which the margin is used up.
func TestRoseAgreesWithUsedUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Rig{Masthead: 14000}
		for i := range rapid.IntRange(3, 8).Draw(t, "stays") {
			r.Stays = append(r.Stays, Stay{Name: string(rune('a' + i)), Role: InnerForestay, BreakLoad: 40000,
				Line: StayLine{Foot: Point{X: rapid.Float64Range(-6000, 6000).Draw(t, "x"), Y: rapid.Float64Range(100, 2000).Draw(t, "y") * float64(1-2*(i%2))}, Height: rapid.Float64Range(5000, 13900).Draw(t, "h")}})
		}
		demand := Demand{PerSquare: 15000, Gust: 8}
		if rapid.Bool().Draw(t, "rolls") {
			demand.Roll = 5e5
		}
		got, err := Standing{Rig: r, Demand: demand, Steps: []Step{{Attended: true}}}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		s := got.Before
		least, at := math.Inf(1), 0.0
		for deg := 0.0; deg < 360; deg += 0.25 {
			if v := s.UsedUpFrom(deg, s.Wanted); v < least {
				least, at = v, deg
			}
		}
		// The grid can't miss the least by more than half a step allows; a gust of less than
		// a millimetre a second is what rounding leaves of none.
		if least < s.UsedUp*(1-1e-9)-1e-3 || least > s.UsedUp*1.001+1e-3 {
			t.Fatalf("the least of the rose is %g m/s from %g deg, used up at %g", least, at, s.UsedUp)
		}
	})
}
