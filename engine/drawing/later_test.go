package drawing

import (
	"math"
	"strings"
	"testing"

	"chainwale/engine/sheet"
)

// TestLaterHoleIsSeen: the folded pictures show the part as it is when it is done, with
// the holes that are drilled after folding.
func TestLaterHoleIsSeen(t *testing.T) {
	later := chainplate(t)
	cut := later
	cut.Later = nil
	cut.Flat.Holes = append(append([]sheet.Hole{}, later.Flat.Holes...), laterHoles(later.Later)...)
	m, err := newModel(later.folded(), slantedEye)
	if err != nil {
		t.Fatal(err)
	}
	of, err := newModel(cut.folded(), slantedEye)
	if err != nil {
		t.Fatal(err)
	}
	if at := later.Later[0].At; m.metal(at) {
		t.Error("a hole that is drilled after folding is metal in the picture")
	}
	if got, want := len(m.sights(later.folded(), slantedEye.toward)), len(of.sights(cut.folded(), slantedEye.toward)); got != want {
		t.Errorf("%d lines, and %d when the hole is cut in the flat", got, want)
	}
	if n := len(later.Flat.Holes); n != len(chainplate(t).Flat.Holes) {
		t.Error("the flat got the hole too")
	}
}

// TestStraightOverFolds: in a clip of 4 mm, 80 mm wide outside, two holes as high as each
// other stand 72 mm apart on its inside, which is face A, and 80 mm on its outside.
func TestStraightOverFolds(t *testing.T) {
	for _, p := range odd(t) {
		want := map[string]float64{"U-90": 72, "U-DOWN": 80}[p.Name]
		if want == 0 {
			continue
		}
		m, err := newModel(p.folded(), slantedEye)
		if err != nil {
			t.Fatal(err)
		}
		if a, b, far := p.straight(m); a != 0 || b != 1 || math.Abs(far-want) > 1e-6 {
			t.Errorf("%s: from hole %d to hole %d it is %g mm, and should be %g", p.Name, a+1, b+1, far, want)
		}
		var said bool
		for _, r := range p.firstPart(m).rows {
			said = said || strings.HasPrefix(r[0], "folded: hole 1 to hole 2, straight") && r[1] == size(want)
		}
		if !said {
			t.Errorf("%s: the first part is not measured from hole to hole", p.Name)
		}
	}
	knee := odd(t)[0]
	m, err := newModel(knee.folded(), slantedEye)
	if err != nil {
		t.Fatal(err)
	}
	if _, _, far := knee.straight(m); far != 0 {
		t.Errorf("no fold parts the holes of a knee, and %g mm is straight over one", far)
	}
}

// TestHolesAreCalled: the list of holes has the names that notes and the press sheet use.
func TestHolesAreCalled(t *testing.T) {
	p := chainplate(t)
	p.Holes = append([]HoleUse{}, p.Holes...)
	p.Holes[1].Called = "low"
	if got := p.holeList().rows[1][4]; !strings.HasPrefix(got, "bolt hole low: ") {
		t.Errorf("hole 2 is for %q", got)
	}
}

// TestNoSheetForTheRelease: the line to sign takes no sheet of its own, for every sheet's
// title block has one; nor does a table without a caution begin one for it.
func TestNoSheetForTheRelease(t *testing.T) {
	p := chainplate(t)
	m, err := newModel(p.folded(), slantedEye)
	if err != nil {
		t.Fatal(err)
	}
	for _, of := range []struct {
		right  bool
		left   float64
		sheets int
		signed bool
	}{{false, 30, 1, true}, {false, 5, 1, true}, {true, 30, 1, true}, {true, 5, 1, false}} {
		d := &drawing{part: p, model: m, paper: A4.turned()}
		k := &column{d: d}
		k.start()
		k.right, k.y = of.right, k.room.low+of.left
		k.release()
		if signed := len(d.pages[0].marks) > 0; len(d.pages) != of.sheets || signed != of.signed {
			t.Errorf("%+v: %d sheets, signed on the first %v", of, len(d.pages), signed)
		}
	}
	d := &drawing{part: p, model: m, paper: A4.turned()}
	k := &column{d: d}
	k.start()
	first := listed{p.firstPart(m), ""}
	k.right, k.y = true, k.room.low+first.height(k.wide())+3.5
	if k.table(first); len(d.pages) != 1 {
		t.Error("the table fits, and a sheet begins behind it")
	}
}
