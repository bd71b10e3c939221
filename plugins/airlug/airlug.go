// Package airlug is the lug method of the US Air Force and NASA (the line of Cozzone,
// Melcon and Hoblit) as a design standard: a file a clause, and the pack of rules that
// judges what they derive.
//
// Load basis: strengths are nominal ultimate ones, without a factor of safety, and are
// held against the load at which the wire breaks; the handbook's fitting factor of 1.15
// stands in the rules. The lug's yield is held against the load at work only.
//
// Equations are numbered as in Niu, Airframe Stress Analysis and Sizing, 9.8, whose
// pages were read; the charts are those of NASA TM X-73305, B2, as digitised by
// R. Abbott, AA-SM-009-005. The chapter 9 of AFFDL-TR-69-42 gives the same method in
// another form; only its pin bending is used, from memory.
package airlug

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
		ID: "air-force-lug", Prefix: "airlug",
		Title:     "after the lug method of the US Air Force and NASA",
		Edition:   "NASA TM X-73305, 1975, B2, with the equation numbers of Niu, Airframe Stress Analysis and Sizing, 9.8",
		Publisher: "National Aeronautics and Space Administration; this reading of it is the chainwale project's",
		Basis:     standard.Ultimate,
		Clauses:   []clauses.Clause{shearBearing(), netTension(), lugYield(), pinShear(), pinBending(), transverse(), oblique()},
		Left:      left,
		Pack:      pack,
	}.Standard()
}

// left are the clauses that are not covered.
var left = []standard.Clause{
	{Clause: "9.8.4", Why: "yield of a bushing: no plan says that a hole is bushed"},
	{Clause: "9.8.11 and 9.8.12, charts", Why: "the charts of transverse strength and yield have no curve for stainless steel, and none of them could be read; a cautious stand-in takes the place of the strength"},
	{Clause: "9.8.9, chart of gamma", Why: "the load that shifts to the faces of the plate: 1, which is on the safe side, is taken instead"},
	{Clause: "figure B2.1.0-4, other curves", Why: "net tension of aluminium, titanium and other steels: their curves could not be read with certainty"},
	{Clause: "AFFDL-TR-69-42, 9.3 and 9.4", Why: "the same strengths by its figures 9-2 and 9-4, of which one point could be read"},
	{Clause: "AFFDL-TR-69-42, 9, weak pin", Why: "the load that a bending pin shares out anew: it wants the strength of the fork's cheeks, which no plan gives"},
	{Clause: "out of plane", Why: "bending out of the lug's plane is not in this method"},
}
