package fleet

import (
	"bytes"
	"math/rand/v2"
	"strings"
	"testing"
)

// TestFromLineWith holds that the keys which tell a plan and its template are found from
// the first line with their word on, as they are in the whole text.
func TestFromLineWith(t *testing.T) {
	pieces := []string{"chainwale", "template", "chainwal", ":", ": ", " ", "\t", "\"", "'", "\n", "\r\n", "# ", "\ufeff", "{", ",", "../a.yaml", "a b", "\\", "é"}
	r := rand.New(rand.NewPCG(1, 2))
	heads, named := 0, 0
	for range 60_000 {
		var text strings.Builder
		for range 1 + r.IntN(12) {
			text.WriteString(pieces[r.IntN(len(pieces))])
		}
		src := []byte(text.String())
		head := headKey.Match(src)
		if got := headKey.Match(fromLineWith(src, "chainwale")); got != head {
			t.Fatalf("%q is a plan: %v, want %v", src, got, head)
		}
		want, got := templateKey.FindSubmatch(src), templateKey.FindSubmatch(fromLineWith(src, "template"))
		if (want == nil) != (got == nil) || want != nil && (!bytes.Equal(want[1], got[1]) || !bytes.Equal(want[2], got[2])) {
			t.Fatalf("%q names %q, want %q", src, got, want)
		}
		if head {
			heads++
		}
		if want != nil {
			named++
		}
	}
	if heads < 100 || named < 100 {
		t.Errorf("%d heads and %d templates say little", heads, named)
	}
}
