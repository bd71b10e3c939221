package quantity

import "strings"

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
	if start := numberStart(d.text, first); !strings.ContainsAny(d.text[:start], "+-.,/") {
		d.suggest(d.text[start:])
	}
	return "does not begin with a number"
}

// numberStart goes back from a digit over the point and the sign right before it,
// so that no advice ever drops one.
func numberStart(text string, digit int) int {
	if digit > 0 && text[digit-1] == '.' {
		digit--
	}
	if digit > 0 && (text[digit-1] == '-' || text[digit-1] == '+') {
		digit--
	}
	return digit
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
