package engine

import (
	"context"
	"fmt"
	"testing"
	"testing/fstest"

	"chainwale/engine/fact"
	"chainwale/engine/rule"
	"chainwale/rules"
)

// tryOne loads a pack with one change and tries it on the packs of the program.
func tryOne(t *testing.T, change string) Tried {
	t.Helper()
	c, err := fact.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	head := "id: ours\nedition: '1'\ntitle: Ours\nchanges:\n  - reason: a careful owner\n" + change
	by, problems := rule.Load(fstest.MapFS{"pack.yaml": {Data: []byte(head)}}, ".", "ours", c, rule.LoadOptions{SkipSchema: true})
	if by == nil {
		t.Fatalf("%s: %v", change, problems)
	}
	tried, problems, err := TryChanges(context.Background(), by, c, nil, nil)
	if err != nil || len(problems) > 0 || len(tried) != 1 {
		t.Fatal(change, tried, problems, err)
	}
	return tried[0]
}

// TestTryChanges holds that of the program's own rules each limit that is made a
// twentieth more is seen to make a difference, and each that is only written otherwise
// is seen to make none.
func TestTryChanges(t *testing.T) {
	c, err := fact.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	tried := 0
	for _, name := range []string{"strength", "edges"} {
		pack, problems := rule.Load(rules.FS, name, name, c, rule.LoadOptions{SkipSchema: true})
		if pack == nil {
			t.Fatal(problems)
		}
		for _, r := range pack.Rules[:min(6, len(pack.Rules))] {
			for i, b := range r.Bands {
				limit := fmt.Sprintf("'%s'", b.Limit)
				if b.Verb == rule.TrueThat {
					continue
				}
				if !plainQuantity(b.Limit) {
					limit = "(" + b.Limit + ")"
				}
				change := fmt.Sprintf("    rule: %s\n    band: %d\n    limit: |-\n      %s * ", r.ID, i+1, limit)
				if same := tryOne(t, change+"1"); len(same.Problems) > 0 || !same.Idle {
					t.Errorf("%s times 1: %+v", limit, same)
				}
				if more := tryOne(t, change+"1.05"); len(more.Problems) > 0 || more.Idle {
					t.Errorf("%s times 1.05: %+v", limit, more)
				}
				tried++
			}
		}
	}
	if tried < 10 {
		t.Errorf("only %d limits were tried", tried)
	}
}

// plainQuantity tells a quantity that stands alone, as in 5 mm, from an expression.
func plainQuantity(limit string) bool {
	var value float64
	var unit string
	n, _ := fmt.Sscanf(limit, "%g %s", &value, &unit)
	return n == 2 && limit == fmt.Sprintf("%g %s", value, unit)
}

// TestTryChangesThatDoNotFit holds that each is told at its place.
func TestTryChangesThatDoNotFit(t *testing.T) {
	for change, want := range map[string]string{
		"    rule: plate-outlast-wire\n    off: true\n":                                         `6:11 no pack that judges has a rule "plate-outlast-wire", did you mean plate-outlasts-wire or bolts-outlast-wire?`,
		"    rule: plate-outlasts-wire\n    band: 9\n    grade: watch\n":                        "6:11 the rule plate-outlasts-wire has 4 bands, so the change has to say which it means",
		"    rule: plate-outlasts-wire\n    band: 1\n    limit: 2 * stay.brake_load\n":          `8:16 there is no fact "stay.brake_load" on a landing, did you mean stay.break_load?`,
		"    rule: plate-outlasts-wire\n    band: 1\n    grade: watch\n    if_unknown: watch\n": "6:11 by this change the grades of plate-outlasts-wire get worse down the list: mend after watch, the worst band first",
	} {
		got := tryOne(t, change)
		if len(got.Problems) == 0 || got.Told != "" {
			t.Errorf("%s fits: %+v", change, got)
			continue
		}
		p := got.Problems[0]
		if told := fmt.Sprintf("%d:%d %s, %s", p.At.Line, p.At.Column, p.Message, p.Expected); len(told) < len(want) || told[:len(want)] != want || p.At.File != "ours/pack.yaml" {
			t.Errorf("%s: %s, want %s", change, told, want)
		}
	}
}
