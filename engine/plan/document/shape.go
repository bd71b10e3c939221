package document

import (
	"encoding/json"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"chainwale/engine/quantity"
)

// shape is what a schema says of one value, as far as it takes to turn the texts
// of a file into the typed values that a JSON Schema judges.
type shape struct {
	// schema is what it was made of.
	schema map[string]any
	// types are the JSON types that are taken.
	types      []string
	properties map[string]*shape
	required   []string
	// others is for the keys that properties does not name, items for a list's.
	others, items *shape
	// amount is set where a quantity is wanted.
	amount *amount
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
	sh := &shape{properties: map[string]*shape{}}
	s.made[pointer] = sh
	schema, ok := lookUp(s.root, pointer).(map[string]any)
	if !ok {
		return sh, nil
	}
	if ref, ok := schema["$ref"].(string); ok {
		if err := s.follow(sh, ref); err != nil {
			return nil, err
		}
	}
	return sh, s.fill(sh, schema, pointer)
}

// follow takes over what the schema that is referred to says.
func (s *shapes) follow(sh *shape, ref string) error {
	to, err := s.at(strings.TrimPrefix(ref, "#"))
	if err == nil {
		*sh = *to
	}
	return err
}

func (s *shapes) fill(sh *shape, schema map[string]any, pointer string) (err error) {
	sh.schema = schema
	if types := typesOf(schema); types != nil {
		sh.types = types
	}
	if spec, ok := schema["quantity"]; ok {
		if sh.amount, err = newAmount(spec); err != nil {
			return err
		}
	}
	if required := stringsOf(schema["required"]); required != nil {
		sh.required = required
	}
	if properties, ok := schema["properties"].(map[string]any); ok {
		sh.properties = map[string]*shape{}
		for key := range properties {
			if sh.properties[key], err = s.at(pointer + "/properties/" + escape(key)); err != nil {
				return err
			}
		}
	}
	for keyword, part := range map[string]**shape{"items": &sh.items, "additionalProperties": &sh.others} {
		if _, ok := schema[keyword].(map[string]any); ok {
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

// value turns a node into what the schema judges: a text stays a text wherever
// one is taken, and becomes a number or a truth only where nothing else is.
func (sh *shape) value(n *Node) any {
	if sh == nil {
		sh = &shape{}
	}
	n.wanted = sh.schema
	if sh.amount != nil {
		n.Amount = sh.amount.readings(n)
	}
	switch n.Kind {
	case Mapping:
		members := make(map[string]any, len(n.Members))
		for _, m := range n.Members {
			part := sh.others
			if named := sh.properties[m.Key]; named != nil {
				part = named
			}
			members[m.Key] = part.value(m)
			m.required = slices.Contains(sh.required, m.Key)
		}
		return members
	case List:
		items := make([]any, len(n.Items))
		for i, item := range n.Items {
			items[i] = sh.items.value(item)
		}
		return items
	}
	return sh.scalar(n)
}

var (
	wholeNumber   = regexp.MustCompile(`^-?(0|[1-9][0-9]*)$`)
	decimalNumber = regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]+)?$`)
)

func (sh *shape) scalar(n *Node) any {
	takes := func(t string) bool { return slices.Contains(sh.types, t) }
	switch {
	case n.Empty():
		return nil
	case !n.Plain:
		return n.Text
	case takes("boolean") && (n.Text == "true" || n.Text == "false"):
		return n.Text == "true"
	case takes("string"):
		return n.Text
	case takes("integer") && wholeNumber.MatchString(n.Text), takes("number") && decimalNumber.MatchString(n.Text):
		return json.Number(n.Text)
	}
	return n.Text
}

// readings are the quantity that a node stands for, nil if it is none or lies
// out of bounds.
func (a *amount) readings(n *Node) *quantity.Readings {
	texts, ok := n.Texts()
	if !ok || n.Empty() {
		return nil
	}
	for _, t := range texts {
		if a.fault(t) != nil {
			return nil
		}
	}
	r, err := quantity.ParseReadings(texts, a.of)
	if err != nil {
		return nil
	}
	return &r
}
