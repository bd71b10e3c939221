// Package finding holds what a check says, as plain data: places, problems,
// findings and the report. Those who judge fill it in and those who print read
// it; neither knows the other, and nothing here computes.
package finding

import (
	"slices"

	"chainwale/engine/working"
)

// Outcome is what became of one rule on one subject.
type Outcome string

const (
	Holds        Outcome = "holds"
	Fails        Outcome = "fails"
	CannotTell   Outcome = "cannot tell"
	DoesNotApply Outcome = "does not apply"
)

// Grade is how much a finding weighs. The zero value is no grade.
type Grade string

const (
	// Stop: do not go on with what the finding holds up.
	Stop Grade = "stop"
	// Mend: change the plan.
	Mend Grade = "mend"
	// Watch: know it, and look again.
	Watch Grade = "watch"
)

// Grades lists the grades, the worst first.
func Grades() []Grade { return []Grade{Stop, Mend, Watch} }

// Weight orders grades; a grade that is none of ours weighs nothing.
func (g Grade) Weight() int {
	switch g {
	case Stop:
		return 3
	case Mend:
		return 2
	case Watch:
		return 1
	}
	return 0
}

// Known tells whether g is one of the three grades.
func (g Grade) Known() bool { return g.Weight() > 0 }

// AtLeast tells whether g weighs as much as the limit or more.
func (g Grade) AtLeast(limit Grade) bool { return g.Known() && g.Weight() >= limit.Weight() }

// WorseThan tells whether g weighs more than other.
func (g Grade) WorseThan(other Grade) bool { return g.Weight() > other.Weight() }

// Below is the next milder grade, never below watch.
func (g Grade) Below() Grade {
	if g == Stop {
		return Mend
	}
	return Watch
}

// Place is a spot in one of the user's files. Lines and columns start at 1 and
// columns count characters. For a value that is missing, line and column are
// those of the parent's key, and Pointer (a JSON Pointer) says where it would go.
type Place struct {
	File    string `json:"file"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Pointer string `json:"pointer"`
}

// Problem is something wrong with a file the user wrote: where, what is wrong,
// and what would be right.
type Problem struct {
	At       Place  `json:"at"`
	Message  string `json:"message"`
	Expected string `json:"expected"`
}

// Amount is a number in its canonical unit. A ratio has no unit.
type Amount struct {
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
}

// Shown is one thing a rule looked at: the expression as written and its value.
// An unknown has no amount. Word is set where the value is a word or a yes/no.
type Shown struct {
	Expression string  `json:"expression"`
	Amount     *Amount `json:"amount,omitempty"`
	Word       string  `json:"word,omitempty"`
	Unknown    bool    `json:"unknown,omitempty"`
}

// Acceptance records that a person took a finding on themselves.
type Acceptance struct {
	Who   string `json:"who"`
	Why   string `json:"why"`
	Until string `json:"until"`
}

// Finding is one rule's outcome on one subject, with everything a renderer needs.
type Finding struct {
	Rule string `json:"rule"`
	// Title is the rule's title and Part the fitting, stay or contact that a
	// reader looks it up under. Both follow from the rest, so they are not written.
	Title   string  `json:"-"`
	Part    string  `json:"-"`
	Pack    string  `json:"pack"`
	Outcome Outcome `json:"outcome"`
	Grade   Grade   `json:"grade"`
	// HoldsUp names what a stop holds up: cutting, sailing, this step, going aloft.
	HoldsUp string `json:"holds_up"`
	// Subject is "kind:id".
	Subject string  `json:"subject"`
	At      Place   `json:"at"`
	Related []Place `json:"related"`
	Have    *Amount `json:"have"`
	Need    *Amount `json:"need"`
	// Ratio is have/limit for lower limits, limit/have for upper ones; nil if the limit is not positive.
	Ratio *float64 `json:"ratio"`
	// Unknown names the facts that were missing, as the plan knows them.
	Unknown     []string         `json:"unknown"`
	Shown       []Shown          `json:"shown"`
	Message     string           `json:"message"`
	Because     string           `json:"because"`
	Decides     []string         `json:"decides"`
	Known       []working.Source `json:"known"`
	Accepted    *Acceptance      `json:"accepted"`
	Fingerprint string           `json:"fingerprint"`
}

// Measure is one reading that would settle rules which cannot tell now.
type Measure struct {
	Subject string   `json:"subject"`
	Fact    string   `json:"fact"`
	At      Place    `json:"at"`
	Tool    string   `json:"tool"`
	Where   string   `json:"place"`
	Settles []string `json:"settles"`
}

// Counts are the totals of a report. Stop, Mend and Watch count fails and
// cannot-tells together, because an unknown counts as a finding of its grade. They
// leave out what is accepted, as the exit status does: together with Accepted they
// are as many as Fails and CannotTell.
type Counts struct {
	Holds        int `json:"holds"`
	Fails        int `json:"fails"`
	CannotTell   int `json:"cannot_tell"`
	DoesNotApply int `json:"does_not_apply"`
	Accepted     int `json:"accepted"`
	Stop         int `json:"stop"`
	Mend         int `json:"mend"`
	Watch        int `json:"watch"`
}

// PackUsed names a rule pack that judged, by the hash of its files.
type PackUsed struct {
	ID      string   `json:"id"`
	Edition string   `json:"edition"`
	Hash    string   `json:"hash"`
	Changed []string `json:"changed"`
}

// StandardUsed names a design standard that was asked.
type StandardUsed struct {
	ID      string `json:"id"`
	Edition string `json:"edition"`
	Hash    string `json:"hash"`
}

// PlanRead names the plan that was judged.
type PlanRead struct {
	File string `json:"file"`
	Hash string `json:"hash"`
}

// Report is the whole answer of a check. Version is the version of this shape.
type Report struct {
	Chainwale string         `json:"chainwale"`
	Version   int            `json:"report"`
	On        string         `json:"on"`
	Plan      PlanRead       `json:"plan"`
	Boat      string         `json:"boat"`
	RefuseAt  Grade          `json:"refuse_from"`
	Problems  []Problem      `json:"problems"`
	Findings  []Finding      `json:"findings"`
	Measure   []Measure      `json:"measure"`
	Counts    Counts         `json:"counts"`
	Packs     []PackUsed     `json:"packs"`
	Standards []StandardUsed `json:"standards"`
	NotSeen   []string       `json:"not_seen"`
	Cautions  []string       `json:"cautions"`
	// Against compares with an earlier report, where one was given.
	Against *Against `json:"against,omitempty"`
	// Fault tells that a pack or a standard was at fault, which the exit status says;
	// problems and findings say it in words.
	Fault bool `json:"-"`
}

// ReportVersion is the version of the report's shape.
const ReportVersion = 1

// Judged tells whether anything judged the plan; with problems in the plan
// nothing does, with problems in a pack the rest still do.
func (r Report) Judged() bool { return len(r.Packs) > 0 }

// Refused tells whether any finding that nobody took on themselves weighs as
// much as the grade from which the plan is refused.
func (r Report) Refused() bool {
	return slices.ContainsFunc(r.Findings, func(f Finding) bool { return f.Refuses(r.RefuseAt) })
}

// Refuses tells whether a finding refuses a plan from that grade on.
func (f *Finding) Refuses(from Grade) bool {
	told := f.Outcome == Fails || f.Outcome == CannotTell
	return told && f.Accepted == nil && f.Grade.AtLeast(from)
}
