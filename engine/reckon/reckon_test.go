package reckon

import (
	"bytes"
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"testing"

	"chainwale/engine/quantity"
	"chainwale/engine/working"
)

// promised are the names that scripts hang on: formulas, inputs (? for one that may
// be left out) and results.
var promised = map[string][2]string{
	"bolt-group":           {"bolts force at moment? method?", "bolts largest coefficient?"},
	"bolt-pull":            {"rows force arm normal? normal_height?", "heel centroid largest"},
	"pin-plate":            {"thickness width hole pin end end_radius? yield ultimate", "net single_plane double_plane bearing ultimate governs"},
	"pin":                  {"diameter force plate cheek gap yield ultimate", "shear bending moment"},
	"strip":                {"thickness width hole? offset? force yield ultimate", "gross net first_yield plastic"},
	"stress-concentration": {"width hole kind", "net_factor"},
	"bolt":                 {"thread grade threads_in_plane pull?", "area shear tension together"},
	"host":                 {"kind density? thickness bolt plate count", "embedment capacity mode"},
	"wire":                 {"construction metal diameter", "break_load how"},
	"pitting-resistance":   {"cr mo n", "pren"},
	"couple":               {"a b area_a? area_b? exposure", "difference worst anode verdict"},
	"shrouds":              {"half_beam levels", "levels moment_residual"},
	"standing":             {"stays", "worst direction holds"},
	"righting-moment":      {"mass gm? weight? distance? heel?", "rm30 how"},
	"lashing":              {"line_break parts splice_or_knot pin rope", "break_load factors"},
	"windage":              {"diameter length wind gust?", "drag force moment"},
	"stay-angle":           {"x y z height", "angle horizontal_share"},
	"tension-by-stretch":   {"construction metal diameter gauge_length stretch", "tension share_of_break"},
	"bend":                 {"thickness radius angle k?", "allowance outside_setback deduction k"},
	"springback":           {"thickness radius angle yield elastic_modulus", "form_angle form_radius ratio"},
	"press-force":          {"thickness length die ultimate method?", "force"},
	"min-radius":           {"metal thickness grain", "radius"},
	"hole-to-bend":         {"thickness radius angle die", "distance"},
}

func TestNamesStayAsPromised(t *testing.T) {
	if len(promised) != len(Names()) {
		t.Errorf("%d formulas, %d promised", len(Names()), len(promised))
	}
	for _, f := range Formulas() {
		var inputs, results []string
		for _, i := range f.Inputs {
			inputs = append(inputs, mark(i.Name, i.Optional))
		}
		for _, o := range f.Results {
			results = append(results, mark(o.Name, o.Sometimes))
		}
		if got := [2]string{strings.Join(inputs, " "), strings.Join(results, " ")}; got != promised[f.Name] {
			t.Errorf("%s: %q, promised %q", f.Name, got, promised[f.Name])
		}
		if f.Title == "" || f.Holds == "" {
			t.Errorf("%s says too little of itself", f.Name)
		}
	}
}

func mark(name string, optional bool) string {
	if optional {
		return name + "?"
	}
	return name
}

// TestExamples: the example of every formula works, with results in the declared
// order and sources behind every step; the same again gives the same bytes.
func TestExamples(t *testing.T) {
	for _, f := range Formulas() {
		a, err := Run(f.Name, mustMembers(t, f.ExampleJSON()))
		if err != nil || !a.Covered || a.Why != "" {
			t.Errorf("%s: %v %s", f.Name, err, a.Why)
			continue
		}
		checkSteps(t, f.Name, a.Working)
		var order []string
		for _, r := range a.Results {
			order = append(order, r.Name)
		}
		for i, o := range slices.DeleteFunc(slices.Clone(f.Results), func(o Output) bool { return o.Sometimes }) {
			if i >= len(order) || order[i] != o.Name {
				t.Errorf("%s: results are %v", f.Name, order)
			}
		}
		var first, second bytes.Buffer
		again, _ := Run(f.Name, mustMembers(t, f.ExampleJSON()))
		if errors.Join(a.JSON(&first), again.JSON(&second)) != nil || first.String() != second.String() {
			t.Errorf("%s: the same inputs give other bytes", f.Name)
		}
		checkKeys(t, f.Name, first.Bytes())
	}
}

func checkSteps(t *testing.T, name string, steps []Step) {
	t.Helper()
	if len(steps) == 0 {
		t.Errorf("%s shows no working", name)
	}
	for _, s := range steps {
		if s.Symbol == "" || s.Formula == "" || s.Source == "" || s.Meaning == "" || !slices.Contains(working.AllHowKnown(), s.Known) || strings.Contains(s.Source, "("+string(s.Known)+")") {
			t.Errorf("%s: step %+v is incomplete", name, s)
		}
	}
}

// checkKeys holds the JSON to the keys that scripts read.
func checkKeys(t *testing.T, name string, text []byte) {
	t.Helper()
	var answer map[string]json.RawMessage
	var steps []map[string]any
	if err := errors.Join(json.Unmarshal(text, &answer), json.Unmarshal(answer["working"], &steps)); err != nil {
		t.Fatal(err)
	}
	if got := keys(answer); got != "covered name results why working" {
		t.Errorf("%s: the answer has the keys %s", name, got)
	}
	for _, s := range steps {
		if got := keys(s); got != "formula inputs known source symbol unit value" {
			t.Errorf("%s: a step has the keys %s", name, got)
		}
	}
}

func keys[V any](m map[string]V) string {
	var names []string
	for name := range m {
		names = append(names, name)
	}
	slices.Sort(names)
	return strings.Join(names, " ")
}

func TestFind(t *testing.T) {
	for _, name := range []string{"bolt-group", "bolt group", "Bolt_Group"} {
		if f, err := Find(name); err != nil || f.Name != "bolt-group" {
			t.Errorf("%q: %v", name, err)
		}
	}
	for name, says := range map[string]string{"pin-plat": "write pin-plate", "": "no formula is named", "zzzzzz": "bolt-pull", strings.Repeat("x", 1<<20): "…"} {
		if _, err := Find(name); err == nil || !strings.Contains(err.Error(), says) || len(err.Error()) > 400 {
			t.Errorf("%.20q: %.400v", name, err)
		}
	}
}

// TestSpellings: names of inputs and words may be spelled with blanks, hyphens or
// underscores, and units in any way that quantities know.
func TestSpellings(t *testing.T) {
	a, err := Run("pin plate", mustMembers(t, `{"Thickness": "8mm", "width": "50 mm", "hole": "16.3 mm", "pin": "1.6 cm", "end": "25 mm", "end-radius": "25 mm", "yield": "205 N/mm2", "ultimate": "0.515 GPa"}`))
	if err != nil || !a.Covered {
		t.Fatalf("%v %s", err, a.Why)
	}
	b, _ := Run("pin-plate", mustMembers(t, pinPlate.ExampleJSON()))
	if a.Results[0].Value != b.Results[0].Value {
		t.Errorf("%v is not %v", a.Results[0], b.Results[0])
	}
}

// TestText: the results come before the working, and the caution stands last.
func TestText(t *testing.T) {
	a, err := Run("wire", mustMembers(t, wire.ExampleJSON()))
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	if err := a.Text(&b, quantity.US); err != nil {
		t.Fatal(err)
	}
	text := b.String()
	load, steps := strings.Index(text, "10230 lbf"), strings.Index(text, "Working")
	if load < 0 || steps < load || !strings.HasSuffix(text, Caution+"\n") {
		t.Errorf("%s", text)
	}
	for _, line := range strings.Split(text, "\n") {
		if len([]rune(line)) > width {
			t.Errorf("%d characters: %s", len([]rune(line)), line)
		}
	}
}

func TestDigits(t *testing.T) {
	for v, want := range map[float64]string{0: "0", 115703.33: "115700", 0.85203: "0.85203", -1687.5: "-1687.5", 1e-9: "1e-09", 2.5e12: "2.5e+12"} {
		if got := digits(v); got != want {
			t.Errorf("%g is printed %s, want %s", v, got, want)
		}
	}
}
