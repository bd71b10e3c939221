package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"
)

func TestParseMoney(t *testing.T) {
	for _, c := range []struct {
		text string
		want Amount
		said string
	}{
		{"120 EUR", Amount{120, "EUR"}, "120 EUR"},
		{"1250.5 USD", Amount{1250.5, "USD"}, "1250.50 USD"},
		{"-35GBP", Amount{-35, "GBP"}, "-35 GBP"},
		{" 0.999 NOK ", Amount{0.999, "NOK"}, "1 NOK"},
		{"1e3 KGS", Amount{1000, "KGS"}, "1000 KGS"},
	} {
		got, err := ParseMoney(c.text)
		if err != nil || got != c.want || got.String() != c.said {
			t.Errorf("%q is %v, %v", c.text, got, err)
		}
	}
}

func TestBadMoney(t *testing.T) {
	const example = `; write for example "120 EUR" or "1250.50 USD"`
	for _, c := range []struct{ text, want string }{
		{"120", `120 has no currency; write the amount with its currency, for example "120 EUR"`},
		{"120 money", `120 money has no currency; write the amount with its currency, for example "120 EUR"`},
		{"120 eur", `120 eur has a currency in small letters; write "120 EUR"`},
		{"$120", `$120 has a sign for the currency, and more than one currency goes by it` + example},
		{"120 €", `120 € has a sign for the currency, and more than one currency goes by it` + example},
		{"1,250.50 EUR", `1,250.50 EUR has a comma in the number; write "1250.50 EUR"`},
		{"1,250 EUR", `1,250 EUR has a comma in the number; write "1250 EUR" or "1.250 EUR"`},
		{"1 250 EUR", `1 250 EUR has a blank within the number; write "1250 EUR"`},
		{"120 LBF", `120 LBF is a force where money belongs` + example},
		{"120 MPA", `MPA is not a unit known here: capital letters matter` + example},
		{"120 EURO", `EURO is not a unit known here` + example},
		{"nan EUR", `nan EUR is no finite number` + example},
		{strings.Repeat("9", 65) + " EUR", strings.Repeat("9", 64) + "… is longer than 64 characters" + example},
		{"", `nothing is written where a quantity belongs` + example},
	} {
		_, err := ParseMoney(c.text)
		var bad *BadQuantity
		if got := message(err); got != c.want || !errors.As(err, &bad) {
			t.Errorf("%q: %s\nwant %s", c.text, got, c.want)
		}
	}
}

func TestCurrenciesAreNotMixed(t *testing.T) {
	sum, err := Amount{120, "EUR"}.Plus(Amount{30.5, "EUR"})
	if err != nil || sum != (Amount{150.5, "EUR"}) {
		t.Errorf("%v, %v", sum, err)
	}
	if _, err := (Amount{120, "EUR"}).Plus(Amount{1, "USD"}); message(err) != "120 EUR and 1 USD can't be added: they are of two currencies" {
		t.Error(err)
	}
	if got := (Amount{12.5, "EUR"}).Times(3); got != (Amount{37.5, "EUR"}) {
		t.Error(got)
	}
	if got := (Amount{-0.001, "EUR"}).String(); got != "0 EUR" {
		t.Error(got)
	}
	if got := (Amount{math.NaN(), "EUR"}).String(); got != Unknown {
		t.Error(got)
	}
}

// No currency in wide use may be taken for a unit (the codes are from memory).
func TestCurrencyCodes(t *testing.T) {
	for _, code := range []string{"AED", "ARS", "AUD", "BGN", "BRL", "CAD", "CHF", "CLP", "CNY", "COP", "CZK", "DKK", "EGP", "EUR", "FJD", "GBP", "HKD", "HRK", "HUF", "IDR", "ILS", "INR", "ISK", "JPY", "KES", "KGS", "KRW", "MAD", "MXN", "MYR", "NOK", "NZD", "PEN", "PHP", "PLN", "RON", "RSD", "RUB", "SAR", "SEK", "SGD", "THB", "TND", "TOP", "TRY", "TWD", "TZS", "UAH", "USD", "UYU", "VND", "XCD", "XPF", "ZAR"} {
		if !isCurrency(code) {
			t.Errorf("%s is no currency", code)
		}
	}
	for _, code := range []string{"LBF", "KSI", "PSI", "MPA", "DEG", "RAD", "KGF", "KIP", "LBS", "DAY", "MIN", "GAL", "TON", "eur", "EU", "EURO", "E R", "E1R", "ÉUR"} {
		if isCurrency(code) {
			t.Errorf("%s is a currency", code)
		}
	}
}
