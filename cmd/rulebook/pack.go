package main

import (
	"fmt"
	"io"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/rule"
)

// writePack writes a pack's page and its rules. A rule that its own examples don't
// prove has no place in a book.
func writePack(w io.Writer, p *rule.Pack) error {
	fmt.Fprintf(w, "## Pack %s: %s\n\n%s\n\nAuthor: %s, edition %s.\n", p.ID, p.Title, p.Scope, p.Author, p.Edition)
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
	fmt.Fprintln(w)
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
	fmt.Fprintf(w, "\n\n> %s\n\n", r.Says)
	for _, b := range r.Bands {
		if b.Says != "" {
			fmt.Fprintf(w, "> %s: %s\n\n", b.Else, b.Says)
		}
	}
	fmt.Fprintf(w, "%s\n\n", oneLine(r.Because))
	writeBands(w, r)
	writeFacts(w, r)
	writeSources(w, r)
	if len(r.Vary) > 0 {
		fmt.Fprintf(w, "An owner can change: `%s`. ", strings.Join(r.Vary, "`, `"))
	}
	fmt.Fprintf(w, "Decides: %s. Proven by %d examples in its file.\n", strings.Join(r.Decides, ", then "), examples)
}

// verbs say a limit as a reader would.
var verbs = map[rule.Verb]string{rule.AtLeast: "at least", rule.AtMost: "at most", rule.Above: "more than", rule.Below: "less than", rule.TrueThat: "it is true that"}

// writeBands writes the limits, the worst first, and what an unknown weighs.
func writeBands(w io.Writer, r *rule.Rule) {
	t := table{head: []string{"what there is", "limit", "counts where", "if not met", "holds up"}}
	holdsUp := func(g finding.Grade) string {
		if g != finding.Stop {
			return ""
		}
		return r.HoldsUp
	}
	for _, b := range r.Bands {
		have := code(r.Have)
		if b.Verb == rule.TrueThat {
			have = ""
		}
		t.row(have, verbs[b.Verb]+" "+code(b.Limit), code(b.AppliesIf), string(b.Else), holdsUp(b.Else))
	}
	t.row("", "if not known", "", string(r.IfUnknown), holdsUp(r.IfUnknown))
	t.write(w)
}

// writeFacts lists what the rule reads.
func writeFacts(w io.Writer, r *rule.Rule) {
	t := table{head: []string{"reads", "unit or words", "meaning"}}
	for _, name := range r.Reads {
		if i, ok := r.Kind.SlotOf(name); ok {
			slot := r.Kind.Slots[i]
			t.row(code(name), unit(slot.Column), slot.Means)
		}
	}
	t.write(w)
}

// unit is what a fact is counted in, or the words that it may be.
func unit(c *fact.Column) string {
	switch {
	case c.Sort == fact.IsYesNo:
		return "yes or no"
	case c.Sort == fact.IsWord && len(c.Words) > 0:
		return strings.Join(c.Words, ", ")
	case c.Sort == fact.IsWord:
		return "a word"
	case c.Dimension.Unit() == "":
		return "a number"
	}
	return c.Dimension.Unit()
}

// writeSources says who stands behind the rule, and behind what of it.
func writeSources(w io.Writer, r *rule.Rule) {
	fmt.Fprint(w, "Who says so:\n\n")
	for _, k := range r.Known {
		behind := ""
		if k.For != "" {
			behind = ", for " + k.For
		}
		fmt.Fprintf(w, "- %s%s\n", k, behind)
	}
	fmt.Fprintln(w)
}

// thing is a kind of subject as a word.
func thing(kind string) string { return strings.ReplaceAll(kind, "_", " ") }

// oneLine joins what stands on several lines.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// code is an expression as it is written, "" if there is none.
func code(expression string) string {
	if expression == "" {
		return ""
	}
	return "`" + oneLine(expression) + "`"
}
