package engine_test

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"chainwale/engine/finding"
)

// dangerous are boats with one fault each that has brought masts down: which rule
// must find it, how it is graded, and what stands on the line that it points at.
// Follows are other rules that may stop or mend because of the same fault.
var dangerous = []struct {
	file, rule, subject string
	outcome             finding.Outcome
	grade               finding.Grade
	line                string
	follows             []string
}{
	{"crack-seen", "crack-seen", "record:spring-2026/cap-plate-port", finding.Fails, finding.Stop, "crack: seen", nil},
	{"304-in-a-wet-slot", "metal-for-a-hidden-wet-place", "fitting:cap-plate-port", finding.Fails, finding.Mend, "name: 304", nil},
	{"pin-half-a-size-too-small", "pin-fits", "landing:cap-shroud-port", finding.Fails, finding.Mend, "diameter: 16.2 mm", []string{"pin-outlasts-wire-in-bending", "pin-stays-straight-at-work"}},
	{"rotten-knee", "host-is-sound", "mounting:cap-plate-port", finding.Fails, finding.Stop, "found: rotten", nil},
	{"three-small-bolts", "bolts-outlast-wire", "bolt_group:cap-shroud-port", finding.Fails, finding.Stop, "role: bolt, diameter: 7 mm", []string{"host-holds-the-bolts"}},
	{"plate-weaker-than-the-wire", "plate-outlasts-wire", "landing:cap-shroud-port", finding.Fails, finding.Stop, "thickness: 5 mm", []string{"hole-stays-round-at-work", "strip-stays-straight-at-work"}},
	{"wire-upsized-twice", "plate-outlasts-wire", "landing:cap-shroud-port", finding.Fails, finding.Mend, "thickness: 8 mm", []string{"bolts-outlast-wire", "hole-stays-round-at-work"}},
	{"welded-304", "weld-has-low-carbon", "fitting:cap-plate-port", finding.Fails, finding.Mend, "name: 304", nil},
	{"brass-under-load", "no-zinc-brass-under-load", "fitting:cap-plate-port", finding.Fails, finding.Mend, "name: naval brass", nil},
	{"unknown-everything", "plate-outlasts-wire", "landing:cap-shroud-port", finding.CannotTell, finding.Mend, "id: cap-plate", nil},
}

// TestDangerousBoats holds that no boat with such a fault gets by, that the right
// rule stops it at the right place, and that nothing else is cried out with it.
func TestDangerousBoats(t *testing.T) {
	files, err := filepath.Glob("../testdata/dangerous/*.yaml")
	if err != nil || len(files) != len(dangerous) {
		t.Fatalf("%d files, %d boats: %v", len(files), len(dangerous), err)
	}
	for _, d := range dangerous {
		src, err := os.ReadFile("../testdata/dangerous/" + d.file + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		r := check(t, d.file, string(src))
		if !r.Refused() {
			t.Errorf("%s: she gets by", d.file)
		}
		i := slices.IndexFunc(r.Findings, func(f finding.Finding) bool { return f.Rule == d.rule && f.Subject == d.subject })
		if i < 0 || r.Findings[i].Outcome != d.outcome || r.Findings[i].Grade != d.grade {
			t.Errorf("%s: %s does not give %s %s on %s", d.file, d.rule, d.outcome, d.grade, d.subject)
			continue
		}
		if line := bytes.Split(src, []byte("\n"))[r.Findings[i].At.Line-1]; !bytes.Contains(line, []byte(d.line)) {
			t.Errorf("%s: %s points at %q, which has no %q", d.file, d.rule, line, d.line)
		}
		for _, f := range r.Findings {
			if f.Outcome == finding.Fails && f.Grade.AtLeast(finding.Mend) && f.Rule != d.rule && !slices.Contains(d.follows, f.Rule) {
				t.Errorf("%s: %s %s as well: %s", d.file, f.Rule, f.Grade, f.Message)
			}
		}
	}
}

// TestUnknownEverything holds that of a boat of which nothing is known nothing is
// said to be strong, and that each reading is asked for once.
func TestUnknownEverything(t *testing.T) {
	src, err := os.ReadFile("../testdata/dangerous/unknown-everything.yaml")
	if err != nil {
		t.Fatal(err)
	}
	r := check(t, "unknown-everything.yaml", string(src))
	asked := map[finding.Place]bool{}
	for _, m := range r.Measure {
		if asked[m.At] {
			t.Errorf("%s is asked for twice", m.At.Pointer)
		}
		asked[m.At] = true
	}
	if len(asked) < 20 {
		t.Errorf("only %d readings are asked for", len(asked))
	}
	for _, f := range r.Findings {
		if f.Outcome == finding.Holds && !slices.Contains([]string{"kind-is-covered", "fitting-serves-a-stay"}, f.Rule) {
			t.Errorf("%s holds on %s", f.Rule, f.Subject)
		}
	}
}

// TestOddPlans holds that what makes no sense in a plan is said in a sentence that
// makes sense, by the right rule.
func TestOddPlans(t *testing.T) {
	src, err := os.ReadFile("../testdata/boats/quillfish-mended.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct {
		name, take, leave string
		rule, subject     string
		outcome           finding.Outcome
		says              string
	}{
		{"a fitting that serves nothing", "    serves: [backstay]\n", "", "fitting-serves-a-stay", "fitting:backstay-plate", finding.Fails, "serves no stay"},
		{"a plate of next year that is kept", "state: new\n    kind: backstay plate", "state: kept\n    kind: backstay plate", "last-look", "fitting:backstay-plate", finding.Holds, ""},
		{"rotten, with a strength given", "found: sound, how: with a spike and by tapping", "found: rotten, how: with a spike and by tapping", "host-is-sound", "mounting:cap-plate-port", finding.Fails, "rotten"},
		{"a wire of tomorrow", "installed: 2019\n\n  - id: fore-lower", "installed: 2031\n\n  - id: fore-lower", "age-of-wire", "stay:cap-shroud-port", finding.CannotTell, "later than the day judged on"},
		{"a record of tomorrow", "on: 2026-11-14", "on: 2027-11-14", "record-makes-sense", "record:autumn-2026/cap-plate-port", finding.Fails, "later than"},
		{"a record before the part was there", "on: 2026-11-14", "on: 2020-11-14", "record-makes-sense", "record:autumn-2026/cap-plate-port", finding.Fails, "before"},
		{"a bent rod", "kind: backstay plate", "kind: u-bolt", "kind-is-covered", "fitting:backstay-plate", finding.Fails, "naval architect"},
	} {
		if !strings.Contains(string(src), test.take) {
			t.Fatalf("%s: the plan has no %q", test.name, test.take)
		}
		r := check(t, "odd.yaml", strings.Replace(string(src), test.take, test.leave, 1))
		i := slices.IndexFunc(r.Findings, func(f finding.Finding) bool { return f.Rule == test.rule && f.Subject == test.subject })
		if i < 0 {
			t.Errorf("%s: %s says nothing of %s", test.name, test.rule, test.subject)
			continue
		}
		if f := r.Findings[i]; f.Outcome != test.outcome || !strings.Contains(f.Message, test.says) {
			t.Errorf("%s: %s %s: %s", test.name, f.Rule, f.Outcome, f.Message)
		}
	}
}

// TestTwoStaysOnOnePlate holds that a plate under two wires is judged under both,
// and that it can't be told while one of them has no direction.
func TestTwoStaysOnOnePlate(t *testing.T) {
	src, err := os.ReadFile("../testdata/boats/quillfish-mended.yaml")
	if err != nil {
		t.Fatal(err)
	}
	both := strings.Replace(string(src), "    serves: [cap-shroud]", "    serves: [cap-shroud, fore-lower]", 1)
	both = strings.Replace(both, "    serves: [fore-lower]\n", "", 1)
	for _, test := range []struct {
		plan    string
		outcome finding.Outcome
	}{
		{both, finding.Holds},
		{strings.Replace(both, "    lower: { x: 0.55 m, y: 1.4 m, z: 1.75 m }\n", "", 1), finding.CannotTell},
	} {
		r := check(t, "two.yaml", test.plan)
		i := slices.IndexFunc(r.Findings, func(f finding.Finding) bool {
			return f.Rule == "plate-bears-all-its-stays" && f.Subject == "fitting:cap-plate-port"
		})
		if i < 0 || r.Findings[i].Outcome != test.outcome {
			t.Errorf("two stays on one plate do not give %s: %s", test.outcome, r.Findings[max(i, 0)].Message)
		}
	}
}
