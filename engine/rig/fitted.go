package rig

import (
	"fmt"

	"chainwale/engine/table"
	"chainwale/engine/working"
)

// FittedWire is a wire held against what is required of it.
//
// Returns how many times the required break load it has, and a sentence that says so.
//
// Equation: ratio = break load/required.
//
// Symbols: BreakLoad and Required, N; Moment, the righting moment behind Required.
//
// Holds as far as the righting moment does; where that is estimated the sentence says so.
//
// Source: comparison (computed). Errors: loads that are missing or not positive.
type FittedWire struct {
	BreakLoad, Required float64
	Moment              RightingMoment
}

// FittedWireResult is the comparison.
type FittedWireResult struct {
	Ratio, Least, Most float64
	Says               string

	of FittedWire
}

// Working writes the comparison down.
func (r FittedWireResult) Working() []working.Step {
	return []working.Step{{Symbol: "n", Meaning: "the wire fitted over the break load required", Formula: "Fbreak/Freq", Inputs: given("Fbreak", r.of.BreakLoad, "N", "Freq", r.of.Required, "N"), Value: r.Ratio, Source: statics}}
}

// Reckon compares.
func (f FittedWire) Reckon() (FittedWireResult, error) {
	var in inputs
	in.positive("the break load of the wire fitted", f.BreakLoad, "N")
	in.positive("the break load required", f.Required, "N")
	in.must(f.Moment.At30 > 0, "the righting moment behind the requirement is missing")
	if in.err != nil {
		return FittedWireResult{}, in.err
	}
	r := FittedWireResult{Ratio: f.BreakLoad / f.Required, of: f}
	r.Least, r.Most = r.Ratio*f.Moment.At30/f.Moment.Most, r.Ratio*f.Moment.At30/f.Moment.Least
	r.Says = fmt.Sprintf("the wire fitted has %.2f times the break load required, %.2f to %.2f as far as the righting moment (%s) is known", r.Ratio, r.Least, r.Most, f.Moment.How)
	if !f.Moment.LoadsPlates {
		r.Says += "; this moment is not firm enough to size a plate by"
	}
	return r, nil
}

// PermissibleLoad is what a classification society lets a member of the rig bear.
//
// Returns the load, N.
//
// Equation: F = share * strength.
//
// Symbols: What, such as "metal standing rigging"; Case, "sailing", "survival",
// "handling" or "people"; Strength, N: the mean less two standard deviations.
//
// Holds where the society gives a share for the case.
//
// Source: Lloyd's Register, Guidance Notes for the Certification of Masts, Spars and
// Standing Rigging, 2017, section 7 (published). Errors: a member or case that has
// no share, a strength that is missing or not positive.
type PermissibleLoad struct {
	What, Case string
	Strength   float64
}

// PermissibleLoadResult is the load, N, and its share of the strength.
type PermissibleLoadResult struct {
	Load, Share float64

	of     PermissibleLoad
	source working.Source
}

// Reckon gives the load and its share of the strength.
func (p PermissibleLoad) Reckon() (PermissibleLoadResult, error) {
	row, err := table.Permissible(p.What)
	if err != nil {
		return PermissibleLoadResult{}, err
	}
	share, ok := map[string]float64{"sailing": row.Sailing, "survival": row.Survival, "handling": row.Handling, "people": row.People}[p.Case]
	var in inputs
	in.positive("the strength", p.Strength, "N")
	in.must(ok, "%q is neither sailing, survival, handling nor people", p.Case)
	in.must(share > 0, "the source gives no share for %s in the case of %s", row.What, p.Case)
	if in.err != nil {
		return PermissibleLoadResult{}, in.err
	}
	return PermissibleLoadResult{Load: share * p.Strength, Share: share, of: p, source: row.Source}, nil
}

// Working writes the calculation down.
func (r PermissibleLoadResult) Working() []working.Step {
	return []working.Step{{Symbol: "Fp", Meaning: "load that " + r.of.What + " may bear, " + r.of.Case, Formula: "s F", Inputs: given("s", r.Share, "", "F", r.of.Strength, "N"), Value: r.Load, Unit: "N", Source: r.source}}
}
