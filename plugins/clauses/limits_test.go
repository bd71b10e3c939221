package clauses

import (
	"go/ast"
	"go/parser"
	"go/token"
	"slices"
	"strings"
	"testing"

	"chainwale/engine/standard"
	"chainwale/engine/working"
)

// rowOf is a row of numbers, yes-or-noes (1 or 0) and words.
func rowOf(facts map[string]any) Row {
	var r Row
	for name, value := range facts {
		switch v := value.(type) {
		case float64:
			c := standard.NewNumbers(name, 1)
			c.Give(0, v)
			r.columns = append(r.columns, c)
		case string:
			c := standard.NewWords(name, 1)
			c.GiveWord(0, v)
			r.columns = append(r.columns, c)
		}
	}
	return r
}

// TestLeans: up to its limit a lean is covered, to either side, and not beyond.
func TestLeans(t *testing.T) {
	for _, c := range []struct {
		fact  string
		check func(Row, string) error
		most  float64
	}{{"lean_in", Along, 10}, {"lean_out", InPlane, 2}} {
		for _, side := range []float64{1, -1} {
			if err := c.check(rowOf(map[string]any{c.fact: side * c.most}), "and it should not"); err != nil {
				t.Error(err)
			}
			err := c.check(rowOf(map[string]any{c.fact: side * (c.most + 0.1)}), "and it should not")
			if err == nil || !strings.Contains(err.Error(), ", and it should not; up to ") {
				t.Errorf("%s of %g deg: %v", c.fact, side*(c.most+0.1), err)
			}
		}
	}
}

func TestPlainHole(t *testing.T) {
	plain := map[string]any{"bolt_head": "hex", "in_line": 1.0, "lean": -5.0, "fitting.metal.family": "stainless"}
	if err := PlainHole(rowOf(plain)); err != nil {
		t.Error(err)
	}
	for name, c := range map[string]struct {
		value any
		says  string
	}{
		"bolt_head": {"countersunk", "countersunk"}, "in_line": {0.0, "beside each other"},
		"lean": {5.1, "leans 5.1 deg"}, "fitting.metal.family": {"bronze", "the plate is of bronze"},
	} {
		changed := map[string]any{}
		for n, v := range plain {
			changed[n] = v
		}
		changed[name] = c.value
		if err := PlainHole(rowOf(changed)); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s %v: %v", name, c.value, err)
		}
	}
}

func TestInputs(t *testing.T) {
	want := []working.Input{{Symbol: "d", Value: 12, Unit: "mm"}, {Symbol: "k", Value: 0.5}}
	if got := Inputs("d", 12.0, "mm", "k", 0.5, ""); !slices.Equal(got, want) {
		t.Errorf("got %v", got)
	}
}

// TestLimitsSayHowKnown: each limit has a comment of its own with one of the words for
// how it is known.
func TestLimitsSayHowKnown(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "limits.go", nil, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	limits := 0
	ast.Inspect(file, func(n ast.Node) bool {
		spec, ok := n.(*ast.ValueSpec)
		if !ok {
			return true
		}
		limits++
		known := slices.ContainsFunc(working.AllHowKnown(), func(how working.HowKnown) bool { return strings.Contains(spec.Doc.Text(), "("+string(how)+")") })
		if !known {
			t.Errorf("nobody says how %s is known", spec.Names[0].Name)
		}
		return true
	})
	if limits != 4 {
		t.Errorf("%d limits", limits)
	}
}
