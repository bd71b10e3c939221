package schema

import (
	"encoding/json"
	"testing"
)

func TestSchemasAreThere(t *testing.T) {
	ids := map[string]bool{}
	for name, src := range map[string][]byte{"plan": Plan(), "pack": Pack(), "report": Report()} {
		var s struct {
			ID    string `json:"$id"`
			Draft string `json:"$schema"`
		}
		if err := json.Unmarshal(src, &s); err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if s.ID == "" || ids[s.ID] || s.Draft != "https://json-schema.org/draft/2020-12/schema" {
			t.Errorf("%s: $id %q, $schema %q", name, s.ID, s.Draft)
		}
		ids[s.ID] = true
	}
	if read("nothing") != nil {
		t.Error("a schema that is not there has bytes")
	}
}
