package sheet

import (
	"fmt"
	"math"
	"strconv"
	"sync"

	"chainwale/engine/working"
)

// Fit is a pin of grade h in a hole of grade H.
//
// Returns the clearances that the grades allow (Least, Most) on the diameter.
//
// Equation: Least = 0; Most = IT of the hole + IT of the pin.
//
// Symbols: Nominal diameter, mm; HoleGrade and PinGrade 11 or 12; results mm.
//
// Holds for nominal diameters over 3 and up to 50 mm.
//
// Source: after ISO 286-1, 2010, standard tolerances (published; the edition is memory).
// Clevis pins are h11 (memory).
// Errors: a diameter or a grade that the table does not have.
type Fit struct {
	Nominal             float64
	HoleGrade, PinGrade int
}

// FitResult is what a Fit allows.
type FitResult struct {
	Least, Most float64

	of        Fit
	hole, pin float64
}

var (
	isoFit  = working.Source{Title: "after ISO 286-1, standard tolerances", Edition: "2010", As: working.Published, For: "the table; the edition is memory"}
	itTable = sync.OnceValues(func() ([]csvRow, error) {
		var err error
		_, rows := readTable("it.csv", &err)
		for _, r := range rows {
			r.number("over")
			r.number("to")
		}
		return rows, err
	})
)

// StandardTolerance is IT11 or IT12 of a nominal size, mm.
func StandardTolerance(grade int, nominal float64) (float64, error) {
	if grade != 11 && grade != 12 {
		return 0, fmt.Errorf("standard tolerances are known of the grades 11 and 12, not of %d", grade)
	}
	rows, err := itTable()
	if err != nil {
		return 0, err
	}
	for _, r := range rows {
		if nominal > r.number("over") && nominal <= r.number("to") {
			return r.number("IT"+strconv.Itoa(grade)) / 1000, nil
		}
	}
	return 0, fmt.Errorf("standard tolerances are known over 3 and up to 50 mm, not of %g mm", nominal)
}

// Reckon gives the clearances.
func (f Fit) Reckon() (FitResult, error) {
	hole, err := StandardTolerance(f.HoleGrade, f.Nominal)
	if err != nil {
		return FitResult{}, err
	}
	pin, err := StandardTolerance(f.PinGrade, f.Nominal)
	if err != nil {
		return FitResult{}, err
	}
	return FitResult{Most: hole + pin, of: f, hole: hole, pin: pin}, nil
}

// Working writes the calculation down.
func (r FitResult) Working() []working.Step {
	d := given("D", r.of.Nominal, "mm")
	return []working.Step{
		{Symbol: "ITh", Meaning: "tolerance of the hole", Formula: fmt.Sprintf("IT%d of D", r.of.HoleGrade), Inputs: d, Value: r.hole, Unit: "mm", Source: isoFit},
		{Symbol: "ITp", Meaning: "tolerance of the pin", Formula: fmt.Sprintf("IT%d of D", r.of.PinGrade), Inputs: d, Value: r.pin, Unit: "mm", Source: isoFit},
		{Symbol: "cmost", Meaning: "clearance at the most, on the diameter", Formula: "ITh + ITp", Inputs: given("ITh", r.hole, "mm", "ITp", r.pin, "mm"), Value: r.Most, Unit: "mm", Source: isoFit},
	}
}

// cutColumns begin the ranges of nominal sizes of ISO 9013; the last ends at 2000 mm.
var cutColumns = []string{"0", "3", "10", "35", "125", "315", "1000"}

// CutTolerance is how far a thermally cut size may be off, plus and minus mm, after
// ISO 9013, 2017 (published; the edition is memory).
//
// Symbols: class 1 or 2, thickness and nominal size in mm. Holds for cuts by laser
// (usually class 1) and by plasma or flame (class 2); water jets are not covered unless
// that is agreed. Errors: a class, thickness or size that the table does not have.
func CutTolerance(class int, thickness, nominal float64) (float64, error) {
	var err error
	_, rows := readTable("cut.csv", &err)
	if err != nil {
		return 0, err
	}
	column := ""
	for _, c := range cutColumns {
		if from, _ := strconv.ParseFloat(c, 64); nominal >= from && nominal < 2000 {
			column = c
		}
	}
	for _, r := range rows {
		if column != "" && r.cells["class"] == strconv.Itoa(class) && thickness > r.number("t_over") && thickness <= r.number("t_to") {
			if v := r.number(column); !math.IsNaN(v) {
				return v, err
			}
		}
	}
	return 0, fmt.Errorf("no limit is known for a size of %g mm cut in %g mm to class %d", nominal, thickness, class)
}

// perpendicularity holds offset and slope of the ranges 1 to 5, after ISO 9013, 2017
// (memory).
var perpendicularity = [][2]float64{{0.05, 0.003}, {0.15, 0.007}, {0.4, 0.01}, {0.8, 0.02}, {1.2, 0.035}}

// CutSlant is how far a cut face may be off square, u after ISO 9013, 2017, in mm (memory), for
// range 1 to 5 and the thickness in mm.
func CutSlant(quality int, thickness float64) (float64, error) {
	if quality < 1 || quality > len(perpendicularity) {
		return 0, fmt.Errorf("the ranges of a cut face are 1 to 5, not %d", quality)
	}
	var in inputs
	in.positive("the thickness", thickness, "mm")
	p := perpendicularity[quality-1]
	return p[0] + p[1]*thickness, in.err
}

// GeneralTolerance is how far a length without a tolerance may be off, plus and minus
// mm, after ISO 2768-1, 1989, in its class f, m, c or v (published; the edition, and c up
// to 6 mm, are memory).
func GeneralTolerance(class string, nominal float64) (float64, error) {
	var err error
	_, rows := readTable("general.csv", &err)
	for _, r := range rows {
		if _, known := r.cells[class]; !known || class == "over" || class == "to" {
			return 0, fmt.Errorf("general tolerances have the classes f, m, c and v, not %q", class)
		}
		if nominal > r.number("over") && nominal <= r.number("to") || nominal == 0.5 && r.number("over") == 0.5 {
			if v := r.number(class); !math.IsNaN(v) {
				return v, err
			}
		}
	}
	if err != nil {
		return 0, err
	}
	return 0, fmt.Errorf("no general tolerance is known for %g mm in class %s", nominal, class)
}
