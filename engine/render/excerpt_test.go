package render

import (
	"strings"
	"testing"

	"chainwale/engine/finding"
)

// TestExcerpt holds the caret under the character that a place counts to, whatever
// stands before it.
func TestExcerpt(t *testing.T) {
	long := strings.Repeat("a ", 100) + "HERE" + strings.Repeat(" b", 100)
	for _, test := range []struct {
		name, line string
		column     int
		want       string
	}{
		{"plain", "have: thicknes", 7, "    3 | have: thicknes\n      |       ^\n"},
		{"after the end", "have:", 6, "    3 | have:\n      |      ^\n"},
		{"far after the end", "have:", 600, "    3 | have:\n      |      ^\n"},
		{"empty line", "", 1, "    3 |\n      | ^\n"},
		{"tabs", "\tab\tHERE", 5, "    3 |     ab  HERE\n      |         ^\n"},
		{"wide", "数字: HERE", 5, "    3 | 数字: HERE\n      |       ^\n"},
		{"accent of its own", "e\u0301: HERE", 5, "    3 | e\u0301: HERE\n      |    ^\n"},
		{"escape", "a\x1b[31mHERE", 7, "    3 | a\ufffd[31mHERE\n      |       ^\n"},
		{"turned round", "a\u202eHERE", 3, "    3 | a\ufffdHERE\n      |   ^\n"},
		{"no text", "a\xff\xfeHERE", 4, "    3 | a\ufffd\ufffdHERE\n      |    ^\n"},
	} {
		at := finding.Place{File: "f", Line: 3, Column: test.column}
		lines := func(file string, line int) (string, bool) { return test.line, file == "f" && line == 3 }
		if got := Spot(at, lines); got != test.want {
			t.Errorf("%s:\n%swant\n%s", test.name, got, test.want)
		}
	}
	at := finding.Place{File: "f", Line: 3, Column: strings.Index(long, "HERE") + 1}
	got := strings.Split(Spot(at, func(string, int) (string, bool) { return long, true }), "\n")
	shown, caret := []rune(got[0]), len([]rune(got[1]))-1
	if len(shown) > width || string(shown[caret:caret+4]) != "HERE" || !strings.Contains(got[0], "| …") || !strings.HasSuffix(got[0], "…") {
		t.Errorf("a long line:\n%s", strings.Join(got, "\n"))
	}
}

// TestExcerptWithoutTheLine: what is wrong is said all the same, and nothing in it
// moves the cursor.
func TestExcerptWithoutTheLine(t *testing.T) {
	p := finding.Problem{At: finding.Place{File: "a\x1bb.yaml", Line: 1, Column: 1}, Message: "is\x07 wrong", Expected: "right"}
	want := "a\ufffdb.yaml:1:1: is\ufffd wrong\n    right\n"
	if got := Excerpt(p, nil); got != want {
		t.Errorf("%q", got)
	}
	if got := Excerpt(p, func(string, int) (string, bool) { return "", false }); got != want {
		t.Errorf("%q", got)
	}
	var out strings.Builder
	if err := Excerpts(&out, []finding.Problem{p, p}, nil); err != nil || out.String() != want+want {
		t.Errorf("%v %q", err, out.String())
	}
}

// FuzzExcerpt: no line and no place break it down, and no control character comes out.
func FuzzExcerpt(f *testing.F) {
	f.Add("have: thicknes", 7)
	f.Add("\t数\x1b\xff", -1)
	f.Fuzz(func(t *testing.T, line string, column int) {
		out := Spot(finding.Place{Line: 1, Column: column}, func(string, int) (string, bool) { return line, true })
		if strings.Count(out, "\n") > 2 || strings.ContainsAny(out, "\x1b\r\t\x00") {
			t.Errorf("%q", out)
		}
	})
}
