package rig

import (
	"fmt"
	"math/bits"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// platesOf are jobs for plates by the names of their stays.
func platesOf(stays ...string) []Job {
	var jobs []Job
	for _, s := range stays {
		jobs = append(jobs, Job{Name: s + " plate"})
	}
	return jobs
}

func TestSuggestFindsAnOrder(t *testing.T) {
	s := Suggest{Rig: exampleRig(), Demand: exampleDemand(t), Jobs: platesOf("cap port", "cap starboard", "fore lower port", "aft lower starboard", "forestay")}
	r := must(s.Reckon())(t)
	if !r.Found || !r.Exact || r.Way != OneByOne || r.Visited == 0 {
		t.Fatalf("%+v", r)
	}
	// The forestay wants two stand-ins that lead its way; nothing else wants any.
	if !slices.Equal(r.StandIns, []string{"jib halyard to port bow", "spare halyard to starboard bow"}) {
		t.Errorf("stand-ins %v", r.StandIns)
	}
	if len(r.Steps) != 7 || len(r.Standing.Steps) != 7 || !strings.Contains(r.Says, "2 stand-ins") {
		t.Errorf("%s: %+v", r.Says, r.Steps)
	}
	for _, step := range r.Standing.Steps {
		if !step.During.Holds || len(step.During.Concerns) > 0 {
			t.Errorf("%s: %+v", step.Step.Name, step.During)
		}
	}
	if last := r.Standing.Steps[6].After; len(last.Off) != 0 || len(last.On) != 8 {
		t.Errorf("at the end: %+v", last)
	}
}

func TestSuggestWithoutAStandIn(t *testing.T) {
	r := must(Suggest{Rig: exampleRig(), Demand: exampleDemand(t), Jobs: platesOf("fore lower port")}.Reckon())(t)
	if !r.Found || len(r.StandIns) != 0 || len(r.Steps) != 1 || !strings.Contains(r.Says, "without a stand-in") {
		t.Errorf("%+v", r)
	}
}

// TestSuggestCopiesFirst: where new parts take a month and nobody stands by, plates are
// copied and put back, one of each flat.
func TestSuggestCopiesFirst(t *testing.T) {
	jobs := platesOf("fore lower port", "fore lower starboard", "aft lower port", "aft lower starboard")
	for i := range jobs {
		jobs[i].Flat = []string{"lower", "lower", "lower", ""}[i]
	}
	demand := exampleDemand(t)
	demand.Storm = 60 * KnotInMetresPerSecond
	r := must(Suggest{Rig: exampleRig(), Demand: demand, Jobs: jobs, Away: 30}.Reckon())(t)
	if !r.Found || r.Way != CopiedFirst {
		t.Fatalf("%+v", r)
	}
	copied, changed := 0, 0
	for _, step := range r.Steps {
		if !step.Attended {
			t.Errorf("%s is left alone", step.Name)
		}
		copied += len(step.Fit)
		changed += len(step.Replace)
	}
	if copied != 2 || changed != 4 {
		t.Errorf("%d copied and %d changed, want one of each flat and all", copied, changed)
	}
	demand.Storm = demand.Gust
	if r := must(Suggest{Rig: exampleRig(), Demand: demand, Jobs: jobs, Away: 30}.Reckon())(t); r.Way != OneByOne || r.Steps[0].Days != 30 || r.Steps[0].Attended {
		t.Errorf("in a calm month: %+v", r)
	}
}

// TestSuggestSaysUnstep: where nothing helps it names the job and what is left to do.
func TestSuggestSaysUnstep(t *testing.T) {
	for _, c := range []struct {
		says, blocks string
		make         func(*Suggest)
	}{
		{"fewer than 2 stand-ins lead the way of the backstay", "backstay plate", func(s *Suggest) { s.Jobs = platesOf("fore lower port", "backstay") }},
		{"cap shroud and lower of one side off together", "chainplate", func(s *Suggest) {
			s.Rig.Plates = append(s.Rig.Plates, Plate{Name: "chainplate", Strength: 90000})
			s.Rig.Stays[0].Plate, s.Rig.Stays[2].Plate = "chainplate", "chainplate"
			s.Jobs = []Job{{Name: "chainplate"}}
		}},
		{"the push is held", "forestay plate", func(s *Suggest) {
			s.Jobs, s.Demand.Gust, s.Demand.Storm = platesOf("forestay"), 30, 35
		}},
	} {
		s := Suggest{Rig: exampleRig(), Demand: exampleDemand(t)}
		c.make(&s)
		r := must(s.Reckon())(t)
		if r.Found || r.Blocks != c.blocks || !strings.Contains(r.Says, c.says) || !strings.Contains(r.Says, "unstep the mast, or hold it with a crane") || len(r.Standing.Assumptions) == 0 {
			t.Errorf("%s: %s, want %q", r.Blocks, r.Says, c.says)
		}
	}
}

func TestSuggestRefuses(t *testing.T) {
	for _, c := range []struct {
		says string
		make func(*Suggest)
	}{
		{"no job is given", func(s *Suggest) { s.Jobs = nil }},
		{`"mizzen" is neither a stay nor a plate`, func(s *Suggest) { s.Jobs = []Job{{Name: "mizzen"}} }},
		{`"forestay plate" stands twice`, func(s *Suggest) { s.Jobs = platesOf("forestay", "forestay") }},
		{"more than the 10", func(s *Suggest) {
			for i := range 12 {
				s.Rig.StandIns = append(s.Rig.StandIns, StandIn{Name: fmt.Sprint("line ", i), Line: StayLine{Foot: Point{0, 1000, 0}, Height: 9000}, Strength: halyard(1)})
			}
		}},
		{"can't take -1 days", func(s *Suggest) { s.Away = -1 }},
		{"above the masthead", func(s *Suggest) { s.Rig.Masthead = 9000 }},
		{"moment of the wind is missing", func(s *Suggest) { s.Demand.PerSquare = 0 }},
	} {
		s := Suggest{Rig: exampleRig(), Demand: exampleDemand(t), Jobs: platesOf("forestay")}
		c.make(&s)
		if _, err := s.Reckon(); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("got %v, want %q", err, c.says)
		}
	}
}

// spare is what a step has over what it has to have, 0 where practice is against it.
func (s StepState) spare() float64 {
	if len(s.During.Concerns) > 0 {
		return 0
	}
	return min(s.During.Margin/s.During.Wanted, s.During.AfterLoss/s.During.WantedAfterLoss)
}

// bruteForce tries every set of stand-ins and every order of a way, step by step by
// Standing.
func bruteForce(t *rapid.T, s Suggest, way Way) (fewest int, margin float64) {
	fewest = -1
	q := search{rig: &prepared{Rig: s.Rig}, jobs: s.Jobs, away: s.Away}
	for set := range uint(1) << len(s.Rig.StandIns) {
		count := bits.OnesCount(set)
		if fewest >= 0 && count > fewest {
			continue
		}
		for _, order := range permutations(len(s.Jobs)) {
			r := &route{way: way, standIns: set, order: order}
			if way == CopiedFirst {
				r.copied = firstOfEachFlat(s.Jobs, order)
			}
			result, err := Standing{Rig: s.Rig, Steps: q.steps(r), Demand: s.Demand}.Reckon()
			if err != nil {
				t.Fatal(err)
			}
			least := 1e9
			for _, step := range result.Steps {
				if len(step.During.Off) > 0 {
					least = min(least, step.spare())
				}
			}
			if least >= 1 && (fewest < 0 || count < fewest || least > margin) {
				fewest, margin = count, least
			}
		}
	}
	return fewest, margin
}

// firstOfEachFlat are the jobs to copy: those that come first of their flat in an order.
func firstOfEachFlat(jobs []Job, order []int) []int {
	var copied []int
	seen := map[string]bool{}
	for _, job := range order {
		if flat := jobs[job].Flat; flat == "" || !seen[flat] {
			seen[flat] = true
			copied = append(copied, job)
		}
	}
	return copied
}

func permutations(n int) [][]int {
	if n == 0 {
		return [][]int{nil}
	}
	var all [][]int
	for _, p := range permutations(n - 1) {
		for at := range n {
			all = append(all, slices.Insert(slices.Clone(p), at, n-1))
		}
	}
	return all
}

// TestSuggestAgainstBruteForce: as few stand-ins and as much to spare as every order
// and every set, looked at one by one, can give; and nothing where they give nothing.
func TestSuggestAgainstBruteForce(t *testing.T) {
	if testing.Short() {
		t.Skip("long, and run in full before the race detector")
	}
	demand := exampleDemand(t)
	found := map[Way]int{}
	rapid.Check(t, func(t *rapid.T) {
		s := drawSuggest(t, demand)
		r, err := s.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		fewest, margin := bruteForce(t, s, OneByOne)
		way := OneByOne
		if s.Away > 0 {
			if other, least := bruteForce(t, s, CopiedFirst); other >= 0 && (fewest < 0 || other < fewest) {
				way, fewest, margin = CopiedFirst, other, least
			}
		}
		switch {
		case !r.Found && fewest >= 0:
			t.Fatalf("nothing was found, and %d stand-ins do %s, with %g to spare", fewest, way, margin)
		case r.Found && (r.Way != way || len(r.StandIns) != fewest || r.Margin < margin*(1-1e-6) || r.Margin > margin*(1+1e-6)):
			t.Fatalf("found %s %d stand-ins with %g, brute force %s %d with %g", r.Way, len(r.StandIns), r.Margin, way, fewest, margin)
		}
		found[r.Way]++
	})
	if found[OneByOne] < 3 || found[CopiedFirst] < 3 || found[""] < 3 {
		t.Errorf("too few of one sort: %v", found)
	}
}

// drawSuggest draws plates that were seen or not, of the same flat or not, new ones that
// lie ready or take a month.
func drawSuggest(t *rapid.T, demand Demand) Suggest {
	s := Suggest{Rig: exampleRig(), Demand: demand, Away: rapid.SampledFrom([]float64{0, 30}).Draw(t, "away")}
	s.Rig.StandIns = s.Rig.StandIns[:rapid.IntRange(0, 4).Draw(t, "stand-ins")]
	s.Demand.Gust = rapid.Float64Range(8, 18).Draw(t, "gust")
	s.Demand.Storm = s.Demand.Gust * rapid.Float64Range(1, 2).Draw(t, "storm")
	bowsprit := rapid.Bool().Draw(t, "bowsprit")
	if bowsprit {
		for i := range s.Rig.Stays {
			if s.Rig.Stays[i].Role == Forestay {
				s.Rig.Stays[i].Needs = []string{"bobstay"}
			}
		}
		s.Rig.Others = []Other{{Name: "bobstay", Plate: "bobstay plate", InLine: rapid.Bool().Draw(t, "in line")}}
		s.Rig.Plates = append(s.Rig.Plates, Plate{Name: "bobstay plate", Strength: rapid.Float64Range(10000, 80000).Draw(t, "bobstay plate")})
	}
	for i := range s.Rig.Plates {
		p := &s.Rig.Plates[i]
		p.State = rapid.SampledFrom([]PlateState{Unseen, Seen}).Draw(t, "state")
		p.Renewed = rapid.Float64Range(10000, 80000).Draw(t, "renewed")
	}
	stays := []string{"cap port", "fore lower port", "aft lower starboard", "forestay", "cap starboard"}
	for _, at := range rapid.SliceOfNDistinct(rapid.IntRange(0, 4), 1, 4, rapid.ID).Draw(t, "jobs") {
		job := platesOf(stays[at])[0]
		job.Flat = rapid.SampledFrom([]string{"", "a", "b"}).Draw(t, "flat")
		s.Jobs = append(s.Jobs, job)
	}
	if bowsprit && len(s.Jobs) < 4 && rapid.Bool().Draw(t, "bobstay too") {
		s.Jobs = append(s.Jobs, Job{Name: "bobstay plate"})
	}
	return s
}

// TestManyJobs: above ten the strongest step is taken each time, and it says so.
func TestManyJobs(t *testing.T) {
	s := Suggest{Rig: exampleRig(), Demand: exampleDemand(t)}
	for i := range 12 {
		side := float64(1 - 2*(i%2))
		name := fmt.Sprintf("intermediate %d", i)
		s.Rig.Stays = append(s.Rig.Stays, Stay{Name: name, Role: Intermediate, Line: StayLine{Foot: Point{0, side * 1400, 0}, Height: 9000}, BreakLoad: 30000, Plate: name + " plate"})
		s.Rig.Plates = append(s.Rig.Plates, Plate{Name: name + " plate", Strength: 40000, Renewed: 50000})
		s.Jobs = append(s.Jobs, platesOf(name)...)
	}
	r := must(s.Reckon())(t)
	if !r.Found || r.Exact || len(r.Steps) != 12 || !strings.Contains(r.Says, "strongest step") {
		t.Errorf("%+v", r)
	}
}

// twelveStays is a rig of twelve stays with four stand-ins and ten plates to renew.
func twelveStays() (Rig, []Job) {
	r := exampleRig()
	for i, name := range []string{"intermediate port", "intermediate starboard", "inner forestay", "running backstay port"} {
		at := [][3]float64{{0, 1420, 9800}, {0, -1420, 9800}, {2500, 0, 9800}, {-4500, 1200, 9800}}[i]
		r.Stays = append(r.Stays, Stay{Name: name, Role: []StayRole{Intermediate, Intermediate, InnerForestay, RunningStay}[i], Line: StayLine{Foot: Point{at[0], at[1], 0}, Height: at[2]}, BreakLoad: 28800, Plate: name + " plate"})
		r.Plates = append(r.Plates, Plate{Name: name + " plate", Strength: 40000, Renewed: 50000})
	}
	var jobs []Job
	for i, p := range r.Plates {
		if name := r.Stays[i].Name; name != "backstay" && name != "inner forestay" {
			jobs = append(jobs, Job{Name: p.Name})
		}
	}
	return r, jobs
}

func benchmarkDemand() Demand {
	return Demand{PerSquare: 14000, Roll: 0.3e6, Gust: 15 * KnotInMetresPerSecond}
}

// BenchmarkMargins is one step of a rig of twelve stays in the search.
func BenchmarkMargins(b *testing.B) {
	rig, jobs := twelveStays()
	q, err := Suggest{Rig: rig, Demand: benchmarkDemand(), Jobs: jobs}.search()
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		q.bare(5, 3, 3, true)
	}
}

// BenchmarkState is one step of a rig of twelve stays with all that is told of it.
func BenchmarkState(b *testing.B) {
	rig, _ := twelveStays()
	p, faults := rig.prepare()
	if faults != nil {
		b.Fatal(faults)
	}
	o := p.begin()
	o.stayOff[2] = true
	demand := benchmarkDemand().usual()
	for b.Loop() {
		p.state(o, demand, true)
	}
}

// BenchmarkSuggest is a suggestion for ten jobs with four stand-ins, the states that it
// visits and its time over that of one step. "every set" looks at all orders with all
// sixteen sets of stand-ins, which a suggestion never has to.
func BenchmarkSuggest(b *testing.B) {
	rig, jobs := twelveStays()
	s := Suggest{Rig: rig, Demand: benchmarkDemand(), Jobs: jobs}
	b.Run("found", func(b *testing.B) {
		reportSteps(b, s, func() int {
			r, err := s.Reckon()
			if err != nil || !r.Found {
				b.Fatal(r.Says, err)
			}
			return r.Visited
		})
	})
	b.Run("every set", func(b *testing.B) {
		reportSteps(b, s, func() int {
			q, err := s.search()
			if err != nil {
				b.Fatal(err)
			}
			for set := range uint(1) << len(rig.StandIns) {
				q.order(OneByOne, set)
			}
			return q.visited
		})
	})
}

// reportSteps runs a search and tells its states, and its time in steps.
func reportSteps(b *testing.B, s Suggest, search func() int) {
	q, err := s.search()
	if err != nil {
		b.Fatal(err)
	}
	const often = 20000
	began := time.Now()
	for range often {
		q.bare(5, 3, 3, true)
	}
	one := float64(time.Since(began)) / often
	visited := 0
	for b.Loop() {
		visited = search()
	}
	b.ReportMetric(float64(visited), "states")
	b.ReportMetric(float64(b.Elapsed())/float64(b.N)/one, "steps")
}
