package en1993

import (
	"errors"

	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// table34bearing is table 3.4, bearing of a bolt on the plate, with the strength of
// stainless after EN 1993-1-4.
//
// Equation:
//
//	Fb,Rd = k1 ab fu d t/gM2;  ab = min(e1/(3 d0), p1/(3 d0) - 1/4, fub/fu, 1)
//	k1 = min(2.8 e2/d0 - 1.7, 2.5);  stainless: 0.5 fy + 0.6 fu, at most fu, for fu
//
// over the share of the wire's load that the bolt carries.
//
// Symbols: e1 end, e2 side, p1 pitch, d0 hole, d bolt, t plate, mm; fy, fu of the plate,
// fub of the bolt, MPa; gM2 1.25; the share, bare; result N: the design load of the
// wire, for 1.5 times its load at work.
//
// Holds for a round hole under a plain head, in one line of bolts along a steel plate,
// pulled along that line, or within 5 deg of it, towards the plate's far end.
//
// Source: after EN 1993-1-8:2005, 3.6.1, table 3.4 (published); the strength of stainless
// after EN 1993-1-4, 6.1 (memory).
func table34bearing() clauses.Clause {
	reads := holeReads(
		clauses.Number("end", "mm"), clauses.Number("side", "mm"), clauses.Number("pitch", "mm"), clauses.YesNo("in_line"), clauses.Number("lean", "deg"),
		clauses.Number("bolt_diameter", "mm"), clauses.Number("bolt_ultimate", "MPa"), clauses.Word("bolt_head"), clauses.Number("share", ""),
		clauses.Number("fitting.thickness", "mm"), clauses.Number("fitting.metal.yield", "MPa"), clauses.Number("fitting.metal.ultimate", "MPa"), clauses.Word("fitting.metal.family"))
	return clauses.Clause{
		Clause: "3.6.1, table 3.4, bearing",
		Covers: "bearing of a bolt on a steel or stainless plate, at a round hole in one line of bolts pulled along it",
		Kind:   "bolt_hole",
		Reads:  reads,
		Facts: []clauses.Fact{{
			Name: "hole_bearing", Unit: "N", Bears: true, From: clauses.Names(reads),
			Meaning: "design load of the wire at which the plate gives way at this bolt hole, for 1.5 times the load at work",
			Reckon:  clauses.By(reckonHole, func(h holeBearing) float64 { return h.wire }, "k1", "ab", "fu", "Fb", "Fb,Rd", "F"),
		}},
	}
}

type holeBearing struct {
	strength.BoltHoleResult
	design, share, wire float64
}

func reckonHole(r clauses.Row) (holeBearing, error) {
	if err := clauses.PlainHole(r); err != nil {
		return holeBearing{}, err
	}
	h := holeBearing{share: r.Number("share")}
	if h.share <= 0 {
		return h, errors.New("the bolt carries no share of the wire's load")
	}
	var err error
	h.BoltHoleResult, err = strength.BoltHole{
		Thickness: r.Number("fitting.thickness"), Bolt: r.Number("bolt_diameter"), Hole: r.Number("hole"), End: r.Number("end"), Side: r.Number("side"), Pitch: r.Number("pitch"),
		Yield: r.Number("fitting.metal.yield"), Ultimate: r.Number("fitting.metal.ultimate"), BoltUltimate: r.Number("bolt_ultimate"),
		Stainless: r.Word("fitting.metal.family") == "stainless",
	}.Reckon()
	h.design = h.EN / gammaM2
	h.wire = h.design / h.share
	return h, err
}

// Working writes the calculation down.
func (h holeBearing) Working() []working.Step {
	return append(h.BoltHoleResult.Working(),
		working.Step{Symbol: "Fb,Rd", Meaning: "design load of the bolt at which the plate gives way", Formula: "Fb/gM2", Inputs: clauses.Inputs("Fb", h.EN, "N", "gM2", gammaM2, ""), Value: h.design, Unit: "N", Source: partial},
		working.Step{Symbol: "F", Meaning: "design load of the wire at which it does", Formula: "Fb,Rd/share", Inputs: clauses.Inputs("Fb,Rd", h.design, "N", "share", h.share, ""), Value: h.wire, Unit: "N",
			Source: working.Source{Title: "statics", As: working.Computed, For: "the share of the bolt"}})
}
