// Package rule reads rule packs and judges subjects by them.
//
// A pack is a folder: pack.yaml and a file for each rule. Loading refuses
// everything that could go wrong later: unknown facts, a force beside a stress,
// a grade that gets worse down the list, a rule without examples. What is left
// is straight arithmetic without loops, which can't fail: a fact that is not
// known, a division by zero, a number that overflows all make a judgement
// "cannot tell", and never "holds".
//
// The front end is expr's parser; the back end is our own, closures over a row
// of facts, in Kleene's three-valued logic.
package rule

import (
	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/working"
)

// Pack is a rule pack that has been loaded and found good.
type Pack struct {
	ID, Edition, Title string
	Author, Scope      string
	NotCovered         []string
	// Label is what stands before the names of its files in problems.
	Label string
	// Hash is "sha256:" over path, length and bytes of its files in path order.
	Hash string
	// Rules are in the order of their files' names.
	Rules []*Rule
	// Changes are what it makes otherwise in the rules of other packs.
	Changes []Change

	byKind map[string][]*Rule
	sides  int
}

// Rule is one rule as its file says it, and compiled.
type Rule struct {
	ID, Title, Pack string
	// Kind is the kind of subject that is judged.
	Kind *fact.Kind
	At   finding.Place
	// AppliesIf and Have are the expressions as written, "" where there are none.
	AppliesIf, Have string
	Bands           []Band
	IfUnknown       finding.Grade
	HoldsUp         string
	Says, Because   string
	// Vary names the facts that an owner could change.
	Vary    []string
	Known   []working.Source
	Decides []string
	// Reads names the facts that its expressions read, in the order they come.
	Reads []string

	appliesIf *judgement
	have      *measured
	bands     []band
	says      []piece
	vary      []int
	reads     slots
	sides     int
	examples  []example
	// origin is the rule's text, for whoever changes it; nil without examples.
	origin *draft
	// later compiles it, where that was left for later; broken tells that it can't be.
	later  func()
	broken bool
}

// Band is one limit as written.
type Band struct {
	Verb      Verb
	Limit     string
	Else      finding.Grade
	AppliesIf string
	// Says is the sentence for what fails here, "" if it is the rule's.
	Says string
}

// Verb says how a limit is meant.
type Verb string

const (
	AtLeast  Verb = "at_least"
	AtMost   Verb = "at_most"
	Above    Verb = "above"
	Below    Verb = "below"
	TrueThat Verb = "true_that"
)

var verbs = []Verb{AtLeast, AtMost, Above, Below, TrueThat}

// compares tells whether the limit is a number that have is compared with.
func (v Verb) compares() bool { return v != "" && v != TrueThat }

// measured is an expression that gives a number, with what it looks like.
type measured struct {
	numeric
	part
	reads slots
}

// band is one limit, compiled: either a number or a condition.
type band struct {
	limit     *measured
	trueThat  *judgement
	appliesIf *judgement
	grade     finding.Grade
	how       how
	says      []piece

	// need, holds and applies are the closures of the above, nil where there is none.
	need    func(*frame) float64
	fixed   float64
	holds   func(*frame) kleene
	applies func(*frame) kleene
}

// how is a verb as a number.
type how uint8

const (
	lower how = iota
	lowerStrict
	upper
	upperStrict
)

var hows = map[Verb]how{AtLeast: lower, Above: lowerStrict, AtMost: upper, Below: upperStrict}

// newBand compiles one limit. What is nil was not there, or no good.
func newBand(v Verb, limit *measured, trueThat, appliesIf *judgement, g finding.Grade) band {
	b := band{limit: limit, trueThat: trueThat, appliesIf: appliesIf, grade: g, how: hows[v]}
	if limit != nil {
		b.need, b.fixed = limit.eval, limit.value
		if limit.numeric.constant {
			b.need = nil
		}
	}
	if trueThat != nil {
		b.holds = trueThat.eval
	}
	if appliesIf != nil {
		b.applies = appliesIf.eval
	}
	return b
}
