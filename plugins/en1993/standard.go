// Package en1993 holds pins and bolts to the design rules of EN 1993-1-8, with what
// EN 1993-1-4 changes for stainless: a file a clause, each with its equation, where it
// holds, and how its source is known. The texts were not bought: equations were seen
// in extracts, handbooks and open programs, so every source says "after".
//
// Load basis: design values, held against 1.5 times the wire's load at work; what a
// pin may suffer that is to come out again is held against the load at work itself.
// Nothing here is held against the wire's break load.
package en1993

import (
	"embed"
	"io/fs"

	"chainwale/engine/standard"
	"chainwale/plugins/clauses"
)

//go:embed pack
var packFiles embed.FS

// Standard is the standard, ready to be asked. An error is a fault of ours.
func Standard() (standard.Standard, error) {
	pack, err := fs.Sub(packFiles, "pack")
	if err != nil {
		return nil, err
	}
	return clauses.Book{
		ID: "en-1993-1-8", Prefix: "en1993",
		Title:     "after EN 1993-1-8, design of joints, with the stainless of EN 1993-1-4",
		Edition:   "2005",
		Publisher: "the chainwale project; the text is by CEN and was not seen whole",
		Basis:     standard.Design,
		Clauses: []clauses.Clause{
			table39(), table310shear(), table310bearing(), table310bending(), table310together(), contact(),
			table34shear(), table34tension(), table34together(), table34bearing(), table33(),
		},
		Left: left(),
		Pack: pack,
	}.Standard()
}

// left are the clauses beside those that are covered, each with the reason why not.
func left() []standard.Clause {
	return []standard.Clause{
		{Clause: "3.4", Why: "categories of bolted joints: all bolts here bear and none is made to hold by friction"},
		{Clause: "3.5, greatest distances", Why: "they guard against gaps and buckling of parts under pressure, and a plate that holds a wire is pulled"},
		{Clause: "3.6.1(10)", Why: "one bolt alone in a single lap: whether washers stand on both sides is not among the facts"},
		{Clause: "3.6.1(12)", Why: "packing between plate and host thicker than a third of the bolt is not among the facts"},
		{Clause: "3.6.1, table 3.4, punching", Why: "what a head pulls through is the host as often as the plate; the mounting pack judges it"},
		{Clause: "3.7", Why: "groups of fasteners: the share of each bolt is worked out elastically by the program, which is on the safe side"},
		{Clause: "3.8", Why: "long joints, of more than 15 bolt diameters: bolts of a chainplate are fewer and the reduction is not made"},
		{Clause: "3.9", Why: "slip-resistant joints: preload creeps away in timber and laminate"},
		{Clause: "3.10.2", Why: "block tearing of a group of bolts is not worked out"},
		{Clause: "3.11", Why: "prying is not worked out: the host's stiffness is not known"},
		{Clause: "3.13.1", Why: "the allowance to take a short pin for a bolt is left out on purpose: it has been questioned in print"},
		{Clause: "EN 1993-1-1, 6.2.3", Why: "the plate's section across its bolts: the strength pack judges it against the wire"},
		{Clause: "EN 1993-1-9", Why: "fatigue: how often and how hard a wire pulls in its life is not known"},
		{Clause: "EN 1993-1-8:2024", Why: "the next edition numbers its clauses anew and changes the rules for pins; its text was not seen"},
	}
}
