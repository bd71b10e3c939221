package engine_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"chainwale/engine"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/standard"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// harbour is a standard of no text, for tests: half the metal beside the hole.
func harbour() clauses.Book {
	reads := []standard.Read{
		{Name: "fitting.thickness", Type: standard.Number, Unit: "mm"}, {Name: "fitting.width", Type: standard.Number, Unit: "mm"},
		{Name: "hole", Type: standard.Number, Unit: "mm"}, {Name: "fitting.metal.ultimate", Type: standard.Number, Unit: "MPa"},
		{Name: "fitting.metal.name", Type: standard.Word}, {Name: "fitting.welded", Type: standard.YesNo},
	}
	net := func(r clauses.Row) (clauses.Result, error) {
		if r.Word("fitting.metal.name") == "wood" {
			return clauses.Result{}, errors.New("it is for metals")
		}
		v := (r.Number("fitting.width") - r.Number("hole")) * r.Number("fitting.thickness") * r.Number("fitting.metal.ultimate") / 2
		return clauses.Result{Value: v, Working: func() []working.Step {
			return []working.Step{{Symbol: "N", Formula: "(w - d) t fu/2", Value: v, Unit: "N", Source: working.Source{Title: "harbour", As: working.Judgement}}}
		}}, nil
	}
	return clauses.Book{
		ID: "harbour-1", Prefix: "harbour", Title: "Harbour rules", Edition: "1", Publisher: "nobody", Basis: standard.Ultimate,
		Clauses: []clauses.Clause{{Clause: "1.1", Covers: "half the net section", Kind: "landing", Reads: reads,
			Facts: []clauses.Fact{{Name: "net", Unit: "N", Meaning: "load at which half the net section breaks", Bears: true,
				From: []string{"fitting.thickness", "fitting.width", "hole", "fitting.metal.ultimate"}, Reckon: net}}}},
		Pack: fstest.MapFS{
			"pack.yaml": {Data: []byte("id: harbour-rules\nedition: '1'\ntitle: Harbour rules\n")},
			"net.yaml": {Data: []byte(`id: harbour-net
title: Half the net section outlasts the wire
on: landing
have: harbour.net
at_least: 3 * stay.break_load
else: stop
holds_up: cutting
says: "{fitting} carries {harbour.net}"
because: It is a test.
known: [{ source: nobody, as: judgement }]
decides: [rigger]
examples:
  - { with: { harbour.net: 30 kN, stay.break_load: 10 kN }, outcome: holds }
  - { with: { harbour.net: 29 kN, stay.break_load: 10 kN }, outcome: fails, grade: stop }
  - { with: { stay.break_load: 10 kN }, outcome: cannot tell }
`)},
		},
	}
}

// askedAs checks the demo boat by a standard.
func askedAs(t *testing.T, s standard.Standard, must bool) finding.Report {
	t.Helper()
	p, problems, err := plan.Load("../testdata/boats/quillfish.yaml", plan.Options{})
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	r, err := engine.Check(t.Context(), p, engine.Options{On: day, RefuseFrom: finding.Mend, All: true,
		Standards: []engine.Named{{ID: "harbour-1", Standard: s, Must: must, At: finding.Place{File: "quillfish.yaml", Line: 1, Column: 1}}}})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

var day = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

func of(r finding.Report, rule string) (list []finding.Finding) {
	for _, f := range r.Findings {
		if f.Rule == rule {
			list = append(list, f)
		}
	}
	return list
}

// TestStandardJudges holds that what a standard derives is judged by its pack, to
// be watched unless the plan must meet it.
func TestStandardJudges(t *testing.T) {
	s, err := harbour().Standard()
	if err != nil {
		t.Fatal(err)
	}
	for must, want := range map[bool]finding.Grade{false: finding.Watch, true: finding.Stop} {
		r := askedAs(t, s, must)
		var fails, unknown int
		for _, f := range of(r, "harbour-net") {
			switch f.Outcome {
			case finding.Fails:
				fails++
				if f.Grade != want || f.Have == nil || f.Have.Unit != "N" {
					t.Errorf("must %v: %+v", must, f)
				}
			case finding.CannotTell:
				unknown++
				if len(f.Unknown) == 0 || strings.HasPrefix(f.Unknown[0], "harbour") {
					t.Errorf("it asks for %v, which nobody can measure", f.Unknown)
				}
			}
		}
		if fails == 0 {
			t.Error("nothing fails by the standard")
		}
		if r.Fault || len(r.Standards) != 1 || r.Standards[0].Edition != "1" || !strings.HasPrefix(r.Standards[0].Hash, "sha256:") {
			t.Errorf("the report lists %v, fault %v", r.Standards, r.Fault)
		}
	}
}

// liar is the harbour standard with something wrong.
type liar struct {
	standard.Standard
	describe func(*standard.Description)
	answer   func(standard.Answer) (standard.Answer, error)
}

func (l liar) Describe(ctx context.Context) (standard.Description, error) {
	d, err := l.Standard.Describe(ctx)
	if l.describe != nil {
		l.describe(&d)
	}
	return d, err
}

func (l liar) Derive(ctx context.Context, q standard.Question) (standard.Answer, error) {
	a, err := l.Standard.Derive(ctx, q)
	if l.answer != nil && err == nil {
		return l.answer(a)
	}
	return a, err
}

// TestStandardAtFault holds that a standard which lies or dies stops the plan, by
// name, and that nothing holds by it.
func TestStandardAtFault(t *testing.T) {
	s, err := harbour().Standard()
	if err != nil {
		t.Fatal(err)
	}
	cases := map[string]struct {
		standard standard.Standard
		says     string
	}{
		"dies": {liar{Standard: s, answer: func(standard.Answer) (standard.Answer, error) {
			return standard.Answer{}, &standard.Fault{Message: "it died in the call", Side: standard.ChangeStandard}
		}}, "it died in the call: change the standard"},
		"NaN": {liar{Standard: s, answer: func(a standard.Answer) (standard.Answer, error) {
			a.Columns[0].Give(0, math.NaN())
			return a, nil
		}}, "change the standard"},
		"short": {liar{Standard: s, answer: func(a standard.Answer) (standard.Answer, error) {
			a.Columns[0].Numbers = a.Columns[0].Numbers[:1]
			return a, nil
		}}, "change the standard"},
		"other unit":    {liar{Standard: s, describe: func(d *standard.Description) { d.Tables[0].Reads[0].Unit = "MPa" }}, `reads fitting.thickness of a landing in "MPa", but here it is in "mm"`},
		"unknown fact":  {liar{Standard: s, describe: func(d *standard.Description) { d.Tables[0].Reads[4].Name = "girth" }}, "it reads girth of a landing, which this program does not have"},
		"taken prefix":  {liar{Standard: s, describe: func(d *standard.Description) { d.Prefix = "fitting" }}, "change the standard"},
		"other id":      {liar{Standard: s, describe: func(d *standard.Description) { d.ID = "other-1" }}, "it calls itself other-1"},
		"later version": {liar{Standard: s, describe: func(d *standard.Description) { d.Contract = 99 }}, "newer chainwale"},
		"from nothing":  {liar{Standard: s, describe: func(d *standard.Description) { d.Tables[0].Derives[0].From = nil }}, "names nothing that it comes from"},
		"no pack":       {liar{Standard: s, describe: func(d *standard.Description) { d.Pack = nil }}, "nothing would judge what it derives"},
		"pack":          {liar{Standard: s, describe: func(d *standard.Description) { d.Pack = d.Pack[:1]; d.Pack[0].Bytes = []byte("id: [") }}, "pack"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			fresh, _ := harbour().Standard()
			if l, ok := c.standard.(liar); ok {
				l.Standard = fresh
				c.standard = l
			}
			r := askedAs(t, c.standard, true)
			stops := of(r, "standard-answers")
			if len(stops) != 1 || stops[0].Grade != finding.Stop || !strings.Contains(stops[0].Message, c.says) || !strings.Contains(stops[0].Message, "harbour-1") {
				t.Errorf("said: %+v", stops)
			}
			if !r.Fault || !r.Refused() {
				t.Error("the report passes")
			}
			for _, f := range of(r, "harbour-net") {
				if f.Outcome == finding.Holds || f.Outcome == finding.Fails {
					t.Errorf("%s by a standard that did not answer: %s", f.Outcome, f.Message)
				}
			}
			if len(of(r, "plate-outlasts-wire")) == 0 {
				t.Error("the rest of the check was lost")
			}
		})
	}
}

// TestTwoStandardsOfOnePrefix holds that the second of two standards whose facts are
// called alike is refused.
func TestTwoStandardsOfOnePrefix(t *testing.T) {
	a, _ := harbour().Standard()
	twin := harbour()
	twin.ID = "harbour-2"
	b, _ := twin.Standard()
	p, _, err := plan.Load("../testdata/boats/quillfish.yaml", plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r, err := engine.Check(t.Context(), p, engine.Options{On: day, RefuseFrom: finding.Mend, Standards: []engine.Named{{ID: "harbour-1", Standard: a}, {ID: "harbour-2", Standard: b}}})
	if err != nil {
		t.Fatal(err)
	}
	stops := of(r, "standard-answers")
	if len(stops) != 1 || stops[0].Subject != "standard:harbour-2" || !strings.Contains(stops[0].Message, "harbour.…") {
		t.Errorf("%+v", stops)
	}
}

// Working shows another number than was derived.
func (l liar) Working(ctx context.Context, a standard.Asked) ([]working.Step, error) {
	steps, err := l.Standard.Working(ctx, a)
	for i := range steps {
		steps[i].Value++
	}
	return steps, err
}

// TestWorkingThatDoesNotComeToIt holds that a working which comes to another number is
// said, and never stands there as if it showed the one that was derived.
func TestWorkingThatDoesNotComeToIt(t *testing.T) {
	s, err := harbour().Standard()
	if err != nil {
		t.Fatal(err)
	}
	p, _, err := plan.Load("../testdata/boats/quillfish.yaml", plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		standard standard.Standard
		faults   int
	}{"true": {s, 0}, "false": {liar{Standard: s}, 2}} {
		_, _, faults, err := engine.Behind(t.Context(), p, "cap-plate", day, []engine.Named{{ID: "harbour-1", Standard: c.standard}})
		if err != nil || len(faults) != c.faults || c.faults > 0 && !strings.Contains(faults[0], "none of the steps that it shows for net comes to") {
			t.Errorf("%s: %v, %q", name, err, faults)
		}
	}
}
