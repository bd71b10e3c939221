// Package near finds the words that somebody who mistyped most likely meant.
package near

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
)

// match is a candidate with its distances from the word, the smaller the nearer.
type match struct {
	candidate string
	// folded leaves case and separators out of account, exact does not.
	folded, exact int
}

// Words gives the candidates nearest to a mistyped word, the nearest first, at
// most so many. Spaces, hyphens and underscores count as alike, and so do small
// and capital letters unless two candidates differ in nothing else. Of a dotted
// candidate ("stay.break_load") the last part alone is near as well, a little
// less so.
//
// A candidate more than a third of the word's letters away is left out: a far
// suggestion misleads more than none. Candidates as far from the word as each
// other stand in alphabetical order.
func Words(word string, candidates []string, most int) []string {
	if word == "" || most <= 0 {
		return nil
	}
	folded, exact := fold(word), []rune(word)
	var found []match
	for _, c := range candidates {
		if d, ok := distance(folded, c); ok {
			found = append(found, match{c, d, edits(exact, []rune(c))})
		}
	}
	slices.SortFunc(found, func(a, b match) int {
		return cmp.Or(cmp.Compare(a.folded, b.folded), cmp.Compare(a.exact, b.exact), cmp.Compare(a.candidate, b.candidate))
	})
	found = slices.Compact(found)
	words := make([]string, 0, min(most, len(found)))
	for _, m := range found[:min(most, len(found))] {
		words = append(words, m.candidate)
	}
	return words
}

// distance is how far a candidate is from a folded word; ok is false if it is
// beyond the cut-off.
func distance(word []rune, candidate string) (d int, ok bool) {
	d, ok = within(word, fold(candidate), 0)
	if dot := strings.LastIndexByte(candidate, '.'); dot >= 0 {
		if last, near := within(word, fold(candidate[dot+1:]), 1); near && (!ok || last < d) {
			return last, true
		}
	}
	return d, ok
}

// within is the number of edits between two folded words plus a handicap, if
// that is not beyond the cut-off. Words of very different length are told apart
// without counting edits, so a word of a megabyte costs nothing.
func within(word, candidate []rune, handicap int) (int, bool) {
	limit := max(1, max(len(word), len(candidate))/3)
	if len(word)-len(candidate) > limit || len(candidate)-len(word) > limit {
		return 0, false
	}
	if d := edits(word, candidate) + handicap; d <= limit && d < max(len(word), len(candidate)) {
		return d, true
	}
	return 0, false
}

// fold makes letters small and separators alike.
func fold(word string) []rune {
	runes := []rune(word)
	for i, r := range runes {
		switch r {
		case ' ', '-':
			runes[i] = '_'
		default:
			runes[i] = unicode.ToLower(r)
		}
	}
	return runes
}

// edits counts the least number of single steps that make one word the other:
// put in, leave out or change a letter, or swap two neighbours (the optimal
// string alignment distance, after Damerau and Levenshtein).
func edits(a, b []rune) int {
	before := make([]int, len(b)+1)
	last := make([]int, len(b)+1)
	row := make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row[0] = i + 1
		for j := range b {
			change := last[j]
			if a[i] != b[j] {
				change++
			}
			row[j+1] = min(change, last[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
