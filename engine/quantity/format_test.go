package quantity

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		value      float64
		d          Dimension
		metric, us string
	}{
		{6, Length, "6 mm", "0.236 in"},
		{6.35, Length, "6.35 mm", "0.25 in"},
		{133.35, Length, "133 mm", "5.25 in"},
		{1234, Length, "1234 mm", "48.6 in"},
		{10363.2, Length, "10.4 m", "34 ft"},
		{9999.96, Length, "10 m", "32.8 ft"},
		{3047.9, Length, "3048 mm", "10 ft"},
		{-6.35, Length, "-6.35 mm", "-0.25 in"},
		{0, Length, "0 mm", "0 in"},
		{math.Copysign(0, -1), Force, "0 N", "0 lbf"},
		{0.05, Length, "0.05 mm", "0.00197 in"},
		{190, Area, "190 mm2", "0.295 in2"},
		{2e6, Area, "2 m2", "21.5 sq ft"},
		{310000, Volume, "310 ml", "10.5 US fl oz"},
		{9463529.46, Volume, "9.46 L", "2.5 US gal"},
		{950, Force, "950 N", "214 lbf"},
		{999.6, Force, "1 kN", "225 lbf"},
		{1000, Force, "1 kN", "225 lbf"},
		{8600, Force, "8.6 kN", "1933 lbf"},
		{-8600, Force, "-8.6 kN", "-1933 lbf"},
		{71100, Force, "71.1 kN", "15980 lbf"},
		{205, Stress, "205 MPa", "29.7 ksi"},
		{193000, Stress, "193 GPa", "27990 ksi"},
		{101e-6, Stress, "101 Pa", "0.0146 psi"},
		{25000, Moment, "25 N m", "18.4 lbf ft"},
		{1.444e6, Moment, "1.44 kN m", "1065 lbf ft"},
		{500, Moment, "500 N mm", "4.43 lbf in"},
		{5400, Mass, "5400 kg", "11900 lb"},
		{0.25, Mass, "250 g", "8.82 oz"},
		{12.34, Angle, "12.3 deg", "12.3 deg"},
		{90, Angle, "90 deg", "90 deg"},
		{-0.04, Angle, "0 deg", "0 deg"},
		{3.5, Time, "3.5 years", "3.5 years"},
		{1, Time, "1 year", "1 year"},
		{0.5, Time, "6 months", "6 months"},
		{11.96 / 12, Time, "12 months", "12 months"},
		{14 * Day, Time, "14 days", "14 days"},
		{3600 * Second, Time, "1 hour", "1 hour"},
		{0, Time, "0 years", "0 years"},
		{0.25, Potential, "250 mV", "250 mV"},
		{1.2, Potential, "1.2 V", "1.2 V"},
		{4.444444, Temperature, "4.4 degC", "40 degF"},
		{0, Temperature, "0 degC", "32 degF"},
		{1.4286, Bare, "1.43", "1.43"},
		{2, Bare, "2", "2"},
		{0.17, Bare, "0.17", "0.17"},
		{1.2345e-6, Bare, "1.23e-6", "1.23e-6"},
		{1234567890, Bare, "1.235e9", "1.235e9"},
		{0, Bare, "0", "0"},
		{1250.5, Money, "1250.50 money", "1250.50 money"},
		{1250, Money, "1250 money", "1250 money"},
		{450e-9, Density, "450 kg/m3", "28.1 lb/ft3"},
		{0.00378, MassPerLength, "3.78 kg/m", "2.54 lb/ft"},
		{2.4e6, SecondMoment, "240 cm4", "5.77 in4"},
		{12, ForcePerLength, "12 N/mm", "68.5 lbf/in"},
		{25 * Knot, Speed, "25 kn", "25 kn"},
		{0.1, Speed, "0.1 mm/year", "0.00394 in/year"},
		{0, Speed, "0 kn", "0 kn"},
		{3, Force.Times(Force), "3 N^2", "3 N^2"},
		{math.NaN(), Length, "unknown", "unknown"},
		{math.Inf(1), Bare, "unknown", "unknown"},
		{math.MaxFloat64, Density, "1.7976931348623157e308 kg/mm3", "1.7976931348623157e308 kg/mm3"},
	} {
		if got := Format(c.value, c.d, Metric); got != c.metric {
			t.Errorf("%v %s is %q, want %q", c.value, c.d.Unit(), got, c.metric)
		}
		if got := Format(c.value, c.d, US); got != c.us {
			t.Errorf("%v %s is %q, want %q", c.value, c.d.Unit(), got, c.us)
		}
	}
}

// What is printed can be read again and is the value, to the figures that stand
// there: three of them, a tenth of a degree, a hundredth of money.
func TestFormatReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := Quantity{
			rapid.Float64Range(-1e9, 1e9).Draw(t, "value") * math.Pow(10, float64(rapid.IntRange(-12, 3).Draw(t, "power"))),
			rapid.SampledFrom(Named()).Draw(t, "dimension"),
		}
		if q.Dimension == Temperature && q.Value < absoluteZero {
			t.Skip("colder than cold")
		}
		s := rapid.SampledFrom([]System{Metric, US}).Draw(t, "system")
		text := Format(q.Value, q.Dimension, s)
		back, err := ParseAs(text, q.Dimension)
		if err != nil {
			t.Fatalf("%s printed %q: %v", q, text, err)
		}
		slack := 0.00501 * math.Abs(q.Value)
		switch q.Dimension {
		case Angle, Temperature:
			slack = 0.0501
		case Money:
			slack = 0.00501
		}
		if math.Abs(back.Value-q.Value) > slack {
			t.Fatalf("%s printed %q, which is %s", q, text, back)
		}
	})
}

func TestScalesAreSound(t *testing.T) {
	for s, scales := range scales {
		for d, sc := range scales {
			if u := spelled[sc.nought]; u == nil || u.dimension != d {
				t.Errorf("%s: nought %s is printed in %q", System(s), d.Name(), sc.nought)
			}
			for i, step := range sc.steps {
				u := spelled[step.unit]
				if u == nil || u.dimension != d || (step.below == 0) != (i == len(sc.steps)-1) {
					t.Errorf("%s: step %q of %s", System(s), step.unit, d.Name())
				}
			}
		}
	}
	for _, d := range Named() {
		if _, ok := scales[Metric][d]; !ok && d != Bare && d != Money {
			t.Errorf("there is no scale for %s", d.Name())
		}
	}
}

func TestSystems(t *testing.T) {
	for _, s := range []System{Metric, US} {
		if back, err := ParseSystem(s.String()); err != nil || back != s {
			t.Errorf("%s came back as %s, %v", s, back, err)
		}
	}
	for text, want := range map[string]System{"Metric": Metric, "us": US, " US ": US} {
		if got, err := ParseSystem(text); err != nil || got != want {
			t.Errorf("%q is %s, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "imperial", "SI"} {
		if _, err := ParseSystem(text); err == nil {
			t.Errorf("%q is taken", text)
		}
	}
	if _, err := ParseSystem("imperial"); message(err) != `"imperial" is no system of units; write "metric" or "US"` {
		t.Error(err)
	}
}
