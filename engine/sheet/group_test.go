package sheet

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"syscall"
	"testing"
	"time"
)

// fleetFlats are flats of a fleet: patterns drawn at random, each many times over with
// the noise of measuring, either hand.
func fleetFlats(t testing.TB, patterns, each int) []Flat {
	draws := rand.New(rand.NewPCG(7, 7))
	between := func(low, high float64) float64 { return low + (high-low)*draws.Float64() }
	var flats []Flat
	for range patterns {
		length, width := between(260, 480), between(30, 60)
		at := between(0.3, 0.5) * length
		base := Flat{Metal: "316L", Thickness: []float64{5, 6, 8, 10}[draws.IntN(4)], Folds: []Fold{{At: at, Angle: between(8, 30), Radius: 16}}}
		base.Holes = []Hole{{At: Point{width / 2, 0}, Diameter: 16}}
		for k := range 2 + draws.IntN(3) {
			base.Holes = append(base.Holes, Hole{At: Point{at + 30 + 24*float64(k), between(-4, 4)}, Diameter: 10})
		}
		for range each {
			f := base
			c, err := Strip{length + between(-0.3, 0.3), width + between(-0.2, 0.2), End{Shape: RoundedEnd, Radius: width/2 + 0.2}, End{Corner: 5}}.Contour()
			if err != nil {
				t.Fatal(err)
			}
			f.Outline = c
			f.Holes = append([]Hole{}, base.Holes...)
			for i := range f.Holes {
				f.Holes[i].At = f.Holes[i].At.plus(Point{between(-0.1, 0.1), between(-0.1, 0.1)})
			}
			flats = append(flats, laidOver(f, draws.IntN(2) == 0, draws.IntN(2) == 0))
		}
	}
	draws.Shuffle(len(flats), func(i, j int) { flats[i], flats[j] = flats[j], flats[i] })
	return flats
}

// byBruteForce groups by comparing with every master.
func byBruteForce(t *testing.T, flats []Flat, l Likeness) [][]int {
	var groups [][]int
	for i, f := range flats {
		joined := false
		for k := range groups {
			r, err := Congruent(f, flats[groups[k][0]], l)
			if err != nil {
				t.Fatal(err)
			}
			if r.Alike() {
				groups[k], joined = append(groups[k], i), true
				break
			}
		}
		if !joined {
			groups = append(groups, []int{i})
		}
	}
	return groups
}

// TestGroupsLeaveNobodyOut: looking into cells gives the groups that comparing with all
// masters gives.
func TestGroupsLeaveNobodyOut(t *testing.T) {
	if testing.Short() {
		t.Skip("long, and run in full before the race detector")
	}
	flats := fleetFlats(t, 12, 5)
	g, err := GroupFlats(flats, LikeMeasured)
	if err != nil {
		t.Fatal(err)
	}
	want := byBruteForce(t, flats, LikeMeasured)
	if len(want) != 12 {
		t.Errorf("%d patterns come out as %d groups", 12, len(want))
	}
	var got [][]int
	for _, group := range g.Groups {
		var members []int
		for _, m := range group.Members {
			members = append(members, m.Index)
			if !m.Alike() {
				t.Errorf("flat %d is a member and not alike", m.Index)
			}
		}
		if members[0] != group.Master {
			t.Errorf("the master %d is not the first of %v", group.Master, members)
		}
		got = append(got, members)
	}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("by cells %v\nby brute force %v", got, want)
	}
}

// TestGroupsDontChain: each step is within likeness, the ends are not one pattern.
func TestGroupsDontChain(t *testing.T) {
	var flats []Flat
	for i := range 8 {
		flats = append(flats, longer(t, 1.2*float64(i)))
	}
	g, err := GroupFlats(flats, LikeMeasured)
	if err != nil {
		t.Fatal(err)
	}
	if len(g.Groups) < 3 {
		t.Errorf("8.4 mm of difference in %d groups", len(g.Groups))
	}
	for _, group := range g.Groups {
		for _, m := range group.Members {
			if step := m.Index - group.Master; step > 1 {
				t.Errorf("flat %d is %d steps from its master %d", m.Index, step, group.Master)
			}
		}
	}
}

// TestComparisonsGrowWithFlats: ten times as many flats take about ten times as many
// comparisons, not a hundred times.
func TestComparisonsGrowWithFlats(t *testing.T) {
	if testing.Short() {
		t.Skip("long, and run in full before the race detector")
	}
	compared := func(patterns int) int {
		flats := fleetFlats(t, patterns, 3)
		g, err := GroupFlats(flats, LikeMeasured)
		if err != nil {
			t.Fatal(err)
		}
		return g.Compared
	}
	few, many := compared(10), compared(100)
	if many > 15*few {
		t.Errorf("30 flats took %d comparisons, 300 took %d", few, many)
	}
	t.Logf("30 flats: %d comparisons; 300 flats: %d", few, many)
}

// The other hand of a part whose faces differ is a group of its own.
func TestGroupOneSided(t *testing.T) {
	a := handed(t)
	for oneSided, want := range map[bool]int{false: 1, true: 2} {
		a.OneSided = oneSided
		g, err := GroupFlats([]Flat{a, a.Mirrored(), a}, LikeDrawings)
		if err != nil || len(g.Groups) != want || len(g.Groups[0].Members) != 4-want {
			t.Errorf("one-sided %v: %v %+v", oneSided, err, g.Groups)
		}
	}
}

func TestGroupRefuses(t *testing.T) {
	bad := handed(t)
	bad.Name, bad.Holes[1].At.Y = "port cap plate", 100
	if _, err := GroupFlats([]Flat{handed(t), bad}, LikeMeasured); err == nil || !strings.Contains(err.Error(), "port cap plate: hole 2") {
		t.Errorf("%v", err)
	}
	bad.Name = ""
	if _, err := GroupFlats([]Flat{handed(t), bad}, LikeMeasured); err == nil || !strings.Contains(err.Error(), "flat 2: hole 2") {
		t.Errorf("%v", err)
	}
	if _, err := Congruent(bad, handed(t), LikeMeasured); err == nil {
		t.Error("a flat that is none is compared")
	}
}

// processorTime is what this program has used of the processors so far.
func processorTime(b *testing.B) time.Duration {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		b.Fatal(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

func BenchmarkGroupFlats(b *testing.B) {
	for _, patterns := range []int{20, 200, 1000} {
		flats := fleetFlats(b, patterns, 10)
		b.Run(fmt.Sprint(len(flats)), func(b *testing.B) {
			compared, begin := 0, processorTime(b)
			for b.Loop() {
				g, err := GroupFlats(flats, LikeMeasured)
				if err != nil {
					b.Fatal(err)
				}
				compared = g.Compared
			}
			b.ReportMetric(float64(compared), "comparisons")
			b.ReportMetric(float64((processorTime(b)-begin).Microseconds())/float64(b.N*len(flats)), "cpu-us/flat")
		})
	}
}
