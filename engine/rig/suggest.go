package rig

import (
	"errors"
	"fmt"
	"math"
	"strings"
)

// Job is a plate or a stay that has to come off and be replaced.
type Job struct {
	// Name is that of a plate or of a stay.
	Name string
	// Flat names the flat pattern that the plate is cut to: plates of one flat can all be
	// made from any one of them. "" says that it is like no other.
	Flat string
}

// Way is how the work goes on.
type Way string

const (
	// OneByOne: each comes off, its new one goes on, then the next. All plates of a flat
	// are made from the first one that is off.
	OneByOne Way = "one by one"
	// CopiedFirst: of each flat one is taken off, copied and put back at once; when the
	// new ones are made each is changed in one go. Nothing stays off while metal is cut.
	CopiedFirst Way = "copied and put back, then changed"
)

// Suggest looks for an order of the jobs, and the fewest stand-ins, that keep every step
// above its margins.
//
// Returns the steps, ready for Standing, and what they come to; or why there are none.
//
// Equation: over all sets of stand-ins from the smallest, and all sets of jobs done,
//
//	best(done + job) = max over job of min(best(done), margin(done, job off, stand-ins))
//
// where steps below their margins, or against the practice of the trade, are no steps.
//
// Symbols: Rig, Demand; Jobs; Away, days that a new part takes once the old one is off
// (nobody stands by then), 0 if the new parts lie ready; StandIns of the rig are the
// candidates.
//
// Holds exactly for up to ten jobs and ten stand-ins; above ten jobs the strongest step
// is taken each time, which is as good wherever a new part is no weaker than the old.
//
// Source: dynamic programming over sets (computed). Errors: as Standing; no job, a job
// that is no plate or stay, more than ten stand-ins or 60 jobs.
type Suggest struct {
	Rig    Rig
	Demand Demand
	Jobs   []Job
	Away   float64
}

// Suggestion is an order of work, or why there is none.
type Suggestion struct {
	Found bool
	// Way, StandIns and Steps are what is suggested.
	Way      Way
	StandIns []string
	Steps    []Step
	// Margin is the least of all steps over what each has to have: 1 is just enough.
	Margin float64
	// Standing is what the steps come to; also where nothing was found it has the rig
	// as it stands now.
	Standing StandingResult
	// Exact is false where there were too many jobs to look at every order.
	Exact bool
	// Blocks is the job that nothing helps, where there is none to suggest.
	Blocks string
	Says   string
	// Visited counts the states that were looked at.
	Visited int
}

const (
	mostExact    = 10
	mostStandIns = 10
)

// Reckon looks for the order.
func (s Suggest) Reckon() (Suggestion, error) {
	q, err := s.search()
	if err != nil {
		return Suggestion{}, err
	}
	found := Suggestion{Exact: len(s.Jobs) <= mostExact}
	best := q.best()
	found.Visited = q.visited
	if best == nil {
		found.Blocks, found.Says = q.blocked()
		found.Standing, err = Standing{Rig: s.Rig, Demand: s.Demand}.Reckon()
		return found, err
	}
	found.Found, found.Way, found.Margin = true, best.way, best.margin
	found.StandIns, found.Steps = q.names(best.standIns), q.steps(best)
	found.Standing, err = Standing{Rig: s.Rig, Steps: found.Steps, Demand: s.Demand}.Reckon()
	found.Says = found.sentence(q)
	return found, err
}

func (f Suggestion) sentence(q *search) string {
	text := "every step holds its margins, done " + string(f.Way) + ","
	switch n := len(f.StandIns); n {
	case 0:
		text += " without a stand-in"
	case 1:
		text += " with one stand-in, " + f.StandIns[0]
	default:
		text += fmt.Sprintf(" with %d stand-ins, %s; fewer do not do", n, joined(f.StandIns))
	}
	if !f.Exact {
		text += fmt.Sprintf("; with %d jobs the strongest step was taken each time", len(q.jobs))
	}
	return text
}

// steps writes a route down as steps.
func (q *search) steps(r *route) []Step {
	var steps []Step
	if names := q.names(r.standIns); len(names) > 0 {
		steps = append(steps, Step{Name: "rig the stand-ins and haul them tight", Fit: names, Attended: true})
	}
	for _, job := range r.copied {
		name := q.jobs[job].Name
		steps = append(steps, Step{Name: "take " + name + " off, copy it and put it back", Remove: []string{name}, Fit: []string{name}, Attended: true})
	}
	done := uint(0)
	for _, job := range r.order {
		name := q.jobs[job].Name
		step := Step{Name: "change " + name, Replace: []string{name}, Attended: q.attended(r.way, done, job)}
		if !step.Attended {
			step.Days = q.away
		}
		steps, done = append(steps, step), done|1<<job
	}
	if names := q.names(r.standIns); len(names) > 0 {
		steps = append(steps, Step{Name: "take the stand-ins down", Remove: names, Attended: true})
	}
	return steps
}

func (q *search) names(set uint) []string {
	var names []string
	for i, s := range q.rig.StandIns {
		if set&(1<<i) != 0 {
			names = append(names, s.Name)
		}
	}
	return names
}

// blocked says which job nothing helps, and what is left to do.
func (q *search) blocked() (job, says string) {
	all, done := q.usable, uint(1)<<len(q.jobs)-1
	least, at := math.Inf(1), 0
	for i, ok := range q.allowed(all) {
		margin := 0.0
		if ok {
			margin = q.margin(done&^(1<<i), i, all, true)
		}
		if margin < least {
			least, at = margin, i
		}
	}
	name := q.jobs[at].Name
	var why []string
	if practice := q.against(at, all); practice != "" {
		why = append(why, practice)
	}
	held, _ := q.bare(done&^(1<<at), at, all, true)
	why = append(why, fmt.Sprintf("with it off, every usable stand-in up and all else renewed the push is held %.2f times, and %.3g times is wanted", math.Floor(100*held)/100, q.demand.Wanted))
	text := fmt.Sprintf("no order holds its margins; %s is what nothing here helps: %s", name, strings.Join(why, "; "))
	if least >= 1 {
		text = "no order holds its margins, though each job would if all else were renewed first: the old plates hold too little for the first of them"
	}
	return name, text + ": unstep the mast, or hold it with a crane"
}

// search prepares the rig and its jobs.
func (s Suggest) search() (*search, error) {
	p, faults := s.Rig.prepare()
	demand := s.Demand.usual()
	if err := demand.check(); err != nil {
		faults = append(faults, err)
	}
	var in inputs
	in.must(len(s.Jobs) > 0, "no job is given: there is nothing to put in order")
	in.must(len(s.Jobs) <= mostWork, "%d jobs are more than the %d that are covered", len(s.Jobs), mostWork)
	in.must(len(s.Rig.StandIns) <= mostStandIns, "%d stand-ins are more than the %d that a suggestion is looked for among: leave out those that you would not use", len(s.Rig.StandIns), mostStandIns)
	in.must(s.Away >= 0 && s.Away <= 3660, "a new part can't take %g days", s.Away)
	if in.err != nil {
		faults = append(faults, in.err)
	}
	if len(faults) > 0 {
		return nil, errorsOf(faults)
	}
	q := &search{rig: p, demand: demand, jobs: s.Jobs, away: s.Away}
	return q, errors.Join(q.layOut()...)
}
