package strength

import (
	"math"

	"chainwale/engine/working"
)

// MastTang is a tang on the wall of a mast, held by bolts or rivets through it.
//
// Returns what the wall holds of a wire's pull: Slot, the force along the mast at
// which the holes begin to grow; Tear, the one at which they tear out; PullThrough,
// the force off the mast at which the heads come through the wall. Ratio is how
// many times the wire's own pull the wall holds, in both directions together.
//
// Equation, n fasteners of d in a wall of t, each with a head of dh:
//
//	Slot        = n 1.5 t d Fy
//	Tear        = n min(2.4 d t Fu, 1.2 lc t Fu),  lc = end - hole/2
//	PullThrough = n 0.6 pi dh t Fu
//	along = F cos(angle), off = F sin(angle)
//	Ratio = 1/(along/min(Slot, Tear) + off/PullThrough)
//
// Symbols: Wall t, Fastener d, Hole, Head dh, End (from the hole's centre to the
// next hole or the end of the wall, along the mast), mm; Force F of the wire, N;
// Angle of the wire to the mast, deg; Yield, Ultimate of the wall, MPa; Count n.
//
// Holds for fasteners that share alike and for a tube that keeps its shape; a wall
// that is dented by the tang's heel is not covered. A bolt right through the mast
// with a tang on either side is pulled off by nothing: then Angle is 0 for the wall.
//
// Source: bearing after EN 1993-1-8, table 3.10 and AISC 360, J3.10 (published);
// pull-through after EN 1993-1-8, table 3.4 (memory); the sum of both shares is on
// the safe side (judgement). Errors: a size, strength, angle or count outside its
// bounds, a head smaller than the hole.
type MastTang struct {
	Wall, Fastener, Hole, Head, End float64
	Count                           int
	Force, Angle                    float64
	Yield, Ultimate                 float64
}

// MastTangResult is what a MastTang holds.
type MastTangResult struct {
	Slot, Tear, PullThrough float64
	// Along and Off are the wire's pull along the mast and off it, N.
	Along, Off float64
	Ratio      float64

	of MastTang
}

var (
	enPullThrough = working.Source{Title: "after EN 1993-1-8", Edition: "2005", Clause: "table 3.4", As: working.Memory, For: "pull-through, without partial factors"}
	bothShares    = working.Source{Title: "this project's sum of both shares", As: working.Judgement, For: "pull along and off the mast together"}
)

// Reckon gives the forces and the ratio.
func (m MastTang) Reckon() (MastTangResult, error) {
	if err := m.check(); err != nil {
		return MastTangResult{}, err
	}
	n := float64(m.Count)
	r := MastTangResult{of: m}
	r.Slot = n * 1.5 * m.Wall * m.Fastener * m.Yield
	r.Tear = n * min(2.4*m.Fastener, 1.2*(m.End-m.Hole/2)) * m.Wall * m.Ultimate
	r.PullThrough = n * 0.6 * roundEdge(m.Head) * m.Wall * m.Ultimate
	r.Along, r.Off = m.Force*math.Cos(radians(m.Angle)), m.Force*math.Sin(radians(m.Angle))
	r.Ratio = 1 / (r.Along/min(r.Slot, r.Tear) + r.Off/r.PullThrough)
	return r, nil
}

func (m MastTang) check() error {
	var in inputs
	in.positive("the wall of the mast", m.Wall, "mm")
	in.positive("the fastener", m.Fastener, "mm")
	in.positive("the hole", m.Hole, "mm")
	in.positive("the head", m.Head, "mm")
	in.positive("the end distance", m.End, "mm")
	in.must(m.Fastener <= m.Hole, "the fastener (%g mm) is larger than its hole (%g mm)", m.Fastener, m.Hole)
	in.must(m.Head > m.Hole, "a head of %g mm goes through a hole of %g mm", m.Head, m.Hole)
	in.must(m.Hole/2 < m.End, "the hole (%g mm) breaks out, %g mm from its centre", m.Hole, m.End)
	in.must(m.Count >= 1 && m.Count <= mostBolts, "%d fasteners hold nothing that can be reckoned", m.Count)
	in.positive("the force of the wire", m.Force, "N")
	in.must(m.Angle >= 0 && m.Angle < 90, "a wire leads 0 to 90 deg off the mast, not %g", m.Angle)
	in.metal("wall", m.Yield, m.Ultimate)
	return in.err
}

// Working writes the calculation down.
func (r MastTangResult) Working() []working.Step {
	m, n := r.of, float64(r.of.Count)
	return []working.Step{
		{Symbol: "Fs", Meaning: "the holes begin to grow along the mast", Formula: "n 1.5 t d Fy", Inputs: given("n", n, "", "t", m.Wall, "mm", "d", m.Fastener, "mm", "Fy", m.Yield, "MPa"), Value: r.Slot, Unit: "N", Source: enPin},
		{Symbol: "Ft", Meaning: "the fasteners tear out along the mast", Formula: "n min(2.4 d, 1.2 (e - hole/2)) t Fu", Inputs: given("n", n, "", "d", m.Fastener, "mm", "e", m.End, "mm", "hole", m.Hole, "mm", "t", m.Wall, "mm", "Fu", m.Ultimate, "MPa"), Value: r.Tear, Unit: "N", Source: aiscJ3Hole},
		{Symbol: "Fp", Meaning: "the heads come through the wall", Formula: "n 0.6 pi dh t Fu", Inputs: given("n", n, "", "dh", m.Head, "mm", "t", m.Wall, "mm", "Fu", m.Ultimate, "MPa"), Value: r.PullThrough, Unit: "N", Source: enPullThrough},
		{Symbol: "Fa", Meaning: "the wire's pull along the mast", Formula: "F cos(angle)", Inputs: given("F", m.Force, "N", "angle", m.Angle, "deg"), Value: r.Along, Unit: "N", Source: statics},
		{Symbol: "Fo", Meaning: "the wire's pull off the mast", Formula: "F sin(angle)", Inputs: given("F", m.Force, "N", "angle", m.Angle, "deg"), Value: r.Off, Unit: "N", Source: statics},
		{Symbol: "k", Meaning: "how many times the wire's pull the wall holds", Formula: "1/(Fa/min(Fs, Ft) + Fo/Fp)", Inputs: given("Fa", r.Along, "N", "Fs", r.Slot, "N", "Ft", r.Tear, "N", "Fo", r.Off, "N", "Fp", r.PullThrough, "N"), Value: r.Ratio, Source: bothShares},
	}
}
