package rig

import "math"

// prepared is a rig with what its steps have in common worked out once.
type prepared struct {
	Rig
	// plateOf, otherOn and landsOn are the plates of stays, others and stand-ins, by
	// place, -1 for none.
	plateOf, otherOn, landsOn []int
	// needs are the others that each stay can't do without, by place.
	needs [][]int
	// stayLever and standInLever are moments per unit of pull.
	stayLever, standInLever []vector
	strengths               []StandInStrengthResult
}

// prepare checks a rig and works out what its steps have in common. It lists all that
// is wrong.
func (r Rig) prepare() (*prepared, []error) {
	r.Credit = r.Credit.usual()
	if faults := r.check(); len(faults) > 0 {
		return nil, faults
	}
	p := &prepared{Rig: r}
	for _, s := range r.Stays {
		p.plateOf = append(p.plateOf, r.plateNamed(s.Plate))
		p.stayLever = append(p.stayLever, s.Line.moment())
		var needs []int
		for _, name := range s.Needs {
			needs = append(needs, r.otherNamed(name))
		}
		p.needs = append(p.needs, needs)
	}
	for _, o := range r.Others {
		p.otherOn = append(p.otherOn, r.plateNamed(o.Plate))
	}
	for _, s := range r.StandIns {
		p.landsOn = append(p.landsOn, r.plateNamed(s.Plate))
		p.standInLever = append(p.standInLever, s.Line.moment())
		strength, err := s.Strength.Reckon()
		if err != nil {
			return nil, []error{err}
		}
		p.strengths = append(p.strengths, strength)
	}
	return p, nil
}

// on tells whether a stay stands.
func (p *prepared) on(o onBoard, stay int) bool {
	at := p.plateOf[stay]
	if o.stayOff[stay] || at >= 0 && o.plateOut[at] {
		return false
	}
	for _, need := range p.needs[stay] {
		if plate := p.otherOn[need]; o.otherOff[need] || plate >= 0 && o.plateOut[plate] {
			return false
		}
	}
	return true
}

// standInWorth is the pull that a stand-in is counted on for. One that shares a plate
// with a stay that is on adds nothing: the plate bears that stay already.
func (p *prepared) standInWorth(o onBoard, i int, attended bool) (float64, string) {
	strength := p.strengths[i]
	if !strength.Known {
		return 0, strength.Says
	}
	share := p.Credit.StandIn
	if !attended {
		share = p.Credit.Unattended
	}
	own := share * strength.Strength
	carries := p.carries(o, p.landsOn[i])
	switch {
	case carries == 0:
		return 0, "it counts as nothing: its plate bears a stay already, is out, or is counted on for nothing"
	case carries < own:
		return carries, "the plate it lands on"
	}
	return own, "its " + string(strength.Governs)
}

// carries is the pull that a plate is counted on for by a stand-in: nothing while it
// is out or a stay stands on it, no end of it for a fitting of the stand-in's own.
// Stand-ins that are up and land on one plate share what it carries.
func (p *prepared) carries(o onBoard, plate int) float64 {
	if plate < 0 {
		return math.Inf(1)
	}
	if o.plateOut[plate] {
		return 0
	}
	best := 0.0
	for i := range p.Stays {
		if p.plateOf[i] != plate {
			continue
		}
		if p.on(o, i) {
			return 0
		}
		best = max(best, p.worth(p.Stays[i], o.plates[plate], "its plate").pull)
	}
	sharing := 0
	for i, at := range p.landsOn {
		if at == plate && o.rigged[i] {
			sharing++
		}
	}
	return best / float64(max(1, sharing))
}
