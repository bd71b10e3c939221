package plan

import (
	"slices"
	"strconv"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"
	"chainwale/engine/sheet"
)

const fewReadings = "readings taken again, or how far one may be off with that tool"

var lengths, angles = quantity.Length, quantity.Angle

// oldPart checks what was measured on the old part: that readings of one thing agree,
// that legs and folds fit each other, and that holes and straight distances fit them.
func (c *crossChecker) oldPart(f Fitting) {
	m := f.Measured
	if !m.Given() {
		return
	}
	before := len(c.problems)
	c.counts(f)
	c.scatter(f)
	c.measuredNames(f)
	old, ok := f.OldPart()
	if ok && len(c.problems) == before {
		c.develops(f, old)
	}
}

// counts sees to it that there is one leg more than there are folds.
func (c *crossChecker) counts(f Fitting) {
	m := f.Measured
	switch {
	case len(m.Folds) > mostFolds:
		c.wrong(m.Folds[mostFolds].At, "up to three folds; a part with more is for a fabricator to lay out", "%d folds were measured, and %d at the most are laid out here", len(m.Folds), mostFolds)
	case len(m.Legs) != len(m.Folds)+1:
		c.wrong(m.At, "a leg before the first fold, one between any two and one behind the last", "%d folds part a strip into %d legs, and %d are measured", len(m.Folds), len(m.Folds)+1, len(m.Legs))
	}
	for _, o := range m.Folds {
		switch {
		case o.Angle.Given && o.Directions.Along.X.Given:
			c.wrong(o.Angle.At, "angle and way, or directions", "this fold is measured by its angle and by directions, and only one can count")
		case o.Angle.Given && !o.Way.Given && c.clean:
			c.wrong(o.At, "way: toward or way: away", "this fold does not say which way it turns")
		}
	}
}

// scatter refuses readings of one thing that differ by more than two of that tool can.
func (c *crossChecker) scatter(f Fitting) {
	m := f.Measured
	c.apart(m.Thickness, either(m.ThicknessWithin, m.Within), lengths)
	c.apart(m.Width, m.Within, lengths)
	for _, l := range m.Legs {
		c.apart(l.Outside, either(l.Within, m.Within), lengths)
	}
	for _, o := range m.Folds {
		c.apart(o.Radius, either(o.RadiusWithin, m.Within), lengths)
		c.apart(o.Angle, either(o.Within, m.AngleWithin), angles)
		c.apart(o.Skew, either(o.Within, m.AngleWithin), angles)
	}
	for _, h := range m.Holes {
		c.apart(h.Along, either(h.Within, m.Within), lengths)
		c.apart(h.Across, either(h.Within, m.Within), lengths)
	}
	for _, x := range m.Chords {
		c.apart(x.Length, either(x.Within, m.Within), lengths)
	}
}

// apart refuses readings that lie further apart than two that are good to so much can.
func (c *crossChecker) apart(a, within Amount, d quantity.Dimension) {
	if a.Readings < 2 || !within.Given || a.Spread <= 2*within.Value*(1+1e-9) {
		return
	}
	c.wrong(a.At, fewReadings, "these %d readings lie %s apart, and two that are good to %s differ by %s at the most%s", a.Readings,
		quantity.Format(a.Spread, d, c.units), quantity.Format(within.Value, d, c.units), quantity.Format(2*within.Value, d, c.units), c.oddOne(a, d, 2*within.Value))
}

// oddOne names the reading that stands out, as the end of a sentence: without it the
// others lie no further apart than they may. Of two readings either may be the odd one,
// and where two stand out none is named.
func (c *crossChecker) oddOne(a Amount, d quantity.Dimension, apart float64) string {
	list := a.Each.Values()
	if len(list) < 3 {
		return ""
	}
	slices.Sort(list)
	last := len(list) - 1
	withoutFirst, withoutLast := list[last]-list[1] <= apart, list[last-1]-list[0] <= apart
	switch {
	case withoutLast && !withoutFirst:
		return "; " + quantity.Format(list[last], d, c.units) + " stands out from the others"
	case withoutFirst && !withoutLast:
		return "; " + quantity.Format(list[0], d, c.units) + " stands out from the others"
	}
	return ""
}

// measuredNames sees to it that holes are named that there are, each once, and that
// chords go between holes that were measured.
func (c *crossChecker) measuredNames(f Fitting) {
	measured := map[string]Text{}
	for _, h := range f.Measured.Holes {
		c.holeName(f, h.Hole)
		if other, twice := measured[h.Hole.Value]; h.Hole.Given && twice {
			c.wrong(h.Hole.At, "each hole once; a value may be a list of readings", "%s is measured in %s already", h.Hole.Value, line(other.At, h.Hole.At))
		}
		measured[h.Hole.Value] = h.Hole
		if leg, err := strconv.Atoi(h.Leg.Value); h.Leg.Given && (err != nil || leg < 1 || leg > len(f.Measured.Legs)) {
			c.wrong(h.Leg.At, "the number of a leg, counted from 1 at the loaded end", "there are %d legs, and this hole is said to lie on leg %s", len(f.Measured.Legs), h.Leg.Value)
		}
	}
	for _, x := range f.Measured.Chords {
		for _, end := range []Text{x.From, x.To} {
			if _, ok := measured[end.Value]; end.Given && !ok {
				c.wrong(end.At, "the name of a hole under measured", "%s was not measured, so a distance from it checks nothing", end.Value)
			}
		}
	}
}

// develops lays the old part out: legs and folds first, then hole by hole, then distance
// by distance, so that what is at fault is named at its place.
func (c *crossChecker) develops(f Fitting, old sheet.Measured) {
	if _, err := old.Develop(); err == nil {
		return
	}
	holes, chords := old.Holes, old.Chords
	old.Holes, old.Chords = nil, nil
	m := f.Measured
	fault := func(at finding.Place, expected string) bool {
		_, err := old.Develop()
		if err != nil {
			c.wrong(m.faultAt(err, at), expected, "what was measured does not make a part: %s", err)
		}
		return err != nil
	}
	if fault(m.At, "outside lengths from corner to corner, and inside radii") {
		return
	}
	for i, h := range holes {
		old.Holes = append(old.Holes, h)
		if fault(m.Holes[i].At, "the hole's distance along its leg, from the end that is said") {
			return
		}
	}
	for i, x := range chords {
		old.Chords = append(old.Chords, x)
		if fault(m.Chords[i].At, "this distance, the holes' places or the angle between them measured again") {
			return
		}
	}
}

// faultAt is where a fault of the geometry stands: at the leg or fold that it names, or
// else at the place given.
func (m Measured) faultAt(err error, at finding.Place) finding.Place {
	found := numbered.FindStringSubmatch(err.Error())
	if found == nil || at != m.At {
		return at
	}
	n, _ := strconv.Atoi(found[2])
	switch {
	case found[1] == "leg" && n >= 1 && n <= len(m.Legs):
		return m.Legs[n-1].At
	case found[1] == "fold" && n >= 1 && n <= len(m.Folds):
		return m.Folds[n-1].At
	}
	return at
}
