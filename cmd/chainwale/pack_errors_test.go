package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// badPacks spoils one thing of the worked rule that `pack new` writes, or of its
// pack.yaml, and shows what an author is told.
var badPacks = []struct{ name, file, old, new string }{
	{"misspelt fact", rulePart, "have: thickness", "have: thicknes"},
	{"misspelt fact of a neighbour", rulePart, "on: fitting", "on: landing"},
	{"misspelt fact in a sentence", rulePart, "{have} thick", "{hav} thick"},
	{"misspelt fact in an example", rulePart, "thickness: 4.9 mm", "thikness: 4.9 mm"},
	{"misspelt fact to vary", rulePart, "vary: [thickness]", "vary: [thicknss]"},
	{"fact that is worked out to vary", rulePart, "vary: [thickness]", "vary: [thickness, life]"},
	{"misspelt kind", rulePart, "on: fitting", "on: fiting"},
	{"misspelt key", rulePart, "because:", "becuase:"},
	{"misspelt word", rulePart, `kind == "chainplate"`, `kind == "chainplat"`},
	{"misspelt word in an example", rulePart, "kind: tang", "kind: tangg"},
	{"limit in another unit", rulePart, "at_least: 5 mm", "at_least: 5 kN"},
	{"limit without its unit", rulePart, "at_least: 5 mm", "at_least: 5"},
	{"unit that nobody knows", rulePart, "at_least: 5 mm", "at_least: 5 mmm"},
	{"example in another unit", rulePart, "thickness: 4.9 mm", "thickness: 4.9 kN"},
	{"example without its unit", rulePart, "thickness: 4.9 mm", "thickness: 4.9"},
	{"length added to a stress", rulePart, "have: thickness", "have: thickness + metal.yield"},
	{"quantity without quotes", rulePart, "have: thickness", "have: thickness - 1 mm"},
	{"word compared as a number", rulePart, `applies_if: kind == "chainplate"`, `applies_if: kind >= "chainplate"`},
	{"number compared as a word", rulePart, `applies_if: kind == "chainplate"`, `applies_if: thickness == '5 mm'`},
	{"sign of another language", rulePart, `applies_if: kind == "chainplate"`, `applies_if: kind == "chainplate" && hidden`},
	{"not that YAML drops", rulePart, `applies_if: kind == "chainplate"`, `applies_if: !hidden`},
	{"bracket that is not closed", rulePart, "have: thickness", "have: min(thickness, width"},
	{"choice without quotes", rulePart, "at_least: 5 mm", "at_least: hidden ? '6 mm' : '5 mm'"},
	{"no such function", rulePart, "have: thickness", "have: sqrt(thickness)"},
	{"number beyond reckoning", rulePart, "at_least: 5 mm", "at_least: 1e999 * thickness"},
	{"quantity beyond reckoning", rulePart, "at_least: 5 mm", "at_least: 1e999 mm"},
	{"division by nought", rulePart, "at_least: 5 mm", "at_least: (0/0) * thickness"},
	{"not a number", rulePart, "at_least: 5 mm", "at_least: .nan"},
	{"infinite", rulePart, "at_least: 5 mm", "at_least: .inf"},
	{"missing title", rulePart, "title: The plate is not too thin to be trusted\n", ""},
	{"missing grade", rulePart, "  - at_least: 5 mm\n    else: mend\n", "  - at_least: 5 mm\n"},
	{"missing source", rulePart, "  - source: put your source here, or say that it is your own judgement\n    as: judgement\n    for: both limits\n", "  - for: both limits\n"},
	{"missing limits", rulePart, "bands:\n  - at_least: 3 mm\n    else: stop\n  - at_least: 5 mm\n    else: mend\n", ""},
	{"nothing to compare", rulePart, "have: thickness\n", ""},
	{"stop that holds nothing up", rulePart, "holds_up: sailing\n", ""},
	{"wrong grade", rulePart, "    else: mend\n", "    else: warning\n"},
	{"grades getting worse", rulePart, "  - at_least: 3 mm\n    else: stop\n", "  - at_least: 3 mm\n    else: watch\n"},
	{"wrong outcome", rulePart, "outcome: does not apply", "outcome: passes"},
	{"how known", rulePart, "as: judgement", "as: hearsay"},
	{"no example that cannot tell", rulePart, "  - with: { kind: chainplate }\n    outcome: cannot tell\n    grade: mend\n", ""},
	{"no examples", rulePart, "examples:\n  - with: { kind: chainplate, thickness: 5 mm }\n    outcome: holds\n", "cases:\n  - with: { kind: chainplate, thickness: 5 mm }\n    outcome: holds\n"},
	{"bands in braces", rulePart, "  - at_least: 3 mm\n    else: stop\n", "  - { at_least: max(thickness, width), else: stop }\n"},
	{"key twice", rulePart, "holds_up: sailing\n", "holds_up: sailing\nholds_up: cutting\n"},
	{"bad id", rulePart, "id: plate-not-thin", "id: Plate not thin"},
	{"tab before a key", rulePart, "    else: mend\n", "\telse: mend\n"},
	{"tabs and wide characters before the place", rulePart, `says: "{fitting} is`, "says:\t\"板厚\t{fiting} is"},
	{"long line", rulePart, "have: thickness", "have: " + strings.Repeat("thickness + ", 40) + "thicknes" + strings.Repeat(" + thickness", 40)},
	{"no text", rulePart, "A thin plate", "A th\xefn plate"},
	{"character that moves the cursor", rulePart, "A thin plate", "A \x1b[31mthin plate"},
	{"character that turns the line", rulePart, `kind == "chainplate"`, "kind == \"chainplate\u202e\""},
	{"head without edition", headPart, "edition: \"1\"\n", ""},
	{"head with a misspelt key", headPart, "scope:", "scop:"},
	{"no head", headPart, "", ""},
}

const (
	rulePart = "plate-not-thin.yaml"
	headPart = "pack.yaml"
)

const badPacksFile = "testdata/badpacks.txt"

// TestBadPacks holds what an author is told to testdata/badpacks.txt, which reads as a
// sheet of all faults; UPDATE=1 writes it anew.
func TestBadPacks(t *testing.T) {
	var sheet strings.Builder
	for _, test := range badPacks {
		t.Run(test.name, func(t *testing.T) {
			status, told := proveSpoilt(t, test.file, test.old, test.new)
			if status != statusFault {
				t.Errorf("status %d", status)
			}
			sheet.WriteString("== " + test.name + "\n" + told + "\n")
		})
	}
	if strings.ContainsAny(sheet.String(), "\x1b\t\u202e") {
		t.Error("what would move the cursor came out")
	}
	if os.Getenv("UPDATE") != "" {
		if err := os.WriteFile(badPacksFile, []byte(sheet.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(badPacksFile)
	if err != nil {
		t.Fatal(err)
	}
	checkSections(t, string(want), sheet.String())
}

// checkSections compares two sheets, part by part.
func checkSections(t *testing.T, want, got string) {
	t.Helper()
	wanted, had := strings.Split(want, "== "), strings.Split(got, "== ")
	if len(wanted) != len(had) {
		t.Errorf("%d parts, wanted %d", len(had), len(wanted))
		return
	}
	for i := range had {
		if had[i] != wanted[i] {
			t.Errorf("%s\nwanted\n%s", had[i], wanted[i])
		}
	}
}

// proveSpoilt writes the starter, spoils one of its files (or takes it away, where old
// is empty) and proves it.
func proveSpoilt(t *testing.T, file, old, new string) (status int, told string) {
	t.Helper()
	t.Chdir(t.TempDir())
	if err := writePack("my", "my"); err != nil {
		t.Fatal(err)
	}
	name := filepath.Join("my", file)
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	switch {
	case old == "":
		err = os.Remove(name)
	case !strings.Contains(string(text), old):
		t.Fatalf("%s has no %q", file, old)
	default:
		err = os.WriteFile(name, []byte(strings.Replace(string(text), old, new, 1)), 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
	var out, errs bytes.Buffer
	status = run([]string{"pack", "prove", "my"}, nil, &out, &errs)
	if out.Len() > 0 {
		t.Errorf("said as a result: %s", out.String())
	}
	return status, errs.String()
}
