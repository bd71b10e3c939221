package engine_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"chainwale/engine"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
)

// layered checks the demo boat with a pack that holds these changes.
func layered(t *testing.T, changes ...string) finding.Report {
	t.Helper()
	p, _, err := plan.Load("../testdata/boats/quillfish.yaml", plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var packs []string
	for i, c := range changes {
		dir := t.TempDir()
		head := "id: layer-" + string(rune('a'+i)) + "\nedition: '1'\ntitle: A layer\nchanges:\n" + c
		if err := os.WriteFile(filepath.Join(dir, "pack.yaml"), []byte(head), 0o600); err != nil {
			t.Fatal(err)
		}
		packs = append(packs, dir)
	}
	r, err := engine.Check(t.Context(), p, engine.Options{On: day, RefuseFrom: finding.Mend, All: true, Packs: packs})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestLayers holds that a pack may change a rule of another for a reason, and that
// the report says so and whose it is.
func TestLayers(t *testing.T) {
	before := layered(t)
	if n := len(of(before, "plate-outlasts-wire")); n == 0 {
		t.Fatal("the demo has no landing")
	}
	cases := map[string]struct {
		change, told string
		look         func(finding.Report) bool
	}{
		"off": {"  - { rule: plate-outlasts-wire, off: true, reason: judged by hand }\n", "plate-outlasts-wire switched off by layer-a: judged by hand",
			func(r finding.Report) bool { return len(of(r, "plate-outlasts-wire")) == 0 }},
		"limit": {"  - rule: plate-outlasts-wire\n    band: 1\n    limit: 99 * stay.break_load\n    reason: a very careful owner\n", "plate-outlasts-wire: band 1 is at_least 99 * stay.break_load instead of 1.0 * stay.break_load, by layer-a: a very careful owner",
			func(r finding.Report) bool {
				list := of(r, "plate-outlasts-wire")
				for _, f := range list {
					if f.Outcome == finding.Holds {
						return false
					}
				}
				return len(list) > 0
			}},
		"unknown": {"  - { rule: pin-outlasts-wire-in-shear, if_unknown: watch, reason: pins are bought new }\n", "pin-outlasts-wire-in-shear: cannot tell is watch instead of mend, by layer-a: pins are bought new",
			func(r finding.Report) bool {
				for _, f := range of(r, "pin-outlasts-wire-in-shear") {
					if f.Outcome == finding.CannotTell && f.Grade != finding.Watch {
						return false
					}
				}
				return true
			}},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			r := layered(t, c.change)
			if len(r.Problems) > 0 {
				t.Fatalf("%+v", r.Problems)
			}
			told := false
			for _, p := range r.Packs {
				for _, s := range p.Changed {
					told = told || s == c.told
				}
			}
			if !told {
				t.Errorf("the report does not say %q: %+v", c.told, r.Packs)
			}
			if !c.look(r) {
				t.Errorf("the rule judges as before: %+v", of(r, "plate-outlasts-wire"))
			}
		})
	}
}

// TestLayersRefused holds what a change may not do, each refused at its place.
func TestLayersRefused(t *testing.T) {
	cases := map[string]struct{ change, says string }{
		"no reason":        {"  - { rule: plate-outlasts-wire, off: true }\n", "lacks the key reason"},
		"no such rule":     {"  - { rule: plate-outlast-wire, off: true, reason: x }\n", `no pack that judges has a rule "plate-outlast-wire"`},
		"nothing":          {"  - { rule: plate-outlasts-wire, reason: x }\n", "the change changes nothing"},
		"off and more":     {"  - { rule: plate-outlasts-wire, off: true, grade: watch, reason: x }\n", "has neither grade nor limit"},
		"which band":       {"  - { rule: plate-outlasts-wire, grade: watch, reason: x }\n", "has to say which it means"},
		"no such band":     {"  - { rule: plate-outlasts-wire, band: 9, grade: watch, reason: x }\n", "has to say which it means"},
		"worse down":       {"  - { rule: plate-outlasts-wire, band: 1, grade: watch, reason: x }\n", "get worse down the list"},
		"other dimension":  {"  - { rule: plate-outlasts-wire, band: 1, limit: 3 * hole, reason: x }\n", "3 * hole (5:50), is in mm"},
		"unknown fact":     {"  - { rule: plate-outlasts-wire, band: 1, limit: 3 * stay.brake_load, reason: x }\n", "stay.brake_load"},
		"stop without why": {"  - { rule: side-of-pin-hole, if_unknown: stop, reason: x }\n", "does not say what a stop holds up"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			r := layered(t, c.change)
			for _, p := range r.Problems {
				if strings.Contains(p.Message, c.says) && p.At.Line >= 5 && strings.HasSuffix(p.At.File, "pack.yaml") {
					return
				}
			}
			t.Errorf("want %q, got %+v", c.says, r.Problems)
		})
	}
	r := layered(t, "  - { rule: plate-outlasts-wire, off: true, reason: x }\n", "  - { rule: plate-outlasts-wire, off: true, reason: y }\n")
	if len(r.Problems) != 1 {
		t.Errorf("two packs change one rule: %+v", r.Problems)
	}
}
