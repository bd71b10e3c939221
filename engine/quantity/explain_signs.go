package quantity

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// What is wrong with the signs: commas, marks for feet and inches, and all that
// word processors put in the place of plain ones.

// oddNumber looks for marks within the number that some put there.
func (d *doubt) oddNumber(number, rest string) string {
	if text, ok := feetAndInches(d.text); ok {
		d.suggest(text)
		return "holds feet and inches; one number has one unit"
	}
	next := rest[min(1, len(rest)):]
	inside := next != "" && isDigit(next[0])
	switch c := rest[0]; {
	case c == ',':
		d.suggest(withoutCommas(d.text)...)
		return "has a comma in the number"
	case c == '_' && inside:
		d.suggest(strings.ReplaceAll(d.text, "_", ""))
		return "has an underscore in the number"
	case c == '\'' && digits(next) == 3:
		d.suggest(strings.ReplaceAll(d.text, "'", ""))
		return "has an apostrophe in the number"
	case c|' ' == 'x' && inside && strings.TrimLeft(number, "+-") == "0":
		return "is a hexadecimal number"
	case c == '.' || c == '/' || isDigit(c):
		return "does not begin with one number"
	case c == '+' || strings.HasPrefix(rest, "±"):
		return "holds two numbers; a tolerance has a place of its own"
	case holdsAnother(rest):
		return sayings[oneToAnother]
	}
	return ""
}

// holdsAnother tells "ft 3 in", "mm x 4 mm", "to 6 mm" and "- 6 mm", where
// another number follows, from a unit with a figure in it.
func holdsAnother(rest string) bool {
	words := strings.Fields(strings.ReplaceAll(rest, "-", " - "))
	if len(words) < 2 || words[0] != "to" && words[0] != "-" && find(words[0]) == nil {
		return false
	}
	return slices.ContainsFunc(words[1:], func(w string) bool { return isDigit(w[0]) })
}

// withoutCommas gives the numbers that a text with commas may mean: "1,000.5"
// and "1.000,5" are a thousand and a half, "1,000,000" is a million, "1,000" one
// or a thousand, "6,5" is 6.5, and "1.5,000" nothing. What comes of "1,5,000" is no
// number, so nobody will be advised to write it.
func withoutCommas(text string) []string {
	comma, point := strings.LastIndexByte(text, ','), strings.LastIndexByte(text, '.')
	none := strings.ReplaceAll(text, ",", "")
	switch {
	case comma < point && inThousands(text, ','):
		return []string{none}
	case point < 0 && inThousands(text, ','):
		return []string{none, strings.Replace(text, ",", ".", 1)}
	case comma > point && inThousands(text, '.'):
		return []string{strings.Replace(strings.ReplaceAll(text, ".", ""), ",", ".", 1)}
	}
	return nil
}

// inThousands tells whether each of the marks has three digits behind it.
func inThousands(text string, mark byte) bool {
	for i := range len(text) {
		if text[i] == mark && digits(text[i+1:]) != 3 {
			return false
		}
	}
	return true
}

// primes writes out the marks for feet and inches.
var primes = strings.NewReplacer("'", " ft ", `"`, " in")

// feetAndInches gives the inches of "34 ft 6 in", of 34' 6" and of 34'6.
func feetAndInches(text string) (string, bool) {
	feet, rest, f := readNumber(primes.Replace(text))
	words := strings.Fields(rest)
	if f != sound || len(words) < 2 || find(words[0]) != spelled["ft"] {
		return "", false
	}
	inches, rest, f := readNumber(strings.Join(words[1:], " "))
	unit := skipBlanks(rest)
	if f != sound || feet < 0 || inches < 0 || inches >= 12 || unit != "" && find(unit) != spelled["in"] {
		return "", false
	}
	return exact(12*feet+inches) + " in", true
}

// plain gives the plain text for signs that word processors make.
var plain = strings.NewReplacer(
	"−", "-", "–", "-", "—", "-", "‐", "-", "‑", "-", "⁄", "/", "′", "'", "’", "'", "″", `"`, "”", `"`,
	"¼", " 1/4", "½", " 1/2", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⅓", " 1/3", "⅔", " 2/3",
)

// plainly writes a text with plain signs and blanks.
func plainly(text string) string {
	return plain.Replace(strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Zs, r) {
			return ' '
		}
		return r
	}, text))
}

// fancy finds signs and digits that only look like the plain ones.
func (d *doubt) fancy() string {
	at := strings.IndexFunc(d.text, func(r rune) bool { return plainly(string(r)) != string(r) })
	if at < 0 {
		if strings.ContainsFunc(d.text, foreignDigit) {
			return d.text + " holds digits other than 0 to 9"
		}
		return ""
	}
	// "−5" becomes "-5" and "5½" becomes "5 1/2", but "-½" becomes "- 1/2".
	simple := trimBlanks(plainly(d.text))
	d.suggest(strings.Replace(simple, "- ", "-", 1), primes.Replace(simple))
	if text, ok := feetAndInches(simple); ok {
		d.suggest(text)
	}
	sign, _ := utf8.DecodeRuneInString(d.text[at:])
	if unicode.Is(unicode.Zs, sign) {
		return d.text + " holds a blank that is not the plain one"
	}
	return d.text + " holds " + string(sign) + ", which is not among the plain signs"
}

func foreignDigit(r rune) bool {
	return r > unicode.MaxASCII && unicode.IsNumber(r) && !strings.ContainsRune("²³⁴", r)
}
