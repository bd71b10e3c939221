package aisc360

import (
	"errors"

	"chainwale/engine/standard"
	"chainwale/engine/strength"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// j310 is section J3.10: bearing and tear-out of the plate at a bolt hole.
//
// Equation, for holes that are not to grow at work:
//
//	Rn = 1.2 lc t Fu <= 2.4 d t Fu                      (J3-6a)
//
// of which the first is tear-out and the second bearing; over the share of the wire's
// load that the bolt carries.
//
// Symbols: d bolt, t plate, lc from the hole's edge to the end or to the next hole, mm;
// Fu of the plate, MPa; the share, bare; result N, nominal: the load of the wire, for
// its break load. The specification divides Rn by 2.00 (ASD) or multiplies it by 0.75
// (LRFD).
//
// Holds for a standard round hole under a plain head, in one line of bolts along a steel
// plate, pulled along that line, or within 5 deg of it, towards the plate's far end.
//
// Source: after AISC 360, 2010, J3.10 (published).
func j310() clauses.Clause {
	reads := []standard.Read{
		clauses.Number("hole", "mm"), clauses.Number("end", "mm"), clauses.Number("side", "mm"), clauses.Number("pitch", "mm"), clauses.YesNo("in_line"),
		clauses.Number("lean", "deg"), clauses.Number("bolt_diameter", "mm"), clauses.Word("bolt_head"), clauses.Number("share", ""),
		clauses.Number("fitting.thickness", "mm"), clauses.Number("fitting.metal.yield", "MPa"), clauses.Number("fitting.metal.ultimate", "MPa"), clauses.Word("fitting.metal.family"),
	}
	return clauses.Clause{
		Clause: "J3.10",
		Covers: "bearing and tear-out of a steel plate at a round bolt hole in one line of bolts pulled along it",
		Kind:   "bolt_hole",
		Reads:  reads,
		Facts: []clauses.Fact{{
			Name: "hole_bearing", Unit: "N", Bears: true, From: clauses.Names(reads),
			Meaning: "nominal load of the wire at which the plate gives way at this bolt hole, torn out or crushed, for its break load",
			Reckon:  clauses.By(reckonHole, func(h hole) float64 { return h.wire }, "lc", "Rt", "Rb", "Rn", "F"),
		}},
	}
}

type hole struct {
	strength.BoltHoleResult
	of                   strength.BoltHole
	nominal, share, wire float64
}

func reckonHole(r clauses.Row) (hole, error) {
	if err := clauses.PlainHole(r); err != nil {
		return hole{}, err
	}
	h := hole{share: r.Number("share")}
	if h.share <= 0 {
		return h, errors.New("the bolt carries no share of the wire's load")
	}
	h.of = strength.BoltHole{
		Thickness: r.Number("fitting.thickness"), Bolt: r.Number("bolt_diameter"), Hole: r.Number("hole"), End: r.Number("end"), Side: r.Number("side"), Pitch: r.Number("pitch"),
		Yield: r.Number("fitting.metal.yield"), Ultimate: r.Number("fitting.metal.ultimate"),
		// The bolt's own strength has no part in this section.
		BoltUltimate: r.Number("fitting.metal.ultimate"),
	}
	var err error
	h.BoltHoleResult, err = h.of.Reckon()
	h.nominal = min(h.TearOut, h.Crush)
	h.wire = h.nominal / h.share
	return h, err
}

// Working writes the calculation down.
func (h hole) Working() []working.Step {
	before := working.Step{Symbol: "lc", Meaning: "metal before the bolt, to the end", Formula: "end - hole/2", Inputs: clauses.Inputs("end", h.of.End, "mm", "hole", h.of.Hole, "mm"), Value: h.of.End - h.of.Hole/2, Unit: "mm", Source: geometry}
	if next := h.of.Pitch - h.of.Hole; h.of.Pitch > 0 && next < before.Value {
		before = working.Step{Symbol: "lc", Meaning: "metal before the bolt, to the next hole", Formula: "pitch - hole", Inputs: clauses.Inputs("pitch", h.of.Pitch, "mm", "hole", h.of.Hole, "mm"), Value: next, Unit: "mm", Source: geometry}
	}
	return append(append([]working.Step{before}, h.BoltHoleResult.Working()...),
		working.Step{Symbol: "Rn", Meaning: "nominal load of the bolt at which the plate gives way", Formula: "min(Rt, Rb)", Inputs: clauses.Inputs("Rt", h.TearOut, "N", "Rb", h.Crush, "N"), Value: h.nominal, Unit: "N",
			Source: after("J3.10", working.Published, "the lower of the two")},
		working.Step{Symbol: "F", Meaning: "load of the wire at which it does", Formula: "Rn/share", Inputs: clauses.Inputs("Rn", h.nominal, "N", "share", h.share, ""), Value: h.wire, Unit: "N", Source: geometry})
}

var geometry = working.Source{Title: "geometry and statics", As: working.Computed, For: "the form of the equation"}
