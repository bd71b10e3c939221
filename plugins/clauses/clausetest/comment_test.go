package clausetest

import (
	"slices"
	"strings"
	"testing"
)

// said is a comment that says all it must.
const said = `netTension is the strength of a plate across its hole.

Equation:

	P = (w - d) t fu

Symbols: width w, hole d, thickness t, mm; ultimate fu, MPa; result N.

Holds for a flat plate.

Source: after a handbook, 2005, 3.1 (common
practice). Errors: a hole that leaves no metal, as it was published in 1999.
`

// TestUnexplained takes one thing at a time out of a comment: each is missed.
func TestUnexplained(t *testing.T) {
	if lacks := unexplained(said); len(lacks) > 0 {
		t.Errorf("of a comment that says all: %v", lacks)
	}
	for from, want := range map[string]string{
		"Equation:":                             "has no part Equation",
		"Holds ":                                "has no part Holds ",
		"Symbols:":                              "has no part Symbols:",
		", mm; ultimate fu, MPa; result N":      "names no unit among its symbols",
		", 2005":                                "names no edition of its source",
		" (common\npractice)":                   "does not say how its source is known",
		"Source: after a handbook, 2005, 3.1 (": "has no part Source:",
	} {
		if lacks := unexplained(strings.Replace(said, from, "", 1)); !slices.Contains(lacks, want) {
			t.Errorf("without %q: %v, not %q", from, lacks, want)
		}
	}
	for _, text := range []string{"by EN 1993-1-8 ", "Source: AISC 360", "per\nISO 2768", "more than AISC 360 asks for", "ASME BTH-1 takes"} {
		if lacks := unexplained(said + text); len(lacks) != 1 {
			t.Errorf("with %q: %v", text, lacks)
		}
	}
}
