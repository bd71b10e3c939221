package rule

import (
	"encoding/json"
	"strings"
	"sync"

	"chainwale/schema"
)

// definitions are the parts of the pack schema by what problems call them.
var definitions = map[string]string{
	"pack.yaml": "pack", "a rule": "rule", "a band": "band", "a source": "source", "an example": "example", "a change": "change",
}

// descriptions are what the published schema says of each key, part by part. They are
// read when a key is missing, and say the same as an editor does that knows the schema.
var descriptions = sync.OnceValue(func() map[string]map[string]string {
	var s struct {
		Defs map[string]struct {
			Properties map[string]struct{ Description string }
		} `json:"$defs"`
	}
	if err := json.Unmarshal(schema.Pack(), &s); err != nil {
		return nil // a test holds the schema; without it there is no advice
	}
	found := map[string]map[string]string{}
	for what, def := range definitions {
		found[what] = map[string]string{}
		for key, p := range s.Defs[def].Properties {
			found[what][key] = p.Description
		}
	}
	return found
})

// closed are the words of keys that take no others.
var closed = map[string][]string{"else": gradeWords, "as": knownWords, "outcome": outcomeWords}

// keyAdvice says what belongs under a key that is missing, "" for one that is not known.
func keyAdvice(what, key string) string {
	text := strings.TrimSuffix(descriptions()[what][key], ".")
	if text == "" {
		return ""
	}
	if words := closed[key]; len(words) > 0 {
		text += "; " + oneOf(words)
	}
	return key + ": " + strings.ToLower(text[:1]) + text[1:]
}
