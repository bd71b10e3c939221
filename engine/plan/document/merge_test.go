package document

import (
	"fmt"
	"strings"
	"testing"
)

// mergeSchema has a list with ids, one without, and a paper that vouches.
const mergeSchema = `{
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "$id": "urn:test:merge",
  "type": "object",
  "additionalProperties": false,
  "required": ["boat"],
  "properties": {
    "boat": { "type": "string" },
    "marks": { "type": "array", "items": { "type": "string" } },
    "parts": { "type": "array", "items": { "$ref": "#/$defs/part" } }
  },
  "$defs": {
    "part": {
      "type": "object",
      "additionalProperties": false,
      "required": ["id", "kind"],
      "properties": {
        "id": { "type": "string" },
        "kind": { "type": "string" },
        "metal": { "$ref": "#/$defs/metal" },
        "holes": { "type": "array", "items": { "$ref": "#/$defs/hole" } }
      }
    },
    "metal": {
      "type": "object",
      "properties": { "name": { "type": "string" }, "yield": { "type": "string" }, "paper": { "type": "string" }, "wet": { "type": "string" }, "dry": { "type": "string" } },
      "additionalProperties": false,
      "dependentRequired": { "yield": ["paper"], "wet": ["dry"] }
    },
    "hole": { "type": "object", "additionalProperties": false, "properties": { "size": { "type": "string" } } }
  }
}`

func mustRead(t *testing.T, name, src string) *Node {
	t.Helper()
	n, problems := Read(name, []byte(src))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return n
}

// origins writes a tree on one line, each value with the file's first letter and the
// line it stands in.
func origins(n *Node) string {
	var parts []string
	for _, c := range append(n.Members, n.Items...) {
		parts = append(parts, origins(c))
	}
	text := n.Text
	switch n.Kind {
	case List:
		text = "[" + strings.Join(parts, " ") + "]"
	case Mapping:
		text = "{" + strings.Join(parts, " ") + "}"
	}
	if n.Key != "" {
		text = n.Key + ":" + text
	}
	return text + fmt.Sprintf("/%s%d", n.At.File[:1], n.At.Line)
}

func TestMerge(t *testing.T) {
	s, err := Compile([]byte(mergeSchema))
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct{ under, over, want string }{
		"keys of both":           {"boat: a", "marks: [x]", "{boat:a/u1 marks:[x/o1]/o1}/o1"},
		"a key in both":          {"boat: a", "boat: b", "{boat:b/o1}/o1"},
		"a list as a whole":      {"marks: [x, y]", "marks: [z]", "{marks:[z/o1]/o1}/o1"},
		"a list for a value":     {"boat: a", "boat: [b]", "{boat:[b/o1]/o1}/o1"},
		"a value for a list":     {"parts: [{id: a}]", "parts: b", "{parts:b/o1}/o1"},
		"an entry in both":       {"parts: [{id: a, kind: k}]", "parts:\n- id: a\n  kind: l", "{parts:[{id:a/o2 kind:l/o3}/o2]/o2}/o1"},
		"a new entry":            {"parts: [{id: a}]", "parts: [{id: b}]", "{parts:[{id:a/u1}/u1 {id:b/o1}/o1]/o1}/o1"},
		"the order from below":   {"parts: [{id: a}, {id: b}]", "parts: [{id: c}, {id: b}, {id: a}]", "{parts:[{id:a/o1}/o1 {id:b/o1}/o1 {id:c/o1}/o1]/o1}/o1"},
		"an id twice above":      {"parts: [{id: a}]", "parts: [{id: a}, {id: a}]", "{parts:[{id:a/o1}/o1 {id:a/o1}/o1]/o1}/o1"},
		"an id twice below":      {"parts: [{id: a}, {id: a}]", "parts: [{id: a}]", "{parts:[{id:a/o1}/o1 {id:a/u1}/u1]/o1}/o1"},
		"no id":                  {"parts: [{kind: k}]", "parts: [{kind: k}]", "{parts:[{kind:k/u1}/u1 {kind:k/o1}/o1]/o1}/o1"},
		"a strange entry":        {"parts: [a]", "parts: [a]", "{parts:[a/u1 a/o1]/o1}/o1"},
		"an id that is a list":   {"parts: [{id: [a]}]", "parts: [{id: [a]}]", "{parts:[{id:[a/u1]/u1}/u1 {id:[a/o1]/o1}/o1]/o1}/o1"},
		"a list in an entry":     {"parts: [{id: a, holes: [{size: s}]}]", "parts: [{id: a, holes: []}]", "{parts:[{id:a/o1 holes:[]/o1}/o1]/o1}/o1"},
		"unknown keys":           {"x: {a: b}", "x: {c: d}", "{x:{a:b/u1 c:d/o1}/o1}/o1"},
		"vouched and untouched":  {"parts: [{id: a, metal: {yield: y, paper: p}}]", "parts: [{id: a, metal: {}}]", "{parts:[{id:a/o1 metal:{yield:y/u1 paper:p/u1}/o1}/o1]/o1}/o1"},
		"vouched and touched":    {"parts: [{id: a, metal: {name: n, yield: y, paper: p}}]", "parts: [{id: a, metal: {name: m}}]", "{parts:[{id:a/o1 metal:{name:m/o1}/o1}/o1]/o1}/o1"},
		"vouched for otherwise":  {"parts: [{id: a, metal: {wet: w, dry: d}}]", "parts: [{id: a, metal: {name: m}}]", "{parts:[{id:a/o1 metal:{wet:w/u1 dry:d/u1 name:m/o1}/o1}/o1]/o1}/o1"},
		"a group that isn't one": {"parts: [{id: a, metal: {yield: y}}]", "parts: [{id: a, metal: m}]", "{parts:[{id:a/o1 metal:m/o1}/o1]/o1}/o1"},
	} {
		under, over := mustRead(t, "under.yaml", c.under), mustRead(t, "over.yaml", c.over)
		before := origins(under) + origins(over)
		if got := origins(s.Merge(under, over, "paper")); got != c.want {
			t.Errorf("%s:\n\t%s, want\n\t%s", name, got, c.want)
		}
		if origins(under)+origins(over) != before {
			t.Errorf("%s: the trees were changed", name)
		}
	}
}

// A problem with a merged value calls it as in its own file, and stands there.
func TestMergedProblems(t *testing.T) {
	s, err := Compile([]byte(mergeSchema))
	if err != nil {
		t.Fatal(err)
	}
	under := mustRead(t, "under.yaml", "parts:\n- {id: a, holes: [{size: s}, 7]}\n- {kind: k}\n")
	over := mustRead(t, "over.yaml", "parts:\n- {id: a, metal: {name: n}}\n- {kind: [l]}\n")
	problems, err := s.Check(s.Merge(under, over, "paper"))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, p := range problems {
		got = append(got, fmt.Sprintf("%s:%d:%d %s %s", p.At.File, p.At.Line, p.At.Column, p.At.Pointer, p.Message))
	}
	want := []string{
		"over.yaml:1:1 /boat the file has no boat",
		"over.yaml:2:3 /parts/0/kind a has no kind",
		"over.yaml:3:3 /parts/1/id entry 2 of parts has no id",
		"over.yaml:3:10 /parts/1/kind kind is a list where one value belongs",
		"under.yaml:2:30 /parts/0/holes/1 entry 2 of holes is a single value where keys with values belong",
		"under.yaml:3:3 /parts/1/id entry 2 of parts has no id",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	part, err := s.CheckPart(over)
	if err != nil || len(part) != 1 || part[0].At.Line != 3 || part[0].At.Column != 10 {
		t.Errorf("of the upper file alone: %v, %v", part, err)
	}
}

func TestValues(t *testing.T) {
	if n := mustRead(t, "p.yaml", "a: [1, {b: 2}]\nc: 3").Values(); n != 6 {
		t.Errorf("%d values", n)
	}
}
