package rig

import (
	"fmt"
	"slices"
)

// search holds what the search for an order looks at again and again, worked out once.
type search struct {
	rig    *prepared
	demand Demand
	jobs   []Job
	away   float64

	// off are the stays that each job takes off. renewedBy are the jobs that renew a
	// plate that a stay hangs on; old and renewed are its moments before any and after
	// all of them, partly those that were asked for in between.
	off          [][]int
	renewedBy    []uint
	old, renewed []vector
	partly       map[partlyRenewed]vector
	// standIns are the moments of the stand-ins while somebody stands by, alone while
	// nobody does. usable are those that hold anything at all.
	standIns, alone []vector
	usable          uint

	// grows says that no stay is worth less once its plate is renewed. Then a job that
	// can't be done after all the others can never be done.
	grows bool

	visited int
	scratch []vector
}

// layOut works the moments out, and lists what is wrong with the jobs.
func (q *search) layOut() (faults []error) {
	p := q.rig
	start, finish := p.begin(), p.begin()
	q.renewedBy, q.off, q.partly = make([]uint, len(p.Stays)), make([][]int, len(q.jobs)), map[partlyRenewed]vector{}
	seen := map[string]bool{}
	for j, job := range q.jobs {
		if seen[job.Name] {
			faults = append(faults, fmt.Errorf("the job %q stands twice", job.Name))
		}
		seen[job.Name] = true
		plate := p.plateNamed(job.Name)
		if plate >= 0 {
			finish.plates[plate] = finish.plates[plate].renewed()
		}
		if !q.takes(j, plate) {
			faults = append(faults, fmt.Errorf("the job %q is neither a stay nor a plate that a stay lands on", job.Name))
		}
	}
	q.grows = true
	for i, lever := range p.stayLever {
		before, after := p.stayWorth(start, i).pull, p.stayWorth(finish, i).pull
		q.grows = q.grows && after >= before
		q.old, q.renewed = append(q.old, lever.times(before)), append(q.renewed, lever.times(after))
	}
	for i := range p.StandIns {
		q.layOutStandIn(i)
	}
	return faults
}

// takes notes which stays a job takes off, and tells whether there is one.
func (q *search) takes(job, plate int) bool {
	found := false
	for i := range q.rig.Others {
		found = found || q.takesOther(job, plate, i)
	}
	for i, s := range q.rig.Stays {
		byPlate := plate >= 0 && q.rig.plateOf[i] == plate
		byNeed := slices.ContainsFunc(q.rig.needs[i], func(need int) bool { return q.takesOther(job, plate, need) })
		if !byPlate && !byNeed && s.Name != q.jobs[job].Name {
			continue
		}
		found = true
		q.off[job] = append(q.off[job], i)
		byNeedsPlate := slices.ContainsFunc(q.rig.needs[i], func(need int) bool { return plate >= 0 && q.rig.otherOn[need] == plate })
		if byPlate || byNeedsPlate {
			q.renewedBy[i] |= 1 << job
		}
	}
	return found
}

// takesOther tells whether a job takes an other off.
func (q *search) takesOther(job, plate, other int) bool {
	return q.rig.Others[other].Name == q.jobs[job].Name || plate >= 0 && q.rig.otherOn[other] == plate
}

// layOutStandIn works a stand-in's moments out. One that lands on a plate with a stay on
// it, or on one that comes out, is left aside: it would count as nothing.
func (q *search) layOutStandIn(i int) {
	p := q.rig
	attended, alone := 0.0, 0.0
	if p.landsOn[i] < 0 {
		start := p.begin()
		attended, _ = p.standInWorth(start, i, true)
		alone, _ = p.standInWorth(start, i, false)
	}
	if attended > 0 {
		q.usable |= 1 << i
	}
	q.standIns = append(q.standIns, p.standInLever[i].times(attended))
	q.alone = append(q.alone, p.standInLever[i].times(alone))
}

// allowed tells for each job whether practice lets it be done with a set of stand-ins.
func (q *search) allowed(set uint) []bool {
	list := make([]bool, len(q.jobs))
	for job := range list {
		list[job] = q.against(job, set) == ""
	}
	return list
}

// hopeless tells whether some job can't be done whatever is done before it.
func (q *search) hopeless(way Way, set uint) bool {
	all := uint(1)<<len(q.jobs) - 1
	for job, ok := range q.allowed(set) {
		if !ok || q.grows && q.margin(all&^(1<<job), job, set, true) < 1 && (way == CopiedFirst || q.margin(all&^(1<<job), job, set, false) < 1) {
			return true
		}
	}
	return false
}

// attended tells whether somebody stands by until a job is done: always, but where its
// new part has yet to be made and nothing was copied. The first plate of a flat
// serves for all of them.
func (q *search) attended(way Way, done uint, job int) bool {
	if way == CopiedFirst || q.away == 0 {
		return true
	}
	flat := q.jobs[job].Flat
	for other := range q.jobs {
		if done&(1<<other) != 0 && flat != "" && q.jobs[other].Flat == flat {
			return true
		}
	}
	return false
}

// margin is what is held over what has to be while a job is off: 1 is just enough.
func (q *search) margin(done uint, job int, set uint, attended bool) float64 {
	now, after := q.bare(done, job, set, attended)
	_, wanted := q.demand.wind(attended)
	return min(now/wanted, after/q.demand.AfterLoss)
}

// bare is how many times the push is held while a job is off, and with one more loss.
func (q *search) bare(done uint, job int, set uint, attended bool) (now, after float64) {
	q.visited++
	m := q.scratch[:0]
	for i := range q.old {
		if q.takesOff(job, i) {
			continue
		}
		switch by := q.renewedBy[i]; {
		case done&by == 0:
			m = append(m, q.old[i])
		case done&by == by:
			m = append(m, q.renewed[i])
		default:
			m = append(m, q.inBetween(i, done&by))
		}
	}
	lines := q.standIns
	if !attended {
		lines = q.alone
	}
	for i, v := range lines {
		if set&(1<<i) != 0 {
			m = append(m, v)
		}
	}
	q.scratch = m
	gust, _ := q.demand.wind(attended)
	return pushing{wind: q.demand.PerSquare * gust * gust, roll: q.demand.Roll, partners: q.rig.Partners}.margins(m)
}

func (q *search) takesOff(job, stay int) bool {
	for _, i := range q.off[job] {
		if i == stay {
			return true
		}
	}
	return false
}

// partlyRenewed is a stay that hangs on several plates, some of which have been renewed.
type partlyRenewed struct {
	stay int
	done uint
}

// inBetween is the moment of a stay when some of the jobs that renew its plates are done.
func (q *search) inBetween(stay int, done uint) vector {
	key := partlyRenewed{stay, done}
	if v, ok := q.partly[key]; ok {
		return v
	}
	o := q.rig.begin()
	for job := range q.jobs {
		if plate := q.rig.plateNamed(q.jobs[job].Name); plate >= 0 && done&(1<<job) != 0 {
			o.plates[plate] = o.plates[plate].renewed()
		}
	}
	v := q.rig.stayLever[stay].times(q.rig.stayWorth(o, stay).pull)
	q.partly[key] = v
	return v
}

// against says which practice of the trade a job would be against, "" if none.
func (q *search) against(job int, set uint) string {
	fore, aft := false, false
	var caps, lowers [3]bool
	for _, i := range q.off[job] {
		s := q.rig.Stays[i]
		lone := s.Role == Forestay || s.Role == Backstay
		if lone && q.lastOfItsRole(job, s.Role) && !q.leading(set, i).enough() {
			return fmt.Sprintf("fewer than %d stand-ins lead the way of the %s, to either side of its line", standInsWanted, s.Role)
		}
		fore, aft = fore || s.Role == Forestay, aft || s.Role == Backstay
		caps[s.side()+1] = caps[s.side()+1] || s.Role == CapShroud
		lowers[s.side()+1] = lowers[s.side()+1] || s.isLower()
	}
	switch {
	case fore && aft:
		return "it takes forestay and backstay off together"
	case caps[0] && lowers[0] || caps[2] && lowers[2]:
		return "it takes cap shroud and lower of one side off together"
	}
	return ""
}

// lastOfItsRole tells whether a job leaves no stay of a role.
func (q *search) lastOfItsRole(job int, role StayRole) bool {
	for i, s := range q.rig.Stays {
		if s.Role == role && !q.takesOff(job, i) {
			return false
		}
	}
	return true
}

// leading are the stand-ins of a set that lead a stay's way.
func (q *search) leading(set uint, stay int) (l leading) {
	for i := range q.rig.StandIns {
		if set&q.usable&(1<<i) != 0 {
			l = l.with(q.rig, i, stay)
		}
	}
	return l
}
