package rule

import (
	"strings"
	"testing"
)

// TestSentences holds that what fails is said by its band where the band has a
// sentence of its own and by the rule where it has none, that a name in words begins
// it with a capital letter, and that what holds is not said in the words of a fault.
func TestSentences(t *testing.T) {
	for _, test := range []struct {
		pren float64
		says string
	}{
		{18, "The port chainplate is of 316L and stands hidden"},
		{24, "nobody looks at the port chainplate of 316L"},
		{42, "The metal bears a hidden wet place"},
	} {
		b := newBoat()
		b.fitting.Hidden.Give(true, at(26, 12))
		b.fitting.Metal.PREN.Give(test.pren, at(23, 12))
		b.fitting.Access.Give("tools", at(28, 12))
		b.fitting.Look.Give(true, at(29, 12))
		j := judge(t, b, JudgeOptions{All: true})
		if f := j.of(t, "metal-for-a-hidden-place"); f.Message != test.says {
			t.Errorf("of %g: %s, wanted %s", test.pren, f.Message, test.says)
		}
	}
	held := judge(t, newBoat(), JudgeOptions{All: true}).of(t, "plate-outlasts-wire")
	if held.Message != "The plate is stronger than the wire it holds: 80 kN, limit 53.2 kN" {
		t.Errorf("%s", held.Message)
	}
}

// TestBandSentenceIsChecked holds that a band's sentence is read as the rule's is,
// and may speak of a need only where the band is a number.
func TestBandSentenceIsChecked(t *testing.T) {
	says := func(sentence string) string {
		return strings.Replace(goodRule, "    else: stop\n", "    else: stop\n    says: \""+sentence+"\"\n", 1)
	}
	for _, test := range []struct{ sentence, problem string }{
		{"{fitting} has {have} of {need}", ""},
		{"{fiting} is thin", "nothing is named"},
		{"{fitting is thin", "a brace without its fellow"},
	} {
		_, problems := loadAll(t, packOf(says(test.sentence)))
		got := lines(problems)
		if test.problem == "" && got != "" || !strings.Contains(got, test.problem) {
			t.Errorf("%s: %q, wanted %q", test.sentence, got, test.problem)
		}
	}
}
