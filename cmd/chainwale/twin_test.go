package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"chainwale/engine/finding"
	"chainwale/engine/plan/document"
)

const (
	yamlDemo = "../../testdata/boats/quillfish.yaml"
	jsonDemo = "../../testdata/boats/quillfish.json"
)

// TestTwin holds the demo in JSON to the demo in YAML: the plans say the same, and
// so do their reports, each with the places of its own file. UPDATE=1 writes the
// twin again.
func TestTwin(t *testing.T) {
	root := readTree(t, yamlDemo)
	if os.Getenv("UPDATE") != "" {
		if err := os.WriteFile(jsonDemo, append(asJSON(root, ""), '\n'), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	twin := readTree(t, jsonDemo)
	if same, other := said(root), said(twin); same != other {
		t.Fatalf("the twin in JSON says another thing than the demo; UPDATE=1 writes it again\n%s\n%s", same, other)
	}
	inYAML, inJSON := decode(t, yamlDemo), decode(t, jsonDemo)
	if len(inYAML.Findings) < 20 || len(inYAML.Findings) != len(inJSON.Findings) {
		t.Fatalf("%d findings in YAML, %d in JSON", len(inYAML.Findings), len(inJSON.Findings))
	}
	for i, f := range inYAML.Findings {
		g := inJSON.Findings[i]
		if judgedAs(t, f) != judgedAs(t, g) {
			t.Errorf("%s\nis in JSON\n%s", judgedAs(t, f), judgedAs(t, g))
		}
		there := append([]finding.Place{g.At}, g.Related...)
		for j, at := range append([]finding.Place{f.At}, f.Related...) {
			if want := placesIn(twin, root, at); !slices.Contains(want, there[j]) {
				t.Errorf("%s on %s: %+v in YAML is %+v in JSON, want one of %+v", f.Rule, f.Subject, at, there[j], want)
			}
		}
	}
}

func readTree(t *testing.T, name string) *document.Node {
	t.Helper()
	src, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	root, problems := document.Read(name, src)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return root
}

// judgedAs is all that a finding says except where.
func judgedAs(t *testing.T, f finding.Finding) string {
	t.Helper()
	f.At, f.Related = finding.Place{}, nil
	text, err := json.Marshal(f)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// placesIn are the places in the twin of what stands in the demo at a place: of
// the same value, or the same key, with the same pointer.
func placesIn(twin, demo *document.Node, at finding.Place) (places []finding.Place) {
	is := func(p finding.Place) bool { return p.Line == at.Line && p.Column == at.Column }
	n := twin.Find(demo.At.Pointer)
	for want, place := range map[finding.Place]finding.Place{demo.At: n.At, demo.KeyAt: n.KeyAt} {
		if is(want) {
			place.Pointer = at.Pointer
			places = append(places, place)
		}
	}
	for _, children := range [][]*document.Node{demo.Members, demo.Items} {
		for _, c := range children {
			places = append(places, placesIn(twin, c, at)...)
		}
	}
	return places
}

// said is what a tree says, whichever way it is written.
func said(n *document.Node) string {
	switch n.Kind {
	case document.Scalar:
		return fmt.Sprintf("%q", truth(n.Text))
	case document.List:
		return "[" + saidOf(n.Items) + "]"
	}
	return "{" + saidOf(n.Members) + "}"
}

func saidOf(nodes []*document.Node) string {
	var parts []string
	for _, n := range nodes {
		parts = append(parts, n.Key+": "+said(n))
	}
	return strings.Join(parts, ", ")
}

// truth is JSON's word for a yes or a no of the plan, other words as they are.
func truth(text string) string {
	switch text {
	case "yes":
		return "true"
	case "no":
		return "false"
	}
	return text
}

// asJSON writes a tree as somebody might who writes plans in JSON: what fits on a
// line stands on one.
func asJSON(n *document.Node, indent string) []byte {
	if line := onOneLine(n); n.Kind == document.Scalar || indent != "" && len(indent)+len(line) <= 100 {
		return line
	}
	open, shut, children := "[", "]", n.Items
	if n.Kind == document.Mapping {
		open, shut, children = "{", "}", n.Members
	}
	var parts [][]byte
	for _, c := range children {
		parts = append(parts, append([]byte("\n"+indent+"  "+keyOf(c)), asJSON(c, indent+"  ")...))
	}
	return fmt.Appendf(nil, "%s%s\n%s%s", open, bytes.Join(parts, []byte(",")), indent, shut)
}

func onOneLine(n *document.Node) []byte {
	switch n.Kind {
	case document.Scalar:
		if text := truth(n.Text); n.Plain && (text != n.Text || n.Key == "chainwale") {
			return []byte(text)
		}
		text, _ := json.Marshal(n.Text) // a text can always be written
		return text
	case document.List:
		return fmt.Appendf(nil, "[%s]", joined(n.Items))
	}
	return fmt.Appendf(nil, "{ %s }", joined(n.Members))
}

func joined(nodes []*document.Node) []byte {
	var parts [][]byte
	for _, n := range nodes {
		parts = append(parts, append([]byte(keyOf(n)), onOneLine(n)...))
	}
	return bytes.Join(parts, []byte(", "))
}

// keyOf is the key before a value, nothing before an entry of a list.
func keyOf(n *document.Node) string {
	if n.Key == "" {
		return ""
	}
	return fmt.Sprintf("%q: ", n.Key)
}

// TestSister holds what a finding on a sister boat points at: what her own plan
// says stands there, what she has of her class in the class's file, and what is
// still to be measured belongs in her own, for it is not known of her sisters.
func TestSister(t *testing.T) {
	const own, class = "../../testdata/boats/marsh-lantern.yaml", "../../testdata/classes/sandling-33.yaml"
	status, printed := reportOf(t, "--root", "../../testdata", own)
	var report finding.Report
	if err := json.Unmarshal(printed, &report); err != nil || status != statusFindings {
		t.Fatal(status, err)
	}
	for _, w := range []struct{ subject, rule, file, text string }{
		{"landing:fore-lower-port", "plate-outlasts-wire", class, "thickness: 6 mm"},
		{"landing:aft-lower-starboard", "plate-outlasts-wire", class, "thickness: 6 mm"},
		{"fitting:aft-lower-plate-port", "metal-for-a-hidden-wet-place", class, "name: 316L"},
		{"landing:cap-shroud-port", "plate-outlasts-wire", own, "thickness: [6.02 mm, 5.97 mm]"},
		{"fitting:aft-lower-plate-port", "age-of-plate", own, "installed: 1985"},
		{"landing:backstay", "pin-fits", own, "id: backstay"},
	} {
		f := find(report, w.subject, w.rule)
		if f == nil {
			t.Errorf("%s: %s found nothing", w.subject, w.rule)
			continue
		}
		if line := linesOf(t, w.file)[f.At.Line-1]; f.At.File != w.file || !bytes.Contains(line, []byte(w.text)) {
			t.Errorf("%s: %s points at %s:%d, %q", w.subject, w.rule, f.At.File, f.At.Line, line)
		}
	}
	if len(report.Measure) == 0 {
		t.Error("nothing is left to measure")
	}
	for _, m := range report.Measure {
		if m.At.File != own {
			t.Errorf("%s of %s would be written into %s", m.Fact, m.Subject, m.At.File)
		}
	}
}

// A plate may stand far down in the plan while its holes stand early in the class's
// file; they are the same holes, by the same numbers.
func TestHolesOfTheClass(t *testing.T) {
	t.Chdir(t.TempDir())
	const class = `chainwale: 1
stays: [{ id: forestay, role: forestay, side: centre, wire: { construction: 1x19, metal: 316, diameter: 6 mm } }]
fittings:
  - id: stem
    kind: chainplate
    side: centre
    serves: [forestay]
    holes:
      - { role: pin, diameter: 12 mm, along: 20 mm }
      - { role: bolt, diameter: 10 mm, along: 100 mm }
      - { role: bolt, diameter: 10 mm, along: 150 mm }
`
	plan := "chainwale: 1\ntemplate: class.yaml\nboat: { name: Reed }\nfittings:\n"
	for i := range 120 {
		plan += fmt.Sprintf("  - { id: tang-%d, state: kept, kind: tang, side: centre }\n", i)
	}
	plan += "  - { id: stem, state: kept }\n"
	for name, src := range map[string]string{"class.yaml": class, "plan.yaml": plan} {
		if err := os.WriteFile(name, []byte(src), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	_, printed := reportOf(t, "--all", "plan.yaml")
	for _, subject := range []string{`"bolt_hole:forestay/1"`, `"bolt_hole:forestay/2"`} {
		if !bytes.Contains(printed, []byte(subject)) {
			t.Errorf("no rule judged %s", subject)
		}
	}
}
