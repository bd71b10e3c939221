package reckon

import (
	"fmt"
	"strings"

	"chainwale/engine/quantity"
	"chainwale/engine/rig"
)

var rightingMoment = Formula{
	Name:  "righting-moment",
	Title: "what a boat rights herself with at 30 deg of heel, and how far to trust it",
	Holds: "a ballasted monohull; from mass and metacentric height by small angles, or from an inclining test of 0.2 to 10 deg in flat water",
	Inputs: []Input{
		above("mass", quantity.Mass, "6000 kg", "mass of the boat as she sails"),
		optional(above("gm", quantity.Length, "1.05 m", "metacentric height; or give weight, distance and heel")),
		instead(above("weight", quantity.Mass, "100 kg", "weight that is moved across in the test")),
		instead(above("distance", quantity.Length, "1.6 m", "how far it is moved")),
		instead(above("heel", quantity.Angle, "2 deg", "how far she heels for it")),
	},
	Results: []Output{
		gives("rm30", quantity.Moment, "righting moment at 30 deg of heel"),
		word("how", "how it is known, and how far to trust it"),
	},
	run: runRightingMoment,
}

func runRightingMoment(in *inputs) (outcome, error) {
	r, err := momentBy(in)
	if in.refusal() != nil {
		return outcome{}, nil
	}
	if err != nil {
		return outcome{}, beyond(err)
	}
	how := fmt.Sprintf("%s: %s; between %.3g and %.3g kN m", r.How, r.Trust, r.Least/1e6, r.Most/1e6)
	return outcome{results: map[string]any{"rm30": r.At30, "how": how}, working: r.Working()}, nil
}

// momentBy takes the one way or the other, and refuses a mixture of both.
func momentBy(in *inputs) (rig.RightingMoment, error) {
	test := []string{"weight", "distance", "heel"}
	var missing, given []string
	for _, name := range test {
		if in.has(name) {
			given = append(given, name)
		} else {
			missing = append(missing, name)
		}
	}
	switch {
	case in.has("gm") && len(given) > 0:
		in.refuse("gm", fmt.Sprintf("it is given beside %s: the test gives it by itself", join(given, "and")), "gm, or weight, distance and heel")
	case in.has("gm"):
		return rig.StabilityMoment{Mass: in.number("mass"), GM: in.number("gm")}.Reckon()
	case len(missing) > 0 && len(given) > 0:
		in.refuse(missing[0], fmt.Sprintf("it is missing, and an inclining test needs %s", strings.Join(test, ", ")), in.declaration(missing[0]).expected())
	case len(missing) > 0:
		in.refuse("gm", "it is missing, and so is an inclining test", "gm, or weight, distance and heel")
	}
	return rig.InclinedMoment{Mass: in.number("mass"), Weight: in.number("weight"), Distance: in.number("distance"), Heel: in.number("heel")}.Reckon()
}
