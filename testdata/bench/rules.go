package main

import "strings"

// trial is one rule, as its text for the engines and as the Go function that a
// programmer would write instead of it. The text is either a comparison in parts,
// which is how a rule of ours is written, or a condition.
type trial struct {
	id                string
	have, verb, limit string
	condition         string
	byHand            func(*landing) bool
}

// signs are what the verbs of a rule are in an expression.
var signs = map[string]string{"at_least": ">=", "at_most": "<=", "above": ">", "below": "<"}

// text is the rule as one expression, as ours and expr write it.
func (t trial) text() string {
	if t.condition != "" {
		return t.condition
	}
	return t.have + " " + signs[t.verb] + " " + t.limit
}

// celText is the rule as one expression, as CEL writes it.
func (t trial) celText() string { return celWords.Replace(t.text()) }

var celWords = strings.NewReplacer(" and ", " && ", " or ", " || ")

// trials have numbers only, so that every engine can be set up in its fastest way.
var trials = []trial{
	{id: "end-of-hole", have: "end / hole", verb: "at_least", limit: "1.5",
		byHand: func(l *landing) bool { return l.End/l.Hole >= 1.5 }},
	{id: "side-of-hole", have: "fitting.width - hole", verb: "at_least", limit: "1.9 * hole",
		byHand: func(l *landing) bool { return l.Fitting.Width-l.Hole >= 1.9*l.Hole }},
	{id: "plate-outlasts-wire", have: "plate_ultimate", verb: "at_least", limit: "1.5 * stay.break_load",
		byHand: func(l *landing) bool { return l.PlateUltimate >= 1.5*l.Stay.BreakLoad }},
	{id: "pin-outlasts-wire", have: "pin_shear", verb: "at_least", limit: "1.25 * stay.break_load",
		byHand: func(l *landing) bool { return l.PinShear >= 1.25*l.Stay.BreakLoad }},
	{id: "pin-stays-straight", have: "pin_bending", verb: "at_least", limit: "stay.break_load",
		byHand: func(l *landing) bool { return l.PinBending >= l.Stay.BreakLoad }},
	{id: "hole-stays-round", have: "plate_bearing", verb: "at_least", limit: "1.5 * stay.working_load",
		byHand: func(l *landing) bool { return l.PlateBearing >= 1.5*l.Stay.WorkingLoad }},
	{id: "pin-fits", have: "hole - pin_diameter", verb: "at_most", limit: "0.1 * hole",
		byHand: func(l *landing) bool { return l.Hole-l.PinDiameter <= 0.1*l.Hole }},
	{id: "pin-goes-in", have: "pin_diameter", verb: "below", limit: "hole",
		byHand: func(l *landing) bool { return l.PinDiameter < l.Hole }},
	{id: "fork-is-filled", have: "fitting.thickness", verb: "at_least", limit: "0.6 * fork_opening",
		byHand: func(l *landing) bool { return l.Fitting.Thickness >= 0.6*l.ForkOpening }},
	{id: "cheeks-match", have: "2.0 * fork_cheek", verb: "at_least", limit: "fitting.thickness",
		byHand: func(l *landing) bool { return 2*l.ForkCheek >= l.Fitting.Thickness }},
	{id: "plate-stays-below-yield", have: "stay.working_load / (fitting.thickness * (fitting.width - hole))", verb: "at_most", limit: "0.4 * fitting.metal.yield",
		byHand: func(l *landing) bool {
			return l.Stay.WorkingLoad/(l.Fitting.Thickness*(l.Fitting.Width-l.Hole)) <= 0.4*l.Fitting.Metal.Yield
		}},
	{id: "plate-in-proportion", condition: "fitting.width <= 6.0 * fitting.thickness and fitting.width >= 2.5 * hole",
		byHand: func(l *landing) bool {
			return l.Fitting.Width <= 6*l.Fitting.Thickness && l.Fitting.Width >= 2.5*l.Hole
		}},
	{id: "age", have: "fitting.age", verb: "at_most", limit: "fitting.life",
		byHand: func(l *landing) bool { return l.Fitting.Age <= l.Fitting.Life }},
	{id: "metal-or-young", condition: "fitting.metal.pren >= 22.0 or fitting.age <= 0.6 * fitting.life",
		byHand: func(l *landing) bool {
			return l.Fitting.Metal.PREN >= 22 || l.Fitting.Age <= 0.6*l.Fitting.Life
		}},
	{id: "wire-has-reserve", have: "stay.break_load - stay.working_load", verb: "above", limit: "1.5 * stay.working_load",
		byHand: func(l *landing) bool { return l.Stay.BreakLoad-l.Stay.WorkingLoad > 1.5*l.Stay.WorkingLoad }},
	{id: "whole-section", have: "fitting.metal.yield * fitting.width * fitting.thickness", verb: "at_least", limit: "1.6 * stay.break_load",
		byHand: func(l *landing) bool {
			return l.Fitting.Metal.Yield*l.Fitting.Width*l.Fitting.Thickness >= 1.6*l.Stay.BreakLoad
		}},
}
