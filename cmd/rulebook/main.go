// Command rulebook writes rules/BOOK.md from the rule packs that come with the
// program, so that a reader finds each rule in words: what it asks, why, with what
// limits, who says so and who decides. Run it from the top folder:
//
//	go run ./cmd/rulebook
package main

import (
	"bytes"
	"fmt"
	"os"

	"chainwale/engine/fact"
	"chainwale/engine/rule"
	"chainwale/rules"
)

const bookFile = "rules/BOOK.md"

func main() {
	book, err := write()
	if err == nil {
		err = os.WriteFile(bookFile+".new", book, 0o644)
	}
	if err == nil {
		err = os.Rename(bookFile+".new", bookFile)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "rulebook:", err)
		os.Exit(1)
	}
}

// write makes the book.
func write() ([]byte, error) {
	c, err := fact.TheCatalogue()
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	fmt.Fprint(&b, preface)
	for _, name := range rules.Packs() {
		pack, problems := rule.Load(rules.FS, name, "rules/"+name, c, rule.LoadOptions{})
		if len(problems) > 0 {
			return nil, fmt.Errorf("%s:%d: %s", problems[0].At.File, problems[0].At.Line, problems[0].Message)
		}
		writePack(&b, pack)
	}
	return b.Bytes(), nil
}

const preface = `# Rule book

Made from the packs in this folder by ` + "`go run ./cmd/rulebook`" + `; change the packs, not this file.

A rule holds only on a true comparison of known, finite numbers. Bands are tried from the worst down; the first
that is not met gives the grade: stop (do not go on with what it holds up), mend (change the plan), watch (know
it, and look again). How a limit is known: published, common practice, computed, memory, judgement.

It advises. A qualified rigger, surveyor, naval architect and local code decide.
`
