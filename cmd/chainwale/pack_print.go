package main

import (
	"bytes"
	"fmt"
	"strings"

	"chainwale/engine/rule"
	"chainwale/engine/rulebook"
)

type packPrintVerb struct {
	packArg
	As  string `help:"How to print: markdown or html." enum:"markdown,html" default:"markdown"`
	Out string `help:"A folder to write the book into, as PACK.md or PACK.html; a file there that was changed by hand is left alone." placeholder:"DIR"`
}

// Run prints the rule book of the pack.
func (v packPrintVerb) Run(s streams) error {
	pack, _, err := v.load(s)
	if err != nil {
		return err
	}
	var book bytes.Buffer
	if err := v.print(&book, pack); err != nil {
		fmt.Fprintf(s.err, "chainwale: %v\nchainwale pack prove %s shows where.\n", err, v.Dir)
		return ended(statusFindings)
	}
	if v.Out == "" {
		_, err := s.out.Write(book.Bytes())
		return err
	}
	return v.write(s, pack, book.Bytes())
}

// print writes the book as it was asked for.
func (v packPrintVerb) print(book *bytes.Buffer, pack *rule.Pack) error {
	short := strings.TrimPrefix(pack.Hash, "sha256:")[:12]
	o := rulebook.Options{
		Title: "Rule book of the pack " + pack.ID, Command: "chainwale pack print",
		From: fmt.Sprintf("edition %s of the pack, whose hash begins with %s,", pack.Edition, short),
	}
	if v.As == "html" {
		return rulebook.HTML(book, []*rule.Pack{pack}, o)
	}
	return rulebook.Markdown(book, []*rule.Pack{pack}, o)
}

// write puts the book into the folder.
func (v packPrintVerb) write(s streams, pack *rule.Pack, book []byte) error {
	name := pack.ID + map[string]string{"markdown": ".md", "html": ".html"}[v.As]
	written, err := writeOut(v.Out, name, book)
	if err != nil {
		fmt.Fprintf(s.err, "chainwale: %v\n", err)
		return ended(statusInput)
	}
	if written.beside {
		fmt.Fprintf(s.err, "chainwale: %s is not as this program left it and was left alone; the new one is %s\n", written.wanted, written.name)
		return ended(statusFindings)
	}
	fmt.Fprintf(s.out, "%s is written.\n", written.name)
	return nil
}
