package fact

import (
	"fmt"
	"math"

	"chainwale/engine/plan"
	"chainwale/engine/sheet"
)

// foldedAlike refuses bolt holes on both sides of a fold that is not the old part's: laid
// flat they may meet, and folded they don't. Without the old part, oneFace tells.
func (m *matchOf) foldedAlike() error {
	if !m.laid || len(m.holes) < 2 || m.holes[0].hull != nil {
		return nil
	}
	fresh, old := m.plan.Folds, m.old.Strip.Folds
	for i := range max(len(fresh), len(old)) {
		if i >= len(fresh) || i >= len(old) {
			if a, b := m.partedBy(fresh, old, i); a != "" {
				return fmt.Errorf("%s and %s stand on both sides of a fold, and the old part has %s where this one has %s: whether they meet its holes can't be told from the flat", a, b, counted(len(old), "fold"), counted(len(fresh), "fold"))
			}
			continue
		}
		one, ok := fresh[i].Sheet()
		if !ok {
			continue // that it is not known whole is said elsewhere
		}
		a, b := m.partedBy(fresh, old, i)
		if a == "" {
			continue
		}
		if off := m.foldsOff(one, old[i]); !(off <= CutWithin) {
			return fmt.Errorf("%s and %s stand on both sides of the %s fold, which turns %.4g deg %s and on the old part %.4g deg %s: folded so they come %.2g mm off its holes, and by the flat alone whether they meet can't be told",
				a, b, fresh[i].Name.Value, math.Abs(one.Angle), wayOf(one.Angle), math.Abs(old[i].Angle), wayOf(old[i].Angle), off)
		}
	}
	return nil
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

func wayOf(angle float64) string {
	if angle < 0 {
		return "away"
	}
	return "toward"
}

// partedBy names two of the holes that have to meet between which a fold lies, on the new
// part or on the old one, "" for none.
func (m *matchOf) partedBy(fresh []plan.Fold, old []sheet.Fold, i int) (before, behind string) {
	for _, x := range m.holes {
		beyond := false
		if i < len(fresh) && fresh[i].Along.Given {
			beyond = beyondFold(x.hole.Sheet().At, fresh[i].Along.Value, fresh[i].Skew.Value)
		} else if i < len(old) {
			beyond = beyondFold(m.old.Holes[x.old].At, old[i].At, old[i].Skew)
		}
		if beyond {
			behind = x.hole.Name.Value
		} else {
			before = x.hole.Name.Value
		}
	}
	if before == "" || behind == "" {
		return "", ""
	}
	return before, behind
}

// beyondFold tells whether a place of the flat lies behind a fold's middle line.
func beyondFold(at sheet.Point, along, skew float64) bool {
	return at.X > along+at.Y*math.Tan(skew*math.Pi/180)
}

// foldsOff is how far the holes on one side of a fold come off for what it differs from
// the old part's, mm: for its angle and its skew at the farthest of those on the side that
// reaches less far, and for what it takes of the length. NaN for a fold that is none.
func (m *matchOf) foldsOff(one, old sheet.Fold) float64 {
	before, behind := 0.0, 0.0
	for _, x := range m.holes {
		away := x.hole.Along.Value - one.At
		before, behind = max(before, -away), max(behind, away)
	}
	reach := min(before, behind)
	turned := math.Abs(one.Angle-old.Angle) * math.Pi / 180
	// A fold line that is turned swings what is behind it by that much of the fold's own turn.
	swung := math.Abs(one.Skew-old.Skew) * math.Pi / 180 * 2 * math.Sin(math.Abs(old.Angle)/2*math.Pi/180)
	return math.Hypot(reach*math.Hypot(turned, swung), takes(one, m.plan.Thickness.Value)-takes(old, m.old.Strip.Thickness))
}

// takes is what a fold takes of the legs' lengths, mm.
func takes(f sheet.Fold, thickness float64) float64 {
	b := sheet.Bend{Thickness: thickness, Radius: f.Radius, Angle: math.Abs(f.Angle)}
	if f.K != 0 {
		b.Method, b.K = sheet.AsGiven, f.K
	}
	r, err := b.Reckon()
	if err != nil {
		return math.NaN()
	}
	return r.Deduction / math.Cos(f.Skew*math.Pi/180)
}
