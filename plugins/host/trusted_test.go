package host

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"chainwale/engine/plan/document"
)

var zeros = "sha256:" + strings.Repeat("0", 64)

const listed = `# our standards
standards:
  # the rule of the class
  - id: rule
    edition: "2"
    program: rule/standard.py
    args: [serve, "--quiet"]
    tls: true # it insists
    files:
      standard.py: SUM
      pack/pack.yaml: SUM

  # an old one
  - id: older   # kept for 2019
    edition: 1
    program: /opt/older/older
    files: {older: SUM}
# the end
`

func entriesOf(t *testing.T, text string) []Entry {
	t.Helper()
	entries, problems, err := readEntries("trusted.yaml", []byte(strings.ReplaceAll(text, "SUM", zeros)))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	return entries
}

func TestReadTrusted(t *testing.T) {
	name := filepath.Join(t.TempDir(), TrustedName)
	if err := os.WriteFile(name, []byte(strings.ReplaceAll(listed, "SUM", zeros)), 0o644); err != nil {
		t.Fatal(err)
	}
	list, problems, err := ReadTrusted(name)
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	p, ok := list.Program("rule")
	want := Program{ID: "rule", Edition: "2", Path: filepath.Join(filepath.Dir(name), "rule", "standard.py"), Args: []string{"serve", "--quiet"}, TLS: true,
		Files: map[string]string{"standard.py": zeros, "pack/pack.yaml": zeros}}
	if !ok || !reflect.DeepEqual(p, want) {
		t.Errorf("read was %+v", p)
	}
	if p, ok := list.Program("older"); !ok || p.Path != "/opt/older/older" || p.TLS {
		t.Errorf("read was %+v", p)
	}
	if _, ok := list.Program("newer"); ok {
		t.Error("a program was found that is not listed")
	}
	if _, _, err := ReadTrusted(name + ".gone"); err == nil {
		t.Error("a file was read that is not there")
	}
}

// TestTrustedProblems spoils the file in one way at a time. Each is told with its
// place and what would be right, and nothing of the file is trusted.
func TestTrustedProblems(t *testing.T) {
	for _, c := range []struct{ old, new, want string }{
		{"tls: true", "tsl: true", "8:5"},
		{"tls: true", "tls: maybe", "8:10"},
		{"id: rule", "id: Rule 2", "4:9"},
		{"id: older ", "id: rule ", "14:9"},
		{"    edition: \"2\"\n", "", "4:5"},
		{"standard.py: SUM", "standard.py: sha1:00", "10:20"},
		{"standard.py: SUM", "other.py: SUM", "9:5"},
		{"pack/pack.yaml: SUM", "../pack.yaml: SUM", "11:7"},
		{"pack/pack.yaml: SUM", "/etc/passwd: SUM", "11:7"},
		{"{older: SUM}", "{}", "17:5"},
		{"{older: SUM}", "[older]", "17:12"},
		{"# the end\n", "# the end\nprograms: []\n", "19:1"},
		{"standards:\n", "standards: &all\n", "2:12"},
		{"edition: 1", "edition: 1\n    edition: 2", "16:5"},
	} {
		text := strings.ReplaceAll(strings.Replace(listed, c.old, c.new, 1), "SUM", zeros)
		entries, problems, err := readEntries("trusted.yaml", []byte(text))
		if err != nil || entries != nil && len(problems) == 0 || len(problems) == 0 {
			t.Errorf("%q for %q: no problem; %v", c.new, c.old, err)
			continue
		}
		p := problems[0]
		if got := fmt.Sprintf("%d:%d", p.At.Line, p.At.Column); got != c.want || p.Message == "" || p.Expected == "" {
			t.Errorf("%q for %q: at %s, want %s: %s; expected: %s", c.new, c.old, got, c.want, p.Message, p.Expected)
		}
	}
}

// TestSchemaIsSound compiles the schema whole, which reading sound files does not.
func TestSchemaIsSound(t *testing.T) {
	if _, err := document.Compile(trustedSchema); err != nil {
		t.Error(err)
	}
}

func TestFindTrusted(t *testing.T) {
	root := t.TempDir()
	boat := filepath.Join(root, "harbour", "boat")
	if err := os.MkdirAll(boat, 0o755); err != nil {
		t.Fatal(err)
	}
	plan := filepath.Join(boat, "plan.yaml")
	if got := FindTrusted(plan, root); got != "" {
		t.Errorf("found %s where there is none", got)
	}
	for _, dir := range []string{root, filepath.Join(root, "harbour"), boat} {
		want := filepath.Join(dir, TrustedName)
		if err := os.WriteFile(want, nil, 0o644); err != nil {
			t.Fatal(err)
		}
		if got := FindTrusted(plan, root); got != want {
			t.Errorf("found %q, want %q", got, want)
		}
	}
	if got := FindTrusted(filepath.Join(root, "plan.yaml"), boat); got != "" {
		t.Errorf("found %s outside the root", got)
	}
	if got := FindTrusted(filepath.Join(root, "harbour", "plan.yaml"), filepath.Join(root, "harbour")); got != filepath.Join(root, "harbour", TrustedName) {
		t.Errorf("found %s, beside the plan at the root", got)
	}
}

// TestPinKeepsTheRest replaces an entry and adds one: every other line stays.
func TestPinKeepsTheRest(t *testing.T) {
	e := Entry{ID: "rule", Edition: "3", Program: "rule/standard.py", Files: map[string]string{"standard.py": zeros}}
	for _, ending := range []string{"\n", "\r\n"} {
		old := strings.ReplaceAll(strings.ReplaceAll(listed, "SUM", zeros), "\n", ending)
		made, err := withEntry("trusted.yaml", []byte(old), e)
		if err != nil {
			t.Fatal(err)
		}
		want := strings.ReplaceAll(`# our standards
standards:
  # the rule of the class
  - id: rule
    # it insists
    edition: "3"
    program: "rule/standard.py"
    files:
      "standard.py": SUM

  # an old one
`, "SUM", zeros)
		want = strings.ReplaceAll(want, "\n", ending)
		_, rest, _ := strings.Cut(old, "# an old one"+ending)
		if string(made) != want+rest {
			t.Errorf("it became\n%s", made)
		}
		e := e
		e.ID = "another"
		more, err := withEntry("trusted.yaml", made, e)
		if err != nil {
			t.Fatal(err)
		}
		if before, after, _ := strings.Cut(string(made), "# the end"); !strings.HasPrefix(string(more), before) || !strings.HasSuffix(string(more), "# the end"+after) {
			t.Errorf("it became\n%s", more)
		}
	}
}

// TestPinStrangeFiles: what can't be added to safely is refused and left alone.
func TestPinStrangeFiles(t *testing.T) {
	p := Program{ID: "rule", Edition: "3", Path: "", Files: map[string]string{"standard": zeros}}
	for text, fine := range map[string]bool{
		"":                           true,
		"standards: []\n":            true,
		"standards: []   # none yet": true,
		"{standards: []}\n":          false,
		`{"standards": []}`:          false,
		"standards:\n  []\n":         false,
		"standards: [\n]\n":          false,
		"standards:\n":               false,
		"standards: [{id: a, edition: 1, program: a/a, files: {a: SUM}}]\n":                          false,
		"standards:\n- id: a\n  edition: 1\n  program: a/a\n  files: {a: SUM}\n":                     true,
		"standards:\n-\n  id: a\n  edition: 1\n  program: a/a\n  files: {a: SUM}\n":                  true,
		"standards:\n    - id: a\n      edition: 1\n      program: a/a\n      files: {a: SUM}":       true,
		"standards:\n- {id: a, edition: 1, program: a/a, files: {a: SUM}}\n":                         true,
		"standards:\n- id: rule\n  edition: >-\n    1\n\n    2\n  program: a/a\n  files: {a: SUM}\n": true,
	} {
		home := t.TempDir()
		name := filepath.Join(home, TrustedName)
		text = strings.ReplaceAll(text, "SUM", zeros)
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		p.Path = filepath.Join(home, "rule", "standard")
		err := Pin(name, p)
		now, _ := os.ReadFile(name)
		switch {
		case (err == nil) != fine:
			t.Errorf("%q: %v", text, err)
		case err != nil && string(now) != text:
			t.Errorf("%q was refused and became %q", text, now)
		case err == nil:
			list, problems, err := ReadTrusted(name)
			if err != nil || len(problems) > 0 {
				t.Fatalf("%q became %q: %v, %v", text, now, problems, err)
			}
			if got, ok := list.Program("rule"); !ok || got.Path != p.Path {
				t.Errorf("%q became %q", text, now)
			}
		}
		if info, _ := os.Stat(name); info.Mode().Perm() != 0o600 {
			t.Errorf("its mode became %v", info.Mode())
		}
		if files, _ := os.ReadDir(home); len(files) != 1 {
			t.Errorf("%q: %d files are left", text, len(files))
		}
	}
}

func TestPinRefuses(t *testing.T) {
	home := t.TempDir()
	name := filepath.Join(home, TrustedName)
	beside := Program{ID: "rule", Edition: "1", Path: filepath.Join(home, "standard"), Files: map[string]string{"standard": zeros}}
	if err := Pin(name, beside); err == nil || !strings.Contains(err.Error(), "folder of its own") {
		t.Errorf("a program beside trusted.yaml gave %v", err)
	}
	if err := Pin(name, Program{Path: "a"}); err == nil {
		t.Error("a program was pinned that has not declared itself")
	}
	if _, err := os.Stat(name); err == nil {
		t.Error("the file was written all the same")
	}
}

// TestPinnedIsRead: whatever an entry holds is read as it was pinned, and pinning it
// twice changes nothing.
func TestPinnedIsRead(t *testing.T) {
	text := rapid.StringMatching(`[ -~äß°]{0,9}[!-~]`)
	rapid.Check(t, func(t *rapid.T) {
		e := Entry{
			ID: "rule", Edition: text.Draw(t, "edition"), Program: "rule/" + rapid.StringMatching(`[a-zA-Z0-9 '"#:äß._-]{0,9}[a-z]`).Draw(t, "program"),
			Args: rapid.SliceOfN(text, 0, 3).Draw(t, "args"), TLS: rapid.Bool().Draw(t, "tls"), Files: map[string]string{},
		}
		for _, f := range rapid.SliceOfN(rapid.StringMatching(`[a-zA-Z0-9 '"#:{}äß._-]{0,9}[a-z]`), 0, 3).Draw(t, "files") {
			e.Files[f] = zeros
		}
		e.Files[strings.TrimPrefix(e.Program, "rule/")] = zeros
		old := strings.ReplaceAll(listed, "SUM", zeros)
		made, err := withEntry("trusted.yaml", []byte(old), e)
		if err != nil {
			t.Fatal(err)
		}
		again, err := withEntry("trusted.yaml", made, e)
		if err != nil || string(again) != string(made) {
			t.Fatalf("pinned twice it became\n%s\nof\n%s\n%v", again, made, err)
		}
	})
}
