package rig

import (
	"fmt"
	"math"
	"slices"

	"chainwale/engine/working"
)

// Element is a part of the way that a stand-in's pull takes from the mast to the hull.
type Element string

// The elements of a stand-in.
const (
	LineElement   Element = "line"
	KnotElement   Element = "knot or splice"
	SheaveElement Element = "sheave and its pin"
	CleatElement  Element = "cleat or winch"
	MastElement   Element = "fitting on the mast"
	DeckElement   Element = "fitting on deck"
	PlateElement  Element = "plate"
)

// Path is the way that a stand-in leads.
type Path string

const (
	// OverSheave is a halyard: over a sheave aloft and down the mast to a cleat or winch.
	OverSheave Path = "over a sheave"
	// MadeFast is a line or wire made fast to the mast and led to the hull.
	MadeFast Path = "made fast"
)

// needs are the elements that a stand-in of each path can't do without; beside them
// it needs a fitting on deck or a plate.
var needs = map[Path][]Element{
	OverSheave: {LineElement, KnotElement, SheaveElement, CleatElement},
	MadeFast:   {LineElement, KnotElement, MastElement},
}

// ElementStrength is what an element breaks or gives at, N. 0 means that nobody knows.
type ElementStrength struct {
	Element  Element
	Strength float64
}

// StandInStrength is the strength of a stand-in: that of its weakest element.
//
// Returns the strength, N, and the element that governs. One with an element that
// nobody knows the strength of counts as nothing, and says so.
//
// Equation:
//
//	F = min(line, knot, sheave, cleat, deck fitting, plate)
//	sheave: half its strength where both parts of the line lead down, else as it is
//
// Symbols: Path, the way it leads; Elements with their strengths, N; BothPartsDown:
// the line leads up and down again to the hull on both sides of its sheave, which
// carries twice the pull.
//
// Holds where the pull runs through each element once. A halyard's tail leads down
// the mast, so BothPartsDown is true of every halyard; it is false where the line is
// hung from the sheave's cage, or its tail made fast aloft.
//
// Source: statics (computed). Errors: a path or an element that is unknown, an element
// given twice, a strength that is negative or not finite.
type StandInStrength struct {
	Path          Path
	Elements      []ElementStrength
	BothPartsDown bool
}

// StandInStrengthResult is the strength and what governs it.
type StandInStrengthResult struct {
	Strength float64
	Governs  Element
	// Known is false where the strength of an element is not known; Says tells which.
	Known bool
	Says  string

	of     StandInStrength
	counts []ElementStrength
}

// Reckon gives the strength.
func (s StandInStrength) Reckon() (StandInStrengthResult, error) {
	if err := s.check(); err != nil {
		return StandInStrengthResult{}, err
	}
	r := StandInStrengthResult{Known: true, of: s}
	if missing := s.missing(); len(missing) > 0 {
		r.Known, r.Governs = false, Element(missing[0])
		r.Says = "it counts as nothing: no strength is given for its " + joined(missing)
		return r, nil
	}
	r.Strength = math.Inf(1)
	for _, e := range s.Elements {
		if e.Element == SheaveElement && s.BothPartsDown {
			e.Strength /= 2
		}
		r.counts = append(r.counts, e)
		if e.Strength < r.Strength {
			r.Strength, r.Governs = e.Strength, e.Element
		}
	}
	r.Says = fmt.Sprintf("its %s gives first, at %.1f kN", r.Governs, r.Strength/1000)
	return r, nil
}

func (s StandInStrength) check() error {
	var in inputs
	in.must(needs[s.Path] != nil, "%q is no way that a stand-in leads: it is %q or %q", s.Path, OverSheave, MadeFast)
	seen := map[Element]bool{}
	for _, e := range s.Elements {
		known := slices.Contains([]Element{LineElement, KnotElement, SheaveElement, CleatElement, MastElement, DeckElement, PlateElement}, e.Element)
		in.must(known, "%q is no element of a stand-in", e.Element)
		in.must(!seen[e.Element], "the %s stands twice", e.Element)
		in.notNegative("the strength of the "+string(e.Element), e.Strength, "N")
		seen[e.Element] = true
	}
	return in.err
}

// missing lists the elements whose strength nobody knows.
func (s StandInStrength) missing() []string {
	strength := map[Element]float64{}
	for _, e := range s.Elements {
		strength[e.Element] = e.Strength
	}
	var list []string
	for _, e := range needs[s.Path] {
		if strength[e] == 0 {
			list = append(list, string(e))
		}
	}
	for _, e := range s.Elements {
		if e.Strength == 0 && !slices.Contains(list, string(e.Element)) {
			list = append(list, string(e.Element))
		}
	}
	_, deck := strength[DeckElement]
	_, plate := strength[PlateElement]
	if !deck && !plate {
		list = append(list, string(DeckElement)+" or "+string(PlateElement))
	}
	return list
}

// Working writes the calculation down.
func (r StandInStrengthResult) Working() []working.Step {
	var steps []working.Step
	for i, e := range r.counts {
		formula := "as given"
		if e.Element == SheaveElement && r.of.BothPartsDown {
			formula = "half as given: both parts of the line lead down and it carries twice the pull"
		}
		steps = append(steps, working.Step{Symbol: fmt.Sprintf("F%d", i+1), Meaning: string(e.Element), Formula: formula, Value: e.Strength, Unit: "N", Source: statics})
	}
	return append(steps, working.Step{Symbol: "F", Meaning: "the stand-in holds", Formula: "the least of them", Value: r.Strength, Unit: "N", Source: statics})
}
