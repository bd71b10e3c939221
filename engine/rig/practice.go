package rig

import (
	"fmt"
	"math"
)

// Matter is what a concern is about.
type Matter string

// What the practice of the trade asks to be looked at beside any margin.
const (
	// ForeAndAft: a forestay or backstay is off, and no two stand-ins lead its way, one to
	// either side of its line.
	ForeAndAft Matter = "fore and aft"
	// BothEnds: forestay and backstay are off together.
	BothEnds Matter = "both ends"
	// CapAndLower: a cap shroud and a lower of one side are off together.
	CapAndLower Matter = "cap and lower"
	// CapsOff: both cap shrouds are off, and the top of the mast stands free.
	CapsOff Matter = "both caps"
)

// Concern is something that riggers do not do whatever the numbers say.
type Concern struct {
	About Matter
	Says  string
}

const (
	// standInsWanted is how many stand-ins a forestay or backstay wants in its place:
	// halyards are led to either side of its line before it goes (common practice, of
	// owners and riggers; that two are asked for is judgement).
	standInsWanted = 2
	// standInFan is within how many degrees of a stay's direction a stand-in leads its
	// way: as far as half of its pull still goes there, cos 60 deg (judgement).
	standInFan = 60.0
)

// side is 1 to port, -1 to starboard, 0 on the centreline.
func (s Stay) side() int {
	switch {
	case s.Line.Foot.Y > 0:
		return 1
	case s.Line.Foot.Y < 0:
		return -1
	}
	return 0
}

func (s Stay) isLower() bool {
	return s.Role == SingleLower || s.Role == ForeLower || s.Role == AftLower
}

// sideWord is the name of a side.
func sideWord(side int) string {
	if side > 0 {
		return "port"
	}
	return "starboard"
}

// concerns are what the trade does not do.
func (p *prepared) concerns(o onBoard) []Concern {
	var list []Concern
	fore, aft := p.gone(o, Forestay), p.gone(o, Backstay)
	for _, role := range []StayRole{Forestay, Backstay} {
		if at := p.gone(o, role); at >= 0 {
			if l := p.leadingLike(o, at); !l.enough() {
				list = append(list, Concern{ForeAndAft, fmt.Sprintf("the %s is off and %s: fit %d, to either side of its line", role, l.says(), standInsWanted)})
			}
		}
	}
	if fore >= 0 && aft >= 0 {
		list = append(list, Concern{BothEnds, "forestay and backstay are off together: never more than one of them"})
	}
	capsOff := 0
	for _, side := range []int{1, -1} {
		if !p.offAt(o, side, func(s Stay) bool { return s.Role == CapShroud }) {
			continue
		}
		capsOff++
		if p.offAt(o, side, Stay.isLower) {
			list = append(list, Concern{CapAndLower, fmt.Sprintf("cap shroud and a lower are off together to %s: unstep the mast or hold it with a crane", sideWord(side))})
		}
	}
	if capsOff == 2 {
		list = append(list, Concern{CapsOff, "both cap shrouds are off: the mast above the lowers stands free, and spreaders that nothing holds have to be lashed"})
	}
	return list
}

// gone is a stay of a role that is off while no other of that role stands, -1 if there is none.
func (p *prepared) gone(o onBoard, role StayRole) int {
	at := -1
	for i, s := range p.Stays {
		if s.Role != role {
			continue
		}
		if p.on(o, i) {
			return -1
		}
		at = i
	}
	return at
}

// leading are the stand-ins that lead a stay's way, and whether any leads to each side of
// its line; one right along it counts for both.
type leading struct {
	n           int
	left, right bool
}

func (l leading) enough() bool { return l.n >= standInsWanted && l.left && l.right }

func (l leading) says() string {
	if l.n >= standInsWanted {
		return "all stand-ins that lead its way lead to one side of its line"
	}
	return fmt.Sprintf("%d stand-ins lead its way", l.n)
}

// with counts one more stand-in if it leads the stay's way.
func (l leading) with(p *prepared, standIn, stay int) leading {
	if !p.leads(standIn, stay) {
		return l
	}
	a, b := p.standInLever[standIn], p.stayLever[stay]
	across := (b.x*a.y - b.y*a.x) / (a.size() * b.size())
	return leading{l.n + 1, l.left || across >= -alike, l.right || across <= alike}
}

// leadingLike are the stand-ins that lead a stay's way and are counted on at all.
func (p *prepared) leadingLike(o onBoard, stay int) (l leading) {
	for i := range p.StandIns {
		if o.rigged[i] && p.strengths[i].Known && p.carries(o, p.landsOn[i]) > 0 {
			l = l.with(p, i, stay)
		}
	}
	return l
}

// leads tells whether a stand-in leads within the fan of a stay's direction.
func (p *prepared) leads(standIn, stay int) bool {
	a, b := p.standInLever[standIn], p.stayLever[stay]
	return a.dot(b) >= math.Cos(radians(standInFan))*a.size()*b.size()
}

// offAt tells whether a stay of some sort is off on a side.
func (p *prepared) offAt(o onBoard, side int, of func(Stay) bool) bool {
	for i, s := range p.Stays {
		if s.side() == side && of(s) && !p.on(o, i) {
			return true
		}
	}
	return false
}
