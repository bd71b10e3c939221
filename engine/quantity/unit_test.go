package quantity

import (
	"slices"
	"strings"
	"testing"
)

// Every row must be sound in itself: one meaning a spelling, a source, and of
// every dimension the canonical unit, which changes nothing.
func TestTableOfUnits(t *testing.T) {
	seen := map[string]bool{}
	for i := range units {
		u := &units[i]
		if u.source == "" || u.times <= 0 || u.over <= 0 || !slices.Contains(Named(), u.dimension) {
			t.Errorf("%s is not complete", u.name())
		}
		for _, s := range u.spellings {
			if seen[s] {
				t.Errorf("%s stands twice", s)
			}
			seen[s] = true
			if tidyUnit(s) != s {
				t.Errorf("%s would be tidied to %s", s, tidyUnit(s))
			}
		}
	}
	for _, d := range Named() {
		if d == Bare {
			continue
		}
		if u := spelled[d.Unit()]; u == nil || u.dimension != d || u.times != u.over || u.zero != 0 {
			t.Errorf("%s is not the canonical unit of %s", d.Unit(), d.Name())
		}
	}
}

// Where capital letters are said to be harmless, no other unit may be spelled
// alike but for them.
func TestHarmlessCapitals(t *testing.T) {
	for i := range units {
		for _, s := range units[i].spellings {
			if !units[i].loose && !isWord(s) {
				continue
			}
			for _, other := range caseless[strings.ToLower(s)] {
				if spelled[other] != &units[i] {
					t.Errorf("%s may be taken for %s", s, other)
				}
			}
			if u := find(strings.ToUpper(s)); u != &units[i] {
				t.Errorf("%s in capitals is not found", s)
			}
		}
	}
	for _, s := range []string{"MM", "KN", "Mm", "mpa", "Kg", "v", "k", "n", "MV", "M", "CM", "G", "T"} {
		if u := find(s); u != nil {
			t.Errorf("%s is taken for %s", s, u.name())
		}
	}
}

// Hints must lead to units and must not hide one; so must confusions.
func TestHintsLeadToUnits(t *testing.T) {
	for word, h := range hints {
		if find(word) != nil {
			t.Errorf("%s is a unit and needs no hint", word)
		}
		if tidy := strings.ToLower(tidyUnit(word)); tidy != word {
			t.Errorf("the hint %q is never found, it would be looked up as %q", word, tidy)
		}
		for _, m := range h.meant {
			if spelled[m] == nil {
				t.Errorf("%s leads to %s, which is no unit", word, m)
			}
		}
	}
	for name, others := range confusions {
		if spelled[name] == nil || spelled[name].name() != name {
			t.Errorf("%s is not a unit's first spelling", name)
		}
		for _, o := range others {
			if spelled[o] == nil || spelled[o].dimension == spelled[name].dimension {
				t.Errorf("%s can't be meant by %s", o, name)
			}
		}
	}
}

// The constants that formulas use are those that plans are read with.
func TestConstants(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64
	}{
		{"1 day", Day}, {"1 s", Second}, {"1 m/s", MetrePerSecond}, {"1 kn", Knot}, {"1 kg/m3", KilogramPerCubicMetre}, {"1 kg/m", KilogramPerMetre},
	} {
		if q, err := Parse(c.text); err != nil || q.Value != c.want {
			t.Errorf("%s is %v, want %v", c.text, q.Value, c.want)
		}
	}
}
