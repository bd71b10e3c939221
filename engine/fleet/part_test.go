package fleet

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

func boats(n int) (names []string) {
	for i := range n {
		names = append(names, fmt.Sprintf("boats/%d/plan.yaml", i))
	}
	return names
}

func mustPart(t *testing.T, i, n int, names []string) []string {
	t.Helper()
	part, err := Part(i, n, names)
	if err != nil {
		t.Fatal(err)
	}
	return part
}

// TestPart holds that parts leave no boat out and take none twice, that they are of
// about the same size, and keep the order given.
func TestPart(t *testing.T) {
	names := boats(2000)
	for _, n := range []int{1, 2, 3, 7, 16} {
		seen := map[string]int{}
		for i := 1; i <= n; i++ {
			part := mustPart(t, i, n, names)
			for _, name := range part {
				seen[name]++
			}
			if fair := len(names) / n; len(part) < fair*7/10 || len(part) > fair*13/10 {
				t.Errorf("part %d of %d has %d boats", i, n, len(part))
			}
			if !slices.IsSortedFunc(part, func(a, b string) int { return slices.Index(names, a) - slices.Index(names, b) }) {
				t.Errorf("part %d of %d is out of order", i, n)
			}
		}
		if len(seen) != len(names) {
			t.Errorf("of %d parts: %d boats of %d", n, len(seen), len(names))
		}
		for name, times := range seen {
			if times != 1 {
				t.Errorf("%s falls to %d parts", name, times)
			}
		}
	}
}

// TestPartIsStable holds that a boat more moves no other, and that the split is the
// same tomorrow.
func TestPartIsStable(t *testing.T) {
	names := boats(300)
	fewer := slices.Concat(names[:100], names[101:])
	for i := 1; i <= 4; i++ {
		before := mustPart(t, i, 4, names)
		after := mustPart(t, i, 4, fewer)
		if want := slices.DeleteFunc(slices.Clone(before), func(s string) bool { return s == names[100] }); !slices.Equal(after, want) {
			t.Errorf("part %d changed", i)
		}
	}
	if got := mustPart(t, 2, 3, []string{"a.yaml", "b.yaml", "c.yaml", "d.yaml", "e.yaml", "f.yaml"}); strings.Join(got, " ") != partOfSix {
		t.Errorf("part 2 of 3 is %v", got)
	}
}

// partOfSix is the second third of the letters a to f, as worked out by another program.
const partOfSix = "a.yaml c.yaml"

func TestReadPart(t *testing.T) {
	if i, n, err := ReadPart("2/5"); i != 2 || n != 5 || err != nil {
		t.Error(i, n, err)
	}
	for _, text := range []string{"", "2", "0/5", "6/5", "1/0", "-1/5", "1/5/2", "a/b", "1/99999", "1/100000", " 1/2", "1/2\n"} {
		if _, _, err := ReadPart(text); err == nil {
			t.Errorf("%q is taken", text)
		}
	}
	if _, err := Part(3, 2, nil); err == nil {
		t.Error("there is a part 3 of 2")
	}
}
