package rig

import "chainwale/engine/working"

// CrewMoment is what a crew on the windward side adds.
//
// Returns the moment, N mm.
//
// Equation: dRM = 75 n (3.4 B - 4.9 Fs), N m.
//
// Symbols: People n; Beam B and Freeboard Fs, mm.
//
// Holds for people of 75 kg at the rail and 30 deg of heel.
//
// Source: the NBS method after Larsson and Eliasson (memory); it equals 75 n g (0.4 B
// cos(30) - Fs sin(30)) to 0.2 % (computed). Errors: sizes that are missing or
// negative, more than 30 people.
type CrewMoment struct {
	People          int
	Beam, Freeboard float64
}

// CrewMomentResult is the moment, N mm.
type CrewMomentResult struct {
	Moment float64

	of CrewMoment
}

var nbsCrew = working.Source{Title: "the NBS method after Larsson and Eliasson, Principles of Yacht Design", Clause: "ch. 11", As: working.Memory, For: "the form of the equation"}

// Reckon gives the moment, 0 where the freeboard outweighs the beam.
func (c CrewMoment) Reckon() (CrewMomentResult, error) {
	var in inputs
	in.must(c.People >= 0 && c.People <= 30, "a crew of %d is not covered", c.People)
	in.positive("the beam", c.Beam, "mm")
	in.notNegative("the freeboard", c.Freeboard, "mm")
	if in.err != nil {
		return CrewMomentResult{}, in.err
	}
	return CrewMomentResult{max(0, 75*float64(c.People)*(3.4*c.Beam-4.9*c.Freeboard)), c}, nil
}

// Working writes the calculation down.
func (r CrewMomentResult) Working() []working.Step {
	return []working.Step{{Symbol: "dRM", Meaning: "moment of the crew to windward", Formula: "75 n (3.4 B - 4.9 Fs) N m, lengths in m",
		Inputs: given("n", float64(r.of.People), "", "B", r.of.Beam, "mm", "Fs", r.of.Freeboard, "mm"), Value: r.Moment, Unit: "N mm", Source: nbsCrew}}
}
