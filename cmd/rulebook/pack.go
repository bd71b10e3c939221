package main

import (
	"fmt"
	"io"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/rule"
)

// writePack writes a pack's page and its rules. A rule that its own examples don't
// prove has no place in a book.
func writePack(w io.Writer, p *rule.Pack) error {
	fmt.Fprintf(w, "\n## Pack %s: %s\n\n%s\n\nAuthor: %s, edition %s.\n", p.ID, p.Title, p.Scope, p.Author, p.Edition)
	if len(p.NotCovered) > 0 {
		fmt.Fprint(w, "\nIt does not cover:\n\n")
		for _, n := range p.NotCovered {
			fmt.Fprintf(w, "- %s\n", n)
		}
	}
	examples := map[string]int{}
	for _, e := range p.Prove() {
		if !e.Proven {
			return fmt.Errorf("%s", e)
		}
		examples[e.Rule]++
	}
	for _, r := range p.Rules {
		writeRule(w, r, examples[r.ID])
	}
	return nil
}

// writeRule writes one rule: what it says and why, its limits, what it reads, and
// who stands behind it. The anchor is its id, so that titles may change.
func writeRule(w io.Writer, r *rule.Rule, examples int) {
	fmt.Fprintf(w, "\n<a id=\"%s\"></a>\n\n### %s\n\n", r.ID, r.Title)
	fmt.Fprintf(w, "`%s` judges each %s: %s.", r.ID, thing(r.Kind.Name), r.Kind.Means)
	if r.AppliesIf != "" {
		fmt.Fprintf(w, " It applies where `%s`.", r.AppliesIf)
	}
	fmt.Fprintf(w, "\n\n> %s\n\n%s\n\n", r.Says, oneLine(r.Because))
	writeBands(w, r)
	writeFacts(w, r)
	writeSources(w, r)
	fmt.Fprintf(w, "Decides: %s. Proven by %d examples in its file.\n", strings.Join(r.Decides, ", then "), examples)
}

// verbs say a band's comparison as a reader would.
var verbs = map[rule.Verb]string{rule.AtLeast: "at least", rule.AtMost: "at most", rule.Above: "more than", rule.Below: "less than"}

// writeBands writes the limits, the worst first, and what an unknown weighs. A
// column that would stay empty is left out.
func writeBands(w io.Writer, r *rule.Rule) {
	where, holdsUp := false, false
	for _, b := range r.Bands {
		where = where || b.AppliesIf != ""
		holdsUp = holdsUp || stops(b)
	}
	t := table{w}
	t.head("asked", some(where, "where"), "otherwise", some(holdsUp, "holds up"))
	for _, b := range r.Bands {
		t.row(asked(r, b), optional(where, code(b.AppliesIf)), column(string(b.Else)), optional(holdsUp, some(stops(b), r.HoldsUp)))
	}
	t.row(column("if not known"), optional(where, ""), column(string(r.IfUnknown)), optional(holdsUp, some(r.IfUnknown == "stop", r.HoldsUp)))
	fmt.Fprintln(w)
}
