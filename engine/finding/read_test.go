package finding

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"chainwale/engine/working"
)

func sample() Report {
	ratio := 0.9
	return Report{
		Chainwale: "0.1", Version: ReportVersion, On: "2026-11-25", Plan: PlanRead{File: "boat.yaml"}, Boat: "Quillfish", RefuseAt: Mend,
		Problems: []Problem{}, Measure: []Measure{}, Packs: []PackUsed{{ID: "strength", Edition: "1", Changed: []string{}}}, Standards: []StandardUsed{}, NotSeen: []string{}, Cautions: []string{"it advises"},
		Findings: []Finding{{Rule: "a", Pack: "strength", Outcome: Fails, Grade: Stop, HoldsUp: "cutting", Subject: "landing:x", At: Place{"boat.yaml", 3, 4, "/a"}, Related: []Place{},
			Have: &Amount{1, "N"}, Need: &Amount{2, "N"}, Ratio: &ratio, Unknown: []string{}, Shown: []Shown{}, Message: "m", Decides: []string{"rigger"}, Known: []working.Source{}}},
	}
}

// TestRead holds that a report comes back as it was written.
func TestRead(t *testing.T) {
	src, err := json.Marshal(sample())
	if err != nil {
		t.Fatal(err)
	}
	got, err := Read(src)
	if err != nil || !reflect.DeepEqual(got, sample()) {
		t.Errorf("%v\n%+v\n%+v", err, got, sample())
	}
}

// TestReadRefuses holds that what is no report of this version is refused in plain words.
func TestReadRefuses(t *testing.T) {
	whole, _ := json.Marshal(sample())
	for src, want := range map[string]string{
		"":                                "not a report",
		"[]":                              "not a report",
		"{}":                              `no key "report"`,
		`{"report": 2}`:                   "version 2; this program reads version 1",
		`{"report": "one"}`:               "not a report",
		`{"report": 1, "surprise": true}`: "surprise",
		string(whole) + "{}":              "behind the end",
		string(whole[:len(whole)-2]):      "not a report",
	} {
		if _, err := Read([]byte(src)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%.40q: %v, wanted %q", src, err, want)
		}
	}
}

// TestRefused holds which findings refuse a plan.
func TestRefused(t *testing.T) {
	for _, test := range []struct {
		outcome Outcome
		grade   Grade
		taken   bool
		want    bool
	}{
		{Fails, Stop, false, true}, {Fails, Mend, false, true}, {Fails, Watch, false, false},
		{CannotTell, Mend, false, true}, {Holds, "", false, false}, {DoesNotApply, "", false, false},
		{Fails, Stop, true, false},
	} {
		f := Finding{Outcome: test.outcome, Grade: test.grade}
		if test.taken {
			f.Accepted = &Acceptance{Who: "owner"}
		}
		if got := (Report{RefuseAt: Mend, Findings: []Finding{f}}).Refused(); got != test.want {
			t.Errorf("%+v: refused %v", test, got)
		}
	}
}

// FuzzRead holds that no bytes break the reader down, and that what it reads is
// written and read again without change.
func FuzzRead(f *testing.F) {
	whole, _ := json.Marshal(sample())
	f.Add(whole)
	f.Add([]byte(`{"report": 1}`))
	f.Add([]byte(`{"report": 1, "findings": [{"have": null, "ratio": 1e308}]}`))
	f.Add([]byte(`{"report": 1e400}`))
	f.Fuzz(func(t *testing.T, src []byte) {
		r, err := Read(src)
		if err != nil {
			if err.Error() == "" {
				t.Error("it is refused without a word")
			}
			return
		}
		again, err := json.Marshal(r)
		if err != nil {
			t.Fatal(err)
		}
		second, err := Read(again)
		if err != nil {
			t.Fatalf("what was read and written can't be read: %v", err)
		}
		third, err := json.Marshal(second)
		if err != nil || string(third) != string(again) {
			t.Errorf("written twice it differs: %v\n%s\n%s", err, again, third)
		}
	})
}
