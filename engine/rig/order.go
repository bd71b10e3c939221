package rig

import (
	"math"
	"math/bits"
)

// route is an order of jobs with what it needs.
type route struct {
	way      Way
	standIns uint
	copied   []int
	order    []int
	margin   float64
}

// best is the route with the fewest stand-ins, and of those the one with most to spare;
// nil if there is none.
func (q *search) best() *route {
	for count := 0; count <= len(q.rig.StandIns); count++ {
		var best *route
		for _, way := range q.ways() {
			for set := uint(0); set < 1<<len(q.rig.StandIns); set++ {
				if bits.OnesCount(set) != count || set&^q.usable != 0 {
					continue
				}
				if r := q.route(way, set); r != nil && (best == nil || r.margin > best.margin*(1+alike)) {
					best = r
				}
			}
			if best != nil {
				return best
			}
		}
	}
	return nil
}

// ways are those that differ: copying first is of use where new parts take a while. A
// mast that stands on deck is not left alone with a stay off while they are made.
func (q *search) ways() []Way {
	switch {
	case q.away > 0 && q.rig.DeckStepped:
		return []Way{CopiedFirst}
	case q.away > 0:
		return []Way{OneByOne, CopiedFirst}
	}
	return []Way{OneByOne}
}

// route looks for an order of one way with a set of stand-ins.
func (q *search) route(way Way, set uint) *route {
	if q.hopeless(way, set) {
		return nil
	}
	r := &route{way: way, standIns: set, margin: math.Inf(1)}
	if way == CopiedFirst {
		var ok bool
		if r.copied, r.margin, ok = q.copies(set); !ok {
			return nil
		}
	}
	order, margin := q.order(way, set)
	if order == nil {
		return nil
	}
	r.order, r.margin = order, min(r.margin, margin)
	return r
}

// copies picks of each flat the plate that comes off with most to spare.
func (q *search) copies(set uint) (picked []int, least float64, ok bool) {
	least = math.Inf(1)
	done := map[string]bool{}
	for i, job := range q.jobs {
		if job.Flat != "" && done[job.Flat] {
			continue
		}
		at, most := -1, 0.0
		for k := i; k < len(q.jobs); k++ {
			if k != i && (job.Flat == "" || q.jobs[k].Flat != job.Flat) {
				continue
			}
			if margin := q.margin(0, k, set, true); margin > most*(1+alike) {
				at, most = k, margin
			}
		}
		if at < 0 || most < 1 {
			return nil, 0, false
		}
		done[job.Flat], picked, least = true, append(picked, at), min(least, most)
	}
	return picked, least, true
}

// order finds the order of jobs whose weakest step is strongest, nil if none holds.
func (q *search) order(way Way, set uint) ([]int, float64) {
	if len(q.jobs) > mostExact {
		return q.greedy(way, set)
	}
	n := len(q.jobs)
	best, last := make([]float64, 1<<n), make([]int8, 1<<n)
	best[0] = math.Inf(1)
	for done := uint(0); done < 1<<n; done++ {
		if best[done] == 0 {
			continue
		}
		for job := range n {
			if done&(1<<job) != 0 {
				continue
			}
			margin := min(best[done], q.margin(done, job, set, q.attended(way, done, job)))
			if next := done | 1<<job; margin >= 1 && margin > best[next]*(1+alike) {
				best[next], last[next] = margin, int8(job)
			}
		}
	}
	all := uint(1)<<n - 1
	if best[all] == 0 {
		return nil, 0
	}
	order := make([]int, n)
	for done, i := all, n-1; i >= 0; i-- {
		order[i] = int(last[done])
		done &^= 1 << order[i]
	}
	return order, best[all]
}

// greedy takes the strongest step each time.
func (q *search) greedy(way Way, set uint) ([]int, float64) {
	least := math.Inf(1)
	var order []int
	for done := uint(0); len(order) < len(q.jobs); {
		at, most := -1, 0.0
		for job := range q.jobs {
			if done&(1<<job) != 0 {
				continue
			}
			if margin := q.margin(done, job, set, q.attended(way, done, job)); margin > most*(1+alike) {
				at, most = job, margin
			}
		}
		if at < 0 || most < 1 {
			return nil, 0
		}
		order, least, done = append(order, at), min(least, most), done|1<<at
	}
	return order, least
}
