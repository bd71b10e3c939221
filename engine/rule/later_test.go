package rule

import (
	"slices"
	"sync"
	"testing"

	"chainwale/engine/fact"
	"chainwale/rules"
)

// A rule that is compiled when it is first asked for is the rule that is compiled at
// once, whoever asks first.
func TestLater(t *testing.T) {
	c, err := fact.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	count := 0
	for _, name := range rules.Packs() {
		load := func(later func(string) bool) *Pack {
			p, problems := Load(rules.FS, name, name, c, LoadOptions{SkipSchema: true, SkipExamples: true, Tree: rules.Tree, Later: later})
			if len(problems) > 0 {
				t.Fatal(problems)
			}
			return p
		}
		now, later := load(nil), load(func(string) bool { return true })
		var all sync.WaitGroup
		for range 4 {
			all.Go(func() {
				for _, kind := range c.Kinds {
					later.awake(kind.Name, &frame{})
				}
			})
		}
		all.Wait()
		for i, r := range later.Rules {
			count++
			if of := now.Rules[i]; r.broken || r.ID != of.ID || r.sides != of.sides || len(r.bands) != len(of.bands) || !slices.Equal(r.Reads, of.Reads) || !slices.Equal(r.vary, of.vary) || len(r.says) != len(of.says) {
				t.Errorf("%s is another rule when it is compiled later", r.ID)
			}
		}
	}
	if count < 90 {
		t.Errorf("only %d rules", count)
	}
}

// A rule that can't be compiled tells nothing, and so never holds.
func TestLaterBroken(t *testing.T) {
	r := &Rule{later: func() {}, broken: true, Kind: &fact.Kind{Name: "stay"}}
	if o := r.glance(&frame{}, &fact.Subject{Kind: r.Kind}); o != cannotTell {
		t.Errorf("a rule that can't be compiled gives %v", o)
	}
	if v := r.judge(&frame{}, &fact.Subject{Kind: r.Kind}); v.outcome != cannotTell {
		t.Errorf("a rule that can't be compiled gives %v", v.outcome)
	}
}
