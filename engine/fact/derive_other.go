package fact

import (
	"errors"

	"chainwale/engine/corrosion"
	"chainwale/engine/plan"
	"chainwale/engine/table"
)

// contact makes a place where two metals touch.
func (b *builder) contact(p *plan.Contact) {
	c := &Contact{Subject: Subject{ID: p.ID.Value, Name: p.ID.Value, At: p.At}}
	giveYesNo(&c.Isolated, p.Isolated)
	giveWord(&c.Exposure, p.Exposure)
	giveYesNo(&c.Hidden, p.Hidden)
	couple := func() (formula[corrosion.CoupleResult], error) {
		k, err := corrosion.CoupleOf(p.Between[0].Value, p.Between[1].Value, corrosion.Exposure(c.Exposure.Text()))
		k.Hidden = c.Hidden.Yes()
		k.AreaA, k.AreaB = p.AreaA.Value, p.AreaB.Value
		return k, err
	}
	from := values(&c.Exposure.Value, &c.Hidden.Value)
	reckon(&c.Apart, from, couple, func(r corrosion.CoupleResult) float64 { return r.Difference })
	reckon(&c.Limit, from, couple, func(r corrosion.CoupleResult) float64 { return r.Limit })
	c.AreaRatio.WouldStand(p.AreaA.At)
	if p.AreaA.Given {
		reckon(&c.AreaRatio, from, couple, func(r corrosion.CoupleResult) float64 { return r.AreaRatio })
	}
	eaten(c, from, couple)
	family(c, p)
	b.facts.Contacts = append(b.facts.Contacts, c)
}

// eaten names the metal that pays.
func eaten(c *Contact, from []*Value, couple func() (formula[corrosion.CoupleResult], error)) {
	if !c.Anode.follows(from) {
		return
	}
	f, err := couple()
	if err == nil {
		var r corrosion.CoupleResult
		if r, err = f.Reckon(); err == nil {
			c.Anode.Give(r.Anode, c.At)
			return
		}
	}
	c.Anode.Refuse(err.Error())
}

// family says whether both metals are of one family.
func family(c *Contact, p *plan.Contact) {
	a, errA := table.MetalNamed(p.Between[0].Value)
	b, errB := table.MetalNamed(p.Between[1].Value)
	if err := errors.Join(errA, errB); err != nil {
		c.SameFamily.WouldStand(p.At)
		c.SameFamily.Refuse(err.Error())
		return
	}
	c.SameFamily.Give(a.Family == b.Family || a.Kind == b.Kind && a.Stainless(), p.At)
}

// tooEarly tells whether a day was over before the part can have been there. A part
// of unknown age may have been there on any day.
func tooEarly(on, installed plan.Day) bool {
	return installed.Given && on.Last.Before(installed.First)
}

// When a record was made, beside the day judged on and the day the part was fitted.
const (
	datedWell   = "in the part's time"
	datedBefore = "before the part was there"
	datedAfter  = "after the day judged on"
)

// dated tells whether a record can be of the part: neither of a day still to come
// nor of one on which the part was not there.
func (b *builder) dated(on, installed plan.Day) string {
	switch {
	case on.First.After(b.on):
		return datedAfter
	case tooEarly(on, installed):
		return datedBefore
	}
	return datedWell
}

// Which part a record is of, where the one that stood there goes or is gone.
const (
	partThere  = "the part that is there"
	partToGo   = "the part that is to go"
	partIsGone = "the part that is gone"
)

// of tells which part a record is of. One that is kept is there, whatever the day of
// the record; one that is made anew is there from the day on which it was fitted.
func (b *builder) of(on plan.Day, f *Fitting) string {
	installed := b.installed[f.ID]
	switch {
	case f.State.Is("kept"):
		return partThere
	case !installed.Given || installed.First.After(b.on):
		return partToGo
	case tooEarly(on, installed):
		return partIsGone
	}
	return partThere
}

// percent is a share as people say it.
func percent(n, share *Number) {
	arithmetic(n, "%", "share * 100", "", values(&share.Value), func() float64 { return share.Float() * 100 })
}

// records makes what somebody saw of each fitting that a record means.
func (b *builder) records(p *plan.Record) {
	for _, id := range b.facts.expanded[p.Fitting.Value] {
		for _, f := range b.facts.Fittings {
			if f.ID != id {
				continue
			}
			name := p.ID.Value
			if id != p.Fitting.Value {
				name += "/" + id
			}
			r := &Record{Subject: Subject{ID: name, Name: p.ID.Value, At: p.At}, Fitting: f}
			giveWord(&r.Crack, p.Crack)
			giveWord(&r.Leak, p.Leak)
			giveWord(&r.RustWeep, p.RustWeep)
			giveWord(&r.Pits, p.Pits)
			giveWord(&r.PinBent, p.PinBent)
			give(&r.Loss, p.Loss)
			if !p.Loss.Given && r.Pits.Is("none seen") {
				r.Loss.Give(0, p.Pits.At) // whoever looked for pits saw none, and wrote down no wear
			}
			giveYesNo(&r.LossAtHole, p.LossAtHole)
			give(&r.Ovality, p.Ovality)
			percent(&r.LossPercent, &r.Loss)
			percent(&r.OvalityPercent, &r.Ovality)
			for _, w := range []*Word{&r.Crack, &r.Pits} {
				if w.Is("none seen") {
					hide(&w.Value, f)
				}
			}
			r.Drawn.Give(drawn(p.Did.Value), p.Did.At)
			r.Of.Give(b.of(p.On, f), p.On.At)
			b.years(&r.Since, p.On)
			r.Dated.Give(b.dated(p.On, b.installed[f.ID]), p.On.At)
			b.facts.Records = append(b.facts.Records, r)
		}
	}
}
