package plan

import (
	"chainwale/engine/finding"
	"chainwale/engine/sheet"
)

// development is the flat that the old part comes from; nil where its readings are
// missing or don't make one.
func (f Fitting) development() *sheet.Development {
	if !f.Measured.Given() {
		return nil
	}
	old, ok := f.OldPart()
	if !ok {
		return nil
	}
	d, err := old.Develop()
	if err != nil {
		return nil
	}
	return &d
}

// Completed is the fitting with what it leaves out of its flat taken from the old part:
// thickness and outline, the folds, and the places of holes. Each stands where the
// reading does that it comes from. A part of a new design takes nothing over, and one
// with a contour no outline. The flat of the old part comes with it, for it takes long to
// work out; nil where its readings are missing or don't make one.
func (f Fitting) Completed() (Fitting, *sheet.Development) {
	d := f.development()
	if d == nil || f.State.Value == "new" {
		return f, d
	}
	m := f.Measured
	take(&f.Thickness, d.Strip.Thickness, m.Thickness.At)
	if len(f.Outline.Contour) == 0 {
		take(&f.Outline.Width, d.Strip.Width, m.Width.At)
		take(&f.Outline.Length, d.Length.Value, m.Legs[0].At)
	}
	f.Folds = f.completedFolds(*d)
	f.Holes = append([]Hole{}, f.Holes...)
	for i := range m.Holes {
		if h := f.HoleNamed(m.Holes[i].Hole.Value); h != nil && !h.Along.Given {
			take(&h.Along, d.Holes[i].At.X, m.Holes[i].Along.At)
			take(&h.Across, d.Holes[i].At.Y, m.Holes[i].Across.At)
		}
	}
	return f, d
}

func take(a *Amount, value float64, at finding.Place) {
	if !a.Given {
		*a = Amount{Given: true, Value: value, Readings: 1, At: at}
	}
}

// completedFolds are the folds with what they leave out; where the plan lists none they
// are those of the old part. Lists of different lengths say nothing of each other.
func (f Fitting) completedFolds(d sheet.Development) []Fold {
	folds := append([]Fold{}, f.Folds...)
	if len(folds) == 0 {
		for i, m := range f.Measured.Folds {
			name := Text{Given: true, Value: foldNames[min(i, len(foldNames)-1)], At: m.At}
			folds = append(folds, Fold{Name: name, At: m.At})
		}
	}
	if len(folds) != len(d.Strip.Folds) {
		return folds
	}
	for i := range folds {
		o, m, one := &folds[i], f.Measured.Folds[i], d.Strip.Folds[i]
		take(&o.Along, d.Folds[i].Value, m.At)
		take(&o.Radius, one.Radius, m.Radius.At)
		if !o.Angle.Given && !o.Way.Given {
			take(&o.Angle, max(one.Angle, -one.Angle), m.Angle.At)
			o.Way = Text{Given: true, Value: "toward", At: m.Way.At}
			if one.Angle < 0 {
				o.Way.Value = "away"
			}
		}
		if one.Skew != 0 {
			take(&o.Skew, one.Skew, m.Skew.At)
		}
	}
	return folds
}

// foldNames are what the folds of a part are called that the plan gives no names.
var foldNames = []string{"first", "second", "third"}
