package rig

import (
	"fmt"
	"slices"
)

// kind is what a name stands for.
type kind int

const (
	nothing kind = iota
	aStay
	aPlate
	aStandIn
	anOther
)

// thing is a stay, plate or stand-in by its place in the rig's list.
type thing struct {
	kind kind
	at   int
}

// onBoard is what stands on a rig between two steps.
type onBoard struct {
	stayOff  []bool
	otherOff []bool
	plateOut []bool
	plates   []Plate
	rigged   []bool
}

// begin is the rig as it is before the first step: all stays on, no stand-in up.
func (r *prepared) begin() onBoard {
	return onBoard{make([]bool, len(r.Stays)), make([]bool, len(r.Others)), make([]bool, len(r.Plates)), slices.Clone(r.Plates), make([]bool, len(r.StandIns))}
}

func (o onBoard) clone() onBoard {
	return onBoard{slices.Clone(o.stayOff), slices.Clone(o.otherOff), slices.Clone(o.plateOut), slices.Clone(o.plates), slices.Clone(o.rigged)}
}

// planned turns steps into what stands on the rig while each is on and after it.
type planned struct {
	rig    *prepared
	things map[string]thing
	now    onBoard
	faults []error
}

func newPlanned(r *prepared) *planned {
	p := &planned{rig: r, things: map[string]thing{}, now: r.begin()}
	for i, s := range r.Stays {
		p.things[s.Name] = thing{aStay, i}
	}
	for i, s := range r.Plates {
		p.things[s.Name] = thing{aPlate, i}
	}
	for i, s := range r.Others {
		p.things[s.Name] = thing{anOther, i}
	}
	for i, s := range r.StandIns {
		p.things[s.Name] = thing{aStandIn, i}
	}
	return p
}

// find looks a name up, or notes that nothing bears it.
func (p *planned) find(step, name string) thing {
	t, ok := p.things[name]
	if !ok {
		p.fault("%s: nothing on this rig is called %q: stays, stand-ins and the plates that stays land on at the hull are", step, name)
	}
	return t
}

func (p *planned) fault(format string, args ...any) {
	p.faults = append(p.faults, fmt.Errorf(format, args...))
}

// take goes through a step: what stands while it is on, and after it.
func (p *planned) take(step string, s Step) (during, after onBoard) {
	for _, name := range s.Fit {
		if t := p.find(step, name); t.kind == aStandIn {
			p.fitStandIn(step, name, t.at)
		}
	}
	for _, name := range s.Remove {
		p.off(step, name)
	}
	for _, name := range s.Replace {
		p.off(step, name)
	}
	p.landings(step)
	during = p.now.clone()
	for _, name := range s.Fit {
		if t := p.things[name]; t.kind == aStay || t.kind == aPlate || t.kind == anOther {
			p.on(step, name, false)
		}
	}
	for _, name := range s.Replace {
		p.on(step, name, true)
	}
	return during, p.now.clone()
}

func (p *planned) fitStandIn(step, name string, at int) {
	if p.now.rigged[at] {
		p.fault("%s: %s is up already", step, name)
	}
	p.now.rigged[at] = true
}

// off takes something off that is on.
func (p *planned) off(step, name string) {
	t := p.find(step, name)
	switch {
	case t.kind == aStay && (p.now.stayOff[t.at] || p.plateOut(p.rig.plateOf[t.at])),
		t.kind == anOther && (p.now.otherOff[t.at] || p.plateOut(p.rig.otherOn[t.at])):
		p.fault("%s: %s is off already", step, name)
	case t.kind == aStay:
		p.now.stayOff[t.at] = true
	case t.kind == anOther:
		p.now.otherOff[t.at] = true
	case t.kind == aPlate && p.now.plateOut[t.at]:
		p.fault("%s: %s is out already", step, name)
	case t.kind == aPlate:
		p.now.plateOut[t.at] = true
	case t.kind == aStandIn && !p.now.rigged[t.at]:
		p.fault("%s: %s is not up, so it can't be taken down", step, name)
	case t.kind == aStandIn:
		p.now.rigged[t.at] = false
	}
}

// on puts something back that is off; renewed says that it is a new one.
func (p *planned) on(step, name string, renewed bool) {
	t := p.things[name]
	switch {
	case t.kind == aStay && !p.now.stayOff[t.at], t.kind == anOther && !p.now.otherOff[t.at]:
		p.fault("%s: %s is on already", step, name)
	case t.kind == aStay && p.plateOut(p.rig.plateOf[t.at]):
		p.fault("%s: %s can't be put on while its plate %s is out", step, name, p.rig.Stays[t.at].Plate)
	case t.kind == anOther && p.plateOut(p.rig.otherOn[t.at]):
		p.fault("%s: %s can't be put on while its plate %s is out", step, name, p.rig.Others[t.at].Plate)
	case t.kind == aStay:
		p.now.stayOff[t.at] = false
	case t.kind == anOther:
		p.now.otherOff[t.at] = false
	case t.kind == aPlate && !p.now.plateOut[t.at]:
		p.fault("%s: %s is in already", step, name)
	case t.kind == aPlate:
		p.now.plateOut[t.at] = false
		if renewed {
			p.now.plates[t.at] = p.now.plates[t.at].renewed()
		}
	case t.kind == aStandIn:
		p.now.rigged[t.at] = true
	}
}

// plateOut tells whether a plate is out; one that is none of the rig's never is.
func (p *planned) plateOut(at int) bool { return at >= 0 && p.now.plateOut[at] }

// landings holds that no stand-in that is up is made fast to a plate that is out.
func (p *planned) landings(step string) {
	for i, s := range p.rig.StandIns {
		if at := p.rig.landsOn[i]; p.now.rigged[i] && at >= 0 && p.now.plateOut[at] {
			p.fault("%s: %s is made fast to %s, which is out", step, s.Name, s.Plate)
		}
	}
}
