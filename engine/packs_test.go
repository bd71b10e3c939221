package engine_test

import (
	"testing"

	"chainwale/engine/fact"
	"chainwale/engine/rule"
	"chainwale/rules"
)

// TestBuiltInPacks loads every pack that comes with the program with all checks,
// the schema's too, which the program itself leaves out at its start; and runs
// every example of every rule.
func TestBuiltInPacks(t *testing.T) {
	c, err := fact.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	examples := 0
	for _, name := range rules.Packs() {
		pack, problems := rule.Load(rules.FS, name, "rules/"+name, c, rule.LoadOptions{})
		for _, p := range problems {
			t.Errorf("%s:%d:%d: %s; %s", p.At.File, p.At.Line, p.At.Column, p.Message, p.Expected)
		}
		if pack == nil {
			continue
		}
		for _, r := range pack.Prove() {
			examples++
			if !r.Proven {
				t.Error(r)
			}
		}
	}
	if examples == 0 {
		t.Error("no example was run")
	}
}
