package rule

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/near"
)

// problems gathers what is wrong with a pack, so that its author hears of all of
// it at once.
type problems struct {
	list []finding.Problem
}

// add notes what is wrong at a place and what would be right.
func (p *problems) add(at finding.Place, expected, format string, args ...any) {
	p.list = append(p.list, finding.Problem{At: at, Message: fmt.Sprintf(format, args...), Expected: expected})
}

// nearest is the advice for a name that doesn't exist: up to three that do.
func nearest(name string, candidates []string) string {
	names := near.Words(name, candidates, 3)
	if len(names) == 0 {
		return ""
	}
	return "did you mean " + either(names) + "?"
}

// oneOf is the advice for a word of a short, closed list.
func oneOf(words []string) string { return "one of " + strings.Join(words, ", ") }

// either joins alternatives as a sentence does: "a, b or c".
func either(words []string) string { return join(words, " or ") }

// all joins things as a sentence does: "a, b and c".
func all(words []string) string { return join(words, " and ") }

func join(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + last + words[len(words)-1]
}

// sort puts problems in the order of the files, and of the lines in each. What
// was found at the same place stays in the order in which it was found.
func (p *problems) sort() {
	slices.SortStableFunc(p.list, func(a, b finding.Problem) int {
		return cmp.Or(cmp.Compare(a.At.File, b.At.File), cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Column, b.At.Column))
	})
}

// count is a number with its noun.
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
