// Package render turns what the engine found into something to read: text for a
// person, JSON for a program. It never computes: what it prints stands in the
// report or in the facts.
package render

import (
	"encoding/json"
	"io"

	"chainwale/engine/finding"
)

// JSON writes the report as schema/report.schema.json describes it.
func JSON(w io.Writer, r finding.Report) error { return indented(w, r) }

// indented writes a value as JSON that a person can read too.
func indented(w io.Writer, v any) error {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", "  ")
	return out.Encode(v)
}
