package plan

import (
	"strings"
	"testing"
	"time"
)

const acceptedHead = "chainwale: 1\nboat: { name: Wagtail }\naccepted:\n"

// TestAccepted holds how an acceptance is read, with the place of each value.
func TestAccepted(t *testing.T) {
	const src = acceptedHead + "  - rule: plate-outlasts-wire\n    subject: cap-plate-port\n    grade: mend\n    who: the owner\n    why: new plates are ordered\n    until: 2027-05-01\n" +
		"  - { rule: pin-fits, grade: watch, who: 7, why: x, until: \"2027-05-31\" }\n"
	p, problems, err := Parse("p.yaml", []byte(src))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	if len(p.Accepted) != 2 {
		t.Fatalf("%d are read", len(p.Accepted))
	}
	a, b := p.Accepted[0], p.Accepted[1]
	if a.Rule.Value != "plate-outlasts-wire" || a.Subject.Value != "cap-plate-port" || a.Grade.Value != "mend" || a.Who.Value != "the owner" || a.Why.Value != "new plates are ordered" {
		t.Errorf("%+v", a)
	}
	if want := time.Date(2027, 5, 1, 0, 0, 0, 0, time.UTC); !a.Until.Last.Equal(want) || !a.Until.First.Equal(want) {
		t.Errorf("until %v", a.Until)
	}
	if a.At.Line != 4 || a.Subject.At.Line != 5 || a.Until.At.Line != 9 || a.Until.At.Column != 12 || b.At.Line != 10 {
		t.Errorf("at %v, %v, %v, %v", a.At, a.Subject.At, a.Until.At, b.At)
	}
	if b.Subject.Given || b.Who.Value != "7" {
		t.Errorf("%+v", b)
	}
}

// TestAcceptedRefused holds that nobody accepts a thing without a name, a reason and
// a last day.
func TestAcceptedRefused(t *testing.T) {
	const good = "rule: pin-fits, subject: cap, grade: mend, who: the owner, why: so, until: 2027-05-01"
	for _, test := range []struct{ old, new, want string }{
		{"who: the owner, ", "", "has no who"},
		{"why: so, ", "", "has no why"},
		{", until: 2027-05-01", "", "has no until"},
		{"grade: mend, ", "", "has no grade"},
		{"rule: pin-fits, ", "", "has no rule"},
		{"who: the owner", "who: \"  \"", "/accepted/0/who"},
		{"who: the owner", "who: ", "/accepted/0/who"},
		{"why: so", "why: \"\"", "/accepted/0/why"},
		{"subject: cap", "subject: \" \"", "/accepted/0/subject"},
		{"2027-05-01", "2027-05", "a whole day, for example 2027-05-01"},
		{"2027-05-01", "2027", "a whole day, for example 2027-05-01"},
		{"2027-05-01", "2027-02-30", "February 2027 has no day 30"},
		{"2027-05-01", "never", "/accepted/0/until"},
		{"grade: mend", "grade: mand", "mend"},
		{"rule: pin-fits", "rule: Pin Fits", "for example plate-outlasts-wire"},
		{"who: the", "whom: the", "did you mean who?"},
	} {
		src := acceptedHead + "  - { " + strings.Replace(good, test.old, test.new, 1) + " }\n"
		p, problems, err := Parse("p.yaml", []byte(src))
		if err != nil {
			t.Fatal(err)
		}
		var said []string
		for _, problem := range problems {
			said = append(said, told(problem))
			if problem.At.Line != 4 {
				t.Errorf("%s: told in line %d", test.new, problem.At.Line)
			}
		}
		if p != nil || !strings.Contains(strings.Join(said, "\n"), test.want) {
			t.Errorf("%q for %q: %q, wanted %q", test.new, test.old, said, test.want)
		}
	}
	if _, problems, _ := Parse("p.yaml", []byte(acceptedHead+"  - { "+good+" }\n")); len(problems) > 0 {
		t.Errorf("the good one is refused: %v", problems)
	}
}
