package render

import (
	"bytes"
	"strings"
	"testing"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

func textOf(t *testing.T, r finding.Report) string {
	t.Helper()
	var out bytes.Buffer
	if err := Text(&out, r, quantity.Metric); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// TestAcceptedInText holds that an accepted stop stays among the stops and says who
// took it on.
func TestAcceptedInText(t *testing.T) {
	got := textOf(t, sample())
	stop, mend := strings.Index(got, "STOP, holds up cutting, accepted: "), strings.Index(got, "MEND")
	if stop < 0 || mend < 0 {
		t.Fatalf("not there:\n%s", got)
	}
	if !strings.Contains(got, "accepted by the owner until 2027-05-01: new plates") {
		t.Errorf("nobody took it on:\n%s", got)
	}
	if strings.Count(got, ", accepted: ") != 1 {
		t.Errorf("more than one is marked as accepted:\n%s", got)
	}
}

// TestTwinsAcceptedApart holds that a finding that is accepted to port alone is
// printed to starboard as well, and as not accepted.
func TestTwinsAcceptedApart(t *testing.T) {
	port := sampleFinding("pin-fits", "landing:cap-port", finding.Fails, finding.Stop)
	starboard := sampleFinding("pin-fits", "landing:cap-starboard", finding.Fails, finding.Stop)
	r := sample()
	r.Findings = []finding.Finding{port, starboard}
	if got := textOf(t, r); !strings.Contains(got, "cap-port and cap-starboard (alike") {
		t.Errorf("twins are not joined:\n%s", got)
	}
	r.Findings[0].Accepted = &finding.Acceptance{Who: "the owner", Why: "so", Until: "2027-05-01"}
	got := textOf(t, r)
	if strings.Contains(got, "alike") || strings.Count(got, "STOP, holds up cutting: ") != 1 || strings.Count(got, "STOP, holds up cutting, accepted: ") != 1 {
		t.Errorf("what is accepted to port hides starboard:\n%s", got)
	}
}

// TestAgainstInText holds the section on an earlier report.
func TestAgainstInText(t *testing.T) {
	got := strings.Join(strings.Fields(textOf(t, compared())), " ")
	for _, want := range []string{
		"Against last.json, judged as of 2026-04-01: 1 new, 1 changed, 1 gone, 4 as before.",
		"- new: stop, landing:cap-port [plate-outlasts-wire] boats/grey wagtail.yaml:7:3",
		"- worse: mend, landing:cap-port [pin-fits]; it was watch classes/sandling#33.yaml:7:3",
		"- gone: stop, fitting:old [metal-outlasts-use]",
		"whether they are gone is not known: - not judged: mend (cannot tell), fitting:old [yard-rule]",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not there:\n%s", want, got)
		}
	}
	if strings.Contains(textOf(t, sample()), "Against") {
		t.Error("a report without an earlier one compares")
	}
}
