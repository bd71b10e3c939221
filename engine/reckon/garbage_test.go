package reckon

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"chainwale/engine/quantity"
)

// hostile are texts that have broken readers of numbers and names before.
var hostile = []string{
	"", " ", "0", "-0", "00", "1", "NaN", "nan mm", "Inf", "-inf kN", "1e308 mm", "-1e308 N", "1e-320 mm", "1e400 mm", "1/0 in", "0x10 mm", "1_000 mm", "5-6 mm",
	"8 mm", "-8 mm", "0 mm", "0 N", "1e9 mm", "1e9 N", "1e9 MPa", "1e-9 mm", "1e15 N mm", "-1e15 N mm", "1 %", "100 %", "101 %", "-1 %", "1e9", "500", "501", "2.5",
	"316", "M8", "A4-70", "8.8", "yes", "no", "open", "pin", "elastic", "instantaneous centre", "plywood", "hardwood", "laminate", "harsh", "wood", "1x19", "rod", "unknown", "stainless",
	"\x00", "\xff\xfe", "\u202e8 mm", "８ mm", strings.Repeat("9", 5000), strings.Repeat("a", 5000) + " mm", "1e9 kg/m3", "450 kg/m3", "\n8 mm", "8\tmm", "6 mm2", "1 mm2",
}

// garbage draws a value of any form.
func garbage(depth int) *rapid.Generator[Value] {
	return rapid.Custom(func(t *rapid.T) Value {
		kind := Kind(rapid.SampledFrom([]int{0, 0, 0, 0, 1, 2, 3, 7}).Draw(t, "kind"))
		v := Value{Kind: kind, At: rapid.SampledFrom([]string{"", "standard input:1:1"}).Draw(t, "at")}
		if rapid.Bool().Draw(t, "known") {
			v.Text = rapid.SampledFrom(hostile).Draw(t, "text")
		} else {
			v.Text = rapid.String().Draw(t, "text")
		}
		if depth == 0 {
			return v
		}
		for range rapid.IntRange(0, 4).Draw(t, "items") {
			v.Items = append(v.Items, garbage(depth-1).Draw(t, "item"))
			name := rapid.SampledFrom([]string{"x", "y", "area", "height", "bolts", "", "Y", "z"}).Draw(t, "name")
			v.Members = append(v.Members, Member{Name: name, Value: garbage(depth-1).Draw(t, "member")})
		}
		return v
	})
}

// check holds whatever comes back to the three things that can: an answer whose
// numbers are finite, one that is not covered and has none, or a refusal.
func check(t interface{ Fatalf(string, ...any) }, name string, given []Member) {
	a, err := Run(name, given)
	var refusal *Refusal
	switch {
	case errors.As(err, &refusal):
		if len(refusal.Problems) == 0 || err.Error() == "" || strings.Count(err.Error(), "\n") != len(refusal.Problems)-1 {
			t.Fatalf("%s: the refusal says too little or too much: %q", name, err)
		}
		return
	case err != nil:
		t.Fatalf("%s is at fault: %v", name, err)
	case a.Covered == (a.Why != "") || a.Covered != (len(a.Results) > 0) || !a.finite():
		t.Fatalf("%s: covered %v, why %q, %d results", name, a.Covered, a.Why, len(a.Results))
	}
	var text, json bytes.Buffer
	if err := errors.Join(a.JSON(&json), a.Text(&text, quantity.Metric)); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
}

// TestGarbage: no input whatever makes a formula panic or blame the program.
func TestGarbage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(Formulas()).Draw(t, "formula")
		given, ok := members([]byte(f.ExampleJSON()))
		if !ok {
			t.Fatalf("the example of %s is no JSON", f.Name)
		}
		for range rapid.IntRange(1, 4).Draw(t, "changes") {
			i := rapid.IntRange(0, len(given)-1).Draw(t, "which")
			given[i].Value = garbage(2).Draw(t, "value")
		}
		if rapid.IntRange(0, 9).Draw(t, "stranger") == 0 {
			given = append(given, Member{Name: rapid.String().Draw(t, "name"), Value: garbage(1).Draw(t, "value")})
		}
		check(t, f.Name, given)
	})
}

// TestWildNumbers: numbers of every size, each alone possible, give an answer or a
// reason and never a number that is none.
func TestWildNumbers(t *testing.T) {
	number := rapid.SampledFrom([]string{"0", "1e-9", "1e-6", "0.001", "1", "7.3", "50", "1000", "1e6", "1e9", "-1", "-1e9"})
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(Formulas()).Draw(t, "formula")
		given, _ := members([]byte(f.ExampleJSON()))
		for i := range given {
			given[i].Value = wilder(t, number, f.Inputs, given[i])
		}
		check(t, f.Name, given)
	})
}

// wilder gives an amount another number with the same unit.
func wilder(t *rapid.T, number *rapid.Generator[string], declared []Input, m Member) Value {
	v := m.Value
	for _, d := range declared {
		switch {
		case !alike(d.Name, m.Name):
		case d.Takes == Amount && rapid.Bool().Draw(t, "change"):
			v.Text = number.Draw(t, d.Name) + " " + d.Dimension.Unit()
		case d.Takes == Parted:
			v.Members = wildMembers(t, number, d.Parts, v.Members)
		case d.Takes == Rows:
			for i, item := range v.Items {
				v.Items[i].Members = wildMembers(t, number, d.Parts, item.Members)
			}
		}
	}
	return v
}

func wildMembers(t *rapid.T, number *rapid.Generator[string], declared []Input, members []Member) []Member {
	for i := range members {
		members[i].Value = wilder(t, number, declared, members[i])
	}
	return members
}

// FuzzRun: any JSON object given to any formula is answered or refused.
func FuzzRun(f *testing.F) {
	for _, formula := range Formulas() {
		f.Add(formula.Name, []byte(formula.ExampleJSON()))
	}
	f.Add("pin-plat", []byte(`{}`))
	f.Add("bolt-group", []byte(`{"bolts": [{"x": "1e9 mm", "y": null}], "force": [], "at": "0", "method": "instantaneous-centre"}`))
	f.Add("bolt-pull", []byte(`{"rows": [{"height": "0 mm", "bolts": 1e999}], "force": {"x": {}}, "arm": true}`))
	f.Fuzz(func(t *testing.T, name string, text []byte) {
		if given, ok := members(text); ok {
			check(t, name, given)
		}
	})
}
