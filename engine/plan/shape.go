package plan

import (
	"math"
	"strconv"

	"chainwale/engine/sheet"
)

// The part as the sheet-metal geometry wants it. What the plan leaves out that can't be
// done without comes back as ok = false: nothing is guessed. An error says what can't be.

// Shape is the outline of the flat: the contour, or the strip with its ends. An end of
// which nothing is said is drawn round if it is the loaded one and square if it is the
// other.
func (o Outline) Shape() (c sheet.Contour, ok bool, err error) {
	if len(o.Contour) > 0 {
		return o.contour()
	}
	if !o.Length.Given || !o.Width.Given {
		return nil, false, nil
	}
	s := sheet.Strip{Length: o.Length.Value, Width: o.Width.Value, Start: o.loadedEnd(), Finish: o.FarEnd.end()}
	c, err = s.Contour()
	return c, true, err
}

func (o Outline) contour() (c sheet.Contour, ok bool, err error) {
	for _, v := range o.Contour {
		if !v.X.Given || !v.Y.Given {
			return nil, false, nil
		}
		c = append(c, sheet.Vertex{X: v.X.Value, Y: v.Y.Value, Bulge: v.Bulge.Value})
	}
	return c, true, c.Check()
}

var endShapes = map[string]sheet.EndShape{"round": sheet.RoundedEnd, "square": sheet.SquareEnd, "tapered": sheet.TaperedEnd}

func (o Outline) loadedEnd() sheet.End {
	e := sheet.End{Shape: sheet.RoundedEnd, Corner: o.Corner.Value, Radius: o.EndRadius.Value, Nose: o.Nose.Value, Taper: o.Taper.Value}
	if o.End.Value != "" {
		e.Shape = endShapes[o.End.Value]
	}
	return e
}

func (e FarEnd) end() sheet.End {
	return sheet.End{Shape: endShapes[e.Shape.Value], Corner: e.Corner.Value, Radius: e.Radius.Value, Nose: e.Nose.Value, Taper: e.Taper.Value}
}

// way is 1 for a fold towards whoever looks on face A, -1 for one away.
func way(t Text) float64 {
	if t.Value == "away" {
		return -1
	}
	return 1
}

// Sheet is the fold as the geometry counts it; ok is false where place, angle, radius or
// way is missing.
func (f Fold) Sheet() (fold sheet.Fold, ok bool) {
	fold = sheet.Fold{At: f.Along.Value, Angle: way(f.Way) * f.Angle.Value, Radius: f.Radius.Value, Skew: f.Skew.Value, K: f.NeutralLine.Value}
	return fold, f.Along.Given && f.Angle.Given && f.Radius.Given && f.Way.Given
}

// Strip is the folded strip; ok is false where something of it is missing. Its width is
// that of the outline at its widest.
func (f Fitting) Strip() (s sheet.FoldedStrip, ok bool, err error) {
	c, ok, err := f.Outline.Shape()
	if !ok || err != nil || !f.Thickness.Given {
		return s, false, err
	}
	flat := sheet.Flat{Thickness: f.Thickness.Value, Outline: c}
	for _, fold := range f.Folds {
		one, ok := fold.Sheet()
		if !ok {
			return s, false, nil
		}
		flat.Folds = append(flat.Folds, one)
	}
	return flat.Strip(), true, nil
}

// HoleNamed finds a hole by its name, nil if there is none.
func (f Fitting) HoleNamed(name string) *Hole {
	for i := range f.Holes {
		if h := &f.Holes[i]; h.Name.Given && h.Name.Value == name {
			return h
		}
	}
	return nil
}

// Given tells whether anything was measured.
func (m Measured) Given() bool { return len(m.Legs) > 0 }

// OldPart are the readings of the old part as the geometry wants them; what they leave
// out of thickness and width is taken from the fitting. ok is false where a reading or
// how far it may be off is missing.
func (f Fitting) OldPart() (old sheet.Measured, ok bool) {
	m := f.Measured
	old.Thickness, ok = reading(either(m.Thickness, f.Thickness), either(m.ThicknessWithin, m.Within))
	width, known := reading(either(m.Width, f.Outline.Width), m.Within)
	old.Width, ok = width, ok && known && m.Given()
	for _, l := range m.Legs {
		r, known := reading(l.Outside, either(l.Within, m.Within))
		old.Legs, ok = append(old.Legs, r), ok && known
	}
	for i, fold := range m.Folds {
		r, known := fold.reading(m)
		if len(f.Folds) == len(m.Folds) {
			r.K = f.Folds[i].NeutralLine.Value // what a strip of the new sheet gave: the flat is cut from that
		}
		old.Folds, ok = append(old.Folds, r), ok && known
	}
	for _, h := range m.Holes {
		r, known := h.reading(m)
		old.Holes, ok = append(old.Holes, r), ok && known
	}
	for _, c := range m.Chords {
		r, known := reading(c.Length, either(c.Within, m.Within))
		old.Chords, ok = append(old.Chords, sheet.MeasuredChord{From: c.From.Value, To: c.To.Value, Length: r}), ok && known && c.From.Given && c.To.Given
	}
	return old, ok
}

func (f MeasuredFold) reading(m Measured) (fold sheet.MeasuredFold, ok bool) {
	within := either(f.Within, m.AngleWithin)
	fold.Radius, ok = reading(f.Radius, either(f.RadiusWithin, m.Within))
	if f.Skew.Given {
		fold.Skew, _ = reading(f.Skew, within)
	}
	if !f.Angle.Given {
		return f.byDirections(fold, within, ok)
	}
	angle, known := reading(f.Angle, within)
	for i := range angle.Values {
		angle.Values[i] *= way(f.Way)
	}
	fold.Angle = angle
	return fold, ok && known && f.Way.Given
}

// byDirections works angle and skew out from the directions of the legs.
func (f MeasuredFold) byDirections(fold sheet.MeasuredFold, within Amount, ok bool) (sheet.MeasuredFold, bool) {
	along, a := f.Directions.Along.direction()
	face, b := f.Directions.Face.direction()
	behind, c := f.Directions.Behind.direction()
	if !ok || !within.Given || !a || !b || !c {
		return fold, false
	}
	angle, skew, err := sheet.ReadDirections(within.Value, sheet.FoldDirections{Along: along, Face: face, Behind: behind})
	fold.Angle, fold.Skew = angle, skew
	return fold, err == nil
}

// direction is the point as a direction in space; ok is false where part of it is missing.
func (p Point) direction() (sheet.Point3, bool) {
	return sheet.Point3{X: p.X.Value, Y: p.Y.Value, Z: p.Z.Value}, p.X.Given && p.Y.Given && p.Z.Given
}

func (h MeasuredHole) reading(m Measured) (hole sheet.MeasuredHole, ok bool) {
	within := either(h.Within, m.Within)
	leg, _ := strconv.Atoi(h.Leg.Value) // none is leg 0, which there is not
	hole = sheet.MeasuredHole{Name: h.Hole.Value, Leg: leg, FromFar: h.From.Value == "far end"}
	hole.Along, ok = reading(h.Along, within)
	across := h.Across
	if !across.Given {
		// On the centre line, as well as that can be seen.
		across = Amount{Given: true, Readings: 1}
	}
	hole.Across, _ = reading(across, within)
	return hole, ok && h.Hole.Given && h.Leg.Given
}

// either is the first amount, or the second where that is not given.
func either(a, b Amount) Amount {
	if a.Given {
		return a
	}
	return b
}

// reading makes readings of an amount, each of which may be off by so much.
func reading(a, within Amount) (sheet.Reading, bool) {
	r := sheet.Reading{Within: within.Value}
	if !a.Given {
		return r, false
	}
	if r.Values = a.Each.Values(); r.Values == nil {
		r.Values = []float64{a.Value}
	}
	return r, within.Given && !math.IsNaN(a.Value)
}
