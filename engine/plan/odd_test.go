package plan

import (
	"slices"
	"strings"
	"testing"

	"chainwale/engine/finding"
	"chainwale/engine/plan/document"
)

// judge is what Parse does to a tree that is read.
func judge(t *testing.T, root *document.Node) []finding.Problem {
	t.Helper()
	s, err := compiled()
	if err != nil {
		t.Fatal(err)
	}
	problems, err := s.Check(root)
	if err != nil {
		t.Fatalf("a fault of the program: %v", err)
	}
	return append(problems, crossCheck(decode(root), root, len(problems) == 0)...)
}

// walk visits a node and all below it.
func walk(n *document.Node, visit func(*document.Node)) {
	visit(n)
	for _, m := range n.Members {
		walk(m, visit)
	}
	for _, item := range n.Items {
		walk(item, visit)
	}
}

// Each value of the plan in turn is something else than it should be, or is left
// out. Nothing but problems may come of it, each of them told in whole.
func TestOddValuesEverywhere(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of plans")
	}
	root, problems := document.Read("p.yaml", []byte(readWagtail(t)))
	expectTold(t, problems, nil)
	expectTold(t, judge(t, root), nil)
	plain := func(text string) document.Node { return document.Node{Plain: true, Text: text} }
	odd := []document.Node{plain(""), plain("7"), plain("yes"), plain("-6 mm"), {Text: "a b"}, {Kind: document.List}, {Kind: document.Mapping}}
	var nodes []*document.Node
	walk(root, func(n *document.Node) { nodes = append(nodes, n) })
	changed := 0
	for _, n := range nodes[1:] {
		was := *n
		for _, o := range odd {
			n.Kind, n.Plain, n.Text, n.Members, n.Items = o.Kind, o.Plain, o.Text, nil, nil
			for _, p := range judge(t, root) {
				changed++
				if p.At.Line < 1 || p.At.Column < 1 || p.Message == "" || p.Expected == "" || strings.Contains(p.Message+p.Expected, "%!") {
					t.Errorf("%s as %+v: %s", was.At.Pointer, o, told(p))
				}
			}
		}
		*n = was
	}
	if changed < len(nodes) {
		t.Errorf("of %d values changed, %d problems came", len(nodes), changed)
	}
	leaveOut(t, root)
}

// leaveOut takes each key out in turn. What is said then is that a key is missing,
// or that an id is not there.
func leaveOut(t *testing.T, root *document.Node) {
	var nodes []*document.Node
	walk(root, func(n *document.Node) { nodes = append(nodes, n) })
	for _, n := range nodes {
		all := n.Members
		for i, m := range all {
			n.Members = slices.Delete(slices.Clone(all), i, i+1)
			for _, p := range judge(t, root) {
				if !strings.Contains(p.Message, " has no ") && !strings.Contains(p.Message, "stands without") && !strings.HasPrefix(p.Message, "no ") && !strings.Contains(p.Message, " does not serve ") {
					t.Errorf("without %s: %s", m.KeyAt.Pointer, told(p))
				}
			}
		}
		n.Members = all
	}
}
