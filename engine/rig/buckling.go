package rig

import (
	"math"

	"chainwale/engine/working"
)

// MastPanel is a length of mast between two places that hold it, under its compression.
//
// Returns the thrust at which it buckles, N, how many times that is the thrust on it,
// and the second moment of area with which it would be 1, mm4.
//
// Equation:
//
//	Pe = pi^2 E I/l^2,  times = Pe/P,  I1 = P l^2/(pi^2 E)
//
// Symbols: Thrust P, N (ShroudTension has it by the rule of thumb); Length l between
// supports, mm; Modulus E, MPa, 70000 if left 0; SecondMoment I in the direction asked
// about, mm4.
//
// Holds for a straight panel hinged at both ends: the book's own factors, 2.5 keel-stepped
// and 3.375 deck-stepped on P l^2 in N and m, are 1.73 and 2.33 times here at 1.5 RM/b.
// A deck-stepped panel or one whose supports give wants more.
//
// Source: Euler's column (computed). Errors: numbers that are missing or not positive.
type MastPanel struct{ Thrust, Length, Modulus, SecondMoment float64 }

// MastPanelResult is how near it is to buckling.
type MastPanelResult struct {
	Buckles, Times, Needs float64

	of MastPanel
}

const aluminiumModulus = 70000

var euler = working.Source{Title: "Euler's column, hinged at both ends", As: working.Computed, For: "the form of the equation"}

// Reckon gives it.
func (p MastPanel) Reckon() (MastPanelResult, error) {
	if p.Modulus == 0 {
		p.Modulus = aluminiumModulus
	}
	var in inputs
	in.positive("the thrust in the mast", p.Thrust, "N")
	in.positive("the length of the panel", p.Length, "mm")
	in.positive("the modulus", p.Modulus, "MPa")
	in.positive("the second moment of area of the mast", p.SecondMoment, "mm4")
	if in.err != nil {
		return MastPanelResult{}, in.err
	}
	r := MastPanelResult{of: p, Buckles: math.Pi * math.Pi * p.Modulus * p.SecondMoment / (p.Length * p.Length)}
	r.Times = r.Buckles / p.Thrust
	r.Needs = p.SecondMoment / r.Times
	return r, nil
}

// Working writes the calculation down.
func (r MastPanelResult) Working() []working.Step {
	return []working.Step{
		{Symbol: "Pe", Meaning: "thrust at which the panel buckles", Formula: "pi^2 E I/l^2", Inputs: given("E", r.of.Modulus, "MPa", "I", r.of.SecondMoment, "mm4", "l", r.of.Length, "mm"), Value: r.Buckles, Unit: "N", Source: euler},
		{Symbol: "n", Meaning: "that many times the thrust on it", Formula: "Pe/P", Inputs: given("P", r.of.Thrust, "N"), Value: r.Times, Source: euler},
	}
}
