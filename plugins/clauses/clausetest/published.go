package clausetest

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"go.yaml.in/yaml/v4"

	"chainwale/engine/quantity"
)

// Case is a worked example from outside, as testdata/published keeps it.
type Case struct {
	Edition      string         `yaml:"edition"`
	Inputs       map[string]any `yaml:"inputs"`
	Outputs      map[string]any `yaml:"outputs"`
	DoesNotClose map[string]any `yaml:"does_not_close"`
	Tolerance    float64        `yaml:"tolerance"`

	t    testing.TB
	name string
}

// Published reads a case by its id.
func Published(t testing.TB, id string) Case {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "published", id+".yaml"))
	if err != nil {
		t.Fatal(err)
	}
	c := Case{t: t, name: id}
	if err := yaml.Unmarshal(data, &c); err != nil {
		t.Fatal(err)
	}
	return c
}

// In is an input in its canonical unit.
func (c Case) In(name string) float64 { c.t.Helper(); return c.number(c.Inputs, name) }

// Out is what the source prints of a result, in its canonical unit.
func (c Case) Out(name string) float64 { c.t.Helper(); return c.number(c.Outputs, name) }

// Odd is what the source prints and can't be had by the equation.
func (c Case) Odd(name string) float64 { c.t.Helper(); return c.number(c.DoesNotClose, name) }

func (c Case) number(from map[string]any, name string) float64 {
	c.t.Helper()
	written, ok := from[name]
	if !ok {
		c.t.Fatalf("%s has no %s", c.name, name)
	}
	if bare, ok := number(written); ok {
		return bare
	}
	q, err := quantity.Parse(fmt.Sprint(written))
	if err != nil {
		c.t.Fatalf("%s: %s: %v", c.name, name, err)
	}
	return q.Value
}

func number(v any) (float64, bool) {
	switch n := v.(type) {
	case int:
		return float64(n), true
	case float64:
		return n, true
	}
	return 0, false
}
