package document

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
)

// shape is what a schema says of one value, as far as it takes to turn the texts
// of a file into the typed values that a JSON Schema judges.
type shape struct {
	// schema is what it was made of, as it is written.
	schema map[string]any
	// types are the JSON types that are taken.
	types      []string
	properties map[string]*shape
	required   []string
	// others is for the keys that properties does not name, items for a list's.
	others, items *shape
	// amount is set where a quantity is wanted.
	amount *amount
	// ref is the shape that the schema refers to; it says what this one leaves open.
	ref *shape
}

// said is what a shape, or the one it refers to, says of something.
func said[T any](sh *shape, of func(*shape) (T, bool)) (found T) {
	for ; sh != nil; sh = sh.ref {
		if v, ok := of(sh); ok {
			return v
		}
	}
	return found
}

func typesIn(sh *shape) ([]string, bool)    { return sh.types, sh.types != nil }
func requiredIn(sh *shape) ([]string, bool) { return sh.required, sh.required != nil }
func amountIn(sh *shape) (*amount, bool)    { return sh.amount, sh.amount != nil }
func itemsIn(sh *shape) (*shape, bool)      { return sh.items, sh.items != nil }

// member is the shape of the value under a key, nil if the schema does not say.
func (sh *shape) member(key string) *shape {
	named := said(sh, func(sh *shape) (*shape, bool) { return sh.properties[key], sh.properties[key] != nil })
	if named != nil {
		return named
	}
	return said(sh, func(sh *shape) (*shape, bool) { return sh.others, sh.others != nil })
}

// shapes makes shapes out of a schema as it was read, each place only once.
type shapes struct {
	root any
	made map[string]*shape
}

// at makes the shape of the schema at a JSON Pointer. It is put down before its
// parts are made, so a schema may refer to itself.
func (s *shapes) at(pointer string) (*shape, error) {
	if sh := s.made[pointer]; sh != nil {
		return sh, nil
	}
	schema, _ := lookUp(s.root, pointer).(map[string]any)
	sh := &shape{schema: schema, types: typesOf(schema), required: stringsOf(schema["required"]), properties: map[string]*shape{}}
	s.made[pointer] = sh
	var err error
	if spec, ok := schema["quantity"]; ok {
		if sh.amount, err = newAmount(spec); err != nil {
			return nil, err
		}
	}
	return sh, s.parts(sh, pointer)
}

// parts makes the shapes of what a schema says of members, items and others.
func (s *shapes) parts(sh *shape, pointer string) (err error) {
	if ref, ok := sh.schema["$ref"].(string); ok {
		if sh.ref, err = s.at(strings.TrimPrefix(ref, "#")); err != nil {
			return err
		}
		for to := sh.ref; to != nil; to = to.ref {
			if to == sh {
				return fmt.Errorf("%s refers to itself and says nothing", pointer)
			}
		}
	}
	properties, _ := sh.schema["properties"].(map[string]any)
	for key := range properties {
		if sh.properties[key], err = s.at(pointer + "/properties/" + escape(key)); err != nil {
			return err
		}
	}
	for keyword, part := range map[string]**shape{"items": &sh.items, "additionalProperties": &sh.others} {
		if _, ok := sh.schema[keyword].(map[string]any); ok {
			if *part, err = s.at(pointer + "/" + keyword); err != nil {
				return err
			}
		}
	}
	return nil
}

// typesOf lists the JSON types that a schema takes: those it names, or else those
// of the values it lists.
func typesOf(schema map[string]any) (types []string) {
	switch t := schema["type"].(type) {
	case string:
		return []string{t}
	case []any:
		for _, name := range t {
			types = append(types, name.(string))
		}
		return types
	}
	values, _ := schema["enum"].([]any)
	for _, v := range values {
		switch v.(type) {
		case string:
			types = append(types, "string")
		case bool:
			types = append(types, "boolean")
		case json.Number:
			types = append(types, "number")
		}
	}
	return types
}

// lookUp follows a JSON Pointer through a schema, nil if nothing stands there.
func lookUp(v any, pointer string) any {
	if pointer == "" {
		return v
	}
	for _, token := range strings.Split(pointer, "/")[1:] {
		switch t := v.(type) {
		case map[string]any:
			v = t[unescape(token)]
		case []any:
			i, err := strconv.Atoi(token)
			if err != nil || i < 0 || i >= len(t) {
				return nil
			}
			v = t[i]
		default:
			return nil
		}
	}
	return v
}
