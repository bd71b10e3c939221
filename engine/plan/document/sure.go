package document

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"sync"
)

// A sound file is the usual one, and compiling a schema takes longer than judging
// a plan. So a tree is first looked over by accepts, which knows only the keywords
// that our schemas use and says yes only where it is sure. Wherever it isn't, the
// JSON Schema library judges, and what it refuses is what is refused. A test holds
// that accepts never says yes to what the library refuses.

// accepts tells that the schema surely takes the value at a node.
func (s *Schema) accepts(schema any, n *Node, value any) bool {
	of, ok := schema.(map[string]any)
	if !ok {
		return schema == true
	}
	for keyword, wanted := range of {
		if !s.keyword(keyword, wanted, of, n, value) {
			return false
		}
	}
	return true
}

// keyword tells that one keyword of a schema surely takes the value.
func (s *Schema) keyword(keyword string, wanted any, of map[string]any, n *Node, value any) bool {
	switch keyword {
	case "$schema", "$id", "$defs", "title", "description", "examples", "expected":
		return true
	case "$ref":
		return s.accepts(lookUp(s.root, strings.TrimPrefix(wanted.(string), "#")), n, value)
	case "type":
		types, is := typesOf(of), typeOf(value)
		return slices.Contains(types, is) || is == "integer" && slices.Contains(types, "number")
	case "enum":
		return slices.Contains(wanted.([]any), value) && !isGroup(value)
	case "const":
		return !isGroup(value) && value == wanted
	case "pattern":
		return !isText(value) || patternOf(wanted.(string)).MatchString(value.(string))
	case "format":
		return wanted == "day" && isDay(value)
	case "quantity":
		return n.Amount != nil
	case "if": // whether it is so or not, what would follow holds
		return of["then"] == nil || s.accepts(of["then"], n, value)
	case "then":
		return true
	}
	return s.ofGroup(keyword, wanted, of, n, value)
}

// ofGroup is keyword for what a schema says of lists and mappings.
func (s *Schema) ofGroup(keyword string, wanted any, of map[string]any, n *Node, value any) bool {
	members, isMapping := value.(map[string]any)
	items, isList := value.([]any)
	switch keyword {
	case "minItems":
		least, ok := wholeOf(wanted)
		return ok && (!isList || least <= len(items))
	case "maxItems":
		most, ok := wholeOf(wanted)
		return ok && (!isList || most >= len(items))
	case "items":
		for i := range items {
			if !s.accepts(wanted, n.Items[i], items[i]) {
				return false
			}
		}
		return true
	case "required":
		return !isMapping || hasAll(members, wanted.([]any))
	case "properties":
		for key, part := range wanted.(map[string]any) {
			if v, there := members[key]; there && !s.accepts(part, n.Member(key), v) {
				return false
			}
		}
		return true
	case "additionalProperties":
		named, _ := of["properties"].(map[string]any)
		for key, v := range members {
			if named[key] == nil && !s.accepts(wanted, n.Member(key), v) {
				return false
			}
		}
		return true
	case "dependentRequired":
		for key, others := range wanted.(map[string]any) {
			if _, there := members[key]; there && !hasAll(members, others.([]any)) {
				return false
			}
		}
		return true
	}
	return false
}

func hasAll(members map[string]any, keys []any) bool {
	return !slices.ContainsFunc(keys, func(key any) bool { _, there := members[key.(string)]; return !there })
}

// typeOf is the JSON type of a value as scalar makes them.
func typeOf(value any) string {
	switch v := value.(type) {
	case string:
		return "string"
	case bool:
		return "boolean"
	case json.Number:
		if wholeNumber.MatchString(string(v)) {
			return "integer"
		}
		return "number"
	case map[string]any:
		return "object"
	case []any:
		return "array"
	}
	return "null"
}

func isText(value any) bool { _, ok := value.(string); return ok }

// isGroup tells a list or a mapping, which can't be compared.
func isGroup(value any) bool {
	switch value.(type) {
	case map[string]any, []any:
		return true
	}
	return false
}

// wholeOf is a whole number of the schema; ok is false if it is none.
func wholeOf(wanted any) (n int, ok bool) {
	number, ok := wanted.(json.Number)
	if !ok {
		return 0, false
	}
	whole, err := number.Int64()
	return int(whole), err == nil
}

var patterns sync.Map

// patternOf compiles a pattern once.
func patternOf(text string) *regexp.Regexp {
	if re, ok := patterns.Load(text); ok {
		return re.(*regexp.Regexp)
	}
	re := regexp.MustCompile(text)
	patterns.Store(text, re)
	return re
}

// Sure tells that a tree is surely sound, without the library.
func (s *Schema) Sure(root *Node) bool { return s.accepts(s.root, root, s.shape.value(root)) }

// Strictly asks the library, whatever the quick look says.
func (s *Schema) Strictly(root *Node) error {
	value := s.shape.value(root)
	if err := s.compile(); err != nil {
		return err
	}
	return s.compiled.Validate(value)
}
