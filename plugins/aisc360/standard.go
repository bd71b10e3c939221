// Package aisc360 holds pin-connected plates and bolts to the rules of AISC 360, a file
// a section, each with its equation, where it holds, and how its source is known. The
// specification was not seen whole: equations were seen in extracts of it and in the
// design examples that go with it, so every source says "after".
//
// Load basis: nominal strengths, without the specification's factors. What breaks is
// held against the wire's break load; what yields, bearing and the gross section, is
// held against the wire's load at work, since to hold a limit of yield against the break
// load would mean nothing.
package aisc360

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
		ID: "aisc-360", Prefix: "aisc360",
		Title:     "after AISC 360, specification for structural steel buildings",
		Edition:   "2010",
		Publisher: "the chainwale project; the text is by the American Institute of Steel Construction and was not seen whole",
		Basis:     standard.Ultimate,
		Clauses:   []clauses.Clause{d51tension(), d51shear(), d51yield(), d52(), j7(), j36(), j37(), j310(), j33()},
		Left:      left(),
		Pack:      pack,
	}.Standard()
}

// left are the sections beside those that are covered, each with the reason why not.
func left() []standard.Clause {
	return []standard.Clause{
		{Clause: "D5.1(c)", Why: "bearing on the projected area of the pin: it sends to J7, which is covered"},
		{Clause: "D2, rupture", Why: "the plate's net section across its bolts: the strength pack judges it against the wire"},
		{Clause: "J3.4", Why: "its table of edge distances begins with bolts thicker than most boats have"},
		{Clause: "J3.5", Why: "greatest distances: they guard against gaps and buckling of parts under pressure, and a plate that holds a wire is pulled"},
		{Clause: "J3.8", Why: "slip-critical joints: preload creeps away in timber and laminate"},
		{Clause: "J4.3", Why: "block shear of a group of bolts is not worked out"},
		{Clause: "the pin itself", Why: "the specification has no rule for shear and bending of a pin: the strength pack judges it"},
		{Clause: "Part 9 of the Manual, prying", Why: "the host's stiffness is not known"},
		{Clause: "Appendix 3", Why: "fatigue: how often and how hard a wire pulls in its life is not known"},
		{Clause: "AISC 370-21", Why: "the specification for stainless, of the same structure: its text was not seen, and stainless counts as steel here"},
		{Clause: "AISC 360-16 and 360-22", Why: "later editions part J3.10 into cases; their texts were not seen"},
	}
}
