package table

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"chainwale/engine/working"
)

// must stops a test on an error that can only be a fault of the table.
func must[T any](v T, err error) func(*testing.T) T {
	return func(t *testing.T) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// TestEveryRowHasASource holds that no row of any table lacks a title behind it
// and a word on how it is known.
func TestEveryRowHasASource(t *testing.T) {
	seen := map[string][]working.Source{}
	for _, m := range must(Metals())(t) {
		seen["metals"] = append(seen["metals"], m.Strength, m.Elastic)
		for _, part := range []struct {
			value float64
			from  working.Source
		}{{m.UltimateMax, m.MaxStrength}, {m.Elongation, m.Stretch}, {m.CrMin, m.Chemistry}, {m.CarbonMax, m.Carbon}} {
			if given := part.value == part.value; given {
				seen["metals"] = append(seen["metals"], part.from)
			}
		}
	}
	for _, g := range must(GalvanicSeries())(t) {
		seen["galvanic"] = append(seen["galvanic"], g.Source)
	}
	for _, w := range must(Wires())(t) {
		seen["wire"] = append(seen["wire"], w.Source)
	}
	all := must(wires())(t)
	for _, b := range all.bands {
		seen["wire bands"] = append(seen["wire bands"], b.source)
	}
	for _, b := range all.builds {
		seen["wire builds"] = append(seen["wire builds"], b.Source, b.Moduli)
	}
	for _, r := range must(Threads())(t) {
		seen["threads"] = append(seen["threads"], r.Source)
	}
	for _, g := range must(BoltGrades())(t) {
		seen["grades"] = append(seen["grades"], g.Source)
	}
	for _, p := range must(ClevisPins())(t) {
		seen["pins"] = append(seen["pins"], p.Source)
	}
	for _, l := range must(Lines())(t) {
		seen["lines"] = append(seen["lines"], l.Source, l.Stiffness, l.Creep)
	}
	for _, e := range must(LineEnds())(t) {
		seen["line ends"] = append(seen["line ends"], e.Source)
	}
	for _, b := range must(LineBends())(t) {
		seen["line bends"] = append(seen["line bends"], b.Source)
	}
	for _, s := range must(SparAlloys())(t) {
		seen["spars"] = append(seen["spars"], s.Source, s.WeldSource)
	}
	for _, d := range must(Drags())(t) {
		seen["drag"] = append(seen["drag"], d.Source)
	}
	for _, p := range must(Permissibles())(t) {
		seen["permissible"] = append(seen["permissible"], p.Source)
	}
	for name, rows := range seen {
		if len(rows) < 3 {
			t.Errorf("table %s gave only %d sources", name, len(rows))
		}
		for i, s := range rows {
			if s.Title == "" || s.For == "" || !slices.Contains(working.AllHowKnown(), s.As) {
				t.Errorf("table %s, source %d is incomplete: %+v", name, i, s)
			}
		}
	}
	if len(seen) != 14 {
		t.Errorf("looked at %d tables, there are 14", len(seen))
	}
}

func TestEverySourceIsUsedOnce(t *testing.T) {
	for key, s := range must(sources())(t) {
		if strings.TrimSpace(s.Title) == "" {
			t.Errorf("source %s has no title", key)
		}
	}
	used := map[string]bool{}
	for _, file := range []string{"metals.csv", "galvanic.csv", "wire.csv", "wire_bands.csv", "wire_builds.csv", "threads.csv", "grades.csv", "pins.csv",
		"lines.csv", "line_ends.csv", "line_bends.csv", "spars.csv", "drag.csv", "permissible.csv"} {
		s := must(readSheet(file))(t)
		for _, cells := range s.rows {
			used[cells[s.column["source"]]] = true
			for _, head := range []string{"modulus_source", "stiffness_source", "creep_source", "weld_source"} {
				if i, ok := s.column[head]; ok {
					used[cells[i]] = true
				}
			}
		}
	}
	for key := range must(sources())(t) {
		if !used[key] {
			t.Errorf("source %s stands behind no row", key)
		}
	}
}

func TestUnknownNameSaysWhatIsNear(t *testing.T) {
	_, err := MetalNamed("361L")
	var unknown *UnknownName
	if !errors.As(err, &unknown) {
		t.Fatalf("got %v, want an unknown name", err)
	}
	if !slices.Contains(unknown.Near, "316L") {
		t.Errorf("316L is not among the nearest: %v", unknown.Near)
	}
	if want := `no metal is called "361L"; the nearest`; !strings.HasPrefix(err.Error(), want) {
		t.Errorf("got %q, want it to begin with %q", err, want)
	}
	long, err := MetalNamed(strings.Repeat("x", 1_000_000))
	if err == nil || len(err.Error()) > 400 || long.Name != "" {
		t.Errorf("a name of a million letters gave %d letters of error", len(err.Error()))
	}
}

func TestUnknownNameInWords(t *testing.T) {
	for _, c := range []struct {
		near []string
		want string
	}{
		{nil, `no thread is called "M11"`},
		{[]string{"M10"}, `no thread is called "M11"; the nearest is M10`},
		{[]string{"M10", "M12"}, `no thread is called "M11"; the nearest are M10 and M12`},
	} {
		if got := (&UnknownName{What: "thread", Name: "M11", Near: c.near}).Error(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

// TestBrokenTableIsAnError holds that a fault in a file is found when it is read.
func TestBrokenTableIsAnError(t *testing.T) {
	s := &sheet{name: "made.csv", column: map[string]int{"id": 0, "known": 1, "n": 2}}
	r := &row{sheet: s, cells: []string{"a", "perhaps", "12x"}}
	r.known("known")
	if r.err == nil || !strings.Contains(r.err.Error(), "made.csv, row a, column known") {
		t.Errorf("a word outside the vocabulary gave %v", r.err)
	}
	for _, head := range []string{"n", "nowhere"} {
		r = &row{sheet: s, cells: []string{"a", "", "12x"}}
		if r.needed(head); r.err == nil {
			t.Errorf("column %s: no error", head)
		}
	}
	if _, err := readSheet("nowhere.csv"); err == nil {
		t.Error("a missing file gave no error")
	}
}
