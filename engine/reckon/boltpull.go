package reckon

import (
	"fmt"

	"chainwale/engine/quantity"
	"chainwale/engine/strength"
)

var boltPull = Formula{
	Name:  "bolt-pull",
	Title: "how hard the bolts are pulled when the load tips the plate off its host",
	Holds: "a stiff plate on a stiff host, arm and normal tipping it the same way; heel without preload, centroid with preload all over (empty for a single row); prying is not covered",
	Inputs: []Input{
		{Name: "rows", Takes: Rows, Means: "the rows of bolts across the plate",
			Example: `[{"height": "30 mm", "bolts": 2}, {"height": "150 mm", "bolts": 2}]`,
			Parts: []Input{
				from("height", quantity.Length, "30 mm", "height of the row above the edge that the plate heels about"),
				counted("bolts", "2", "how many bolts stand in the row"),
			}},
		from("force", quantity.Force, "20 kN", "the force along the plate"),
		from("arm", quantity.Length, "15 mm", "how far the force's line lies off the face of the host"),
		optional(from("normal", quantity.Force, "1.5 kN", "the part of the load that pulls away from the host; none if left out")),
		optional(from("normal_height", quantity.Length, "220 mm", "height above the heeling edge at which normal acts")),
	},
	Results: []Output{
		{Name: "heel", Gives: Amount, Dimension: quantity.Force, Many: true, Means: "pull on a bolt of each row, the plate heeling about its edge"},
		{Name: "centroid", Gives: Amount, Dimension: quantity.Force, Many: true, Means: "pull on a bolt of each row, preload holding the plate"},
		gives("largest", quantity.Force, "the greatest pull of either"),
	},
	run: runBoltPull,
}

func runBoltPull(in *inputs) (outcome, error) {
	p := strength.BoltPull{Force: in.number("force"), Arm: in.number("arm"), Normal: in.number("normal"), NormalHeight: in.number("normal_height")}
	for i, row := range in.rows("rows") {
		n := row.count("bolts")
		if n > mostThings {
			return outcome{}, beyondf("row %d has %d bolts, more than the %d that are covered", i+1, n, mostThings)
		}
		p.Rows = append(p.Rows, strength.BoltRow{Height: row.number("height"), Bolts: n})
	}
	if n := len(p.Rows); n > mostThings {
		return outcome{}, beyondf("%d rows are more than the %d that are covered", n, mostThings)
	}
	// A height left out would count as nought, which makes light of the pull.
	in.together("normal", "normal_height")
	r, err := p.Reckon()
	if in.impossible("rows", err) {
		return outcome{}, nil
	}
	return outcome{results: map[string]any{"heel": r.Heel, "centroid": append([]float64{}, r.Centroid...), "largest": r.Largest}, working: r.Working()}, nil
}

// together refuses one of two inputs that mean something only together.
func (in *inputs) together(a, b string) {
	for _, of := range [][2]string{{a, b}, {b, a}} {
		if in.has(of[0]) && !in.has(of[1]) {
			in.refuse(of[1], fmt.Sprintf("it is missing, and %s means nothing without it", of[0]), in.declaration(of[1]).expected())
		}
	}
}
