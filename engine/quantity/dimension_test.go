package quantity

import (
	"testing"

	"pgregory.net/rapid"
)

// anyDimension draws a dimension with small powers, as products of a few facts have.
func anyDimension() *rapid.Generator[Dimension] {
	return rapid.Custom(func(t *rapid.T) Dimension {
		power := rapid.Int8Range(-3, 3)
		return Dimension{
			power.Draw(t, "length"), power.Draw(t, "force"), power.Draw(t, "time"), power.Draw(t, "mass"),
			power.Draw(t, "angle"), power.Draw(t, "potential"), power.Draw(t, "temperature"), power.Draw(t, "money"),
		}
	})
}

func TestDimensionsOfTheTrade(t *testing.T) {
	for _, c := range []struct {
		what      string
		got, want Dimension
	}{
		{"force over area", Force.Over(Area), Stress},
		{"stress times area", Stress.Times(Area), Force},
		{"force times length", Force.Times(Length), Moment},
		{"moment over section modulus", Moment.Over(Volume), Stress},
		{"length cubed", Length.Power(3), Volume},
		{"length to the fourth", Area.Power(2), SecondMoment},
		{"density times volume", Density.Times(Volume), Mass},
		{"speed times time", Speed.Times(Time), Length},
		{"force per length times length", ForcePerLength.Times(Length), Force},
		{"mass per length times length", MassPerLength.Times(Length), Mass},
		{"a share of a force", Bare.Times(Force), Force},
		{"force over force", Force.Over(Force), Bare},
		{"anything to the nought", Stress.Power(0), Bare},
		{"one over a length", Length.Power(-1), Bare.Over(Length)},
	} {
		if c.got != c.want {
			t.Errorf("%s is %s, want %s", c.what, c.got.Name(), c.want.Name())
		}
	}
}

func TestDimensionAlgebra(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := anyDimension().Draw(t, "a"), anyDimension().Draw(t, "b"), anyDimension().Draw(t, "c")
		n := rapid.IntRange(-4, 4).Draw(t, "n")
		switch {
		case a.Times(b) != b.Times(a):
			t.Fatal("a b is not b a")
		case a.Times(b).Times(c) != a.Times(b.Times(c)):
			t.Fatal("(a b) c is not a (b c)")
		case a.Times(b).Over(b) != a:
			t.Fatal("a b / b is not a")
		case a.Over(b) != Bare.Over(b.Over(a)):
			t.Fatal("a / b is not 1 / (b / a)")
		case a.Power(n).Times(a) != a.Power(n+1):
			t.Fatal("a^n a is not a^(n+1)")
		case a.Times(b).Power(n) != a.Power(n).Times(b.Power(n)):
			t.Fatal("(a b)^n is not a^n b^n")
		}
	})
}

// A power too large to hold must not wrap round to a small one: length to the
// 256th is no bare number.
func TestPowersOutOfRange(t *testing.T) {
	for _, n := range []int{128, -128, 255, 256, 257, 512, -256, 1 << 40, -1 << 62} {
		d := Length.Power(n)
		if d.InRange() || d == Bare {
			t.Errorf("length^%d is taken for %s", n, d.Name())
		}
		for _, m := range []int{-100, 100} {
			if back := d.Times(Length.Power(m)); back.InRange() {
				t.Errorf("length^%d length^%d came back as %s", n, m, back.Name())
			}
		}
		if d.Power(0).InRange() || Bare.Over(d).InRange() {
			t.Errorf("length^%d came back by a power or a quotient", n)
		}
	}
	if d := Length.Power(127); !d.InRange() || d.Unit() != "mm^127" {
		t.Errorf("length^127 is %s", d.Name())
	}
	if got, want := Length.Power(200).Name(), "quantity in mm^(out of range)"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestDimensionOf(t *testing.T) {
	for _, d := range Named() {
		back, ok := DimensionOf(d.Unit())
		if !ok || back != d {
			t.Errorf("%s: %q came back as %s, %v", d.Name(), d.Unit(), back.Name(), ok)
		}
	}
	for _, text := range []string{"in", "kN", "MM", "N/mm2", "N mm^-1", "mm^1", "kg/m3", " mm", "years", "nonsense"} {
		if d, ok := DimensionOf(text); ok {
			t.Errorf("%q is taken for the canonical unit of %s", text, d.Name())
		}
	}
}

// The name and the unit of a dimension tell it from every other, with a name of
// its own or not; only those with one are found by their unit.
func TestUnitsTellDimensionsApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyDimension().Draw(t, "a"), anyDimension().Draw(t, "b")
		if (a == b) != (a.Unit() == b.Unit()) || (a == b) != (a.Name() == b.Name()) {
			t.Fatalf("%q and %q", a.Unit(), b.Unit())
		}
		if d, ok := DimensionOf(a.Unit()); ok && d != a {
			t.Fatalf("%q is %q", a.Unit(), d.Unit())
		}
	})
}

func TestUnnamedDimension(t *testing.T) {
	d := Force.Times(Force).Over(Length)
	if got, want := d.Unit(), "N^2 mm^-1"; got != want {
		t.Errorf("unit %q, want %q", got, want)
	}
	if got, want := d.Name(), "quantity in N^2 mm^-1"; got != want {
		t.Errorf("name %q, want %q", got, want)
	}
	if s, e := Spellings(d), Example(d); s != nil || e != "" {
		t.Errorf("spellings %q, example %q", s, e)
	}
	_, err := ParseAs("8 N", d)
	if got, want := message(err), "8 N is a force where a quantity in N^2 mm^-1 belongs"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
