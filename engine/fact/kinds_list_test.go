package fact

import (
	"fmt"
	"os"
	"reflect"
	"strings"
	"testing"
)

// TestKindsList holds the lists of facts to the structs. What differs is not used, so
// that it costs time and no more; the test says what would stand there. With FACTS_LIST
// set, it writes the file anew.
func TestKindsList(t *testing.T) {
	c, err := TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	want := listsSource(c)
	if os.Getenv("FACTS_LIST") != "" {
		if err := os.WriteFile("kinds_list.go", []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
		return // what was compiled is the file as it was
	}
	have, err := os.ReadFile("kinds_list.go")
	if err != nil {
		t.Fatal(err)
	}
	if string(have) != want {
		t.Error("kinds_list.go lists other facts than the structs have: write it anew with FACTS_LIST=1 go test -run TestKindsList ./engine/fact")
	}
	for _, k := range c.Kinds {
		if !k.listed {
			t.Errorf("the list of %s is not used", k.Name)
		}
	}
}

// TestListInAnotherOrder: a list that does not tell the facts in the order of the struct
// is not used.
func TestListInAnotherOrder(t *testing.T) {
	c, err := NewCatalogue(&swapped{}, &straight{})
	if err != nil {
		t.Fatal(err)
	}
	if c.Kinds[0].listed || !c.Kinds[1].listed {
		t.Errorf("used: %v, %v; want the second alone", c.Kinds[0].listed, c.Kinds[1].listed)
	}
	s := &swapped{Subject: Subject{ID: "s"}}
	s.One.Give(1, s.At)
	s.Two.Give(2, s.At)
	if err := c.Seal(s); err != nil || s.Row()[0] != 1 || s.Row()[1] != 2 {
		t.Errorf("row %v, %v; want 1 and 2", s.Row(), err)
	}
}

type swapped struct {
	Subject
	One Number `fact:"one" unit:"" means:"one"`
	Two Number `fact:"two" unit:"" means:"two"`
}

func (*swapped) Describe() (string, string) { return "swapped", "two facts listed the wrong way round" }
func (s *swapped) facts(to []*Value) []*Value {
	return append(to, &s.Two.Value, &s.One.Value)
}

type straight struct {
	Subject
	One Number `fact:"one" unit:"" means:"one"`
}

func (*straight) Describe() (string, string)   { return "straight", "one fact" }
func (s *straight) facts(to []*Value) []*Value { return append(to, &s.One.Value) }

// listsSource is kinds_list.go as the structs have it.
func listsSource(c *Catalogue) string {
	var b strings.Builder
	b.WriteString(`package fact

// The facts of each kind in the order of its struct, so that sealing the thousands of
// facts of a plan needs no reflection. A test holds the lists to the structs and writes
// this file: FACTS_LIST=1 go test -run TestKindsList ./engine/fact

`)
	for i, k := range c.Kinds {
		if i > 0 {
			b.WriteString("\n")
		}
		fmt.Fprintf(&b, "func (s *%s) facts(to []*Value) []*Value {\n\treturn append(to", k.typ.Name())
		for _, col := range k.Columns {
			fmt.Fprintf(&b, ",\n\t\t&s.%s.Value", fieldPath(k.typ, col.index))
		}
		b.WriteString(")\n}\n")
	}
	return b.String()
}

func fieldPath(t reflect.Type, index []int) string {
	var names []string
	for _, i := range index {
		f := t.Field(i)
		names, t = append(names, f.Name), f.Type
	}
	return strings.Join(names, ".")
}
