package engine_test

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"chainwale/engine"
	"chainwale/engine/accept"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/render"
	"chainwale/engine/rule"

	"github.com/santhosh-tekuri/jsonschema/v5"
)

const demo = "../testdata/boats/quillfish.yaml"

func demoText(t *testing.T) string {
	t.Helper()
	src, err := os.ReadFile(demo)
	if err != nil {
		t.Fatal(err)
	}
	return string(src)
}

var judgedOn = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

func reportOf(t *testing.T, src string, all bool) finding.Report {
	t.Helper()
	p, problems, err := plan.Parse(demo, []byte(src))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	r, err := engine.Check(context.Background(), p, engine.Options{Version: "0.1", On: judgedOn, RefuseFrom: finding.Mend, All: all})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// acceptable is what a report of all findings shows there is to accept.
func acceptable(all finding.Report) (k accept.Known) {
	for _, f := range all.Findings {
		k.Rules = append(k.Rules, f.Rule)
		k.Subjects = append(k.Subjects, accept.Subject{Ref: f.Subject, Part: f.Part})
	}
	return k
}

// takenOn accepts one finding as it is.
func takenOn(f finding.Finding) accept.Accepted {
	at := finding.Place{File: demo, Line: 1, Column: 1}
	return accept.Accepted{Rule: f.Rule, Subject: f.Subject, Grade: f.Grade, Who: "the owner", Why: "it is looked at every week", Until: judgedOn, At: at}
}

// TestMovedLines holds that findings are the same however a plan's lines are moved:
// against the report of before, nothing is new, changed or gone.
func TestMovedLines(t *testing.T) {
	src := demoText(t)
	before := reportOf(t, src, false)
	lines := strings.SplitAfter(src, "\n")
	for _, every := range []int{1, 3, 7, 40} {
		var moved strings.Builder
		for i, l := range lines {
			if i%every == 0 && l != "" {
				moved.WriteString("# moved\n")
			}
			moved.WriteString(l)
		}
		now := reportOf(t, moved.String(), false)
		if now.Findings[0].At == before.Findings[0].At {
			t.Fatal("nothing was moved")
		}
		c := accept.Against(now, before)
		if len(c.New)+len(c.Changed)+len(c.Gone)+len(c.NotJudged) > 0 || c.Same != len(before.Findings) || c.Same == 0 {
			t.Errorf("a remark at every %d lines: %d new, %d changed, %d gone, %d as before of %d", every, len(c.New), len(c.Changed), len(c.Gone), c.Same, len(before.Findings))
		}
	}
	for _, f := range before.Findings {
		if f.Pack != accept.Pack && f.Fingerprint != rule.Fingerprint(f.Rule, f.Subject) {
			t.Errorf("%s of %s goes by %s", f.Rule, f.Subject, f.Fingerprint)
		}
	}
}

// TestAcceptEachFinding accepts each finding of the demo by itself: it alone is
// accepted, and only if it fails; what can't be told stays, whoever accepts it.
func TestAcceptEachFinding(t *testing.T) {
	src := demoText(t)
	known, plain := acceptable(reportOf(t, src, true)), reportOf(t, src, false)
	fails, open := 0, 0
	for _, f := range plain.Findings {
		r := plain
		r.Findings = slices.Clone(plain.Findings)
		accept.Apply(&r, []accept.Accepted{takenOn(f)}, judgedOn, known)
		for _, g := range r.Findings {
			if want := g.Fingerprint == f.Fingerprint && f.Outcome == finding.Fails; (g.Accepted != nil) != want {
				t.Errorf("%s of %s accepted: %s of %s is accepted %v", f.Rule, f.Subject, g.Rule, g.Subject, !want)
			}
		}
		if f.Outcome == finding.Fails {
			fails++
		} else {
			open++
		}
	}
	if fails < 10 || open < 3 {
		t.Errorf("only %d that fail and %d that can't be told were tried", fails, open)
	}
}

// TestAcceptedThenWorse accepts the mend of the demo's cap shroud plate and then
// changes the plan: thinner, it is a stop; not measured, it can't be told. Both come
// back; made good, the acceptance has nothing left to accept.
func TestAcceptedThenWorse(t *testing.T) {
	const subject, ruleID, thickness = "landing:cap-shroud-port", "plate-outlasts-wire", "thickness: [6.36 mm, 6.34 mm]"
	src := demoText(t)
	if !strings.Contains(src, thickness) {
		t.Fatal("the demo has changed")
	}
	find := func(r finding.Report) *finding.Finding {
		i := slices.IndexFunc(r.Findings, func(f finding.Finding) bool { return f.Subject == subject && f.Rule == ruleID })
		if i < 0 {
			return nil
		}
		return &r.Findings[i]
	}
	first := find(reportOf(t, src, false))
	if first == nil || first.Grade != finding.Mend {
		t.Fatalf("%+v", first)
	}
	for _, test := range []struct {
		to       string
		accepted bool
		outcome  finding.Outcome
		grade    finding.Grade
		fault    string
	}{
		{thickness, true, finding.Fails, finding.Mend, ""},
		{"thickness: 4 mm", false, finding.Fails, finding.Stop, accept.FallsShort},
		{"# nobody has measured it", false, finding.CannotTell, finding.Mend, accept.FallsShort},
		{"thickness: 12 mm", false, "", "", accept.MatchesNothing},
	} {
		changed := strings.Replace(src, thickness, test.to, 1)
		r := reportOf(t, changed, false)
		accept.Apply(&r, []accept.Accepted{takenOn(*first)}, judgedOn, acceptable(reportOf(t, changed, true)))
		f := find(r)
		switch {
		case test.outcome == "":
			if f != nil {
				t.Errorf("%s: it is still found: %+v", test.to, f)
			}
		case f == nil || f.Outcome != test.outcome || f.Grade != test.grade || (f.Accepted != nil) != test.accepted:
			t.Errorf("%s: %+v", test.to, f)
		}
		var faults string
		for _, f := range r.Findings {
			if f.Pack == accept.Pack {
				faults += f.Rule
			}
		}
		if faults != test.fault {
			t.Errorf("%s: %q is found of the acceptance, wanted %q", test.to, faults, test.fault)
		}
	}
}

// TestAcceptAll accepts all that fails: what can't be told still refuses the plan,
// and nothing leaves the report.
func TestAcceptAll(t *testing.T) {
	src := demoText(t)
	plain := reportOf(t, src, false)
	r := plain
	r.Findings = slices.Clone(plain.Findings)
	var taken []accept.Accepted
	for _, f := range plain.Findings {
		if f.Outcome == finding.Fails {
			taken = append(taken, takenOn(f))
		}
	}
	accept.Apply(&r, taken, judgedOn, acceptable(reportOf(t, src, true)))
	if len(r.Findings) != len(plain.Findings) || r.Counts.Accepted != plain.Counts.Fails || r.Counts.Stop != 0 {
		t.Errorf("%d findings of %d, %+v", len(r.Findings), len(plain.Findings), r.Counts)
	}
	if r.Counts.Stop+r.Counts.Mend+r.Counts.Watch+r.Counts.Accepted != r.Counts.Fails+r.Counts.CannotTell {
		t.Errorf("the counts do not add up: %+v", r.Counts)
	}
	if !r.Refused() || r.Findings[0].Grade != finding.Stop || r.Findings[0].Accepted == nil {
		t.Errorf("refused %v; first %s, accepted %v", r.Refused(), r.Findings[0].Grade, r.Findings[0].Accepted)
	}
}

// TestReportWithAcceptances holds that a report with findings of every acceptance and
// with an earlier report beside it is one by the schema, and can be read again.
func TestReportWithAcceptances(t *testing.T) {
	schema, err := jsonschema.Compile("../schema/report.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	src := demoText(t)
	r, was := reportOf(t, src, false), reportOf(t, src, false)
	lapsed, unknown, worse := takenOn(r.Findings[0]), takenOn(r.Findings[0]), takenOn(r.Findings[1])
	lapsed.Until = judgedOn.AddDate(0, 0, -1)
	unknown.Rule = "no-such-rule"
	worse.Grade = finding.Watch
	template := unknown
	template.At.File = "class.yaml"
	accept.Apply(&r, []accept.Accepted{lapsed, unknown, worse, template, takenOn(r.Findings[2])}, judgedOn, acceptable(reportOf(t, src, true)))
	was.Findings = append(slices.Clone(was.Findings[3:]), was.Findings[0])
	gone := was.Findings[0]
	gone.Subject, gone.Fingerprint = "fitting:gone", rule.Fingerprint(gone.Rule, "fitting:gone")
	was.Findings = append(was.Findings, gone)
	r.Against = accept.Against(r, was).ForReport("last.json", []byte("x"))
	var out bytes.Buffer
	if err := render.JSON(&out, r); err != nil {
		t.Fatal(err)
	}
	var v any
	if err := json.Unmarshal(out.Bytes(), &v); err != nil {
		t.Fatal(err)
	}
	if err := schema.Validate(v); err != nil {
		t.Errorf("%#v", err)
	}
	if len(r.Against.New) == 0 || len(r.Against.Gone) != 1 || r.Counts.Accepted != 1 {
		t.Errorf("%+v, %+v", r.Against, r.Counts)
	}
	if back, err := accept.Earlier(out.Bytes(), r.Boat); err != nil || len(back.Findings) != len(r.Findings) {
		t.Errorf("it can't be read again: %v", err)
	}
}

// TestDemoAsSARIF holds what is written of the demo, of all its findings, to the
// schema of OASIS.
func TestDemoAsSARIF(t *testing.T) {
	schema, err := jsonschema.Compile("../testdata/published-schemas/sarif-schema-2.1.0.json")
	if err != nil {
		t.Fatal(err)
	}
	r := reportOf(t, demoText(t), true)
	accept.Apply(&r, []accept.Accepted{takenOn(r.Findings[0])}, judgedOn, acceptable(r))
	r.Against = accept.Against(r, reportOf(t, demoText(t), false)).ForReport("last.json", nil)
	var out bytes.Buffer
	if err := render.SARIF(&out, r, 1); err != nil {
		t.Fatal(err)
	}
	var v any
	if err := json.Unmarshal(out.Bytes(), &v); err != nil {
		t.Fatal(err)
	}
	if err := schema.Validate(v); err != nil {
		t.Errorf("%#v", err)
	}
	if got := strings.Count(out.String(), `"ruleId"`); got != len(r.Findings) {
		t.Errorf("%d results for %d findings", got, len(r.Findings))
	}
}
