package near

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestWords(t *testing.T) {
	facts := []string{"plate_ultimate", "plate_net", "stay.break_load", "stay.diameter", "fitting.thickness", "thickness", "width"}
	for _, c := range []struct {
		word       string
		candidates []string
		most       int
		want       []string
	}{
		{"plate_ultimat", facts, 3, []string{"plate_ultimate"}},
		{"plate-ultimate", facts, 3, []string{"plate_ultimate"}},
		{"Plate Ultimate", facts, 3, []string{"plate_ultimate"}},
		{"palte_net", facts, 3, []string{"plate_net"}},
		{"break_load", facts, 3, []string{"stay.break_load"}},
		{"brake_load", facts, 3, []string{"stay.break_load"}},
		{"thicknes", facts, 3, []string{"thickness", "fitting.thickness"}},
		{"thicknes", facts, 1, []string{"thickness"}},
		{"widht", facts, 3, []string{"width"}},
		{"colour", facts, 3, nil},
		{"", facts, 3, nil},
		{"width", facts, 0, nil},
		{"width", nil, 3, nil},
		{"MM", []string{"cm", "mm", "m"}, 3, []string{"mm", "cm", "m"}},
		{"KN", []string{"kn", "kN"}, 2, []string{"kN", "kn"}},
		{"ab", []string{"xy", "cd"}, 3, nil},
		{"x", []string{"y", "z"}, 3, nil},
		{"wdth", []string{"width", "width"}, 3, []string{"width"}},
		{"größe", []string{"grösse", "größen"}, 3, []string{"größen", "grösse"}},
	} {
		got := Words(c.word, c.candidates, c.most)
		if !slices.Equal(got, c.want) {
			t.Errorf("Words(%q, %d) = %q, want %q", c.word, c.most, got, c.want)
		}
	}
}

// A long word must not cost time: nothing is as long, so nothing is compared.
func TestWordsOfHostileLength(t *testing.T) {
	if got := Words(strings.Repeat("a", 1<<20), []string{"a", "plate_net", "stay.break_load"}, 3); len(got) != 0 {
		t.Errorf("got %q", got)
	}
}

func TestEdits(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"", "abc", 3}, {"abc", "abc", 0}, {"abc", "acb", 1}, {"abc", "abd", 1},
		{"kitten", "sitting", 3}, {"ca", "abc", 3}, {"port", "prot", 1},
	} {
		if got := edits([]rune(c.a), []rune(c.b)); got != c.want {
			t.Errorf("edits(%q, %q) = %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

var letters = rapid.StringMatching(`[a-c_. ]{0,8}`)

// Edits are the same there and back, nought only for equal words, and never
// fewer than the difference in length.
func TestEditsIsADistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := []rune(letters.Draw(t, "a")), []rune(letters.Draw(t, "b"))
		d := edits(a, b)
		if back := edits(b, a); d != back {
			t.Fatalf("%d there, %d back", d, back)
		}
		if (d == 0) != slices.Equal(a, b) {
			t.Fatalf("distance %d", d)
		}
		if d < max(len(a), len(b))-min(len(a), len(b)) || d > max(len(a), len(b)) {
			t.Fatalf("distance %d of lengths %d and %d", d, len(a), len(b))
		}
	})
}

// The answer does not hang on the order of the candidates, holds no stranger,
// none twice and no more than asked for.
func TestWordsIsOrderly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := letters.Draw(t, "word")
		candidates := rapid.SliceOfN(letters, 0, 12).Draw(t, "candidates")
		most := rapid.IntRange(0, 4).Draw(t, "most")
		got := Words(word, candidates, most)
		if len(got) > most {
			t.Fatalf("%d words", len(got))
		}
		for i, w := range got {
			if !slices.Contains(candidates, w) || slices.Contains(got[:i], w) {
				t.Fatalf("%q is no candidate or stands twice", w)
			}
		}
		turned := slices.Clone(candidates)
		slices.Reverse(turned)
		if again := Words(word, turned, most); !slices.Equal(got, again) {
			t.Fatalf("%q, turned %q", got, again)
		}
		if slices.Contains(candidates, word) && word != "" && most > 0 && (len(got) == 0 || got[0] != word) {
			t.Fatalf("%q itself is a candidate, got %q", word, got)
		}
	})
}
