package rule

import (
	"strings"
	"testing"
)

// TestNumbersThatNeverAre: a part that reads no fact and is no finite number is
// refused where it stands; a fact that may be nought one day is not.
func TestNumbersThatNeverAre(t *testing.T) {
	const advice = " | no division by nought, and no number beyond what the trade would write"
	for limit, want := range map[string]string{
		"hole * (0/0)":                "9:23: \"0/0\"",
		"hole * (1 / 0)":              "9:23: \"1 / 0\"",
		"hole + '1 mm' / (2 - 2)":     "9:22: \"'1 mm' / (2 - 2)\"",
		"hole * 1e300 ** 2":           "9:22: \"1e300 ** 2\"",
		"max(hole, '1 mm' * 0 ** -1)": "9:34: \"0 ** -1\"",
		"hole * end / end":            "",
		"hole * 2 / 3":                "",
	} {
		if want != "" {
			want = "my/a.yaml:" + want + " gives no finite number, so nothing can ever be told by it" + advice
		}
		_, problems := loadAll(t, packOf(strings.Replace(goodRule, "0.5 * hole", limit, 1)))
		if got := lines(problems); got != want {
			t.Errorf("%s: %s", limit, got)
		}
	}
}
