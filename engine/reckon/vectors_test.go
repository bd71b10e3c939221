package reckon

import (
	"encoding/json"
	"math"
	"os"
	"testing"
)

// knownCase is a case whose results are known from elsewhere, with where from.
type knownCase struct {
	ID, Provenance, Formula string
	Inputs                  json.RawMessage
	Results                 map[string]any
	Tolerance               float64
}

// TestVectors runs the known cases; every formula has one at least.
func TestVectors(t *testing.T) {
	src, err := os.ReadFile("testdata/vectors.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []knownCase
	if err := json.Unmarshal(src, &cases); err != nil {
		t.Fatal(err)
	}
	ran := map[string]int{}
	for _, c := range cases {
		t.Run(c.ID, func(t *testing.T) { c.run(t) })
		ran[c.Formula]++
	}
	for _, name := range Names() {
		if ran[name] == 0 {
			t.Errorf("no case of %s", name)
		}
	}
}

func (c knownCase) run(t *testing.T) {
	a, err := Run(c.Formula, mustMembers(t, string(c.Inputs)))
	if err != nil || !a.Covered || c.Provenance == "" {
		t.Fatalf("%v, covered %v %s, from %q", err, a.Covered, a.Why, c.Provenance)
	}
	text, err := json.Marshal(a.Results)
	if err != nil {
		t.Fatal(err)
	}
	var got map[string]any
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	for name, want := range c.Results {
		c.compare(t, name, got[name], want)
	}
}

// compare holds a result to what is known of it; a measured one by its value.
func (c knownCase) compare(t *testing.T, name string, got, want any) {
	t.Helper()
	if m, ok := got.(map[string]any); ok && m["unit"] != nil {
		got = m["value"]
	}
	switch want := want.(type) {
	case float64:
		if v, ok := got.(float64); !ok || math.Abs(v-want) > c.Tolerance*math.Max(1e-9, math.Abs(want)) {
			t.Errorf("%s is %v, want %v", name, got, want)
		}
	case []any:
		list, _ := got.([]any)
		if len(list) != len(want) {
			t.Fatalf("%s has %d entries, want %d", name, len(list), len(want))
		}
		for i := range want {
			c.compare(t, name, list[i], want[i])
		}
	case map[string]any:
		group, _ := got.(map[string]any)
		for part := range want {
			c.compare(t, name+" "+part, group[part], want[part])
		}
	default:
		if got != want {
			t.Errorf("%s is %v, want %v", name, got, want)
		}
	}
}
