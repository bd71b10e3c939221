package reckon

import (
	"fmt"
	"slices"

	"chainwale/engine/quantity"
	"chainwale/engine/strength"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

// Kinds of host that are no timber.
const (
	laminate = "laminate"
	cored    = "cored"
	metal    = "metal"
)

// What is assumed where the inputs do not say.
const (
	plywoodDensity = 450  // kg/m3
	glassShare     = 0.30 // by mass
	usualGrade     = "A4-70"
)

var assumed = working.Source{Title: "this project's assumption where nothing better is known", As: working.Judgement}

var host = Formula{
	Name:  "host",
	Title: "what plywood, timber or laminate holds of the bolts through it",
	Holds: "a sound, dry host under one plate, one shear plane a bolt, bolts of grade " + usualGrade + ", force along the grain but not in one row along it, no factor for time or damp; " +
		"laminate is advisory: hand-laid chopped strand without core, take a factor of 3",
	Inputs: []Input{
		oneOf("kind", []string{"plywood", "softwood", "solid timber", "hardwood", laminate, cored, metal}, "plywood", "what the host is made of; solid timber counts as softwood"),
		optional(above("density", quantity.Density, "450 kg/m3", "density of the timber; 450 kg/m3 for plywood if left out, solid timber needs it, laminate has no use for it")),
		above("thickness", quantity.Length, "18 mm", "thickness of the host"),
		above("bolt", quantity.Length, "8 mm", "diameter of the bolts"),
		above("plate", quantity.Length, "6 mm", "thickness of the plate on it"),
		counted("count", "4", "how many bolts"),
	},
	Results: []Output{
		gives("embedment", quantity.Stress, "strength of the host under a bolt"),
		gives("capacity", quantity.Force, "all bolts together hold"),
		word("mode", "the way it gives"),
	},
	run: runHost,
}

func runHost(in *inputs) (outcome, error) {
	switch in.word("kind") {
	case laminate:
		return hostOfLaminate(in)
	case cored:
		return outcome{}, beyondf("a cored host is not covered: its core crushes under the bolts, and only where solid laminate stands in for it does it hold; reckon that as laminate")
	case metal:
		return outcome{}, beyondf("a host of metal is not covered: it bears on the bolts as the plate does, see bolt")
	}
	return hostOfTimber(in)
}

func hostOfTimber(in *inputs) (outcome, error) {
	kind, err := strength.TimberKindNamed(in.word("kind"))
	if err != nil {
		return outcome{}, err
	}
	density, steps, err := densityOf(in, kind)
	if err != nil {
		return outcome{}, err
	}
	grade, err := table.BoltGradeAt(usualGrade, in.number("bolt"))
	if err != nil {
		return outcome{}, beyond(err)
	}
	r, err := strength.TimberBolts{Kind: kind, Density: density, Thickness: in.number("thickness"), Plate: in.number("plate"),
		Bolt: in.number("bolt"), BoltUltimate: grade.Ultimate, Count: in.count("count")}.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	steps = append(steps, fromTable("fu", "ultimate strength of the bolt, its grade assumed", grade.Name, grade.Ultimate, "MPa", grade.Source))
	return outcome{results: map[string]any{"embedment": r.Embedment, "capacity": r.Capacity, "mode": r.Mode}, working: append(steps, r.Working()...)}, nil
}

// densityOf is the density in kg/m3, with a step where it is assumed. Plywood has
// an ordinary one; solid timbers differ too much for that.
func densityOf(in *inputs, kind strength.TimberKind) (float64, []working.Step, error) {
	switch {
	case in.has("density"):
		density, err := quantity.Quantity{Value: in.number("density"), Dimension: quantity.Density}.In("kg/m3")
		return density, nil, err
	case kind != strength.Plywood:
		in.refuse("density", fmt.Sprintf("it is missing, and %s differs too much for an assumption", kind), in.declaration("density").expected())
		return 0, nil, nil
	}
	step := working.Step{Symbol: "rho", Meaning: "density of the plywood", Formula: "assumed, since none is given", Value: plywoodDensity, Unit: "kg/m3", Source: assumed}
	return plywoodDensity, []working.Step{step}, nil
}

// hostOfLaminate has the bolts crush the laminate beside them. What their washers
// hold along the bolt is another question, so the steps of that are left out.
func hostOfLaminate(in *inputs) (outcome, error) {
	r, err := strength.LaminateBolts{Thickness: in.number("thickness"), Bolt: in.number("bolt"), Washer: in.number("bolt"),
		Count: in.count("count"), GlassShare: glassShare}.Reckon()
	if err != nil {
		return outcome{}, beyond(err)
	}
	steps := []working.Step{{Symbol: "g", Meaning: "part of glass in the laminate, by mass", Formula: "assumed: hand-laid chopped strand", Value: glassShare, Source: assumed}}
	for _, s := range r.Working() {
		if slices.Contains([]string{"sb", "Fb"}, s.Symbol) {
			steps = append(steps, s)
		}
	}
	return outcome{results: map[string]any{"embedment": r.BearingStrength, "capacity": r.Bearing, "mode": "laminate crushes"}, working: steps}, nil
}
