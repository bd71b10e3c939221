package rig

import (
	"fmt"
	"math"

	"chainwale/engine/table"
	"chainwale/engine/working"
)

// Wire is a wire or rod of a stay.
//
// Returns its break load, by its certificate if it has one, else by the table, else
// by the floor under the rows near it; and its stiffness EA with bounds, N.
//
// Equation:
//
//	break load: certificate, or row of the table, or c d^2 with the least c near d
//	EA = E pi d^2/4, E on the circle around the wire
//
// Symbols: Construction and Metal by name; Diameter d, mm; Certificate, the break load
// that a certificate states, N, 0 if there is none; E, MPa.
//
// Holds for new wire to its specification; EA within 15 % once it has bedded in.
//
// Source: the rows of table wire and wire_builds, each as it is known there. Errors:
// a construction or metal that no row knows, a diameter out of reach, a certificate
// that is not for such a wire: below half of what the table has or above 1.5 times.
type Wire struct {
	Construction, Metal string
	Diameter            float64
	Certificate         float64
}

// WireResult is what the wire is worth.
type WireResult struct {
	// BreakLoad counts as strength, BreakLoadMost where the wire is the load. N.
	BreakLoad, BreakLoadMost float64
	// How is "certificate", "table" or "formula".
	How string
	// EA is the stiffness in N, between EALeast and EAMost.
	EA, EALeast, EAMost float64
	Note                string

	wire  Wire
	row   table.WireRow
	build table.WireBuild
}

// stiffnessSpread is how far EA may be off: the literature runs from 130 to 165
// kN/mm2 on the metal.
const stiffnessSpread = 0.15

var certificate = working.Source{Title: "the wire's certificate", As: working.Published, For: "the break load"}

// Reckon gives the break load and the stiffness.
func (w Wire) Reckon() (WireResult, error) {
	build, err := table.WireBuildOf(w.Construction)
	if err != nil {
		return WireResult{}, err
	}
	var in inputs
	in.notNegative("the break load of the certificate", w.Certificate, "N")
	if in.err != nil {
		return WireResult{}, in.err
	}
	row, err := table.Wire(build.Construction, w.Metal, w.Diameter)
	if err != nil {
		return WireResult{}, err
	}
	r := WireResult{BreakLoad: row.BreakLoad, BreakLoadMost: row.BreakLoadMost, How: "table", Note: row.Note, wire: w, row: row, build: build}
	if row.FromFormula {
		r.How = "formula"
	}
	if w.Certificate > 0 {
		in.must(w.Certificate >= row.BreakLoad/2 && w.Certificate <= 1.5*row.BreakLoadMost,
			"the certificate says %.1f kN, the table %.1f kN for such a wire: one of them is of another wire", w.Certificate/1000, row.BreakLoad/1000)
		r.BreakLoad, r.BreakLoadMost, r.How, r.Note = w.Certificate, w.Certificate, "certificate", ""
	}
	r.EA = build.GrossModulus * math.Pi / 4 * w.Diameter * w.Diameter
	r.EALeast, r.EAMost = (1-stiffnessSpread)*r.EA, (1+stiffnessSpread)*r.EA
	return r, in.err
}

// Working writes the calculation down.
func (r WireResult) Working() []working.Step {
	load := working.Step{Symbol: "Fbreak", Meaning: "the wire breaks", Formula: fmt.Sprintf("row of %s of %s, %s", r.row.Construction, r.row.Metal, r.row.Size), Value: r.BreakLoad, Unit: "N", Source: r.row.Source}
	switch r.How {
	case "certificate":
		load.Formula, load.Source = "as certified", certificate
	case "formula":
		load.Formula, load.Inputs = "c d^2, the least c near this diameter", given("d", r.wire.Diameter, "mm")
	}
	return []working.Step{load, {Symbol: "EA", Meaning: "stiffness of the wire, 15 % either way", Formula: "E pi d^2/4",
		Inputs: given("E", r.build.GrossModulus, "MPa", "d", r.wire.Diameter, "mm"), Value: r.EA, Unit: "N", Source: r.build.Moduli}}
}

// TensionByStretch is the pull in a wire by how much a length of it has stretched
// from slack: a rule laid along it and clamped at one end.
//
// Returns the pull, N, and its share of the break load.
//
// Equation: T = EA s/L.
//
// Symbols: Wire; GaugeLength L and Stretch s, mm; EA as for Wire.
//
// Holds while the wire is elastic: to half its break load. Laid-up wire is 15 % either
// way; the older rule, 5 % of the break load for 1 mm in 2 m of 1x19, is the check in
// the working.
//
// Source: Hooke's law (computed), the modulus as table wire_builds has it. Errors: as
// for Wire, a gauge length that is missing, a stretch that is negative or would load
// the wire above half its break load.
type TensionByStretch struct {
	Wire                 Wire
	GaugeLength, Stretch float64
}

// TensionByStretchResult is the pull.
type TensionByStretchResult struct {
	Tension, Share float64
	// ByRule is the share by the older rule, NaN for other wire than 1x19.
	ByRule float64
	Wire   WireResult

	of TensionByStretch
}

// A share of the break load above this one leaves its mark on the wire.
const lastingDamage = 0.5

var foldingRule = working.Source{Title: "mast makers' folding-rule method, 1 mm in 2 m of 1x19 is 5 % of the break load", As: working.Published, For: "the rule"}

// Reckon gives the pull.
func (t TensionByStretch) Reckon() (TensionByStretchResult, error) {
	wire, err := t.Wire.Reckon()
	if err != nil {
		return TensionByStretchResult{}, err
	}
	var in inputs
	in.positive("the gauge length", t.GaugeLength, "mm")
	in.notNegative("the stretch", t.Stretch, "mm")
	r := TensionByStretchResult{Tension: wire.EA * t.Stretch / t.GaugeLength, ByRule: math.NaN(), Wire: wire, of: t}
	r.Share = r.Tension / wire.BreakLoad
	in.must(r.Share <= lastingDamage, "a stretch of %g mm in %g mm would be %.0f %% of the break load, and above %.0f %% the wire is no longer elastic", t.Stretch, t.GaugeLength, 100*r.Share, 100*lastingDamage)
	if in.err != nil {
		return TensionByStretchResult{}, in.err
	}
	if wire.build.Construction == "1x19" {
		r.ByRule = 0.05 * (t.Stretch / t.GaugeLength) / (1.0 / 2000)
	}
	return r, nil
}

// Working writes the calculation down.
func (r TensionByStretchResult) Working() []working.Step {
	steps := append(r.Wire.Working(),
		working.Step{Symbol: "T", Meaning: "pull in the wire", Formula: "EA s/L", Inputs: given("EA", r.Wire.EA, "N", "s", r.of.Stretch, "mm", "L", r.of.GaugeLength, "mm"), Value: r.Tension, Unit: "N", Source: working.Source{Title: "Hooke's law", As: working.Computed, For: "the form of the equation"}},
		working.Step{Symbol: "u", Meaning: "share of the break load", Formula: "T/Fbreak", Inputs: given("T", r.Tension, "N", "Fbreak", r.Wire.BreakLoad, "N"), Value: r.Share, Source: statics})
	if !math.IsNaN(r.ByRule) {
		steps = append(steps, working.Step{Symbol: "ur", Meaning: "the same by the older rule", Formula: "5 % for 1 mm in 2 m", Inputs: given("s", r.of.Stretch, "mm", "L", r.of.GaugeLength, "mm"), Value: r.ByRule, Source: foldingRule})
	}
	return steps
}

// Turn is what one turn of a turnbuckle does to a stay.
//
// Returns the take-up, mm, and the most that the pull can rise by, N.
//
// Equation: take-up = 2 p (threads of both hands);  rise = EA 2p/L.
//
// Symbols: Pitch p of the thread and Length L of the stay, mm; EA, N.
//
// Holds as an upper bound: hull and mast give. One thread alone takes up half.
//
// Source: geometry and Hooke's law (computed). Errors: numbers that are missing or
// not positive.
type Turn struct{ Pitch, Length, EA float64 }

// TurnResult is the take-up, mm, and the rise, N.
type TurnResult struct {
	TakeUp, Rise float64

	of Turn
}

// Reckon gives both.
func (t Turn) Reckon() (TurnResult, error) {
	var in inputs
	in.positive("the pitch of the thread", t.Pitch, "mm")
	in.positive("the length of the stay", t.Length, "mm")
	in.positive("the stiffness of the stay", t.EA, "N")
	if in.err != nil {
		return TurnResult{}, in.err
	}
	return TurnResult{TakeUp: 2 * t.Pitch, Rise: t.EA * 2 * t.Pitch / t.Length, of: t}, nil
}

// Working writes the calculation down.
func (r TurnResult) Working() []working.Step {
	return []working.Step{
		{Symbol: "e", Meaning: "take-up of a turn, threads of both hands", Formula: "2 p", Inputs: given("p", r.of.Pitch, "mm"), Value: r.TakeUp, Unit: "mm", Source: geometry},
		{Symbol: "dT", Meaning: "the pull rises by no more than", Formula: "EA e/L", Inputs: given("EA", r.of.EA, "N", "e", r.TakeUp, "mm", "L", r.of.Length, "mm"), Value: r.Rise, Unit: "N", Source: statics},
	}
}
