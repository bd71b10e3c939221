package engine_test

import (
	"bytes"
	"flag"
	"fmt"
	"go/format"
	"io/fs"
	"os"
	"reflect"
	"testing"

	"chainwale/engine/fact"
	"chainwale/engine/rule"
	"chainwale/rules"

	"go.yaml.in/yaml/v4"
)

var writeTrees = flag.Bool("trees", false, "write rules/trees.go anew")

const treesFile = "../rules/trees.go"

// TestTreesAreCurrent: what the program reads of its packs at start is what YAML
// makes of their files, without the examples. After a change to a rule:
//
//	go test ./engine -run Trees -trees
func TestTreesAreCurrent(t *testing.T) {
	want, err := trees()
	if err != nil {
		t.Fatal(err)
	}
	if *writeTrees {
		if err := os.WriteFile(treesFile, want, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	have, err := os.ReadFile(treesFile)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(have, want) {
		t.Error("rules/trees.go is not what the packs' files say; go test ./engine -run Trees -trees writes it anew")
	}
}

// trees is the text of rules/trees.go.
func trees() ([]byte, error) {
	var out bytes.Buffer
	out.WriteString("// Code generated from the packs' files by go test ./engine -run Trees -trees; DO NOT EDIT.\n\n" +
		"package rules\n\nimport \"go.yaml.in/yaml/v4\"\n\n" +
		"type node = yaml.Node\ntype nodes = []*node\n\n" +
		"var trees = [...]tree{\n")
	files, err := fs.Glob(rules.FS, "*/*.yaml")
	if err != nil {
		return nil, err
	}
	for _, file := range files {
		src, err := rules.FS.ReadFile(file)
		if err != nil {
			return nil, err
		}
		var document yaml.Node
		if err := yaml.Unmarshal(src, &document); err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
		root := document.Content[0]
		for i := 0; i < len(root.Content); i += 2 {
			if root.Content[i].Value == "examples" {
				root.Content = append(root.Content[:i:i], root.Content[i+2:]...)
			}
		}
		fmt.Fprintf(&out, "{%q, &node", file)
		writeNode(&out, root)
		out.WriteString("},\n")
	}
	out.WriteString("}\n")
	return format.Source(out.Bytes())
}

// writeNode writes a node as a Go literal without its type.
func writeNode(out *bytes.Buffer, n *yaml.Node) {
	fmt.Fprintf(out, "{Kind: %d, Style: %d, Line: %d, Column: %d", n.Kind, n.Style, n.Line, n.Column)
	if n.Value != "" {
		fmt.Fprintf(out, ", Value: %q", n.Value)
	}
	if len(n.Content) > 0 {
		out.WriteString(", Content: nodes{\n")
		for _, c := range n.Content {
			writeNode(out, c)
			out.WriteString(",\n")
		}
		out.WriteString("}")
	}
	out.WriteString("}")
}

// TestTreesJudgeAsTheirFiles: a pack is the same, whichever it is read from.
func TestTreesJudgeAsTheirFiles(t *testing.T) {
	c, err := fact.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range rules.Packs() {
		fromFile, problems := rule.Load(rules.FS, name, "rules/"+name, c, rule.LoadOptions{SkipSchema: true})
		fromTree, more := rule.Load(rules.FS, name, "rules/"+name, c, rule.LoadOptions{SkipSchema: true, Tree: rules.Tree})
		if len(problems)+len(more) > 0 {
			t.Fatal(problems, more)
		}
		if !reflect.DeepEqual(told(fromFile), told(fromTree)) {
			t.Errorf("%s is another pack when it is read from its trees", name)
		}
	}
}

// told is all that a pack says for others to read.
func told(p *rule.Pack) (all []any) {
	all = append(all, p.ID, p.Edition, p.Title, p.Author, p.Scope, p.NotCovered, p.Label, p.Hash)
	for _, r := range p.Rules {
		all = append(all, r.ID, r.Title, r.Pack, r.Kind, r.At, r.AppliesIf, r.Have, r.Bands, r.IfUnknown, r.HoldsUp, r.Says, r.Because, r.Vary, r.Known, r.Decides, r.Reads)
	}
	return all
}
