package main

import (
	"io/fs"
	"regexp"
	"testing"

	"chainwale/engine/plan"
)

// example is a line whose value stands behind a # as an example.
var example = regexp.MustCompile(`(?m)^(\s*)#([^#\s]|  )`)

// TestStarters holds that each starter passes the schema as it is written, and
// with every example taken at its word.
func TestStarters(t *testing.T) {
	files, err := fs.Glob(starters, "starters/*.yaml")
	if err != nil || len(files) != 4 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		src, err := starters.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		filled := example.ReplaceAll(src, []byte("$1$2"))
		if len(filled) > len(src)-50 {
			t.Errorf("%s: hardly any example was found", file)
		}
		for name, text := range map[string][]byte{"as written": src, "filled in": filled} {
			_, problems, err := plan.Parse(file, text)
			if err != nil {
				t.Fatal(err)
			}
			for _, p := range problems {
				t.Errorf("%s %s: %d:%d: %s", file, name, p.At.Line, p.At.Column, p.Message)
			}
		}
	}
}
