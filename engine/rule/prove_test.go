package rule

import (
	"fmt"
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

// TestUnnoticedChanges: the good rule has no example for its second band, and none
// near the limit of its first.
func TestUnnoticedChanges(t *testing.T) {
	p, problems := loadAll(t, packOf(goodRule))
	if p == nil {
		t.Fatal(lines(problems))
	}
	var said []string
	for _, m := range p.Unnoticed() {
		said = append(said, fmt.Sprintf("%d:%d %s", m.At.Line, m.At.Column, m))
	}
	const want = "4:30 no example of a-rule notices when `\"kept\"` becomes `\"remade\"`\n" +
		"7:5 no example of a-rule notices when `at_least` becomes `above`\n" +
		"7:15 no example of a-rule notices when `4 mm` becomes `4.4 mm`\n" +
		"7:15 no example of a-rule notices when `4 mm` becomes `3.6 mm`\n" +
		"9:5 no example of a-rule notices when `at_least: 0.5 * hole` is left out\n" +
		"9:5 no example of a-rule notices when `at_least` becomes `below`\n" +
		"9:5 no example of a-rule notices when `at_least` becomes `above`\n" +
		"9:15 no example of a-rule notices when `0.5` becomes `0.55`\n" +
		"9:15 no example of a-rule notices when `0.5` becomes `0.45`"
	if strings.Join(said, "\n") != want {
		t.Errorf("%s", strings.Join(said, "\n"))
	}
}

// TestProposedExamplesNotice: the examples that are proposed, written into the file,
// agree with the rule and leave no change unnoticed.
func TestProposedExamplesNotice(t *testing.T) {
	text := goodRule
	p, problems := loadAll(t, packOf(text))
	if p == nil {
		t.Fatal(lines(problems))
	}
	for _, m := range p.Unnoticed() {
		s, ok := m.Noticing()
		if !ok || !m.NoticedBy(s) {
			t.Errorf("%s: %v %s", m, ok, s)
		}
		text += "  " + strings.ReplaceAll(s.String(), "\n", "\n  ") + "\n"
	}
	p, problems = loadAll(t, packOf(text))
	if p == nil {
		t.Fatal(lines(problems))
	}
	for _, r := range p.Prove() {
		if !r.Proven {
			t.Error(r)
		}
	}
	for _, m := range p.Unnoticed() {
		t.Error(m)
	}
}

// TestLimitThatNeverDecides: a change that nothing could notice is listed, and no
// example is made up for it.
func TestLimitThatNeverDecides(t *testing.T) {
	text := strings.Replace(goodRule, "at_least: 0.5 * hole\n    applies_if: stay.toggle", "at_least: 2 mm", 1)
	p, problems := loadAll(t, packOf(text))
	if p == nil {
		t.Fatal(lines(problems))
	}
	never := 0
	for _, m := range p.Unnoticed() {
		if s, ok := m.Noticing(); !ok {
			never++
		} else if m.At.Line == 9 {
			t.Errorf("%s is noticed by %s", m, s)
		}
	}
	if never == 0 {
		t.Error("a limit that never decides is not listed")
	}
}

// TestSentencesAreBeyondExamples: a band that is there for its own sentence alone
// changes no outcome and no grade, and so no example could notice it.
func TestSentencesAreBeyondExamples(t *testing.T) {
	text := strings.Replace(goodRule, "  - at_least: 4 mm\n    else: stop\n  - at_least: 0.5 * hole\n    applies_if: stay.toggle\n    else: mend\n",
		"  - at_least: 4 mm\n    applies_if: stay.toggle\n    else: stop\n  - at_least: 5 mm\n    applies_if: stay.toggle\n    else: mend\n"+
			"    says: \"{fitting} swings\"\n  - at_least: 5 mm\n    else: mend\n", 1)
	text = strings.NewReplacer("grade: stop }", "grade: mend }", "thickness: 3 mm }", "thickness: 3 mm, stay.toggle: no }").Replace(text)
	p, problems := loadAll(t, packOf(text))
	if p == nil {
		t.Fatal(lines(problems))
	}
	for _, m := range p.Unnoticed() {
		if m.At.Line == 10 && m.To == "" {
			t.Errorf("%s, though only its sentence would be missed", m)
		}
	}
	for _, r := range p.Prove() {
		if !r.Proven {
			t.Error(r)
		}
	}
}
