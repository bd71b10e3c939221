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
	"chainwale/engine/rulebook"
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
	count := 0
	for _, p := range packs {
		count += len(p.Rules)
	}
	var b bytes.Buffer
	err = rulebook.Markdown(&b, packs, rulebook.Options{
		Title: "Rule book", From: "the packs in this folder", Command: "go run ./cmd/rulebook",
		Glance: fmt.Sprintf("The %d rules at a glance", count),
	})
	return b.Bytes(), err
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
