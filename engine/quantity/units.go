package quantity

import "math"

// How much of the canonical unit some usual units are, where the canonical one
// is out of the way: a formula that wants m/s divides a speed by MetrePerSecond.
const (
	// Day and Second in years of 365.25 days.
	Day    = 1 / 365.25
	Second = 1 / secondsInYear
	// MetrePerSecond and Knot in mm/year.
	MetrePerSecond = 1000 * secondsInYear
	Knot           = 1852 * 1000 * hoursInYear
	// KilogramPerCubicMetre in kg/mm3, KilogramPerMetre in kg/mm.
	KilogramPerCubicMetre = 1e-9
	KilogramPerMetre      = 1e-3

	hoursInYear   = 365.25 * 24
	secondsInYear = hoursInYear * 3600
)

// The definitions that the customary units rest on, each exact.
const (
	inch       = 25.4                     // mm
	foot       = 12 * inch                // mm
	pound      = 0.45359237               // kg
	gravity    = 9.80665                  // N/kg
	poundForce = pound * gravity          // N: 4.4482216152605
	gallon     = 231 * inch * inch * inch // mm3
)

// Where the definitions come from.
const (
	bySI      = "SI prefix or product of SI units, exact"
	byTurn    = "360 deg in a full turn"
	byInch    = "1 in = 25.4 mm exactly: international yard and pound agreement, 1959"
	byPound   = "1 lb = 0.45359237 kg exactly: international yard and pound agreement, 1959"
	byGravity = "standard gravity 9.80665 m/s2 exactly: 3rd General Conference on Weights and Measures, 1901"
	byForce   = "1 lbf = 0.45359237 kg x 9.80665 m/s2 = 4.4482216152605 N exactly (1959 pound, 1901 standard gravity)"
	byGallon  = "1 US gal = 231 in3 = 128 US fl oz exactly: US customary definition"
	byYear    = "1 year = 365.25 days = 12 months, the Julian year: ages and intervals follow no calendar here"
	byMile    = "1 kn = 1852 m an hour exactly: international nautical mile, 1929"
	byRadian  = "180 deg = pi rad exactly"
	byKelvin  = "0 degC = 273.15 K exactly: definition of the degree Celsius"
	byDegF    = "0 degC = 32 degF, 5 degC = 9 degF exactly: definition of the degree Fahrenheit"
	byMoney   = "an amount in the one currency of the plan; Money keeps the currency"
)

// units is the table of all units. Rows of one dimension stand together, those
// most used first: messages list them in this order.
var units = []unit{
	loose(Bare, 1, 100, "a hundredth", "%", "percent"),
	loose(Bare, 1, 1e6, "a millionth", "ppm"),

	strict(Length, 1, 1, bySI, "mm"),
	strict(Length, 10, 1, bySI, "cm"),
	strict(Length, 1000, 1, bySI, "m"),
	strict(Length, 1, 1000, bySI, "um", "µm"),
	loose(Length, inch, 1, byInch, "in", "inch", "inches"),
	loose(Length, foot, 1, byInch, "ft", "foot", "feet"),

	strict(Area, 1, 1, bySI, "mm2"),
	strict(Area, 100, 1, bySI, "cm2"),
	strict(Area, 1e6, 1, bySI, "m2"),
	loose(Area, inch*inch, 1, byInch, "in2", "sq in"),
	loose(Area, foot*foot, 1, byInch, "sq ft", "ft2"),

	strict(Volume, 1e6, 1, bySI, "L", "l", "litre", "litres", "liter", "liters"),
	strict(Volume, 1000, 1, bySI, "ml", "mL"),
	strict(Volume, 1, 1, bySI, "mm3"),
	strict(Volume, 1000, 1, bySI, "cm3"),
	strict(Volume, 1e9, 1, bySI, "m3"),
	loose(Volume, gallon, 1, byGallon, "US gal"),
	loose(Volume, gallon, 128, byGallon, "US fl oz"),
	loose(Volume, inch*inch*inch, 1, byInch, "in3", "cu in"),
	loose(Volume, foot*foot*foot, 1, byInch, "cu ft", "ft3"),

	strict(Force, 1000, 1, bySI, "kN"),
	strict(Force, 1, 1, bySI, "N"),
	strict(Force, 10, 1, bySI, "daN"),
	strict(Force, 1e6, 1, bySI, "MN"),
	loose(Force, gravity, 1, byGravity, "kgf"),
	loose(Force, poundForce, 1, byForce, "lbf"),
	loose(Force, 1000*poundForce, 1, byForce, "kip", "kips"),

	strict(Stress, 1, 1, bySI, "MPa"),
	strict(Stress, 1, 1, bySI, "N/mm2"),
	strict(Stress, 1000, 1, bySI, "GPa"),
	strict(Stress, 1000, 1, bySI, "kN/mm2"),
	strict(Stress, 1, 1000, bySI, "kPa"),
	strict(Stress, 1, 1e6, bySI, "Pa"),
	loose(Stress, poundForce, inch*inch, byForce, "psi", "lbf/in2"),
	loose(Stress, 1000*poundForce, inch*inch, byForce, "ksi"),

	strict(Moment, 1000, 1, bySI, "N m", "Nm"),
	strict(Moment, 1, 1, bySI, "N mm", "Nmm"),
	strict(Moment, 1e6, 1, bySI, "kN m", "kNm"),
	loose(Moment, 1000*gravity, 1, byGravity, "kgf m"),
	loose(Moment, poundForce*foot, 1, byForce, "lbf ft", "ft lbf"),
	loose(Moment, poundForce*inch, 1, byForce, "lbf in", "in lbf"),

	strict(Mass, 1, 1, bySI, "kg"),
	strict(Mass, 1, 1000, bySI, "g"),
	strict(Mass, 1000, 1, bySI, "t", "tonne", "tonnes"),
	loose(Mass, pound, 1, byPound, "lb", "lbs"),
	loose(Mass, pound, 16, byPound, "oz"),

	loose(Angle, 1, 1, byTurn, "deg", "°", "degree", "degrees"),
	loose(Angle, 180/math.Pi, 1, byRadian, "rad"),

	loose(Time, 1, 1, byYear, "years", "year"),
	loose(Time, 1, 12, byYear, "months", "month"),
	loose(Time, 7, 365.25, byYear, "weeks", "week"),
	loose(Time, 1, 365.25, byYear, "days", "day"),
	strict(Time, 1, hoursInYear, byYear, "hours", "hour", "h"),
	loose(Time, 1, hoursInYear*60, byYear, "minutes", "minute", "min"),
	strict(Time, 1, secondsInYear, byYear, "s", "second", "seconds"),

	strict(Potential, 1, 1, bySI, "V"),
	strict(Potential, 1, 1000, bySI, "mV"),

	loose(Temperature, 1, 1, byKelvin, "degC", "°C"),
	{spellings: []string{"degF", "°F"}, dimension: Temperature, times: 5, over: 9, zero: 32, source: byDegF, loose: true},
	{spellings: []string{"K"}, dimension: Temperature, times: 1, over: 1, zero: 273.15, source: byKelvin},

	strict(Money, 1, 1, byMoney, "money"),

	strict(ForcePerLength, 1, 1, bySI, "N/mm"),
	strict(ForcePerLength, 1, 1, bySI, "kN/m"),
	strict(ForcePerLength, 1, 1000, bySI, "N/m"),
	loose(ForcePerLength, poundForce, inch, byForce, "lbf/in"),
	loose(ForcePerLength, poundForce, foot, byForce, "lbf/ft"),

	strict(SecondMoment, 1e4, 1, bySI, "cm4"),
	strict(SecondMoment, 1, 1, bySI, "mm4"),
	loose(SecondMoment, inch*inch*inch*inch, 1, byInch, "in4"),

	strict(Density, 1, 1e9, bySI, "kg/m3"),
	strict(Density, 1, 1e6, bySI, "g/cm3"),
	strict(Density, 1, 1, bySI, "kg/mm3"),
	loose(Density, pound, foot*foot*foot, byPound, "lb/ft3"),
	loose(Density, pound, inch*inch*inch, byPound, "lb/in3"),

	strict(MassPerLength, 1, 1000, bySI, "kg/m"),
	strict(MassPerLength, 1, 1e6, bySI, "g/m"),
	strict(MassPerLength, 1, 1, bySI, "kg/mm"),
	loose(MassPerLength, pound, foot, byPound, "lb/ft"),

	strict(Speed, Knot, 1, byMile, "kn", "knot", "knots"),
	strict(Speed, MetrePerSecond, 1, bySI, "m/s"),
	loose(Speed, 5280*foot*hoursInYear, 1, byInch, "mph"),
	strict(Speed, 1, 1, byYear, "mm/year"),
	loose(Speed, inch, 1, byInch, "in/year"),
}
