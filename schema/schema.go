// Package schema holds the JSON Schemas of the files that chainwale reads and
// writes, embedded. Editors read the same files to complete keys and show what
// each key means, so the descriptions are written for whoever fills one in.
package schema

import "embed"

//go:embed *.schema.json
var files embed.FS

// Plan is the schema of a boat's plan.
func Plan() []byte { return read("plan") }

// Pack is the schema of a rule pack's files.
func Pack() []byte { return read("pack") }

// Report is the schema of the report that a check writes as JSON.
func Report() []byte { return read("report") }

// read gives the bytes of one schema, nil if the program was built without it.
func read(name string) []byte {
	b, err := files.ReadFile(name + ".schema.json")
	if err != nil {
		return nil
	}
	return b
}
