package pattern

import (
	"fmt"
	"math"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/sheet"
)

// gaps are what a pattern of the fitting lacks: its outline, its thickness, its metal,
// the place and size of what is cut, and all of each fold.
func gaps(f plan.Fitting) (problems []finding.Problem) {
	need := func(ok bool, at finding.Place, what, expected string) {
		if !ok {
			problems = append(problems, finding.Problem{At: at, Message: fmt.Sprintf("%s can't be drawn without %s", f.ID.Value, what), Expected: expected})
		}
	}
	o := f.Outline
	need(f.Thickness.Given, f.Thickness.At, "its thickness", "thickness, for example 8 mm")
	need(f.Metal.Name.Given, f.Metal.Name.At, "its metal", "metal: { name: 316L, condition: annealed }")
	if len(o.Contour) == 0 {
		need(o.Width.Given, o.Width.At, "the width of its outline", "width, or a contour")
		need(o.Length.Given, o.Length.At, "the length of its outline", "length, a contour, or the old part's legs under measured")
		need(o.End.Given, o.End.At, "the shape of its loaded end", "end: round, square or tapered")
	}
	for _, h := range f.Holes {
		need(h.Diameter.Given, h.Diameter.At, "the diameter of each hole", "diameter, for example 10 mm")
		need(h.Along.Given || h.DrillAtBoat.Value, h.Along.At, "the place of each hole", "along, drill_at_boat: yes, or the hole under measured")
	}
	for _, d := range f.Folds {
		need(d.Along.Given, d.Along.At, "the place of each fold", "along, or the old part's legs under measured")
		need(d.Angle.Given, d.Angle.At, "the angle of each fold", "angle, for example 12 deg")
		need(d.Radius.Given, d.Radius.At, "the inside radius of each fold", "radius, for example 12 mm")
		need(d.Way.Given, d.Way.At, "the way each fold turns", "way: toward or away")
	}
	return problems
}

// one makes the part of a fitting as the plan describes it, and the old part laid flat.
func one(p *plan.Plan, f *plan.Fitting, old *sheet.Development, facts *fact.Facts) (Part, *finding.Problem) {
	part := Part{Name: f.ID.Value, Kind: f.Kind.Value, State: f.State.Value, At: f.At,
		Copies: []Copy{{Boat: p.Boat.Name.Value, Plan: p.File, Hand: AsDrawn}}, Rating: math.NaN(),
		Metal: Metal{f.Metal.Name.Value, f.Metal.Condition.Value, f.Metal.Certificate.Value, f.Metal.Heat.Value},
		Grain: f.Grain.Value, Finish: f.Finish.Value, Follows: f.Follows.Value, Old: old}
	if part.Grain == "unknown" {
		part.Grain = ""
	}
	shape, _, err := f.Outline.Shape()
	if err != nil {
		return part, &finding.Problem{At: f.Outline.At, Message: fmt.Sprintf("%s has no outline that can be cut: %s", f.ID.Value, err), Expected: "an outline that can be cut"}
	}
	if low, _ := shape.Bounds(); low.X != 0 {
		shape = moved(shape, -low.X) // a contour begins at its loaded end to what its drawing is good to
	}
	part.Flat = sheet.Flat{Name: f.ID.Value, Metal: strings.TrimSpace(part.Metal.Name + " " + part.Metal.Condition),
		Thickness: f.Thickness.Value, Outline: shape, OneSided: f.Mounting.Bolts.Head.Value == "countersunk"}
	if d := f.TooSharp(); d != nil {
		return part, &finding.Problem{At: d.Radius.At, Message: fmt.Sprintf("%s can't be drawn flat: its %s fold has an inside radius of %s in %s, sharper than the neutral line is known for", f.ID.Value, d.Name.Value, mm(d.Radius.Value), mm(f.Thickness.Value)),
			Expected: "a wider radius, or the neutral_line that a test strip of the same sheet gave"}
	}
	part.folds(f, facts)
	part.holes(f, facts)
	if err := part.Flat.Check(); err != nil {
		return part, &finding.Problem{At: f.At, Message: fmt.Sprintf("%s can't be cut and folded: %s", f.ID.Value, err), Expected: "holes and folds clear of each other and of the edges"}
	}
	part.press(f)
	part.meets(f, facts)
	part.warn(f)
	return part, nil
}

func moved(c sheet.Contour, x float64) sheet.Contour {
	list := append(sheet.Contour{}, c...)
	for i := range list {
		list[i].X += x
	}
	return list
}

// folds lays the folds into the flat, with what is known of each.
func (p *Part) folds(f *plan.Fitting, facts *fact.Facts) {
	for _, d := range f.Folds {
		fold, _ := d.Sheet()
		one := Fold{Name: d.Name.Value, Fold: fold}
		bend := sheet.Bend{Thickness: f.Thickness.Value, Radius: fold.Radius, Angle: math.Abs(fold.Angle), K: fold.K}
		if fold.K != 0 {
			bend.Method = sheet.AsGiven
		}
		if r, err := bend.Reckon(); err == nil {
			one.Bend = &r
		}
		one.atPress(bendOf(f, d, facts))
		p.Folds = append(p.Folds, one)
		p.Flat.Folds = append(p.Flat.Folds, fold)
	}
}

// atPress takes over what is known of a fold at the press: its die, how far it springs
// back, and what it takes to press it, from what a textbook reckons with the strength that
// the metal has at the least to what the rules judge the press by.
func (d *Fold) atPress(b *fact.Bend) {
	d.Die, d.ForceLeast, d.ForceMost = math.NaN(), math.NaN(), math.NaN()
	if b == nil {
		return
	}
	if b.SpringLikely.Known() {
		d.Press = &PressAngles{b.SpringLeast.Float(), b.SpringLikely.Float(), b.SpringMost.Float()}
	}
	d.Die, d.ForceMost = b.Die.Float(), b.Force.Float()
	least := sheet.PressForce{Thickness: b.Fitting.Thickness.Float(), Length: b.Length.Float(), Die: d.Die, Ultimate: b.Fitting.Metal.Ultimate.Float(), Method: sheet.Textbook}
	if r, err := least.Reckon(); err == nil {
		d.ForceLeast = min(r.Force, d.ForceMost)
	}
}

// bendOf finds the facts of a fold; those of both sides are alike.
func bendOf(f *plan.Fitting, d plan.Fold, facts *fact.Facts) *fact.Bend {
	id := plan.SidedIDs(f.ID.Value, f.Side.Value)[0] + "/" + d.Name.Value
	for _, b := range facts.Bends {
		if b.ID == id {
			return b
		}
	}
	return nil
}

// holes lists the holes and lays those into the flat that are cut.
func (p *Part) holes(f *plan.Fitting, facts *fact.Facts) {
	for i, h := range f.Holes {
		one := Hole{Hole: h.Sheet(), Called: h.Name.Value, Role: h.Role.Value, Stay: h.Stay.Value, Fastener: fastener(f, h), Placed: h.Along.Given, Made: Cut}
		if one.Name == "" {
			one.Name = fmt.Sprintf("hole %d", i+1)
		}
		switch {
		case h.DrillAtBoat.Value || !h.Along.Given || drilledInHull(f, h):
			one.Made = AtTheBoat
		case nearFold(f, h, facts):
			one.Made = AfterFolding
		}
		switch {
		case one.Made == Cut:
			p.Flat.Holes = append(p.Flat.Holes, one.Hole)
		case one.Made == AfterFolding && one.Placed:
			p.Flat.Later = append(p.Flat.Later, one.Hole)
		}
		p.Holes = append(p.Holes, one)
	}
}

// fastener is what goes through a hole, in words.
func fastener(f *plan.Fitting, h plan.Hole) string {
	b := f.Mounting.Bolts
	if h.Role.Value != "bolt" {
		stay := h.Stay.Value
		if stay == "" && len(f.Serves) == 1 {
			stay = f.Serves[0].Value
		}
		if stay == "" {
			return ""
		}
		return "pin of " + stay
	}
	words := strings.Join(strings.Fields(b.Thread.Value+" "+b.Grade.Value+" "+b.Head.Value), " ")
	if words == "" {
		return ""
	}
	return "bolt " + words
}

// drilledInHull tells whether the hole in the hull that it meets decides its place.
func drilledInHull(f *plan.Fitting, h plan.Hole) bool {
	for _, o := range f.HullHoles {
		if o.Hole.Given && o.Hole.Value == h.Name.Value {
			return o.Is.Value == "drill at the boat"
		}
	}
	return false
}

// nearFold tells whether a hole lies nearer to a fold than one that can be made before.
// Where that distance is not known, every hole counts as near: one that is drilled after
// folding stays round.
func nearFold(f *plan.Fitting, h plan.Hole, facts *fact.Facts) bool {
	for _, d := range f.Folds {
		b := bendOf(f, d, facts)
		fold, _ := d.Sheet()
		if b == nil || !b.Distance.Known() || h.Sheet().ToFold(fold) < b.Distance.Float() {
			return true
		}
	}
	return false
}

// press tries the orders of the folds at the shop's press.
func (p *Part) press(f *plan.Fitting) {
	if len(p.Folds) == 0 {
		return
	}
	if f.Press.Force.Given {
		p.Rating = f.Press.Force.Value
	}
	if lacks := toolsMissing(f.Press); lacks != "" {
		p.PressWhy = "the plan does not say the press's " + lacks
		return
	}
	orders, err := sheet.PressOrders(p.Flat.Strip(), fact.Tools(f.Press))
	if err != nil {
		p.PressWhy = err.Error()
		return
	}
	p.Orders = orders
}

// toolsMissing names what the plan does not say of the press's tools, "" for nothing.
func toolsMissing(p plan.Press) string {
	var list []string
	for _, tool := range []struct {
		name string
		is   plan.Amount
	}{{"die", p.Die}, {"block", p.Block}, {"punch", p.Punch}, {"nose", p.Nose}, {"room", p.Room}} {
		if !tool.is.Given {
			list = append(list, tool.name)
		}
	}
	return strings.Join(list, ", ")
}

// meets takes over how the part lands.
func (p *Part) meets(f *plan.Fitting, facts *fact.Facts) {
	id := plan.SidedIDs(f.ID.Value, f.Side.Value)[0]
	for _, m := range facts.Matches {
		if m.ID == id {
			p.Landing = &Landing{Worst: m.Worst.Text(), LeastSure: m.LeastSure.Text(), Dominated: m.Dominated.Text(),
				Miss: m.Miss.Float(), Clearance: m.Clearance.Float(), Uncertainty: m.Uncertainty.Float(), Play: m.LeastSurePlay.Float(), Meet: m.Matched.Float()}
		}
	}
}
