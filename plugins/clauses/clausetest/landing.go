package clausetest

import (
	"strings"
	"testing"

	"chainwale/engine/standard"
)

// Asked is a standard's answer about one subject, with the facts that were asked of.
type Asked struct {
	Answer

	t        testing.TB
	standard standard.Standard
	kind     string
	facts    Facts
}

// Landing asks a standard about one landing.
func Landing(t testing.TB, s standard.Standard, facts Facts) Asked {
	t.Helper()
	return Asked{Answer: Ask(t, s, "landing", facts), t: t, standard: s, kind: "landing", facts: facts}
}

// Fact is a fact that must be known: the test ends where it is not.
func (a Asked) Fact(name string) float64 {
	a.t.Helper()
	n, known := a.Known[name]
	if !known {
		a.t.Fatalf("%s is unknown; refused: %v", name, a.Refused)
	}
	return n
}

// Near holds a fact against what it should be, to a share of that.
func (a Asked) Near(name string, want, share float64) {
	a.t.Helper()
	Near(a.t, name, a.Fact(name), want, share)
}

// Refuses holds that a fact's clause does not cover the subject, in words that hold these.
func (a Asked) Refuses(name, says string) {
	a.t.Helper()
	for _, d := range tableOf(a.t, a.standard, a.kind).Derives {
		if d.Name != name {
			continue
		}
		if _, known := a.Known[name]; known || !strings.Contains(a.Refused[d.Clause], says) {
			a.t.Errorf("%s should be refused for %q; it is known: %v, and the reason is %q", name, says, known, a.Refused[d.Clause])
		}
		return
	}
	a.t.Errorf("there is no fact %s", name)
}

// Step is the number of a step behind a fact, by its symbol.
func (a Asked) Step(fact, symbol string) float64 {
	a.t.Helper()
	for _, s := range Steps(a.t, a.standard, a.kind, fact, a.facts) {
		if s.Symbol == symbol {
			return s.Value
		}
	}
	a.t.Fatalf("the working of %s has no step %s", fact, symbol)
	return 0
}

// Shown holds that each fact that is known can be shown.
func (a Asked) Shown() {
	a.t.Helper()
	AllShown(a.t, a.standard, a.kind, a.facts)
}
