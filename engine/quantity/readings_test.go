package quantity

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestReadings(t *testing.T) {
	r, err := ParseReadings([]string{"6.1 mm", "0.25 in", "6.05 mm", "5.9 mm"}, Length)
	if err != nil {
		t.Fatal(err)
	}
	s, sok := r.StandardDeviation()
	u, uok := r.StandardUncertainty()
	// By hand: mean 24.4/4; squares 0, 0.0625, 0.0025, 0.04 sum to 0.105; s = sqrt(0.105/3).
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"mean", r.Mean(), 6.1}, {"spread", r.Spread(), 0.45}, {"min", r.Min(), 5.9}, {"max", r.Max(), 6.35},
		{"standard deviation", s, 0.18708286933869706}, {"standard uncertainty", u, 0.09354143466934853},
	} {
		if math.Abs(c.got-c.want) > 1e-14 {
			t.Errorf("%s %v, want %v", c.what, c.got, c.want)
		}
	}
	if r.N() != 4 || r.Dimension() != Length || !sok || !uok {
		t.Errorf("%d readings of %s, %v, %v", r.N(), r.Dimension().Name(), sok, uok)
	}
	r.Values()[0] = 99
	if r.Values()[0] != 6.1 {
		t.Error("the readings can be changed from outside")
	}
}

func TestOneReadingTellsNoScatter(t *testing.T) {
	r, err := NewReadings(Length, 6)
	if err != nil {
		t.Fatal(err)
	}
	s, sok := r.StandardDeviation()
	u, uok := r.StandardUncertainty()
	if sok || uok || !math.IsNaN(s) || !math.IsNaN(u) {
		t.Errorf("%v, %v and %v, %v", s, sok, u, uok)
	}
	if r.Mean() != 6 || r.Spread() != 0 {
		t.Errorf("mean %v, spread %v", r.Mean(), r.Spread())
	}
}

func TestEqualReadingsDoNotScatter(t *testing.T) {
	r, err := NewReadings(Length, 6.1, 6.1, 6.1)
	if err != nil {
		t.Fatal(err)
	}
	s, sok := r.StandardDeviation()
	u, uok := r.StandardUncertainty()
	if r.Mean() != 6.1 || s != 0 || u != 0 || !sok || !uok {
		t.Errorf("mean %v, deviation %v, uncertainty %v", r.Mean(), s, u)
	}
}

// Among the smallest numbers there are, rounding alone would lift the mean above
// the largest reading.
func TestMeanOfTheSmallestNumbers(t *testing.T) {
	four := 4 * math.SmallestNonzeroFloat64
	r, err := NewReadings(Length, 0, four, four, four, four, four)
	if err != nil {
		t.Fatal(err)
	}
	if r.Mean() > four {
		t.Errorf("mean %v of readings up to %v", r.Mean(), four)
	}
}

func TestBadReadings(t *testing.T) {
	for _, c := range []struct {
		texts []string
		want  string
	}{
		{nil, "there are no readings in the list; write one at least"},
		{[]string{"6 mm", "6.2"}, `reading 2 of 2: 6.2 has no unit; write ` + `for example "6.2 mm" or "1/2 in" (mm, cm, m, um, in, ft)`},
		{[]string{"8 N"}, "reading 1 of 1: 8 N is a force where a length belongs; write " + length},
		{[]string{"1e308 mm", "-1e308 mm"}, "the readings are too far apart to reckon with"},
	} {
		_, err := ParseReadings(c.texts, Length)
		if got := message(err); got != c.want {
			t.Errorf("%q: %s\nwant %s", c.texts, got, c.want)
		}
	}
	_, err := ParseReadings([]string{"6"}, Length)
	var bad *BadQuantity
	if !errors.As(err, &bad) || bad.Text != "6" {
		t.Errorf("%v does not wrap the refusal", err)
	}
	if _, err := NewReadings(Length, 6, math.NaN()); message(err) != "reading 2 of 2 is no finite number" {
		t.Error(err)
	}
	var none Readings
	if !math.IsNaN(none.Mean()) || !math.IsNaN(none.Spread()) {
		t.Errorf("no readings have mean %v and spread %v", none.Mean(), none.Spread())
	}
}

// Statistics lie where they must, however large the readings are, and move with
// them.
func TestReadingsKeepTheirBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.SampledFrom([]float64{1, 1e-300, 1e300, 8e307}).Draw(t, "size")
		values := rapid.SliceOfN(rapid.Float64Range(-1, 1), 1, 20).Draw(t, "values")
		for i := range values {
			values[i] *= size
		}
		r, err := NewReadings(Length, values...)
		if err != nil {
			t.Fatal(err)
		}
		if m := r.Mean(); !(r.Min() <= m && m <= r.Max()) {
			t.Fatalf("mean %v of %v to %v", m, r.Min(), r.Max())
		}
		s, ok := r.StandardDeviation()
		if ok != (len(values) > 1) || ok && !(0 <= s && s <= r.Spread()) {
			t.Fatalf("standard deviation %v, %v of spread %v", s, ok, r.Spread())
		}
		if u, ok := r.StandardUncertainty(); ok && u > s {
			t.Fatalf("standard uncertainty %v above deviation %v", u, s)
		}
	})
}
