package pattern_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"chainwale/engine/pattern"
	"chainwale/engine/sheet"
)

// aftPlate is the folded plate of the mended boat.
func aftPlate(t *testing.T, replace ...string) pattern.Part {
	t.Helper()
	parts, problems := patterns(t, "q.yaml", strings.NewReplacer(replace...).Replace(boat(t, "quillfish-mended.yaml")))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return parts[slices.IndexFunc(parts, func(p pattern.Part) bool { return p.Name == "aft-lower-plate" })]
}

// The sheet says order, tools, angles and forces, and what keeps hands whole. A force of
// 1.33 Fu L t^2/V with 485 MPa, 40 and 8 mm in 64 mm is 25.8 kN, one of 1.5 670 L t^2/V
// is 40.2 kN.
func TestPressSheet(t *testing.T) {
	text := string(aftPlate(t).PressSheet(0))
	for _, want := range []string{
		"P1  upper  40.5 mm  face A  12 deg", "P2  lower  79.5 mm", "die 64 mm", "25.8 kN to 40.2 kN", "opens by", "The press is rated 200 kN",
		"can jump out", "hands and heads clear", "guard shut", "never beyond", "A crack on the outside of a fold is scrap", "mm of ram travel",
		"A qualified rigger, surveyor, naval architect and local code decide.", "by 340 mm at the least", "measured from an old part",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the press sheet does not say %q:\n%s", want, text)
		}
	}
	for change, want := range map[string]string{
		"room: 400 mm, ":     "The order of the folds was not tried",
		", force: 200 kN":    "The plan does not say what the press is rated for",
		"name: 316L, condit": "No strokes are told: how far the metal springs back is not known",
	} {
		to := ""
		if strings.HasPrefix(change, "name") {
			to = "name: some steel, condit"
		}
		if text := string(aftPlate(t, change, to).PressSheet(0)); !strings.Contains(text, want) {
			t.Errorf("without %q nothing says %q:\n%s", change, want, text)
		}
	}
	if text := string(aftPlate(t, "force: 200 kN", "force: 30 kN").PressSheet(0)); !strings.Contains(text, "TOO MUCH FOR THIS PRESS: it is rated 30 kN and a fold may take 40.2 kN") {
		t.Error(text)
	}
	if text := string(aftPlate(t).PressSheet(40)); !strings.Contains(text, "this press is too coarse for the fold") {
		t.Error(text)
	}
}

// Pumped by its table, no press of up to 1.3 times the predicted travel goes beyond, and
// each comes near.
func TestTableNeverBeyond(t *testing.T) {
	p := aftPlate(t)
	f := p.Folds[0]
	first, rows := table(t, string(p.PressSheet(0)))
	for _, stiff := range []float64{0.7, 1, 1.29} {
		for _, opens := range []float64{f.Press.Least - f.Angle, f.Press.Most - f.Angle} {
			ram := sheet.RamTravel{Die: 64, Shoulder: 5, Thickness: 8, Radius: 12}
			left := func(travel float64) float64 {
				low, high := 0.0, 60.0
				for range 60 {
					ram.Angle = (low + high) / 2
					if r, err := ram.Reckon(); err != nil || r.Travel > travel*stiff {
						high = ram.Angle
					} else {
						low = ram.Angle
					}
				}
				return math.Max(0, low-opens)
			}
			travel, angle := first, left(first)
			for range 60 {
				more := 0.0
				for _, r := range rows {
					if r[0] >= angle && more == 0 {
						more = r[1]
					}
				}
				if more == 0 {
					break
				}
				travel += more
				angle = left(travel)
			}
			if angle > f.Angle || angle < f.Angle-2.5 {
				t.Errorf("%g times the travel, opening by %g: left at %g of %g deg", stiff, opens, angle, f.Angle)
			}
		}
	}
}

// table reads the first fold's table back: the first push, and the rows.
func table(t *testing.T, text string) (first float64, rows [][2]float64) {
	t.Helper()
	lines := strings.Split(text[strings.Index(text, "P1, fold"):], "\n")
	first = number(t, strings.Fields(lines[1])[1])
	for _, line := range lines[4:] {
		f := strings.Fields(line)
		if f[1] == "stop" {
			return first, rows
		}
		rows = append(rows, [2]float64{number(t, f[0]), number(t, f[1])})
	}
	t.Fatal(text)
	return 0, nil
}

func number(t *testing.T, s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Folds of one die, radius and sheet share a set-up; another radius needs another.
func TestSetups(t *testing.T) {
	one := aftPlate(t)
	if s := pattern.Setups([]pattern.Part{one}); len(s) != 1 || len(s[0].Folds) != 2 || s[0].Folds[0].Times != 2 || s[0].Die != 64 {
		t.Errorf("%+v", s)
	}
	if s := pattern.Setups([]pattern.Part{aftPlate(t, "angle: 8 deg, way: toward, radius: 12 mm", "angle: 8 deg, way: toward, radius: 16 mm")}); len(s) != 2 {
		t.Errorf("%+v", s)
	}
	two := boatNamed(t, "Teal")
	if s := pattern.Setups([]pattern.Part{one, two[0]}); len(s) != 2 {
		t.Errorf("%+v", s)
	}
}
