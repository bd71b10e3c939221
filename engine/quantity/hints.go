package quantity

// hint is a word that is no unit here and what is written instead.
type hint struct {
	meant []string
	why   string
}

const (
	capitals = "capital letters matter"
	pounds   = "a pound may be a mass or a force"
	gallons  = "a gallon may be a US or an imperial one"
	tons     = "a ton may be metric, long or short"
)

// hints are the names that people know units by, in small letters: understood
// in messages, but not taken, so that plans stay alike.
var hints = map[string]hint{
	"millimeter": {meant: []string{"mm"}}, "millimetre": {meant: []string{"mm"}},
	"millimeters": {meant: []string{"mm"}}, "millimetres": {meant: []string{"mm"}}, "mms": {meant: []string{"mm"}},
	"centimeter": {meant: []string{"cm"}}, "centimetre": {meant: []string{"cm"}},
	"centimeters": {meant: []string{"cm"}}, "centimetres": {meant: []string{"cm"}},
	"meter": {meant: []string{"m"}}, "metre": {meant: []string{"m"}}, "meters": {meant: []string{"m"}}, "metres": {meant: []string{"m"}},
	"micron": {meant: []string{"um"}}, "microns": {meant: []string{"um"}}, "micrometre": {meant: []string{"um"}},
	`"`: {meant: []string{"in"}}, "''": {meant: []string{"in"}}, "'": {meant: []string{"ft"}}, "in.": {meant: []string{"in"}}, "ft.": {meant: []string{"ft"}},
	"newton": {meant: []string{"N"}}, "newtons": {meant: []string{"N"}}, "kilonewton": {meant: []string{"kN"}}, "kilonewtons": {meant: []string{"kN"}},
	"pascal": {meant: []string{"Pa"}}, "megapascal": {meant: []string{"MPa"}}, "gigapascal": {meant: []string{"GPa"}},
	"kilogram": {meant: []string{"kg"}}, "kilograms": {meant: []string{"kg"}}, "kilo": {meant: []string{"kg"}}, "kilos": {meant: []string{"kg"}},
	"gram": {meant: []string{"g"}}, "grams": {meant: []string{"g"}}, "ounce": {meant: []string{"oz"}}, "ounces": {meant: []string{"oz"}},
	"pound": {[]string{"lb", "lbf"}, pounds}, "pounds": {[]string{"lb", "lbf"}, pounds}, "#": {[]string{"lb", "lbf"}, pounds},
	"kp": {meant: []string{"kgf"}}, "lbsf": {meant: []string{"lbf"}},
	"gal": {[]string{"US gal"}, gallons}, "gallon": {[]string{"US gal"}, gallons}, "gallons": {[]string{"US gal"}, gallons},
	"fl oz": {[]string{"US fl oz"}, gallons}, "cc": {meant: []string{"cm3"}},
	"ton": {[]string{"t"}, tons}, "tons": {[]string{"t"}, tons},
	"ft lb": {[]string{"ft lbf"}, pounds}, "lb ft": {[]string{"lbf ft"}, pounds}, "ft lbs": {[]string{"ft lbf"}, pounds},
	"in lb": {[]string{"in lbf"}, pounds}, "lb in": {[]string{"lbf in"}, pounds}, "in lbs": {[]string{"in lbf"}, pounds},
	"nm": {[]string{"N m"}, capitals}, "kg m": {meant: []string{"kgf m"}},
	"radian": {meant: []string{"rad"}}, "radians": {meant: []string{"rad"}},
	"yr": {meant: []string{"years"}}, "yrs": {meant: []string{"years"}}, "hr": {meant: []string{"hours"}}, "hrs": {meant: []string{"hours"}}, "mins": {meant: []string{"minutes"}}, "sec": {meant: []string{"s"}},
	"volt": {meant: []string{"V"}}, "volts": {meant: []string{"V"}}, "millivolt": {meant: []string{"mV"}}, "millivolts": {meant: []string{"mV"}},
	"c": {meant: []string{"degC"}}, "f": {meant: []string{"degF"}}, "celsius": {meant: []string{"degC"}}, "fahrenheit": {meant: []string{"degF"}}, "kelvin": {meant: []string{"K"}},
	"kt": {meant: []string{"kn"}}, "kts": {meant: []string{"kn"}},
}

// confusions are units that are taken for another one of a like name, where the
// other is wanted: keyed by what was written, with what may have been meant.
var confusions = map[string][]string{
	"lb": {"lbf"}, "lbf": {"lb"}, "kg": {"kgf"}, "kgf": {"kg"}, "oz": {"US fl oz"},
	"m": {"months", "minutes"}, "deg": {"degC", "degF"}, "kn": {"kN"}, "kN": {"kn"},
}
