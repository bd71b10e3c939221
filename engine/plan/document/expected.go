package document

import (
	"cmp"
	"encoding/json"
	"strconv"
	"strings"

	"chainwale/engine/near"
	"chainwale/engine/quantity"
)

// A problem says what would be right. This file takes that from the schema's own
// words, so what an editor shows and what a message offers are the same.

// orNothing is what would be right for a value that may as well be left out.
func (c complaint) orNothing() string {
	expected := c.expected()
	if c.node.Key == "" || c.node.required {
		return expected
	}
	return expected + ", or leave the key out"
}

// expected is what would be right, from the schema's own words. What stands
// beside the broken keyword goes before what is said of the value as a whole.
func (c complaint) expected() string {
	if text, ok := c.schema["expected"].(string); ok {
		return text
	}
	return cmp.Or(c.shown(c.node.wanted()), c.shown(c.schema), c.ordinary(c.node.wanted()), c.ordinary(c.schema))
}

// expectedBy is what would be right for a value that a schema describes.
func (c complaint) expectedBy(schema map[string]any) string {
	return cmp.Or(c.shown(schema), c.ordinary(schema))
}

// shown is the text that a schema gives for what would be right, the words it
// takes, or its examples.
func (c complaint) shown(schema map[string]any) string {
	for ; schema != nil; schema = c.referred(schema) {
		if text, ok := schema["expected"].(string); ok {
			return text
		}
		if words := stringsOf(schema["enum"]); len(words) > 0 {
			return oneOf(words)
		}
		if value, ok := schema["const"]; ok {
			return written(value)
		}
		if schema["format"] == "day" {
			return DayForm
		}
		if examples, ok := schema["examples"].([]any); ok {
			return "for example " + anyOf(examples)
		}
	}
	return ""
}

// ordinary says what sort of value a schema takes.
func (c complaint) ordinary(schema map[string]any) string {
	for ; schema != nil; schema = c.referred(schema) {
		if spec, ok := schema["quantity"]; ok {
			if a, err := newAmount(spec); err == nil {
				return "for example " + quantity.Example(a.of)
			}
		}
		if types := typesOf(schema); len(types) > 0 {
			return sorts[types[0]]
		}
	}
	return ""
}

// sorts are the types of JSON in words.
var sorts = map[string]string{
	"string": "a text", "integer": "digits alone, for example 10", "number": "a number, for example 0.25",
	"boolean": "yes or no", "array": "entries that begin with a dash", "object": "keys with values",
}

// referred is the schema that another refers to.
func (c complaint) referred(schema map[string]any) map[string]any {
	ref, _ := schema["$ref"].(string)
	if !strings.HasPrefix(ref, "#") {
		return nil
	}
	to, _ := lookUp(c.root, ref[1:]).(map[string]any)
	return to
}

// meant offers the nearest word, "" if none is near.
func meant(word string, words []string) string {
	if nearest := near.Words(word, words, 1); len(nearest) > 0 {
		return "did you mean " + nearest[0] + "? "
	}
	return ""
}

func list(words []string) string { return strings.Join(words, ", ") }

func oneOf(words []string) string {
	if len(words) == 2 {
		return words[0] + " or " + words[1]
	}
	return "one of: " + list(words)
}

// anyOf writes examples as they would stand in a plan.
func anyOf(examples []any) string {
	var texts []string
	for _, e := range examples {
		texts = append(texts, written(e))
	}
	if n := len(texts); n > 1 {
		return list(texts[:n-1]) + " or " + texts[n-1]
	}
	return list(texts)
}

// written is a value of a schema as it would stand in a plan.
func written(v any) string {
	switch v := v.(type) {
	case string:
		return v
	case json.Number:
		return v.String()
	case bool:
		return strconv.FormatBool(v)
	case []any:
		var parts []string
		for _, part := range v {
			parts = append(parts, written(part))
		}
		return "[" + list(parts) + "]"
	}
	return ""
}

// longestShown is how many characters of a user's text a message repeats.
const longestShown = 60

// short is a text no longer than a message should repeat it, on one line.
func short(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	if runes := []rune(text); len(runes) > longestShown {
		return string(runes[:longestShown]) + "…"
	}
	return text
}

func quoted(text string) string { return `"` + short(text) + `"` }
