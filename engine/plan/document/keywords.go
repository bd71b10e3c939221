package document

import (
	"fmt"
	"strings"
)

// silent are the keywords that no value can break by themselves.
var silent = map[string]bool{
	"$schema": true, "$id": true, "$defs": true, "$ref": true,
	"title": true, "description": true, "examples": true, "expected": true,
	"properties": true, "items": true, "if": true, "then": true,
}

// known refuses a schema with a keyword that we have no words for: whoever broke
// it would be told nothing that helps. Words are added in says.
func known(schema any, pointer string) error {
	keywords, ok := schema.(map[string]any)
	if !ok {
		return nil
	}
	for keyword, value := range keywords {
		at := pointer + "/" + escape(keyword)
		if _, told := says[keyword]; !told && !silent[keyword] {
			return fmt.Errorf("there are no words for the keyword at %s", at)
		}
		if ref, ok := value.(string); ok && keyword == "$ref" && !strings.HasPrefix(ref, "#/") {
			return fmt.Errorf("%s leads out of the schema", at)
		}
		if err := knownParts(keyword, value, at); err != nil {
			return err
		}
	}
	return nil
}

// knownParts looks into the schemas that stand under a keyword.
func knownParts(keyword string, value any, at string) error {
	switch keyword {
	case "items", "additionalProperties", "if", "then", "not":
		return known(value, at)
	case "properties", "$defs":
		parts, _ := value.(map[string]any)
		for name, part := range parts {
			if err := known(part, at+"/"+escape(name)); err != nil {
				return err
			}
		}
	}
	return nil
}
