package quantity_test

import (
	"fmt"
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"chainwale/engine/quantity"
	"chainwale/testdata/outside/tool"
)

// elsewhere is what GNU units calls each unit of ours, by the first spelling. A
// %s stands for the reading where the unit has a zero of its own. Its year is the
// tropical one unless it is asked for the Julian.
var elsewhere = map[string]string{
	"%": "percent", "ppm": "ppm",
	"mm": "mm", "cm": "cm", "m": "m", "um": "micron", "in": "inch", "ft": "foot",
	"mm2": "mm^2", "cm2": "cm^2", "m2": "m^2", "in2": "inch^2", "sq ft": "foot^2",
	"L": "liter", "ml": "milliliter", "mm3": "mm^3", "cm3": "cc", "m3": "m^3", "US gal": "usgallon", "US fl oz": "usfloz", "in3": "inch^3", "cu ft": "foot^3",
	"kN": "kilonewton", "N": "newton", "daN": "dekanewton", "MN": "meganewton", "kgf": "kgf", "lbf": "lbf", "kip": "kip",
	"MPa": "megapascal", "N/mm2": "newton/mm^2", "GPa": "gigapascal", "kN/mm2": "kilonewton/mm^2", "kPa": "kilopascal", "Pa": "pascal", "psi": "psi", "ksi": "ksi",
	"N m": "newton meter", "N mm": "newton mm", "kN m": "kilonewton meter", "kgf m": "kgf meter", "lbf ft": "lbf foot", "lbf in": "lbf inch",
	"kg": "kilogram", "g": "gram", "t": "tonne", "lb": "pound", "oz": "ounce",
	"deg": "degree", "rad": "radian",
	"years": "julianyear", "months": "julianyear/12", "weeks": "week", "days": "day", "hours": "hour", "minutes": "minute", "s": "second",
	"V": "volt", "mV": "millivolt",
	"degC": "tempC(%s)", "degF": "tempF(%s)", "K": "tempK(%s)",
	"N/mm": "newton/mm", "kN/m": "kilonewton/meter", "N/m": "newton/meter", "lbf/in": "lbf/inch", "lbf/ft": "lbf/foot",
	"cm4": "cm^4", "mm4": "mm^4", "in4": "inch^4",
	"kg/m3": "kilogram/m^3", "g/cm3": "gram/cm^3", "kg/mm3": "kilogram/mm^3", "lb/ft3": "pound/foot^3", "lb/in3": "pound/inch^3",
	"kg/m": "kilogram/meter", "g/m": "gram/meter", "kg/mm": "kilogram/mm", "lb/ft": "pound/foot",
	"kn": "knot", "m/s": "meter/second", "mph": "mph", "mm/year": "mm/julianyear", "in/year": "inch/julianyear",
}

// canonical is the canonical unit of each dimension there.
var canonical = map[quantity.Dimension]string{
	quantity.Bare: "1", quantity.Length: "mm", quantity.Area: "mm^2", quantity.Volume: "mm^3", quantity.Force: "newton",
	quantity.Stress: "newton/mm^2", quantity.Moment: "newton mm", quantity.Mass: "kilogram", quantity.Angle: "degree",
	quantity.Time: "julianyear", quantity.Potential: "volt", quantity.Temperature: "tempC", quantity.ForcePerLength: "newton/mm",
	quantity.SecondMoment: "mm^4", quantity.Density: "kilogram/mm^3", quantity.MassPerLength: "kilogram/mm", quantity.Speed: "mm/julianyear",
}

// readings are numbers as a plan writes them and as GNU units does, to which
// 5 1/4 is a product and 1/4 in one over four inches.
var readings = []struct{ ours, theirs string }{
	{"1", "1"}, {"0.25", "0.25"}, {"17", "17"}, {"1234.5", "1234.5"}, {"0.001", "0.001"}, {"6.02e5", "6.02e5"}, {"1e-7", "1e-7"},
	{"-3.7", "(-3.7)"}, {"1/4", "(1|4)"}, {"5/16", "(5|16)"}, {"5 1/4", "(5+1|4)"}, {"12-63/64", "(12+63|64)"}, {"-2 1/3", "(-(2+1|3))"},
}

// conversion is one question to GNU units and our answer.
type conversion struct {
	text       string
	have, want string
	ours       quantity.Quantity
}

// TestAgainstGNUUnits compares every unit of the table, at many readings, with
// the conversions of GNU units. Money has no counterpart there.
func TestAgainstGNUUnits(t *testing.T) {
	program := tool.Need(t, "units")
	asked := conversions(t)
	var questions strings.Builder
	for _, c := range asked {
		fmt.Fprintf(&questions, "%s\n%s\n", c.have, c.want)
	}
	cmd := exec.Command(program, "--terse", "--output-format", "%.17g")
	cmd.Env = []string{"LC_ALL=C.UTF-8", "HOME=/nonexistent"}
	cmd.Stdin = strings.NewReader(questions.String())
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	answers := strings.Split(strings.TrimSpace(string(out)), "\n")
	if len(answers) != len(asked) {
		t.Fatalf("%d answers to %d questions: %.200s", len(answers), len(asked), out)
	}
	worst := 0.0
	for i, c := range asked {
		worst = max(worst, compare(t, c, answers[i]))
	}
	t.Logf("%d conversions of %d units; the largest difference is %.1e of the value", len(asked), len(elsewhere), worst)
}

// conversions lists what to ask: every unit of the table at every reading that
// it can have.
func conversions(t *testing.T) []conversion {
	var asked []conversion
	for _, row := range quantity.Rows() {
		if row.Dimension == quantity.Money {
			continue
		}
		there, ok := elsewhere[row.Name]
		if !ok {
			t.Fatalf("nobody has said what GNU units calls %s", row.Name)
		}
		for _, r := range readings {
			text := r.ours + " " + row.Name
			q, err := quantity.Parse(text)
			if err != nil && row.Name == "K" && strings.HasPrefix(r.ours, "-") {
				continue // Colder than absolute zero.
			}
			if err != nil {
				t.Fatal(err)
			}
			have := r.theirs + " (" + there + ")"
			if strings.Contains(there, "%s") {
				have = fmt.Sprintf(there, r.theirs)
			}
			asked = append(asked, conversion{text, have, canonical[row.Dimension], q})
		}
	}
	return asked
}

// compare gives the difference as a share of the value. Temperatures are compared
// as shares of the absolute temperature, on which both sides round.
func compare(t *testing.T, c conversion, answer string) float64 {
	t.Helper()
	theirs, err := strconv.ParseFloat(answer, 64)
	if err != nil {
		t.Fatalf("%s: GNU units says %q to %s", c.text, answer, c.have)
	}
	size := math.Abs(theirs)
	if c.ours.Dimension == quantity.Temperature {
		size += 273.15
	}
	difference := math.Abs(c.ours.Value-theirs) / size
	if !(difference <= 4e-15) {
		t.Errorf("%s is %v, GNU units says %v", c.text, c.ours, theirs)
	}
	return difference
}
