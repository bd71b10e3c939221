package fact

import (
	"math"

	"chainwale/engine/plan"
	"chainwale/engine/strength"
	"chainwale/engine/working"
)

// bearsAll works out what the stays of one fitting ask of it together: one at its
// design load and the others at work, whichever is worst, against its bolts and its
// section at the bolts; and all of them at work against what the bolts go through.
func (b *builder) bearsAll(f *Fitting, side side) {
	var cases allCases
	var from []*Value
	for _, l := range b.facts.Landings {
		if l.Fitting == f {
			toward, gaps := direction(l.Stay, side)
			cases.stays = append(cases.stays, l.Stay)
			cases.pulls = append(cases.pulls, strength.Pull{Toward: toward})
			from = append(append(from, &l.Stay.DesignLoad.Value), gaps...)
		}
	}
	if len(cases.stays) < 2 {
		f.BearsAll.WouldStand(f.Stays.at)
		f.BearsAll.Refuse("it serves fewer than two stays")
		return
	}
	strengths, hosts := b.capacities(f)
	from = append(append(from, strengths...), hosts...)
	reckon(&f.BearsAll, from, func() (formula[staySums], error) {
		cases.capacity, cases.host = least(strengths), least(hosts)
		return cases, nil
	}, func(r staySums) float64 { return r.ratio })
}

// capacities are what the fitting holds under each of its stays: by bolts and
// section until something breaks, and by what the bolts go through at work.
func (b *builder) capacities(f *Fitting) (strengths, hosts []*Value) {
	for _, g := range b.facts.BoltGroups {
		if g.Fitting == f {
			strengths = append(strengths, &g.BoltsUltimate.Value)
			hosts = append(hosts, &g.Host.Value)
		}
	}
	for _, s := range b.facts.Sections {
		if s.Fitting == f {
			strengths = append(strengths, &s.NetUltimate.Value)
		}
	}
	return strengths, hosts
}

// least is the smallest of some values that are all known.
func least(of []*Value) float64 {
	smallest := math.Inf(1)
	for _, v := range of {
		smallest = min(smallest, v.number)
	}
	return smallest
}

// allCases is a fitting under several stays, one after the other at its design load,
// and then all of them at work.
type allCases struct {
	stays          []*Stay
	pulls          []strength.Pull
	capacity, host float64
}

type staySums struct {
	ratio    float64
	sum      strength.StaySumResult
	capacity float64
}

// Reckon gives the worst case.
func (c allCases) Reckon() (staySums, error) {
	worst := staySums{ratio: math.Inf(1)}
	for breaks := range len(c.stays) + 1 {
		capacity := c.capacity
		if breaks == len(c.stays) {
			capacity = c.host // no wire breaks, and what the bolts go through carries its load at work
		}
		sum, err := c.sum(breaks)
		if err != nil {
			return worst, err
		}
		if r := capacity / sum.Size; r < worst.ratio {
			worst = staySums{ratio: r, sum: sum, capacity: capacity}
		}
	}
	return worst, nil
}

// sum adds the stays up with one of them at its design load and the rest at work.
func (c allCases) sum(breaks int) (strength.StaySumResult, error) {
	pulls := append([]strength.Pull{}, c.pulls...)
	for i, s := range c.stays {
		pulls[i].Force = s.WorkingLoad.Float()
		if i == breaks {
			pulls[i].Force = s.DesignLoad.Float()
		}
	}
	axis, normal := frame(pulls[0].Toward)
	return strength.StaySum{Pulls: pulls, Axis: axis, Normal: normal}.Reckon()
}

// Working writes the worst case down.
func (s staySums) Working() []working.Step {
	return append(s.sum.Working(), working.Step{Symbol: "R/F", Meaning: "what the fitting holds over that sum", Formula: "capacity / sum",
		Inputs: []working.Input{{Symbol: "capacity", Value: s.capacity, Unit: "N"}, {Symbol: "sum", Value: s.sum.Size, Unit: "N"}},
		Value:  s.ratio, Source: working.Source{Title: "arithmetic", As: working.Computed}})
}

// frame is an axis along a wire and a normal at right angles to it; the size of
// the sum does not depend on them.
func frame(d strength.Direction) (axis, normal strength.Direction) {
	if d.X == 0 && d.Y == 0 {
		return d, strength.Direction{X: 1}
	}
	return d, strength.Direction{X: -d.Y, Y: d.X}
}

// direction is where a stay leads from its lower end, and what is not known of it.
func direction(s *Stay, side side) (strength.Direction, []*Value) {
	between := func(lower, upper plan.Amount) (float64, []*Value) {
		var a, b Number
		give(&a, lower)
		give(&b, upper)
		return b.number - a.number, values(&a.Value, &b.Value)
	}
	x, gx := between(s.plan.Lower.X, s.plan.Upper.X)
	y, gy := between(s.plan.Lower.Y, s.plan.Upper.Y)
	z, gz := between(s.plan.Lower.Z, s.plan.Upper.Z)
	if side.name == "starboard" {
		y = -y
	}
	return strength.Direction{X: x, Y: y, Z: z}, append(append(gx, gy...), gz...)
}
