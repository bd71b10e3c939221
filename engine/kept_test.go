package engine_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"chainwale/engine"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
)

// variants are standards and packs, sound and at fault, of which no two are the same.
func variants(t *testing.T) (standards [][]engine.Named, packs [][]string) {
	t.Helper()
	named := func(id, limit, prefix string) engine.Named {
		b := harbour()
		b.ID, b.Prefix = id, prefix
		b.Pack.(fstest.MapFS)["net.yaml"].Data = bytes.ReplaceAll(b.Pack.(fstest.MapFS)["net.yaml"].Data, []byte("at_least: 3 *"), []byte("at_least: "+limit+" *"))
		s, err := b.Standard()
		if err != nil {
			t.Fatal(err)
		}
		return engine.Named{ID: id, Standard: s, At: finding.Place{File: "p.yaml", Line: 1, Column: 1}}
	}
	mild, harsh := named("harbour-1", "1", "harbour"), named("harbour-1", "9", "harbour")
	must := harsh
	must.Must = true
	gone := engine.Named{ID: "gone", Fault: errors.New("it is not there")}
	standards = [][]engine.Named{nil, {mild}, {harsh}, {must}, {gone}, {gone, mild}, {mild, named("harbour-2", "3", "harbour")}, {named("harbour-1", "0/0", "harbour")}}
	folder := func(id, limit string) string {
		dir := t.TempDir()
		files := map[string]string{"pack.yaml": "id: " + id + "\nedition: '1'\ntitle: T\nchanges:\n  - { rule: age-of-plate, off: true, reason: x }\n",
			"a.yaml": fmt.Sprintf("id: thick\ntitle: Thick\non: fitting\nhave: thickness\nat_least: %s\nelse: mend\nsays: \"{have}\"\nbecause: x\nknown: [{ source: x, as: judgement }]\ndecides: [rigger]\nexamples:\n  - { with: { thickness: 99 mm }, outcome: holds }\n  - { with: { thickness: 1 mm }, outcome: fails }\n  - { with: {}, outcome: cannot tell }\n", limit)}
		for name, text := range files {
			if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		return dir
	}
	thick, bad, again := folder("thick", "20 mm"), folder("bad", "20 mmm"), folder("again", "5 mm")
	packs = [][]string{nil, {thick}, {bad}, {thick, again}, {again, bad}, {"nowhere"}}
	return standards, packs
}

// TestKeptChangesNothing holds that a report is the same whether a check makes its own
// catalogue and packs or shares those of other plans, side by side.
func TestKeptChangesNothing(t *testing.T) {
	p, problems, err := plan.Load("../testdata/boats/quillfish.yaml", plan.Options{})
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	standards, packs := variants(t)
	all := len(standards) + len(packs)
	check := func(i int, kept *engine.Kept) string {
		o := engine.Options{On: day, RefuseFrom: finding.Mend, Kept: kept}
		if i < len(standards) {
			o.Standards = standards[i]
		} else {
			o.Standards, o.Packs = standards[1], packs[i-len(standards)]
		}
		r, err := engine.Check(t.Context(), p, o)
		if err != nil {
			t.Error(err)
		}
		text, err := json.Marshal(r)
		if err != nil {
			t.Error(err)
		}
		return string(text)
	}
	alone := make([]string, all)
	for i := range all {
		alone[i] = check(i, nil)
	}
	seen := map[string]bool{}
	kept := engine.NewKept()
	var run sync.WaitGroup
	for i := range 2 * all {
		run.Go(func() {
			if got := check(i%all, kept); got != alone[i%all] {
				t.Errorf("the report of case %d differs", i%all)
			}
		})
		seen[alone[i%all]] = true
	}
	run.Wait()
	if len(seen) < all-2 || !strings.Contains(strings.Join(alone, ""), "harbour-net") {
		t.Errorf("%d of %d reports are of their own", len(seen), all)
	}
}
