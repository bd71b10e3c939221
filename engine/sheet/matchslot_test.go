package sheet

import (
	"math"
	"testing"
)

// TestSlotTakesItsLength: an oval hole lets its bolt be off along its length, and not
// across it, however the part is turned.
func TestSlotTakesItsLength(t *testing.T) {
	for _, turned := range []float64{0, 33, -120} {
		sin, cos := math.Sincos(radians(turned))
		where := pose{sin, cos, false, Point{40, -7}}
		for _, of := range []struct {
			off, turn, slack float64
			verdict          MatchVerdict
		}{{3, 0, 3, DropsOn}, {3, 0, 2, NeedsReaming}, {3, 90, 3, NeedsReaming}, {3, 0, 0, NeedsReaming}, {-3, 180, 3, DropsOn}} {
			m := bolts(pattern...)
			m.Holes[2].Slack, m.Holes[2].Turn = of.slack, of.turn
			for i := range m.Holes {
				at := m.Holes[i].New
				if i == 2 {
					at.X += of.off
				}
				m.Holes[i].Measured = where.place(at)
			}
			r, err := m.Reckon()
			if err != nil {
				t.Fatal(err)
			}
			if r.Verdict != of.verdict {
				t.Errorf("part at %g deg, %+v: %s, worst %s", turned, of, r.Verdict, r.Worst)
			}
		}
	}
	for _, bad := range []MatchedHole{{Slack: -1}, {Slack: math.NaN()}, {Slack: 1, Turn: math.Inf(1)}} {
		m := bolts(pattern...)
		m.Holes[1].Slack, m.Holes[1].Turn = bad.Slack, bad.Turn
		if _, err := m.Reckon(); err == nil {
			t.Errorf("a hole with %g mm of slack at %g deg is taken", bad.Slack, bad.Turn)
		}
	}
}
