package drawing

import (
	"fmt"
	"math"
	"strings"

	"chainwale/engine/sheet"
)

// The most that fits on the sheets here: a part of a boat, and a line of a drawing.
const (
	longest  = 20000.0
	mostText = 600
	mostNote = 40
)

// Check refuses a part that can't be drawn or made: a flat that is none, a datum that
// is no hole, folds without a place in the press order, words that don't fit. Every
// writer asks it first and writes nothing if it refuses.
func (p Part) Check() error {
	for _, check := range []func() error{p.checkNames, p.checkFlat, p.checkHoles, p.checkPress, p.checkWords} {
		if err := check(); err != nil {
			if p.Name != "" {
				return fmt.Errorf("%s: %w", line(p.Name), err)
			}
			return err
		}
	}
	return nil
}

func (p Part) checkNames() error {
	switch {
	case strings.TrimSpace(p.Name) == "":
		return fmt.Errorf("the part to draw has no name")
	case len([]rune(p.Name)) > 40:
		return fmt.Errorf("a name of %d letters does not fit the title of a drawing; 40 do", len([]rune(p.Name)))
	case p.Quantity < 0 || p.OtherHand < 0 || p.Quantity+p.OtherHand < 1 || p.Quantity+p.OtherHand > 10000:
		return fmt.Errorf("%d as drawn and %d of the other hand: a drawing is of 1 to 10000 parts", p.Quantity, p.OtherHand)
	case p.OtherHand > 0 && p.Flat.OneSided:
		return fmt.Errorf("its faces differ, so the other hand is another flat and needs a drawing of its own")
	case p.OtherHand > 0 && len(p.Flat.Folds) == 0:
		return fmt.Errorf("a flat without folds has no other hand: turn it over")
	}
	return nil
}

func (p Part) checkFlat() error {
	if !(p.Flat.Thickness > 0 && p.Flat.Thickness <= 200) {
		return fmt.Errorf("a plate can't be %g mm thick", p.Flat.Thickness)
	}
	if err := p.Flat.Check(); err != nil {
		return err
	}
	low, high := p.Flat.Outline.Bounds()
	if !(high.X-low.X <= longest && high.Y-low.Y <= longest) || math.Abs(low.X)+math.Abs(low.Y) > longest {
		return fmt.Errorf("a plate of %.4g x %.4g mm is beyond these drawings, which go to %g mm", high.X-low.X, high.Y-low.Y, longest)
	}
	return nil
}

func (p Part) checkHoles() error {
	if n := len(p.Flat.Holes); n > 0 && (p.Datum < 0 || p.Datum >= n) {
		return fmt.Errorf("sizes are to count from hole %d, and there are %d", p.Datum+1, n)
	}
	if len(p.Holes) > len(p.Flat.Holes) {
		return fmt.Errorf("%d holes are described, and the flat has %d", len(p.Holes), len(p.Flat.Holes))
	}
	for i, u := range p.Holes {
		if h := p.Flat.Holes[i]; !(u.Cut >= 0 && u.Cut <= h.Diameter) {
			return fmt.Errorf("hole %d can't be cut to %g mm and finished to %g: a hole is finished by taking metal away", i+1, u.Cut, h.Diameter)
		}
	}
	for i, h := range p.Later {
		if h.Cut != 0 {
			return fmt.Errorf("a hole that is drilled after folding is cut in no flat, and %g mm is given", h.Cut)
		}
		name := "the hole to drill after folding"
		if h.Name != "" {
			name = h.Name
		}
		if !(h.Diameter > 0) {
			return fmt.Errorf("%s can't be %g mm across", name, h.Diameter)
		}
		if h.Long != 0 && !(h.Long > h.Diameter) {
			return fmt.Errorf("%s can't be %g mm long and %g mm wide: an oval hole is longer than it is wide", name, h.Long, h.Diameter)
		}
		if !(h.ToEdge(p.Flat.Outline) > 0) {
			return fmt.Errorf("%s does not lie within the outline", name)
		}
		if other := meets(h.Hole, append(p.Flat.Holes, laterHoles(p.Later[:i])...)); other != "" {
			return fmt.Errorf("%s and %s run into each other", name, other)
		}
	}
	return nil
}

// meets names a hole that another runs into, "" for none.
func meets(h sheet.Hole, others []sheet.Hole) string {
	for i, o := range others {
		if h.Apart(o) > 0 {
			continue
		}
		if o.Name != "" {
			return o.Name
		}
		return "hole " + whole(i+1)
	}
	return ""
}

func laterHoles(list []LaterHole) []sheet.Hole {
	holes := make([]sheet.Hole, len(list))
	for i, h := range list {
		holes[i] = h.Hole
	}
	return holes
}

func (p Part) checkPress() error {
	if p.Press == nil {
		return nil
	}
	pressed := make([]bool, len(p.Flat.Folds))
	for _, step := range p.Press {
		switch {
		case step.Fold < 1 || step.Fold > len(pressed):
			return fmt.Errorf("the press order names fold %d, and there are %d", step.Fold, len(pressed))
		case pressed[step.Fold-1]:
			return fmt.Errorf("the press order names fold %d twice", step.Fold)
		case !(step.From >= 0 && step.From <= step.To && step.To < 180):
			return fmt.Errorf("fold %d can't be pressed to %g to %g deg", step.Fold, step.From, step.To)
		case step.To > 0 && step.To < math.Abs(p.Flat.Folds[step.Fold-1].Angle)-1e-9:
			return fmt.Errorf("fold %d is to stay at %g deg and be pressed to %g: metal springs back, never on", step.Fold, math.Abs(p.Flat.Folds[step.Fold-1].Angle), step.To)
		}
		pressed[step.Fold-1] = true
	}
	for i, done := range pressed {
		if !done {
			return fmt.Errorf("the press order leaves out fold %d", i+1)
		}
	}
	return nil
}

func (p Part) checkWords() error {
	texts := []string{p.Title, p.Plan, p.Hold, p.Hand, p.OppositeHand, p.Metal, p.Certificate, p.Finish, p.Edges}
	for _, u := range p.Holes {
		texts = append(texts, u.Role, u.Called, u.Fastener, u.Make)
	}
	for _, list := range [][]string{p.Tolerances, p.Notes, p.Warnings} {
		if len(list) > mostNote {
			return fmt.Errorf("%d notes don't fit a drawing; %d do", len(list), mostNote)
		}
		texts = append(texts, list...)
	}
	for _, t := range texts {
		if n := len([]rune(t)); n > mostText {
			return fmt.Errorf("a text of %d letters does not fit a drawing (%.40q and so on); %d do", n, t, mostText)
		}
	}
	return nil
}
