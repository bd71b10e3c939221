package engine_test

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"
	"chainwale/engine/render"
)

// found is a finding that a dangerous boat must give: which rule, on what, how it
// comes out, and what stands on the line of the plan that it points at.
type found struct {
	rule, subject string
	outcome       finding.Outcome
	grade         finding.Grade
	line          string
}

// dangerous are boats that are sound and fully measured but for one fault that has
// brought masts down. What each must give is listed whole: first what finds the
// fault itself, then what follows from it, and nothing else may stop or mend.
// Without says how the fault is taken out of the plan.
var dangerous = []struct {
	file    string
	gives   []found
	without []string
}{
	{
		"crack-seen",
		[]found{{"crack-seen", "record:spring-2026", finding.Fails, finding.Stop, "crack: seen"}},
		[]string{"crack: seen", "crack: none seen"},
	},
	{
		"304-in-a-wet-slot",
		[]found{
			{"metal-for-a-hidden-wet-place", "fitting:cap-plate-port", finding.Fails, finding.Mend, "name: 304"},
			{"age-of-plate", "fitting:cap-plate-port", finding.Fails, finding.Stop, "installed: 1998"},
		},
		[]string{"name: 304", "name: 316L", "installed: 1998", "installed: 2018"},
	},
	{
		"pin-half-a-size-too-small",
		[]found{{"pin-fits", "landing:aft-lower", finding.Fails, finding.Mend, "role: pin, diameter: 16.2 mm"}},
		[]string{"{ diameter: 14 mm, measured: [13.92 mm, 13.9 mm]", "{ diameter: 15.9 mm, measured: [15.82 mm, 15.8 mm]"},
	},
	{
		"rotten-knee",
		[]found{{"host-is-sound", "mounting:fore-lower-plate", finding.Fails, finding.Stop, "found: rotten"}},
		[]string{"found: rotten", "found: sound"},
	},
	{
		"three-small-bolts",
		[]found{{"bolts-outlast-wire", "bolt_group:cap-shroud-port", finding.Fails, finding.Stop, "role: bolt, diameter: 17/64 in, along: 4 in"}},
		[]string{"17/64 in", "13/32 in", "1/4-20 UNC", "3/8-16 UNC"},
	},
	{
		"plate-weaker-than-the-wire",
		[]found{
			{"plate-outlasts-wire", "landing:backstay", finding.Fails, finding.Stop, "thickness: [4.7 mm, 4.72 mm]"},
			{"hole-stays-round-at-work", "landing:backstay", finding.Fails, finding.Mend, "thickness: [4.7 mm, 4.72 mm]"},
		},
		[]string{"[4.7 mm, 4.72 mm]", "8 mm", "opening: 7 mm", "opening: 10 mm", "width: 33 mm", "width: 36 mm"},
	},
	{
		"wire-upsized-twice",
		[]found{
			{"plate-outlasts-wire", "landing:cap-shroud-port", finding.Fails, finding.Mend, "thickness: [8.0 mm, 8.02 mm]"},
			{"hole-stays-round-at-work", "landing:cap-shroud-port", finding.Fails, finding.Mend, "thickness: [8.0 mm, 8.02 mm]"},
			{"bolts-outlast-wire", "bolt_group:cap-shroud-port", finding.Fails, finding.Mend, "role: bolt, diameter: 10.5 mm, along: 110 mm"},
		},
		[]string{"metal: 316, diameter: 10 mm", "metal: 316, diameter: 7 mm"},
	},
	{
		"welded-304",
		[]found{{"weld-has-low-carbon", "fitting:cap-plate-port", finding.Fails, finding.Mend, "name: 304"}},
		[]string{"name: 304,", "name: 304L,"},
	},
	{
		"brass-under-load",
		[]found{{"no-zinc-brass-under-load", "fitting:backstay-plate", finding.Fails, finding.Mend, "name: naval brass"}},
		[]string{"name: naval brass, condition: as hot extruded", "name: silicon bronze"},
	},
	{
		"glassed-in",
		[]found{
			{"can-be-looked-at", "fitting:lower-plate-port", finding.Fails, finding.Mend, "glassed_in: yes"},
			{"last-look", "fitting:lower-plate-port", finding.Fails, finding.Mend, "installed: 2015"},
			{"bolts-outlast-wire", "bolt_group:aft-lower-port", finding.CannotTell, finding.Mend, "glassed_in: yes"},
			{"plate-outlasts-wire-at-the-bolts", "section:aft-lower-port", finding.CannotTell, finding.Mend, "glassed_in: yes"},
			{"host-is-sound", "mounting:lower-plate-port", finding.CannotTell, finding.Mend, "glassed_in: yes"},
		},
		[]string{"glassed_in: yes", "glassed_in: no"},
	},
}

// TestDangerousBoats holds that no boat with such a fault gets by at the grade from
// which plans are refused unless somebody says otherwise, that the right rule says
// so at the right place, that nothing else is cried out with it, and that it is the
// fault which is found: without it the same boat is sound.
func TestDangerousBoats(t *testing.T) {
	files, err := filepath.Glob("../testdata/dangerous/*.yaml")
	if err != nil || len(files) != len(dangerous)+1 { // and the one of which nothing is known
		t.Fatalf("%d files, %d boats: %v", len(files), len(dangerous), err)
	}
	for _, d := range dangerous {
		t.Run(d.file, func(t *testing.T) {
			src, err := os.ReadFile("../testdata/dangerous/" + d.file + ".yaml")
			if err != nil {
				t.Fatal(err)
			}
			r := check(t, d.file, string(src))
			if !r.Refused() {
				t.Error("she gets by")
			}
			for _, f := range d.gives {
				mustGive(t, r, src, f)
			}
			for _, f := range r.Findings {
				if weighs(f) && !slices.ContainsFunc(d.gives, func(g found) bool { return g.rule == f.Rule && twin(f.Subject) == g.subject }) {
					t.Errorf("%s says %s of %s as well: %s", f.Rule, f.Grade, f.Subject, f.Message)
				}
			}
			without := strings.NewReplacer(d.without...).Replace(string(src))
			if c := check(t, d.file, without).Counts; c.Stop+c.Mend+c.CannotTell > 0 {
				t.Errorf("without her fault she still has %d stops, %d mends and %d that can't be told", c.Stop, c.Mend, c.CannotTell)
			}
		})
	}
}

// weighs tells what would refuse a plan.
func weighs(f finding.Finding) bool {
	return (f.Outcome == finding.Fails || f.Outcome == finding.CannotTell) && f.Grade.AtLeast(finding.Mend)
}

// twin is a subject's own name or, to starboard, that of the one to port.
func twin(subject string) string { return strings.Replace(subject, "-starboard", "-port", 1) }

// mustGive holds that a report has a finding, and at the right place of its plan.
func mustGive(t *testing.T, r finding.Report, src []byte, want found) {
	t.Helper()
	f := findingOf(r, want.rule, want.subject)
	if f == nil || f.Outcome != want.outcome || f.Grade != want.grade {
		t.Errorf("%s does not give %s %s on %s: %+v", want.rule, want.outcome, want.grade, want.subject, f)
		return
	}
	if line := bytes.Split(src, []byte("\n"))[f.At.Line-1]; !bytes.Contains(line, []byte(want.line)) {
		t.Errorf("%s points at line %d, %q, which has no %q", want.rule, f.At.Line, line, want.line)
	}
}

// findingOf is what a rule says of a subject, nil if nothing.
func findingOf(r finding.Report, rule, subject string) *finding.Finding {
	i := slices.IndexFunc(r.Findings, func(f finding.Finding) bool { return f.Rule == rule && f.Subject == subject })
	if i < 0 {
		return nil
	}
	return &r.Findings[i]
}

// TestGlassedIn holds that nothing rests on looks that nobody can have taken: of a
// plate that is laminated in, with every number given and a look written down, no
// rule holds on its bolts, on what is behind the glass or on the look, and there is
// one thing to do about it.
func TestGlassedIn(t *testing.T) {
	src, err := os.ReadFile("../testdata/dangerous/glassed-in.yaml")
	if err != nil {
		t.Fatal(err)
	}
	r := check(t, "glassed-in.yaml", string(src))
	looks := []string{"can-be-looked-at", "last-look", "crack-seen", "pits-and-thinning", "record-makes-sense", "host-is-sound", "core-out-backing-in", "metal-for-a-hidden-wet-place"}
	for _, f := range r.Findings {
		kind, _, _ := strings.Cut(f.Subject, ":")
		onBolts := kind == "bolt_group" || kind == "bolt_hole" || kind == "section"
		if f.Outcome == finding.Holds && (onBolts || slices.Contains(looks, f.Rule)) {
			t.Errorf("%s holds on %s: %s", f.Rule, f.Subject, f.Message)
		}
	}
	if len(r.Measure) != 1 || r.Measure[0].Fact != "bolts_are" || !strings.HasSuffix(r.Measure[0].At.Pointer, "/mounting/glassed_in") || len(r.Measure[0].Settles) < 10 {
		t.Errorf("to be done: %+v", r.Measure)
	}
	if !strings.Contains(strings.Join(r.NotSeen, "\n"), "lower-plate-port: glassed in, so nobody has seen its bolts") {
		t.Errorf("not seen: %q", r.NotSeen)
	}
}

// TestFold holds that what can't be told of a part stands together, by grade, in lines
// that a page can hold.
func TestFold(t *testing.T) {
	src, err := os.ReadFile("../testdata/dangerous/unknown-everything.yaml")
	if err != nil {
		t.Fatal(err)
	}
	r := check(t, "unknown-everything.yaml", string(src))
	r.Findings = slices.DeleteFunc(r.Findings, func(f finding.Finding) bool { return f.Outcome != finding.CannotTell })
	var out strings.Builder
	if err := render.Text(&out, r, quantity.Metric); err != nil {
		t.Fatal(err)
	}
	_, stem, _ := strings.Cut(out.String(), "\nstemhead\n")
	stem, _, _ = strings.Cut(stem, "\n\n")
	lines := strings.Split(stem, "\n")
	if len(lines) < 5 || lines[0] != "  CANNOT TELL, until the readings below are taken:" || !strings.HasPrefix(lines[1], "      mend: bolts-outlast-wire, ") ||
		strings.Count(stem, "\n      watch: ") != 1 || strings.Index(stem, "plate-outlasts-wire,") > strings.Index(stem, "watch: ") {
		t.Errorf("the fold reads\n%s", stem)
	}
	for _, l := range lines {
		if len(l) > 96 {
			t.Errorf("%d characters: %s", len(l), l)
		}
	}
}

// TestUnknownEverything holds that a boat of which the plan names the parts and
// nothing else is refused, that nothing of her is said to be strong or weak, that
// each reading is asked for once, and that whoever reads the list knows with what
// and where to take it.
func TestUnknownEverything(t *testing.T) {
	src, err := os.ReadFile("../testdata/dangerous/unknown-everything.yaml")
	if err != nil {
		t.Fatal(err)
	}
	r := check(t, "unknown-everything.yaml", string(src))
	if !r.Refused() {
		t.Error("she gets by")
	}
	mustGive(t, r, src, found{"plate-outlasts-wire", "landing:cap-shroud-port", finding.CannotTell, finding.Mend, "id: cap-plate"})
	mustGive(t, r, src, found{"host-is-sound", "mounting:stemhead", finding.CannotTell, finding.Mend, "id: stemhead"})
	mustGive(t, r, src, found{"age-of-plate", "fitting:backstay-plate", finding.CannotTell, finding.Mend, "id: backstay-plate"})
	settled := map[string]bool{}
	asked := map[finding.Place]bool{}
	for _, m := range r.Measure {
		if asked[m.At] {
			t.Errorf("%s is asked for twice", m.At.Pointer)
		}
		asked[m.At] = true
		if m.Tool == "" || m.Where == "" {
			t.Errorf("%s of %s is asked for without a tool or a place", m.Fact, m.Subject)
		}
		for _, rule := range m.Settles {
			settled[rule] = true
		}
	}
	const places = 80 // three stays and three plates, some twenty readings each, and a contact
	if len(asked) < places {
		t.Errorf("only %d readings are asked for", len(asked))
	}
	said := map[string]bool{}
	for _, f := range r.Findings {
		said[f.Rule] = true
		switch {
		case f.Outcome == finding.CannotTell && !settled[f.Rule]:
			t.Errorf("%s can't tell, and no reading is asked for that would settle it", f.Rule)
		case f.Outcome == finding.Holds && !slices.Contains([]string{"kind-is-covered", "fitting-serves-a-stay", "stay-has-its-fitting"}, f.Rule):
			t.Errorf("%s holds on %s: %s", f.Rule, f.Subject, f.Message)
		case f.Outcome == finding.Fails:
			t.Errorf("%s fails on %s, of which nothing is known", f.Rule, f.Subject)
		}
	}
	if len(said) < 35 {
		t.Errorf("only %d rules said anything", len(said))
	}
}
