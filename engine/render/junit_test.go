package render

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"chainwale/engine/finding"
)

func junitBytes(t *testing.T, r finding.Report) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := JUnit(&out, r); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// readJUnit reads strictly, token by token and as a whole.
func readJUnit(t *testing.T, src []byte) junitSuites {
	t.Helper()
	tokens := xml.NewDecoder(bytes.NewReader(src))
	for {
		_, err := tokens.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%v\n%s", err, src)
		}
	}
	var all junitSuites
	if err := xml.Unmarshal(src, &all); err != nil {
		t.Fatal(err)
	}
	return all
}

// fate is what became of a case, as a reader of JUnit sees it.
func fate(c junitCase) string {
	var said []string
	for name, f := range map[string]*junitFault{"error": c.Error, "failure": c.Failure, "skipped": c.Skipped} {
		if f != nil {
			said = append(said, name)
		}
	}
	if len(said) == 0 && c.Out != nil {
		return "passes with a note"
	}
	return strings.Join(append(said, "passes")[:1], "")
}

// TestJUnit holds what becomes of each sort of finding: what refuses the plan is red
// whether it fails or can't be told.
func TestJUnit(t *testing.T) {
	all := readJUnit(t, junitBytes(t, sample()))
	got := map[string]string{}
	for _, s := range all.Suites {
		for _, c := range s.Cases {
			got[s.Name+" | "+c.Name] = fate(c)
		}
	}
	want := map[string]string{
		"the plan | the plan is judged":                             "passes with a note",
		"cap-port | plate-outlasts-wire landing:cap-port":           "failure",
		"cap-starboard | plate-outlasts-wire landing:cap-starboard": "skipped",
		"cap-port | pin-fits landing:cap-port":                      "failure",
		"cap-port | age-of-plate landing:cap-port":                  "error",
		"cap-starboard | pin-fits landing:cap-starboard":            "passes with a note",
		"cap-port | fork-is-filled landing:cap-port":                "passes with a note",
		"cap-port | pin-holds landing:cap-port":                     "passes",
		"cap-starboard | pin-holds landing:cap-starboard":           "skipped",
	}
	for name, w := range want {
		if got[name] != w {
			t.Errorf("%s: %q, wanted %q", name, got[name], w)
		}
	}
	if len(got) != len(want) {
		t.Errorf("%d cases, wanted %d", len(got), len(want))
	}
	if all.Tests != 9 || all.Failed != 2 || all.Errors != 1 || all.Skipped != 2 || len(all.Suites) != 3 {
		t.Errorf("%d tests, %d failures, %d errors, %d skipped in %d suites", all.Tests, all.Failed, all.Errors, all.Skipped, len(all.Suites))
	}
}

// TestJUnitRefuseFrom holds that red follows the grade from which the plan is refused.
func TestJUnitRefuseFrom(t *testing.T) {
	for refuse, want := range map[finding.Grade][2]int{finding.Stop: {1, 0}, finding.Mend: {2, 1}, finding.Watch: {3, 2}} {
		r := sample()
		r.RefuseAt = refuse
		all := readJUnit(t, junitBytes(t, r))
		if all.Failed != want[0] || all.Errors != want[1] {
			t.Errorf("from %s: %d failures, %d errors, wanted %v", refuse, all.Failed, all.Errors, want)
		}
		if (all.Failed+all.Errors > 0) != r.Refused() {
			t.Errorf("from %s: red and refused disagree", refuse)
		}
	}
}

// TestJUnitOfProblems holds that a plan that nothing judged is not green, nor one
// that some pack did not judge.
func TestJUnitOfProblems(t *testing.T) {
	if all := readJUnit(t, junitBytes(t, refused())); all.Errors != 2 || all.Tests != 2 {
		t.Errorf("%+v", all)
	}
	r := sample()
	r.Problems = refused().Problems
	if all := readJUnit(t, junitBytes(t, r)); all.Errors != 2 || all.Tests != 10 {
		t.Errorf("%d errors in %d tests", all.Errors, all.Tests)
	}
}

// TestJUnitEscapes holds that text of the user's comes through, and that characters
// XML has no place for are replaced.
func TestJUnitEscapes(t *testing.T) {
	src := junitBytes(t, sample())
	if bytes.ContainsAny(src, "\x01") || bytes.ContainsRune(src, '\uFFFE') {
		t.Error("a character that XML does not allow stands in the file")
	}
	want := strings.NewReplacer("\x01", "\uFFFD", "\uFFFE", "\uFFFD").Replace(nasty)
	for _, s := range readJUnit(t, src).Suites {
		for _, c := range s.Cases {
			if c.Name == "pin-fits landing:cap-port" {
				if c.Failure.Message != "mend: "+want {
					t.Errorf("%q, wanted %q", c.Failure.Message, want)
				}
				return
			}
		}
	}
	t.Error("the case is not there")
}
