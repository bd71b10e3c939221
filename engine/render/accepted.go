package render

import (
	"fmt"

	"chainwale/engine/finding"
)

// accepted says under a finding who took it on, until when and why. An accepted
// finding keeps its place among the others: a stop stays on the first page, whoever
// accepted it.
func (t *text) accepted(f *finding.Finding) {
	if f.Accepted != nil {
		t.prose("      ", acceptance(f.Accepted))
	}
}

// acceptance is who took a finding on, until when and why, as a sentence says it.
func acceptance(a *finding.Acceptance) string {
	return fmt.Sprintf("accepted by %s until %s: %s", a.Who, a.Until, a.Why)
}

// acceptedMark stands behind the grade of a finding that somebody took on.
func acceptedMark(f *finding.Finding) string {
	if f.Accepted != nil {
		return ", accepted"
	}
	return ""
}

// sameAcceptance tells whether two findings are taken on alike. What is accepted of
// the port plate alone may not be printed for the starboard one.
func sameAcceptance(a, b *finding.Acceptance) bool {
	if a == nil || b == nil {
		return a == b
	}
	return *a == *b
}
