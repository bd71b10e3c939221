package strength

import (
	"math"
	"testing"
)

func TestHoleDistances(t *testing.T) {
	r, err := HoleDistances{Width: 50, Hole: 16.3, End: 25}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "e/d0", r.End, 1.5337423, 1e-7)
	near(t, "w/d0", r.Side, 3.0674847, 1e-7)
	off, _ := HoleDistances{Width: 50, Hole: 16.3, End: 25, Across: -5}.Reckon()
	near(t, "w/d0 off the centre line", off.Side, 40/16.3, 1e-12)
	checkWorking(t, r.Working(), map[string]float64{"e/d0": r.End, "w/d0": r.Side})
	for _, bad := range []HoleDistances{{50, 0, 25, 0}, {50, 51, 25, 0}, {50, 16, 8, 0}, {50, 16, 25, 17}, {math.NaN(), 16, 25, 0}, {50, 16, 25, math.NaN()}} {
		if r, err := bad.Reckon(); err == nil {
			t.Errorf("%+v gave %+v", bad, r)
		}
	}
}

func TestBearing(t *testing.T) {
	r, err := Bearing{Thickness: 8, Pin: 16, Yield: 205}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "EN", r.EN, 39360, 1e-12)
	near(t, "AISC", r.AISC, 47232, 1e-12)
	near(t, "BTH", r.BTH, 32800, 1e-12)
	if r.Lowest != r.BTH || r.Governs != "BTH" {
		t.Errorf("%s governs at %g", r.Governs, r.Lowest)
	}
	checkWorking(t, r.Working(), map[string]float64{"Fb": r.Lowest, "Fb,EN": r.EN})
	for _, bad := range []Bearing{{0, 16, 205}, {8, -16, 205}, {8, 16, math.NaN()}, {8, 1e308, 205}} {
		if _, err := bad.Reckon(); err == nil {
			t.Errorf("%+v gave no error", bad)
		}
	}
}

func TestAISCPinPlate(t *testing.T) {
	p := AISCPinPlate{Thickness: 8, Width: 50, Hole: 16.3, Pin: 16, End: 25, Yield: 205, Ultimate: 515}
	r, err := p.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "be", r.Effective, 16.85, 1e-9)
	near(t, "tension", r.Tension, 138844, 1e-9)
	near(t, "shear", r.Shear, 122858.4, 1e-9)
	near(t, "bearing", r.Bearing, 47232, 1e-9)
	near(t, "gross yield", r.GrossYield, 82000, 1e-9)
	near(t, "end needed", r.EndNeeded, 22.4105, 1e-9)
	near(t, "width needed", r.WidthNeeded, 49.7, 1e-9)
	checkWorking(t, r.Working(), map[string]float64{"Pt": r.Tension, "Pv": r.Shear, "Rn": r.Bearing, "Py": r.GrossYield})
	thin := p
	thin.Thickness, thin.Width = 3, 100
	if r, _ = thin.Reckon(); r.Effective != 22 {
		t.Errorf("a wide thin plate counts %g mm beside the hole, not 2 t + 16", r.Effective)
	}
	p.Pin = 17
	if _, err = p.Reckon(); err == nil {
		t.Error("a pin larger than its hole")
	}
}

// TestPinPlateOnOrdinaryBoats holds plate, bolts and pin of nine ordinary plates
// against the table that the limits were set by.
func TestPinPlateOnOrdinaryBoats(t *testing.T) {
	for _, c := range []struct {
		id                                   string
		thick, width, pin, hole, end, radius float64
		breakLoad                            float64
		plate                                float64
		bolts, area, boltRatio, pinRatio     float64
	}{
		{"A1", 5, 30, 9.525, 9.895, 15, 15, 20.0, 1.61, 3, 36.6, 1.92, 2.20},
		{"A2", 4.7625, 25.4, 9.525, 9.895, 12.7, 12.7, 17.8, 1.37, 3, 20.5, 1.21, 2.48},
		{"B1", 6.35, 38, 12.7, 13.1, 19, 19, 35.5, 1.45, 4, 50.0, 1.97, 2.21},
		{"B2", 9.525, 41.275, 15.875, 16.295, 20.6375, 20.6375, 47.2, 1.68, 5, 50.0, 1.86, 2.60},
		{"B3", 6.35, 41.275, 15.875, 16.295, 20.6375, 20.6375, 47.2, 1.12, 4, 50.0, 1.48, 2.60},
		{"H-316", 6.35, 34.925, 12.7, 13.1, 20.6375, 17.4625, 30.7, 1.79, 4, 50.0, 2.28, 2.55},
		{"H-304", 6.35, 34.925, 12.7, 13.1, 20.6375, 17.4625, 36.5, 1.50, 4, 50.0, 1.92, 2.15},
		{"C1", 10, 50, 19.05, 19.5, 25, 25, 71.1, 1.43, 6, 84.3, 2.49, 2.48},
		{"C2", 12, 60, 19.05, 19.5, 33, 30, 71.1, 2.42, 6, 84.3, 2.49, 2.48},
	} {
		plate, err := PinPlate{Thickness: c.thick, Width: c.width, Hole: c.hole, Pin: c.pin, End: c.end, EndRadius: c.radius, Yield: 170, Ultimate: 485}.Reckon()
		if err != nil {
			t.Fatal(c.id, err)
		}
		near(t, c.id+" plate over wire", plate.Ultimate/1000/c.breakLoad, c.plate, 0.007)
		bolt, err := Bolt{StressArea: c.area, Diameter: 25, Yield: 450, Ultimate: 700, ThreadsInPlane: true}.Reckon()
		if err != nil {
			t.Fatal(c.id, err)
		}
		near(t, c.id+" bolts over wire", c.bolts*bolt.Shear/1000/c.breakLoad, c.boltRatio, 0.005)
		pin, err := Pin{Diameter: c.pin, Plate: c.thick, Cheek: 5, Yield: 205, Ultimate: 515}.Reckon()
		if err != nil {
			t.Fatal(c.id, err)
		}
		near(t, c.id+" pin over wire", pin.Shear/1000/c.breakLoad, c.pinRatio, 0.005)
	}
}
