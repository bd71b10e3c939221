package corrosion

import (
	"fmt"

	"chainwale/engine/table"
	"chainwale/engine/working"
)

// PittingResistance is the chemistry of a stainless steel, as far as it counts
// against pits and crevices.
//
// Returns the pitting resistance equivalent number (PREN), a bare number that
// ranks stainless steels.
//
// Equation:
//
//	PREN = Cr + 3.3 (Mo + 0.5 W) + 16 N
//
// Symbols: Chromium, Molybdenum, Nitrogen, Tungsten in % by mass (17 for 17 %).
//
// Holds for stainless steels (10.5 % chromium and more) and nickel-chromium-
// molybdenum alloys; it means nothing for bronze, aluminium or titanium. A gate
// takes the least chemistry of the specification, or a certificate's own.
//
// Source: the usual form of the number, with 16 for nitrogen; a variant takes 30
// (published). Errors: a share below 0, above what an alloy can hold, or not finite;
// less chromium than a stainless steel has.
type PittingResistance struct{ Chromium, Molybdenum, Nitrogen, Tungsten float64 }

// PittingResistanceResult is the number and where it came from.
type PittingResistanceResult struct {
	PREN float64

	of   PittingResistance
	from working.Source
}

var prenForm = working.Source{Title: "pitting resistance equivalent number, the usual form", As: working.Published, For: "the form of the equation"}

// Reckon gives the number.
func (p PittingResistance) Reckon() (PittingResistanceResult, error) {
	var in inputs
	in.must(p.Chromium >= 10.5 && p.Chromium <= 35, "%g %% of chromium is not a stainless steel's: it has 10.5 to 35 %%", p.Chromium)
	in.must(p.Molybdenum >= 0 && p.Molybdenum <= 20, "%g %% of molybdenum is not a stainless steel's", p.Molybdenum)
	in.must(p.Nitrogen >= 0 && p.Nitrogen <= 1.5, "%g %% of nitrogen is not a stainless steel's", p.Nitrogen)
	in.must(p.Tungsten >= 0 && p.Tungsten <= 10, "%g %% of tungsten is not a stainless steel's", p.Tungsten)
	if in.err != nil {
		return PittingResistanceResult{}, in.err
	}
	return PittingResistanceResult{PREN: p.Chromium + 3.3*(p.Molybdenum+0.5*p.Tungsten) + 16*p.Nitrogen, of: p}, nil
}

// PittingOf gives the number of a metal of the table at its least chemistry. A
// metal that is no stainless steel is an error: the number means nothing for it.
func PittingOf(m table.Metal) (PittingResistanceResult, error) {
	if !m.Stainless() {
		return PittingResistanceResult{}, fmt.Errorf("pitting resistance means nothing for %s: it is no stainless steel", m.Name)
	}
	r, err := PittingResistance{Chromium: m.CrMin, Molybdenum: m.MoMin, Nitrogen: m.NMin}.Reckon()
	r.from = m.Chemistry
	return r, err
}

// Working writes the calculation down.
func (r PittingResistanceResult) Working() []working.Step {
	var steps []working.Step
	if r.from.Title != "" {
		for _, part := range []struct {
			symbol, meaning string
			value           float64
		}{{"Cr", "least chromium", r.of.Chromium}, {"Mo", "least molybdenum", r.of.Molybdenum}, {"N", "least nitrogen", r.of.Nitrogen}} {
			steps = append(steps, working.Step{Symbol: part.symbol, Meaning: part.meaning, Formula: "from the table", Value: part.value, Unit: "%", Source: r.from})
		}
	}
	return append(steps, working.Step{Symbol: "PREN", Meaning: "pitting resistance", Formula: "Cr + 3.3 (Mo + 0.5 W) + 16 N",
		Inputs: given("Cr", r.of.Chromium, "%", "Mo", r.of.Molybdenum, "%", "W", r.of.Tungsten, "%", "N", r.of.Nitrogen, "%"), Value: r.PREN, Source: prenForm})
}
