package standard

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"chainwale/engine/quantity"
)

// longestText is how many characters a sentence of a standard may have: what it
// says is printed, and no one reads more.
const longestText = 2000

var (
	idPattern   = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)
	namePattern = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)
	readPattern = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*(\.[a-z][a-z0-9]*(_[a-z0-9]+)*)*$`)
)

// reserved are the words of the rules' own language, which no prefix can be.
var reserved = []string{"and", "or", "not", "in", "min", "max", "abs", "true", "false", "nil", "let", "if", "else", "matches", "contains"}

// CheckText tells why a text can't be printed as one sentence: it is blank, too
// long, or holds what would move a screen's cursor.
func CheckText(what, text string) error {
	switch {
	case strings.TrimSpace(text) == "":
		return broken("its %s is blank", what)
	case !utf8.ValidString(text):
		return broken("its %s is not in UTF-8", what)
	case utf8.RuneCountInString(text) > longestText:
		return broken("its %s has more than %d characters", what, longestText)
	case strings.ContainsFunc(text, func(r rune) bool { return !unicode.IsGraphic(r) }):
		return broken("its %s holds characters that can't be printed on a line: %+q", what, shortened(text))
	}
	return nil
}

// checkMaybe is CheckText for a text that may be left out.
func checkMaybe(what, text string) error {
	if text == "" {
		return nil
	}
	return CheckText(what, text)
}

// checkName tells why a text is no name of its form.
func checkName(what, text string, form *regexp.Regexp, such string) error {
	if form.MatchString(text) && len(text) <= 100 {
		return nil
	}
	return broken("its %s %+q is not in small letters and digits such as %s", what, shortened(text), such)
}

// checkUnit tells why a text is no canonical unit.
func checkUnit(of, unit string) error {
	if _, ok := quantity.DimensionOf(unit); ok {
		return nil
	}
	return broken("%s is in %+q, which is no canonical unit (those are mm, mm2, N, MPa, N mm, kg, V, deg, degC, year and none for a bare number)", of, shortened(unit))
}

// shortened is a foreign text no longer than a message should repeat it.
func shortened(text string) string {
	text = strings.ToValidUTF8(text, "?")
	if r := []rune(text); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return text
}

// twice is the first text that a list has twice.
func twice(list []string) (string, bool) {
	sorted := slices.Sorted(slices.Values(list))
	for i := 1; i < len(sorted); i++ {
		if sorted[i] == sorted[i-1] {
			return sorted[i], true
		}
	}
	return "", false
}

// firstError is the first that is one.
func firstError(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
