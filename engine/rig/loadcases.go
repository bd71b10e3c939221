package rig

import (
	"fmt"

	"chainwale/engine/working"
)

// LoadCases are the two transverse cases that the shrouds are sized for: a foresail
// alone, and a deep-reefed main alone.
//
// Returns the side forces at each level for both, ready for Shrouds, N.
//
// Equation:
//
//	case 1: T1 = RM/a1, all at the top
//	case 2: T2 = RM/a2; at the head 0.40 T2, shared between the levels above and below
//	        by distance; at the boom 0.33 T2, at level 1 by boom height over its height
//
// Symbols: RightingMoment RM at 30 deg with the crew's part, N mm; Freeboard, Heights
// of the levels, Boom and Head of the reefed main above the deck, ReefCentre a2's
// height above the deck (a third of the reefed luff above the boom), mm; a1 and a2
// are measured from the waterline.
//
// Holds for a monohull with one mast, heights that rise, a head between the deck and
// the top level.
//
// Source: the NBS method after Larsson and Eliasson, Principles of Yacht Design, ch. 11
// (published: cases, a1, a2, the sharing; memory: 0.40 and 0.33). Errors: numbers
// that are missing, not positive or not finite, heights that don't rise, a head above
// the top.
type LoadCases struct {
	RightingMoment         float64
	Freeboard              float64
	Heights                []float64
	Boom, Head, ReefCentre float64
}

// LoadCasesResult are the side forces of both cases.
type LoadCasesResult struct {
	// Foresail and ReefedMain are the forces at the levels, lowest first, N.
	Foresail, ReefedMain []float64
	// T1 and T2 are the whole side forces, HeadForce and BoomForce the parts of T2 on the mast.
	T1, T2, HeadForce, BoomForce float64

	of LoadCases
}

const (
	headShare = 0.40
	boomShare = 0.33
)

var (
	pydCases  = working.Source{Title: "after Larsson and Eliasson, Principles of Yacht Design", Clause: "ch. 11", As: working.Published, For: "the load cases and their heights"}
	pydShares = working.Source{Title: "after Larsson and Eliasson, Principles of Yacht Design", Clause: "ch. 11", As: working.Memory, For: "the parts 0.40 and 0.33"}
)

func (l LoadCases) check() error {
	var in inputs
	in.moment("the righting moment", l.RightingMoment)
	in.must(l.RightingMoment > 0, "the righting moment must be above 0 N mm, not %g", l.RightingMoment)
	in.notNegative("the freeboard", l.Freeboard, "mm")
	in.must(len(l.Heights) > 0 && len(l.Heights) <= mostLevels, "load cases need 1 to %d levels, not %d", mostLevels, len(l.Heights))
	below := 0.0
	for i, h := range l.Heights {
		in.positive(fmt.Sprintf("the height of level %d", i+1), h, "mm")
		in.must(h > below, "level %d must stand above the one below it: %g mm is not above %g mm", i+1, h, below)
		below = h
	}
	in.positive("the height of the boom above the deck", l.Boom, "mm")
	in.positive("the height of the reefed head above the deck", l.Head, "mm")
	in.positive("the height of the reefed main's centre above the deck", l.ReefCentre, "mm")
	in.must(l.Head <= below, "the head of the reefed main (%g mm) stands above the highest shroud (%g mm)", l.Head, below)
	in.must(l.Boom < l.Head, "the boom (%g mm) must stand below the head of the reefed main (%g mm)", l.Boom, l.Head)
	return in.err
}

// Reckon gives the forces.
func (l LoadCases) Reckon() (LoadCasesResult, error) {
	if err := l.check(); err != nil {
		return LoadCasesResult{}, err
	}
	n := len(l.Heights)
	r := LoadCasesResult{Foresail: make([]float64, n), ReefedMain: make([]float64, n), of: l}
	r.T1 = l.RightingMoment / (l.Heights[n-1] + l.Freeboard)
	r.T2 = l.RightingMoment / (l.ReefCentre + l.Freeboard)
	r.HeadForce, r.BoomForce = headShare*r.T2, boomShare*r.T2
	r.Foresail[n-1] = r.T1
	r.shareHead()
	r.ReefedMain[0] += r.BoomForce * min(1, l.Boom/l.Heights[0])
	return r, nil
}

// shareHead puts the force at the head on the levels above and below it, in inverse
// proportion to how far each is. What would fall to the deck needs no shroud.
func (r *LoadCasesResult) shareHead() {
	low, lowAt := -1, 0.0
	for i, h := range r.of.Heights {
		if r.of.Head >= h {
			low, lowAt = i, h
			continue
		}
		up := (r.of.Head - lowAt) / (h - lowAt)
		r.ReefedMain[i] += r.HeadForce * up
		if low >= 0 {
			r.ReefedMain[low] += r.HeadForce * (1 - up)
		}
		return
	}
	r.ReefedMain[low] += r.HeadForce
}

// Working writes the calculation down.
func (r LoadCasesResult) Working() []working.Step {
	l := r.of
	top := l.Heights[len(l.Heights)-1]
	steps := []working.Step{
		{Symbol: "T1", Meaning: "side force of a foresail alone, at the top", Formula: "RM/(h + Fs)", Inputs: given("RM", l.RightingMoment, "N mm", "h", top, "mm", "Fs", l.Freeboard, "mm"), Value: r.T1, Unit: "N", Source: pydCases},
		{Symbol: "T2", Meaning: "side force of a deep-reefed main alone", Formula: "RM/(h + Fs)", Inputs: given("RM", l.RightingMoment, "N mm", "h", l.ReefCentre, "mm", "Fs", l.Freeboard, "mm"), Value: r.T2, Unit: "N", Source: pydCases},
		{Symbol: "Th", Meaning: "its part at the head", Formula: "0.40 T2", Value: r.HeadForce, Unit: "N", Source: pydShares},
		{Symbol: "Tb", Meaning: "its part at the boom", Formula: "0.33 T2", Value: r.BoomForce, Unit: "N", Source: pydShares},
	}
	for i, f := range r.ReefedMain {
		steps = append(steps, working.Step{Symbol: fmt.Sprintf("F%d", i+1), Meaning: fmt.Sprintf("side force at level %d under the reefed main", i+1), Formula: "its parts of Th and Tb by distance", Value: f, Unit: "N", Source: pydCases})
	}
	return steps
}

// SharedSideForce is the side force of sails in proportion to their areas, as a
// classification society shares it.
//
// Returns the whole side force and what each sail puts on its head, tack and clew, N.
//
// Equation:
//
//	F = RM30/(sum(A z)/sum(A));  of a sail F A/sum(A): 3/7 head, 2/7 tack, 2/7 clew
//
// Symbols: RightingMoment RM30, N mm; Sails with Area, mm2, and the Height z of their
// centres above the centre of lateral resistance, mm.
//
// Holds for a heel of 30 deg.
//
// Source: after Germanischer Lloyd, Rules I-3-3, section 2, 2003 (published). Errors:
// no sail, an area or a height that is missing or not positive.
type SharedSideForce struct {
	RightingMoment float64
	Sails          []SailArea
}

// SailArea is a sail as a load case has it.
type SailArea struct{ Area, Height float64 }

// SailForce is what a sail puts on its corners, N.
type SailForce struct{ Head, Tack, Clew float64 }

// SharedSideForceResult is the force and its parts.
type SharedSideForceResult struct {
	Force, Height float64
	Sails         []SailForce

	of SharedSideForce
}

var glRig = working.Source{Title: "after Germanischer Lloyd, Rules I-3-3, Mast and Rig", Edition: "2003", Clause: "section 2", As: working.Published, For: "the sharing by area, 3/7 and 2/7"}

// Reckon gives the forces.
func (s SharedSideForce) Reckon() (SharedSideForceResult, error) {
	var in inputs
	in.moment("the righting moment", s.RightingMoment)
	in.must(len(s.Sails) > 0, "a side force needs a sail")
	total, first := 0.0, 0.0
	for i, a := range s.Sails {
		in.positive(fmt.Sprintf("the area of sail %d", i+1), a.Area, "mm2")
		in.positive(fmt.Sprintf("the height of sail %d", i+1), a.Height, "mm")
		total, first = total+a.Area, first+a.Area*a.Height
	}
	if in.err != nil {
		return SharedSideForceResult{}, in.err
	}
	r := SharedSideForceResult{Height: first / total, of: s}
	r.Force = s.RightingMoment / r.Height
	for _, a := range s.Sails {
		f := r.Force * a.Area / total / 7
		r.Sails = append(r.Sails, SailForce{3 * f, 2 * f, 2 * f})
	}
	return r, nil
}

// Working writes the calculation down.
func (r SharedSideForceResult) Working() []working.Step {
	steps := []working.Step{{Symbol: "F", Meaning: "side force of all sails", Formula: "RM30/(sum(A z)/sum(A))", Inputs: given("RM30", r.of.RightingMoment, "N mm", "z", r.Height, "mm"), Value: r.Force, Unit: "N", Source: glRig}}
	for i, s := range r.Sails {
		steps = append(steps, working.Step{Symbol: fmt.Sprintf("Fh%d", i+1), Meaning: fmt.Sprintf("of it, the head of sail %d", i+1), Formula: "3/7 F A/sum(A)", Inputs: given("A", r.of.Sails[i].Area, "mm2"), Value: s.Head, Unit: "N", Source: glRig})
	}
	return steps
}
