package quantity

import "unicode/utf8"

// longest is how many characters a quantity may have, blanks around it apart.
const longest = 64

// absoluteZero is the coldest a temperature can be, in degC, with room for the
// rounding of a reading in degF.
const absoluteZero = -273.15 - 1e-9

// Parse reads a quantity as an owner writes it: a decimal ("6 mm", "8.6 kN",
// "1e3 N"), a fraction ("1/4 in") or a mixed number ("5 1/4 in", "5-1/4 in"),
// then the unit, with a blank between them or none. "17 %" is the bare number
// 0.17, and so is a number without a unit; where a unit belongs use ParseAs.
// "40 degF" is what a thermometer reads, not a difference.
//
// Units are written with small and capital letters as they are known ("mm",
// "kN", "MPa"), but "PSI" and "Inches" do no harm. Spellings lists them.
//
// What does not mean one thing only is refused with a *BadQuantity: "1,000 mm",
// "010 mm", "0x10 mm", "5-6 mm", "6 lbs" for a force. So is what is no finite
// number ("nan mm", "1e400 mm", "1/0 in").
func Parse(text string) (Quantity, error) {
	q, ok := read(text)
	if !ok {
		return Quantity{}, refuse(text, nil)
	}
	return q, nil
}

// ParseAs reads a quantity of the dimension that is wanted. Any other is
// refused, with the spellings that would do.
func ParseAs(text string, want Dimension) (Quantity, error) {
	q, ok := read(text)
	if !ok || q.Dimension != want {
		return Quantity{}, refuse(text, &want)
	}
	return q, nil
}

// read is the way of a sound quantity: it answers no questions about others.
func read(text string) (Quantity, bool) {
	text = trimBlanks(text)
	if tooLong(text) {
		return Quantity{}, false
	}
	number, rest, f := readNumber(text)
	if f != sound {
		return Quantity{}, false
	}
	rest = skipBlanks(rest)
	if rest == "" {
		return Quantity{Value: number}, true
	}
	u := find(rest)
	if u == nil {
		return Quantity{}, false
	}
	return u.quantity(number)
}

// quantity is a reading in a unit as a Quantity. ok is false where the canonical
// unit can't hold it: infinite, or nought though the reading is not, or colder
// than cold can be.
func (u *unit) quantity(reading float64) (q Quantity, ok bool) {
	value := u.toCanonical(reading)
	lost := value == 0 && reading != u.zero
	cold := u.dimension == Temperature && value < absoluteZero
	return Quantity{value, u.dimension}, finite(value) && !lost && !cold
}

func tooLong(text string) bool {
	return len(text) > longest && utf8.RuneCountInString(text) > longest
}

// ReadAs is ParseAs for whoever does not ask what is wrong with a text.
func ReadAs(text string, want Dimension) (value float64, ok bool) {
	q, ok := read(text)
	return q.Value, ok && q.Dimension == want
}
