package quantity

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The values are worked out by hand from the definitions of the units.
func TestParse(t *testing.T) {
	for _, c := range []struct {
		text  string
		value float64
		want  Dimension
	}{
		{"6 mm", 6, Length}, {"6mm", 6, Length}, {"  6   mm ", 6, Length}, {"6\tmm", 6, Length},
		{"+6 mm", 6, Length}, {"-6 mm", -6, Length}, {"0 mm", 0, Length}, {"-0 mm", 0, Length},
		{"6.50 mm", 6.5, Length}, {".5 in", 12.7, Length}, {"0.25 in", 6.35, Length},
		{"1/4 in", 6.35, Length}, {"1/4in", 6.35, Length}, {"-1/4 in", -6.35, Length}, {"11/4 in", 69.85, Length},
		{"5 1/4 in", 133.35, Length}, {"5-1/4 in", 133.35, Length}, {"5  1/4in", 133.35, Length}, {"-5 1/4 in", -133.35, Length},
		{"5 0/4 in", 127, Length}, {"1/64 in", 0.396875, Length}, {"2 inches", 50.8, Length}, {"1 Inch", 25.4, Length}, {"1 IN", 25.4, Length},
		{"34 ft", 10363.2, Length}, {"1 foot", 304.8, Length}, {"2 feet", 609.6, Length},
		{"1 m", 1000, Length}, {"2.5 cm", 25, Length}, {"6500 um", 6.5, Length}, {"50 µm", 0.05, Length}, {"50 μm", 0.05, Length},
		{"1e3 N", 1000, Force}, {"1E+3 N", 1000, Force}, {"2.5e-1 kN", 250, Force}, {"8.6 kN", 8600, Force},
		{"3150 lbf", 14011.898088070575, Force}, {"100 kgf", 980.665, Force}, {"2 kip", 8896.443230521, Force}, {"0.5 MN", 5e5, Force}, {"850 daN", 8500, Force},
		{"3 cm2", 300, Area}, {"3 mm²", 3, Area}, {"2 sq ft", 185806.08, Area}, {"2 ft2", 185806.08, Area}, {"1 sq  in", 645.16, Area}, {"1 m^2", 1e6, Area},
		{"2 L", 2e6, Volume}, {"2 l", 2e6, Volume}, {"2 Litres", 2e6, Volume}, {"310 ml", 310000, Volume}, {"310 mL", 310000, Volume},
		{"2.5 US gal", 9463529.46, Volume}, {"2.5 us gal", 9463529.46, Volume}, {"128 US fl oz", 3785411.784, Volume}, {"1 in3", 16387.064, Volume},
		{"205 MPa", 205, Stress}, {"205 N/mm2", 205, Stress}, {"205 N / mm²", 205, Stress}, {"193 GPa", 193000, Stress}, {"101 Pa", 101e-6, Stress},
		{"1 psi", 0.006894757293168361, Stress}, {"30 KSI", 206.84271879505084, Stress},
		{"25 N m", 25000, Moment}, {"25 Nm", 25000, Moment}, {"25 N·m", 25000, Moment}, {"25 N*m", 25000, Moment}, {"1.5 kNm", 1.5e6, Moment}, {"7 N mm", 7, Moment},
		{"1 lbf ft", 1355.8179483314004, Moment}, {"1 ft lbf", 1355.8179483314004, Moment}, {"12 in-lbf", 1355.8179483314004, Moment}, {"1 kgf m", 9806.65, Moment},
		{"5.4 t", 5400, Mass}, {"250 g", 0.25, Mass}, {"12000 lb", 5443.10844, Mass}, {"8 oz", 0.226796185, Mass},
		{"12 deg", 12, Angle}, {"12°", 12, Angle}, {"1 rad", 180 / math.Pi, Angle},
		{"10 years", 10, Time}, {"1 year", 1, Time}, {"6 months", 0.5, Time}, {"1461 days", 4, Time}, {"8766 hours", 1, Time}, {"525960 min", 1, Time}, {"1 s", 1.0 / 31557600, Time},
		{"0.25 V", 0.25, Potential}, {"-250 mV", -0.25, Potential},
		{"4 degC", 4, Temperature}, {"-5 °C", -5, Temperature}, {"32 degF", 0, Temperature}, {"50 degF", 10, Temperature}, {"-40 °F", -40, Temperature}, {"0 K", -273.15, Temperature},
		{"17 %", 0.17, Bare}, {"57%", 0.57, Bare}, {"3.2 percent", 0.032, Bare}, {"250 ppm", 0.00025, Bare}, {"0.17", 0.17, Bare}, {"1/2", 0.5, Bare},
		{"120 money", 120, Money},
		{"450 kg/m3", 450e-9, Density}, {"8 g/cm3", 8e-6, Density}, {"3.78 kg/m", 0.00378, MassPerLength}, {"240 cm4", 2.4e6, SecondMoment}, {"2 kN/m", 2, ForcePerLength},
		{"25 kn", 25 * Knot, Speed}, {"25 Knots", 25 * Knot, Speed}, {"3600 m/s", 3600 * MetrePerSecond, Speed}, {"0.1 mm/year", 0.1, Speed},
	} {
		q, err := Parse(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if q.Dimension != c.want || !about(q.Value, c.value) {
			t.Errorf("%q is %s, want %s", c.text, q, Quantity{c.value, c.want})
		}
		if as, err := ParseAs(c.text, c.want); err != nil || as != q {
			t.Errorf("%q as %s: %v, %v", c.text, c.want.Name(), as, err)
		}
	}
}

// about allows for the rounding of the one multiplication and the one division.
func about(got, want float64) bool { return math.Abs(got-want) <= 4e-16*math.Abs(want) }

// message is the error's text, or that there is none.
func message(err error) string {
	if err == nil {
		return "no error"
	}
	return err.Error()
}

const (
	lengths = ` (mm, cm, m, um, in, ft)`
	length  = `for example "6 mm" or "1/2 in"` + lengths
)

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		text          string
		want          Dimension
		why, expected string
	}{
		// No unit.
		{"12", Length, `12 has no unit`, `for example "12 mm" or "1/2 in"` + lengths},
		{"5 1/4", Length, `5 1/4 has no unit`, `for example "5 1/4 in" or "6 mm"` + lengths},
		{"12", Angle, `12 has no unit`, `for example "12 deg" (deg, rad)`},
		{"-300", Temperature, `-300 has no unit`, `for example "4 degC" or "40 degF" (degC, degF, K)`},
		// Units unknown or written otherwise.
		{"6 milimeters", Length, `milimeters is not a unit known here`, `"6 mm"`},
		{"6 millimetres", Length, `millimetres is not a unit known here`, `"6 mm"`},
		{"6 MM", Length, `MM is not a unit known here: capital letters matter`, `"6 mm"`},
		{"20 KN", Force, `KN is not a unit known here: capital letters matter`, `"20 kN"`},
		{"20 KN", Speed, `KN is not a unit known here: capital letters matter`, `"20 kn"`},
		{"6 mpa", Stress, `mpa is not a unit known here: capital letters matter`, `"6 MPa"`},
		{"20 nm", Moment, `nm is not a unit known here: capital letters matter`, `"20 N m"`},
		{"6 inchs", Length, `inchs is not a unit known here`, `"6 in"`},
		{"5 yeers", Time, `yeers is not a unit known here`, `"5 years"`},
		{`6"`, Length, `" is not a unit known here`, `"6 in"`},
		{`6'`, Length, `' is not a unit known here`, `"6 ft"`},
		{"6″", Length, `6″ holds ″, which is not among the plain signs`, `"6 in"`},
		{"20 pounds", Force, `pounds is not a unit known here: a pound may be a mass or a force`, `"20 lbf"`},
		{"20 pounds", Mass, `pounds is not a unit known here: a pound may be a mass or a force`, `"20 lb"`},
		{"20 ft-lb", Moment, `ft-lb is not a unit known here: a pound may be a mass or a force`, `"20 ft lbf"`},
		{"2 gal", Volume, `gal is not a unit known here: a gallon may be a US or an imperial one`, `"2 US gal"`},
		{"2 ton", Mass, `ton is not a unit known here: a ton may be metric, long or short`, `"2 t"`},
		{"40 F", Temperature, `F is not a unit known here`, `"40 degF"`},
		{"6 bananas", Length, `bananas is not a unit known here`, length},
		{"6 -mm", Length, `-mm is not a unit known here`, `"6 mm"`},
		{"5 - 6 mm", Length, `5 - 6 mm holds two numbers; several readings stand in a list`, length},
		{"5 mm-6 mm", Length, `5 mm-6 mm holds two numbers; several readings stand in a list`, length},
		{"6 mm x 4 mm", Length, `6 mm x 4 mm holds two numbers; several readings stand in a list`, length},
		{"6 in--lbf", Moment, `in--lbf is not a unit known here`, `"6 lbf in" or "6 in lbf"`},
		{"6 mm-", Length, `mm- is not a unit known here`, `"6 mm"`},
		{"6 bananas²", Length, `bananas² is not a unit known here`, length},
		{"12", Force.Times(Force), `12 has no unit`, ``},
		// Other dimensions.
		{"8 N", Length, `8 N is a force where a length belongs`, length},
		{"6 mm", Area, `6 mm is a length where an area belongs`, `for example "120 mm2" or "3.5 sq ft" (mm2, cm2, m2, in2, sq ft)`},
		{"20 lb", Force, `20 lb is a mass where a force belongs`, `"20 lbf"`},
		{"200 kg", Force, `200 kg is a mass where a force belongs`, `"200 kgf"`},
		{"20 kn", Force, `20 kn is a speed where a force belongs`, `"20 kN"`},
		{"5 m", Time, `5 m is a length where a time belongs`, `"5 months" or "5 minutes"`},
		{"40 °", Temperature, `40 ° is an angle where a temperature belongs`, `"40 degC" or "40 degF"`},
		{"12 mm", Bare, `12 mm is a length where a bare number belongs`, `for example "0.17" or "17 %" (%, ppm)`},
		{"17 %", Length, `17 % is a share where a length belongs`, length},
		{"120 EUR", Length, `120 EUR is money where a length belongs`, length},
		{"120 EUR", Money, `120 EUR names a currency where the plan's own is understood`, `"120 money"`},
		// Numbers that are none, or too large, too small, too cold.
		{"nan mm", Length, `nan mm is no finite number`, length},
		{".nan", Length, `.nan is no finite number`, length},
		{"-.inf", Bare, `-.inf is no finite number`, `for example "0.17" or "17 %" (%, ppm)`},
		{"+Inf mm", Length, `+Inf mm is no finite number`, length},
		{"1e400 mm", Length, `1e400 mm is too large to reckon with`, length},
		{"1e308 m", Length, `1e308 m is too large to reckon with`, length},
		{"1e-400 mm", Length, `1e-400 mm is too small to be told from zero`, length},
		{"1e-323 um", Length, `1e-323 um is too small to be told from zero`, length},
		{"-300 degC", Temperature, `-300 degC is colder than absolute zero`, `for example "4 degC" or "40 degF" (degC, degF, K)`},
		{"-1 K", Temperature, `-1 K is colder than absolute zero`, `for example "4 degC" or "40 degF" (degC, degF, K)`},
		{"1/0 in", Length, `1/0 in divides by zero`, length},
		{"5 1/0 in", Length, `5 1/0 in divides by zero`, length},
		{"1/ in", Length, `1/ in has a fraction without a number below the line`, length},
		{"5 5/4 in", Length, `5 5/4 in has a fraction that is not less than one behind a whole number`, length},
		{"5 4/4 in", Length, `5 4/4 in has a fraction that is not less than one behind a whole number`, length},
		{"1234567/2 in", Length, `1234567/2 in has a fraction with too many digits`, length},
		// Numbers that may mean more than one thing.
		{"0x10 mm", Length, `0x10 mm is a hexadecimal number`, length},
		{"1_000 mm", Length, `1_000 mm has an underscore in the number`, `"1000 mm"`},
		{"010 mm", Length, `010 mm begins a number with a zero, which some programs read as another number`, `"10 mm"`},
		{"05/016 in", Length, `05/016 in begins a number with a zero, which some programs read as another number`, `"5/16 in"`},
		{"5 01/4 in", Length, `5 01/4 in begins a number with a zero, which some programs read as another number`, `"5 1/4 in"`},
		{"05 1/4 in", Length, `05 1/4 in begins a number with a zero, which some programs read as another number`, `"5 1/4 in"`},
		{"1/04 in", Length, `1/04 in begins a number with a zero, which some programs read as another number`, `"1/4 in"`},
		{"05/16 in", Length, `05/16 in begins a number with a zero, which some programs read as another number`, `"5/16 in"`},
		{"00.05 mm", Length, `00.05 mm begins a number with a zero, which some programs read as another number`, `"0.05 mm"`},
		{"1,000 mm", Length, `1,000 mm has a comma in the number`, `"1000 mm" or "1.000 mm"`},
		{"6,5 mm", Length, `6,5 mm has a comma in the number`, `"6.5 mm"`},
		{"1.000,5 mm", Length, `1.000,5 mm has a comma in the number`, `"1000.5 mm"`},
		{"1,000.5 mm", Length, `1,000.5 mm has a comma in the number`, `"1000.5 mm"`},
		{"1,5.5 mm", Length, `1,5.5 mm has a comma in the number`, length},
		{"1.5,5 mm", Length, `1.5,5 mm has a comma in the number`, length},
		{"1,5.500 mm", Length, `1,5.500 mm has a comma in the number`, length},
		{"1.5,000 mm", Length, `1.5,000 mm has a comma in the number`, length},
		{"1,500.250.125 mm", Length, `1,500.250.125 mm has a comma in the number`, length},
		{"1,5,000 mm", Length, `1,5,000 mm has a comma in the number`, length},
		{"1,000,000 mm", Length, `1,000,000 mm has a comma in the number`, `"1000000 mm"`},
		{"1 000 mm", Length, `1 000 mm has a blank within the number`, `"1000 mm"`},
		{"1'000 mm", Length, `1'000 mm has an apostrophe in the number`, `"1000 mm"`},
		{"5-6 mm", Length, `5-6 mm holds two numbers; several readings stand in a list`, length},
		{"5 to 6 mm", Length, `5 to 6 mm holds two numbers; several readings stand in a list`, length},
		{"5..6 mm", Length, `5..6 mm holds two numbers; several readings stand in a list`, length},
		{"5 6 mm", Length, `5 6 mm holds two numbers; several readings stand in a list`, length},
		{"34 ft 6 in", Length, `34 ft 6 in holds feet and inches; one number has one unit`, `"414 in"`},
		{`34' 6 1/2"`, Length, `34' 6 1/2" holds feet and inches; one number has one unit`, `"414.5 in"`},
		{`5′3″`, Length, `5′3″ holds ′, which is not among the plain signs`, `"63 in"`},
		{`34'6`, Length, `34'6 holds feet and inches; one number has one unit`, `"414 in"`},
		{"5 ft 12 in", Length, `5 ft 12 in holds two numbers; several readings stand in a list`, length},
		{"-5 ft 3 in", Length, `-5 ft 3 in holds two numbers; several readings stand in a list`, length},
		{"5 m 3 in", Length, `5 m 3 in holds two numbers; several readings stand in a list`, length},
		{"1'50 mm", Length, `'50 mm is not a unit known here`, length},
		{"5 ft 13 in", Length, `5 ft 13 in holds two numbers; several readings stand in a list`, length},
		{"5 ft -3 in", Length, `5 ft -3 in holds two numbers; several readings stand in a list`, length},
		{`5'3"`, Length, `5'3" holds feet and inches; one number has one unit`, `"63 in"`},
		{"6 ±0.1 mm", Length, `6 ±0.1 mm holds two numbers; a tolerance has a place of its own`, length},
		{"1.2.3 mm", Length, `1.2.3 mm does not begin with one number`, length},
		{"5.5 1/4 in", Length, `5.5 1/4 in does not begin with one number`, length},
		{"5. mm", Length, `5. mm has a decimal point without digits behind it`, `"5 mm"`},
		{"5-mm", Length, `5-mm has a hyphen behind the number`, `"5 mm"`},
		{"- 5 mm", Length, `- 5 mm has a sign that does not stand right before a number`, `"-5 mm"`},
		{"--5 mm", Length, `--5 mm has a sign that does not stand right before a number`, length},
		{"about 6 mm", Length, `about 6 mm does not begin with a number`, `"6 mm"`},
		{"about .5 in", Length, `about .5 in does not begin with a number`, `".5 in"`},
		{"<-6 mm", Length, `<-6 mm does not begin with a number`, `"-6 mm"`},
		{"./6 mm", Length, `./6 mm does not begin with a number`, length},
		{"/4 in", Length, `/4 in does not begin with a number`, length},
		{"mm", Length, `mm does not begin with a number`, length},
		// Signs of word processors and other scripts.
		{"−5 mm", Length, `−5 mm holds −, which is not among the plain signs`, `"-5 mm"`},
		{"5½ in", Length, `5½ in holds ½, which is not among the plain signs`, `"5 1/2 in"`},
		{"-½ in", Length, `-½ in holds ½, which is not among the plain signs`, `"-1/2 in"`},
		{"5\u00a0mm", Length, "5\u00a0mm holds a blank that is not the plain one", `"5 mm"`},
		{"5 mm\u3000", Length, "5 mm\u3000 holds a blank that is not the plain one", `"5 mm"`},
		{"٦ mm", Length, `٦ mm holds digits other than 0 to 9`, length},
		{"６ mm", Length, `６ mm holds digits other than 0 to 9`, length},
		{"6 mm\n", Length, `"6 mm\n" holds a line break or another character that can't be seen`, length},
		{"6 \x00mm", Length, `"6 \x00mm" holds a line break or another character that can't be seen`, length},
		{"\xff6 mm", Length, `"\xff6 mm" holds a line break or another character that can't be seen`, length},
		// Nothing, and too much.
		{"", Length, `nothing is written where a quantity belongs`, length},
		{" \t", Length, `nothing is written where a quantity belongs`, length},
		{strings.Repeat("9", 65), Length, strings.Repeat("9", 64) + `… is longer than 64 characters`, length},
	} {
		_, err := ParseAs(c.text, c.want)
		var bad *BadQuantity
		if !errors.As(err, &bad) {
			t.Errorf("%q as %s: %s", c.text, c.want.Name(), message(err))
			continue
		}
		if bad.Why != c.why || bad.Expected != c.expected {
			t.Errorf("%q as %s:\n got %s | %s\nwant %s | %s", c.text, c.want.Name(), bad.Why, bad.Expected, c.why, c.expected)
		}
	}
}

func TestRefusalsOfAnyDimension(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"6 xyzzy", `xyzzy is not a unit known here; write a number and its unit, for example "6 mm", "1/2 in" or "8.6 kN"`},
		{"5 mm5", `mm5 is not a unit known here; write "5 mm", "5 mm2" or "5 mm3"`},
		{"20 KN", `KN is not a unit known here: capital letters matter; write "20 kN" or "20 kn"`},
		{"500 EUR", `500 EUR names a currency where the plan's own is understood; write "500 money"`},
		{"", `nothing is written where a quantity belongs; write a number and its unit, for example "6 mm", "1/2 in" or "8.6 kN"`},
	} {
		_, err := Parse(c.text)
		if got := message(err); got != c.want {
			t.Errorf("%q: %s\nwant %s", c.text, got, c.want)
		}
	}
}

// A text of 64 characters may be more bytes than that.
func TestLongestText(t *testing.T) {
	text := "12" + strings.Repeat(" ", longest-3) + "°"
	if q, err := Parse(text); err != nil || q != (Quantity{12, Angle}) {
		t.Errorf("%v, %v", q, err)
	}
	if q, err := Parse("  " + text + " "); err != nil || q != (Quantity{12, Angle}) {
		t.Errorf("with blanks around it: %v, %v", q, err)
	}
	if _, err := Parse("1" + text); err == nil {
		t.Error("65 characters are taken")
	}
}

// A message shows as many characters as a quantity may have, however many bytes
// they are, and marks what can't be seen.
func TestShown(t *testing.T) {
	long := strings.Repeat("é", longest)
	for text, want := range map[string]string{long: long, long + "é": long + "…", "6\tmm": `"6\tmm"`, "\xff": `"\xff"`} {
		if got := shown(text); got != want {
			t.Errorf("%q is shown as %q", text, got)
		}
	}
}

// What a message advises must be taken when it is written.
func TestAdviceIsSound(t *testing.T) {
	texts := []string{"12", "1/4", "6 MM", "6 millimeters", "20 lb", "6,5 mm", "1,000 mm", "010 mm", "5½ in", "20 pounds", "40 F", "1 000 kg", "about 6 mm", "5. N", "x"}
	for _, text := range texts {
		for _, want := range Named() {
			_, err := ParseAs(text, want)
			var bad *BadQuantity
			if err == nil {
				continue
			}
			if !errors.As(err, &bad) || bad.Expected == "" {
				t.Fatalf("%q as %s: %v", text, want.Name(), err)
			}
			parts := strings.Split(bad.Expected, `"`)
			if len(parts) < 3 {
				t.Errorf("%q as %s advises nothing: %s", text, want.Name(), bad.Expected)
			}
			for i := 1; i < len(parts); i += 2 {
				if _, err := ParseAs(parts[i], want); err != nil {
					t.Errorf("%q as %s advises %q: %v", text, want.Name(), parts[i], err)
				}
			}
		}
	}
}

// anyQuantity draws a finite quantity of a dimension with a name.
func anyQuantity() *rapid.Generator[Quantity] {
	return rapid.Custom(func(t *rapid.T) Quantity {
		d := rapid.SampledFrom(Named()).Draw(t, "dimension")
		least := -math.MaxFloat64
		if d == Temperature {
			least = -273.15
		}
		return Quantity{rapid.Float64Range(least, math.MaxFloat64).Draw(t, "value"), d}
	})
}

func TestStringReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := anyQuantity().Draw(t, "q")
		back, err := Parse(q.String())
		if err != nil || back != q {
			t.Fatalf("%v printed %q, which reads as %v, %v", q.Value, q, back, err)
		}
	})
}

func TestString(t *testing.T) {
	for _, c := range []struct {
		q    Quantity
		want string
	}{
		{Quantity{6, Length}, "6 mm"},
		{Quantity{8600, Force}, "8600 N"},
		{Quantity{1.5e6, Moment}, "1500000 N mm"},
		{Quantity{0.17, Bare}, "0.17"},
		{Quantity{math.Copysign(0, -1), Length}, "0 mm"},
		{Quantity{4.5e-7, Density}, "4.5e-07 kg/mm3"},
		{Quantity{1e21, Force}, "1e+21 N"},
		{Quantity{0.30000000000000004, Length}, "0.30000000000000004 mm"},
		{Quantity{3, Force.Times(Force)}, "3 N^2"},
		{Quantity{math.NaN(), Length}, "unknown"},
		{Quantity{math.Inf(-1), Length}, "unknown"},
	} {
		if got := c.q.String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// Nought has no sign, however it was written.
func TestNoughtHasNoSign(t *testing.T) {
	for _, text := range []string{"-0 mm", "-0.0 N", "-0/4 in", "-0", "-0 %"} {
		if q, err := Parse(text); err != nil || q.Value != 0 || math.Signbit(q.Value) {
			t.Errorf("%q is %v, %v", text, q.Value, err)
		}
	}
}

func TestIn(t *testing.T) {
	for _, c := range []struct {
		q    Quantity
		unit string
		want float64
	}{
		{Quantity{25.4, Length}, "in", 1}, {Quantity{8600, Force}, "kN", 8.6}, {Quantity{10, Temperature}, "degF", 50}, {Quantity{0.17, Bare}, "%", 17},
	} {
		if got, err := c.q.In(c.unit); err != nil || !about(got, c.want) {
			t.Errorf("%s in %s is %v, %v", c.q, c.unit, got, err)
		}
	}
	if _, err := (Quantity{1, Length}).In("kN"); message(err) != "kN is a unit of force, not of length" {
		t.Error(err)
	}
	if _, err := (Quantity{1, Length}).In("MM"); message(err) != `"MM" is not a unit known here` {
		t.Error(err)
	}
}

// The way of a sound quantity costs no memory.
func TestParseAllocatesNothing(t *testing.T) {
	for _, text := range []string{"6 mm", "5 1/4 in", "8.6 kN", "2.5 US gal", "17 %", "-40 degF"} {
		if n := testing.AllocsPerRun(100, func() { sink, _ = Parse(text) }); n != 0 {
			t.Errorf("%q: %v allocations", text, n)
		}
	}
}

func TestSpellingsAreTaken(t *testing.T) {
	for _, d := range Named() {
		if Example(d) == "" {
			t.Errorf("there is no example of a %s", d.Name())
		}
		for _, text := range examples[d] {
			if _, err := ParseAs(text, d); err != nil {
				t.Errorf("the example %q: %v", text, err)
			}
		}
		for _, s := range Spellings(d) {
			if _, err := ParseAs("3 "+s, d); err != nil {
				t.Errorf("the spelling %q: %v", s, err)
			}
		}
		if unit := d.Unit(); unit != "" && !slices.Contains(Spellings(d), unit) && spelled[unit] == nil {
			t.Errorf("the canonical unit %q can't be written", unit)
		}
	}
}
