package fact

import (
	"math"
	"strings"
	"testing"
)

const (
	capOutline = "outline: { width: 45 mm, length: 400 mm, end: round }"
	aftOutline = "    outline: { width: 40 mm, length: 340 mm, end: round }\n    holes:\n      - { name: pin,"
	// waisted is 45 mm wide at the pin and 32 mm from 100 mm on; from 350 mm on it is 36 mm.
	waisted = "outline: { width: 45 mm, length: 400 mm, contour: [{ x: 0 mm, y: -22.5 mm }, { x: 90 mm, y: -22.5 mm }, { x: 100 mm, y: -16 mm }, { x: 345 mm, y: -16 mm }, { x: 350 mm, y: -18 mm }, { x: 400 mm, y: -18 mm }, " +
		"{ x: 400 mm, y: 18 mm }, { x: 350 mm, y: 18 mm }, { x: 345 mm, y: 16 mm }, { x: 100 mm, y: 16 mm }, { x: 90 mm, y: 22.5 mm }, { x: 0 mm, y: 22.5 mm }] }"
)

// capHoles are the bolt holes of the cap plate to port, and its section.
func capHoles(t *testing.T, replace ...string) ([]*BoltHole, *Section) {
	t.Helper()
	f := foldedBoat(t, replace...)
	var holes []*BoltHole
	for _, h := range f.BoltHoles {
		if h.Fitting.ID == "cap-plate-port" {
			holes = append(holes, h)
		}
	}
	for _, s := range f.Sections {
		if s.Fitting.ID == "cap-plate-port" {
			return holes, s
		}
	}
	t.Fatal("the cap plate has no section")
	return nil, nil
}

// Each bolt hole is reckoned with the width that the plate has there, not with that at
// the pin.
func TestWidthAtEachHole(t *testing.T) {
	_, strip := capHoles(t)
	holes, s := capHoles(t, capOutline, waisted)
	for i, want := range []float64{16, 16, 16, 16, 18} {
		closeTo(t, holes[i].ID, &holes[i].Side, want, 1e-9)
	}
	closeTo(t, "the net section", &s.NetUltimate, strip.NetUltimate.Float()*(32-10)/(45-10), 1e-6)
	if !(s.Elastic.Float() > strip.Elastic.Float()) {
		t.Errorf("narrower, the plate is used up to %v, and to %v before", s.Elastic.Float(), strip.Elastic.Float())
	}
	// A plate that is wider at its bolts gains by that.
	wide := strings.NewReplacer("-16 mm", "-30 mm", "y: 16 mm", "y: 30 mm").Replace(waisted)
	holes, _ = capHoles(t, capOutline, wide)
	closeTo(t, "where it is wider", &holes[1].Side, 30, 1e-9)
}

// Where a shaped far end begins, the strip's width no longer counts.
func TestWidthAtShapedEnd(t *testing.T) {
	for end, want := range map[string]float64{
		// The hole at 375 mm reaches to 380 mm, where half a circle of 22.5 mm is 2.5 mm in.
		"far_end: { shape: round }":                math.Sqrt(22.5*22.5 - 2.5*2.5),
		"far_end: { shape: square, corner: 5 mm }": 22.5,
		"far_end: { shape: square }":               22.5,
	} {
		holes, _ := capHoles(t, capOutline, strings.Replace(capOutline, "end: round", "end: round, "+end, 1))
		closeTo(t, end+", first", &holes[0].Side, 22.5, 1e-9)
		closeTo(t, end+", last", &holes[4].Side, want, 1e-9)
	}
	// Behind a tapered loaded end the strip is whole.
	holes, _ := capHoles(t, capOutline, "outline: { width: 60 mm, length: 400 mm, end: tapered, nose: 45 mm, taper: 80 mm }")
	closeTo(t, "behind the taper", &holes[0].Side, 30, 1e-9)
}

// What is not known of the outline leaves the width at a hole unknown.
func TestWidthUnknown(t *testing.T) {
	holes, s := capHoles(t, capOutline, "outline: { width: 45 mm, end: round, far_end: { shape: round } }")
	for name, v := range map[string]*Value{"side": &holes[4].Side.Value, "bearing": &holes[4].Bearing.Value, "section": &s.NetUltimate.Value} {
		if v.Known() || len(v.Missing()) == 0 {
			t.Errorf("the %s is known of a plate whose end nobody can place, or nothing says why not", name)
		}
	}
	holes, _ = capHoles(t, capOutline, "outline: { length: 400 mm, end: round }")
	if v := &holes[0].Side.Value; v.Known() || len(v.Missing()) != 1 || !strings.HasSuffix(v.Missing()[0].At().Pointer, "/outline/width") {
		t.Errorf("a missing width is not asked for: %v", v.Missing())
	}
}

// The press folds the width that the plate has at the fold.
func TestWidthAtFold(t *testing.T) {
	wide := strings.NewReplacer("40 mm, length", "40 mm, length", "end: round }", "contour: [{ x: 0 mm, y: -20 mm }, { x: 40 mm, y: -20 mm }, { x: 50 mm, y: -35 mm }, { x: 340 mm, y: -35 mm }, { x: 340 mm, y: 25 mm }, { x: 50 mm, y: 25 mm }, { x: 40 mm, y: 20 mm }, { x: 0 mm, y: 20 mm }] }").Replace(aftOutline)
	f := foldedBoat(t, aftOutline, wide)
	closeTo(t, "the fold", &f.Bends[0].Length, 60, 1e-9)
	closeTo(t, "force at 670 MPa", &f.Bends[0].Force, 1.5*670*60*64/64, 1e-6)
}
