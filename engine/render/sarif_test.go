package render

import (
	"bytes"
	"encoding/json"
	"io"
	"strings"
	"testing"

	"chainwale/engine/finding"

	"github.com/santhosh-tekuri/jsonschema/v5"
)

// oasis is the schema that OASIS publishes for SARIF 2.1.0.
func oasis(t *testing.T) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	c.AssertFormat = true
	s, err := c.Compile("../../testdata/published-schemas/sarif-schema-2.1.0.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func sarifBytes(t *testing.T, r finding.Report, status int) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := SARIF(&out, r, status); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// readSARIF reads strictly: a key that the writer does not know, or anything behind
// the log, fails.
func readSARIF(t *testing.T, src []byte) sarifRun {
	t.Helper()
	var log sarifLog
	in := json.NewDecoder(bytes.NewReader(src))
	in.DisallowUnknownFields()
	if err := in.Decode(&log); err != nil {
		t.Fatal(err)
	}
	if _, err := in.Token(); err != io.EOF {
		t.Errorf("something stands behind the log: %v", err)
	}
	if log.Version != "2.1.0" || len(log.Runs) != 1 {
		t.Fatalf("version %s, %d runs", log.Version, len(log.Runs))
	}
	return log.Runs[0]
}

// TestSARIFSchema holds what is written to the schema of OASIS, and sees that the
// schema is one that refuses.
func TestSARIFSchema(t *testing.T) {
	schema := oasis(t)
	bare := sample()
	bare.Findings, bare.Cautions = []finding.Finding{}, nil
	for name, r := range map[string]finding.Report{"sample": sample(), "problems": refused(), "compared": compared(), "nothing found": bare} {
		src := sarifBytes(t, r, 1)
		var v any
		if err := json.Unmarshal(src, &v); err != nil {
			t.Fatal(name, err)
		}
		if err := schema.Validate(v); err != nil {
			t.Errorf("%s: %#v", name, err)
		}
	}
	src := sarifBytes(t, sample(), 1)
	for _, spoil := range [][2]string{{`"kind": "open"`, `"kind": "unsure"`}, {`"level": "none"`, `"level": "mild"`}, {`"startLine": 7`, `"startLine": 0`}, {`"ruleId"`, `"rule_id"`}, {`"kind": "external"`, `"kind": "spoken"`}} {
		spoilt := strings.Replace(string(src), spoil[0], spoil[1], 1)
		var v any
		if err := json.Unmarshal([]byte(spoilt), &v); err != nil || spoilt == string(src) {
			t.Fatal(spoil, err)
		}
		if schema.Validate(v) == nil {
			t.Errorf("the schema takes %s", spoil[1])
		}
	}
}

// TestSARIFResults holds how outcomes and grades are told: level none unless it
// fails, and what can't be told never as a pass.
func TestSARIFResults(t *testing.T) {
	run := readSARIF(t, sarifBytes(t, sample(), 1))
	want := []struct{ kind, level, grade string }{
		{"fail", "error", "stop"}, {"fail", "error", "stop"}, {"fail", "warning", "mend"}, {"open", "none", "mend"},
		{"fail", "note", "watch"}, {"open", "none", "watch"}, {"pass", "none", ""}, {"notApplicable", "none", ""},
	}
	if len(run.Results) != len(want) {
		t.Fatalf("%d results", len(run.Results))
	}
	for i, w := range want {
		got, f := run.Results[i], sample().Findings[i]
		if got.Kind != w.kind || got.Level != w.level || string(got.Properties.Grade) != w.grade {
			t.Errorf("%d: %s %s %s, wanted %v", i, got.Kind, got.Level, got.Properties.Grade, w)
		}
		if rule := run.Tool.Driver.Rules[got.RuleIndex]; rule.ID != f.Rule || got.RuleID != f.Rule || rule.ShortDescription.Text != f.Title || rule.Properties.Pack != f.Pack {
			t.Errorf("%d: described by %+v", i, rule)
		}
		if got.PartialFingerprints[sarifPrint] != f.Fingerprint || got.Properties.Subject != f.Subject || got.BaselineState != "" {
			t.Errorf("%d: %+v", i, got)
		}
		if (len(got.Suppressions) == 1) != (f.Accepted != nil) {
			t.Errorf("%d: %d suppressions", i, len(got.Suppressions))
		}
	}
	if s := run.Results[1].Suppressions[0]; s.Kind != "external" || !strings.HasPrefix(s.Justification, "accepted by the owner until 2027-05-01: ") {
		t.Errorf("%+v", s)
	}
	if rule := run.Tool.Driver.Rules[run.Results[2].RuleIndex]; rule.DefaultConfiguration.Level != "warning" || !strings.Contains(rule.Help.Text, "Source: A handbook, 1999, 3.1 (published), for the limit.") {
		t.Errorf("the rule with a mend and a watch: %+v", rule)
	}
}

// TestSARIFPlaces holds lines, columns, the names of files, and that a finding in a
// template names the boat's plan as well.
func TestSARIFPlaces(t *testing.T) {
	run := readSARIF(t, sarifBytes(t, sample(), 1))
	if run.ColumnKind != "unicodeCodePoints" {
		t.Error(run.ColumnKind)
	}
	here := run.Results[0].Locations[0]
	if p := here.PhysicalLocation; p.ArtifactLocation.URI != "boats/grey%20wagtail.yaml" || *p.Region != (sarifRegion{7, 3}) || here.LogicalLocations[0].FullyQualifiedName != "landing:cap-port" {
		t.Errorf("%+v", here)
	}
	inTemplate := run.Results[2]
	if uri := inTemplate.Locations[0].PhysicalLocation.ArtifactLocation.URI; uri != "classes/sandling%2333.yaml" {
		t.Error(uri)
	}
	var files []string
	for i, at := range inTemplate.RelatedLocations {
		files = append(files, at.PhysicalLocation.ArtifactLocation.URI)
		if at.ID != i+1 {
			t.Errorf("the related place %d has the number %d", i+1, at.ID)
		}
	}
	if len(files) != 2 || files[1] != "boats/grey%20wagtail.yaml" || inTemplate.RelatedLocations[1].PhysicalLocation.Region != nil {
		t.Errorf("related: %v", files)
	}
	if n := len(run.Results[0].RelatedLocations); n != 1 {
		t.Errorf("a finding in the plan itself has %d related places", n)
	}
	for name, want := range map[string]string{"/home/a b/x.yaml": "file:///home/a%20b/x.yaml", "../x.yaml": "../x.yaml", "a:b.yaml": "./a:b.yaml", "é%?.yaml": "%C3%A9%25%3F.yaml", "\xff.yaml": "%FF.yaml"} {
		if got := fileURI(name); got != want {
			t.Errorf("%q: %s, wanted %s", name, got, want)
		}
	}
}

// TestSARIFInvocation holds exit status and problems.
func TestSARIFInvocation(t *testing.T) {
	run := readSARIF(t, sarifBytes(t, refused(), 2))
	in := run.Invocations[0]
	if in.ExitCode != 2 || in.ExecutionSuccessful || len(in.Notifications) != 1 || len(run.Results) != 0 {
		t.Fatalf("%+v", in)
	}
	n := in.Notifications[0]
	if n.Level != "error" || !strings.HasPrefix(n.Message.Text, "nam is no key here: did you mean name?") || n.Locations[0].PhysicalLocation.Region.StartLine != 2 {
		t.Errorf("%+v", n)
	}
	if in := readSARIF(t, sarifBytes(t, sample(), 1)).Invocations[0]; !in.ExecutionSuccessful || in.ExitCode != 1 || in.Notifications != nil {
		t.Errorf("%+v", in)
	}
}

// TestSARIFEscapes holds that text of the user's is no placeholder and no link.
func TestSARIFEscapes(t *testing.T) {
	text := readSARIF(t, sarifBytes(t, sample(), 1)).Results[2].Message.Text
	if !strings.Contains(text, "{{0}}") || !strings.Contains(text, `\[x\](1)`) || !strings.Contains(text, "é") {
		t.Errorf("%q", text)
	}
}

// TestSARIFBaseline holds the states against an earlier report.
func TestSARIFBaseline(t *testing.T) {
	run := readSARIF(t, sarifBytes(t, compared(), 1))
	var states []string
	for _, r := range run.Results {
		states = append(states, r.BaselineState)
	}
	if got := strings.Join(states, " "); got != "new unchanged updated unchanged unchanged unchanged unchanged unchanged absent" {
		t.Error(got)
	}
	last := run.Results[len(run.Results)-1]
	if last.RuleID != "metal-outlasts-use" || last.RuleIndex != -1 || last.Level != "error" {
		t.Errorf("%+v", last)
	}
}

// TestSARIFTwice holds that the same report gives the same bytes.
func TestSARIFTwice(t *testing.T) {
	first := sarifBytes(t, compared(), 1)
	for range 20 {
		if !bytes.Equal(first, sarifBytes(t, compared(), 1)) {
			t.Fatal("the bytes differ")
		}
	}
}
