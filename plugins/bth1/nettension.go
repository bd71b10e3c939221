package bth1

import (
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// netTension is the tensile strength of the effective area across the pin hole.
//
// Returns the load at which the plate tears across its hole (net_tension), N, and the
// metal that counts on each side of the hole (effective_width), mm.
//
// Equation, with a design factor Nd of 1:
//
//	Pt   = Cr Fu/(1.20 Nd) * 2 t beff
//	beff = min(4 t, 0.6 be (Fu/Fy) sqrt(Dh/be), be)
//	Cr   = 1 for Dh/Dp <= 1.1, else 1 - 0.275 sqrt(1 - (Dp/Dh)^2)
//
// Symbols: thickness t, hole Dh, pin Dp, be from hole edge to plate edge at right
// angles to the load, mm; yield Fy, ultimate Fu, MPa; result N.
//
// Holds for a flat plate loaded in its own plane, or within 2 deg of it (judgement); with
// the hole off the centre line the poorer side counts on both sides. Load basis: nominal
// ultimate, to be held against the wire's break load.
//
// Source: after ASME BTH-1, 2005, 3-3.3.1, equations 3-45 to 3-47, in a published
// calculation sheet (published; the wording of the clause is memory). Errors: sizes
// or strengths that can't be, a pin larger than its hole, a hole that breaks out, a
// wire more than 45 degrees off the plate in its plane, or 2 out of it.
func netTension() clauses.Clause {
	return clauses.Clause{
		Clause: "3-3.3.1, equations 3-45 to 3-47",
		Covers: "tension across the pin hole on its effective width, with what a loose pin takes away",
		Kind:   "landing",
		Reads:  reads,
		Facts: []clauses.Fact{
			{
				Name: "net_tension", Unit: "N", Bears: true, From: from,
				Meaning: "load at which the plate tears across its pin hole: nominal ultimate, design factor 1, the 1.20 kept; to be held against the wire's break load",
				Reckon: func(r clauses.Row) (clauses.Result, error) {
					return weaker(r, func(p strength.PinPlateResult) float64 { return p.Net }, "3-3.3.1, equations 3-45 to 3-47", "be", "beff", "Cr", "Pt")
				},
			},
			{
				Name: "effective_width", Unit: "mm", From: from,
				Meaning: "metal that counts on each side of the pin hole: no more than 4 thicknesses",
				Reckon: func(r clauses.Row) (clauses.Result, error) {
					return weaker(r, stepOf("beff"), "3-3.3.1, equations 3-46 and 3-47", "be", "beff")
				},
			},
		},
	}
}
