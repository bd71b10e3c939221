package rig

// counted is the pull that something is counted on for, what that pull hangs on, and
// whether that is a plate on trust: one that nobody has seen or whose strength is not known.
type counted struct {
	pull    float64
	governs string
	onTrust bool
}

// weaker is the one that is counted on for less.
func (c counted) weaker(d counted) counted {
	if d.pull < c.pull {
		return d
	}
	return c
}

// worth is the pull that a stay is counted on for by its wire, its ends and a plate that
// bears its pull; of is that plate in words.
func (r Rig) worth(s Stay, p Plate, of string) counted {
	sound := counted{pull: r.Credit.Wire * s.BreakLoad, governs: "its wire"}
	if s.Ends > 0 {
		sound = sound.weaker(counted{pull: r.Credit.Wire * s.Ends, governs: "its turnbuckle or terminal"})
	}
	if p.State == Cracked {
		return counted{governs: of + ", in which a crack was seen: it counts as nothing"}
	}
	if p.Strength > 0 {
		sound = sound.weaker(counted{pull: r.Credit.Wire * p.Strength, governs: of})
	}
	if p.State != Unseen && p.Strength > 0 {
		return sound
	}
	trusted := sound.weaker(r.atRest(s, p, of))
	trusted.onTrust = true
	return trusted
}

// atRest is what a stay is counted on for by a plate on trust: the pull it has at rest.
func (r Rig) atRest(s Stay, p Plate, of string) counted {
	c := counted{pull: r.Credit.UnseenPlate * s.BreakLoad}
	if s.AtRest > 0 {
		c.pull = s.AtRest
	}
	c.governs = of + ", whose strength is not given: credited with what it carries at rest"
	if p.State == New {
		c.governs = of + ", whose strength is not given, for the plan draws no new one (state: remade or new): credited with what it carries at rest"
	}
	if p.State == Unseen {
		c.governs = of + ", not seen: credited because it stands today, not because it is sound"
	}
	return c
}

// stayWorth is the pull that a stay is counted on for: the least of what it hangs on.
func (p *prepared) stayWorth(o onBoard, stay int) counted {
	s := p.Stays[stay]
	least := p.worth(s, o.plate(p.plateOf[stay]), "its plate")
	for _, need := range p.needs[stay] {
		if c, limits := p.through(o, s, need); limits {
			least = least.weaker(c)
		}
	}
	return least
}

// through is what a stay is counted on for by something that it can't do without, and
// whether that limits it. What pulls another way than the stay limits it no more once its
// plate is known: whether it is strong enough is asked of it elsewhere.
func (p *prepared) through(o onBoard, s Stay, need int) (c counted, limits bool) {
	other, plate := p.Others[need], o.plate(p.otherOn[need])
	c = p.worth(s, plate, "the plate of "+other.Name)
	return c, other.InLine || c.onTrust || plate.State == Cracked
}

// plate is one of the rig's as it is now; what the rig has not is taken for unseen.
func (o onBoard) plate(at int) Plate {
	if at < 0 {
		return Plate{}
	}
	return o.plates[at]
}
