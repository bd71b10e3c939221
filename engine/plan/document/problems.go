package document

import (
	"cmp"
	"slices"

	"chainwale/engine/finding"
)

// Sorted puts problems in the order of their places and says each only once.
func Sorted(problems []finding.Problem) []finding.Problem {
	slices.SortStableFunc(problems, func(a, b finding.Problem) int {
		return cmp.Or(
			cmp.Compare(a.At.File, b.At.File),
			cmp.Compare(a.At.Line, b.At.Line),
			cmp.Compare(a.At.Column, b.At.Column),
			cmp.Compare(a.At.Pointer, b.At.Pointer),
			cmp.Compare(a.Message, b.Message),
			cmp.Compare(a.Expected, b.Expected),
		)
	})
	return slices.Compact(problems)
}
