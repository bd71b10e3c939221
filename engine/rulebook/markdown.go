package rulebook

import (
	"bytes"
	"fmt"
	"io"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"chainwale/engine/rule"
)

// Markdown writes the book of some packs as Markdown, whole or not at all.
func Markdown(w io.Writer, packs []*rule.Pack, o Options) error {
	var b bytes.Buffer
	preface(&b, o)
	var all []page
	var chapters bytes.Buffer
	for _, p := range packs {
		pages, err := pagesOf(p)
		if err != nil {
			return err
		}
		all = append(all, pages...)
		chapter(&chapters, p, pages)
	}
	glance := o.Glance
	if glance == "" {
		glance = "The rules at a glance"
	}
	if len(all) > 0 {
		fmt.Fprintf(&b, "\n## %s\n\n", glance)
		contents(all).markdown(&b)
	}
	b.Write(chapters.Bytes())
	fmt.Fprintf(&b, "\n%s\n", advises)
	_, err := w.Write(b.Bytes())
	return err
}

// preface says how the book is read.
func preface(b *bytes.Buffer, o Options) {
	fmt.Fprintf(b, "# %s\n\n%s\n\n", prose(o.Title), advises)
	filled(b, fmt.Sprintf("Made from %s by %s. Change the packs, not this file.", prose(o.From), codeSpan(o.Command)))
	filled(b, howBands)
	for _, g := range grades {
		fmt.Fprintf(b, "- **%s**: %s\n", g.Grade, g.Means)
	}
	fmt.Fprintln(b)
	filled(b, strings.NewReplacer("{have}", "`{have}`", "{need}", "`{need}`").Replace(howHolds))
	filled(b, howKnown)
}

// filled writes a paragraph of ours, broken at a width that reads well as it stands.
func filled(b *bytes.Buffer, paragraph string) {
	const width = 115
	length := 0
	for word := range strings.FieldsSeq(paragraph) {
		n := utf8.RuneCountInString(word)
		switch {
		case length > 0 && length+1+n > width:
			b.WriteByte('\n')
			length = 0
		case length > 0:
			b.WriteByte(' ')
			length++
		}
		b.WriteString(word)
		length += n
	}
	b.WriteString("\n\n")
}

// chapter writes a pack's page and its rules.
func chapter(b *bytes.Buffer, p *rule.Pack, pages []page) {
	fmt.Fprintf(b, "## Pack %s: %s\n\n", p.ID, prose(oneLine(p.Title)))
	if p.Scope != "" {
		fmt.Fprintf(b, "%s\n\n", prose(oneLine(p.Scope)))
	}
	author := ""
	if p.Author != "" {
		author = "Author: " + prose(oneLine(p.Author)) + ", edition "
	} else {
		author = "Edition "
	}
	fmt.Fprintf(b, "%s%s.\n", author, prose(oneLine(p.Edition)))
	if len(p.NotCovered) > 0 {
		fmt.Fprint(b, "\nIt does not cover:\n\n")
		for _, n := range p.NotCovered {
			fmt.Fprintf(b, "- %s\n", prose(oneLine(n)))
		}
	}
	if len(p.Changes) > 0 {
		fmt.Fprint(b, "\nIt changes rules of other packs:\n\n")
		for _, c := range p.Changes {
			fmt.Fprintf(b, "- %s: %s, because %s\n", codeSpan(c.Rule), prose(c.Says()), prose(oneLine(c.Reason)))
		}
	}
	for _, page := range pages {
		page.markdown(b)
	}
	fmt.Fprintln(b)
}

// markdown writes one rule: what it says and why, its limits, what it reads, and who
// stands behind it. The anchor is its id, so that titles may change.
func (p page) markdown(b *bytes.Buffer) {
	fmt.Fprintf(b, "\n<a id=\"%s\"></a>\n\n### %s\n\n", p.ID, prose(p.Title))
	fmt.Fprintf(b, "`%s` judges each %s: %s.", p.ID, prose(p.Thing), prose(p.Means))
	if p.AppliesIf != "" {
		fmt.Fprintf(b, " It applies where %s.", codeSpan(p.AppliesIf))
	}
	fmt.Fprintf(b, "\n\n> %s\n\n", prose(p.Says))
	for _, o := range p.Others {
		fmt.Fprintf(b, "> %s: %s\n\n", o.Grade, prose(o.Says))
	}
	fmt.Fprintf(b, "%s\n\n", prose(p.Because))
	p.Limits.markdown(b)
	p.Reads.markdown(b)
	fmt.Fprint(b, "Who says so:\n\n")
	for _, s := range p.Sources {
		behind := ""
		if s.For != "" {
			behind = ", for " + prose(s.For)
		}
		fmt.Fprintf(b, "- %s%s\n", prose(s.Who), behind)
	}
	fmt.Fprintln(b)
	if len(p.Vary) > 0 {
		fmt.Fprintf(b, "An owner can change: `%s`. ", strings.Join(p.Vary, "`, `"))
	}
	fmt.Fprintf(b, "%s\n", prose(p.ProvenSentence))
}

// marks are what means something to Markdown within a line.
var marks = strings.NewReplacer(`\`, `\\`, "`", "\\`", "*", `\*`, "[", `\[`, "]", `\]`, "~", `\~`, "&", "&amp;", "<", "&lt;", ">", "&gt;")

// opens is what means something at the beginning of a line: a heading, a rule, an
// entry of a list or of a numbered one.
var opens = regexp.MustCompile(`^(?:([#+-]+)|([0-9]+)[.)])(?: |$)`)

// prose makes a text of a pack mean itself in Markdown. A line under a word joins it
// and needs nothing; at the edge of a word it would set the word in italics.
func prose(text string) string {
	text = marks.Replace(text)
	runes := []rune(text)
	var out strings.Builder
	for i, r := range runes {
		if r == '_' && (i == 0 || i == len(runes)-1 || !inWord(runes[i-1]) || !inWord(runes[i+1])) {
			out.WriteByte('\\')
		}
		out.WriteRune(r)
	}
	text = out.String()
	if m := opens.FindStringSubmatch(text); m != nil {
		return m[2] + `\` + text[len(m[2]):]
	}
	return text
}

func inWord(r rune) bool { return r == '_' || unicode.IsLetter(r) || unicode.IsDigit(r) }

// codeSpan is an expression in as many backticks as it takes to hold its own.
func codeSpan(expression string) string {
	expression = oneLine(expression)
	fence := "`"
	for strings.Contains(expression, fence) {
		fence += "`"
	}
	if len(fence) > 1 {
		return fence + " " + expression + " " + fence
	}
	return fence + expression + fence
}
