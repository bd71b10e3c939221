package fleet

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"chainwale/engine/finding"
)

// Line is one boat of a fleet: a line of the report of the fleet.
type Line struct {
	Plan   string         `json:"plan"`
	Hash   string         `json:"hash"`
	Boat   string         `json:"boat"`
	Class  string         `json:"class"`
	Status int            `json:"status"`
	Counts finding.Counts `json:"counts"`
	// Problems are what was wrong with the plan or a pack.
	Problems []finding.Problem `json:"problems"`
}

// LineOf is the line of a boat whose check ended with that status.
func LineOf(r finding.Report, class string, status int) Line {
	return Line{Plan: r.Plan.File, Hash: r.Plan.Hash, Boat: r.Boat, Class: class, Status: status, Counts: r.Counts, Problems: append([]finding.Problem{}, r.Problems...)}
}

// Tally is what a class, a rule or the whole fleet adds up to. Stop, Mend and Watch
// leave out what is accepted, as in each boat's report.
type Tally struct {
	// Boats are those of the class, or those of which the rule found something.
	Boats      int `json:"boats"`
	Fails      int `json:"fails"`
	CannotTell int `json:"cannot_tell"`
	Accepted   int `json:"accepted"`
	Stop       int `json:"stop"`
	Mend       int `json:"mend"`
	Watch      int `json:"watch"`
}

// Named is a tally under the name of a class or a rule. Statuses are only those of a
// class: how many of its boats ended with each exit status.
type Named struct {
	Name     string `json:"name"`
	Statuses [4]int `json:"statuses"`
	Tally
}

// Summary is what a fleet adds up to. Status is the highest of its boats.
type Summary struct {
	Status   int    `json:"status"`
	Boats    int    `json:"boats"`
	Statuses [4]int `json:"statuses"`
	Total    Tally  `json:"total"`
	// Classes and Rules are by weight, the worst first.
	Classes []Named `json:"classes"`
	Rules   []Named `json:"rules"`
	// Others count classes, and rules, beyond those that are kept apart; they stand
	// last in their lists, under OtherName.
	OtherClasses int `json:"other_classes"`
	OtherRules   int `json:"other_rules"`
	// Worst are the boats with the worst findings and the most of them, the worst
	// first, each with the first of its problems.
	Worst []Line `json:"worst"`
}

const (
	// mostNames is how many classes, and how many rules, are kept apart.
	mostNames = 2000
	// OtherName is under what those beyond are summed.
	OtherName = "all others"
	// NoClass is the class of boats whose plan gives none or could not be read.
	NoClass = "no class given"
	// mostProblems is how many problems of a boat are kept beyond its own line.
	mostProblems = 3
)

// Adder adds up a fleet as its reports come. It keeps sums, and the lines of the
// worst boats; never a report. Reports are to come in the order of their plans: then
// the same fleet gives the same sums.
type Adder struct {
	sum     Summary
	worst   int
	classes names
	rules   names
}

// NewAdder keeps so many of the worst boats.
func NewAdder(worst int) *Adder {
	return &Adder{worst: max(0, worst), classes: newNames(), rules: newNames()}
}

// Add adds a boat's report and gives its line. Of a report that holds more than
// fails and cannot-tells, the rest is only in its counts.
func (a *Adder) Add(r finding.Report, class string, status int) Line {
	line := LineOf(r, class, status)
	if class == "" {
		class = NoClass
	}
	step := min(max(status, 0), len(a.sum.Statuses)-1)
	a.sum.Status = max(a.sum.Status, status)
	a.sum.Boats++
	a.sum.Total.Boats++
	a.sum.Statuses[step]++
	of := a.classes.at(class)
	of.Boats++
	of.Statuses[step]++
	a.findings(r.Findings, of)
	a.keep(line)
	return line
}

// findings adds a boat's findings to the fleet, to the class and to their rules.
func (a *Adder) findings(list []finding.Finding, class *Named) {
	met := map[*Named]bool{}
	for i := range list {
		f := &list[i]
		if f.Outcome != finding.Fails && f.Outcome != finding.CannotTell {
			continue
		}
		rule := a.rules.at(f.Rule)
		if !met[rule] {
			met[rule] = true
			rule.Boats++
		}
		for _, t := range []*Tally{&a.sum.Total, &class.Tally, &rule.Tally} {
			t.add(f)
		}
	}
}

func (t *Tally) add(f *finding.Finding) {
	if f.Outcome == finding.Fails {
		t.Fails++
	} else {
		t.CannotTell++
	}
	switch {
	case f.Accepted != nil:
		t.Accepted++
	case f.Grade == finding.Stop:
		t.Stop++
	case f.Grade == finding.Mend:
		t.Mend++
	case f.Grade == finding.Watch:
		t.Watch++
	}
}

// keep puts a line among the worst, if it is one of them.
func (a *Adder) keep(l Line) {
	if l.Status == 0 && l.Counts.Watch == 0 {
		return
	}
	i, _ := slices.BinarySearchFunc(a.sum.Worst, l, byWeight)
	if i >= a.worst {
		return
	}
	l.Problems = slices.Clone(l.Problems[:min(len(l.Problems), mostProblems)])
	a.sum.Worst = slices.Insert(a.sum.Worst, i, l)
	a.sum.Worst = a.sum.Worst[:min(len(a.sum.Worst), a.worst)]
}

// byWeight puts the worst boat first: one that could not be judged, then by stops,
// mends and watches, then by the plan's name.
func byWeight(a, b Line) int {
	return cmp.Or(cmp.Compare(unjudged(b), unjudged(a)), cmp.Compare(b.Counts.Stop, a.Counts.Stop), cmp.Compare(b.Counts.Mend, a.Counts.Mend),
		cmp.Compare(b.Counts.Watch, a.Counts.Watch), cmp.Compare(a.Plan, b.Plan))
}

// unjudged is the status of a boat that was not judged, or not by all packs.
func unjudged(l Line) int {
	if l.Status < 2 {
		return 0
	}
	return l.Status
}

// Summary is what was added up to now.
func (a *Adder) Summary() Summary {
	s := a.sum
	s.Classes, s.OtherClasses = a.classes.list()
	s.Rules, s.OtherRules = a.rules.list()
	s.Worst = append([]Line{}, s.Worst...)
	return s
}

// names keeps a tally for each name, up to a number of them.
type names struct {
	of     map[string]*Named
	others map[string]bool
	other  *Named
}

func newNames() names {
	return names{map[string]*Named{}, map[string]bool{}, &Named{Name: OtherName}}
}

// at is the tally of a name. Beyond those that are kept apart, one stands for all;
// their names are counted up to as many again.
func (n *names) at(name string) *Named {
	if t := n.of[name]; t != nil {
		return t
	}
	name = strings.Clone(name) // it may be a piece of a plan's whole text, which is not to be kept
	if len(n.of) == mostNames {
		if len(n.others) < mostNames {
			n.others[name] = true
		}
		return n.other
	}
	t := &Named{Name: name}
	n.of[name] = t
	return t
}

// list gives the tallies, the worst first and that of all others last.
func (n *names) list() (list []Named, others int) {
	list = []Named{}
	for _, name := range slices.Sorted(maps.Keys(n.of)) {
		list = append(list, *n.of[name])
	}
	slices.SortStableFunc(list, func(a, b Named) int {
		return cmp.Or(cmp.Compare(b.Stop, a.Stop), cmp.Compare(b.Mend, a.Mend), cmp.Compare(b.Watch, a.Watch), cmp.Compare(b.Boats, a.Boats))
	})
	if len(n.others) > 0 {
		list = append(list, *n.other)
	}
	return list, len(n.others)
}
