package quantity

import (
	"math"
	"strconv"
	"strings"
)

// fault is why a text does not begin with a number that means one thing only.
type fault int

const (
	sound fault = iota
	noNumber
	leadingZero
	barePoint
	brokenFraction
	overNothing
	improper
	longFraction
	blankInside
	oneToAnother
	huge
	tiny
)

// longestFraction is how many digits the parts of a fraction may have.
const longestFraction = 6

// readNumber reads the number at the start of a text and gives what follows it.
// A number is a decimal (6, 0.25, .5, 1e3), a fraction (1/4) or a mixed number
// (5 1/4, 5-1/4), with a sign or without. It allocates nothing: this is the way
// that every sound quantity goes.
func readNumber(text string) (value float64, rest string, f fault) {
	body, negative := cutSign(text)
	whole := digits(body)
	value, rest, f = readBody(body, whole)
	if negative && value != 0 {
		value = -value
	}
	return value, rest, f
}

// readBody chooses among the three forms by what follows the first digits.
func readBody(body string, whole int) (float64, string, fault) {
	if whole == 0 || whole == len(body) {
		return readDecimal(body)
	}
	after := body[whole:]
	if after[0] == '/' {
		return readFraction(0, body)
	}
	if after[0] == '-' {
		if len(after) == 1 || !isDigit(after[1]) {
			return 0, "", noNumber
		}
		return readMixed(body[:whole], after[1:], oneToAnother)
	}
	if next := skipBlanks(after); len(next) < len(after) && next != "" && isDigit(next[0]) {
		return readMixed(body[:whole], next, blankInside)
	}
	return readDecimal(body)
}

// readMixed reads the fraction of a mixed number. Digits there that are no
// fraction are the given fault: "1 000" or "5-6".
func readMixed(whole, text string, otherwise fault) (float64, string, fault) {
	if n := digits(text); n == len(text) || text[n] != '/' {
		return 0, "", otherwise
	}
	w, f := readWhole(whole)
	if f != sound {
		return 0, "", f
	}
	value, rest, f := readFraction(w, text)
	if f == sound && value >= w+1 {
		return 0, "", improper
	}
	return value, rest, f
}

// readFraction reads "1/4" and adds the whole number before it.
func readFraction(whole float64, text string) (float64, string, fault) {
	n := digits(text)
	above, f := readWhole(text[:n])
	if f != sound {
		return 0, "", f
	}
	text = text[n+1:]
	n = digits(text)
	if n == 0 {
		return 0, "", brokenFraction
	}
	below, f := readWhole(text[:n])
	if f != sound {
		return 0, "", f
	}
	if below == 0 {
		return 0, "", overNothing
	}
	return (whole*below + above) / below, text[n:], sound
}

// readWhole reads the digits of one part of a fraction.
func readWhole(text string) (float64, fault) {
	if len(text) > 1 && text[0] == '0' {
		return 0, leadingZero
	}
	if len(text) > longestFraction {
		return 0, longFraction
	}
	n := 0
	for i := range len(text) {
		n = 10*n + int(text[i]-'0')
	}
	return float64(n), sound
}

// readDecimal reads "6", "0.25", ".5" or "1e3".
func readDecimal(text string) (float64, string, fault) {
	end, f := decimalEnd(text)
	if f != sound {
		return 0, "", f
	}
	value, err := strconv.ParseFloat(text[:end], 64)
	if err != nil {
		return 0, "", huge
	}
	if value == 0 && hasNonzeroDigit(text[:end]) {
		return 0, "", tiny
	}
	return value, text[end:], sound
}

// decimalEnd finds where a decimal number ends. A leading zero is a fault since
// "010" is 8 to some programs, and so is a point without digits behind it.
func decimalEnd(text string) (int, fault) {
	whole := digits(text)
	end := whole
	if end < len(text) && text[end] == '.' {
		n := digits(text[end+1:])
		switch {
		case n == 0 && whole == 0:
			return 0, noNumber
		case n == 0:
			return 0, barePoint
		}
		end += 1 + n
	}
	if end == 0 {
		return 0, noNumber
	}
	if whole > 1 && text[0] == '0' {
		return 0, leadingZero
	}
	return end + exponent(text[end:]), sound
}

// exponent is the length of "e3", "E+3" or "e-3" at the start of a text. An e
// without digits is no exponent but the start of a unit.
func exponent(text string) int {
	if text == "" || text[0]|' ' != 'e' {
		return 0
	}
	body, _ := cutSign(text[1:])
	if n := digits(body); n > 0 {
		return len(text) - len(body) + n
	}
	return 0
}

// hasNonzeroDigit tells "0.0e9" from "1e-400", which is not nought but too small
// to be told from it.
func hasNonzeroDigit(number string) bool {
	mantissa, _, _ := strings.Cut(strings.ToLower(number), "e")
	return strings.ContainsAny(mantissa, "123456789")
}

// digits counts the digits that a text begins with.
func digits(text string) int {
	n := 0
	for n < len(text) && isDigit(text[n]) {
		n++
	}
	return n
}

func cutSign(text string) (rest string, negative bool) {
	if text == "" || text[0] != '-' && text[0] != '+' {
		return text, false
	}
	return text[1:], text[0] == '-'
}

func skipBlanks(text string) string {
	for text != "" && isBlank(text[0]) {
		text = text[1:]
	}
	return text
}

func trimBlanks(text string) string {
	text = skipBlanks(text)
	for text != "" && isBlank(text[len(text)-1]) {
		text = text[:len(text)-1]
	}
	return text
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
