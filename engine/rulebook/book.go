// Package rulebook prints rule packs as a book to read: what each rule asks, why,
// with what limits, what it reads, who says so and who decides. The same pages come
// out as Markdown and as HTML, and the same packs always give the same bytes.
//
// Whatever stands in a pack is text: neither its marks nor its brackets mean anything
// to the reader's program.
package rulebook

import (
	"fmt"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/rule"
)

// Options say how a book is titled.
type Options struct {
	// Title is the book's heading.
	Title string
	// From says what the book was made from, Command by which command.
	From, Command string
	// Glance is the heading of the list of all rules; empty for "The rules at a glance".
	Glance string
}

// howToRead are the paragraphs that every book begins with. The lines of the middle
// list the grades.
const (
	howBands = "Each rule judges one kind of thing, such as a stay where it lands on a plate. Its limits are tried from the top of its table down, and the first that is not met gives the grade:"
	howHolds = "A rule holds only on a true comparison of known, finite numbers. What is not known never passes: it is a finding of the grade that stands under \"if not known\", and the report says what to measure. In the sentence of a rule, what stands in braces is filled in: {have} is what there is, {need} the limit."
	howKnown = "How far a source is known is said behind it: published, common practice, computed, memory, judgement. \"After\" a standard means that its text was not seen."
	advises  = "This advises. A qualified rigger, surveyor, naval architect and local code decide."
)

// grades are what each grade asks for.
var grades = []struct {
	Grade finding.Grade
	Means string
}{
	{finding.Stop, "do not go on with what it holds up"},
	{finding.Mend, "change the plan"},
	{finding.Watch, "know it, and look again"},
}

// page is one rule as it is printed.
type page struct {
	ID, Title, Thing, Means string
	AppliesIf, Says         string
	// Others are the sentences that bands have of their own, each with its grade.
	Others         []other
	Because        string
	Limits, Reads  table
	Sources        []source
	Vary           []string
	Decides        string
	Examples       int
	Pack, AtWorst  string
	ProvenSentence string
}

type other struct{ Grade, Says string }

// source is who stands behind a rule, and behind what of it.
type source struct{ Who, For string }

// pagesOf makes the pages of a pack. A rule that its own examples don't prove has no
// place in a book.
func pagesOf(p *rule.Pack) ([]page, error) {
	examples := map[string]int{}
	for _, e := range p.Prove() {
		if !e.Proven {
			return nil, fmt.Errorf("the pack %s is not proven: %s", p.ID, e)
		}
		examples[e.Rule]++
	}
	var pages []page
	for _, r := range p.Rules {
		pages = append(pages, pageOf(r, p.ID, examples[r.ID]))
	}
	return pages, nil
}

func pageOf(r *rule.Rule, pack string, examples int) page {
	p := page{
		ID: r.ID, Title: oneLine(r.Title), Thing: thing(r.Kind.Name), Means: r.Kind.Means,
		AppliesIf: oneLine(r.AppliesIf), Says: oneLine(r.Says), Because: oneLine(r.Because),
		Limits: limits(r), Reads: reads(r), Vary: r.Vary, Decides: strings.Join(r.Decides, ", then "),
		Examples: examples, Pack: pack, AtWorst: string(r.Bands[0].Else),
	}
	for _, b := range r.Bands {
		if b.Says != "" {
			p.Others = append(p.Others, other{string(b.Else), oneLine(b.Says)})
		}
	}
	for _, k := range r.Known {
		p.Sources = append(p.Sources, source{oneLine(k.String()), oneLine(k.For)})
	}
	p.ProvenSentence = fmt.Sprintf("Decides: %s. Proven by %d examples in its file.", oneLine(p.Decides), examples)
	return p
}

// verbs say a limit as a reader would.
var verbs = map[rule.Verb]string{rule.AtLeast: "at least", rule.AtMost: "at most", rule.Above: "more than", rule.Below: "less than", rule.TrueThat: "it is true that"}

// limits are the limits, the worst first, and what an unknown weighs.
func limits(r *rule.Rule) table {
	t := table{Caption: "Limits of " + r.ID, Head: []string{"what there is", "limit", "counts where", "if not met", "holds up"}}
	holdsUp := func(g finding.Grade) cell {
		if g != finding.Stop {
			return cell{}
		}
		return words(r.HoldsUp)
	}
	for _, b := range r.Bands {
		have := code(r.Have)
		if b.Verb == rule.TrueThat {
			have = cell{}
		}
		t.row(have, cell{Words: verbs[b.Verb], Code: oneLine(b.Limit)}, code(b.AppliesIf), words(string(b.Else)), holdsUp(b.Else))
	}
	t.row(cell{}, words("if not known"), cell{}, words(string(r.IfUnknown)), holdsUp(r.IfUnknown))
	return t
}

// reads are the facts that a rule reads.
func reads(r *rule.Rule) table {
	t := table{Caption: "What " + r.ID + " reads", Head: []string{"reads", "unit or words", "meaning"}}
	for _, name := range r.Reads {
		if i, ok := r.Kind.SlotOf(name); ok {
			slot := r.Kind.Slots[i]
			t.row(code(name), words(Unit(slot.Column)), words(slot.Means))
		}
	}
	return t
}

// Unit is what a fact is counted in, or the words that it may be.
func Unit(c *fact.Column) string {
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

// contents lists all rules with the worst that each can say.
func contents(pages []page) table {
	t := table{Head: []string{"pack", "rule", "holds if", "judges each", "at worst"}}
	for _, p := range pages {
		t.row(words(p.Pack), cell{Code: p.ID, link: true}, words(p.Title), words(p.Thing), words(p.AtWorst))
	}
	return t
}

// thing is a kind of subject as a word.
func thing(kind string) string { return strings.ReplaceAll(kind, "_", " ") }

// oneLine joins what stands on several lines.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
