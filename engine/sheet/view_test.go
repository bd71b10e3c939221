package sheet

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestDrawing(t *testing.T) {
	f := chainplate(t)
	f.Folds = append(f.Folds, Fold{At: 160, Angle: -40, Radius: 12, Skew: 12})
	const height = 0.05
	lines, err := f.Drawing(height)
	if err != nil {
		t.Fatal(err)
	}
	folding, _ := f.Folding()
	count := map[LineKind]int{}
	for _, l := range lines {
		count[l.Kind]++
		for i, p := range l.Points {
			at, depth, err := folding.Unfold(p)
			if err != nil {
				t.Fatalf("%s %s: %v", l.Kind, l.Name, err)
			}
			if onFace := depth; l.Face == FaceB && math.Abs(onFace-6) > 1e-6 || l.Face == FaceA && math.Abs(onFace) > 1e-6 {
				t.Errorf("%s %s: a point at %g mm depth on face %s", l.Kind, l.Name, depth, l.Face)
			}
			if l.Kind == EdgeLine && f.Outline.Distance(at) > height {
				t.Errorf("a point of the edge lies %g mm off it", f.Outline.Distance(at))
			}
			// The middle of a chord lies no further from the metal's face than asked.
			if next := l.Points[(i+1)%len(l.Points)]; l.Closed {
				if _, _, off := folding.Nearest(p.plus(next).times(0.5)); off > height+1e-6 {
					t.Errorf("%s %s: a chord lies %g mm off", l.Kind, l.Name, off)
				}
			}
		}
	}
	if want := (map[LineKind]int{EdgeLine: 2, HoleLine: 8, TangentLine: 8, ThroughLine: len(f.Outline)}); count[EdgeLine] != want[EdgeLine] || count[HoleLine] != want[HoleLine] || count[TangentLine] != want[TangentLine] || count[ThroughLine] != want[ThroughLine] {
		t.Errorf("%v, want %v", count, want)
	}
	if _, err := f.Drawing(0); err == nil {
		t.Error("a height of 0 is taken")
	}
}

func TestProject(t *testing.T) {
	p := Point3{1, 2, 3}
	for view, want := range map[View]Point{FromSide: {1, 3}, FromFace: {1, 2}, FromEnd: {2, 3}} {
		if got := view.Project(p); got != want {
			t.Errorf("%s: %v", view, got)
		}
	}
	for _, axis := range []Point3{{X: 1}, {Y: 1}, {Z: 1}} {
		near(t, "an axis slanted", Slanted.Project(axis).size(), math.Sqrt(2.0/3), 1e-12)
	}
}

// TestFoldBetween: the fold found turns the strip into the wanted direction.
func TestFoldBetween(t *testing.T) {
	angle, skew, err := FoldBetween(Point3{X: 1}, Point3{Z: 1}, Point3{.881697, .043059, .469846})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "angle", angle, 30, 1e-3)
	near(t, "skew", skew, 20, 1e-2)
	rapid.Check(t, func(t *rapid.T) {
		wantAngle, wantSkew := rapid.Float64Range(1, 170).Draw(t, "angle"), rapid.Float64Range(-59, 59).Draw(t, "skew")
		if rapid.Bool().Draw(t, "away") {
			wantAngle = -wantAngle
		}
		f, err := NewFolding(FoldedStrip{4, 10, 400, []Fold{{At: 200, Angle: wantAngle, Radius: 4, Skew: wantSkew}}})
		if err != nil {
			t.Fatal(err)
		}
		along, face := f.Direction()
		angle, skew, err := FoldBetween(Point3{X: 2}, Point3{Z: 3}, along.times(5))
		if err != nil || math.Abs(angle-wantAngle) > 1e-6 || math.Abs(skew-wantSkew) > 1e-6 {
			t.Fatalf("%g and %g, want %g and %g: %v", angle, skew, wantAngle, wantSkew, err)
		}
		between, _, err := FoldBetweenFaces(Point3{Z: 1}, face)
		if err != nil || math.Abs(between-math.Abs(wantAngle)) > 1e-6 {
			t.Fatalf("%g between the faces, want %g: %v", between, wantAngle, err)
		}
	})
	for _, bad := range [][3]Point3{{{}, {Z: 1}, {Y: 1}}, {{X: 1}, {X: 1}, {Z: 1}}, {{X: 1}, {Z: 1}, {X: 1}}, {{X: 1}, {Z: 1}, {Y: 1}}, {{X: math.NaN()}, {Z: 1}, {Z: 1}}} {
		if a, s, err := FoldBetween(bad[0], bad[1], bad[2]); err == nil {
			t.Errorf("%v gave %g, %g", bad, a, s)
		}
	}
	if _, _, err := FoldBetweenFaces(Point3{Z: 1}, Point3{Z: 2}); err == nil {
		t.Error("two faces that look the same way have a fold")
	}
}

// TestReadDirections: a fold read twice by directions gives two readings that a
// development takes.
func TestReadDirections(t *testing.T) {
	read := func(angle, skew float64) FoldDirections {
		f, err := NewFolding(FoldedStrip{4, 10, 400, []Fold{{At: 200, Angle: angle, Radius: 4, Skew: skew}}})
		if err != nil {
			t.Fatal(err)
		}
		along, _ := f.Direction()
		return FoldDirections{Point3{X: 1}, Point3{Z: 1}, along}
	}
	angle, skew, err := ReadDirections(1, read(20, 5), read(21, 6))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "angle", angle.Mean(), 20.5, 1e-9)
	near(t, "skew", skew.Mean(), 5.5, 1e-9)
	near(t, "skew within", skew.Within, 1/(1-math.Cos(radians(20))), 1e-6)
	// A degree of skew moves the direction behind by 1 - cos(20) of a degree.
	a, b := read(20, 0).Behind, read(20, 1).Behind
	near(t, "direction moved", degrees(a.distance(b)), 1-math.Cos(radians(20)), 2e-4)
	m := oldPart()
	m.Folds[0].Angle, m.Folds[0].Skew = angle, skew
	if _, err := m.Develop(); err != nil {
		t.Error(err)
	}
	if _, _, err := ReadDirections(1, read(20, 5), FoldDirections{}); err == nil {
		t.Error("a reading that is none is taken")
	}
}
