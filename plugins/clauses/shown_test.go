package clauses

import (
	"errors"
	"slices"
	"testing"

	"chainwale/engine/standard"
	"chainwale/engine/working"
)

// doubled is a calculation of two steps.
type doubled float64

func (d doubled) Working() []working.Step {
	return []working.Step{{Symbol: "a", Value: float64(d)}, {Symbol: "b", Value: 2 * float64(d)}}
}

func symbols(steps []working.Step) (all []string) {
	for _, s := range steps {
		all = append(all, s.Symbol)
	}
	return all
}

func TestBy(t *testing.T) {
	three := func(Row) (doubled, error) { return 3, nil }
	value := func(d doubled) float64 { return 2 * float64(d) }
	for want, named := range map[string][]string{"ab": nil, "b": {"b"}, "a": {"c", "a"}} {
		result, err := By(three, value, named...)(Row{})
		if err != nil || result.Value != 6 {
			t.Errorf("%v, %v", result.Value, err)
		}
		if got := symbols(result.Working()); !slices.Equal(got, slices.Collect(letters(want))) {
			t.Errorf("of the steps %v are shown %v, want %s", named, got, want)
		}
	}
	refused := errors.New("it is not covered")
	if _, err := By(func(Row) (doubled, error) { return 0, refused }, value)(Row{}); err != refused {
		t.Errorf("got %v", err)
	}
}

func letters(word string) func(func(string) bool) {
	return func(yield func(string) bool) {
		for _, r := range word {
			if !yield(string(r)) {
				return
			}
		}
	}
}

func TestReads(t *testing.T) {
	reads := []standard.Read{Number("hole", "mm"), Word("grade"), YesNo("in_line")}
	if got := Names(reads); !slices.Equal(got, []string{"hole", "grade", "in_line"}) {
		t.Errorf("names %v", got)
	}
	for i, want := range []standard.Type{standard.Number, standard.Word, standard.YesNo} {
		if reads[i].Type != want || (reads[i].Unit == "mm") != (i == 0) {
			t.Errorf("%+v", reads[i])
		}
	}
}
