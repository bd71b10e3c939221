package rule

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"chainwale/schema"

	"github.com/santhosh-tekuri/jsonschema/v5"
	"go.yaml.in/yaml/v4"
	"pgregory.net/rapid"
)

func TestSchemaIsOneForBothFiles(t *testing.T) {
	s, err := jsonschema.CompileString("pack.json", string(schema.Pack()))
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("testdata/pack/*.yaml")
	if err != nil || len(files) < 10 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		d := readDocument(file, data, &problems{})
		if err := s.Validate(plain(d.root)); err != nil {
			t.Errorf("%s: %#v", file, err)
		}
	}
}

// TestReaderAndSchemaRefuseTheSame spoils a good rule in random ways: what an
// editor marks by the schema our reader refuses, and nothing else.
func TestReaderAndSchemaRefuseTheSame(t *testing.T) {
	found, err := schemas()
	if err != nil {
		t.Fatal(err)
	}
	good, bad := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		d := readDocument("a.yaml", []byte(rapid.SampledFrom([]string{goodRule, oneLimit}).Draw(t, "rule")), &problems{})
		for range rapid.IntRange(0, 3).Draw(t, "changes") {
			spoil(t, d.root)
		}
		p := &problems{}
		readDraft(d, p)
		err := found["rule"].Validate(plain(d.root))
		if (err != nil) != (len(p.list) > 0) {
			text, _ := yaml.Marshal(d.root)
			t.Fatalf("%s\nreader: %s\nschema: %#v", text, lines(p.list), err)
		}
		if err == nil {
			good++
		} else {
			bad++
		}
	})
	if !testing.Short() && (good < 5 || bad < 20) {
		t.Errorf("%d good, %d bad: too few to mean anything", good, bad)
	}
}

const oneLimit = `id: one
title: One limit
on: landing
true_that: stay.toggle
else: watch
says: "{stay}"
because: b
known: [{ source: s, as: memory }]
decides: [rigger]
examples: [{ outcome: holds }, { outcome: fails }, { outcome: cannot tell }]
`

// spoil changes a node somewhere below n: takes a key away, adds one, renames
// one, or puts another value in its place.
func spoil(t *rapid.T, n *yaml.Node) {
	if len(n.Content) > 0 && n.Kind != yaml.ScalarNode && rapid.IntRange(0, 2).Draw(t, "deeper") > 0 {
		i := rapid.IntRange(0, len(n.Content)-1).Draw(t, "child")
		if n.Kind == yaml.SequenceNode || i%2 == 1 {
			spoil(t, n.Content[i])
			return
		}
	}
	switch {
	case n.Kind == yaml.MappingNode && len(n.Content) >= 2:
		spoilKeys(t, n)
	case n.Kind == yaml.SequenceNode && rapid.Bool().Draw(t, "empty"):
		n.Content = nil
	default:
		*n = *rapid.SampledFrom([]*yaml.Node{
			scalar("stop"), scalar("mend"), scalar("holds"), scalar("hole > end"), scalar("  "), scalar(""), scalar("A B"), scalar("memory"),
			{Kind: yaml.SequenceNode, Content: []*yaml.Node{scalar("x")}}, {Kind: yaml.SequenceNode},
			{Kind: yaml.MappingNode, Content: []*yaml.Node{scalar("outcome"), scalar("fails")}},
			{Kind: yaml.MappingNode},
		}).Draw(t, "value")
	}
}

func scalar(v string) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Value: v, Style: yaml.LiteralStyle}
}

func spoilKeys(t *rapid.T, n *yaml.Node) {
	i := 2 * rapid.IntRange(0, len(n.Content)/2-1).Draw(t, "key")
	all := strings.Fields("at_least at_most above below true_that else applies_if have bands holds_up if_unknown grade outcome with edition for nonsense")
	name := rapid.SampledFrom(all).Draw(t, "name")
	for j := 0; j < len(n.Content); j += 2 {
		if n.Content[j].Value == name {
			return
		}
	}
	switch rapid.IntRange(0, 2).Draw(t, "how") {
	case 0:
		n.Content = append(n.Content[:i:i], n.Content[i+2:]...)
	case 1:
		n.Content = append(n.Content[:len(n.Content):len(n.Content)], scalar(name), scalar("stop"))
	default:
		n.Content[i] = scalar(name)
	}
}

// TestWhatOnlyTheSchemaSees: should the schema ever refuse more than our reader,
// it is said, at its place.
func TestWhatOnlyTheSchemaSees(t *testing.T) {
	bad := strings.Replace(strings.Replace(goodRule, "decides: [rigger]", "decides: []", 1), "outcome: holds", "outcome: passes", 1)
	l := &loader{}
	d := readDocument("a.yaml", []byte(bad), &l.problems)
	l.validate(d, "rule", 0)
	l.sort()
	want := "a.yaml:19:10: the schema of packs says: minimum 1 items required, but found 0 items\n" +
		`a.yaml:21:88: the schema of packs says: value must be one of "holds", "fails", "cannot tell", "does not apply"`
	if got := lines(l.list); got != want {
		t.Error(got)
	}
	l.validate(d, "rule", 0)
	if len(l.list) != 2 {
		t.Error("what has been found at fault is validated all the same")
	}
}
