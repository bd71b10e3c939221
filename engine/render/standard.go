package render

import (
	"fmt"
	"io"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/standard"
)

// StandardListed is one standard of a list; Fault says why it can't be asked.
type StandardListed struct {
	ID      string `json:"id"`
	Title   string `json:"title"`
	Edition string `json:"edition"`
	Basis   string `json:"basis"`
	Hash    string `json:"hash"`
	From    string `json:"from"`
	Fault   string `json:"fault"`
}

// StandardsText lists standards for a person.
func StandardsText(w io.Writer, list []StandardListed) error {
	t := &text{out: w}
	for _, l := range list {
		t.line("%s (%s)", l.ID, l.From)
		if l.Fault != "" {
			t.prose("    ", "can't be asked: "+l.Fault)
			continue
		}
		t.prose("    ", l.Title+", edition "+l.Edition)
		t.prose("    ", basisWords[standard.Basis(l.Basis)])
	}
	t.line("")
	t.prose("", "A plan names them under standards, or chainwale check by --standard ID. What they say is to be watched, unless the plan lists them under must_meet.")
	return t.err
}

// basisWords say on which footing strengths stand.
var basisWords = map[standard.Basis]string{
	standard.Ultimate: "strengths are nominal ultimate ones, against the load at which the wire breaks",
	standard.Design:   "strengths are design values with their safety factors in them, against the wire's load at work",
}

// StandardsJSON lists standards for a program.
func StandardsJSON(w io.Writer, list []StandardListed) error { return indented(w, list) }

// StandardText shows one standard for a person: what it covers and what not, what it
// reads and derives, and the rules by which it judges.
func StandardText(w io.Writer, d standard.Description, rules []finding.Ruled) error {
	t := &text{out: w}
	t.line("%s", d.ID)
	t.prose("", d.Title+", edition "+d.Edition)
	t.prose("", "Published by: "+d.Publisher)
	t.prose("", "Basis: "+basisWords[d.Basis])
	t.line("%s", d.Hash())
	t.line("")
	t.clauses("Clauses that are covered", d.Clauses, true)
	t.clauses("Clauses that are not covered", d.Clauses, false)
	for _, table := range d.Tables {
		t.table(d.Prefix, table)
	}
	t.rules(rules)
	return t.err
}

func (t *text) clauses(title string, clauses []standard.Clause, covered bool) {
	var items []string
	for _, c := range clauses {
		if c.Covered == covered {
			items = append(items, c.Clause+": "+c.Why)
		}
	}
	t.list(title, items)
}

func (t *text) table(prefix string, table standard.Table) {
	var reads []string
	for _, r := range table.Reads {
		reads = append(reads, strings.TrimSpace(r.Name+" "+r.Unit))
	}
	t.line("What it reads of each %s", strings.ReplaceAll(table.Kind, "_", " "))
	t.prose("  ", strings.Join(reads, ", "))
	t.line("")
	t.line("What it derives")
	for _, f := range table.Derives {
		unit := f.Unit
		if unit == "" {
			unit = "a bare number"
		}
		t.prose("  ", fmt.Sprintf("%s.%s, %s, by %s", prefix, f.Name, unit, f.Clause))
		t.prose("      ", f.Meaning)
	}
	t.line("")
}

func (t *text) rules(rules []finding.Ruled) {
	t.line("Rules by which it judges; where the plan does not list the standard under must_meet, all are to be watched")
	for _, r := range rules {
		t.prose("  ", r.ID+": "+r.Title)
		if r.Applies != "" {
			t.prose("      ", "where "+r.Applies)
		}
		for _, b := range r.Bands {
			t.prose("      ", band(r, b))
		}
		t.prose("      ", "cannot tell: "+string(r.IfUnknown))
	}
}

// band is one limit in a line.
func band(r finding.Ruled, b finding.RuledBand) string {
	line := strings.TrimSpace(r.Have + " " + strings.ReplaceAll(b.Verb, "_", " ") + " " + b.Limit)
	if b.Verb == "true_that" {
		line = b.Limit
	}
	line += ", else " + string(b.Else)
	if b.Applies != "" {
		line += " (where " + b.Applies + ")"
	}
	return line
}

// StandardJSON shows one standard for a program.
func StandardJSON(w io.Writer, d standard.Description, rules []finding.Ruled) error {
	type clause struct {
		Clause  string `json:"clause"`
		Covered bool   `json:"covered"`
		Why     string `json:"why"`
	}
	type read struct {
		Name string `json:"name"`
		Type string `json:"type"`
		Unit string `json:"unit"`
	}
	type derive struct {
		Name    string   `json:"name"`
		Unit    string   `json:"unit"`
		Clause  string   `json:"clause"`
		Meaning string   `json:"meaning"`
		From    []string `json:"from"`
		Bears   bool     `json:"bears"`
	}
	type table struct {
		Kind    string   `json:"kind"`
		Reads   []read   `json:"reads"`
		Derives []derive `json:"derives"`
	}
	shown := struct {
		Contract  int             `json:"contract"`
		ID        string          `json:"id"`
		Prefix    string          `json:"prefix"`
		Title     string          `json:"title"`
		Edition   string          `json:"edition"`
		Publisher string          `json:"publisher"`
		Basis     string          `json:"basis"`
		Hash      string          `json:"hash"`
		Clauses   []clause        `json:"clauses"`
		Tables    []table         `json:"tables"`
		Rules     []finding.Ruled `json:"rules"`
	}{Contract: d.Contract, ID: d.ID, Prefix: d.Prefix, Title: d.Title, Edition: d.Edition, Publisher: d.Publisher, Basis: string(d.Basis), Hash: d.Hash(),
		Clauses: []clause{}, Tables: []table{}, Rules: rules}
	for _, c := range d.Clauses {
		shown.Clauses = append(shown.Clauses, clause(c))
	}
	for _, given := range d.Tables {
		t := table{Kind: given.Kind, Reads: []read{}, Derives: []derive{}}
		for _, r := range given.Reads {
			t.Reads = append(t.Reads, read{r.Name, string(r.Type), r.Unit})
		}
		for _, f := range given.Derives {
			t.Derives = append(t.Derives, derive{f.Name, f.Unit, f.Clause, f.Meaning, append([]string{}, f.From...), f.Bears})
		}
		shown.Tables = append(shown.Tables, t)
	}
	return indented(w, shown)
}
