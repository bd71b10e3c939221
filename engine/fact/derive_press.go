package fact

import (
	"fmt"
	"math"
	"strings"

	"chainwale/engine/plan"
	"chainwale/engine/sheet"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

// What the press needs and does: the die, the legs that reach over it, the force, the
// order of the folds, and how far they spring back.

// die is the shop's, or else the usual one for the thickness.
func (o *bendOf) die() {
	n, t := o.bend, &o.bend.Fitting.Thickness
	if d := o.plan.Press.Die; d.Given {
		give(&n.Die, d)
		return
	}
	reckon(&n.Die, values(&t.Value, &n.Angle.Value), func() (formula[sheet.DieResult], error) {
		return sheet.Die{Thickness: t.Float(), Angle: n.Angle.Float()}, nil
	}, func(r sheet.DieResult) float64 { return r.Opening })
}

// press works out whether the die carries the legs and the press has the force.
func (o *bendOf) press() {
	n, f := o.bend, o.bend.Fitting
	t := &f.Thickness
	give(&n.PressLength, o.plan.Press.Length)
	give(&n.PressForce, o.plan.Press.Force)
	o.flange()
	reckon(&n.FlangeLeast, values(&t.Value, &n.Angle.Value, &n.Die.Value), func() (formula[sheet.DieResult], error) {
		return sheet.Die{Thickness: t.Float(), Angle: n.Angle.Float(), Given: n.Die.Float()}, nil
	}, func(r sheet.DieResult) float64 { return r.Flange })
	width := o.width()
	arithmetic(&n.Length, "L", "width / cos(skew)", "mm", values(&width.Value), func() float64 {
		return width.Float() / math.Cos(o.fold.Skew.Value*math.Pi/180)
	})
	reckon(&n.Force, values(&t.Value, &n.Length.Value, &n.Die.Value, &f.Metal.Name.Value), func() (formula[sheet.PressForceResult], error) {
		ultimate, err := o.upperUltimate()
		return sheet.PressForce{Thickness: t.Float(), Length: n.Length.Float(), Die: n.Die.Float(), Ultimate: ultimate}, err
	}, func(r sheet.PressForceResult) float64 { return r.Force })
	o.reachable()
}

// width is the plate's width at the fold: the strip's, or what its contour has there.
func (o *bendOf) width() *Number {
	outline := &o.plan.Outline
	if len(outline.Contour) == 0 && outline.End.Value != "tapered" {
		return &o.bend.Fitting.Width
	}
	n := &Number{}
	if len(outline.Contour) == 0 {
		give(n, outline.Width)
		return n
	}
	n.Derive(amounts(o.fold.Along), func() (float64, error) { return outline.Breadth(o.fold.Along.Value) }, nil)
	n.at = outline.Contour[0].At
	return n
}

// upperUltimate is the strength that the press has to overcome: the most that any
// specification of the grade allows, or the certificate's if that is more, for a sheet is
// not equally strong all over. The certificate alone counts where no specification says.
func (o *bendOf) upperUltimate() (float64, error) {
	upper, err := o.gradeUltimate()
	if u := o.plan.Metal.Ultimate; u.Given {
		return max(u.Value, upper), nil
	}
	return upper, err
}

// gradeUltimate is the most that any specification of the grade allows.
func (o *bendOf) gradeUltimate() (float64, error) {
	row, err := metalRow(o.plan.Metal, &o.bend.Fitting.Thickness, false)
	if err != nil {
		return 0, err
	}
	rows, err := table.Metals()
	upper := 0.0
	for _, m := range rows {
		if m.Family == row.Family && m.UltimateMax > upper {
			upper = m.UltimateMax
		}
	}
	if upper == 0 && err == nil {
		err = fmt.Errorf("no specification in the table says how strong %s is at the most; the strength on its certificate would do", row.Family)
	}
	return upper, err
}

// flange is the shorter leg beside the fold, outside: up to the next fold, whichever is
// made first, or to the end of the strip.
func (o *bendOf) flange() {
	n := o.bend
	from := append(values(&n.Angle.Value, &n.Radius.Value, &n.Fitting.Thickness.Value), amounts(o.fold.Along)...)
	length := o.plan.Outline.Length
	if c := o.plan.Outline.Contour; len(c) > 0 && !length.Given {
		if shape, ok, err := o.plan.Outline.Shape(); ok && err == nil {
			_, high := shape.Bounds()
			length = plan.Amount{Given: true, Value: high.X, Readings: 1, At: c[0].At}
		}
	}
	from = append(from, amounts(length)...)
	for _, next := range o.neighbours() {
		from = append(from, amounts(next.Along, next.Angle, next.Radius)...)
	}
	n.Flange.Derive(from, func() (float64, error) {
		own, err := o.allowance().Reckon()
		if err != nil {
			return 0, err
		}
		flat := min(o.fold.Along.Value, length.Value-o.fold.Along.Value)
		for _, next := range o.neighbours() {
			half, err := sheet.Bend{Thickness: n.Fitting.Thickness.Float(), Radius: next.Radius.Value, Angle: next.Angle.Value}.Reckon()
			if err != nil {
				return 0, err
			}
			flat = min(flat, abs(next.Along.Value-o.fold.Along.Value)-half.Allowance/2)
		}
		return flat - own.Allowance/2 + own.OutsideSetback, nil
	}, func() []working.Step {
		own, err := o.allowance().Reckon()
		if err != nil {
			return nil
		}
		return append(own.Working(), oneStep("b", "flat metal to the end or the next fold - BA/2 + OSSB", n.Flange.Float(), "mm", working.Source{Title: "geometry", As: working.Computed})()...)
	})
}

// neighbours are the folds before and behind this one.
func (o *bendOf) neighbours() []plan.Fold {
	var list []plan.Fold
	for _, i := range []int{o.index - 1, o.index + 1} {
		if i >= 0 && i < len(o.plan.Folds) {
			list = append(list, o.plan.Folds[i])
		}
	}
	return list
}

// reachable tries all orders of the folds against the shop's tools.
func (o *bendOf) reachable() {
	n, press := o.bend, o.plan.Press
	from := amounts(press.Die, press.Block, press.Punch, press.Nose, press.Room)
	for _, f := range o.plan.Folds {
		from = append(from, amounts(f.Along, f.Angle, f.Radius)...)
	}
	from = append(from, &n.Fitting.Thickness.Value, &n.Fitting.Width.Value)
	if !n.Reachable.follows(from) {
		return
	}
	clear, err := o.clear()
	if err != nil {
		n.Reachable.Refuse(err.Error())
		return
	}
	n.Reachable.Give(clear, press.At)
}

// reachable tells whether some order of the folds comes clear of punch, die and frame.
func reachable(p *plan.Fitting) (bool, error) {
	strip, ok, err := p.Strip()
	if err == nil && !ok {
		err = fmt.Errorf("the flat is not known whole")
	}
	if err != nil {
		return false, err
	}
	return sheet.CanBePressed(strip, Tools(p.Press))
}

// Tools are the shop's press as the geometry wants it.
func Tools(p plan.Press) sheet.PressTools {
	return sheet.PressTools{Die: p.Die.Value, Block: p.Block.Value, Punch: p.Punch.Value, Nose: p.Nose.Value, Room: p.Room.Value}
}

// springback works out the angles to press to.
func (o *bendOf) springback() {
	n, f := o.bend, o.bend.Fitting
	from := values(&n.Angle.Value, &n.Radius.Value, &f.Thickness.Value, &f.Metal.Name.Value, &f.Metal.Yield.Value, &f.Metal.Ultimate.Value)
	with := func() (formula[sheet.HardenedSpringbackResult], error) {
		row, err := metalRow(o.plan.Metal, &f.Thickness, false)
		return sheet.HardenedSpringback{Thickness: f.Thickness.Float(), Radius: n.Radius.Float(), Angle: n.Angle.Float(),
			Yield: f.Metal.Yield.Float(), Ultimate: f.Metal.Ultimate.Float(), Modulus: row.Modulus, Austenitic: austenitic(row)}, err
	}
	reckon(&n.SpringLeast, from, with, func(r sheet.HardenedSpringbackResult) float64 { return r.LeastAngle })
	reckon(&n.SpringLikely, from, with, func(r sheet.HardenedSpringbackResult) float64 { return r.LikelyAngle })
	reckon(&n.SpringMost, from, with, func(r sheet.HardenedSpringbackResult) float64 { return r.MostAngle })
}

// austenitic tells whether a metal hardens as 18/8 does: the 300 grades and 6Mo.
func austenitic(m table.Metal) bool {
	return m.Stainless() && (strings.HasPrefix(m.Family, "3") || m.Family == "6Mo")
}
