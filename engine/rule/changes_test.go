package rule

import (
	"strings"
	"testing"
	"testing/fstest"
)

// TestChangesRefused holds that a change which is wrong whatever rule it is for is
// refused when its pack is loaded, where it stands.
func TestChangesRefused(t *testing.T) {
	const advice = " gives no finite number, so nothing can ever be told by it | no division by nought, and no number beyond what the trade would write"
	for change, want := range map[string]string{
		"limit: 0/0":                            `my/pack.yaml:6:12: "0/0"` + advice,
		"limit: hole * (1 / 0)":                 `my/pack.yaml:6:20: "1 / 0"` + advice,
		"limit: hole >= '1 mm' * 0/0":           `my/pack.yaml:6:20: "'1 mm' * 0/0"` + advice,
		"limit: .nan":                           "my/pack.yaml:6:12: the expression can't be understood: . can't stand here | " + grammar,
		"limit: 1e999 * hole":                   `my/pack.yaml:6:12: "1e999" is beyond what can be reckoned with | a number that the trade would write`,
		"limit: min(hole":                       "my/pack.yaml:6:19: the expression can't be understood: something is missing at the end | " + grammar,
		"limit: hole = 3":                       `my/pack.yaml:6:17: "=" has no place in an expression`,
		"grade: terrible":                       `my/pack.yaml:6:12: grade can't be "terrible" | one of stop, mend, watch`,
		"if_unknown: no":                        `my/pack.yaml:6:17: if_unknown can't be "no" | one of stop, mend, watch`,
		"limit: 5 mm":                           "",
		"limit: 0.5 * hole":                     "",
		"limit: stay.toggle and hole / end > 2": "",
	} {
		text := goodHead + "changes:\n  - rule: a-rule\n    " + change + "\n    reason: a careful owner\n"
		_, problems := Load(fstest.MapFS{"p/pack.yaml": {Data: []byte(text)}}, "p", "my", catalogue(t), LoadOptions{})
		got := lines(problems)
		if got != want && (want == "" || !strings.HasPrefix(got, want)) {
			t.Errorf("%s: %s, want %s", change, got, want)
		}
	}
}

// TestDiffering holds that a change is told from none by what the rule says of some
// facts, not by how it is written.
func TestDiffering(t *testing.T) {
	p, problems := loadAll(t, packOf(goodRule))
	if p == nil {
		t.Fatal(lines(problems))
	}
	for change, want := range map[string]bool{
		"band: 1, limit: 5 mm":                   true,
		"band: 1, limit: 4.01 mm":                true,
		"band: 1, limit: 4 mm":                   false,
		"band: 1, limit: 0.4 cm":                 false,
		"band: 1, limit: \"'2 mm' * 2\"":         false,
		"band: 2, limit: 0.55 * hole":            true,
		"band: 2, limit: hole / 2":               false,
		"band: 2, limit: \"min(hole, 3 * end)\"": true,
		"band: 1, grade: mend":                   true,
		"band: 2, grade: watch":                  true,
		"band: 2, grade: mend":                   false,
		"if_unknown: watch":                      true,
		"if_unknown: mend":                       false,
	} {
		text := goodHead + "changes:\n  - { rule: a-rule, reason: x, " + change + " }\n"
		by, problems := Load(fstest.MapFS{"p/pack.yaml": {Data: []byte(text)}}, "p", "my", catalogue(t), LoadOptions{})
		if by == nil {
			t.Fatalf("%s: %s", change, lines(problems))
		}
		changed, _, problems := p.Changed(by.Changes[0], catalogue(t))
		if changed == nil {
			t.Fatalf("%s: %s", change, lines(problems))
		}
		s, got := p.Rules[0].Differing(changed.Rules[0])
		if got != want {
			t.Errorf("%s makes a difference: %v, want %v", change, got, want)
		}
		if was, is := p.Rules[0].Evaluate(s.row), changed.Rules[0].Evaluate(s.row); got && was.Outcome == is.Outcome && was.Grade == is.Grade {
			t.Errorf("%s: both say %s (%s) of %s", change, was.Outcome, was.Grade, s)
		}
	}
}
