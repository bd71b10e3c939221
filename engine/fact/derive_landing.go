package fact

import (
	"fmt"
	"sync"

	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/strength"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

// landing makes the landing of a stay on a fitting, and the fitting's bolts
// under that stay's pull.
func (b *builder) landing(p *plan.Fitting, f *Fitting, s *Stay) {
	l := &Landing{Subject: Subject{ID: s.ID, Name: s.ID + " on " + f.Name, At: p.At}, Stay: s, Fitting: f}
	hole := pinHole(l, p)
	pin(l, s.plan.Pin)
	give(&l.ForkOpening, s.plan.Fork.Opening)
	give(&l.ForkCheek, s.plan.Fork.Cheek)
	platePin(l, &p.Outline)
	pinStrength(l)
	timesWire(&l.PlateTimesWire, &l.PlateUltimate, s)
	timesWire(&l.PinShearTimesWire, &l.PinShear, s)
	timesWire(&l.PinBendingTimesWire, &l.PinBending, s)
	fits(l)
	leans(l)
	b.facts.Landings = append(b.facts.Landings, l)
	b.bolts(p, f, s, hole)
}

// pinHole finds the hole that the stay's pin goes through and takes its measures.
func pinHole(l *Landing, p *plan.Fitting) *plan.Hole {
	var found []*plan.Hole
	for i := range p.Holes {
		h := &p.Holes[i]
		if h.Role.Value == "pin" && (!h.Stay.Given || meansStay(h.Stay.Value, l.Stay)) {
			found = append(found, h)
		}
	}
	if len(found) == 1 {
		h := found[0]
		l.sizes(h)
		end(&l.End, h, p.Holes)
		across(&l.Across, h)
		return h
	}
	why := ""
	if len(found) > 1 {
		why = fmt.Sprintf("%d pin holes may be the one of %s; say under `stay` which is", len(found), l.Stay.Name)
	}
	at := finding.Place{File: p.At.File, Line: p.At.Line, Column: p.At.Column, Pointer: p.At.Pointer + "/holes"}
	l.narrow = &l.Hole
	for _, n := range []*Number{&l.Hole, &l.HoleLong, &l.End, &l.Across} {
		n.WouldStand(at)
		n.Refuse(why)
	}
	return nil
}

// end is how much metal stands before a pin hole: to the plate's end, or to the edge
// of another hole that the pin would tear into first. A hole that may stand there
// and has no place leaves it unknown. The pin pulls into the near end of an oval hole,
// so that its metal is counted from the middle of that end.
func end(n *Number, h *plan.Hole, holes []plan.Hole) {
	give(n, h.Along)
	n.number -= h.Beyond()
	for i := range holes {
		o := &holes[i]
		apart := abs(o.Across.Value - h.Across.Value)
		behind := o.Along.Given && h.Along.Given && o.Along.Value >= h.Along.Value
		beside := !behind && o.Diameter.Given && h.Diameter.Given && apart >= o.ReachAcross()+h.ReachAcross()
		switch {
		case o == h || !n.Known() || beside || behind:
		case !o.Along.Given:
			n.WouldStand(o.Along.At)
			n.Refuse("")
		case !o.Diameter.Given:
			n.WouldStand(o.Diameter.At)
			n.Refuse("")
		default:
			n.Give(min(n.number, h.Along.Value-h.Beyond()-o.Along.Value-o.ReachAlong()), h.Along.At)
		}
	}
}

func meansStay(written string, s *Stay) bool {
	return written == s.ID || written == s.plan.ID.Value
}

// across is how far a hole stands off the centre line: on it, unless the plan
// says otherwise.
func across(n *Number, h *plan.Hole) {
	n.Give(0, h.Across.At)
	if h.Across.Given {
		n.Give(h.Across.Value, h.Across.At)
	}
}

// pin takes the pin's size, as measured or else nominal, and its strength.
func pin(l *Landing, p plan.Pin) {
	give(&l.PinNominal, p.Diameter)
	give(&l.PinMeasured, p.Measured)
	give(&l.PinDiameter, p.Diameter)
	if p.Measured.Given {
		give(&l.PinDiameter, p.Measured)
	}
	giveWord(&l.PinMetal, p.Metal)
	brass(&l.PinBrass, &l.PinMetal)
	familyOf(&l.PinFamily, &l.PinMetal)
	row := func() (*table.Metal, error) { return metalCalled(l.PinMetal.Text()) }
	look := func(n *Number, symbol string, certified plan.Amount, of func(*table.Metal) float64) {
		if certified.Given {
			n.Give(certified.Value, certified.At)
			if m, err := row(); err == nil {
				believe(n, *m, l.PinMetal.Text())
			}
			return
		}
		n.Derive([]*Value{&l.PinMetal.Value},
			func() (float64, error) {
				m, err := row()
				if err != nil {
					return 0, err
				}
				return of(m), nil
			},
			func() []working.Step {
				m, err := row()
				if err != nil {
					return nil
				}
				return oneStep(symbol, "least value of "+m.Name+", "+m.Standard, of(m), "MPa", m.Strength)()
			})
	}
	look(&l.PinYield, "f_y", p.Yield, func(m *table.Metal) float64 { return m.Yield })
	look(&l.PinUltimate, "f_u", p.Ultimate, func(m *table.Metal) float64 { return m.Ultimate })
}

// brass tells whether a metal loses its zinc. One that the table doesn't have is
// not known to keep it.
func brass(y *YesNo, metal *Word) {
	if !y.follows(values(&metal.Value)) {
		return
	}
	m, err := metalCalled(metal.Text())
	if err != nil {
		y.Refuse(err.Error())
		return
	}
	y.Give(m.Brass(), metal.at)
}

// platePin works out what the plate stands at its pin hole.
func platePin(l *Landing, o *plan.Outline) {
	f := l.Fitting
	reckon(&l.PlateUltimate,
		values(&f.Thickness.Value, &f.Width.Value, &l.Hole.Value, &l.PinDiameter.Value, &l.End.Value, &l.Across.Value, &f.Metal.Yield.Value, &f.Metal.Ultimate.Value),
		func() (formula[strength.PinPlateResult], error) {
			return strength.PinPlate{Thickness: f.Thickness.Float(), Width: f.Width.Float(), Hole: l.Hole.Float(), Pin: l.PinDiameter.Float(),
				End: l.End.Float(), EndRadius: endRadius(*o, f.Width.Float()), Across: l.Across.Float(), Yield: f.Metal.Yield.Float(), Ultimate: f.Metal.Ultimate.Float()}, nil
		},
		func(r strength.PinPlateResult) float64 { return r.Ultimate })
	reckon(&l.PlateBearing, values(&f.Thickness.Value, &l.PinDiameter.Value, &f.Metal.Yield.Value),
		func() (formula[strength.BearingResult], error) {
			return strength.Bearing{Thickness: f.Thickness.Float(), Pin: l.PinDiameter.Float(), Yield: f.Metal.Yield.Float()}, nil
		},
		func(r strength.BearingResult) float64 { return r.Lowest })
}

// endRadius is the radius of the plate's loaded end: 0 for a square end; half the
// width for a round one that names no radius. An end that nobody described counts
// as round, which is the weaker; so does a square end whose corners are rounded, and
// whatever end a contour draws in its own way, unless it names a smaller radius.
func endRadius(o plan.Outline, width float64) float64 {
	radius := namedEnd(o, width)
	cornered := o.End.Value == "square" && o.Corner.Given && o.Corner.Value > 0
	if (cornered || len(o.Contour) > 0) && !(radius > 0 && radius < width/2) {
		return width / 2
	}
	return radius
}

// namedEnd is the radius by what the plan calls the end.
func namedEnd(o plan.Outline, width float64) float64 {
	switch {
	case o.End.Value == "square":
		return 0
	case o.End.Value == "tapered" && o.Nose.Given:
		return o.Nose.Value / 2
	case o.EndRadius.Given:
		return o.EndRadius.Value
	}
	return width / 2
}

// pinStrength works out what the pin stands in shear and in bending.
func pinStrength(l *Landing) {
	t := &l.Fitting.Thickness
	reckon(&l.PinShear, values(&l.PinDiameter.Value, &l.PinUltimate.Value),
		func() (formula[strength.PinShearResult], error) {
			return strength.PinShear{Diameter: l.PinDiameter.Float(), Ultimate: l.PinUltimate.Float()}, nil
		},
		func(r strength.PinShearResult) float64 { return r.Shear })
	reckon(&l.PinBending, values(&l.PinDiameter.Value, &l.ForkOpening.Value, &l.ForkCheek.Value, &t.Value, &l.PinYield.Value, &l.PinUltimate.Value),
		func() (formula[strength.PinResult], error) {
			return strength.Pin{Diameter: l.PinDiameter.Float(), Plate: t.Float(), Cheek: l.ForkCheek.Float(), Gap: (l.ForkOpening.Float() - t.Float()) / 2,
				Yield: l.PinYield.Float(), Ultimate: l.PinUltimate.Float()}, nil
		},
		func(r strength.PinResult) float64 { return r.Bending })
	atWork := func() (formula[strength.PinResult], error) {
		return strength.Pin{Diameter: l.PinDiameter.Float(), Plate: t.Float(), Cheek: l.ForkCheek.Float(), Gap: (l.ForkOpening.Float() - t.Float()) / 2,
			Force: l.Stay.WorkingLoad.Float(), Yield: l.PinYield.Float(), Ultimate: l.PinUltimate.Float()}, nil
	}
	from := values(&l.PinDiameter.Value, &l.ForkOpening.Value, &l.ForkCheek.Value, &t.Value, &l.PinYield.Value, &l.PinUltimate.Value, &l.Stay.WorkingLoad.Value)
	reckon(&l.PinPlastic, from, atWork, func(r strength.PinResult) float64 { return r.PlasticMoment })
	reckon(&l.PinMoment, from, atWork, func(r strength.PinResult) float64 { return r.Moment })
}

// leans takes how the wire leaves the plate, whichever way it leans.
func leans(l *Landing) {
	for _, lean := range []struct {
		n *Number
		a plan.Amount
	}{{&l.LeanIn, l.Stay.plan.Lean.InPlane}, {&l.LeanOut, l.Stay.plan.Lean.OutOfPlane}} {
		give(lean.n, lean.a)
		lean.n.number = abs(lean.n.number)
	}
	oneSystem(l)
}

// closeFit is how much wider than its pin a hole of the same system is, at most.
const closeFit = 0.75

// oneSystem tells whether pin and hole are both of inch sizes or both of metric
// ones. The hole is of the other system if a pin of that system would fit it
// closely and the pin that stands in it does not.
func oneSystem(l *Landing) {
	if !l.OneSystem.follows(values(&l.PinNominal.Value, &l.narrow.Value)) {
		return
	}
	pin, err := table.ClevisPin(l.PinNominal.Float())
	if err != nil {
		l.OneSystem.Refuse(err.Error())
		return
	}
	all, err := clevisPins()
	if err != nil {
		l.OneSystem.Refuse(err.Error())
		return
	}
	one := fitsClosely(pin, l.narrow.Float())
	other := false
	for _, p := range all {
		other = other || p.Inch() != pin.Inch() && fitsClosely(p, l.narrow.Float())
	}
	l.OneSystem.Give(one || !other, l.narrow.at)
}

// clevisPins are all rows of the table, copied once for all landings.
var clevisPins = sync.OnceValues(table.ClevisPins)

func fitsClosely(p table.ClevisPinRow, hole float64) bool {
	return hole > p.Nominal && hole-p.Nominal <= closeFit
}

// timesWire sets a strength in relation to the wire: "1.4 times the wire".
func timesWire(n, strength *Number, s *Stay) {
	arithmetic(n, "R/F_break", "strength / break load of the wire", "", values(&strength.Value, &s.BreakLoad.Value),
		func() float64 { return strength.Float() / s.BreakLoad.Float() })
}

// fits works out how hole, pin, plate and fork fit each other.
func fits(l *Landing) {
	f := l.Fitting
	distances := func() (formula[strength.HoleDistancesResult], error) {
		return strength.HoleDistances{Width: f.Width.Float(), Hole: l.Hole.Float(), End: l.End.Float(), Across: l.Across.Float()}, nil
	}
	from := values(&l.End.Value, &l.Hole.Value, &f.Width.Value, &l.Across.Value)
	reckon(&l.EndRatio, from, distances, func(r strength.HoleDistancesResult) float64 { return r.End })
	from = values(&f.Width.Value, &l.Hole.Value, &l.End.Value, &l.Across.Value)
	reckon(&l.SideRatio, from, distances, func(r strength.HoleDistancesResult) float64 { return r.Side })
	l.clearance()
	arithmetic(&l.ForkFill, "t/G", "thickness / fork opening", "", values(&f.Thickness.Value, &l.ForkOpening.Value),
		func() float64 { return f.Thickness.Float() / l.ForkOpening.Float() })
}
