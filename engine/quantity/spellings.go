package quantity

import "strings"

// examples shows for each dimension how one is written, metric first.
var examples = map[Dimension][]string{
	Bare:           {"0.17", "17 %"},
	Length:         {"6 mm", "1/2 in"},
	Area:           {"120 mm2", "3.5 sq ft"},
	Volume:         {"2 L", "2.5 US gal"},
	Force:          {"8.6 kN", "3150 lbf"},
	Stress:         {"205 MPa", "30 ksi"},
	Moment:         {"25 N m", "18 lbf ft"},
	Mass:           {"5400 kg", "12000 lb"},
	Angle:          {"12 deg"},
	Time:           {"10 years", "6 months"},
	Potential:      {"0.25 V", "250 mV"},
	Temperature:    {"4 degC", "40 degF"},
	Money:          {"120 money"},
	ForcePerLength: {"12 N/mm", "70 lbf/in"},
	SecondMoment:   {"240 cm4", "5.8 in4"},
	Density:        {"450 kg/m3", "28 lb/ft3"},
	MassPerLength:  {"3.8 kg/m", "2.5 lb/ft"},
	Speed:          {"25 kn", "13 m/s"},
}

// Spellings lists the units in which a quantity of a dimension may be written,
// those most used first, each by the one spelling that messages use. Other
// spellings of a unit ("inch", "inches" for "in") are accepted as well. A
// dimension without a name has none: nobody writes one in a plan.
func Spellings(d Dimension) []string {
	var names []string
	for i := range units {
		if units[i].dimension == d {
			names = append(names, units[i].name())
		}
	}
	return names
}

// Example shows how a quantity of a dimension is written: "6 mm" or "1/2 in",
// with the quotation marks. It is empty for a dimension without a name.
func Example(d Dimension) string { return anyOf(examples[d]) }

// anyOf joins quoted texts: "a", "b" or "c".
func anyOf(texts []string) string {
	var b strings.Builder
	for i, t := range texts {
		switch {
		case i == 0:
		case i == len(texts)-1:
			b.WriteString(" or ")
		default:
			b.WriteString(", ")
		}
		b.WriteString(`"` + t + `"`)
	}
	return b.String()
}
