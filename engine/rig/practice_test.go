package rig

import (
	"os"
	"regexp"
	"testing"
)

// TestPracticeSaysHowKnown: the numbers of the practice of the trade say how they are
// known.
func TestPracticeSaysHowKnown(t *testing.T) {
	text, err := os.ReadFile("practice.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"standInsWanted", "standInFan"} {
		known := regexp.MustCompile(`// ` + name + ` is [^=]*\((common practice|judgement)[^=]*\n\t` + name + ` += `)
		if !known.Match(text) {
			t.Errorf("nobody says how %s is known", name)
		}
	}
}
