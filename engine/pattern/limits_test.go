package pattern

import (
	"os"
	"strings"
	"testing"

	"chainwale/engine/quantity"
)

// The drawing asks for a test strip from where the rule does.
func TestStripAsTheRule(t *testing.T) {
	src, err := os.ReadFile("../../rules/fabrication/fold-needs-no-test-strip.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if limit := "at_most: '" + quantity.Format(testStrip, quantity.Length, quantity.Metric) + "'\n"; strings.Count(string(src), "at_most:") != 1 || !strings.Contains(string(src), limit) {
		t.Errorf("the rule does not say %q", limit)
	}
}
