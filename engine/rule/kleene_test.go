package rule

import (
	"math"
	"testing"

	"chainwale/engine/fact"
)

func TestLogicIsKleenes(t *testing.T) {
	// Rows and columns in the order no, unknown, yes.
	values := []kleene{no, unknown, yes}
	wantAnd := [3][3]kleene{{no, no, no}, {no, unknown, unknown}, {no, unknown, yes}}
	wantOr := [3][3]kleene{{no, unknown, yes}, {unknown, unknown, yes}, {yes, yes, yes}}
	for i, a := range values {
		for j, b := range values {
			if got := and(a, b); got != wantAnd[i][j] {
				t.Errorf("%v and %v is %v", a, b, got)
			}
			if got := or(a, b); got != wantOr[i][j] {
				t.Errorf("%v or %v is %v", a, b, got)
			}
		}
		if got := not(a); got != values[2-i] {
			t.Errorf("not %v is %v", a, got)
		}
	}
}

// row is a landing's facts: all unknown but those given.
func row(t testing.TB, k *fact.Kind, given map[string]float64) []float64 {
	t.Helper()
	r := make([]float64, len(k.Slots))
	for i := range r {
		r[i] = math.NaN()
	}
	for name, v := range given {
		slot, ok := k.SlotOf(name)
		if !ok {
			t.Fatalf("no fact %s", name)
		}
		r[slot] = v
	}
	return r
}

// TestNothingUnknownPasses holds the expressions that expr's own machine lets
// pass without a word, and more of their sort. hole is 3 mm, end is unknown,
// angle is infinite, stay.break_load is 1e308 N, fitting.hidden is yes.
func TestNothingUnknownPasses(t *testing.T) {
	tests := []struct {
		expression string
		want       kleene
	}{
		{"end >= hole", unknown},
		{"end < hole", unknown},
		{"not (end < hole)", unknown},
		{"not (end >= hole)", unknown},
		{"hole / 0 >= '1.5 mm'", unknown},
		{"hole / 0 > '0 mm' or hole / 0 <= '0 mm'", unknown},
		{"7 / 0 > 1", unknown},
		{"0 / 0 > 1", unknown},
		{"0 ** -1 > 1", unknown},
		{"1 / (hole / 0) <= 5 / '1 mm'", unknown},
		{"max(end, hole) >= '1 mm'", unknown},
		{"max(hole, end) >= '1 mm'", unknown},
		{"min(end, hole) >= '1 mm'", unknown},
		{"min(hole, end) >= '1 mm'", unknown},
		{"min(hole, hole / 0) <= '3 mm'", unknown},
		{"abs(end) >= '0 mm'", unknown},
		{"-end <= hole", unknown},
		{"0 * end <= hole", unknown},
		{"end ** 0 <= 5", unknown},
		{"(end / '1 mm') ** 0 <= 5", unknown},
		{"hole ** 0 <= 5", yes},
		{"angle >= '1 deg'", unknown},
		{"1 / angle <= 1 / '1 deg'", unknown},
		{"min(angle, '1 deg') >= '1 deg'", unknown},
		{"2 * angle >= '1 deg'", unknown},
		{"angle - angle <= '0 deg'", unknown},
		{"stay.break_load * 10 > '1 N'", unknown},
		{"-10 * stay.break_load < '1 N'", unknown},
		{"stay.break_load + stay.break_load > '1 N'", unknown},
		{"-stay.break_load - stay.break_load < '1 N'", unknown},
		{"stay.break_load ** 2 > '1 N' ** 2", unknown},
		{"stay.break_load > -stay.break_load", yes}, // the difference overflows, the numbers don't
		{`fitting.state == "kept"`, unknown},
		{`fitting.state != "kept"`, unknown},
		{`fitting.state in ["kept", "new", "remade"]`, unknown},
		{`fitting.state not in ["kept"]`, unknown},
		{`not (fitting.state == "kept")`, unknown},
		{"stay.toggle", unknown},
		{"not stay.toggle", unknown},
		{"stay.toggle or not stay.toggle", unknown},
		{"stay.toggle ? hole > '1 mm' : hole > '2 mm'", unknown},
		{"(stay.toggle ? hole : '4 mm') > '1 mm'", unknown},
		{"fitting.hidden ? hole > '1 mm' : end > '1 mm'", yes},
		{"(fitting.hidden ? hole : end) > '1 mm'", yes},
		{"fitting.hidden or end > hole", yes},
		{"end > hole or fitting.hidden", yes},
		{"not fitting.hidden and end > hole", no},
		{"end > hole and not fitting.hidden", no},
		{"fitting.hidden and end > hole", unknown},
		{"'1 mm' < hole < '5 mm'", yes},
		{"'1 mm' < hole < '2 mm'", no},
		{"'1 mm' < end < '2 mm'", unknown},
		{"'5 mm' < hole < end", no},
	}
	k := catalogue(t).Kind("landing")
	facts := row(t, k, map[string]float64{"hole": 3, "angle": math.Inf(1), "stay.break_load": 1e308, "fitting.hidden": 1})
	for _, test := range tests {
		c, in := compileFor(k)
		j, ok := c.condition(in(test.expression))
		if !ok {
			t.Errorf("%s is refused: %s", test.expression, lines(c.problems.list))
			continue
		}
		if got := j.eval(&frame{facts: facts, sides: make([]side, len(c.compared))}); got != test.want {
			t.Errorf("%s is %v, want %v", test.expression, got, test.want)
		}
	}
}

// TestWhatIsLackingIsWhatMatters: of an undecided expression only those unknown
// facts are named that leave it undecided.
func TestWhatIsLackingIsWhatMatters(t *testing.T) {
	tests := []struct{ expression, want string }{
		{"end > hole", "end"},
		{"end > hole and not fitting.hidden or stay.toggle", "stay.toggle"},
		{"end > hole and fitting.hidden or stay.toggle", "end stay.toggle"},
		{"end > hole or pin_diameter > hole", "end pin_diameter"},
		{"(fitting.hidden ? end : pin_diameter) > hole", "end"},
		{"(stay.toggle ? end : pin_diameter) > hole", "stay.toggle"},
		{"(stay.toggle ? hole : hole) > end", "stay.toggle end"},
		{"max(end, 2 * hole, end) ** 2 > hole * pin_diameter", "end pin_diameter"},
		{`fitting.state in ["kept"] or fitting.kind == "tang"`, "fitting.state fitting.kind"},
		{"not (end > hole)", "end"},
		{"hole / 0 > hole", ""},
	}
	k := catalogue(t).Kind("landing")
	facts := row(t, k, map[string]float64{"hole": 3, "fitting.hidden": 1})
	for _, test := range tests {
		c, in := compileFor(k)
		j, ok := c.condition(in(test.expression))
		if !ok {
			t.Fatal(lines(c.problems.list))
		}
		f, got := &frame{facts: facts, sides: make([]side, len(c.compared))}, ""
		if j.eval(f) != unknown {
			t.Errorf("%s is decided", test.expression)
		}
		var s slots
		j.lacking(f, &s)
		for i, slot := range s {
			if i > 0 {
				got += " "
			}
			got += k.Slots[slot].Name
		}
		if got != test.want {
			t.Errorf("%s lacks %q, want %q", test.expression, got, test.want)
		}
	}
}
