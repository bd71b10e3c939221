package rule

import (
	"reflect"
	"testing"

	"chainwale/engine/fact"
	"chainwale/rules"
)

// TestWithoutExamples holds that a built-in pack whose examples were left unread is
// the same pack: the same rules, reading the same facts, under the same hash.
func TestWithoutExamples(t *testing.T) {
	c, err := fact.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range rules.Packs() {
		whole, problems := Load(rules.FS, name, name, c, LoadOptions{SkipSchema: true})
		cut, more := Load(rules.FS, name, name, c, LoadOptions{SkipSchema: true, SkipExamples: true})
		if len(problems)+len(more) > 0 {
			t.Fatal(problems, more)
		}
		if whole.Hash != cut.Hash || len(whole.Rules) != len(cut.Rules) {
			t.Fatalf("%s differs", name)
		}
		for i, r := range whole.Rules {
			o := cut.Rules[i]
			if r.ID != o.ID || !reflect.DeepEqual(r.Bands, o.Bands) || !reflect.DeepEqual(r.Reads, o.Reads) || r.At != o.At || r.Says != o.Says {
				t.Errorf("%s differs without its examples", r.ID)
			}
		}
		if len(cut.Prove()) != 0 {
			t.Errorf("%s proves something without examples", name)
		}
	}
	for text, cuts := range map[string]bool{
		"id: a\nexamples:\n  - with: {}\n": true, "id: a\nexamples:\n- with: {}\n": false,
		"id: a\nexamples:\n  - with: {}\nvary: [a]\n": false, "id: a\n": false,
	} {
		if _, ok := withoutExamples([]byte(text)); ok != cuts {
			t.Errorf("%q: cut %v", text, ok)
		}
	}
}
