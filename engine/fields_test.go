package engine_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"chainwale/engine"
	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/plan/document"
)

// change is one thing done to one value of a plan.
type change struct {
	name string
	// to gives the value's new text; ok is false if the change is none for it.
	to func(text string) (string, bool)
}

// removed stands for a value that is taken out.
const removed = "\x00"

var changes = []change{
	{"removed", func(string) (string, bool) { return removed, true }},
	{"zeroed", func(text string) (string, bool) {
		return number(text, func(_, unit string) string { return "0 " + unit })
	}},
	{"negated", func(text string) (string, bool) {
		return number(text, func(n, unit string) string { return "-" + n + " " + unit })
	}},
	{"made huge", func(text string) (string, bool) {
		return number(text, func(n, unit string) string { return n + "e9 " + unit })
	}},
	{"made wider than any number", func(text string) (string, bool) {
		return number(text, func(n, unit string) string { return n + "e999 " + unit })
	}},
	{"unit misspelt", func(text string) (string, bool) {
		return number(text, func(n, unit string) string { return n + " " + unit + "q" })
	}},
	{"unit left out", func(text string) (string, bool) { return number(text, func(n, _ string) string { return n }) }},
	{"a word nobody knows", func(text string) (string, bool) { return "zzz", !isQuantity(text) }},
}

// isQuantity tells a text such as "6 mm": a number, a blank and a unit.
func isQuantity(text string) bool {
	n, unit, ok := strings.Cut(text, " ")
	return ok && strings.Trim(n, "-0123456789.") == "" && unit != "" && !strings.Contains(unit, " ")
}

func number(text string, to func(n, unit string) string) (string, bool) {
	if !isQuantity(text) {
		return "", false
	}
	n, unit, _ := strings.Cut(text, " ")
	return strings.TrimSpace(to(n, unit)), true
}

// mayBeLeftOut are values without which the plan says the same, or that say
// nothing a rule judges; each with the reason.
var mayBeLeftOut = map[string]string{
	"across":      "a hole stands on the centre line unless the plan says otherwise",
	"end":         "an end that nobody described counts as round, the weaker",
	"class":       "a name",
	"name":        "a name",
	"side":        "one part instead of two alike; both its wires are judged on it all the same",
	"units":       "how numbers are printed",
	"mast_step":   "no rule reads it yet",
	"by":          "a name",
	"condition":   "the table's weakest condition counts",
	"certificate": "a name",
}

// TestFieldByField changes one value of the demo at a time: takes it out, makes it
// nothing, less than nothing, huge, spoils its unit. Never may the program break
// down, say less than with the good value, or hold a rule that rested on it.
func TestFieldByField(t *testing.T) {
	if testing.Short() {
		t.Skip("hundreds of whole checks")
	}
	src, err := os.ReadFile("../testdata/boats/quillfish.yaml")
	if err != nil {
		t.Fatal(err)
	}
	root, problems := document.Read("demo.yaml", src)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	good := judge(t, emit(root, "", ""))
	if good.problems > 0 || good.found == 0 {
		t.Fatalf("the demo itself has %d problems and %d findings", good.problems, good.found)
	}
	tried := 0
	for _, node := range scalars(root) {
		for _, c := range changes {
			to, ok := c.to(node.Text)
			if !ok {
				continue
			}
			tried++
			compare(t, fmt.Sprintf("%s %s", node.At.Pointer, c.name), node, to, good, judge(t, emit(root, node.At.Pointer, to)))
		}
	}
	if tried < 500 {
		t.Errorf("only %d changes were tried", tried)
	}
}

// compare holds the changed plan against the good one.
func compare(t *testing.T, name string, node *document.Node, to string, good, bad judged) {
	t.Helper()
	if bad.problems > 0 {
		return
	}
	if bad.found < good.found && !explained(node, to) {
		t.Errorf("%s: %d findings where the good value gave %d", name, bad.found, good.found)
	}
	if to == removed && bad.open > good.open && !bad.asked[node.At.Pointer] && len(bad.asked) <= len(good.asked) {
		t.Errorf("%s: %d judgements can't be told and nobody is asked to measure it", name, bad.open-good.open)
	}
	for rule, places := range bad.holds {
		if to == removed && places[node.At.Pointer] && mayBeLeftOut[node.Key] == "" {
			t.Errorf("%s: %s holds all the same", name, rule)
		}
	}
}

// explained tells the few changes that may find less, and why they may.
func explained(node *document.Node, to string) bool {
	if mayBeLeftOut[node.Key] != "" {
		return true
	}
	// A wire that leads straight off its plate is a reading like another, and a better one.
	if strings.HasPrefix(to, "0 ") && strings.HasSuffix(node.Key, "_plane") {
		return true
	}
	// A reading among several may go; the others stand for it.
	return to == removed && node.Key == ""
}

type judged struct {
	problems, found, open int
	// asked are the pointers at which a reading is asked for.
	asked map[string]bool
	// holds maps each rule that holds on a subject to the pointers it rests on.
	holds map[string]map[string]bool
}

// judge parses and judges a plan in JSON, and says what each rule that holds rests on.
func judge(t *testing.T, src []byte) judged {
	t.Helper()
	return judgeAs(t, func() (*plan.Plan, []finding.Problem, error) { return plan.Parse("demo.json", src) })
}

func judgeAs(t *testing.T, load func() (*plan.Plan, []finding.Problem, error)) judged {
	t.Helper()
	p, problems, err := load()
	if err != nil {
		t.Fatal(err)
	}
	if len(problems) > 0 {
		return judged{problems: len(problems)}
	}
	on := time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)
	report, err := engine.Check(context.Background(), p, engine.Options{On: on, RefuseFrom: finding.Mend, All: true})
	if err != nil {
		t.Fatal(err)
	}
	c, err := fact.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	facts, err := fact.Build(c, p, on)
	if err != nil {
		t.Fatal(err)
	}
	bySubject := map[string]*fact.Subject{}
	for _, s := range facts.Subjects() {
		bySubject[s.Ref()] = s
	}
	j := judged{holds: map[string]map[string]bool{}, asked: map[string]bool{}, open: report.Counts.CannotTell}
	for _, m := range report.Measure {
		j.asked[m.At.Pointer] = true
	}
	for _, f := range report.Findings {
		switch f.Outcome {
		case finding.Fails, finding.CannotTell:
			j.found++
		case finding.Holds:
			j.holds[f.Rule+" on "+f.Subject] = restsOn(bySubject[f.Subject], f)
		}
	}
	return j
}

// restsOn gathers the pointers of the plan values behind what a rule compared.
func restsOn(s *fact.Subject, f finding.Finding) map[string]bool {
	pointers := map[string]bool{}
	for _, shown := range f.Shown {
		if i, ok := s.Kind.SlotOf(shown.Expression); ok {
			if !s.Value(i).Known() {
				continue // it was decided without
			}
			for _, place := range s.Value(i).RestsOn() {
				pointers[place.Pointer] = true
			}
		}
	}
	return pointers
}

func scalars(n *document.Node) []*document.Node {
	if n.Kind == document.Scalar {
		return []*document.Node{n}
	}
	var all []*document.Node
	for _, c := range append(n.Members, n.Items...) {
		all = append(all, scalars(c)...)
	}
	return all
}

// emit writes the tree as JSON, with one value changed or taken out.
func emit(n *document.Node, pointer, to string) []byte {
	var b bytes.Buffer
	write(&b, n, pointer, to)
	return b.Bytes()
}

func write(b *bytes.Buffer, n *document.Node, pointer, to string) {
	switch n.Kind {
	case document.Scalar:
		text := n.Text
		if n.At.Pointer == pointer {
			text = to
		}
		if n.Key == "chainwale" && text == n.Text {
			b.WriteString(text)
			return
		}
		quoted, _ := json.Marshal(text)
		b.Write(quoted)
	case document.List:
		writeAll(b, '[', ']', n.Items, pointer, to)
	case document.Mapping:
		writeAll(b, '{', '}', n.Members, pointer, to)
	}
}

func writeAll(b *bytes.Buffer, open, shut byte, children []*document.Node, pointer, to string) {
	b.WriteByte(open)
	first := true
	for _, c := range children {
		if c.At.Pointer == pointer && to == removed {
			continue
		}
		if !first {
			b.WriteByte(',')
		}
		first = false
		if c.Key != "" {
			key, _ := json.Marshal(c.Key)
			b.Write(key)
			b.WriteByte(':')
		}
		write(b, c, pointer, to)
	}
	b.WriteByte(shut)
}
