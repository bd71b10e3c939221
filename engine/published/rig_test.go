package published

import (
	"math"

	"chainwale/engine/quantity"
	"chainwale/engine/rig"
	"chainwale/engine/table"
)

// rigRunners are the formulas of engine/rig and the tables that they read.
var rigRunners = map[string]runner{
	"mast-section":     runMastSection,
	"mast-bending":     runMastBending,
	"shroud-tension":   runShroudTension,
	"side-force":       runSideForce,
	"permissible-load": runPermissible,
	"righting-moment":  runRightingMoment,
	"shrouds":          runShrouds,
	"load-cases":       runLoadCases,
	"required-stay":    runRequiredStay,
	"standing":         runStanding,
	"windage":          runWindage,
	"dock-roll":        runDockRoll,
	"drag":             runDrag,
	"line":             runLine,
	"line-end":         runLineEnd,
	"line-bend":        runLineBend,
	"lashing":          runLashing,
	"stretch":          runStretch,
}

var (
	metresPerSecond = 1 / quantity.MetrePerSecond
	seconds         = quantity.MetrePerSecond / 1000
)

func runMastSection(in *inputs) results {
	s := ok(rig.MastSection{Long: in.number("long", quantity.Length), Broad: in.number("broad", quantity.Length), Wall: in.number("wall", quantity.Length)}.Reckon())(in)
	out := results{"area": area(s.Area), "modulus": of(quantity.Volume)(s.AcrossW), "modulus_along": of(quantity.Volume)(s.AlongW)}
	if in.has("yield") {
		out["moment"] = moment(s.AcrossW * in.number("yield", quantity.Stress))
	}
	return out
}

func runMastBending(in *inputs) results {
	r := ok(rig.MastBending{Supports: in.numbers("supports", quantity.Length), Top: in.number("top", quantity.Length), Load: in.number("load", quantity.ForcePerLength)}.Reckon())(in)
	var moments, reactions []quantity.Quantity
	for i := range r.Reactions {
		moments, reactions = append(moments, moment(r.AtSupports[i])), append(reactions, force(r.Reactions[i]))
	}
	return results{"moments": moments, "reactions": reactions, "largest": moment(r.Largest)}
}

func runShroudTension(in *inputs) results {
	rm, b := in.number("righting_moment", quantity.Moment), in.number("half_beam", quantity.Length)
	r := ok(rig.ShroudTension{RightingMoment: rm, HalfBeam: b}.Reckon())(in)
	return results{"shrouds": force(r.Shrouds), "mast": force(r.Mast), "shroud_factor": bare(r.Shrouds * b / rm), "mast_factor": bare(r.Mast * b / rm)}
}

func runSideForce(in *inputs) results {
	s := rig.SharedSideForce{RightingMoment: in.number("righting_moment", quantity.Moment)}
	heights := in.numbers("heights", quantity.Length)
	for i, a := range in.numbers("areas", quantity.Area) {
		s.Sails = append(s.Sails, rig.SailArea{Area: a, Height: heights[i]})
	}
	r := ok(s.Reckon())(in)
	var heads []quantity.Quantity
	for _, f := range r.Sails {
		heads = append(heads, force(f.Head))
	}
	first := r.Sails[0]
	whole := first.Head + first.Tack + first.Clew
	return results{"force": force(r.Force), "heads": heads, "head_share": bare(first.Head / whole), "tack_share": bare(first.Tack / whole), "clew_share": bare(first.Clew / whole)}
}

func runPermissible(in *inputs) results {
	r := ok(rig.PermissibleLoad{What: in.word("what"), Case: in.word("case"), Strength: in.or("strength", quantity.Force, 1)}.Reckon())(in)
	return results{"share": bare(r.Share), "factor": bare(1 / r.Share), "load": force(r.Load)}
}

func runRightingMoment(in *inputs) results {
	var r rig.RightingMoment
	var err error
	mass := in.or("mass", quantity.Mass, 0)
	switch {
	case in.has("gm"):
		r, err = rig.StabilityMoment{Mass: mass, GM: in.number("gm", quantity.Length), BM: in.or("bm", quantity.Length, 0)}.Reckon()
	case in.has("weight"):
		r, err = rig.InclinedMoment{Mass: mass, Weight: in.number("weight", quantity.Mass), Distance: in.number("distance", quantity.Length), Heel: in.number("heel", quantity.Angle)}.Reckon()
	case in.has("period"):
		r, err = rig.RolledMoment{Mass: mass, Beam: in.number("beam", quantity.Length), Period: in.number("period", quantity.Time) * seconds}.Reckon()
	default:
		r, err = rig.EstimatedMoment{Waterline: in.number("waterline", quantity.Length)}.Reckon()
	}
	ok(r, err)(in)
	return results{"rm30": moment(r.At30), "gm": length(r.GM), "how": r.How}
}

func runShrouds(in *inputs) results {
	s := rig.Shrouds{HalfBeam: in.number("half_beam", quantity.Length)}
	tips, forces := in.numbers("tips", quantity.Length), in.numbers("forces", quantity.Force)
	for i, h := range in.numbers("heights", quantity.Length) {
		s.Levels = append(s.Levels, rig.ShroudLevel{Height: h, Tip: tips[i], Force: forces[i]})
	}
	r := ok(s.Reckon())(in)
	var diagonals, verticals, spreaders []quantity.Quantity
	for _, l := range r.Levels {
		diagonals, verticals, spreaders = append(diagonals, force(l.Diagonal)), append(verticals, force(l.Vertical)), append(spreaders, force(l.Spreader))
	}
	return results{"diagonals": diagonals, "verticals": verticals, "spreaders": spreaders, "heeling": moment(r.HeelingMoment), "held": moment(r.HeldMoment)}
}

func runLoadCases(in *inputs) results {
	r := ok(rig.LoadCases{RightingMoment: in.number("righting_moment", quantity.Moment), Freeboard: in.number("freeboard", quantity.Length), Heights: in.numbers("heights", quantity.Length),
		Boom: in.number("boom", quantity.Length), Head: in.number("head", quantity.Length), ReefCentre: in.number("reef_centre", quantity.Length)}.Reckon())(in)
	var main []quantity.Quantity
	for _, f := range r.ReefedMain {
		main = append(main, force(f))
	}
	return results{"foresail": force(r.T1), "whole_main": force(r.T2), "main": main}
}

func runRequiredStay(in *inputs) results {
	s := rig.RequiredStay{Role: rig.StayRole(in.word("role")), RightingMoment: in.number("righting_moment", quantity.Moment), Height: in.number("height", quantity.Length),
		Freeboard: in.number("freeboard", quantity.Length), Angle: in.or("angle", quantity.Angle, 0), ForestayAngle: in.or("forestay_angle", quantity.Angle, 0)}
	return results{"break_load": force(ok(s.Reckon())(in).BreakLoad)}
}

func runStanding(in *inputs) results {
	var c rig.Capacity
	x, y, heights := in.numbers("x", quantity.Length), in.numbers("y", quantity.Length), in.numbers("heights", quantity.Length)
	for i, t := range in.numbers("allowable", quantity.Force) {
		c.Stays = append(c.Stays, rig.HeldStay{Line: rig.StayLine{Foot: rig.Point{X: x[i], Y: y[i]}, Height: heights[i]}, Allowable: t})
	}
	r := ok(c.Reckon())(in)
	return results{"worst": moment(r.Worst), "direction": angle(r.Falls[0])}
}

func runWindage(in *inputs) results {
	r := ok(rig.Windage{Diameter: in.number("diameter", quantity.Length), Length: in.number("length", quantity.Length), Wind: in.number("wind", quantity.Speed) * metresPerSecond}.Reckon())(in)
	return results{"pressure": stress(r.Pressure), "force": force(r.Force), "moment": moment(r.Moment)}
}

func runDockRoll(in *inputs) results {
	r := ok(rig.DockRoll{MassPerLength: 1000 * in.number("mass", quantity.MassPerLength), Height: in.number("height", quantity.Length), RollAxis: in.number("axis", quantity.Length),
		Angle: in.number("angle", quantity.Angle), Period: in.number("period", quantity.Time) * seconds}.Reckon())(in)
	return results{"moment": moment(r.Moment), "weight": moment(r.Weight), "swing": moment(r.Swing)}
}

func runDrag(in *inputs) results {
	d := ok(rig.DragPublished(in.word("shape"), in.number("diameter", quantity.Length), in.number("wind", quantity.Speed)*metresPerSecond))(in)
	return results{"least": bare(d.Least), "most": bare(d.Most), "use": bare(d.Use)}
}

func runLine(in *inputs) results {
	l := ok(table.Line(in.word("kind")))(in)
	var least, mean []quantity.Quantity
	for _, d := range in.numbers("diameters", quantity.Length) {
		least, mean = append(least, force(l.BreakLoad(d))), append(mean, force(l.Mean*d*d))
	}
	return results{"least": least, "mean": mean}
}

func runLineEnd(in *inputs) results {
	return results{"factor": bare(ok(table.LineEndOf(in.word("end"), in.word("fibre")))(in).Factor)}
}

func runLineBend(in *inputs) results {
	return results{"factor": bare(ok(table.LineBendAt(in.number("ratio", quantity.Bare)))(in).Factor)}
}

func runLashing(in *inputs) results {
	r := ok(rig.Lashing{LineBreak: in.number("line_break", quantity.Force), Parts: int(in.number("parts", quantity.Bare)), End: in.word("end"), Fibre: in.word("fibre"),
		Pin: in.or("pin", quantity.Length, 0), Line: in.number("line", quantity.Length)}.Reckon())(in)
	return results{"break_load": force(r.BreakLoad)}
}

func runStretch(in *inputs) results {
	r := ok(rig.TensionByStretch{Wire: rig.Wire{Construction: in.word("construction"), Metal: in.word("metal"), Diameter: in.number("diameter", quantity.Length)},
		GaugeLength: in.number("gauge_length", quantity.Length), Stretch: in.number("stretch", quantity.Length)}.Reckon())(in)
	out := results{"share": bare(r.Share)}
	if !math.IsNaN(r.ByRule) {
		out["by_rule"] = bare(r.ByRule)
	}
	return out
}
