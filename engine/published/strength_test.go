package published

import (
	"fmt"

	"chainwale/engine/quantity"
	"chainwale/engine/strength"
	"chainwale/engine/table"
)

// strengthRunners are the formulas of engine/strength.
var strengthRunners = map[string]runner{
	"bolt-group":     runBoltGroup,
	"pin-plate":      runPinPlate,
	"aisc-pin-plate": runAISCPinPlate,
	"bearing":        runBearing,
	"pin":            runPin,
	"bolt":           runBolt,

	"instantaneous-centre": runCentre,
	"bolt-pull":            runBoltPull,
	"bolt-hole":            runBoltHole,
	"strip":                runStrip,
	"section":              runSection,
	"fold":                 runFold,
	"stress-concentration": runConcentration,
	"en-pin":               runENPin,
	"en-pin-plate":         runENPinPlate,
	"air-lug":              runAirLug,
	"shear-out":            runShearOut,
	"timber-bolts":         runTimber,
	"laminate-bolts":       runLaminate,
}

func runBoltGroup(in *inputs) results {
	g := strength.BoltGroup{Force: in.vector("force", quantity.Force), At: in.vector("at", quantity.Length), Moment: in.or("moment", quantity.Moment, 0)}
	g.Bolts = in.bolts()
	r := ok(g.Reckon())(in)
	var each []quantity.Quantity
	for _, f := range r.Bolts {
		each = append(each, force(f.Size()))
	}
	out := results{"bolts": each, "largest": force(r.Largest)}
	if in.has("stress_area") {
		out["largest_stress"] = stress(r.Largest / in.number("stress_area", quantity.Area))
	}
	return out
}

// vector reads an input of the form {x: 1 mm, y: 2 mm}.
func (in *inputs) vector(name string, d quantity.Dimension) strength.Vector {
	in.t.Helper()
	return in.vectorOf(name, in.raw(name), d)
}

func (in *inputs) vectorOf(name string, v any, d quantity.Dimension) strength.Vector {
	in.t.Helper()
	m, isMap := v.(map[string]any)
	if !isMap || m["x"] == nil || m["y"] == nil {
		in.t.Fatalf("input %s must have x and y, not %v", name, v)
	}
	return strength.Vector{X: in.parse(name, m["x"], d), Y: in.parse(name, m["y"], d)}
}

func (in *inputs) bolts() []strength.GroupBolt {
	in.t.Helper()
	list, isList := in.raw("bolts").([]any)
	if !isList {
		in.t.Fatal("bolts must be a list")
	}
	var bolts []strength.GroupBolt
	for i, v := range list {
		at := in.vectorOf(fmt.Sprintf("bolt %d", i+1), v, quantity.Length)
		bolts = append(bolts, strength.GroupBolt{X: at.X, Y: at.Y})
	}
	return bolts
}

// metal reads yield and ultimate strength as numbers or as a metal of the table.
func (in *inputs) metal() (yield, ultimate float64) {
	in.t.Helper()
	if in.has("metal") {
		m := ok(table.MetalNamed(in.word("metal")))(in)
		return m.Yield, m.Ultimate
	}
	return in.number("yield", quantity.Stress), in.number("ultimate", quantity.Stress)
}

func runPinPlate(in *inputs) results {
	p := strength.PinPlate{Thickness: in.number("thickness", quantity.Length), Width: in.number("width", quantity.Length), Hole: in.number("hole", quantity.Length),
		Pin: in.number("pin", quantity.Length), End: in.number("end", quantity.Length), EndRadius: in.or("end_radius", quantity.Length, 0), Across: in.or("across", quantity.Length, 0)}
	p.Yield, p.Ultimate = in.metal()
	r := ok(p.Reckon())(in)
	// The sources divide by a design factor, which the formula leaves to its rule.
	factor := in.or("design_factor", quantity.Bare, 1)
	out := results{"net": force(r.Net / factor), "single_plane": force(r.SinglePlane / factor), "double_plane": force(r.DoublePlane / factor),
		"bearing": force(r.Bearing / factor), "ultimate": force(r.Ultimate / factor), "governs": r.Governs}
	for _, s := range r.Working() {
		switch s.Symbol {
		case "Cr":
			out["clearance_factor"] = bare(s.Value)
		case "phi":
			out["angle"] = angle(s.Value)
		case "Av":
			out["shear_area"] = area(s.Value)
		}
	}
	if in.has("break_load") {
		out["plate_per_wire"] = bare(r.Ultimate / in.number("break_load", quantity.Force))
	}
	return out
}

func runAISCPinPlate(in *inputs) results {
	p := strength.AISCPinPlate{Thickness: in.number("thickness", quantity.Length), Width: in.number("width", quantity.Length), Hole: in.number("hole", quantity.Length),
		Pin: in.number("pin", quantity.Length), End: in.number("end", quantity.Length)}
	p.Yield, p.Ultimate = in.metal()
	r := ok(p.Reckon())(in)
	wide := "too narrow"
	if p.Width >= r.WidthNeeded {
		wide = "wide enough"
	}
	return results{"effective": length(r.Effective), "tension": force(r.Tension), "shear": force(r.Shear), "bearing": force(r.Bearing), "gross_yield": force(r.GrossYield),
		"width_needed": length(r.WidthNeeded), "end_needed": length(r.EndNeeded), "end_has": length(r.EndHas), "width": wide}
}

func runBearing(in *inputs) results {
	r := ok(strength.Bearing{Thickness: in.number("thickness", quantity.Length), Pin: in.number("pin", quantity.Length), Yield: in.number("yield", quantity.Stress)}.Reckon())(in)
	return results{"en": force(r.EN), "aisc": force(r.AISC), "bth": force(r.BTH), "lowest": force(r.Lowest)}
}

func runPin(in *inputs) results {
	p := strength.Pin{Diameter: in.number("diameter", quantity.Length), Plate: in.number("plate", quantity.Length), Cheek: in.number("cheek", quantity.Length),
		Gap: in.number("gap", quantity.Length), Force: in.number("force", quantity.Force)}
	p.Yield, p.Ultimate = in.metal()
	r := ok(p.Reckon())(in)
	return results{"shear": force(r.Shear), "bending": force(r.Bending), "moment": moment(r.Moment), "plastic_moment": moment(r.PlasticMoment)}
}

func runBolt(in *inputs) results {
	thread := ok(table.Thread(in.word("thread")))(in)
	grade := ok(table.BoltGradeAt(in.word("grade"), thread.Diameter))(in)
	r := ok(strength.Bolt{StressArea: thread.StressArea, Diameter: thread.Diameter, Yield: grade.Yield, Ultimate: grade.Ultimate,
		ThreadsInPlane: in.flag("threads_in_plane"), Pull: in.or("pull", quantity.Force, 0)}.Reckon())(in)
	// The sources divide by a partial factor and count both planes, which the formula leaves to its user.
	k := in.or("planes", quantity.Bare, 1) / in.or("partial_factor", quantity.Bare, 1)
	out := results{"area": area(r.Area), "shear": force(k * r.Shear), "tension": force(k * r.Tension), "together": force(k * r.Together), "yield_load": force(r.YieldLoad)}
	if in.has("compared_with") {
		than := ok(table.Thread(in.word("compared_with")))(in)
		other := ok(strength.Bolt{StressArea: than.StressArea, Diameter: than.Diameter, Yield: grade.Yield, Ultimate: grade.Ultimate, ThreadsInPlane: true}.Reckon())(in)
		out["times"] = bare(r.Shear / other.Shear)
	}
	return out
}
