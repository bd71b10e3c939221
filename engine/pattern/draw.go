package pattern

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"chainwale/engine/drawing"
	"chainwale/engine/fact"
	"chainwale/engine/sheet"
)

// How far folds may be off where nobody says otherwise: what a good shop holds, and what
// the uncertainty of a copied part is reckoned with (judgement).
const (
	foldLineWithin  = 0.5 // mm
	foldAngleWithin = 1.0 // deg
	// pinUndersize is how much smaller a pin hole is cut than it is reamed to, mm: a cut
	// hole is tapered and hard at its rim (common practice, 0.5 to 1 mm).
	pinUndersize = 1.0
)

// Drawing is the pattern in the words of a drawing. It is of the copies that nothing holds
// up, or of all where each is held.
func (p Part) Drawing() drawing.Part {
	made, hold := p.Free(), ""
	if len(made) == 0 {
		made, hold = p.Copies, "what holds it up stands under Take care and in "+ListName
	}
	d := drawing.Part{
		Name: p.Name, Title: strings.TrimSpace(p.State + " " + p.Kind), Plan: planWords(made), Hold: hold, Flat: p.Flat,
		Metal: metalWords(p), Certificate: short(certificateWords(p)), Finish: short(p.Finish),
		Edges:      "break all edges, no burr; no scratch or stamp across the strip",
		Tolerances: p.tolerances(),
		Notes:      append([]string{"first part only: hold the rest until it is released"}, madeFor(made)...),
		Warnings:   fit(append(p.heldWords(), p.Warnings...)), Press: pressSteps(p),
	}
	d.Notes = fit(append(d.Notes, p.Differ...))
	hands(&d, made)
	datum := false
	for _, h := range p.Holes {
		use := drawing.HoleUse{Role: h.Role + " hole", Called: h.Called, Fastener: h.Fastener}
		if h.Role == "pin" {
			use.Make = h.reamed()
		}
		switch {
		case h.Made == Cut:
			if h.Role == "pin" {
				if !datum {
					d.Datum, datum = len(d.Holes), true
				}
				use.Cut = h.Diameter - pinUndersize
			}
			d.Holes = append(d.Holes, use)
		case h.Made == AfterFolding && h.Placed:
			d.Later = append(d.Later, drawing.LaterHole{Hole: h.Hole, HoleUse: use})
		default:
			d.Notes = append(d.Notes, strings.TrimSpace("drilled at the boat: "+use.Role+" "+h.Called))
		}
	}
	return d
}

// tolerances are what the shop is asked to hold. Cuts go by ISO 9013, class 1, at the
// part's own length and thickness (sheet.CutTolerance); where its table does not reach,
// that is left to the shop and said.
func (p Part) tolerances() []string {
	f := p.Flat
	low, high := f.Outline.Bounds()
	cut := "cut: agree on a class of ISO 9013 with the shop"
	if within, err := sheet.CutTolerance(1, f.Thickness, high.X-low.X); err == nil {
		cut = fmt.Sprintf("cut: ISO 9013 class 1, within %.2g mm over the length", within)
	}
	list := []string{cut}
	if len(p.Holes) > 0 {
		list = append(list, fmt.Sprintf("holes: centres within %.2g mm of their places in the flat", fact.CutWithin))
	}
	for _, h := range p.Holes {
		if it, ok := h.grade(); ok && h.Made != AtTheBoat {
			list = append(list, fmt.Sprintf("reamed to %.4g H11: 0 to +%.2g mm", h.Diameter, it))
		}
	}
	list = slices.Compact(list)
	if len(f.Folds) == 0 {
		return list
	}
	return append(list, fmt.Sprintf("folds: the line within %.2g mm, the angle within %.2g deg", foldLineWithin, foldAngleWithin))
}

// reamed is how a pin's hole is finished.
func (h Hole) reamed() string {
	if h.Long > 0 || h.Square {
		return "dress to size by hand: no reamer does it"
	}
	if _, ok := h.grade(); ok {
		return fmt.Sprintf("ream to %.4g H11", h.Diameter)
	}
	return fmt.Sprintf("ream to %.4g", h.Diameter)
}

// grade is how much wider a reamed hole may be, mm: H11, which clevis pins are made for;
// ok is false for a hole that is none, or beyond the table.
func (h Hole) grade() (wider float64, ok bool) {
	if h.Role != "pin" || h.Long > 0 || h.Square {
		return 0, false
	}
	wider, err := sheet.StandardTolerance(11, h.Diameter)
	return wider, err == nil
}

func metalWords(p Part) string {
	words := []string{p.Metal.Name, p.Metal.Condition}
	if p.Grain != "" {
		words = append(words, "fold lines "+p.Grain+" the rolling")
	}
	return strings.Join(nonEmpty(words), ", ")
}

func certificateWords(p Part) string {
	if p.Metal.Certificate == "" {
		return "a mill certificate with heat number goes with the part"
	}
	if p.Metal.Heat == "" {
		return p.Metal.papers()
	}
	return p.Metal.papers() + ", and that number stays on the part"
}

// papers are the certificate and the heat that it is of.
func (m Metal) papers() string {
	if m.Heat == "" {
		return m.Certificate
	}
	return m.Certificate + ", heat " + m.Heat
}

func nonEmpty(words []string) (kept []string) {
	for _, w := range words {
		if w != "" {
			kept = append(kept, w)
		}
	}
	return kept
}

// What a drawing holds: so many lines in a list, so many letters in a line.
const (
	mostLines   = 30
	mostLetters = 500
)

// fit cuts a list to what a drawing holds, and says where the rest stands.
func fit(list []string) []string {
	if more := len(list) - mostLines; more > 0 {
		list = append(slices.Clone(list[:mostLines]), fmt.Sprintf("and %d lines more, which %s has", more, ListName))
	}
	for i, s := range list {
		list[i] = cutTo(s, ListName)
	}
	return list
}

// short cuts a text of the plan to what a drawing holds.
func short(text string) string { return cutTo(text, "the plan") }

// cutTo cuts a text to what a line holds, and says where it stands in full.
func cutTo(text, in string) string {
	if letters := []rune(text); len(letters) > mostLetters {
		return string(letters[:mostLetters]) + "… (in full in " + in + ")"
	}
	return text
}

// mostMadeFor is how many lines of a drawing name what it is made for.
const mostMadeFor = 5

// madeFor names the copies, a few on a line.
func madeFor(copies []Copy) []string {
	var list []string
	for len(copies) > 0 && len(list) < mostMadeFor {
		n := min(4, len(copies))
		var words []string
		for _, c := range copies[:n] {
			words = append(words, c.name()+" ("+string(c.Hand)+")")
		}
		list, copies = append(list, "made for: "+strings.Join(words, ", ")), copies[n:]
	}
	if len(copies) > 0 {
		list = append(list, fmt.Sprintf("and for %d more, which %s names", len(copies), ListName))
	}
	return list
}

// planWords are the plans that copies come from.
func planWords(copies []Copy) string {
	var list []string
	for _, c := range copies {
		if !slices.Contains(list, c.Plan) {
			list = append(list, c.Plan)
		}
	}
	if len(list) == 1 {
		return list[0]
	}
	return fmt.Sprintf("%s and %d more", list[0], len(list)-1)
}

// heldWords say which copies are not to be cut, and why.
func (p Part) heldWords() []string {
	var why []string
	holds := map[string][]string{}
	held := 0
	for _, c := range p.Copies {
		if len(c.Held) > 0 {
			held++
		}
		for _, w := range c.Held {
			if holds[w] == nil {
				why = append(why, w)
			}
			holds[w] = append(holds[w], c.name())
		}
	}
	for i, w := range why {
		of := ""
		if len(holds[w]) < len(p.Copies) {
			of = " for " + few(holds[w])
		}
		why[i] = "NOT TO BE CUT" + of + ": " + w
	}
	if held > 0 && held < len(p.Copies) {
		why = append(why, fmt.Sprintf("%d of %d are held and not counted here; %s names them", held, len(p.Copies), ListName))
	}
	return why
}

// hands counts what is made as drawn and what with every fold the other way.
func hands(d *drawing.Part, copies []Copy) {
	var drawn, opposite []string
	for _, c := range copies {
		switch c.Hand {
		case OtherHand:
			d.OtherHand++
			opposite = append(opposite, c.Side)
		case AsDrawn:
			d.Quantity++
			drawn = append(drawn, c.Side)
		default:
			d.Quantity++
		}
	}
	d.Hand, d.OppositeHand = sides(drawn), sides(opposite)
}

// sides are the sides that copies go to, each once.
func sides(of []string) string {
	slices.Sort(of)
	return strings.Join(slices.DeleteFunc(slices.Compact(of), func(s string) bool { return s == "" }), " and ")
}

// pressSteps are the folds in the order in which they are pressed; as they stand where
// no order is known.
func pressSteps(p Part) []drawing.Press {
	var steps []drawing.Press
	add := func(fold int) {
		step := drawing.Press{Fold: fold}
		if a := p.Folds[fold-1].Press; a != nil && !math.IsNaN(a.Least) {
			step.From, step.To = a.Least, a.Most
		}
		step.Tool = dieWords(p.Folds[fold-1].Die)
		steps = append(steps, step)
	}
	if len(p.Orders) > 0 {
		for _, s := range p.Orders[0].Steps {
			add(s.Fold)
		}
		return steps
	}
	for i := range p.Folds {
		add(i + 1)
	}
	return steps
}
