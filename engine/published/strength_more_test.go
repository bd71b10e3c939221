package published

import (
	"chainwale/engine/quantity"
	"chainwale/engine/strength"
)

func runCentre(in *inputs) results {
	g := strength.BoltGroupUltimate{Force: in.vector("force", quantity.Force), At: in.vector("at", quantity.Length), Bolts: in.bolts()}
	r := ok(g.Reckon())(in)
	return results{"coefficient": bare(r.Coefficient), "bolt_needed": force(r.BoltNeeded)}
}

func runBoltPull(in *inputs) results {
	p := strength.BoltPull{Force: in.number("force", quantity.Force), Arm: in.number("arm", quantity.Length)}
	for _, h := range in.numbers("rows_of_one", quantity.Length) {
		p.Rows = append(p.Rows, strength.BoltRow{Height: h, Bolts: 1})
	}
	r := ok(p.Reckon())(in)
	return results{"heel": forces(r.Heel), "centroid": forces(r.Centroid), "largest": force(r.Largest)}
}

func forces(values []float64) []quantity.Quantity {
	var list []quantity.Quantity
	for _, v := range values {
		list = append(list, force(v))
	}
	return list
}

func runBoltHole(in *inputs) results {
	b := strength.BoltHole{Thickness: in.number("thickness", quantity.Length), Bolt: in.number("bolt", quantity.Length), Hole: in.number("hole", quantity.Length),
		End: in.number("end", quantity.Length), Side: in.number("side", quantity.Length), BoltUltimate: in.number("bolt_ultimate", quantity.Stress), Stainless: in.flag("stainless")}
	b.Yield, b.Ultimate = in.metal()
	r := ok(b.Reckon())(in)
	k := in.or("partial_factor", quantity.Bare, 1)
	return results{"en": force(r.EN / k), "crush": force(r.Crush / k), "tear_out": force(r.TearOut / k)}
}

func runStrip(in *inputs) results {
	s := strength.Strip{Thickness: in.number("thickness", quantity.Length), Width: in.number("width", quantity.Length),
		Hole: in.or("hole", quantity.Length, 0), Offset: in.or("offset", quantity.Length, 0)}
	s.Yield, s.Ultimate = in.metal()
	r := ok(s.Reckon())(in)
	return results{"gross": force(r.Gross), "net": force(r.Net), "first_yield": force(r.FirstYield), "plastic": force(r.Plastic), "plastic_share": bare(r.Plastic / r.Gross)}
}

func runSection(in *inputs) results {
	r := ok(strength.Section{Thickness: in.number("thickness", quantity.Length), Width: in.number("width", quantity.Length), Force: in.number("force", quantity.Force),
		Lever: in.number("lever", quantity.Length), Out: in.or("out", quantity.Angle, 0), In: in.or("in", quantity.Angle, 0), Yield: in.number("yield", quantity.Stress)}.Reckon())(in)
	return results{"elastic": bare(r.Elastic), "plastic": bare(r.Plastic)}
}

func runFold(in *inputs) results {
	r := ok(strength.Fold{Force: in.number("force", quantity.Force), Turn: in.number("turn", quantity.Angle), Thickness: in.number("thickness", quantity.Length),
		InsideRadius: in.number("inside_radius", quantity.Length)}.Reckon())(in)
	return results{"reaction": force(r.Reaction), "curve_factor": bare(r.CurveFactor)}
}

func runConcentration(in *inputs) results {
	width, hole := in.number("width", quantity.Length), in.number("hole", quantity.Length)
	r := ok(strength.StressConcentration{Kind: strength.HoleLoad(in.word("kind")), Width: width, Hole: hole}.Reckon())(in)
	out := results{"net_factor": bare(r.NetFactor)}
	for _, s := range r.Working() {
		switch s.Symbol {
		case "K1":
			out["heywood"] = bare(s.Value)
		case "K2":
			out["howland"] = bare(s.Value)
		}
	}
	if in.has("force") {
		out["nominal"] = stress(in.number("force", quantity.Force) / ((width - hole) * in.number("thickness", quantity.Length)))
	}
	return out
}

func runENPin(in *inputs) results {
	p := strength.ENPin{Diameter: in.number("diameter", quantity.Length), Hole: in.number("hole", quantity.Length), Plate: in.number("plate", quantity.Length),
		Cheek: in.number("cheek", quantity.Length), Gap: in.number("gap", quantity.Length), Force: in.number("force", quantity.Force), Service: in.or("service", quantity.Force, 0),
		PlateYield: in.number("plate_yield", quantity.Stress), Modulus: in.number("modulus", quantity.Stress),
		GammaM0: in.number("gamma_m0", quantity.Bare), GammaM2: in.number("gamma_m2", quantity.Bare), GammaM6: in.number("gamma_m6", quantity.Bare)}
	p.Yield, p.Ultimate = in.metal()
	r := ok(p.Reckon())(in)
	return results{"shear_plane": force(r.ShearPlane), "moment": moment(r.Moment), "service_moment": moment(r.ServiceMoment), "acting": moment(r.Acting), "combined": bare(r.Combined),
		"shear_share": bare(p.Force / 2 / r.ShearPlane), "moment_share": bare(r.Acting / r.Moment), "contact": stress(r.Contact), "contact_limit": stress(r.ContactLimit)}
}

func runENPinPlate(in *inputs) results {
	r := ok(strength.ENPinPlate{Thickness: in.number("thickness", quantity.Length), Width: in.number("width", quantity.Length), Hole: in.number("hole", quantity.Length),
		End: in.number("end", quantity.Length), Force: in.number("force", quantity.Force), Yield: in.number("yield", quantity.Stress), GammaM0: in.number("gamma_m0", quantity.Bare)}.Reckon())(in)
	return results{"end_needed": length(r.EndNeeded), "side_needed": length(r.SideNeeded), "load_by_end": force(r.LoadByEnd), "load_by_side": force(r.LoadBySide), "thickness_needed": length(r.ThicknessNeeded)}
}

func runAirLug(in *inputs) results {
	r := ok(strength.AirLug{Thickness: in.number("thickness", quantity.Length), Width: in.number("width", quantity.Length), Hole: in.number("hole", quantity.Length),
		End: in.number("end", quantity.Length), Ultimate: in.number("ultimate", quantity.Stress), Curve: strength.LugCurve(in.word("curve"))}.Reckon())(in)
	return results{"bearing_factor": bare(r.BearingFactor), "tension_factor": bare(r.TensionFactor), "shear_bearing": force(r.ShearBearing), "tension": force(r.Tension)}
}

func runShearOut(in *inputs) results {
	r := ok(strength.ShearOut{Thickness: in.number("thickness", quantity.Length), Width: in.number("width", quantity.Length), Hole: in.number("hole", quantity.Length),
		End: in.number("end", quantity.Length), Ultimate: in.number("ultimate", quantity.Stress)}.Reckon())(in)
	return results{"net": force(r.Net), "shear_out": force(r.ShearOut)}
}

func runTimber(in *inputs) results {
	r := ok(strength.TimberBolts{Kind: strength.TimberKind(in.word("kind")), Density: in.number("density_kg_m3", quantity.Bare), Thickness: in.number("thickness", quantity.Length),
		Plate: in.number("plate", quantity.Length), Bolt: in.number("bolt", quantity.Length), BoltUltimate: in.number("bolt_ultimate", quantity.Stress),
		Count: int(in.number("count", quantity.Bare))}.Reckon())(in)
	work := in.number("working_load", quantity.Force)
	return results{"embedment": stress(r.Embedment), "capacity_over_work": bare(r.Capacity / work), "held_over_work": bare(r.HeldBothSides / work)}
}

func runLaminate(in *inputs) results {
	r := ok(strength.LaminateBolts{Thickness: in.number("thickness", quantity.Length), Bolt: in.number("bolt", quantity.Length), Washer: in.number("washer", quantity.Length),
		Count: int(in.number("count", quantity.Bare)), GlassShare: in.number("glass", quantity.Bare)}.Reckon())(in)
	return results{"bearing": force(r.Bearing), "pull_through": force(r.PullThrough), "bearing_strength": stress(r.BearingStrength), "punch_strength": stress(r.PunchStrength)}
}
