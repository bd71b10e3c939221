package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"chainwale/engine/finding"

	"github.com/santhosh-tekuri/jsonschema/v5"
)

// reportOf runs check and gives what it printed as JSON.
func reportOf(t *testing.T, args ...string) (status int, printed []byte) {
	t.Helper()
	var out, errs bytes.Buffer
	status = run(append([]string{"check", "--on", "2026-11-25", "--as", "json"}, args...), nil, &out, &errs)
	if errs.Len() > 0 {
		t.Errorf("%v: said on the side: %s", args, errs.String())
	}
	return status, out.Bytes()
}

// TestReportSchema holds every JSON report to the schema that scripts rely on:
// with findings, without any, with all, and with problems instead.
func TestReportSchema(t *testing.T) {
	c := jsonschema.NewCompiler()
	c.AssertFormat = true
	schema, err := c.Compile("../../schema/report.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	broken := filepath.Join(t.TempDir(), "broken.yaml")
	if err := os.WriteFile(broken, []byte("chainwale: 1\nboat: { nam: Quillfish }\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct {
		args   []string
		status int
	}{
		{[]string{"../../testdata/boats/quillfish.yaml"}, statusFindings},
		{[]string{"--all", "../../testdata/boats/quillfish.yaml"}, statusFindings},
		{[]string{"../../testdata/boats/quillfish-mended.yaml"}, statusDone},
		{[]string{broken}, statusInput},
	} {
		status, printed := reportOf(t, test.args...)
		if status != test.status {
			t.Errorf("%v: status %d, wanted %d", test.args, status, test.status)
		}
		var value any
		if err := json.Unmarshal(printed, &value); err != nil {
			t.Fatalf("%v: %v", test.args, err)
		}
		if err := schema.Validate(value); err != nil {
			t.Errorf("%v: %#v", test.args, err)
		}
	}
}

// wanted are the faults that were put into the demo, each with the rule that must
// find it and the line of the plan where it stands.
var wanted = []struct {
	subject, rule string
	outcome       finding.Outcome
	grade         finding.Grade
	text          string // what stands on the line of the finding
}{
	{"landing:cap-shroud-port", "plate-outlasts-wire", finding.Fails, finding.Mend, "thickness: [6.36 mm, 6.34 mm]"},
	{"landing:fore-lower-port", "plate-outlasts-wire", finding.Fails, finding.Stop, "thickness: 5 mm"},
	{"landing:fore-lower-starboard", "end-distance-of-pin-hole", finding.Fails, finding.Mend, "along: 14.5 mm"},
	{"landing:aft-lower-port", "pin-fits", finding.Fails, finding.Mend, "diameter: 13.7 mm"},
	{"fitting:aft-lower-plate-starboard", "metal-for-a-hidden-wet-place", finding.Fails, finding.Mend, "name: 304"},
	{"fitting:backstay-plate", "age-of-plate", finding.CannotTell, finding.Mend, "id: backstay-plate"},
	{"landing:backstay", "fork-is-filled", finding.CannotTell, finding.Watch, "fork: { cheek: 6 mm }"},
}

// TestDemoFaults holds that each fault of the demo is found by the right rule, at
// the right place and with the right grade, and that none is left once mended.
func TestDemoFaults(t *testing.T) {
	const plan = "../../testdata/boats/quillfish.yaml"
	lines := linesOf(t, plan)
	report := decode(t, plan)
	for _, w := range wanted {
		f := find(report, w.subject, w.rule)
		if f == nil {
			t.Errorf("%s: %s found nothing", w.subject, w.rule)
			continue
		}
		if f.Outcome != w.outcome || f.Grade != w.grade {
			t.Errorf("%s: %s %s with %s, wanted %s with %s", w.subject, w.rule, f.Outcome, f.Grade, w.outcome, w.grade)
		}
		if line := lines[f.At.Line-1]; !bytes.Contains(line, []byte(w.text)) {
			t.Errorf("%s: %s points at line %d, %q, which has no %q", w.subject, w.rule, f.At.Line, line, w.text)
		}
	}
	mended := decode(t, "../../testdata/boats/quillfish-mended.yaml")
	if mended.Counts.Stop+mended.Counts.Mend > 0 {
		t.Errorf("the mended plan still has %d stops and %d mends", mended.Counts.Stop, mended.Counts.Mend)
	}
	if len(mended.NotSeen) == 0 {
		t.Error("a report without findings says nothing of what was not seen")
	}
}

func decode(t *testing.T, plan string) finding.Report {
	t.Helper()
	_, printed := reportOf(t, plan)
	var r finding.Report
	if err := json.Unmarshal(printed, &r); err != nil {
		t.Fatal(err)
	}
	return r
}

func linesOf(t *testing.T, file string) [][]byte {
	t.Helper()
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return bytes.Split(src, []byte("\n"))
}

func find(r finding.Report, subject, rule string) *finding.Finding {
	for i := range r.Findings {
		if r.Findings[i].Subject == subject && r.Findings[i].Rule == rule {
			return &r.Findings[i]
		}
	}
	return nil
}
