package document

import (
	"errors"
	"fmt"
	"maps"
	"slices"
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
		return c.one(n.KeyAt, n.Name()+" has no value", c.orNothing())
	case slices.Contains(types, "object"):
		return c.one(n.At, n.Name()+" "+has+" where keys with values belong", "keys here: "+list(c.keys()))
	case slices.Equal(types, []string{"array"}):
		return c.one(n.At, n.Name()+" "+has+" where a list belongs", c.expected())
	case n.Kind != Scalar:
		return c.one(n.At, n.Name()+" "+has+" where one value belongs", c.expected())
	case slices.Contains(types, "integer") && !n.Plain:
		return c.one(n.At, quoted(n.Text)+" is a text and not a number, since it stands in quotes", c.expected())
	case slices.Contains(types, "integer"):
		return c.one(n.At, quoted(n.Text)+" is not a whole number as it is written here", c.expected())
	}
	return c.one(n.At, quoted(n.Text)+" is not what belongs under "+n.Name(), c.expected())
}

func (c complaint) unknownWord() []finding.Problem {
	if c.node.Kind != Scalar || c.node.Empty() {
		return c.wrongKind()
	}
	words := stringsOf(c.schema["enum"])
	hint := meant(c.node.Text, words)
	if slices.Contains(words, "no") && !strings.EqualFold(hint, "did you mean "+c.node.Text+"? ") {
		hint = "" // "on" is near to "no".
	}
	return c.one(c.node.At, fmt.Sprintf("%s can't stand under %s", quoted(c.node.Text), c.node.Name()), hint+c.expected())
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
	strangers := c.strangers(keys)
	for _, m := range strangers[:min(mostHints, len(strangers))] {
		for _, key := range near.Words(m.Key, keys, 1) {
			misspelt[key] = true
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

// strangers are the members whose keys are not among those.
func (c complaint) strangers(keys []string) (found []*Node) {
	for _, m := range c.node.Members {
		if !slices.Contains(keys, m.Key) {
			found = append(found, m)
		}
	}
	return found
}

// mostHints is for how many unknown keys of a mapping a near one is looked for. A
// mapping with more of them has another fault than spelling, and looking takes time.
const mostHints = 50

func (c complaint) unknownKeys() (found []finding.Problem) {
	keys := c.keys()
	expected := "keys here: " + list(keys)
	for _, m := range c.strangers(keys) {
		hint := ""
		if len(found) < mostHints {
			hint = meant(m.Key, keys)
		}
		found = append(found, finding.Problem{At: m.KeyAt, Message: short(m.Key) + " is not a key here", Expected: hint + expected})
	}
	return found
}

func (c complaint) wrongForm() []finding.Problem {
	if strings.TrimSpace(c.node.Text) == "" {
		return c.one(c.node.At, c.node.Name()+" is empty", c.orNothing())
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
		return c.one(c.node.At, c.node.Name()+" is an empty list", c.orNothing())
	}
	wanted := written(c.schema[c.keyword])
	return c.one(c.node.At, fmt.Sprintf("%s lists %d, and %s belong there", c.node.Name(), len(c.node.Items), wanted), c.expected())
}

func (c complaint) notHere() []finding.Problem {
	return c.one(c.node.KeyAt, c.node.Name()+" can't stand here", c.expected())
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
