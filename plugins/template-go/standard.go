package main

import (
	"embed"
	"io/fs"

	"chainwale/engine/standard"
	"chainwale/plugins/clauses"
)

//go:embed pack
var files embed.FS

// pack is the pack of rules that judges the standard's facts.
func pack() fs.FS {
	sub, err := fs.Sub(files, "pack")
	if err != nil {
		panic(err) // only if the line above it were changed
	}
	return sub
}

// book is what the standard declares of itself. Say "after" a text that you have not
// seen, and list every clause that you leave out, with the reason.
var book = clauses.Book{
	ID:        "my-standard",
	Prefix:    "mine",
	Title:     "A template for a standard",
	Edition:   "1",
	Publisher: "whoever copies it",
	// Ultimate: what clause 1 derives is compared with the wire's break load.
	Basis:   standard.Ultimate,
	Clauses: []clauses.Clause{clause1},
	Left: []standard.Clause{
		{Clause: "2", Why: "the bolts, which this template leaves to you"},
	},
	Pack: pack(),
}
