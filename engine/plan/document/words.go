package document

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/near"
	"chainwale/engine/quantity"
)

// says makes the problems of each keyword that a value can break. Compile refuses
// a schema that uses others.
var says = map[string]func(complaint) []finding.Problem{
	"type":                 complaint.wrongKind,
	"enum":                 complaint.unknownWord,
	"const":                complaint.otherThan,
	"required":             complaint.missingKeys,
	"dependentRequired":    complaint.missingBecause,
	"additionalProperties": complaint.unknownKeys,
	"pattern":              complaint.wrongForm,
	"format":               complaint.noDay,
	"quantity":             complaint.noQuantity,
	"minItems":             complaint.wrongCount,
	"maxItems":             complaint.wrongCount,
	"not":                  complaint.notHere,
}

func (c complaint) problems() []finding.Problem {
	return says[c.keyword](c)
}

func (c complaint) one(at finding.Place, message, expected string) []finding.Problem {
	return []finding.Problem{{At: at, Message: message, Expected: expected}}
}

// wrongKind is for a list where one value belongs, a text where keys belong and
// the like, and for a key with nothing after it.
func (c complaint) wrongKind() []finding.Problem {
	n := c.node
	types := typesOf(c.schema)
	has := map[Kind]string{Scalar: "is a single value", List: "is a list", Mapping: "holds keys"}[n.Kind]
	switch {
	case n.Empty():
		return c.one(n.KeyAt, n.Name()+" has no value", c.orNothing("a value"))
	case slices.Contains(types, "object"):
		return c.one(n.At, n.Name()+" "+has+" where keys with values belong", "keys here: "+list(c.keys()))
	case slices.Equal(types, []string{"array"}):
		return c.one(n.At, n.Name()+" "+has+" where a list belongs", or(c.expected(), "entries that begin with a dash"))
	case n.Kind != Scalar:
		return c.one(n.At, n.Name()+" "+has+" where one value belongs", c.expected())
	case slices.Contains(types, "integer") && !n.Plain:
		return c.one(n.At, quoted(n.Text)+" is a text and not a number, since it stands in quotes", or(c.expected(), "the number without quotes"))
	case slices.Contains(types, "integer"):
		return c.one(n.At, quoted(n.Text)+" is not a whole number as it is written here", or(c.expected(), "digits alone, for example 10"))
	}
	return c.one(n.At, quoted(n.Text)+" is not what belongs under "+n.Name(), c.expected())
}

func (c complaint) unknownWord() []finding.Problem {
	if c.node.Kind != Scalar || c.node.Empty() {
		return c.wrongKind()
	}
	return c.one(c.node.At, fmt.Sprintf("%s can't stand under %s", quoted(c.node.Text), c.node.Name()), meant(c.node.Text, stringsOf(c.schema["enum"]))+c.expected())
}

func (c complaint) otherThan() []finding.Problem {
	wanted := written(c.schema["const"])
	return c.one(c.node.At, fmt.Sprintf("%s is %s, and only %s is taken", c.node.Name(), short(c.node.Text), wanted), wanted)
}

// missingKeys leaves out a key that most likely stands there misspelt: that is
// one fault, and it is told where the misspelt key stands.
func (c complaint) missingKeys() (found []finding.Problem) {
	keys := c.keys()
	misspelt := map[string]bool{}
	for _, m := range c.node.Members {
		if !slices.Contains(keys, m.Key) {
			for _, key := range near.Words(m.Key, keys, 1) {
				misspelt[key] = true
			}
		}
	}
	for _, key := range stringsOf(c.schema["required"]) {
		if c.node.Member(key) == nil && !misspelt[key] {
			found = append(found, c.missing(key, fmt.Sprintf("%s has no %s", c.node.Name(), key)))
		}
	}
	return found
}

func (c complaint) missingBecause() (found []finding.Problem) {
	for _, key := range stringsOf(lookUp(c.schema, "/dependentRequired/"+escape(c.because))) {
		if c.node.Member(key) == nil {
			found = append(found, c.missing(key, fmt.Sprintf("%s stands without %s", c.because, key)))
		}
	}
	return found
}

// missing is the problem with a key that isn't there, with what would stand under it.
func (c complaint) missing(key, message string) finding.Problem {
	property, _ := lookUp(c.schema, "/properties/"+escape(key)).(map[string]any)
	expected := "the key " + key
	if value, ok := property["const"]; ok {
		expected = key + ": " + written(value)
	} else if text := c.expectedBy(property); text != "" {
		expected += ", " + text
	}
	return finding.Problem{At: c.node.MissingAt(key), Message: message, Expected: expected}
}

func (c complaint) unknownKeys() (found []finding.Problem) {
	keys := c.keys()
	for _, m := range c.node.Members {
		if !slices.Contains(keys, m.Key) {
			found = append(found, finding.Problem{
				At:       m.KeyAt,
				Message:  short(m.Key) + " is not a key here",
				Expected: meant(m.Key, keys) + "keys here: " + list(keys),
			})
		}
	}
	return found
}

func (c complaint) wrongForm() []finding.Problem {
	if strings.TrimSpace(c.node.Text) == "" {
		return c.one(c.node.At, c.node.Name()+" is empty", c.orNothing("a text"))
	}
	return c.one(c.node.At, fmt.Sprintf("%s is not in the form of %s", quoted(c.node.Text), c.node.Name()), c.expected())
}

func (c complaint) noDay() []finding.Problem {
	_, _, err := ParseDay(c.node.Text)
	if err == nil {
		err = errors.New("is not what belongs here")
	}
	return c.one(c.node.At, quoted(c.node.Text)+" "+err.Error(), DayForm)
}

func (c complaint) noQuantity() []finding.Problem {
	a, err := newAmount(c.schema["quantity"])
	if err != nil {
		return c.one(c.node.At, err.Error(), "")
	}
	if c.node.Kind == Scalar {
		if bad := a.fault(c.node.Text); bad != nil {
			return c.one(c.node.At, bad.Why, bad.Expected)
		}
	}
	texts, _ := c.node.Texts()
	if _, err = quantity.ParseReadings(texts, a.of); err == nil {
		err = errors.New(c.node.Name() + " is not what belongs here")
	}
	return c.one(c.node.At, err.Error(), c.expected())
}

func (c complaint) wrongCount() []finding.Problem {
	if len(c.node.Items) == 0 {
		return c.one(c.node.At, c.node.Name()+" is an empty list", c.orNothing("an entry"))
	}
	wanted := written(c.schema[c.keyword])
	return c.one(c.node.At, fmt.Sprintf("%s lists %d, and %s belong there", c.node.Name(), len(c.node.Items), wanted), c.expected())
}

func (c complaint) notHere() []finding.Problem {
	return c.one(c.node.KeyAt, c.node.Name()+" can't stand here", c.expected())
}

// orNothing is what would be right for a value that may as well be left out.
func (c complaint) orNothing(otherwise string) string {
	expected := or(c.expected(), otherwise)
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
	return or(c.expectedBy(c.node.wanted), c.expectedBy(c.schema))
}

// expectedBy is the text that a schema gives for what would be right, the words
// it takes, or its examples.
func (c complaint) expectedBy(schema map[string]any) string {
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

// referred is the schema that another refers to.
func (c complaint) referred(schema map[string]any) map[string]any {
	ref, _ := schema["$ref"].(string)
	if !strings.HasPrefix(ref, "#") {
		return nil
	}
	to, _ := lookUp(c.root, ref[1:]).(map[string]any)
	return to
}

// keys are those that a mapping may hold, in alphabetical order.
func (c complaint) keys() []string {
	properties, _ := c.schema["properties"].(map[string]any)
	return slices.Sorted(maps.Keys(properties))
}

func stringsOf(v any) (texts []string) {
	values, _ := v.([]any)
	for _, value := range values {
		if text, ok := value.(string); ok {
			texts = append(texts, text)
		}
	}
	return texts
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

func or(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
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
