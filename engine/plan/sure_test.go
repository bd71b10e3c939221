package plan

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"chainwale/engine/plan/document"
	"chainwale/schema"
)

// odd are texts that stand in for a value of a sound plan.
var oddTexts = []string{"", "0", "-1 mm", "6", "6 N", "6 mm", "1e9 mm", "yes", "true", "010", "2021-13-40", "2021", "zzz", "keel-stepped", "both", "316", "{}", "[]", "[6 mm]", "[6 mm, x]", "{ a: b }", "~", "1 %", "120 %", "450 kg/m3", "\"\""}

// TestSureIsRight holds that what the quick look takes, the JSON Schema library
// takes as well: each value of the demos is replaced by odd ones, each key is
// misspelt, and whatever is let through must be let through by the library. It also
// holds that sound plans need no library at all.
func TestSureIsRight(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of plans")
	}
	quick, err := document.Prepare(schema.Plan())
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("../../testdata/*/*.yaml")
	if err != nil || len(files) < 10 {
		t.Fatal(files, err)
	}
	tried, sure := 0, 0
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		root, problems := document.Read(file, src)
		if len(problems) > 0 || root.Member("boat") == nil || root.Member("template") != nil || filepath.Base(filepath.Dir(file)) == "classes" {
			continue // a published case, or a plan in parts
		}
		if !quick.Sure(root) {
			t.Errorf("%s is sound and needs the library all the same", file)
		}
		if filepath.Base(file) != "crack-seen.yaml" {
			continue // one plan with every part is enough to spoil
		}
		for _, change := range spoilt(string(src), root) {
			changed, problems := document.Read(file, []byte(change))
			if len(problems) > 0 {
				continue
			}
			tried++
			if !quick.Sure(changed) {
				continue
			}
			sure++
			if err := quick.Strictly(changed); err != nil {
				t.Errorf("%s: the quick look takes what the library refuses: %v\n%s", file, err, change)
			}
		}
	}
	if tried < 1000 || sure < 100 {
		t.Errorf("only %d changes were tried, %d of them sound", tried, sure)
	}
}

// spoilt gives the source with one scalar or one key changed at a time.
func spoilt(src string, n *document.Node) (all []string) {
	lines := splitLines(src)
	var walk func(*document.Node)
	walk = func(n *document.Node) {
		if n.Kind == document.Scalar && n.Plain {
			for _, odd := range oddTexts {
				all = append(all, replaced(lines, n.At.Line, n.At.Column, n.Text, odd))
			}
		}
		if n.Key != "" {
			all = append(all, replaced(lines, n.KeyAt.Line, n.KeyAt.Column, n.Key, n.Key+"x"))
		}
		for _, c := range append(n.Members, n.Items...) {
			walk(c)
		}
	}
	walk(n)
	return all
}

func splitLines(src string) (lines []string) {
	start := 0
	for i := range src {
		if src[i] == '\n' {
			lines = append(lines, src[start:i])
			start = i + 1
		}
	}
	return append(lines, src[start:])
}

func replaced(lines []string, line, column int, old, odd string) string {
	out := ""
	for i, l := range lines {
		if i == line-1 && column-1+len(old) <= len(l) && l[column-1:column-1+len(old)] == old {
			l = l[:column-1] + odd + l[column-1+len(old):]
		}
		out += fmt.Sprintln(l)
	}
	return out
}
