package fact

import (
	"fmt"
	"math"

	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/sheet"
	"chainwale/engine/working"
)

// How well the old part was measured, what flat it comes from, and whether it stood.

// uncertainty is how well the place is known of the hole that lacks most for it: whose
// place may be off by most beyond what its bolt has of play. It needs the tool of every
// hole, for the one of which it is not said may be that.
func (m *matchOf) uncertainty(lay func() (laidMatch, error)) {
	n := m.match
	from := values(&n.Miss.Value)
	for _, x := range m.holes {
		if x.hull != nil {
			from = append(from, amounts(x.hull.Within)...)
		}
	}
	known := n.Uncertainty.follows(from)
	for _, v := range values(&n.Dominated.Value, &n.LeastSure.Value, &n.LeastSurePlay.Value) {
		v.follows(from)
	}
	if !known {
		return
	}
	laid, err := lay()
	if err != nil {
		n.Uncertainty.fails(err)
		return
	}
	least := m.leastSure(laid)
	unsure := m.placeOf(m.holes[least])
	n.Uncertainty.Give(unsure.limit, unsure.at)
	n.Uncertainty.work = unsure.work
	n.Dominated.Give(unsure.mostly, unsure.at)
	n.LeastSure.Give(laid.Holes[least].Name, unsure.at)
	n.LeastSurePlay.Give(laid.Holes[least].Freedom, n.Clearance.at)
}

// leastSure is the index of the hole whose place may be off by most beyond its play.
func (m *matchOf) leastSure(laid laidMatch) int {
	least, most := 0, math.Inf(-1)
	for i, x := range m.holes {
		lacks := m.placeOf(x).limit - laid.Holes[i].Freedom
		if math.IsNaN(lacks) {
			return i
		}
		if lacks > most {
			least, most = i, lacks
		}
	}
	return least
}

// unsure is how far a place may be off, mm, what that mostly comes from, and how it was
// worked out.
type unsure struct {
	limit  float64
	mostly string
	at     finding.Place
	work   func() []working.Step
}

// placeOf is how well the place is known that a hole has to meet: from all readings of the
// old part, or from the one that was taken in the hull.
func (m *matchOf) placeOf(x meeting) unsure {
	if x.hull == nil {
		spread := m.old.Holes[x.old].Folded
		return unsure{spread.Limit(), spread.Dominant(), m.plan.Measured.Holes[x.old].At, func() []working.Step { return spreadSteps(spread) }}
	}
	source := working.Source{Title: "as the Guide to the expression of uncertainty in measurement has it", Edition: "JCGM 100:2008 and 101:2008", As: working.Memory, For: "the scatter of the readings and an even spread over what the tool is good to"}
	limit := 2 * max(hullReading(x.hull.Along, x.hull.Within), hullReading(x.hull.Across, x.hull.Within))
	return unsure{limit, "place of " + x.hole.Name.Value + " in the hull", x.hull.Within.At, oneStep("U", "2 sqrt(k^2 s^2/n + within^2/3)", limit, "mm", source)}
}

// hullReading is the standard uncertainty of what was read in the hull, mm: 0 for what
// was not, since that is on the line by which the others are placed.
func hullReading(a, within plan.Amount) float64 {
	if !a.Given {
		return 0
	}
	list := a.Each.Values()
	if list == nil {
		list = []float64{a.Value}
	}
	return sheet.Read(within.Value, list...).Uncertainty()
}

// spreadSteps write down what an uncertainty is made of.
func spreadSteps(s sheet.Spread) []working.Step {
	source := working.Source{Title: "as the Guide to the expression of uncertainty in measurement has it", Edition: "JCGM 100:2008", Clause: "5.1", As: working.Memory, For: "the form of the equation"}
	var steps []working.Step
	for _, share := range s.Shares {
		steps = append(steps, working.Step{Symbol: "u", Meaning: "part of " + share.What, Formula: "|change of the place for a change of it| u(of it)", Value: s.Uncertainty * math.Sqrt(share.Part), Unit: "mm", Source: source})
	}
	return append(steps, working.Step{Symbol: "U", Meaning: "within this in 19 cases of 20", Formula: "2 sqrt(sum u^2)", Value: s.Limit(), Unit: "mm", Source: source})
}

// flatLength is the length of the flat that the old part comes from.
func (m *matchOf) flatLength() {
	n := m.match
	p := m.plan.Measured
	if !p.Given() {
		n.FlatLength.WouldStand(m.plan.Measured.At)
		n.FlatLength.Refuse("nothing was measured on the old part")
		return
	}
	from := amounts(p.Within)
	for _, l := range p.Legs {
		from = append(from, amounts(l.Outside)...)
	}
	n.FlatLength.Derive(from, func() (float64, error) {
		if !m.laid {
			return 0, fmt.Errorf("what was measured on the old part is not whole")
		}
		return m.old.Length.Value, nil
	}, m.lengthSteps)
}

func (m *matchOf) lengthSteps() []working.Step {
	legs := 0.0
	total := working.Step{Symbol: "L", Meaning: "length of the flat", Formula: "sum of the legs - sum of BD/cos(skew)", Value: m.old.Length.Value, Unit: "mm", Source: working.Source{Title: "geometry", As: working.Computed}}
	for _, l := range m.plan.Measured.Legs {
		legs += l.Outside.Value
	}
	total.Inputs = append(total.Inputs, working.Input{Symbol: "legs", Value: legs, Unit: "mm"})
	var steps []working.Step
	for i, f := range m.old.Strip.Folds {
		r, err := bendOfFold(f, m.old.Strip.Thickness, m.testStrip(i)).Reckon()
		if err != nil {
			return nil
		}
		steps = append(steps, r.Working()...)
		total.Inputs = append(total.Inputs, working.Input{Symbol: "BD", Value: r.Deduction, Unit: "mm"})
	}
	return append(append(steps, total), spreadSteps(m.old.Length.Spread)...)
}

// testStrip is the neutral line that a test strip gave for a fold of the old part, 0 for
// none.
func (m *matchOf) testStrip(fold int) float64 {
	if len(m.plan.Folds) != len(m.plan.Measured.Folds) {
		return 0
	}
	return m.plan.Folds[fold].NeutralLine.Value
}

// bendOfFold is a fold as its formula takes it, by the neutral line of a test strip if
// there is one.
func bendOfFold(f sheet.Fold, thickness, testStrip float64) sheet.Bend {
	b := sheet.Bend{Thickness: thickness, Radius: f.Radius, Angle: abs(f.Angle)}
	if testStrip != 0 {
		b.Method, b.K = sheet.AsGiven, testStrip
	}
	return b
}

// wornHole is how much longer than wide a pin hole is that has worn (judgement).
const wornHole = 0.03

// oldFailed tells whether a record of the old part says that it did not stand. A fault
// counts whoever wrote it down; that there was none takes one look at all that could
// tell, on the old part, on a day that has been.
func (b *builder) oldFailed(m *matchOf, p *plan.Fitting) {
	n := m.match
	n.OldFailed.WouldStand(finding.Place{File: p.At.File, Line: p.At.Line, Column: p.At.Column, Pointer: "/records"})
	for _, r := range b.plan.Records {
		if !b.means(r.Fitting, p, m.match.ID) {
			continue
		}
		bad := r.Crack.Value == "seen" || r.PinBent.Value == "seen" || r.Ovality.Given && r.Ovality.Value > wornHole
		switch {
		case bad:
			n.OldFailed.Give(true, r.At)
			return
		case b.lookedWhole(r, m.match.Fitting):
			n.OldFailed.Give(false, r.At)
		}
	}
}

// lookedWhole tells whether crack, pin and hole were all looked at on the part that goes.
// A record of a day on which the new one was there says nothing of the old one.
func (b *builder) lookedWhole(r plan.Record, f *Fitting) bool {
	looked := func(t plan.Text) bool { return t.Given && t.Value != "not looked for" }
	all := drawn(r.Did.Value) && looked(r.Crack) && looked(r.PinBent) && r.Ovality.Given
	return all && r.On.Given && !r.On.First.After(b.on) && b.of(r.On, f) != partThere
}
