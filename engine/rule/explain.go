package rule

import (
	"slices"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
)

// maxRelated is how many further places a finding points at.
const maxRelated = 4

// explain writes the finding of a verdict, from the facts and the sides of the
// comparisons that the evaluation has left in the frame.
func (r *Rule) explain(f *frame, s *fact.Subject, v verdict, o JudgeOptions, j *Judged) {
	told := r.tell(v)
	if o.AtMost.Known() && told.Grade.WorseThan(o.AtMost) {
		told.Grade = o.AtMost
	}
	say := &saying{subject: s, rule: r, verdict: told, system: o.System}
	g := finding.Finding{
		Rule: r.ID, Title: r.Title, Pack: r.Pack, Outcome: told.Outcome, Grade: told.Grade, Subject: s.Ref(), Ratio: told.Ratio,
		Because: r.Because, Decides: slices.Clone(r.Decides), Known: slices.Clone(r.Known),
		Fingerprint: Fingerprint(r.ID, s.Ref()), Related: []finding.Place{}, Unknown: []string{}, Shown: []finding.Shown{},
	}
	if told.Grade == finding.Stop {
		g.HoldsUp = r.HoldsUp
	}
	if r.have != nil {
		g.Have, g.Need = amount(v.have, r.have.unit), amount(v.need, r.have.unit)
	}
	switch v.outcome {
	case cannotTell:
		l := r.lack(f, s, v)
		g.Unknown, g.Message = append(g.Unknown, l.names...), l.message(r)
		g.At = l.place(s)
		for _, value := range l.gaps {
			j.Missing = append(j.Missing, Gap{value, r.ID, told.Grade})
		}
	case doesNotApply:
		g.Message, g.At = say.doesNotApply(v), r.place(s)
	case holds:
		g.Message, g.At = say.holds(), r.place(s)
	default:
		g.Message, g.At = say.fails(&r.bands[v.last]), r.place(s)
	}
	if v.stuck != wentWrong {
		g.Shown = r.shown(f, v)
		g.Related = r.related(s, g.At)
	}
	j.Findings = append(j.Findings, g)
}

func amount(v float64, unit string) *finding.Amount {
	if !finite(v, 0) {
		return nil
	}
	return &finding.Amount{Value: v, Unit: unit}
}

// doesNotApply says why.
func (s *saying) doesNotApply(v verdict) string {
	if v.last < 0 {
		return s.rule.AppliesIf + " is not so"
	}
	return "none of its limits counts here"
}

// place is where a finding stands: at the first fact an owner could change, or
// at what was compared, or at the subject.
func (r *Rule) place(s *fact.Subject) finding.Place {
	var candidates slots
	candidates = append(candidates, r.vary[:min(1, len(r.vary))]...)
	if r.have != nil {
		candidates = append(candidates, r.have.reads...)
	}
	for _, slot := range candidates {
		if at := s.Value(slot).At(); at.Line > 0 {
			return at
		}
	}
	return s.At
}

// related are the other places of facts that the rule reads.
func (r *Rule) related(s *fact.Subject, at finding.Place) []finding.Place {
	places := []finding.Place{}
	for _, slot := range r.reads {
		p := s.Value(slot).At()
		if p.Line > 0 && p != at && !slices.Contains(places, p) && len(places) < maxRelated {
			places = append(places, p)
		}
	}
	return places
}

// shown lists what the rule looked at: what it has and needs, the sides of each
// comparison it came to, and the facts it read.
func (r *Rule) shown(f *frame, v verdict) []finding.Shown {
	list := shownList{}
	if r.have != nil && v.last >= 0 {
		list.part(r.have.part, v.have)
	}
	if v.limit >= 0 {
		list.part(r.bands[v.limit].limit.part, v.need)
	}
	list.judgement(f, r.appliesIf)
	for i := range v.last + 1 {
		b := &r.bands[i]
		list.judgement(f, b.appliesIf)
		if b.appliesIf == nil || b.appliesIf.eval(f) == yes {
			list.judgement(f, b.trueThat)
		}
	}
	for _, slot := range r.reads {
		list.fact(r.Kind.Slots[slot], f.facts[slot])
	}
	return list
}

type shownList []finding.Shown

// add puts a thing on the list, once.
func (l *shownList) add(s finding.Shown) {
	if !slices.ContainsFunc(*l, func(have finding.Shown) bool { return have.Expression == s.Expression }) {
		*l = append(*l, s)
	}
}

func (l *shownList) part(p part, v float64) {
	if p.constant {
		return
	}
	s := finding.Shown{Expression: p.written, Unknown: !finite(v, 0)}
	switch {
	case s.Unknown:
	case p.word:
		s.Word = fact.WordText(v)
	default:
		s.Amount = amount(v, p.unit)
	}
	l.add(s)
}

func (l *shownList) judgement(f *frame, j *judgement) {
	if j == nil {
		return
	}
	for i, c := range j.compared {
		sides := f.sides[j.first+i]
		l.part(c.left, sides.left)
		l.part(c.right, sides.right)
	}
}

func (l *shownList) fact(slot fact.Slot, v float64) {
	s := finding.Shown{Expression: slot.Name, Unknown: !finite(v, 0)}
	switch {
	case s.Unknown:
	case slot.Sort == fact.IsWord:
		s.Word = fact.WordText(v)
	case slot.Sort == fact.IsYesNo:
		s.Word = yesNo(v)
	default:
		s.Amount = amount(v, slot.Dimension.Unit())
	}
	l.add(s)
}
