// Command rulebook writes rules/BOOK.md from the rule packs that come with the
// program, so that a reader finds each rule in words: what it asks, why, with what
// limits, who says so and who decides. Run it from the top folder:
//
//	go run ./cmd/rulebook
package main

import (
	"bytes"
	"fmt"
	"io"
	"os"

	"chainwale/engine/fact"
	"chainwale/engine/rule"
	"chainwale/rules"
)

const bookFile = "rules/BOOK.md"

func main() {
	book, err := write()
	if err == nil {
		err = save(book)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "rulebook:", err)
		os.Exit(1)
	}
}

// save puts the book in its place, whole or not at all.
func save(book []byte) error {
	if err := os.WriteFile(bookFile+".new", book, 0o644); err != nil {
		return err
	}
	return os.Rename(bookFile+".new", bookFile)
}

// write makes the book.
func write() ([]byte, error) {
	packs, err := load()
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	fmt.Fprint(&b, preface)
	writeContents(&b, packs)
	for _, p := range packs {
		if err := writePack(&b, p); err != nil {
			return nil, err
		}
	}
	return b.Bytes(), nil
}

// load reads the packs in the order in which they judge.
func load() ([]*rule.Pack, error) {
	c, err := fact.TheCatalogue()
	if err != nil {
		return nil, err
	}
	var packs []*rule.Pack
	for _, name := range rules.Packs() {
		pack, problems := rule.Load(rules.FS, name, "rules/"+name, c, rule.LoadOptions{})
		if len(problems) > 0 {
			p := problems[0]
			return nil, fmt.Errorf("%s:%d:%d: %s", p.At.File, p.At.Line, p.At.Column, p.Message)
		}
		packs = append(packs, pack)
	}
	return packs, nil
}

const preface = `# Rule book

Made from the packs in this folder by ` + "`go run ./cmd/rulebook`" + `. Change the packs, not this file.

Each rule judges one kind of thing, such as a stay where it lands on a plate. Its limits are tried from the top of
its table down, and the first that is not met gives the grade:

- **stop**: do not go on with what it holds up
- **mend**: change the plan
- **watch**: know it, and look again

A rule holds only on a true comparison of known, finite numbers. What is not known never passes: it is a finding of
the grade that stands under "if not known", and the report says what to measure. In the sentence of a rule, what
stands in braces is filled in: ` + "`{have}`" + ` is what there is, ` + "`{need}`" + ` the limit.

How far a source is known is said behind it: published, common practice, computed, memory, judgement. "After" a
standard means that its text was not seen.

This advises. A qualified rigger, surveyor, naval architect and local code decide.
`

// writeContents lists packs and rules with the worst that each can say.
func writeContents(w io.Writer, packs []*rule.Pack) {
	t := table{head: []string{"pack", "rule", "holds if", "judges each", "at worst"}}
	for _, p := range packs {
		for _, r := range p.Rules {
			t.row(p.ID, fmt.Sprintf("[`%s`](#%s)", r.ID, r.ID), r.Title, thing(r.Kind.Name), string(r.Bands[0].Else))
		}
	}
	fmt.Fprintf(w, "\n## The %d rules at a glance\n\n", len(t.rows))
	t.write(w)
}
