package rule

import (
	"strings"
	"testing"
)

// TestProveSaysWhatDiffers changes the limit of a good rule under its examples.
func TestProveSaysWhatDiffers(t *testing.T) {
	p, problems := loadAll(t, packOf(strings.Replace(goodRule, "at_least: 4 mm", "at_least: 7 mm", 1)))
	if p == nil {
		t.Fatal(lines(problems))
	}
	var said []string
	for _, r := range p.Prove() {
		if (r.String() == "") != r.Proven {
			t.Errorf("%+v", r)
		}
		if !r.Proven {
			said = append(said, r.String())
		}
	}
	if len(said) != 1 || said[0] != "example 1 of a-rule expects holds, the rule says fails (stop)" {
		t.Errorf("%q", said)
	}
}

func TestProveNamesWhatIsUnknown(t *testing.T) {
	p, problems := loadAll(t, packOf(strings.Replace(goodRule, "fitting.thickness: 6 mm, stay.toggle: no", "fitting.thickness: 6 mm", 1)))
	if p == nil {
		t.Fatal(lines(problems))
	}
	r := p.Prove()[0]
	if r.Proven || r.String() != "example 1 of a-rule expects holds, the rule says cannot tell (mend) for want of stay.toggle" || r.At.Line != 21 {
		t.Errorf("%d: %s", r.At.Line, r)
	}
}

func TestProveLooksAtTheGrade(t *testing.T) {
	p, problems := loadAll(t, packOf(strings.Replace(goodRule, "outcome: fails, grade: stop", "outcome: fails, grade: mend", 1)))
	if p == nil {
		t.Fatal(lines(problems))
	}
	if r := p.Prove()[1]; r.Proven || r.String() != "example 2 of a-rule expects fails (mend), the rule says fails (stop)" {
		t.Error(r)
	}
}

// TestUnnoticedChanges: the good rule has no example for its second band.
func TestUnnoticedChanges(t *testing.T) {
	p, problems := loadAll(t, packOf(goodRule))
	if p == nil {
		t.Fatal(lines(problems))
	}
	var said []string
	for _, c := range p.Unnoticed() {
		said = append(said, c.String())
	}
	const want = `no example of a-rule notices that "at_least 0.5 * hole" is left out
no example of a-rule notices that "at_least 0.5 * hole" is turned round`
	if strings.Join(said, "\n") != want {
		t.Errorf("%s", strings.Join(said, "\n"))
	}
}
