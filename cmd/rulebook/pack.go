package main

import (
	"fmt"
	"io"
	"strings"

	"chainwale/engine/rule"
)

func writePack(w io.Writer, p *rule.Pack) {
	fmt.Fprintf(w, "\n## %s\n\nPack `%s`, edition %s, by %s. %s\n", p.Title, p.ID, p.Edition, p.Author, p.Scope)
	if len(p.NotCovered) > 0 {
		fmt.Fprintf(w, "\nIt does not judge %s.\n", strings.Join(p.NotCovered, "; "))
	}
	for _, r := range p.Rules {
		writeRule(w, r)
	}
}

func writeRule(w io.Writer, r *rule.Rule) {
	fmt.Fprintf(w, "\n### %s\n\n`%s` judges %s", r.Title, r.ID, r.Kind.Means)
	if r.AppliesIf != "" {
		fmt.Fprintf(w, ", where `%s`", oneLine(r.AppliesIf))
	}
	fmt.Fprintf(w, ".\n\n%s\n\n> %s\n\n", strings.TrimSpace(r.Because), r.Says)
	writeBands(w, r)
	writeFacts(w, r)
	fmt.Fprintf(w, "Decides: %s.\n", strings.Join(r.Decides, ", then "))
	for _, k := range r.Known {
		fmt.Fprintf(w, "- %s", k)
		if k.For != "" {
			fmt.Fprintf(w, ": %s", k.For)
		}
		fmt.Fprintln(w)
	}
}

// verbs say a band's comparison as a reader would.
var verbs = map[rule.Verb]string{"at_least": "at least", "at_most": "at most", "above": "more than", "below": "less than", "true_that": "true that"}

func writeBands(w io.Writer, r *rule.Rule) {
	fmt.Fprint(w, "| asked | else |\n| --- | --- |\n")
	for _, b := range r.Bands {
		asked := verbs[b.Verb] + " `" + oneLine(b.Limit) + "`"
		if r.Have != "" && b.Verb != "true_that" {
			asked = "`" + oneLine(r.Have) + "` " + asked
		}
		if b.AppliesIf != "" {
			asked += ", where `" + oneLine(b.AppliesIf) + "`"
		}
		grade := string(b.Else)
		if b.Else == "stop" {
			grade += ", holds up " + r.HoldsUp
		}
		fmt.Fprintf(w, "| %s | %s |\n", asked, grade)
	}
	fmt.Fprintf(w, "| not known | %s |\n\n", r.IfUnknown)
}

// writeFacts lists what the rule reads, each with its unit and meaning.
func writeFacts(w io.Writer, r *rule.Rule) {
	for _, name := range r.Reads {
		i, ok := r.Kind.SlotOf(name)
		if !ok {
			continue
		}
		slot := r.Kind.Slots[i]
		unit := slot.Dimension.Unit()
		if unit != "" {
			unit = " (" + unit + ")"
		}
		fmt.Fprintf(w, "- `%s`%s: %s\n", name, unit, slot.Means)
	}
	fmt.Fprintln(w)
}

// oneLine joins an expression over several lines and keeps it from breaking a table.
func oneLine(text string) string {
	return strings.ReplaceAll(strings.Join(strings.Fields(text), " "), "|", `\|`)
}
