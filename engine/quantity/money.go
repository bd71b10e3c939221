package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Amount is money with the currency it is counted in. It stands apart from
// Quantity, whose units have one canonical unit, since rates of exchange are not
// ours to know: Plus refuses to mix currencies. Where all amounts are in one
// currency they may go on as Quantity{a.Value, Money}.
type Amount struct {
	Value float64
	// Currency is its three-letter code in capitals (after ISO 4217): "EUR".
	Currency string
}

// ParseMoney reads an amount as "1250.50 EUR": the number as in a quantity, then
// the three letters of its currency. A sign ("$", "€") is refused, since more
// than one country's money goes by it.
func ParseMoney(text string) (Amount, error) {
	a, ok := readMoney(text)
	if !ok {
		return Amount{}, refuseMoney(text)
	}
	return a, nil
}

func readMoney(text string) (Amount, bool) {
	text = trimBlanks(text)
	if tooLong(text) {
		return Amount{}, false
	}
	number, rest, f := readNumber(text)
	code := skipBlanks(rest)
	return Amount{number, code}, f == sound && isCurrency(code)
}

// refuseMoney says what is wrong with a text that is no amount of money.
func refuseMoney(text string) *BadQuantity {
	money := Money
	d := &doubt{text: trimBlanks(text), want: &money}
	bad := &BadQuantity{Text: shown(text), Expected: `for example "120 EUR" or "1250.50 USD"`}
	_, rest, f := readNumber(d.text)
	number, code := d.split(skipBlanks(rest))
	upper := strings.ToUpper(code)
	switch {
	case f == sound && (code == "" || find(code) != nil && find(code).dimension == Money):
		bad.Why = bad.Text + " has no currency"
		if text := number + " EUR"; moneyFits(text) {
			bad.Expected = `the amount with its currency, for example "` + text + `"`
		}
	case f == sound && upper != code && isCurrency(upper):
		bad.Why = bad.Text + " has a currency in small letters"
		d.suggest(number + " " + upper)
	case strings.ContainsAny(d.text, "$€£"):
		bad.Why = bad.Text + " has a sign for the currency, and more than one currency goes by it"
	default:
		bad.Why = d.why()
	}
	if fitting := d.best(moneyFits); len(fitting) > 0 {
		bad.Expected = anyOf(fitting)
	}
	return bad
}

func moneyFits(text string) bool {
	_, ok := readMoney(text)
	return ok
}

// isCurrency tells a currency code from a unit in capitals, right or wrong.
func isCurrency(code string) bool {
	if len(code) != 3 {
		return false
	}
	for i := range len(code) {
		if code[i] < 'A' || code[i] > 'Z' {
			return false
		}
	}
	small := strings.ToLower(code)
	_, hinted := hints[small]
	return caseless[small] == nil && !hinted
}

// Plus adds an amount in the same currency.
func (a Amount) Plus(b Amount) (Amount, error) {
	if a.Currency != b.Currency {
		return Amount{}, fmt.Errorf("%s and %s can't be added: they are of two currencies", a, b)
	}
	return Amount{a.Value + b.Value, a.Currency}, nil
}

// Times is so many times the amount.
func (a Amount) Times(n float64) Amount { return Amount{a.Value * n, a.Currency} }

// String is the amount to a hundredth, "1250.50 EUR", or whole if it is.
func (a Amount) String() string { return withUnit(hundredths(a.Value), a.Currency) }

// hundredths writes money: whole, or with two decimals.
func hundredths(v float64) string {
	if !finite(v) {
		return Unknown
	}
	whole := math.Round(v)
	if math.Abs(v-whole) < 0.005 {
		return strconv.FormatFloat(whole+0, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'f', 2, 64)
}
