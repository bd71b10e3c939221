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

// uncertainty is how well the place is known that the worst hole has to meet, and which
// reading that comes from most.
func (m *matchOf) uncertainty() {
	n := m.match
	n.Dominated.WouldStand(n.At)
	if !n.Miss.Known() {
		m.unknownUncertainty()
		return
	}
	worst := m.named(n.Worst.Text())
	if worst.hull != nil {
		m.hullUncertainty(worst)
		return
	}
	spread := m.old.Holes[worst.old].Folded
	n.Uncertainty.Derive(values(&n.Miss.Value), func() (float64, error) { return spread.Limit(), nil }, func() []working.Step {
		return spreadSteps(spread)
	})
	n.Dominated.Give(spread.Dominant(), n.At)
}

// unknownUncertainty lacks what the match lacks.
func (m *matchOf) unknownUncertainty() {
	m.match.Uncertainty.Derive(values(&m.match.Miss.Value), func() (float64, error) { return math.NaN(), nil }, nil)
	m.match.Dominated.follows(values(&m.match.Miss.Value))
}

// hullUncertainty is that of a place read once with a tool.
func (m *matchOf) hullUncertainty(worst *meeting) {
	within := worst.hull.Within
	source := working.Source{Title: "an even spread over what the tool is good to, twice its standard uncertainty", As: working.Computed}
	arithmetic(&m.match.Uncertainty, "U", "2 within/sqrt(3)", "mm", amounts(within), func() float64 { return 2 * within.Value / math.Sqrt(3) })
	if m.match.Uncertainty.Known() {
		m.match.Uncertainty.work = oneStep("U", "2 within/sqrt(3)", m.match.Uncertainty.number, "mm", source)
		m.match.Dominated.Give("the place of "+worst.hole.Name.Value+" in the hull", within.At)
	}
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
	for _, f := range m.old.Strip.Folds {
		r, err := sheet.Bend{Thickness: m.old.Strip.Thickness, Radius: f.Radius, Angle: abs(f.Angle)}.Reckon()
		if err != nil {
			return nil
		}
		steps = append(steps, r.Working()...)
		total.Inputs = append(total.Inputs, working.Input{Symbol: "BD", Value: r.Deduction, Unit: "mm"})
	}
	return append(append(steps, total), spreadSteps(m.old.Length.Spread)...)
}

// wornHole is how much longer than wide a pin hole is that has worn.
const wornHole = 0.03

// oldFailed tells whether a record of the old part says that it did not stand. A look
// for nothing of the kind says nothing.
func (b *builder) oldFailed(m *matchOf, p *plan.Fitting) {
	n := m.match
	n.OldFailed.WouldStand(finding.Place{File: p.At.File, Line: p.At.Line, Column: p.At.Column, Pointer: "/records"})
	for _, r := range b.plan.Records {
		if !b.means(r.Fitting, p, m.match.ID) {
			continue
		}
		bad := r.Crack.Value == "seen" || r.PinBent.Value == "seen" || r.Ovality.Given && r.Ovality.Value > wornHole
		looked := r.Crack.Given && r.Crack.Value != "not looked for" && drawn(r.Did.Value)
		if bad || looked && !n.OldFailed.Known() {
			n.OldFailed.Give(bad || n.OldFailed.Yes(), r.At)
		}
	}
}
