package document

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// someValues are what may stand under a key of the small schema.
var someValues = []string{"1", "x", "kept", "new", "[a, b]", "[a]", "[]", "{}", "{leaf: 1}", "{leaf: x, a: {b: {}}}", "yes", "true", "\"true\"", "2021-04", "2021-13", "6 mm", "-1 mm", "[6 mm, 7 mm]", "[6 mm, 7 N]", "91 deg", "~", "\"\"", "0.25", "1.0", "{d%e: 1}", "{d%e: 1, f: 2}"}

// TestLookIsRight holds that what the quick look is sure of, one way or the other, the
// library says too, and that it is sure of nearly all that is sound.
func TestLookIsRight(t *testing.T) {
	s, err := Compile([]byte(small))
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(1, 1))
	keys := []string{"count", "share", "name", "word", "id", "yes", "day", "size", "sizes", "lean", "two", "load", "paper", "tree", "a/b~c", "zzz"}
	told := map[surely]int{}
	missed := 0
	for range 5_000 {
		src := "one: 1\nname: x\n"
		if r.IntN(10) == 0 {
			src = fmt.Sprintf("one: %s\n", someValues[r.IntN(len(someValues))])
		}
		from := 2 + r.IntN(len(keys)-2)
		for i := range 1 + r.IntN(3) {
			src += fmt.Sprintf("%s: %s\n", keys[(from+i*5)%len(keys)], someValues[r.IntN(len(someValues))])
		}
		root, problems := Read("p.yaml", []byte(src))
		if len(problems) > 0 {
			continue
		}
		look := s.lookOver(root, false)
		part := s.lookOver(root, true)
		problems, err := s.slowCheck(root, true)
		if err != nil || part == yes && len(problems) > 0 {
			t.Fatalf("the quick look takes a part that has %v, %v\n%s", problems, err, src)
		}
		refused := s.compiled.Validate(root.value())
		told[look]++
		switch {
		case look == yes && refused != nil:
			t.Fatalf("the quick look takes what the library refuses: %v\n%s", refused, src)
		case look == no && refused == nil:
			t.Fatalf("the quick look refuses what the library takes\n%s", src)
		case look == perhaps && refused == nil:
			missed++
		}
	}
	if told[yes] < 100 || told[no] < 200 || missed > told[yes]/20 {
		t.Errorf("%d were sound, %d not, and of %d sound ones that was not seen", told[yes], told[no], missed)
	}
}
