package iso12215

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"chainwale/engine/fact"
	"chainwale/engine/standard"
	"chainwale/plugins/clauses/clausetest"
)

// invented are values that nobody read anywhere.
const invented = `# invented for tests: these are not the standard's values
standard: iso-12215-10
edition: "2020"
roles:
  cap shroud:
    design_load: { value: 20 kN, clause: "1.1" }
    plate_factor: { value: 2.5, clause: table 1 }
    pin_factor: { value: 3, clause: table 2 }
  backstay:
    design_load: { value: 4000 lbf, clause: "1.2" }
`

func with(t *testing.T, text string) (standard.Standard, string, error) {
	t.Helper()
	name := filepath.Join(t.TempDir(), "values.yaml")
	if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	s, err := Standard(name)
	return s, name, err
}

func theStandard(t *testing.T, text string) standard.Standard {
	t.Helper()
	s, _, err := with(t, text)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestDeclaration(t *testing.T) { clausetest.Coverage(t, theStandard(t, invented), ".") }

func TestPack(t *testing.T) {
	clausetest.Texts(t, theStandard(t, invented))
	clausetest.Pack(t, theStandard(t, invented))
}

var shroud = clausetest.Facts{"stay.role": "cap shroud", "plate_ultimate": 44e3, "pin_shear": 66e3, "pin_bending": 58e3}

func TestFactors(t *testing.T) {
	a := clausetest.Landing(t, theStandard(t, invented), shroud)
	a.Near("design_load", 20e3, 1e-12)
	a.Near("plate_factor", 2.2, 1e-12)
	a.Near("plate_factor_asked", 2.5, 1e-12)
	a.Near("pin_factor", 2.9, 1e-12)
	a.Near("pin_factor_asked", 3, 1e-12)
	a.Shown()
	for _, s := range clausetest.Steps(t, theStandard(t, invented), "landing", "plate_factor_asked", shroud) {
		if s.Source.Clause != "table 1" || s.Source.Edition != "2020" || !strings.Contains(s.Formula, "values.yaml:7:28") {
			t.Errorf("the step does not name the file's place and clause: %+v", s)
		}
	}
	weak := clausetest.Landing(t, theStandard(t, invented), shroud.With(clausetest.Facts{"pin_shear": 30e3}))
	weak.Near("pin_factor", 1.5, 1e-12)
}

// TestRoles: what the file does not give is not covered, and says which.
func TestRoles(t *testing.T) {
	s := theStandard(t, invented)
	back := clausetest.Landing(t, s, shroud.With(clausetest.Facts{"stay.role": "backstay"}))
	back.Near("design_load", 4000*4.4482216152605, 1e-12)
	if back.Fact("plate_factor") <= 0 {
		t.Error("the backstay has no factor")
	}
	back.Refuses("plate_factor_asked", "no factor of the plate for the role backstay")
	bob := clausetest.Landing(t, s, shroud.With(clausetest.Facts{"stay.role": "bobstay"}))
	for _, fact := range []string{"design_load", "plate_factor", "pin_factor"} {
		bob.Refuses(fact, "for the role bobstay")
	}
	clausetest.Landing(t, s, shroud.With(clausetest.Facts{"plate_ultimate": 0.0})).Refuses("plate_factor", "above 0 N")
	nobody := clausetest.Ask(t, s, "landing", shroud.With(clausetest.Facts{"stay.role": nil}))
	if len(nobody.Known) > 0 || len(nobody.Refused) > 0 {
		t.Errorf("without a role %v is known and %v refused", nobody.Known, nobody.Refused)
	}
}

// TestNoFile: without values every clause says so, and none is known.
func TestNoFile(t *testing.T) {
	for _, file := range []string{"", filepath.Join(t.TempDir(), "none.yaml")} {
		s, err := Standard(file)
		if err != nil {
			t.Fatal(err)
		}
		a := clausetest.Landing(t, s, shroud)
		if len(a.Known) > 0 {
			t.Errorf("%v is known without values", a.Known)
		}
		for _, fact := range []string{"design_load", "plate_factor", "plate_factor_asked", "pin_factor", "pin_factor_asked"} {
			a.Refuses(fact, "are licensed and none come with the program: give a file of yours")
			if file != "" {
				a.Refuses(fact, "none.yaml is not there")
			}
		}
		clausetest.Coverage(t, s, ".")
		clausetest.Pack(t, s)
	}
}

// TestBadFiles: each fault has its place and what would be right.
func TestBadFiles(t *testing.T) {
	change := func(from, to string) string {
		if !strings.Contains(invented, from) {
			t.Fatalf("%q is not in the file", from)
		}
		return strings.Replace(invented, from, to, 1)
	}
	for _, c := range []struct{ name, text, at, says string }{
		{"no unit", change("20 kN", "20"), ":6:", "unit"},
		{"another unit", change("20 kN", "20 mm"), ":6:", ""},
		{"nothing", change("20 kN", "0 kN"), ":6:", "more than 0 N"},
		{"not a number", change("20 kN", ".nan kN"), ":6:", ""},
		{"factor with a unit", change("2.5", "2.5 kN"), ":7:", ""},
		{"infinite factor", change("2.5", ".inf"), ":7:", ""},
		{"no clause", change(", clause: table 1", ""), ":7:", "clause"},
		{"empty clause", change("clause: table 1", "clause:"), ":7:", "clause"},
		{"unknown key", change("plate_factor", "plate_facto"), ":7:", "plate_facto"},
		{"unknown role", change("cap shroud", "cap shrowd"), ":5:", "cap shrowd"},
		{"role twice", change("backstay:", "cap shroud:"), ":9:", "cap shroud"},
		{"no load", change("    design_load: { value: 4000 lbf, clause: \"1.2\" }\n", "    plate_factor: { value: 2, clause: a }\n"), ":9:", "design_load"},
		{"another standard", change("iso-12215-10", "iso-12215-5"), ":2:", "iso-12215-5"},
		{"no edition", change("edition: \"2020\"\n", ""), ":2:1", "has no edition"},
		{"no roles", "standard: iso-12215-10\nedition: 2020\n", ":1:", "roles"},
		{"a list", change("{ value: 20 kN, clause: \"1.1\" }", "[20 kN]"), ":6:", ""},
		{"an anchor", change("{ value: 20 kN", "&a { value: 20 kN"), ":6:", ""},
		{"broken", "standard: [", ":2:1", "missing or misplaced"},
		{"empty", "", ":1:1", "empty"},
		{"bytes", "standard: \xff", ":1:", "UTF-8"},
		{"too large", strings.Repeat("# long\n", 200_000), ":1:1", "1 MB"},
	} {
		_, name, err := with(t, c.text)
		var bad *BadFile
		if !errors.As(err, &bad) {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if !strings.HasPrefix(err.Error(), name+c.at) || !strings.Contains(err.Error(), c.says) || bad.Problems[0].Message == "" {
			t.Errorf("%s: want %s and %q in %s", c.name, c.at, c.says, strings.TrimPrefix(err.Error(), name))
		}
	}
	if _, err := Standard(t.TempDir()); err == nil || !strings.Contains(err.Error(), "can't be read: it is no ordinary file") {
		t.Errorf("a folder is read as a file of values: %v", err)
	}
}

// TestSeveralFaults: all of them are had at once.
func TestSeveralFaults(t *testing.T) {
	_, _, err := with(t, strings.NewReplacer("20 kN", "20", "2.5", "two").Replace(invented))
	var bad *BadFile
	if !errors.As(err, &bad) || len(bad.Problems) != 2 || !strings.Contains(err.Error(), "(and 1 more)") {
		t.Errorf("%v", err)
	}
}

// TestJSON: the file may be JSON.
func TestJSON(t *testing.T) {
	name := filepath.Join(t.TempDir(), "values.json")
	text := `{"standard": "iso-12215-10", "edition": "2020", "roles": {"forestay": {"design_load": {"value": "30 kN", "clause": "1"}}}}`
	if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	s, err := Standard(name)
	if err != nil {
		t.Fatal(err)
	}
	clausetest.Landing(t, s, shroud.With(clausetest.Facts{"stay.role": "forestay"})).Near("design_load", 30e3, 1e-12)
}

// TestDeclaresItsValues: a report names the hash of what a standard declares, so
// other values must declare something else, and the same ones the same.
func TestDeclaresItsValues(t *testing.T) {
	hash := func(text string) string {
		d, err := theStandard(t, text).Describe(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		return d.Hash()
	}
	if hash(invented) != hash(invented) || hash(invented) == hash(strings.Replace(invented, "2.5", "2.6", 1)) {
		t.Error("the declaration does not follow the values")
	}
}

// TestRolesAreThePlans holds that the file knows the roles that a plan knows.
func TestRolesAreThePlans(t *testing.T) {
	c, err := fact.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	k := c.Kind("stay")
	slot, ok := k.SlotOf("role")
	if !ok {
		t.Fatal("a stay has no role")
	}
	var text strings.Builder
	text.WriteString("standard: iso-12215-10\nedition: 2020\nroles:\n")
	roles := slices.Clone(k.Slots[slot].Column.Words)
	for _, role := range roles {
		text.WriteString("  " + role + ": { design_load: { value: 1 kN, clause: a } }\n")
	}
	v, err := read("all.yaml", []byte(text.String()))
	if err != nil || len(v.roles) != len(roles) || len(roles) < 10 {
		t.Errorf("%d roles of %d: %v", len(v.roles), len(roles), err)
	}
}
