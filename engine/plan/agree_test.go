package plan

import (
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"chainwale/engine/quantity"
	"chainwale/schema"
)

// schemaTree is the plan's schema as plain data.
type schemaTree struct {
	t    *testing.T
	root map[string]any
}

func readSchema(t *testing.T) *schemaTree {
	t.Helper()
	s := &schemaTree{t: t}
	if err := json.Unmarshal(schema.Plan(), &s.root); err != nil {
		t.Fatal(err)
	}
	return s
}

// whole is a schema with what it refers to laid under it.
func (s *schemaTree) whole(part map[string]any) map[string]any {
	all := map[string]any{}
	if ref, ok := part["$ref"].(string); ok {
		name := strings.TrimPrefix(ref, "#/$defs/")
		to, ok := s.root["$defs"].(map[string]any)[name].(map[string]any)
		if !ok {
			s.t.Fatalf("nothing stands at %s", ref)
		}
		all = s.whole(to)
	}
	maps.Copy(all, part)
	return all
}

// sort is which type of ours decodes what a schema wants.
func (s *schemaTree) sort(part map[string]any) reflect.Type {
	types := []any{part["type"]}
	if several, ok := part["type"].([]any); ok {
		types = several
	}
	words, _ := part["enum"].([]any)
	switch {
	case part["quantity"] != nil:
		return reflect.TypeFor[Amount]()
	case slices.Contains(words, any("yes")):
		return reflect.TypeFor[YesNo]()
	case part["format"] == "day":
		return reflect.TypeFor[Day]()
	case slices.Equal(types, []any{"integer"}):
		return reflect.TypeFor[Whole]()
	case slices.Contains(types, any("string")):
		return reflect.TypeFor[Text]()
	}
	return nil
}

// The keys of the schema and the fields that are decoded are the same, and each
// field is of the sort that its key wants.
func TestSchemaAndFieldsAgree(t *testing.T) {
	s := readSchema(t)
	s.compare(reflect.TypeFor[Plan](), s.root, "")
}

func (s *schemaTree) compare(typ reflect.Type, part map[string]any, pointer string) {
	part = s.whole(part)
	if typ.Kind() == reflect.Slice {
		items, ok := part["items"].(map[string]any)
		if part["type"] != "array" || !ok {
			s.t.Errorf("%s is a list in the plan and none in the schema", pointer)
			return
		}
		s.compare(typ.Elem(), items, pointer+"/-")
		return
	}
	if sort := s.sort(part); sort != nil || part["type"] != "object" {
		if sort != typ {
			s.t.Errorf("%s is decoded as %v, and the schema wants %v", pointer, typ, sort)
		}
		return
	}
	properties, _ := part["properties"].(map[string]any)
	keys := map[string]bool{}
	for i := range typ.NumField() {
		key, ok := keyOf(typ.Field(i))
		if !ok {
			continue
		}
		keys[key] = true
		property, ok := properties[key].(map[string]any)
		if !ok {
			s.t.Errorf("%s/%s is decoded and not in the schema", pointer, key)
			continue
		}
		s.compare(typ.Field(i).Type, property, pointer+"/"+key)
	}
	for key := range properties {
		if !keys[key] {
			s.t.Errorf("%s/%s is in the schema and not decoded", pointer, key)
		}
	}
}

func TestSchemaCompiles(t *testing.T) {
	if _, err := compiled(); err != nil {
		t.Error(err)
	}
}

// Whoever fills in a plan has the schema for a manual: no group takes stray keys,
// and every key says what it means.
func TestSchemaExplainsItself(t *testing.T) {
	s := readSchema(t)
	s.explained(s.root, "")
	for name, def := range s.root["$defs"].(map[string]any) {
		s.explained(def.(map[string]any), "/$defs/"+name)
	}
}

func (s *schemaTree) explained(part map[string]any, pointer string) {
	properties, ok := part["properties"].(map[string]any)
	if part["type"] == "object" && (!ok || part["additionalProperties"] != false) {
		s.t.Errorf("%s takes keys that it does not name", pointer)
	}
	for key, property := range properties {
		p := property.(map[string]any)
		if text, _ := s.whole(p)["description"].(string); !strings.HasSuffix(text, ".") {
			s.t.Errorf("%s/%s has no sentence of meaning", pointer, key)
		}
		s.explained(p, pointer+"/"+key)
	}
}

// What the schema shows as an example is one.
func TestSchemaExamples(t *testing.T) {
	s := readSchema(t)
	named := map[string]quantity.Dimension{}
	for _, d := range []quantity.Dimension{quantity.Bare, quantity.Length, quantity.Area, quantity.Force, quantity.Stress, quantity.Moment, quantity.Mass, quantity.Angle, quantity.Time, quantity.Density, quantity.Speed} {
		named[d.Name()] = d
	}
	looked := 0
	var look func(part any, pointer string)
	look = func(part any, pointer string) {
		group, ok := part.(map[string]any)
		if !ok {
			return
		}
		if of, ok := group["quantity"].(map[string]any); ok {
			d, known := named[of["of"].(string)]
			if !known {
				t.Fatalf("%s is of %v", pointer, of["of"])
			}
			examples, _ := group["examples"].([]any)
			for _, e := range examples {
				for _, text := range flat(e) {
					looked++
					if _, err := quantity.ParseAs(text.(string), d); err != nil {
						t.Errorf("%s shows %v: %v", pointer, text, err)
					}
				}
			}
		}
		for key, below := range group {
			look(below, pointer+"/"+key)
		}
	}
	look(s.root, "")
	if looked < 60 {
		t.Errorf("only %d examples were looked at", looked)
	}
}

// flat is an example, or all of one that is a list.
func flat(example any) []any {
	if list, ok := example.([]any); ok {
		return list
	}
	return []any{example}
}

// The words that the program knows sides by are those of the schema.
func TestSidesAgree(t *testing.T) {
	s := readSchema(t)
	side := s.whole(map[string]any{"$ref": "#/$defs/side"})
	if want := []any{Port, Starboard, Both, Centre}; !slices.Equal(side["enum"].([]any), want) {
		t.Errorf("the schema has %v, the program %v", side["enum"], want)
	}
	id := s.whole(map[string]any{"$ref": "#/$defs/id"})
	if id["pattern"] != idForm.String() {
		t.Errorf("the schema has ids as %v, the program as %v", id["pattern"], idForm)
	}
	kinds := s.whole(map[string]any{"$ref": "#/$defs/fitting"})["properties"].(map[string]any)["kind"].(map[string]any)["enum"].([]any)
	for kind := range ends {
		if !slices.Contains(kinds, any(kind)) {
			t.Errorf("no fitting is a %s", kind)
		}
	}
}
