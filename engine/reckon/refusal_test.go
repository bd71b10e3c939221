package reckon

import (
	"errors"
	"strings"
	"testing"
)

type group = map[string]any

// TestRefuses: what can't be is refused with the input's name and what would be right.
func TestRefuses(t *testing.T) {
	bolt1 := group{"x": "0 mm", "y": "0 mm"}
	for _, c := range []struct {
		formula string
		changes group
		says    string
	}{
		{"pin-plate", group{"thickness": "8"}, `thickness: 8 has no unit; write for example "8 mm" or "1/2 in"`},
		{"pin-plate", group{"thickness": "8 kN"}, "thickness: 8 kN is a force where a length belongs; write for example"},
		{"pin-plate", group{"thickness": "8 cubits"}, "thickness: cubits is not a unit known here"},
		{"pin-plate", group{"thickness": "nan mm"}, "thickness: "},
		{"pin-plate", group{"thickness": "1e308 mm"}, "thickness: 1e308 mm is too large to reckon with"},
		{"pin-plate", group{"thickness": "1e-300 mm"}, "thickness: 1e-300 mm is too small to reckon with"},
		{"pin-plate", group{"thickness": "1e999 mm"}, "thickness: 1e999 mm is too large"},
		{"pin-plate", group{"thickness": "-8 mm"}, "thickness: -8 mm is not more than 0 mm"},
		{"pin-plate", group{"thickness": "0 mm"}, "thickness: 0 mm is not more than 0 mm"},
		{"pin-plate", group{"thickness": ""}, "thickness: nothing is written"},
		{"pin-plate", group{"thickness": nil}, "thickness: it is missing (thickness of the plate); write for example"},
		{"pin-plate", group{"thickness": group{"x": "1 mm"}}, "thickness: one value belongs here"},
		{"pin-plate", group{"thickness": []any{"8 mm"}}, "thickness: one value belongs here"},
		{"pin-plate", group{"thicknes": "8 mm"}, `"thicknes" is no input of pin-plate; write thickness`},
		{"pin-plate", group{"zzz": "8 mm"}, `"zzz" is no input of pin-plate; write thickness, width, hole`},
		{"pin-plate", group{"end_radius": "-1 mm"}, "end_radius: -1 mm is less than 0 mm"},
		{"pin-plate", group{"pin": "17 mm"}, "pin: 17 mm is more than the hole, 16.3 mm"},
		{"pin-plate", group{"hole": "60 mm"}, "hole: 60 mm is not less than the width, 50 mm"},
		{"pin-plate", group{"end": "8 mm"}, "end: the hole of 16.3 mm breaks out of an end 8 mm"},
		{"pin-plate", group{"yield": "600 MPa"}, "yield: 600 MPa is more than the ultimate, 515 MPa"},
		{"pin", group{"gap": "-0.5 mm"}, "gap: -0.5 mm is less than 0 mm"},
		{"pin", group{"yield": "900 MPa"}, "yield: 900 MPa"},
		{"strip", group{"hole": "50 mm"}, "hole: 50 mm is not less than the width, 50 mm"},
		{"strip", group{"force": nil}, "force: it is missing"},
		{"stress-concentration", group{"kind": "opn"}, `kind: "opn" is not a word known here; write open`},
		{"stress-concentration", group{"hole": "50 mm"}, "hole: 50 mm is not less than the width"},
		{"bolt-group", group{"bolts": []any{bolt1, bolt1}}, "bolts: "},
		{"bolt-group", group{"bolts": []any{bolt1}}, "bolts: one bolt alone can't hold a moment"},
		{"bolt-group", group{"bolts": []any{}}, "bolts: the list is empty"},
		{"bolt-group", group{"bolts": "0 mm"}, "bolts: a list can't stand on the command line"},
		{"bolt-group", group{"bolts": []any{"0 mm"}}, `entry 1 of bolts: a group belongs here; write for example {"x": "0 mm", "y": "60 mm"}`},
		{"bolt-group", group{"bolts": []any{group{"x": "1 mm", "y": "0"}}}, "y of entry 1 of bolts: 0 has no unit"},
		{"bolt-group", group{"bolts": []any{group{"x": "1 mm", "y": "0 mm", "area": "0 mm2"}}}, "area of entry 1 of bolts: 0 mm2 is not more than 0 mm2"},
		{"bolt-group", group{"bolts": []any{group{"x": "1 mm", "z": "0 mm"}}}, `"z" is no part of entry 1 of bolts`},
		{"bolt-group", group{"bolts": []any{group{"x": "1 mm", "y": "0 mm", "area": "5 mm2"}, bolt1}}, "bolts: "},
		{"bolt-group", group{"force": group{"x": "1 kN"}}, "y of force: it is missing"},
		{"bolt-group", group{"force": "1 kN"}, "force: a group can't stand on the command line"},
		{"bolt-group", group{"method": "elastc"}, "write elastic"},
		{"bolt-group", group{"moment": "1e18 N mm"}, "moment: 1e18 N mm is too large"},
		{"bolt-pull", group{"normal_height": nil}, "normal_height: it is missing, and normal means nothing without it"},
		{"bolt-pull", group{"normal": nil}, "normal: it is missing, and normal_height means nothing without it"},
		{"bolt-pull", group{"rows": []any{group{"height": "30 mm", "bolts": "2.5"}}}, `bolts of entry 1 of rows: "2.5" is no whole number`},
		{"bolt-pull", group{"rows": []any{group{"height": "30 mm", "bolts": "0"}}}, "bolts of entry 1 of rows: there must be one at least"},
		{"bolt-pull", group{"rows": []any{group{"height": "0 mm", "bolts": "2"}}}, "rows: no row stands above the heeling edge"},
		{"bolt-pull", group{"rows": []any{group{"height": "5 mm", "bolts": "1"}, group{"height": "5 mm", "bolts": "1"}}}, "rows: rows 1 and 2 are at one height"},
		{"bolt", group{"thread": "M7"}, `thread: no thread is called "M7"; the nearest`},
		{"bolt", group{"grade": "A4-71"}, `grade: no bolt grade is called "A4-71"; the nearest`},
		{"bolt", group{"threads_in_plane": "maybe"}, `threads_in_plane: "maybe" is neither yes nor no`},
		{"bolt", group{"thread": " "}, "thread: nothing is written where a name belongs"},
		{"host", group{"kind": "plywod"}, "write plywood"},
		{"host", group{"kind": "cork"}, "write plywood, softwood, solid timber, hardwood, laminate, cored or metal"},
		{"host", group{"kind": "hardwood", "density": nil}, "density: it is missing, and hardwood differs too much"},
		{"host", group{"density": "0 kg/m3"}, "density: 0 kg/m3 is not more than 0"},
		{"host", group{"density": "450 kg"}, "density: 450 kg is a mass where a density belongs"},
		{"host", group{"count": "04"}, "count: 04 could be meant in more than one way"},
		{"host", group{"count": "99999999999999999999"}, "count: "},
		{"host", group{"count": "-1"}, `count: "-1" is no whole number`},
		{"wire", group{"construction": "1x18"}, `construction: no wire construction is called "1x18"; the nearest is 1x19`},
		{"wire", group{"metal": "cheese"}, `metal: no wire metal is called "cheese"`},
		{"wire", group{"diameter": "0 mm"}, "diameter: 0 mm is not more than 0 mm"},
		{"pitting-resistance", group{"cr": "17"}, `cr: 17 is more than the whole; write for example "17 %"`},
		{"pitting-resistance", group{"mo": "-2 %"}, "mo: -2 % is less than nothing"},
		{"pitting-resistance", group{"n": "3 mm"}, "n: "},
		{"pitting-resistance", group{"cr": "60 %", "mo": "60 %"}, "cr: chromium, molybdenum and nitrogen add up to more than the whole"},
		{"couple", group{"a": "silicon bronz"}, `a: no metal of the galvanic series is called "silicon bronz"; the nearest is silicon bronze`},
		{"couple", group{"b": "wood"}, `b: no metal of the galvanic series is called "wood"`},
		{"couple", group{"exposure": "damp"}, "exposure: "},
		{"couple", group{"area_b": nil}, "area_b: it is missing, and area_a means nothing without it"},
		{"couple", group{"area_a": "0 cm2"}, "area_a: 0 cm2 is not more than 0 mm2"},
	} {
		f, err := Find(c.formula)
		if err != nil {
			t.Fatal(err)
		}
		a, err := Run(c.formula, with(t, f, c.changes))
		var refusal *Refusal
		if !errors.As(err, &refusal) || !strings.Contains(err.Error(), c.says) || a.Covered {
			t.Errorf("%s with %v: %v; want %s", c.formula, c.changes, err, c.says)
		}
	}
}

// TestRefusesNull: null is never taken for a value that was left out.
func TestRefusesNull(t *testing.T) {
	f, _ := Find("pin-plate")
	given := append(with(t, f, group{"end_radius": nil}), Member{Name: "end_radius", Value: Value{Kind: Nothing, At: "standard input:1:5"}})
	_, err := Run(f.Name, given)
	if err == nil || !strings.HasPrefix(err.Error(), "standard input:1:5: end_radius: null says nothing") || !strings.HasSuffix(err.Error(), "or leave it out") {
		t.Error(err)
	}
}

// TestRefusesTwice: no input counts twice, however it is spelled.
func TestRefusesTwice(t *testing.T) {
	f, _ := Find("pin-plate")
	_, err := Run(f.Name, append(with(t, f, nil), Member{Name: "End-Radius", Value: Value{Text: "1 mm"}}))
	if err == nil || err.Error() != "end_radius: it is given twice; write it once" {
		t.Error(err)
	}
}

// TestRefusesAllAtOnce: all problems are said, not only the first, and a misspelt
// input is not also called missing.
func TestRefusesAllAtOnce(t *testing.T) {
	f, _ := Find("pin")
	_, err := Run(f.Name, with(t, f, group{"gap": "1", "cheek": nil, "cheak": "6 mm", "force": nil}))
	var refusal *Refusal
	if !errors.As(err, &refusal) || len(refusal.Problems) != 3 {
		t.Errorf("%v", err)
	}
}

// TestNotCovered: inputs that make sense and are out of reach have no number.
func TestNotCovered(t *testing.T) {
	var many []any
	for i := range mostThings + 1 {
		many = append(many, group{"x": "0 mm", "y": strings.Repeat("1", i/100+1) + "0 mm"})
	}
	for _, c := range []struct {
		formula string
		changes group
		says    string
	}{
		{"pin-plate", group{"end_radius": "2 mm"}, "does not reach the shear planes"},
		{"stress-concentration", group{"hole": "30 mm"}, "beyond the curve"},
		{"stress-concentration", group{"hole": "5 mm", "kind": "pin"}, "outside the curve"},
		{"bolt-group", group{"bolts": many}, "501 bolts are more than the 500"},
		{"bolt-group", group{"method": "instantaneous-centre", "force": group{"x": "0 N", "y": "0 N"}, "moment": "1 kN m"}, "needs a force"},
		{"bolt-group", group{"method": "instantaneous-centre", "bolts": []any{group{"x": "0 mm", "y": "0 mm", "area": "50 mm2"}, group{"x": "60 mm", "y": "0 mm", "area": "60 mm2"}}}, "like bolts only"},
		{"bolt-pull", group{"rows": []any{group{"height": "30 mm", "bolts": "900"}}}, "900 bolts"},
		{"bolt", group{"pull": "90 kN"}, "above what the bolt holds"},
		{"bolt", group{"grade": "F593G", "thread": "M24"}, "holds for bolts of"},
		{"host", group{"kind": "cored"}, "a cored host is not covered"},
		{"host", group{"kind": "metal"}, "a host of metal is not covered"},
		{"host", group{"density": "150 kg/m3"}, "is not covered: 200 to 1000"},
		{"host", group{"bolt": "4 mm"}, "is not covered: 6 to 30"},
		{"host", group{"count": "900"}, "900 bolts"},
		{"wire", group{"diameter": "40 mm"}, "the table has no 1x19 wire of 316 at 40 mm"},
		{"pitting-resistance", group{"cr": "5 %"}, "is not a stainless steel's"},
	} {
		f, _ := Find(c.formula)
		a, err := Run(c.formula, with(t, f, c.changes))
		if err != nil || a.Covered || !strings.Contains(a.Why, c.says) || len(a.Results) != 0 || len(a.Working) != 0 {
			t.Errorf("%s with %v: %v, covered %v, %q; want %s", c.formula, c.changes, err, a.Covered, a.Why, c.says)
		}
	}
}
