package fact

import (
	"math"
	"strings"
	"testing"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

// TestCatalogue holds that the tags of our own kinds can be read, and that each
// fact an owner can measure says with what and where.
func TestCatalogue(t *testing.T) {
	c, err := TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range c.Kinds {
		if len(k.Columns) == 0 || k.Means == "" {
			t.Errorf("kind %s says nothing of itself", k.Name)
		}
		for _, col := range k.Columns {
			if (col.Tool == "") != (col.Where == "") {
				t.Errorf("%s.%s names a tool without a place or a place without a tool", k.Name, col.Name)
			}
		}
	}
	landing := c.Kind("landing")
	i, ok := landing.SlotOf("fitting.metal.pren")
	if !ok || landing.Slots[i].Dimension != quantity.Bare {
		t.Errorf("a rule on a landing can't read fitting.metal.pren")
	}
	if i, ok = landing.SlotOf("stay.break_load"); !ok || landing.Slots[i].Dimension != quantity.Force {
		t.Errorf("a rule on a landing can't read stay.break_load as a force")
	}
}

type pair struct {
	Subject
	A   Number `fact:"a" unit:"mm" means:"one"`
	B   Number `fact:"b" unit:"mm" means:"two"`
	Sum Number `fact:"sum" unit:"mm" means:"both"`
}

func (*pair) Describe() (string, string) { return "pair", "two numbers" }

// TestUnknown holds that nothing derived from an unknown is known, and that the
// gap is named by the value the plan lacks.
func TestUnknown(t *testing.T) {
	for _, test := range []struct {
		name    string
		a, b    float64
		known   bool
		missing int
	}{
		{"both given", 1, 2, true, 0},
		{"one is NaN", math.NaN(), 2, false, 1},
		{"one is infinite", 1, math.Inf(1), false, 1},
		{"both are unknown", math.NaN(), math.Inf(-1), false, 2},
	} {
		p := &pair{}
		p.A.Give(test.a, finding.Place{Line: 1})
		p.B.Give(test.b, finding.Place{Line: 2})
		p.Sum.Derive(values(&p.A.Value, &p.B.Value), func() (float64, error) { return p.A.Float() + p.B.Float(), nil }, nil)
		c, err := NewCatalogue(&pair{})
		if err != nil {
			t.Fatal(err)
		}
		if err := c.Seal(p); err != nil {
			t.Fatal(err)
		}
		if p.Sum.Known() != test.known || len(p.Sum.Missing()) != test.missing {
			t.Errorf("%s: known %v, %d missing", test.name, p.Sum.Known(), len(p.Sum.Missing()))
		}
		if row := p.Row()[2]; math.IsNaN(row) == test.known {
			t.Errorf("%s: the row holds %v", test.name, row)
		}
		if p.Sum.At().Line != 1 {
			t.Errorf("%s: a derived value stands at line %d, not where its first input does", test.name, p.Sum.At().Line)
		}
	}
}

// TestOverflow holds that a calculation which runs over gives an unknown that
// says so, never a number.
func TestOverflow(t *testing.T) {
	p := &pair{}
	p.A.Give(1e308, finding.Place{})
	p.B.Give(1e308, finding.Place{})
	p.Sum.Derive(values(&p.A.Value, &p.B.Value), func() (float64, error) { return p.A.Float() * p.B.Float(), nil }, nil)
	if p.Sum.Known() || p.Sum.Why() == "" {
		t.Errorf("an infinite product is known (%v) or says nothing (%q)", p.Sum.Known(), p.Sum.Why())
	}
}

type badUnit struct {
	Subject
	A Number `fact:"a" unit:"furlong" means:"x"`
}

func (*badUnit) Describe() (string, string) { return "bad", "bad" }

type noMeaning struct {
	Subject
	A Number `fact:"a" unit:"mm"`
}

func (*noMeaning) Describe() (string, string) { return "bad", "bad" }

type unitOnWord struct {
	Subject
	A Word `fact:"a" unit:"mm" means:"x"`
}

func (*unitOnWord) Describe() (string, string) { return "bad", "bad" }

type twice struct {
	Subject
	A Number `fact:"a" unit:"mm" means:"x"`
	B Number `fact:"a" unit:"mm" means:"y"`
}

func (*twice) Describe() (string, string) { return "bad", "bad" }

// TestBadTags holds that a fault in a tag is refused and never guessed at.
func TestBadTags(t *testing.T) {
	for want, prototype := range map[string]Described{
		"no canonical unit": &badUnit{}, "no meaning": &noMeaning{}, "can't have a unit": &unitOnWord{}, "two facts": &twice{},
	} {
		if _, err := NewCatalogue(prototype); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("wanted an error with %q, got %v", want, err)
		}
	}
}

// TestWords holds that a word comes back from its number and that no other
// number gives one.
func TestWords(t *testing.T) {
	id := WordID("a word of this test")
	if WordText(id) != "a word of this test" || WordID("a word of this test") != id {
		t.Errorf("the word does not come back")
	}
	for _, n := range []float64{-1, id + 0.5, 1e18, math.NaN(), math.Inf(1)} {
		if text := WordText(n); text != "" {
			t.Errorf("%v stands for %q", n, text)
		}
	}
}
