package pattern

import (
	"fmt"
	"math"
	"strings"

	"chainwale/engine/drawing"
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

// Drawing is the pattern in the words of a drawing; plan is the file that it comes from.
func (p Part) Drawing(plan string) drawing.Part {
	d := drawing.Part{
		Name: p.Name, Title: strings.TrimSpace(p.State + " " + p.Kind), Plan: plan, Flat: p.Flat,
		Metal: metalWords(p), Certificate: certificateWords(p), Finish: p.Finish,
		Edges:      "break all edges, no burr; no scratch or stamp across the strip",
		Tolerances: tolerances(p.Flat),
		Notes:      []string{"first part only: hold the rest until it is released", "made for: " + copyWords(p)},
		Warnings:   p.Warnings, Press: pressSteps(p),
	}
	hands(&d, p)
	datum := false
	for _, h := range p.Holes {
		use := drawing.HoleUse{Role: h.Role + " hole", Fastener: h.Fastener}
		switch {
		case h.Made == Cut:
			if h.Role == "pin" {
				if !datum {
					d.Datum, datum = len(d.Holes), true
				}
				use.Cut = h.Diameter - pinUndersize
				use.Make = fmt.Sprintf("ream to %.4g", h.Diameter)
			}
			d.Holes = append(d.Holes, use)
		case h.Made == AfterFolding && h.Placed:
			d.Later = append(d.Later, drawing.LaterHole{Hole: h.Hole, HoleUse: use})
		default:
			d.Notes = append(d.Notes, strings.TrimSpace("drilled at the boat: "+use.Role+" "+h.Name))
		}
	}
	return d
}

// tolerances are what the shop is asked to hold. Cuts go by ISO 9013, class 1, at the
// part's own length and thickness (sheet.CutTolerance); where its table does not reach,
// that is left to the shop and said.
func tolerances(f sheet.Flat) []string {
	low, high := f.Outline.Bounds()
	cut := "cut: agree on a class of ISO 9013 with the shop"
	if within, err := sheet.CutTolerance(1, f.Thickness, high.X-low.X); err == nil {
		cut = fmt.Sprintf("cut: ISO 9013 class 1, within %.2g mm over the length", within)
	}
	if len(f.Folds) == 0 {
		return []string{cut}
	}
	return []string{cut, fmt.Sprintf("folds: the line within %.2g mm, the angle within %.2g deg", foldLineWithin, foldAngleWithin)}
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
	return p.Metal.Certificate
}

func nonEmpty(words []string) (kept []string) {
	for _, w := range words {
		if w != "" {
			kept = append(kept, w)
		}
	}
	return kept
}

func copyWords(p Part) string {
	var words []string
	for _, c := range p.Copies {
		words = append(words, strings.TrimSpace(c.Boat+" "+c.Fitting)+" ("+string(c.Hand)+")")
	}
	return strings.Join(words, ", ")
}

// hands counts what is made as drawn and what with every fold the other way.
func hands(d *drawing.Part, p Part) {
	for _, c := range p.Copies {
		if c.Hand == OtherHand {
			d.OtherHand++
			d.OppositeHand = c.Side
			continue
		}
		d.Quantity++
		if c.Hand == AsDrawn {
			d.Hand = c.Side
		}
	}
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
