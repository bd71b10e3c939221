package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/rig"
)

var standing = Formula{
	Name:  "standing",
	Title: "what a set of stays holds of the mast in the direction it is weakest in",
	Holds: "a stiff mast hinged at its heel, plates at the height of the heel, stays that only pull and share a push as well as they can; allowable pulls should stand well below what breaks them; " +
		"no number of this kind says that a mast is safe",
	Inputs: []Input{
		{Name: "stays", Takes: Rows, Means: "the stays that stand",
			Example: `[{"x": "0 m", "y": "1.45 m", "height": "13 m", "allowable": "9.6 kN"}, {"x": "0 m", "y": "-1.45 m", "height": "13 m", "allowable": "9.6 kN"}, {"x": "4.2 m", "y": "0 m", "height": "13 m", "allowable": "9.6 kN"}, {"x": "-6.3 m", "y": "0 m", "height": "13 m", "allowable": "9.6 kN"}]`,
			Parts: []Input{
				either("x", quantity.Length, "4.2 m", "how far forward of the mast it lands"),
				either("y", quantity.Length, "1.45 m", "how far to port of the mast it lands"),
				above("height", quantity.Length, "13 m", "height of its attachment above the heel"),
				above("allowable", quantity.Force, "9.6 kN", "the pull it is counted on for"),
			}},
	},
	Results: []Output{
		gives("worst", quantity.Moment, "moment about the heel that is held in the weakest direction"),
		gives("direction", quantity.Angle, "the direction that the mast falls in first: 0 forward, 90 port"),
		word("holds", "yes if it is held against a small push from anywhere; that does not say that it is safe"),
	},
	run: runStanding,
}

func runStanding(in *inputs) (outcome, error) {
	c := rig.Capacity{}
	for _, s := range in.rows("stays") {
		c.Stays = append(c.Stays, rig.HeldStay{Line: rig.StayLine{Foot: rig.Point{X: s.number("x"), Y: s.number("y")}, Height: s.number("height")}, Allowable: s.number("allowable")})
	}
	r, err := c.Reckon()
	if in.impossible("stays", err) {
		return outcome{}, nil
	}
	return outcome{results: map[string]any{"worst": r.Worst, "direction": r.Falls[0], "holds": yesOrNo(r.Holds)}, working: r.Working()}, nil
}

func yesOrNo(yes bool) string {
	if yes {
		return "yes"
	}
	return "no"
}
