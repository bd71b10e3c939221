package aisc360

import (
	"errors"
	"fmt"
	"math"

	"chainwale/engine/standard"
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// pulledAlong says why a plate is not covered unless the wire pulls along it.
func pulledAlong(r clauses.Row) error {
	if err := clauses.InPlane(r, "and the section is for a member in tension"); err != nil {
		return err
	}
	if err := clauses.Along(r, "and the section is for a pull along the plate"); err != nil {
		return err
	}
	return clauses.Steel("the plate", r.Word("fitting.metal.family"))
}

// leans are what tells how the wire pulls at the plate.
func leans(more ...standard.Read) []standard.Read {
	return append([]standard.Read{clauses.Number("lean_in", "deg"), clauses.Number("lean_out", "deg"), clauses.Word("fitting.metal.family")}, more...)
}

// plateReads are what all of section D5 reads.
func plateReads() []standard.Read {
	return leans(
		clauses.Number("fitting.thickness", "mm"), clauses.Number("fitting.width", "mm"), clauses.Number("hole", "mm"), clauses.Number("across", "mm"),
		clauses.Number("pin_diameter", "mm"), clauses.Number("end", "mm"), clauses.Number("fitting.metal.yield", "MPa"), clauses.Number("fitting.metal.ultimate", "MPa"))
}

// reckonPlate works the plate at its pin out, for all of section D5.
func reckonPlate(r clauses.Row) (strength.AISCPinPlateResult, error) {
	if err := pulledAlong(r); err != nil {
		return strength.AISCPinPlateResult{}, err
	}
	if off := math.Abs(r.Number("across")); off > clauses.Midway {
		return strength.AISCPinPlateResult{}, fmt.Errorf("the pin hole stands %.3g mm off the plate's centre line, and the section is for a hole midway between the edges", off)
	}
	return strength.AISCPinPlate{
		Thickness: r.Number("fitting.thickness"), Width: r.Number("fitting.width"), Hole: r.Number("hole"), Pin: r.Number("pin_diameter"), End: r.Number("end"),
		Yield: r.Number("fitting.metal.yield"), Ultimate: r.Number("fitting.metal.ultimate"),
	}.Reckon()
}

// plateFact is a fact that is read off the plate at its pin.
func plateFact(name, unit, meaning string, value func(strength.AISCPinPlateResult) float64, symbols ...string) clauses.Fact {
	return clauses.Fact{Name: name, Unit: unit, Meaning: meaning, From: clauses.Names(plateReads()), Bears: unit == "N", Reckon: clauses.By(reckonPlate, value, symbols...)}
}

// boltReads are what all checks of one bolt read.
func boltReads() []standard.Read {
	return []standard.Read{clauses.Number("bolt_diameter", "mm"), clauses.Number("bolt_ultimate", "MPa"), clauses.Word("bolt_family"), clauses.YesNo("threads_in_plane"), clauses.Word("bolt_head")}
}

// reckonBolt works one bolt out, under loads in N.
func reckonBolt(r clauses.Row, sheared, pulled float64) (strength.AISCBoltResult, error) {
	if err := clauses.Steel("the bolt", r.Word("bolt_family")); err != nil {
		return strength.AISCBoltResult{}, err
	}
	if r.Word("bolt_head") == "countersunk" {
		return strength.AISCBoltResult{}, errors.New("the head is countersunk, and the section's table is for bolts with a whole head")
	}
	return strength.AISCBolt{Diameter: r.Number("bolt_diameter"), Ultimate: r.Number("bolt_ultimate"), ThreadsInPlane: r.Yes("threads_in_plane"), Sheared: sheared, Pulled: pulled}.Reckon()
}

// after is a source in AISC 360.
func after(section string, as working.HowKnown, what string) working.Source {
	return working.Source{Title: "after AISC 360", Edition: "2010", Clause: section, As: as, For: what}
}
