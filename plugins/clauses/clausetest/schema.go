package clausetest

import (
	"errors"
	"io"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"
	"go.yaml.in/yaml/v4"

	"chainwale/engine/standard"
	"chainwale/schema"
)

// Texts holds the files of a standard's pack as texts: each is as an editor that
// knows the schema of packs wants it, a rule's id names its file, it reads of the
// standard only facts of its own kind, and its sentence says which load it is about.
// Neither the rules nor what the standard declares speak as if from the standard's text.
func Texts(t testing.TB, s standard.Standard) {
	t.Helper()
	d := describe(t, s)
	compiled := packSchema(t)
	rules := 0
	for _, f := range d.Pack {
		var root yaml.Node
		if err := yaml.Unmarshal(f.Bytes, &root); err != nil {
			t.Errorf("%s: %v", f.Path, err)
			continue
		}
		tree := plain(root.Content[0])
		if err := compiled.Validate(tree); err != nil {
			t.Errorf("%s: %#v", f.Path, err)
			continue
		}
		fields := tree.(map[string]any)
		if kind, ok := fields["on"].(string); ok {
			rules++
			checkText(t, d, f, kind, fields)
		}
	}
	for _, text := range declaredTexts(d) {
		after(t, d.ID, text)
	}
	if rules == 0 {
		t.Error("the pack has no rule")
	}
}

func checkText(t testing.TB, d standard.Description, f standard.File, kind string, fields map[string]any) {
	t.Helper()
	if fields["id"] != strings.TrimSuffix(path.Base(f.Path), ".yaml") {
		t.Errorf("the rule %v stands in %s: its id names its file", fields["id"], f.Path)
	}
	table, _ := d.Table(kind)
	read := regexp.MustCompile(`\b`+d.Prefix+`\.([a-z0-9_]+)`).FindAllStringSubmatch(string(f.Bytes), -1)
	if len(read) == 0 {
		t.Errorf("%s reads nothing that %s derives of a %s", f.Path, d.ID, kind)
	}
	for _, name := range read {
		if !slices.ContainsFunc(table.Derives, func(d standard.Derive) bool { return d.Name == name[1] }) {
			t.Errorf("%s reads %s, which %s does not derive of a %s", f.Path, name[0], d.ID, kind)
		}
	}
	for _, key := range []string{"title", "says", "because"} {
		text, _ := fields[key].(string)
		after(t, f.Path, text)
	}
	if says, _ := fields["says"].(string); !strings.Contains(says, "load") {
		t.Errorf("%s: the sentence does not say which load it is about", f.Path)
	}
}

// declaredTexts are the sentences in which a standard speaks of itself.
func declaredTexts(d standard.Description) []string {
	texts := []string{d.Title}
	for _, c := range d.Clauses {
		texts = append(texts, c.Why)
	}
	for _, table := range d.Tables {
		for _, f := range table.Derives {
			texts = append(texts, f.Meaning)
		}
	}
	return texts
}

// after holds that a text does not speak as if from the standard's own.
func after(t testing.TB, where, text string) {
	t.Helper()
	if found := unseen.FindString(text); found != "" {
		t.Errorf("%s %s", where, speaksByIt(found))
	}
}

func packSchema(t testing.TB) *jsonschema.Schema {
	t.Helper()
	const url = "urn:chainwale:pack:1"
	c := jsonschema.NewCompiler()
	c.LoadURL = func(string) (io.ReadCloser, error) { return nil, errors.New("a schema may not load another") }
	err := c.AddResource(url, strings.NewReader(string(schema.Pack())))
	if err != nil {
		t.Fatal(err)
	}
	compiled, err := c.Compile(url)
	if err != nil {
		t.Fatal(err)
	}
	return compiled
}

// plain makes nodes into what the schema checks. Each scalar is a text.
func plain(n *yaml.Node) any {
	switch n.Kind {
	case yaml.MappingNode:
		m := map[string]any{}
		for i := 0; i+1 < len(n.Content); i += 2 {
			m[n.Content[i].Value] = plain(n.Content[i+1])
		}
		return m
	case yaml.SequenceNode:
		list := make([]any, len(n.Content))
		for i, c := range n.Content {
			list[i] = plain(c)
		}
		return list
	}
	return n.Value
}
