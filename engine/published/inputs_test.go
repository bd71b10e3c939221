package published

import (
	"fmt"
	"testing"

	"chainwale/engine/quantity"
)

// inputs hands the inputs of a case to a runner and notes which were read.
type inputs struct {
	t      *testing.T
	values map[string]any
	read   map[string]bool
}

// has says whether an input is there.
func (in *inputs) has(name string) bool { _, ok := in.values[name]; return ok }

func (in *inputs) raw(name string) any {
	in.t.Helper()
	in.read[name] = true
	v, ok := in.values[name]
	if !ok {
		in.t.Fatalf("input %s is missing", name)
	}
	return v
}

// number is an input of a dimension, in its canonical unit.
func (in *inputs) number(name string, d quantity.Dimension) float64 {
	in.t.Helper()
	return in.parse(name, in.raw(name), d)
}

func (in *inputs) parse(name string, v any, d quantity.Dimension) float64 {
	in.t.Helper()
	q, err := quantity.ParseAs(fmt.Sprint(v), d)
	if err != nil {
		in.t.Fatalf("input %s: %v", name, err)
	}
	return q.Value
}

// or is number where it is given, else a value that stands in.
func (in *inputs) or(name string, d quantity.Dimension, otherwise float64) float64 {
	in.t.Helper()
	if !in.has(name) {
		return otherwise
	}
	return in.number(name, d)
}

// numbers is a list of inputs of one dimension.
func (in *inputs) numbers(name string, d quantity.Dimension) []float64 {
	in.t.Helper()
	list, ok := in.raw(name).([]any)
	if !ok {
		in.t.Fatalf("input %s must be a list", name)
	}
	values := make([]float64, len(list))
	for i, v := range list {
		values[i] = in.parse(name, v, d)
	}
	return values
}

// word is an input of text.
func (in *inputs) word(name string) string {
	in.t.Helper()
	return fmt.Sprint(in.raw(name))
}

// flag is an input of yes or no.
func (in *inputs) flag(name string) bool {
	in.t.Helper()
	yes, ok := in.raw(name).(bool)
	if !ok {
		in.t.Fatalf("input %s must be true or false", name)
	}
	return yes
}

// allRead holds that the formula has read every input.
func (in *inputs) allRead() {
	in.t.Helper()
	for name := range in.values {
		if !in.read[name] {
			in.t.Errorf("the formula does not read the input %s", name)
		}
	}
}

// ok stops the case on an error of the formula.
func ok[T any](v T, err error) func(*inputs) T {
	return func(in *inputs) T {
		in.t.Helper()
		if err != nil {
			in.t.Fatal(err)
		}
		return v
	}
}
