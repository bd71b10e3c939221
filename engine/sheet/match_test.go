package sheet

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// bolts are holes of 8.5 mm for bolts of 8 mm.
func bolts(at ...Point) HoleMatch {
	var m HoleMatch
	for _, p := range at {
		m.Holes = append(m.Holes, MatchedHole{New: p, Measured: p, Hole: 8.5, Bolt: 8})
	}
	return m
}

var pattern = []Point{{20, 0}, {120, 8}, {180, -8}, {240, 3}}

// TestMatchFindsThePlace: a part laid anywhere, turned over or not, is found again
// without any miss, and no hole named as lacking.
func TestMatchFindsThePlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		turn := rapid.Float64Range(-179, 179).Draw(t, "turn")
		sin, cos := math.Sincos(radians(turn))
		where := pose{sin, cos, rapid.Bool().Draw(t, "mirrored"), Point{rapid.Float64Range(-500, 500).Draw(t, "x"), rapid.Float64Range(-500, 500).Draw(t, "y")}}
		m := bolts(pattern...)
		m.Mirrored = true
		for i := range m.Holes {
			m.Holes[i].Measured = where.place(m.Holes[i].New)
		}
		r, err := m.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		if r.Root > 1e-9 || r.Verdict != DropsOn || r.Mirrored != where.mirrored || math.Abs(math.Remainder(r.Turn-turn, 360)) > 1e-9 || r.Shift.distance(where.shift) > 1e-9 {
			t.Fatalf("%+v is not %+v", r, where)
		}
	})
}

// TestBestPoseIsBest: no small turn or shift makes the sum of squares smaller.
func TestBestPoseIsBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 8).Draw(t, "points")
		points, targets := make([]Point, n), make([]Point, n)
		draw := func(what string) Point {
			return Point{rapid.Float64Range(-100, 100).Draw(t, what), rapid.Float64Range(-100, 100).Draw(t, what)}
		}
		for i := range points {
			points[i], targets[i] = draw("point"), draw("target")
		}
		best := bestPose(points, targets, nil, rapid.Bool().Draw(t, "mirrored"))
		least := root(best.misses(points, targets))
		for _, change := range []float64{-1e-3, 1e-3} {
			for k := range 3 {
				p := best
				switch k {
				case 0:
					p.shift.X += change
				case 1:
					p.shift.Y += change
				default:
					sin, cos := math.Sincos(math.Atan2(best.sin, best.cos) + change)
					p.sin, p.cos = sin, cos
				}
				if other := root(p.misses(points, targets)); other < least-1e-9*(1+least) {
					t.Fatalf("%g is less than %g", other, least)
				}
			}
		}
	})
}

func TestMatchVerdicts(t *testing.T) {
	m := bolts(pattern...)
	m.Holes[2].Name = "low bolt"
	m.Holes[2].Measured.Y += 1.2
	r, err := m.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	if r.Verdict != NeedsReaming || r.Worst != "low bolt" || r.reamed() != 1 {
		t.Errorf("%+v", r)
	}
	for i, h := range r.Holes {
		if h.Ream > 0 {
			m.Holes[i].Hole = math.Ceil(10*h.Ream) / 10
		}
	}
	if again, _ := m.Reckon(); again.Verdict != DropsOn {
		t.Errorf("reamed as said it is %s: %+v", again.Verdict, again)
	}
	m.Holes[2].Hole, m.Holes[2].Largest, m.Holes[2].Measured.Y = 8.5, 8.6, 6
	if r, _ = m.Reckon(); r.Verdict != DoesNotFit {
		t.Errorf("beyond its largest hole it is %s: %+v", r.Verdict, r.Holes)
	}
}

// TestOneTightHole: least squares alone spreads the miss and refuses; shifted into the
// slack of the wide holes the part drops on.
func TestOneTightHole(t *testing.T) {
	m := bolts(Point{0, 0}, Point{100, 0}, Point{200, 0})
	m.Holes[0].Hole = 8.02
	for i := 1; i < 3; i++ {
		m.Holes[i].Hole, m.Holes[i].Measured.Y = 10, 0.9
	}
	if r, _ := m.Reckon(); r.Verdict != DropsOn || r.Holes[0].Miss > 0.011 {
		t.Errorf("%s: %+v", r.Verdict, r.Holes)
	}
}

// TestFreedom: both holes' clearance counts, and the tolerance of the cut against it.
func TestFreedom(t *testing.T) {
	h := MatchedHole{Hole: 10.5, Other: 11, Bolt: 10, Within: 0.2}
	near(t, "freedom", h.freedom(), 0.25+0.5-0.2, 1e-12)
	h.Other = 0
	near(t, "freedom in a tight hole", h.freedom(), 0.05, 1e-12)
	m := bolts(pattern...)
	for i := range m.Holes {
		m.Holes[i].Within = 0.3
	}
	if r, _ := m.Reckon(); r.Verdict != NeedsReaming || math.Abs(r.Holes[0].Ream-8.6) > 1e-9 {
		t.Errorf("a cut worse than the clearance: %+v", r)
	}
}

func TestMatchRefuses(t *testing.T) {
	for says, change := range map[string]func(*HoleMatch){
		"one hole says nothing":          func(m *HoleMatch) { m.Holes = m.Holes[:1] },
		"hole 2 has a place":             func(m *HoleMatch) { m.Holes[1].New.X = math.NaN() },
		"pin is 7 mm and its bolt":       func(m *HoleMatch) { m.Holes[0].Name, m.Holes[0].Hole = "pin", 7 },
		"what hole 1 meets":              func(m *HoleMatch) { m.Holes[0].Other = 6 },
		"the bolt of hole 3":             func(m *HoleMatch) { m.Holes[2].Bolt = 0 },
		"how far the place of hole 1":    func(m *HoleMatch) { m.Holes[0].Within = -1 },
		"hole 1 may be reamed":           func(m *HoleMatch) { m.Holes[0].Largest = 8 },
		"all holes are in one place":     func(m *HoleMatch) { *m = bolts(Point{1, 1}, Point{1, 1}) },
		"hole 1 is NaN mm and its bolt ": func(m *HoleMatch) { m.Holes[0].Hole = math.NaN() },
	} {
		m := bolts(pattern...)
		change(&m)
		if r, err := m.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v %+v", says, err, r)
		}
	}
}
