package reckon

import (
	"chainwale/engine/quantity"
	"chainwale/engine/strength"
	"chainwale/engine/working"
)

const (
	elastic       = "elastic"
	instantaneous = "instantaneous-centre"
)

var boltGroup = Formula{
	Name:  "bolt-group",
	Title: "what each bolt of a plate carries that is loaded in its own plane",
	Holds: "a plate that does not bend in its plane; the instantaneous centre holds for like bolts in metal only, and is for information beside the elastic method",
	Inputs: []Input{
		{Name: "bolts", Takes: Rows, Means: "where the bolts stand; areas for all of them or for none, then they are alike",
			Example: `[{"x": "0 mm", "y": "0 mm"}, {"x": "0 mm", "y": "60 mm"}, {"x": "0 mm", "y": "120 mm"}, {"x": "0 mm", "y": "180 mm"}]`,
			Parts: []Input{
				either("x", quantity.Length, "0 mm", "place of the bolt along x"),
				either("y", quantity.Length, "60 mm", "place of the bolt along y"),
				optional(above("area", quantity.Area, "58 mm2", "area of the bolt")),
			}},
		{Name: "force", Takes: Parted, Means: "the load on the plate", Example: `{"x": "5.567 kN", "y": "39.61 kN"}`, Parts: pair(quantity.Force, "5 kN", "its part")},
		{Name: "at", Takes: Parted, Means: "where the load acts", Example: `{"x": "10 mm", "y": "260 mm"}`, Parts: pair(quantity.Length, "10 mm", "its place")},
		optional(either("moment", quantity.Moment, "0 N m", "a moment beside the load, counter-clockwise; none if left out")),
		optional(oneOf("method", []string{elastic, instantaneous}, elastic, "elastic if left out")),
	},
	Results: []Output{
		{Name: "bolts", Gives: Parted, Many: true, Means: "what each bolt carries, in the order given; together the load", Parts: []Output{
			gives("x", quantity.Force, "its part along x"), gives("y", quantity.Force, "its part along y"), gives("size", quantity.Force, "its size"),
		}},
		gives("largest", quantity.Force, "the most that any bolt carries"),
		{Name: "coefficient", Gives: Share, Sometimes: true, Means: "how many bolts the group is worth (instantaneous centre only)"},
	},
	run: runBoltGroup,
}

// pair declares x and y.
func pair(d quantity.Dimension, example, means string) []Input {
	return []Input{either("x", d, example, means+" along x"), either("y", d, example, means+" along y")}
}

func runBoltGroup(in *inputs) (outcome, error) {
	g := strength.BoltGroup{Force: vector(in.group("force")), At: vector(in.group("at")), Moment: in.number("moment")}
	for _, b := range in.rows("bolts") {
		g.Bolts = append(g.Bolts, strength.GroupBolt{X: b.number("x"), Y: b.number("y"), Area: b.number("area")})
	}
	if n := len(g.Bolts); n > mostThings {
		return outcome{}, beyondf("%d bolts are more than the %d that are covered", n, mostThings)
	}
	r, err := g.Reckon()
	if in.impossible("bolts", err) {
		return outcome{}, nil
	}
	if in.word("method") != instantaneous {
		return sharedAmong(r.Bolts, r.Largest, r.Working), nil
	}
	u, err := strength.BoltGroupUltimate(g).Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	found := sharedAmong(u.Bolts, u.Largest, u.Working)
	found.results["coefficient"] = u.Coefficient
	return found, nil
}

// sharedAmong lists what the bolts carry.
func sharedAmong(bolts []strength.Vector, largest float64, steps func() []working.Step) outcome {
	list := []map[string]any{}
	for _, f := range bolts {
		list = append(list, map[string]any{"x": f.X, "y": f.Y, "size": f.Size()})
	}
	return outcome{results: map[string]any{"bolts": list, "largest": largest}, working: steps()}
}

func vector(in *inputs) strength.Vector {
	return strength.Vector{X: in.number("x"), Y: in.number("y")}
}
