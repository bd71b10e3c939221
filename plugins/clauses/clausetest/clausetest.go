package clausetest

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"chainwale/engine/fact"
	"chainwale/engine/rule"
	"chainwale/engine/standard"
)

// Pack loads a standard's pack as a check does, beside the program's own facts and those
// that the standard derives: so everything that it reads must be there, in the right
// unit, and every load of the wire must be compared by a rule. Its examples must come out
// as they say, and notice a change of each limit.
func Pack(t testing.TB, s standard.Standard) *rule.Pack {
	t.Helper()
	d := describe(t, s)
	base, err := fact.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	catalogue, err := base.Extend([]standard.Description{d})
	if err != nil {
		t.Fatal(err)
	}
	files := fstest.MapFS{}
	for _, f := range d.Pack {
		files[f.Path] = &fstest.MapFile{Data: f.Bytes}
	}
	pack, problems := rule.Load(files, ".", d.Prefix+":rules", catalogue, rule.LoadOptions{})
	for _, p := range problems {
		t.Errorf("%s:%d:%d: %s; %s", p.At.File, p.At.Line, p.At.Column, p.Message, p.Expected)
	}
	if pack == nil {
		t.FailNow()
	}
	if pack.ID != d.ID {
		t.Errorf("the pack is called %s, the standard %s", pack.ID, d.ID)
	}
	for _, r := range pack.Prove() {
		if !r.Proven {
			t.Error(r)
		}
	}
	for _, c := range pack.Unnoticed() {
		t.Error(c)
	}
	named(t, d, pack)
	compared(t, d, pack)
	return pack
}

// compared holds that each load of the wire that the standard derives is what a rule of
// the same kind compares: one that no rule compares is left out where standards are set
// side by side.
func compared(t testing.TB, d standard.Description, pack *rule.Pack) {
	t.Helper()
	for _, table := range d.Tables {
		for _, f := range table.Derives {
			own := func(r *rule.Rule) bool { return r.Kind.Name == table.Kind && r.Have == d.Prefix+"."+f.Name }
			if f.Bears && !slices.ContainsFunc(pack.Rules, own) {
				t.Errorf("%s of a %s is a load of the wire, and no rule compares it", f.Name, table.Kind)
			}
		}
	}
}

// named holds that the rules are called after the standard and that each of them
// judges one of its facts.
func named(t testing.TB, d standard.Description, pack *rule.Pack) {
	t.Helper()
	for _, r := range pack.Rules {
		if !strings.HasPrefix(r.ID, d.Prefix+"-") {
			t.Errorf("the rule %s does not begin with %s-", r.ID, d.Prefix)
		}
		own := func(fact string) bool { return strings.HasPrefix(fact, d.Prefix+".") }
		if !slices.ContainsFunc(r.Reads, own) {
			t.Errorf("the rule %s reads none of the standard's facts", r.ID)
		}
	}
}
