package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"
	"unicode/utf8"
)

// FuzzParse holds for any text whatever: nothing panics, what is taken is finite
// and reads back as itself, and what is refused says why in a line that can be
// printed and advises only what would be taken.
func FuzzParse(f *testing.F) {
	for _, text := range []string{
		"6 mm", "1/4 in", "5 1/4 in", "5-1/4 in", "-5 1/4in", "8.6 kN", "1e3 N", "40 degF", "2.5 US gal", "17 %", "0.17", "12°", "25 N·m",
		"", "12", "6 MM", "6 milimeters", "8 N", ".nan", "1e400 mm", "1/0 in", "0x10 mm", "1_000 mm", "010 mm", "1,000 mm", "6,5 mm", "1.000,5 mm", "1 000 mm",
		"5-6 mm", "5 ft 3 in", `5'3"`, "6 ±0.1 mm", "5½ in", "−5 mm", "5\u00a0mm", "٦ mm", "6\u3000\u3000", "6 \x00", "\xff", "120 EUR", "$120", "-", "+-.e/", "1e", "e3 N", "/4", "1/", "5-", "6 -", "6 K", "6 '", "9e999 %",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		q, err := Parse(text)
		if err == nil {
			if back, err := Parse(q.String()); err != nil || back != q || math.IsNaN(q.Value) || math.IsInf(q.Value, 0) {
				t.Errorf("%q is %s, which reads as %s, %v", text, q, back, err)
			}
		} else {
			checkRefusal(t, err, func(advice string) error { _, err := Parse(advice); return err })
		}
		for _, want := range []Dimension{Length, Force, Bare, Temperature} {
			if _, err := ParseAs(text, want); err != nil {
				checkRefusal(t, err, func(advice string) error { _, err := ParseAs(advice, want); return err })
			} else if q.Dimension != want {
				t.Errorf("%q is %s and is taken as %s", text, q, want.Name())
			}
		}
		if a, err := ParseMoney(text); err != nil {
			checkRefusal(t, err, func(advice string) error { _, err := ParseMoney(advice); return err })
		} else if !isCurrency(a.Currency) {
			t.Errorf("%q is %v", text, a)
		}
	})
}

func checkRefusal(t *testing.T, err error, try func(advice string) error) {
	t.Helper()
	var bad *BadQuantity
	if !errors.As(err, &bad) {
		t.Fatalf("%v is no refusal", err)
	}
	line := err.Error()
	if bad.Why == "" || bad.Expected == "" || !utf8.ValidString(line) || strings.ContainsAny(line, "\n\r\x00") || utf8.RuneCountInString(line) > 400 {
		t.Errorf("poor refusal %q", line)
	}
	for i, advice := range strings.Split(bad.Expected, `"`) {
		if i%2 == 1 && try(advice) != nil {
			t.Errorf("%s: but %q is refused: %v", line, advice, try(advice))
		}
	}
}
