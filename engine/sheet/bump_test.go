package sheet

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

var bumping = Bumping{Die: 63, Shoulder: 5, Thickness: 8, Radius: 16, Stroke: 0.8, Target: 18, Springback: 2}

// TestNeverBeyond: over presses that fold faster or slower than predicted, with slack
// and any springback, the angle comes near and never passes.
func TestNeverBeyond(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := Bumping{Die: 63, Shoulder: 5, Thickness: 8, Radius: 16, Stroke: rapid.Float64Range(0.3, 1.3).Draw(t, "stroke"),
			Target: rapid.Float64Range(5, 60).Draw(t, "target"), Springback: rapid.Float64Range(0, 3).Draw(t, "least springback")}
		faster := rapid.Float64Range(0.5, 1.3).Draw(t, "faster")
		slack := rapid.Float64Range(0, 4).Draw(t, "slack")
		opens := b.Springback + rapid.Float64Range(0, 6).Draw(t, "springback")
		// The press: the ram goes on, less its slack, and the fold opens again.
		left := func(strokes float64) float64 {
			travel := max(0, strokes-slack) * b.Stroke * faster
			low, high := 0.0, 119.0
			for range 60 {
				mid := (low + high) / 2
				if r, err := b.travel(mid); err != nil || r.Travel > travel {
					high = mid
				} else {
					low = mid
				}
			}
			return max(0, low-opens)
		}
		var readings []Bumped
		strokes := 0.0
		for range 200 {
			step, err := b.Next(readings)
			if err != nil {
				t.Fatal(err)
			}
			if step.Done {
				last := readings[len(readings)-1].Angle
				if last > b.Target+1e-9 || strings.Contains(step.Why, "beyond:") {
					t.Fatalf("%g after %+v", last, readings)
				}
				most := max(nearEnough, vernier*firstReserve*b.ahead(last)*1.2*max(1, faster)) + 1e-9
				if b.Target-last > most {
					t.Fatalf("stopped %g short: %s after %+v", b.Target-last, step.Why, readings)
				}
				return
			}
			if q := step.Strokes * 4; step.Strokes <= 0 || q != math.Floor(q) {
				t.Fatalf("%g strokes", step.Strokes)
			}
			strokes += step.Strokes
			angle := left(strokes)
			if angle > b.Target+1e-9 {
				t.Fatalf("%g deg is beyond %g after %+v and %+v", angle, b.Target, readings, step)
			}
			readings = append(readings, Bumped{strokes, angle})
		}
		t.Fatalf("no end: %+v", readings)
	})
}

// TestRoughReadings: a bevel that reads a quarter of a degree wrong takes the fold no
// more than half a degree too far.
func TestRoughReadings(t *testing.T) {
	draws := rand.New(rand.NewPCG(11, 5))
	for range 3000 {
		slope, opens := bumping.slope(0)*(0.6+0.7*draws.Float64()), 2+4*draws.Float64()
		var readings []Bumped
		strokes := 0.0
		for {
			step, err := bumping.Next(readings)
			if err != nil {
				t.Fatal(err)
			}
			if step.Done {
				break
			}
			strokes += step.Strokes
			angle := max(0, slope*strokes-opens)
			if angle > bumping.Target+0.5 {
				t.Fatalf("%g deg after %+v", angle, readings)
			}
			readings = append(readings, Bumped{strokes, max(0, angle+0.5*draws.Float64()-0.25)})
		}
	}
}

// TestKnownPress: 3.4 degrees a stroke and 6 degrees of springback, wanted 18.
func TestKnownPress(t *testing.T) {
	b := bumping
	b.Stroke, b.Springback = 3.4/bumping.slope(16)*bumping.Stroke, 6
	var readings []Bumped
	strokes := 0.0
	for {
		step, err := b.Next(readings)
		if err != nil {
			t.Fatal(err)
		}
		if step.Done {
			break
		}
		strokes += step.Strokes
		readings = append(readings, Bumped{strokes, 3.4*strokes - 6})
	}
	if last := readings[len(readings)-1].Angle; len(readings) > 6 || last > 18 || last < 17 {
		t.Errorf("%+v", readings)
	}
	t.Logf("%+v", readings)
}

func TestBumpSheet(t *testing.T) {
	rows, err := bumping.Sheet(1)
	if err != nil || len(rows) != 19 || rows[18].Strokes != 0 || rows[0].Strokes == 0 {
		t.Fatalf("%v %+v", err, rows)
	}
	for i := 1; i < len(rows); i++ {
		if rows[i].Strokes > rows[i-1].Strokes {
			t.Errorf("from %g deg %g strokes, from %g deg %g", rows[i].Angle, rows[i].Strokes, rows[i-1].Angle, rows[i-1].Strokes)
		}
	}
}

// A press whose quarter of a stroke might fold too far is not pumped at all.
func TestCoarsePress(t *testing.T) {
	b := bumping
	b.Stroke, b.Target = 200, 2
	if step, err := b.Next(nil); err != nil || !step.Done || step.Strokes != 0 || !strings.Contains(step.Why, "too coarse") {
		t.Errorf("%v %+v", err, step)
	}
}

func TestBumpingRefuses(t *testing.T) {
	for says, readings := range map[string][]Bumped{
		"reading 1 is none":         {{0, 3}},
		"reading 2 is none":         {{1, 3}, {2, math.NaN()}},
		"reading 2 counts 3":        {{4, 5}, {3, 6}},
		"less than the 9 before it": {{4, 9}, {5, 6}},
	} {
		if step, err := bumping.Next(readings); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v %+v", says, err, step)
		}
	}
	for says, change := range map[string]func(*Bumping){
		"what the ram travels": func(b *Bumping) { b.Stroke = 0 },
		"an open die folds":    func(b *Bumping) { b.Target = 121 },
		"a fold opens by":      func(b *Bumping) { b.Springback = -1 },
		"beyond 120 deg":       func(b *Bumping) { b.Target, b.Springback = 110, 15 },
		"does not go into":     func(b *Bumping) { b.Radius, b.Target = 40, 100 },
		"the opening":          func(b *Bumping) { b.Die = math.NaN() },
	} {
		b := bumping
		change(&b)
		if step, err := b.Next(nil); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v %+v", says, err, step)
		}
	}
	if step, _ := bumping.Next([]Bumped{{6, 19}}); !step.Done || !strings.Contains(step.Why, "1 deg beyond") {
		t.Errorf("%+v", step)
	}
	if _, err := bumping.Sheet(0); err == nil {
		t.Error("a sheet in steps of nothing")
	}
}
