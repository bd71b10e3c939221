package published

import (
	"strings"

	"chainwale/engine/quantity"
	"chainwale/engine/sheet"
)

// sheetRunners are the formulas of engine/sheet.
var sheetRunners = map[string]runner{
	"bend":             runBend,
	"bends-in-a-row":   runBendsInARow,
	"din-compensation": runDINCompensation,
	"folded-strip":     runFoldedStrip,
	"unfolded-point":   runUnfoldedPoint,
	"springback":       runSpringback,
	"press-force":      runPressForce,
	"die":              runDie,
	"ram-travel":       runRamTravel,
	"min-radius":       runMinRadius,
	"ductile-radius":   runDuctileRadius,
	"fit":              runFit,
	"cut-tolerance":    runCutTolerance,
	"fold-between":     runFoldBetween,
}

// method is the way in which a case takes the neutral line.
func (in *inputs) method() sheet.NeutralMethod {
	in.t.Helper()
	if !in.has("method") {
		return sheet.DIN6935
	}
	return sheet.NeutralMethod(in.word("method"))
}

func lengths(values []float64) []quantity.Quantity {
	var list []quantity.Quantity
	for _, v := range values {
		list = append(list, length(v))
	}
	return list
}

func runBend(in *inputs) results {
	b := sheet.Bend{Thickness: in.number("thickness", quantity.Length), Radius: in.number("radius", quantity.Length), Angle: in.number("angle", quantity.Angle), Method: in.method()}
	r := ok(b.Reckon())(in)
	return results{"allowance": length(r.Allowance), "outside_setback": length(r.OutsideSetback), "deduction": length(r.Deduction), "k": bare(r.K)}
}

// runBendsInARow adds straight pieces and bends of one strip along its neutral line.
func runBendsInARow(in *inputs) results {
	thickness := in.number("thickness", quantity.Length)
	radii, angles := in.numbers("radii", quantity.Length), in.numbers("angles", quantity.Angle)
	var arcs []float64
	total := 0.0
	for i, radius := range radii {
		k := ok(sheet.NeutralFactor(in.method(), radius, thickness))(in)
		arcs = append(arcs, ok(sheet.NeutralArc(radius, thickness, k, angles[i]))(in))
		total += arcs[i]
	}
	for _, straight := range in.numbers("straights", quantity.Length) {
		total += straight
	}
	return results{"arcs": lengths(arcs), "length": length(total)}
}

// runDINCompensation gives what the standard adds to the legs, which below an opening
// of 90 degrees it measures to the outer tangents.
func runDINCompensation(in *inputs) results {
	thickness, radius, opening := in.number("thickness", quantity.Length), in.number("radius", quantity.Length), in.number("opening", quantity.Angle)
	k := ok(sheet.NeutralFactor(sheet.DIN6935, radius, thickness))(in)
	v := ok(sheet.NeutralArc(radius, thickness, k, 180-opening))(in) - 2*(radius+thickness)
	if opening > 90 {
		v = -ok(sheet.Bend{Thickness: thickness, Radius: radius, Angle: 180 - opening}.Reckon())(in).Deduction
	}
	out := results{"k": bare(2 * k), "taken_off": length(-v)}
	if in.has("legs") {
		total := v
		for _, leg := range in.numbers("legs", quantity.Length) {
			total += leg
		}
		out["length"] = length(total)
	}
	return out
}

// folded reads a strip by its outside legs.
func (in *inputs) folded() sheet.FoldedStrip {
	in.t.Helper()
	o := sheet.OutsideLegs{Thickness: in.number("thickness", quantity.Length), Width: in.number("width", quantity.Length), Legs: in.numbers("legs", quantity.Length)}
	radius := in.number("radius", quantity.Length)
	for _, a := range in.numbers("angles", quantity.Angle) {
		o.Folds = append(o.Folds, sheet.Fold{Angle: a, Radius: radius, K: ok(sheet.NeutralFactor(in.method(), radius, o.Thickness))(in)})
	}
	return ok(o.Develop())(in)
}

func runFoldedStrip(in *inputs) results {
	s := in.folded()
	var straights, allowances, lines []float64
	end := 0.0
	for _, f := range s.Folds {
		b := ok(sheet.Bend{Thickness: s.Thickness, Radius: f.Radius, Angle: max(f.Angle, -f.Angle), Method: sheet.AsGiven, K: f.K}.Reckon())(in)
		straights, allowances, lines = append(straights, f.At-b.Allowance/2-end), append(allowances, b.Allowance), append(lines, f.At)
		end = f.At + b.Allowance/2
	}
	out := results{"length": length(s.Length), "straights": lengths(append(straights, s.Length-end)), "allowances": lengths(allowances), "fold_lines": lengths(lines)}
	if in.has("point") {
		p := in.numbers("point", quantity.Length)
		x := ok(sheet.NewFolding(s))(in).Fold(sheet.Point{X: p[0], Y: p[1]}, p[2])
		out["folded"] = lengths([]float64{x.X, x.Y, x.Z})
	}
	return out
}

// runUnfoldedPoint takes a strip by its flat and a point of the folded part back to it.
func runUnfoldedPoint(in *inputs) results {
	s := sheet.FoldedStrip{Thickness: in.number("thickness", quantity.Length), Width: in.number("width", quantity.Length), Length: in.number("length", quantity.Length)}
	angles, skews, radius := in.numbers("angles", quantity.Angle), in.numbers("skews", quantity.Angle), in.number("radius", quantity.Length)
	for i, at := range in.numbers("fold_lines", quantity.Length) {
		s.Folds = append(s.Folds, sheet.Fold{At: at, Angle: angles[i], Skew: skews[i], Radius: radius})
	}
	p := in.numbers("point", quantity.Length)
	at, depth, _ := ok(sheet.NewFolding(s))(in).Nearest(sheet.Point3{X: p[0], Y: p[1], Z: p[2]})
	return results{"flat": lengths([]float64{at.X, at.Y, depth})}
}

func runSpringback(in *inputs) results {
	r := ok(sheet.Springback{Thickness: in.number("thickness", quantity.Length), Radius: in.number("radius", quantity.Length), Angle: in.number("angle", quantity.Angle),
		Yield: in.number("yield", quantity.Stress), Modulus: in.number("modulus", quantity.Stress)}.Reckon())(in)
	out := results{"form_angle": angle(r.FormAngle), "form_radius": length(r.FormRadius), "ratio": bare(r.Ratio)}
	for _, s := range r.Working() {
		if s.Symbol == "X" {
			out["x"] = bare(s.Value)
		}
	}
	return out
}

func runPressForce(in *inputs) results {
	p := sheet.PressForce{Thickness: in.number("thickness", quantity.Length), Length: in.number("length", quantity.Length), Die: in.number("die", quantity.Length), Ultimate: in.number("ultimate", quantity.Stress)}
	if in.has("method") {
		p.Method = sheet.ForceMethod(in.word("method"))
	}
	return results{"force": force(ok(p.Reckon())(in).Force)}
}

func runDie(in *inputs) results {
	r := ok(sheet.Die{Thickness: in.number("thickness", quantity.Length), Angle: in.number("angle", quantity.Angle), Given: in.or("die", quantity.Length, 0)}.Reckon())(in)
	return results{"opening": length(r.Opening), "natural_radius": length(r.NaturalRadius), "flange": length(r.Flange)}
}

func runRamTravel(in *inputs) results {
	r := ok(sheet.RamTravel{Die: in.number("die", quantity.Length), Shoulder: in.number("shoulder", quantity.Length), Thickness: in.number("thickness", quantity.Length),
		Radius: in.number("radius", quantity.Length), Angle: in.number("angle", quantity.Angle)}.Reckon())(in)
	return results{"travel": length(r.Travel), "degrees_a_mm": bare(r.Slope)}
}

func runMinRadius(in *inputs) results {
	m := sheet.MinRadius{Metal: in.word("metal"), Thickness: in.number("thickness", quantity.Length), Grain: sheet.Grain(in.word("grain"))}
	if in.has("elongation") {
		m.Elongation = 100 * in.number("elongation", quantity.Bare)
	}
	r := ok(m.Reckon())(in)
	return results{"radius": length(r.Radius), "usual": length(r.Usual), "in_thicknesses": bare(r.Radius / m.Thickness)}
}

// runDuctileRadius holds the rule of elongation against the two radii, in thicknesses,
// of a specification's bend test: within says whether it falls on or between them.
func runDuctileRadius(in *inputs) results {
	var times []quantity.Quantity
	var within []string
	thin, thick := in.numbers("thin", quantity.Bare), in.numbers("thick", quantity.Bare)
	for i, a := range in.numbers("elongations", quantity.Bare) {
		m := ok(sheet.RadiusByElongation(100 * a))(in)
		times = append(times, bare(m))
		const printed = 0.005
		switch {
		case m < thin[i]-printed && m < thick[i]-printed:
			within = append(within, "below")
		case m > thin[i]+printed && m > thick[i]+printed:
			within = append(within, "above")
		default:
			within = append(within, "within")
		}
	}
	return results{"in_thicknesses": times, "within": strings.Join(within, " ")}
}

func runFit(in *inputs) results {
	nominal, grade := in.number("nominal", quantity.Length), int(in.number("hole_grade", quantity.Bare))
	r := ok(sheet.Fit{Nominal: nominal, HoleGrade: grade, PinGrade: 11}.Reckon())(in)
	return results{"hole": length(ok(sheet.StandardTolerance(grade, nominal))(in)), "most": length(r.Most)}
}

func runCutTolerance(in *inputs) results {
	class, thickness := int(in.number("class", quantity.Bare)), in.number("thickness", quantity.Length)
	var limits []float64
	for _, nominal := range in.numbers("nominals", quantity.Length) {
		limits = append(limits, ok(sheet.CutTolerance(class, thickness, nominal))(in))
	}
	return results{"limits": lengths(limits)}
}

func runFoldBetween(in *inputs) results {
	d := in.numbers("wanted", quantity.Bare)
	a, skew, err := sheet.FoldBetween(sheet.Point3{X: 1}, sheet.Point3{Z: 1}, sheet.Point3{X: d[0], Y: d[1], Z: d[2]})
	ok(a, err)(in)
	return results{"angle": angle(a), "skew": angle(skew)}
}
