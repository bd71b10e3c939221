// Package clausetest helps to test a standard that is written with plugins/clauses:
// it asks about one subject, shows workings, reads published cases, and holds the
// table of clauses and the pack in step with what the standard does. Only tests
// import it.
package clausetest

import (
	"slices"
	"testing"

	"chainwale/engine/standard"
	"chainwale/engine/working"
)

// Facts are what is known of one subject, by the names that the standard reads:
// float64, string or bool. What is not listed is unknown.
type Facts map[string]any

// With gives the facts with some of them changed; one changed to nil is unknown.
func (f Facts) With(changes Facts) Facts {
	changed := Facts{}
	for _, from := range []Facts{f, changes} {
		for name, value := range from {
			if value == nil {
				delete(changed, name)
				continue
			}
			changed[name] = value
		}
	}
	return changed
}

// Answer is what a standard says of one subject.
type Answer struct {
	// Known are the facts that it derived, Refused its reasons, by clause, for those
	// that it did not although it knew all they come from.
	Known   map[string]float64
	Refused map[string]string
}

// Ask asks a standard about one subject of a kind.
func Ask(t testing.TB, s standard.Standard, kind string, facts Facts) Answer {
	t.Helper()
	table := tableOf(t, s, kind)
	q := standard.Question{Kind: kind, Rows: 1, Columns: columns(t, table, facts)}
	answer, err := s.Derive(t.Context(), q)
	if err != nil {
		t.Fatal(err)
	}
	if err := standard.CheckAnswer(table, q, answer); err != nil {
		t.Fatal(err)
	}
	a := Answer{Known: map[string]float64{}, Refused: map[string]string{}}
	for i := range answer.Columns {
		if number, known := answer.Columns[i].Number(0); known {
			a.Known[answer.Columns[i].Name] = number
		}
	}
	for _, n := range answer.NotCovered {
		a.Refused[n.Clause] = n.Why
	}
	return a
}

// Steps shows how a fact of one subject came about, and holds that the last step
// comes to the fact itself.
func Steps(t testing.TB, s standard.Standard, kind, fact string, facts Facts) []working.Step {
	t.Helper()
	steps, err := s.Working(t.Context(), standard.Asked{Kind: kind, Fact: fact, Columns: columns(t, tableOf(t, s, kind), facts)})
	if err == nil {
		err = standard.CheckSteps(steps)
	}
	if err != nil {
		t.Fatalf("working of %s: %v", fact, err)
	}
	if last, value := steps[len(steps)-1], Ask(t, s, kind, facts).Known[fact]; last.Value != value {
		t.Errorf("the working of %s ends with %s = %g, the fact is %g", fact, last.Symbol, last.Value, value)
	}
	return steps
}

// AllShown holds that every fact that is known of a subject can be shown.
func AllShown(t testing.TB, s standard.Standard, kind string, facts Facts) {
	t.Helper()
	for fact := range Ask(t, s, kind, facts).Known {
		Steps(t, s, kind, fact, facts)
	}
}

// Near holds that two numbers agree within a share of the second.
func Near(t testing.TB, what string, got, want, share float64) {
	t.Helper()
	if !(got >= want-share*want && got <= want+share*want) {
		t.Errorf("%s is %.6g and should be %.6g", what, got, want)
	}
}

func describe(t testing.TB, s standard.Standard) standard.Description {
	t.Helper()
	d, err := s.Describe(t.Context())
	if err == nil {
		err = standard.CheckDescription(d)
	}
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func tableOf(t testing.TB, s standard.Standard, kind string) standard.Table {
	t.Helper()
	d := describe(t, s)
	table, ok := d.Table(kind)
	if !ok {
		t.Fatalf("%s has no table of the kind %s", d.ID, kind)
	}
	return table
}

// columns are the reads of a table for one subject. A fact that the table does not
// read is a slip of the test.
func columns(t testing.TB, table standard.Table, facts Facts) []standard.Column {
	t.Helper()
	for name := range facts {
		if !slices.ContainsFunc(table.Reads, func(r standard.Read) bool { return r.Name == name }) {
			t.Fatalf("no clause reads %s of a %s", name, table.Kind)
		}
	}
	list := make([]standard.Column, len(table.Reads))
	for i, r := range table.Reads {
		list[i] = column(t, r, facts[r.Name])
	}
	return list
}

func column(t testing.TB, r standard.Read, value any) standard.Column {
	t.Helper()
	if r.Type == standard.Word {
		c := standard.NewWords(r.Name, 1)
		if word, ok := value.(string); ok {
			c.GiveWord(0, word)
		}
		return c
	}
	c := standard.NewNumbers(r.Name, 1)
	switch v := value.(type) {
	case float64:
		c.Give(0, v)
	case bool:
		c.Give(0, map[bool]float64{true: 1}[v])
	case nil:
	default:
		t.Fatalf("%s is %v, and should be a number or a yes or no", r.Name, value)
	}
	return c
}
