// Package bth1 is the strength of pin-connected plates after ASME BTH-1, Design of
// Below-the-Hook Lifting Devices, 3-3.3, as a design standard: a file a clause, and
// the pack of rules that judges what they derive.
//
// Load basis: strengths are nominal ultimate ones. The standard's design factor Nd is
// 1 here and its factor of 1.20 is kept, so they are held against the load at which
// the wire breaks; the design factor itself stands in the rules, against the load at
// work. Bearing is a limit of yield and is held against the load at work only.
//
// The standard's text was not seen. Equation numbers are those of its 2005 edition,
// from a published calculation sheet whose numbers the equations reproduce; what the
// sheet does not show is from memory and is marked so.
package bth1

import (
	"embed"
	"io/fs"

	"chainwale/engine/standard"
	"chainwale/plugins/clauses"
)

//go:embed pack/*.yaml
var files embed.FS

// Standard is the standard, ready to be asked.
func Standard() (standard.Standard, error) {
	pack, err := fs.Sub(files, "pack")
	if err != nil {
		return nil, err
	}
	return clauses.Book{
		ID: "asme-bth-1", Prefix: "bth1",
		Title:     "after ASME BTH-1, Design of Below-the-Hook Lifting Devices: pinned connections",
		Edition:   "2005, from a published calculation sheet",
		Publisher: "The American Society of Mechanical Engineers; this reading of it is the chainwale project's",
		Basis:     standard.Ultimate,
		Clauses:   []clauses.Clause{netTension(), singlePlane(), doublePlane(), leastStrength(), bearing(), clearance()},
		Left:      left,
		Pack:      pack,
	}.Standard()
}

// left are the clauses that are not covered.
var left = []standard.Clause{
	{Clause: "2-2", Why: "design categories and service classes are chosen for lifting devices; the rules name the design factor they use"},
	{Clause: "3-3.3.2", Why: "shear together with normal stress: its text was not seen"},
	{Clause: "3-3.3.3", Why: "fatigue: the stress ranges of its categories were not seen, and nobody counts a boat's cycles"},
	{Clause: "3-3.3.4, second limit", Why: "0.63 Fy for a pin that turns under load many times, known from memory alone: a fork swings a few degrees and no more"},
	{Clause: "3-3.3.6", Why: "the pin itself: the clause names no equation of its own, as far as is remembered; other standards judge the pin"},
	{Clause: "out of plane", Why: "dishing of a thin plate beyond the hole and bending out of the plate's plane are not in these equations"},
}
