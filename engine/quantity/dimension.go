// Package quantity reads, prints and combines numbers that carry units.
//
// Inside the program every number is a float64 in a canonical unit: mm, N, MPa,
// N mm, V, kg, deg, degC, year; shares and ratios are bare numbers. The
// canonical units fit each other without factors (1 MPa = 1 N/mm2), so formulas
// need no conversions. The price is that a density counts in kg/mm3 and a speed
// in mm/year; KilogramPerCubicMetre, MetrePerSecond and the like say how much of
// the canonical unit the usual one is, and people never see the odd ones, since
// Format prints kg/m3 and kn.
package quantity

import (
	"fmt"
	"math"
	"strings"
)

// Dimension is the product of powers of the base measures. The zero value is a
// bare number. Force is a base measure here and mass another: the trade weighs
// in kg and pulls in kN, and the program never turns one into the other unseen.
type Dimension struct {
	Length, Force, Time, Mass, Angle, Potential, Temperature, Money int8
}

// The dimensions the trade uses.
var (
	Bare        = Dimension{}
	Length      = Dimension{Length: 1}
	Area        = Dimension{Length: 2}
	Volume      = Dimension{Length: 3}
	Force       = Dimension{Force: 1}
	Stress      = Dimension{Force: 1, Length: -2}
	Moment      = Dimension{Force: 1, Length: 1}
	Mass        = Dimension{Mass: 1}
	Angle       = Dimension{Angle: 1}
	Time        = Dimension{Time: 1}
	Potential   = Dimension{Potential: 1}
	Temperature = Dimension{Temperature: 1}
	Money       = Dimension{Money: 1}

	ForcePerLength = Dimension{Force: 1, Length: -1}
	SecondMoment   = Dimension{Length: 4}
	Density        = Dimension{Mass: 1, Length: -3}
	MassPerLength  = Dimension{Mass: 1, Length: -1}
	// Speed is that of the wind as well as of corrosion: mm/year.
	Speed = Dimension{Length: 1, Time: -1}
)

// beyond stands for a power that an int8 can't hold. It stays what it is through
// any further product, so that no power ever wraps round to one that fits.
const beyond = math.MinInt8

// base names the canonical unit of each base measure, in the order they print.
var base = []struct {
	unit  string
	power func(*Dimension) *int8
}{
	{"N", func(d *Dimension) *int8 { return &d.Force }},
	{"mm", func(d *Dimension) *int8 { return &d.Length }},
	{"kg", func(d *Dimension) *int8 { return &d.Mass }},
	{"year", func(d *Dimension) *int8 { return &d.Time }},
	{"deg", func(d *Dimension) *int8 { return &d.Angle }},
	{"V", func(d *Dimension) *int8 { return &d.Potential }},
	{"degC", func(d *Dimension) *int8 { return &d.Temperature }},
	{"money", func(d *Dimension) *int8 { return &d.Money }},
}

// named lists the dimensions that have a name of their own.
var named = []struct {
	dimension Dimension
	name      string
	unit      string
}{
	{Bare, "bare number", ""},
	{Length, "length", "mm"},
	{Area, "area", "mm2"},
	{Volume, "volume", "mm3"},
	{Force, "force", "N"},
	{Stress, "stress", "MPa"},
	{Moment, "moment", "N mm"},
	{Mass, "mass", "kg"},
	{Angle, "angle", "deg"},
	{Time, "time", "year"},
	{Potential, "potential", "V"},
	{Temperature, "temperature", "degC"},
	{Money, "money", "money"},
	{ForcePerLength, "force per length", "N/mm"},
	{SecondMoment, "second moment of area", "mm4"},
	{Density, "density", "kg/mm3"},
	{MassPerLength, "mass per length", "kg/mm"},
	{Speed, "speed", "mm/year"},
}

// Times is the dimension of a product.
func (d Dimension) Times(e Dimension) Dimension { return d.combine(e, 1) }

// Over is the dimension of a quotient.
func (d Dimension) Over(e Dimension) Dimension { return d.combine(e, -1) }

// Power is the dimension of a whole power.
func (d Dimension) Power(n int) Dimension { return Bare.combine(d, n) }

// combine adds n times the powers of e to those of d.
func (d Dimension) combine(e Dimension, n int) Dimension {
	n = max(-1<<10, min(n, 1<<10))
	for _, b := range base {
		p, q := b.power(&d), *b.power(&e)
		sum := int(*p) + n*int(q)
		if *p == beyond || q == beyond || sum <= beyond || sum > math.MaxInt8 {
			sum = beyond
		}
		*p = int8(sum)
	}
	return d
}

// InRange tells whether all powers are within -127 to 127. A dimension out of
// range is no dimension: two of them are equal and yet may differ.
func (d Dimension) InRange() bool {
	for _, b := range base {
		if *b.power(&d) == beyond {
			return false
		}
	}
	return true
}

// Unit is the canonical unit as text: "mm", "MPa", "N mm", or for a dimension
// without a name the powers of the base units, "N^2 mm^-1". A bare number has none.
func (d Dimension) Unit() string {
	for _, n := range named {
		if n.dimension == d {
			return n.unit
		}
	}
	var parts []string
	for _, b := range base {
		switch p := *b.power(&d); p {
		case 0:
		case beyond:
			parts = append(parts, b.unit+"^(out of range)")
		case 1:
			parts = append(parts, b.unit)
		default:
			parts = append(parts, fmt.Sprintf("%s^%d", b.unit, p))
		}
	}
	return strings.Join(parts, " ")
}

// Name is the dimension in words: "force", "stress"; a dimension without a name
// is called by its unit.
func (d Dimension) Name() string {
	for _, n := range named {
		if n.dimension == d {
			return n.name
		}
	}
	return "quantity in " + d.Unit()
}

// DimensionOf gives the dimension whose canonical unit is written thus: the
// units that fact tags and contracts use. ok is false for any other text.
func DimensionOf(canonicalUnit string) (d Dimension, ok bool) {
	for _, n := range named {
		if n.unit == canonicalUnit {
			return n.dimension, true
		}
	}
	return Dimension{}, false
}
