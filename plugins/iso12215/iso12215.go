// Package iso12215 holds plates and pins to values after ISO 12215-10, Small craft:
// rig loads and rig attachments, that the user gives in a file: a file a clause, and
// the pack of rules that compares.
//
// The standard's text and its values are licensed. None of them was seen and none
// comes with the program: who owns a copy writes down the design load of each role of
// stay, and the factors asked for, each with the clause it stands in. Without such a
// file every clause says so and nothing is judged.
//
// Load basis: strengths are the program's nominal ultimate ones, held against the
// design load of the user's file and never against the wire's break load. How the
// standard would work out a plate's strength is not known here.
package iso12215

import (
	"embed"
	"io/fs"

	"chainwale/engine/standard"
	"chainwale/plugins/clauses"
)

//go:embed pack/*.yaml
var packFiles embed.FS

// Standard is the standard with the values of a file, "" for none. A file that is not
// there leaves every clause uncovered, and each says so. One that can't be read, or
// holds what a file of values may not, is an error; a *BadFile has all places of it.
func Standard(file string) (standard.Standard, error) {
	v, err := readFile(file)
	if err != nil {
		return nil, err
	}
	pack, err := fs.Sub(packFiles, "pack")
	if err != nil {
		return nil, err
	}
	return clauses.Book{
		ID: "iso-12215-10", Prefix: "iso12215",
		Title:     "after ISO 12215-10, Small craft: rig loads and rig attachments, with the user's own values",
		Edition:   v.edition,
		Publisher: "International Organization for Standardization; this frame for its values is the chainwale project's",
		Basis:     standard.Design,
		Clauses:   []clauses.Clause{designLoad(v), plateFactor(v), pinFactor(v)},
		Left:      left(),
		Pack:      pack,
	}.Standard()
}

// left are the parts of the standard that are not covered.
func left() []standard.Clause {
	return []standard.Clause{
		{Clause: "scope", Why: "whether the standard is for this boat at all: its text is licensed and was not seen"},
		{Clause: "loads of the rig", Why: "how design loads follow from boat and rig: licensed; the file gives the loads themselves"},
		{Clause: "strength of attachments", Why: "how the standard works out what a plate or a pin bears, and with which stresses: licensed; the program's own nominal ultimate strengths are taken"},
		{Clause: "established practice", Why: "its annexes on ordinary chainplates: licensed"},
		{Clause: "structure below the attachment", Why: "hull, bulkhead, knee and bolts: licensed"},
	}
}
