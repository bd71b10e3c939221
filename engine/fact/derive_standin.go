package fact

import (
	"fmt"
	"strings"

	"chainwale/engine/plan"
	"chainwale/engine/rig"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

// standIns makes the stand-ins of the plan.
func (b *builder) standIns() {
	for i := range b.plan.Standing.StandIns {
		b.standIn(&b.plan.Standing.StandIns[i])
	}
}

func (b *builder) standIn(p *plan.StandIn) {
	s := &StandIn{Subject: Subject{ID: p.ID.Value, Name: p.ID.Value, At: p.At}, plan: p}
	b.facts.StandIns = append(b.facts.StandIns, s)
	giveWord(&s.Path, p.Path)
	giveWord(&s.Kind, p.Line.Kind)
	give(&s.Diameter, p.Line.Diameter)
	giveWord(&s.Knot, p.Line.End)
	give(&s.Height, p.Height)
	give(&s.FootX, p.Lower.X)
	give(&s.FootY, p.Lower.Y)
	give(&s.FootZ, p.Lower.Z)
	give(&s.Sheave, p.Sheave)
	give(&s.Cleat, p.Cleat)
	give(&s.AtMast, p.MastFitting)
	give(&s.AtDeck, p.DeckFitting)
	s.line()
	b.landsOn(s)
	s.strength()
}

// line works out what the line breaks at: as such, and at its end.
func (s *StandIn) line() {
	p := &s.plan.Line
	var load Number
	give(&load, p.BreakLoad)
	from := values(&s.Kind.Value, &s.Diameter.Value)
	if load.Known() {
		from = append(from, &load.Value)
	}
	of := func() (standInLine, error) {
		l := standInLine{parts: s.parts(), aged: !p.AgeKnown.Value, end: s.Knot.Text(), line: s.Diameter.Float(), round: p.Round.Value}
		row, err := table.Line(s.Kind.Text())
		if err != nil {
			return l, err
		}
		l.row, l.one = row, row.BreakLoad(l.line)
		if load.Known() {
			l.one = load.Float()
		}
		return l, nil
	}
	reckon(&s.Line, from, func() (formula[standInLineResult], error) {
		l, err := of()
		l.end, l.round = "", 0
		return l, err
	}, func(r standInLineResult) float64 { return r.load })
	reckon(&s.End, append(from, &s.Knot.Value), func() (formula[standInLineResult], error) { return of() },
		func(r standInLineResult) float64 { return r.load })
}

func (s *StandIn) parts() int {
	if p := s.plan.Line.Parts; p.Given {
		return p.Value
	}
	return 1
}

// standInLine is a line in its parts, with its end or, where that is "", without it.
type standInLine struct {
	row         table.LineRow
	one         float64
	parts       int
	aged        bool
	end         string
	line, round float64
}

type standInLineResult struct {
	load  float64
	steps []working.Step
}

func (r standInLineResult) Working() []working.Step { return r.steps }

// Lines of other diameters, mm, are none that a mast is held with: a slip of the pen
// counts as nothing.
const thinnestLine, thickestLine = 2, 40

// Reckon gives what it breaks at.
func (l standInLine) Reckon() (standInLineResult, error) {
	r := standInLineResult{load: l.one}
	if !(l.line >= thinnestLine && l.line <= thickestLine) {
		return r, fmt.Errorf("a line of %.4g mm is not covered: %d to %d mm are", l.line, thinnestLine, thickestLine)
	}
	step := func(symbol, means, how string, value float64, source working.Source) {
		r.steps = append(r.steps, working.Step{Symbol: symbol, Meaning: means, Formula: how, Value: value, Unit: "N", Source: source})
	}
	step("Fline", "break load of the line", "by its papers, or by the table of lines", l.one, l.row.Source)
	switch {
	case l.end != "":
		lashing, err := rig.Lashing{LineBreak: l.one, Parts: l.parts, End: l.end, Fibre: l.row.Fibre(), Pin: l.round, Line: l.line}.Reckon()
		if err != nil {
			return r, err
		}
		r.load = lashing.BreakLoad
		r.steps = append(r.steps, lashing.Working()...)
	case l.parts > 1:
		r.load = float64(l.parts) * rig.UnevenParts * l.one
		step("F", "all its parts, which share unevenly", "n 0.5 Fline", r.load, lineJudgement)
	}
	if l.aged {
		r.load *= rig.UnknownAge
		step("Fa", "the same of line whose age and sun are not known", "0.5 F", r.load, lineJudgement)
	}
	return r, nil
}

var lineJudgement = working.Source{Title: "this project's allowance", As: working.Judgement, For: "the factor"}

// landsOn takes the strength of the plate that it lands on: the least at its pin holes.
func (b *builder) landsOn(s *StandIn) {
	if !s.plan.LandsOn.Given {
		return
	}
	s.Plate.WouldStand(s.plan.LandsOn.At)
	s.Plate.Refuse("no pin hole of the plate it lands on is known")
	var from []*Value
	for _, l := range b.facts.Landings {
		if l.Fitting.ID == s.plan.LandsOn.Value {
			from = append(from, &l.PlateUltimate.Value)
		}
	}
	if len(from) > 0 {
		arithmetic(&s.Plate, "F", "the least at its pin holes", "N", from, func() float64 { return least(from) })
	}
}

// elements are the parts that its pull runs through, in rig's words.
func (s *StandIn) elements() (of []rig.Element, with []*Number) {
	add := func(e rig.Element, n *Number) { of, with = append(of, e), append(with, n) }
	add(rig.LineElement, &s.Line)
	add(rig.KnotElement, &s.End)
	if s.Path.Is(string(rig.OverSheave)) {
		add(rig.SheaveElement, &s.Sheave)
		add(rig.CleatElement, &s.Cleat)
	} else {
		add(rig.MastElement, &s.AtMast)
	}
	switch {
	case s.plan.LandsOn.Given:
		add(rig.PlateElement, &s.Plate)
		if s.AtDeck.Known() {
			add(rig.DeckElement, &s.AtDeck)
		}
	default:
		add(rig.DeckElement, &s.AtDeck)
	}
	return of, with
}

// strength is that of its weakest part.
func (s *StandIn) strength() {
	_, with := s.elements()
	from := values(&s.Path.Value)
	for _, n := range with {
		from = append(from, &n.Value)
	}
	reckon(&s.Strength, from, func() (formula[rig.StandInStrengthResult], error) { return s.path(), nil },
		func(r rig.StandInStrengthResult) float64 { return r.Strength })
	if s.Weakest.follows(from) {
		if r, err := s.path().Reckon(); err == nil {
			s.Weakest.Give(string(r.Governs), s.At)
		}
	}
}

// path is the stand-in as package rig counts it; what is not known counts as nothing.
func (s *StandIn) path() rig.StandInStrength {
	of, with := s.elements()
	p := rig.StandInStrength{Path: rig.Path(s.Path.Text()), BothPartsDown: s.Path.Is(string(rig.OverSheave))}
	if b := s.plan.BothPartsDown; b.Given {
		p.BothPartsDown = b.Value
	}
	for i, e := range of {
		strength := 0.0
		if with[i].Known() {
			strength = with[i].Float()
		}
		p.Elements = append(p.Elements, rig.ElementStrength{Element: e, Strength: strength})
	}
	return p
}

// Lacks says why its strength is not known.
func (s *StandIn) Lacks() string {
	if why := s.Strength.Why(); why != "" {
		return why
	}
	of, with := s.elements()
	var list []string
	for i, n := range with {
		if !n.Known() {
			list = append(list, string(of[i]))
		}
	}
	return "no strength is known of its " + strings.Join(list, ", ")
}
