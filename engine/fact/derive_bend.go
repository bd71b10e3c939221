package fact

import (
	"math"
	"strings"
	"sync"

	"chainwale/engine/plan"
	"chainwale/engine/sheet"
	"chainwale/engine/working"
)

// bends makes the folds of a fitting.
func (b *builder) bends(p *plan.Fitting, f *Fitting) {
	clear := b.madeOf(p).clear
	for i := range p.Folds {
		o := &bendOf{bend: &Bend{Fitting: f}, fold: &p.Folds[i], index: i, plan: p, clear: clear}
		name := o.fold.Name.Value
		o.bend.Subject = Subject{ID: f.ID + "/" + name, Name: "the " + name + " fold of " + f.Name, At: o.fold.At}
		o.given()
		o.sharpness()
		o.flat()
		o.holes()
		o.press()
		o.springback()
		b.facts.Bends = append(b.facts.Bends, o.bend)
	}
}

// made is what both sides of a fitting share.
type made struct {
	// clear tells whether it can be folded at the shop's press, old is the flat that the
	// old part comes from, nil where that is not known.
	clear func() (bool, error)
	old   *sheet.Development
	// match lays it on the holes that it has to meet; nil until the first side asks.
	match func() (laidMatch, error)
}

func (b *builder) madeOf(p *plan.Fitting) *made {
	if b.made[p] == nil {
		b.made[p] = &made{clear: sync.OnceValues(func() (bool, error) { return reachable(p) })}
	}
	return b.made[p]
}

// bendOf is one fold with the plan's words on it.
type bendOf struct {
	bend  *Bend
	fold  *plan.Fold
	index int
	plan  *plan.Fitting
	// clear tells whether the part can be folded at the shop's press at all.
	clear func() (bool, error)
}

// given takes over what the plan says of the fold.
func (o *bendOf) given() {
	n := o.bend
	give(&n.Radius, o.fold.Radius)
	give(&n.Angle, o.fold.Angle)
	n.Skew.Give(abs(o.fold.Skew.Value), o.fold.Skew.At)
	giveWord(&n.Grain, o.plan.Grain)
	if n.Grain.Is("unknown") {
		n.Grain.Refuse("")
	}
	condition := o.plan.Metal.Condition
	if !condition.Given {
		n.Annealed.WouldStand(condition.At)
		return
	}
	n.Annealed.Give(strings.Contains(strings.ToLower(condition.Value), "anneal"), condition.At)
}

// judged is a number of this project's own beside a formula's working.
var judged = working.Source{Title: "this project", As: working.Judgement, For: "the limit"}

// wantedTimes is the inside radius that a fold is asked to have, in thicknesses: what a
// die of ten thicknesses leaves by itself.
const wantedTimes = 1.5

// sharpness works out how sharp the fold is and how sharp the alloy takes it.
func (o *bendOf) sharpness() {
	n, f := o.bend, o.bend.Fitting
	t := &f.Thickness
	arithmetic(&n.RadiusRatio, "R/t", "inside radius / thickness", "", values(&n.Radius.Value, &t.Value), func() float64 { return n.Radius.Float() / t.Float() })
	least := func(grain sheet.Grain) (sheet.MinRadius, error) {
		row, err := metalRow(o.plan.Metal, t, false)
		return sheet.MinRadius{Metal: row.Family, Thickness: t.Float(), Grain: grain}, err
	}
	from := values(&f.Metal.Name.Value, &t.Value)
	reckon(&n.RadiusLeast, from, func() (formula[sheet.MinRadiusResult], error) { return least(sheet.AcrossGrain) },
		func(r sheet.MinRadiusResult) float64 { return r.Radius })
	grain := sheet.UnknownGrain
	if n.Grain.Known() {
		grain = sheet.Grain(n.Grain.Text())
	}
	reckon(&n.RadiusWanted, from, func() (formula[wantedRadius], error) {
		m, err := least(grain)
		return wanted{m}, err
	}, func(r wantedRadius) float64 { return r.radius })
	reckon(&n.Stretch, values(&n.Radius.Value, &t.Value), func() (formula[sheet.FoldStrainResult], error) {
		return sheet.FoldStrain{Thickness: t.Float(), Radius: n.Radius.Float()}, nil
	}, func(r sheet.FoldStrainResult) float64 { return r.Outer })
}

// wanted is the radius to ask for, by the alloy, its grain and the press.
type wanted struct{ least sheet.MinRadius }

type wantedRadius struct {
	sheet.MinRadiusResult
	thickness, radius float64
}

// Reckon gives the radius.
func (w wanted) Reckon() (wantedRadius, error) {
	r, err := w.least.Reckon()
	return wantedRadius{r, w.least.Thickness, max(wantedTimes*w.least.Thickness, r.Radius)}, err
}

// Working writes it down.
func (r wantedRadius) Working() []working.Step {
	return append(r.MinRadiusResult.Working(), working.Step{Symbol: "R0", Meaning: "to ask for", Formula: "max(1.5 t, Rmin)",
		Inputs: []working.Input{{Symbol: "t", Value: r.thickness, Unit: "mm"}, {Symbol: "Rmin", Value: r.Radius, Unit: "mm"}}, Value: r.radius, Unit: "mm", Source: judged})
}

// flat works out what the fold takes of the legs' lengths.
func (o *bendOf) flat() {
	n, t := o.bend, &o.bend.Fitting.Thickness
	bend := func() (formula[sheet.BendResult], error) { return o.allowance(), nil }
	from := values(&n.Angle.Value, &n.Radius.Value, &t.Value)
	reckon(&n.Deduction, from, bend, func(r sheet.BendResult) float64 { return r.Deduction })
	reckon(&n.Spread, from, bend, func(r sheet.BendResult) float64 { return r.DeductionMost - r.DeductionLeast })
}

// allowance is the fold as its formula takes it.
func (o *bendOf) allowance() sheet.Bend {
	n := o.bend
	b := sheet.Bend{Thickness: n.Fitting.Thickness.Float(), Radius: n.Radius.Float(), Angle: n.Angle.Float()}
	if k := o.fold.NeutralLine; k.Given {
		b.Method, b.K = sheet.AsGiven, k.Value
	}
	return b
}

// amounts makes values of what the plan says, for what is derived from them.
func amounts(of ...plan.Amount) []*Value {
	list := make([]*Value, len(of))
	for i, a := range of {
		var n Number
		give(&n, a)
		list[i] = &n.Value
	}
	return list
}

// holes works out how far the nearest hole is from the fold.
func (o *bendOf) holes() {
	n := o.bend
	distances := func() (formula[sheet.HoleToFoldResult], error) {
		return sheet.HoleToFold{Thickness: n.Fitting.Thickness.Float(), Radius: n.Radius.Float(), Angle: n.Angle.Float(), Die: n.Die.Float()}, nil
	}
	o.die()
	from := values(&n.Angle.Value, &n.Radius.Value, &n.Fitting.Thickness.Value, &n.Die.Value)
	reckon(&n.Distance, from, distances, func(r sheet.HoleToFoldResult) float64 { return r.Distance })
	reckon(&n.Least, from, distances, func(r sheet.HoleToFoldResult) float64 { return r.Least })
	o.toHoles(&n.Holes, &n.Clear, func(h plan.Hole) bool { return h.Along.Given || !h.DrillAtBoat.Value })
	o.toHoles(&n.CutHoles, &n.CutClear, func(h plan.Hole) bool { return !h.DrillAtBoat.Value })
}

// toHoles counts the holes that are meant and finds the way from the fold's middle line to
// the edge of the nearest. One whose place or size is missing may be that.
func (o *bendOf) toHoles(count, n *Number, meant func(plan.Hole) bool) {
	at := o.plan.At
	at.Pointer += "/holes"
	from := amounts(o.fold.Along)
	var holes []plan.Hole
	for _, h := range o.plan.Holes {
		if meant(h) {
			holes = append(holes, h)
			from = append(from, amounts(h.Along, h.Diameter)...)
		}
	}
	count.Give(float64(len(holes)), at)
	if len(holes) == 0 {
		n.WouldStand(at)
		n.Refuse("there is no such hole")
		return
	}
	arithmetic(n, "d", "least of |(along - fold) cos(skew) - across sin(skew)| - half the hole (a square one's half diagonal, what an oval one reaches towards the fold)", "mm", from, func() float64 {
		nearest := math.Inf(1)
		fold, _ := o.fold.Sheet()
		for _, h := range holes {
			nearest = min(nearest, h.Sheet().ToFold(fold))
		}
		return nearest
	})
}
