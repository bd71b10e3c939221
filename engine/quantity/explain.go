package quantity

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// What is wrong with the number. The unit's part is in explain_unit.go.

// sayings tells the faults of a number that need no second look.
var sayings = map[fault]string{
	leadingZero:    "begins a number with a zero, which some programs read as another number",
	brokenFraction: "has a fraction without a number below the line",
	overNothing:    "divides by zero",
	improper:       "has a fraction that is not less than one behind a whole number",
	longFraction:   "has a fraction with too many digits",
	oneToAnother:   "holds two numbers; several readings stand in a list",
	huge:           "is too large to reckon with",
	tiny:           "is too small to be told from zero",
}

// faulty says what the fault of the number is.
func (d *doubt) faulty(f fault) string {
	switch f {
	case noNumber:
		return d.noNumber()
	case leadingZero:
		d.suggest(withoutLeadingZeros(d.text))
	case barePoint:
		return d.barePoint()
	case blankInside:
		return d.blankInside()
	}
	return sayings[f]
}

// noNumber looks at a text that does not begin with a number.
func (d *doubt) noNumber() string {
	bare := strings.ToLower(strings.TrimLeft(d.text, "+-."))
	first := strings.IndexFunc(d.text, func(r rune) bool { return r < 128 && isDigit(byte(r)) })
	switch {
	case strings.HasPrefix(bare, "nan") || strings.HasPrefix(bare, "inf"):
		return "is no finite number"
	case first < 0:
		return "does not begin with a number"
	case first == 0:
		d.suggest(tidyUnit(strings.Replace(d.text, "-", " ", 1)))
		return "has a hyphen behind the number"
	case strings.TrimLeft(d.text[:first], "+-") != d.text[:first]:
		sign, _, _ := strings.Cut(d.text[:first], " ")
		d.suggest(sign + d.text[first:])
		return "has a sign that does not stand right before a number"
	}
	d.suggest(d.text[first:])
	return "does not begin with a number"
}

// barePoint tells "5. mm" from "5..6 mm".
func (d *doubt) barePoint() string {
	if strings.Contains(d.text, "..") {
		return sayings[oneToAnother]
	}
	d.suggest(strings.Replace(d.text, ".", "", 1))
	return "has a decimal point without digits behind it"
}

// blankInside tells "1 000 mm", where the blank parts the thousands, from "5 6 mm".
func (d *doubt) blankInside() string {
	parts := strings.Fields(d.text)
	n := 1
	for n < len(parts) && digits(parts[n]) == 3 {
		n++
	}
	if n == 1 {
		return sayings[oneToAnother]
	}
	d.suggest(strings.Join(append([]string{strings.Join(parts[:n], "")}, parts[n:]...), " "))
	return "has a blank within the number"
}

// withoutLeadingZeros drops the zeros that whole numbers begin with, so that
// "010 mm" becomes "10 mm"; zeros behind a point stay.
func withoutLeadingZeros(text string) string {
	var b strings.Builder
	for i := range len(text) {
		starts := i == 0 || !isDigit(text[i-1]) && text[i-1] != '.'
		if text[i] == '0' && starts && i+1 < len(text) && isDigit(text[i+1]) {
			return b.String() + withoutLeadingZeros(text[i+1:])
		}
		b.WriteByte(text[i])
	}
	return b.String()
}

// plain gives the plain text for signs that word processors make.
var plain = strings.NewReplacer(
	"−", "-", "–", "-", "—", "-", "‐", "-", "‑", "-", "⁄", "/", "′", " ft", "’", " ft", "″", " in", "”", " in",
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
	d.suggest(simple, strings.Replace(simple, "- ", "-", 1))
	sign, _ := utf8.DecodeRuneInString(d.text[at:])
	if unicode.Is(unicode.Zs, sign) {
		return d.text + " holds a blank that is not the plain one"
	}
	return d.text + " holds " + string(sign) + ", which is not among the plain signs"
}

func foreignDigit(r rune) bool {
	return r > unicode.MaxASCII && unicode.IsNumber(r) && !strings.ContainsRune("²³⁴", r)
}
