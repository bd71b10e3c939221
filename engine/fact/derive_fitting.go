package fact

import (
	"errors"
	"time"

	"chainwale/engine/corrosion"
	"chainwale/engine/plan"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

// fittings makes the one or two fittings that an item of the plan stands for,
// with the landings and bolt groups of the stays they serve.
func (b *builder) fittings(p *plan.Fitting) {
	var ids []string
	if p.Measured.Given() {
		whole, old := p.Completed()
		p = &whole
		b.madeOf(p).old = old
	}
	for _, side := range sides(p.ID, p.Side) {
		f := b.fitting(p, side)
		b.facts.Fittings = append(b.facts.Fittings, f)
		ids = append(ids, f.ID)
		b.facts.expanded[f.ID] = []string{f.ID}
		b.installed[f.ID] = p.Installed
		b.serve(p, f, side)
	}
	b.facts.expanded[p.ID.Value] = ids
}

// serve makes what hangs on a fitting: its mounting, the landings of its stays,
// and what all of them together ask of it.
func (b *builder) serve(p *plan.Fitting, f *Fitting, side side) {
	b.mounting(p, f)
	var stays []*Stay
	for _, id := range p.Serves {
		for _, s := range b.facts.stayCalled(id.Value, side.name) {
			stays = append(stays, s)
			if atMast(p) {
				continue // the plan tells of the pins at the lower ends only
			}
			s.Fittings.Give(s.Fittings.number+1, s.At)
			b.landing(p, f, s)
		}
	}
	at := p.At
	at.Pointer += "/serves"
	f.Stays.Give(float64(len(stays)), at)
	b.bearsAll(f, side)
	b.bends(p, f)
	b.match(p, f, side)
}

// atMast tells whether a fitting holds the upper ends of stays.
func atMast(p *plan.Fitting) bool { return p.Kind.Value == "tang" }

func (b *builder) fitting(p *plan.Fitting, side side) *Fitting {
	f := &Fitting{Subject: Subject{ID: side.id, Name: side.id, At: p.At}}
	giveWord(&f.State, p.State)
	giveWord(&f.Sort, p.Kind)
	give(&f.Thickness, p.Thickness)
	give(&f.Width, p.Outline.WidthAtPin())
	giveWord(&f.Waters, b.plan.Boat.Waters)
	giveWord(&f.Climate, b.plan.Boat.Climate)
	b.years(&f.Age, p.Installed)
	f.AgeKnown.Give(p.Installed.Given, p.Installed.At)
	giveYesNo(&f.Welded, p.Welded)
	metal(&f.Metal, p.Metal, &f.Thickness, f.Welded.Yes())
	glass(f, p)
	place(f, p)
	giveWord(&f.Bonding, p.Bonding)
	f.BondingTold.Give(p.Bonding.Given, p.Bonding.At)
	b.looks(f, p)
	life(f)
	return f
}

// errNoMetal says nothing: a metal that is not named is asked for as such.
var (
	errNoMetal = errors.New("")
	noMetal    = &table.Metal{}
)

// metal looks the metal up. Strengths of a certificate replace the table's minima.
// Beside a weld the metal counts with its welded strength.
func metal(m *MetalFacts, p plan.Metal, thickness *Number, welded bool) {
	giveWord(&m.Name, p.Name)
	row, err := noMetal, errNoMetal
	if p.Name.Given {
		row, err = foundMetal(p, thickness, welded)
	}
	look := func(n *Number, symbol, unit string, certified plan.Amount, of func() (float64, error), source working.Source) {
		if certified.Given {
			n.Give(certified.Value, certified.At)
			n.work = oneStep(symbol, "as certified", certified.Value, unit, certificate)
			believe(n, *row, m.Name.Text())
			return
		}
		n.Derive([]*Value{&m.Name.Value}, func() (float64, error) {
			if err != nil {
				return 0, err
			}
			return of()
		}, func() []working.Step {
			return oneStep(symbol, "least value of "+row.Name+", "+row.Standard, n.number, unit, source)()
		})
	}
	look(&m.Yield, "f_y", "MPa", p.Yield, func() (float64, error) { return row.Yield, nil }, row.Strength)
	look(&m.Ultimate, "f_u", "MPa", p.Ultimate, func() (float64, error) { return row.Ultimate, nil }, row.Strength)
	kindOfMetal(m, row, err)
	m.Certified.Give(p.Certificate.Given, p.Certificate.At)
	carbon(m, p, row, err)
	pren(m, row, err)
}

// foundMetal is metalRow for many who keep the row, so that each does not keep one of its own.
func foundMetal(p plan.Metal, thickness *Number, welded bool) (*table.Metal, error) {
	row, err := metalRow(p, thickness, welded)
	return &row, err
}

func metalRow(p plan.Metal, thickness *Number, welded bool) (table.Metal, error) {
	t := 0.0
	if thickness.Known() {
		t = thickness.Float()
	}
	return table.MetalFor(p.Name.Value, t, welded)
}

// carbon is the most that the certificate or else the table lets the metal hold, in
// per cent by mass, as the grades are told apart.
func carbon(m *MetalFacts, p plan.Metal, row *table.Metal, err error) {
	if p.Carbon.Given {
		m.Carbon.Give(p.Carbon.Value*100, p.Carbon.At)
		m.Carbon.work = oneStep("C", "as certified", m.Carbon.number, "%", certificate)
		return
	}
	m.Carbon.Derive(values(&m.Name.Value), func() (float64, error) { return row.CarbonMax, err }, func() []working.Step {
		return oneStep("C", "most that "+row.Name+", "+row.Standard+", may hold", row.CarbonMax, "%", row.Carbon)()
	})
}

// kindOfMetal says what the corrosion rules ask of a metal.
func kindOfMetal(m *MetalFacts, row *table.Metal, err error) {
	from := values(&m.Name.Value)
	for _, v := range [...]*Value{&m.Family.Value, &m.Stainless.Value, &m.Titanium.Value, &m.Brass.Value} {
		if v.follows(from) && err != nil {
			v.Refuse(err.Error())
		}
	}
	if !m.Name.Known() || err != nil {
		return
	}
	m.Family.Give(row.Kind, m.Name.at)
	m.Stainless.Give(row.Stainless(), m.Name.at)
	m.Titanium.Give(row.Titanium(), m.Name.at)
	m.Brass.Give(row.Brass(), m.Name.at)
}

// pren works the pitting resistance out at the chemistry minimum.
func pren(m *MetalFacts, row *table.Metal, err error) {
	reckon(&m.PREN, values(&m.Name.Value),
		func() (formula[corrosion.PittingResistanceResult], error) {
			if err != nil {
				return nil, err
			}
			return (*pittingOf)(row), nil
		},
		func(r corrosion.PittingResistanceResult) float64 { return r.PREN })
}

// pittingOf is the pitting resistance of a metal as a formula.
type pittingOf table.Metal

// Reckon gives it.
func (m *pittingOf) Reckon() (corrosion.PittingResistanceResult, error) {
	return corrosion.PittingOf(table.Metal(*m))
}

// place says whether the part is hidden and whether it is under water: as the
// plan says, or as its mounting shows. A part that goes through the deck or
// behind glass is hidden whatever else is said of it.
func place(f *Fitting, p *plan.Fitting) {
	m := p.Mounting
	clear := m.ThroughDeck.Given && m.GlassedIn.Given
	switch {
	case f.GlassedIn.Yes():
		f.Hidden.Give(true, m.GlassedIn.At)
	case m.ThroughDeck.Given && m.ThroughDeck.Value:
		f.Hidden.Give(true, m.ThroughDeck.At)
	case p.Exposure.Given:
		f.Hidden.Give(p.Exposure.Value != "open", p.Exposure.At)
	case clear:
		f.Hidden.Give(false, m.ThroughDeck.At)
	default:
		f.Hidden.WouldStand(p.Exposure.At)
	}
	inboard := m.To.Given && m.To.Value != "hull"
	switch {
	case p.Exposure.Given:
		f.UnderWater.Give(p.Exposure.Value == "under water", p.Exposure.At)
	case inboard:
		f.UnderWater.Give(false, m.To.At)
	default:
		f.UnderWater.WouldStand(p.Exposure.At)
	}
}

// looks says when the part was last drawn and looked at, and whether a day for
// the next look is set. A part that can be seen all over counts as looked at
// when somebody looked; one that is glassed in, never: what shows of it is not what
// breaks, and whoever says that it was drawn has to say how.
func (b *builder) looks(f *Fitting, p *plan.Fitting) {
	nowhere := f.At
	nowhere.Pointer = "/records"
	f.SinceLook.WouldStand(nowhere)
	last := p.Installed
	for _, r := range b.plan.Records {
		seen := drawn(r.Did.Value) && !f.GlassedIn.Yes() || f.Hidden.No() && r.Did.Value == "looked at"
		if !seen || !r.On.Given || b.dated(r.On, p.Installed) != datedWell || !b.means(r.Fitting, p, f.ID) {
			continue
		}
		f.Seen = true
		if !last.Given || r.On.First.After(last.First) {
			last = r.On
		}
	}
	if last.Given {
		b.years(&f.SinceLook, last)
	}
	f.LookPlanned.Give(p.NextLook.Given && !p.NextLook.Last.Before(b.on.Truncate(24*time.Hour)), p.NextLook.At)
}

// drawn tells whether whoever did so took the part out.
func drawn(did string) bool { return did == "drawn and looked at" || did == "tested" }

// means tells whether an id written in the plan means this fitting: by its own
// id or by that of its pair.
func (b *builder) means(written plan.Text, p *plan.Fitting, id string) bool {
	return written.Value == id || written.Value == p.ID.Value
}

// The years for which a plate is commonly trusted, by where it stands.
const (
	lifeHiddenTropics = 10
	lifeUsual         = 15
	lifeOpenSeen      = 25
)

var lifeSource = working.Source{Title: "riggers, surveyors and insurers: ten to twenty-five years by condition; which life goes with which place is this project's", As: working.Judgement}

// life says how long such a part is commonly trusted.
func life(f *Fitting) {
	from := []*Value{&f.Hidden.Value}
	if f.Hidden.Yes() {
		from = append(from, &f.Climate.Value)
	}
	f.Life.Derive(from,
		func() (float64, error) {
			switch {
			case f.Hidden.Yes() && f.Climate.Is("tropical"):
				return lifeHiddenTropics, nil
			case f.Hidden.No() && f.Seen:
				return lifeOpenSeen, nil
			}
			return lifeUsual, nil
		},
		func() []working.Step {
			return oneStep("life", "by place, climate and looks", f.Life.Float(), "year", lifeSource)()
		})
}
