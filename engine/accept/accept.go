// Package accept lays what people took on themselves over what the rules found,
// and compares a report with an earlier one.
//
// An acceptance (rule, subject, grade, who, why, until) covers what fails with its
// grade or a milder one, through its last day. It never covers what can't be told,
// nor what got worse: such findings come back, and say so. Each acceptance that
// does nothing is itself a finding, at its place in the plan: silence is earned.
package accept

import (
	"cmp"
	"slices"
	"time"

	"chainwale/engine/finding"
)

// Accepted is one entry of a plan's list of accepted findings.
type Accepted struct {
	// Rule is a rule's id. Subject is "kind:id" or the id of a stay, a fitting or a
	// contact; "" is all that the rule judges.
	Rule, Subject string
	// Grade is the worst grade that is accepted.
	Grade    finding.Grade
	Who, Why string
	// Until is the last day.
	Until time.Time
	// At is the entry's place; the others are those of its values.
	At, RuleAt, SubjectAt, UntilAt finding.Place
}

// Known is what there is to accept: without it a misspelt name could not be told
// from one that has nothing to accept any more.
type Known struct {
	// Rules are the ids of all rules that judged.
	Rules []string
	// Subjects are all subjects that were judged, found fault with or not.
	Subjects []Subject
	// Sided tells for an id of the plan which ids it stands for: of an entry with
	// side: both, the one to port and the one to starboard.
	Sided map[string][]string
}

// Subject is one subject: "kind:id", and the part that it is looked up under.
type Subject struct{ Ref, Part string }

// Apply marks in a finished report the findings that are accepted, and adds a
// finding for each acceptance that does nothing.
//
// The counts follow the exit status: an accepted finding stays among the fails, is
// counted as accepted, and no longer under its grade. So stop + mend + watch +
// accepted is fails + cannot tell, and a report with no stop and no mend is one
// that is not refused.
func Apply(r *finding.Report, acceptances []Accepted, on time.Time, known Known) {
	if len(acceptances) == 0 {
		return
	}
	l := newLedger(r.Plan.File, acceptances, on, known)
	for i := range r.Findings {
		if f := &r.Findings[i]; told(*f) {
			l.settle(f, &r.Counts)
		}
	}
	for _, f := range l.findings() {
		r.Findings = append(r.Findings, f)
		r.Counts.Fails++
		r.Counts.Watch++
	}
	sortFindings(r.Findings)
}

// told tells whether a finding says that something is amiss or can't be told.
func told(f finding.Finding) bool {
	return f.Outcome == finding.Fails || f.Outcome == finding.CannotTell
}

// settle marks a finding as accepted by the first entry that covers it. Where
// entries name it and none covers it, it says why it counts all the same.
func (l *ledger) settle(f *finding.Finding, c *finding.Counts) {
	naming := l.naming(f)
	var first *entry
	for _, e := range naming {
		if e.covers(f) {
			first = e
			break
		}
	}
	if first == nil {
		leaveOpen(f, naming)
		return
	}
	f.Accepted = &finding.Acceptance{Who: first.Who, Why: first.Why, Until: day(first.Until)}
	c.Accepted++
	uncount(c, f.Grade)
	first.covered++
	for _, e := range naming {
		if e != first {
			e.beside = first
		}
	}
}

// leaveOpen notes that what these entries name counts all the same, and why.
func leaveOpen(f *finding.Finding, naming []*entry) {
	said := false
	for _, e := range naming {
		e.short = append(e.short, *f)
		if e.idle == "" && !said {
			f.Message += " " + e.shortOf(*f)
			said = true
		}
	}
}

// naming gives the entries that name a finding, in the plan's order.
func (l *ledger) naming(f *finding.Finding) (naming []*entry) {
	naming = slices.Clone(l.byName[named{f.Rule, ""}])
	for _, name := range l.called.names(f.Subject, f.Part) {
		naming = append(naming, l.byName[named{f.Rule, name}]...)
	}
	slices.SortFunc(naming, func(a, b *entry) int { return cmp.Compare(a.number, b.number) })
	return naming
}

// covers tells whether an entry that names a finding takes it on. What can't be
// told may be worse than anybody accepted.
func (e *entry) covers(f *finding.Finding) bool {
	return e.idle == "" && f.Outcome == finding.Fails && e.Grade.AtLeast(f.Grade)
}

func uncount(c *finding.Counts, g finding.Grade) {
	switch g {
	case finding.Stop:
		c.Stop--
	case finding.Mend:
		c.Mend--
	case finding.Watch:
		c.Watch--
	}
}

// sortFindings puts findings in the order of every report: by grade, subject, rule.
func sortFindings(list []finding.Finding) {
	slices.SortStableFunc(list, func(a, b finding.Finding) int {
		return cmp.Or(cmp.Compare(b.Grade.Weight(), a.Grade.Weight()), cmp.Compare(a.Subject, b.Subject), cmp.Compare(a.Rule, b.Rule))
	})
}

func day(t time.Time) string { return t.Format(time.DateOnly) }
