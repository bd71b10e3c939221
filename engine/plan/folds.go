package plan

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/sheet"
)

// A flat that can't be cut and a fold that can't be made are faults of the plan, and no
// finding on a part: there is no such part. What can be made and should not be is for
// the rules.

// mostFolds is how many folds of one part are laid out.
const mostFolds = 3

// part checks outline, folds and the old part of a fitting.
func (c *crossChecker) part(f Fitting) {
	c.names(f)
	if f.drawn() {
		shape := c.shape(f)
		if shape != nil {
			c.withinShape(f, shape)
			c.width(f, shape)
		}
		c.folds(f, shape)
	}
	c.oldPart(f)
	c.hullHoles(f)
}

// drawn tells whether the plan says more of the flat than the sizes of a strip. A strip
// alone is checked by its sizes, for an end of which little is said may be of any shape.
func (f Fitting) drawn() bool {
	o := f.Outline
	return len(o.Contour) > 0 || o.FarEnd.Shape.Given || o.Corner.Given || o.Nose.Given || o.End.Value == "tapered" || len(f.Folds) > 0 || f.Measured.Given()
}

// names refuses holes and folds that go by one name.
func (c *crossChecker) names(f Fitting) {
	var holes, folds []Text
	for _, h := range f.Holes {
		if h.Name.Given {
			holes = append(holes, h.Name)
		}
	}
	for _, o := range f.Folds {
		folds = append(folds, o.Name)
	}
	c.once("hole", holes)
	c.once("fold", folds)
}

func (c *crossChecker) once(what string, names []Text) {
	if len(names) < 2 {
		return
	}
	first := map[string]Text{}
	for _, n := range names {
		if other, twice := first[n.Value]; n.Given && twice {
			c.wrong(n.At, "a name of its own for each "+what, "two %ss are called %s; the other is in %s", what, n.Value, line(other.At, n.At))
		} else if n.Given {
			first[n.Value] = n
		}
	}
}

// shape draws the outline and says why it can't be; nil if it is not known or no outline.
func (c *crossChecker) shape(f Fitting) sheet.Contour {
	o := f.Outline
	if c.endKeys(o) {
		return nil
	}
	if !o.End.Given {
		o.End.Value = "square"
	}
	contour, ok, err := o.Shape()
	if err != nil {
		c.wrong(o.faultAt(err), "a closed outline that can be cut, its sizes with their units", "%s", err)
		return nil
	}
	if !ok {
		return nil
	}
	low, high := contour.Bounds()
	const near = 0.5 // mm, as a drawing is read
	if len(o.Contour) > 0 && math.Abs(low.X) > near {
		c.wrong(o.Contour[0].X.At, "x counted from the loaded end", "the contour begins at x = %s, and x = 0 is its loaded end", c.length(low.X))
		return nil
	}
	if len(o.Contour) > 0 && o.Length.Given && math.Abs(high.X-low.X-o.Length.Value) > near {
		c.wrong(o.Length.At, "the length of the contour, or none", "the contour is %s long", c.length(high.X-low.X))
	}
	return contour
}

// endKeys refuses a tapered end without its sizes, which nothing could be drawn by.
func (c *crossChecker) endKeys(o Outline) (refused bool) {
	for _, end := range []struct {
		shape       Text
		nose, taper Amount
	}{{o.End, o.Nose, o.Taper}, {o.FarEnd.Shape, o.FarEnd.Nose, o.FarEnd.Taper}} {
		if end.shape.Value == "tapered" && !(end.nose.Given && end.taper.Given) {
			c.wrong(end.shape.At, "nose and taper beside it", "a tapered end is known by its nose and its taper")
			refused = true
		}
	}
	return refused
}

// numbered finds what an error of the geometry numbers.
var numbered = regexp.MustCompile(`(corner|corners|leg|fold) (\d+)`)

// faultAt is where a fault of the outline stands: at the corner that it names, or at the
// end that it means.
func (o Outline) faultAt(err error) finding.Place {
	if found := numbered.FindStringSubmatch(err.Error()); found != nil && len(o.Contour) > 0 {
		n, _ := strconv.Atoi(found[2])
		return o.Contour[min(max(n, 1), len(o.Contour))-1].At
	}
	switch {
	case len(o.Contour) > 0:
		return o.Contour[0].At
	case o.FarEnd.Shape.Given && strings.HasPrefix(err.Error(), "the far end"):
		return o.FarEnd.At
	case o.Length.Given:
		return o.Length.At
	}
	return o.At
}

// withinShape refuses holes that break through the outline. A strip's own sides and ends
// are checked by its sizes; this is for its shaped ends and for other contours.
func (c *crossChecker) withinShape(f Fitting, shape sheet.Contour) {
	for _, h := range f.Holes {
		if !h.Along.Given || !h.Diameter.Given || c.told(h.Along.At) || c.told(h.Across.At) || c.told(h.Diameter.At) {
			continue
		}
		hole := h.Sheet()
		if hole.ToEdge(shape) <= 0 {
			c.wrong(h.Along.At, "a hole with metal all round it", "this hole does not lie within the outline")
		}
	}
}

// told tells whether a problem stands at a place already.
func (c *crossChecker) told(at finding.Place) bool {
	for _, p := range c.problems {
		if p.At == at {
			return true
		}
	}
	return false
}

// sharpest is the inside radius in thicknesses below which the neutral line is not known
// without a test strip.
const sharpest = 0.25

// TooSharp is the first fold whose flat is not known for its sharpness, nil for none.
func (f Fitting) TooSharp() *Fold {
	for i := range f.Folds {
		o := &f.Folds[i]
		if one, ok := o.Sheet(); ok && f.Thickness.Given && one.K == 0 && one.Radius < sharpest*f.Thickness.Value {
			return o
		}
	}
	return nil
}

// folds refuses folds that reach into each other, beyond the part, or out of order. Each
// is added to those before it, so that the one at fault is named at its place.
func (c *crossChecker) folds(f Fitting, shape sheet.Contour) {
	if len(f.Folds) > mostFolds {
		c.wrong(f.Folds[mostFolds].At, "up to three folds; a part with more is for a fabricator to lay out", "%s has %d folds, and %d at the most are laid out here", called(f.ID), len(f.Folds), mostFolds)
		return
	}
	for _, o := range f.Folds {
		c.agree(o.Along, lengths, leastApart)
		c.agree(o.Radius, lengths, leastApart)
		c.agree(o.Angle, angles, leastTurned)
	}
	if !f.Thickness.Given || shape == nil {
		return
	}
	flat := sheet.Flat{Thickness: f.Thickness.Value, Outline: shape}
	for _, o := range f.Folds {
		one, ok := o.Sheet()
		if !ok || one.K == 0 && one.Radius < sharpest*f.Thickness.Value {
			return // A fold that is not known whole, or sharper than any: a rule asks for it.
		}
		flat.Folds = append(flat.Folds, one)
		if _, err := sheet.NewFolding(flat.Strip()); err != nil {
			c.wrong(o.Along.At, "folds in their order from the loaded end, with straight metal between them", "%s can't be folded so: %s", called(f.ID), err)
			return
		}
	}
}

// hullHoles sees to it that each is met by a hole of the part, and by one alone.
func (c *crossChecker) hullHoles(f Fitting) {
	met := map[string]Text{}
	for _, h := range f.HullHoles {
		c.apart(h.Along, h.Within, lengths)
		c.apart(h.Across, h.Within, lengths)
		if !h.Hole.Given {
			continue
		}
		c.holeName(f, h.Hole)
		if other, twice := met[h.Hole.Value]; twice {
			c.wrong(h.Hole.At, "one hole in the hull for each of the part", "%s meets the hole in %s already", h.Hole.Value, line(other.At, h.Hole.At))
		}
		met[h.Hole.Value] = h.Hole
		if o := f.HoleNamed(h.Hole.Value); o != nil && o.Role.Value == "pin" {
			c.wrong(h.Hole.At, "a bolt hole", "%s is a pin's hole, and no bolt of the hull goes through it", h.Hole.Value)
		}
	}
}

// holeName refuses the name of a hole that the fitting does not have.
func (c *crossChecker) holeName(f Fitting, name Text) {
	if !name.Given || f.HoleNamed(name.Value) != nil {
		return
	}
	var names []string
	for _, h := range f.Holes {
		if h.Name.Given {
			names = append(names, h.Name.Value)
		}
	}
	expected := "the name that a hole has under holes"
	if len(names) > 0 && len(names) <= mostNames {
		expected += ": " + strings.Join(names, ", ")
	}
	c.wrong(name.At, expected, "no hole of %s is called %s", called(f.ID), name.Value)
}
