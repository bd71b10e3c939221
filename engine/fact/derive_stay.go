package fact

import (
	"fmt"

	"chainwale/engine/plan"
	"chainwale/engine/quantity"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

// workingShare is the share of the break load that a wire carries at work:
// a factor of 2.5 on break.
const workingShare = 1 / 2.5

var (
	workingSource = working.Source{Title: "factors on rigging wire of 2.5 to 4", As: working.CommonPractice, For: "a working load of the break load over 2.5"}
	certificate   = working.Source{Title: "the certificate that the plan names", As: working.Published}
)

// stays makes the one or two stays that an item of the plan stands for.
func (b *builder) stays(p *plan.Stay) {
	for _, side := range sides(p.ID, p.Side) {
		s := &Stay{Subject: Subject{ID: side.id, Name: side.id, At: p.At}, plan: p}
		s.Fittings.Give(0, p.At)
		giveWord(&s.Role, p.Role)
		giveWord(&s.Construction, p.Wire.Construction)
		giveWord(&s.WireMetal, p.Wire.Metal)
		give(&s.WireDiameter, p.Wire.Diameter)
		giveYesNo(&s.Toggle, p.Toggle)
		b.years(&s.Age, p.Installed)
		b.wireLife(s)
		breakLoad(s, p.Wire)
		s.WorkingLoad.Derive([]*Value{&s.BreakLoad.Value},
			func() (float64, error) { return workingShare * s.BreakLoad.Float(), nil },
			func() []working.Step {
				return []working.Step{{Symbol: "F_work", Formula: "F_break / 2.5", Inputs: []working.Input{{Symbol: "F_break", Value: s.BreakLoad.Float(), Unit: "N"}},
					Value: s.WorkingLoad.Float(), Unit: "N", Source: workingSource}}
			})
		b.stayOnRig(s, side.name)
		b.facts.Stays = append(b.facts.Stays, s)
	}
}

// The years for which a wire is commonly trusted, by the waters.
const (
	wireLifeOcean   = 10
	wireLifeCoastal = 12
	wireLifeFresh   = 15
)

var wireLifeSource = working.Source{Title: "riggers and a sailing paper: ten to fifteen years, less offshore and in the tropics", As: working.Published, For: "the range"}

// wireLife says how long such a wire is commonly trusted.
func (b *builder) wireLife(s *Stay) {
	giveWord(&s.Waters, b.plan.Boat.Waters)
	giveWord(&s.Climate, b.plan.Boat.Climate)
	lookUp(&s.Life, "life", "by waters and climate", "year", wireLifeSource, values(&s.Waters.Value, &s.Climate.Value), func() float64 {
		switch {
		case s.Waters.Is("ocean") || s.Climate.Is("tropical"):
			return wireLifeOcean
		case s.Waters.Is("fresh"):
			return wireLifeFresh
		}
		return wireLifeCoastal
	})
}

// breakLoad takes the certificate's break load, or else the table's. Where the
// wire's metal is not known it counts as the stronger wire, because the wire is
// the load here.
func breakLoad(s *Stay, w plan.Wire) {
	if w.BreakLoad.Given {
		s.BreakLoad.Give(w.BreakLoad.Value, w.BreakLoad.At)
		s.BreakLoad.work = func() []working.Step {
			return []working.Step{{Symbol: "F_break", Formula: "as certified", Value: w.BreakLoad.Value, Unit: "N", Source: certificate}}
		}
		tooWeak(s)
		return
	}
	s.BreakLoad.Derive([]*Value{&s.WireDiameter.Value, &s.Construction.Value},
		func() (float64, error) {
			row, err := wireRow(s)
			return row.BreakLoadMost, err
		},
		func() []working.Step {
			row, err := wireRow(s)
			if err != nil {
				return nil
			}
			return []working.Step{{Symbol: "F_break", Meaning: describe(row), Formula: "by the table of wire",
				Inputs: []working.Input{{Symbol: "d", Value: s.WireDiameter.Float(), Unit: "mm"}}, Value: row.BreakLoadMost, Unit: "N", Source: row.Source}}
		})
}

// wireRow looks the wire up; a metal that nobody knows may be any of those the
// table has.
func wireRow(s *Stay) (table.WireRow, error) {
	return table.Wire(s.Construction.Text(), s.WireMetal.Text(), s.WireDiameter.Float())
}

// describe is the row on one line of a working.
func describe(row table.WireRow) string {
	text := fmt.Sprintf("%s wire of %s, %s", row.Construction, row.Metal, quantity.Format(row.Diameter, quantity.Length, quantity.Metric))
	if row.FromFormula {
		text += "; no row has this diameter, so the most that wires near it break at"
	}
	if row.Note != "" {
		text += "; " + row.Note
	}
	return text
}
