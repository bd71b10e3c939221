package quantity

import "strings"

// unit is one row of the table of units. A reading r in the unit is, in the
// canonical unit of its dimension,
//
//	(r - zero) * times / over
//
// Both times and over are written as they are defined, so that 17 % is exactly
// the 0.17 and 6500 um exactly the 6.5 mm that somebody would have written:
// a multiplication by 0.01 or 0.001 would round twice.
type unit struct {
	// spellings are what a plan may say, the one that messages use first.
	spellings   []string
	dimension   Dimension
	times, over float64
	// zero is the unit's reading at the canonical unit's zero: 32 degF at 0 degC.
	zero float64
	// source is the definition and where it comes from.
	source string
	// loose tells that capital letters change nothing: there is no other unit that
	// "PSI" or "IN" could be taken for. "MM" and "KN" are another matter.
	loose bool
}

// strict is a row whose capital letters matter, loose one where they don't.
func strict(d Dimension, times, over float64, source string, spellings ...string) unit {
	return unit{spellings: spellings, dimension: d, times: times, over: over, source: source}
}

func loose(d Dimension, times, over float64, source string, spellings ...string) unit {
	u := strict(d, times, over, source, spellings...)
	u.loose = true
	return u
}

func (u *unit) name() string { return u.spellings[0] }

func (u *unit) toCanonical(reading float64) float64 {
	return (reading - u.zero) * u.times / u.over
}

func (u *unit) fromCanonical(value float64) float64 {
	return value*u.over/u.times + u.zero
}

// spelled finds a unit by any accepted spelling, caseless those of one or more
// units by that spelling in small letters.
var spelled, caseless = index(units)

func index(units []unit) (map[string]*unit, map[string][]string) {
	exact, small := map[string]*unit{}, map[string][]string{}
	for i := range units {
		for _, s := range units[i].spellings {
			exact[s] = &units[i]
			small[strings.ToLower(s)] = append(small[strings.ToLower(s)], s)
		}
	}
	return exact, small
}

// find gives the unit that is written thus, nil if there is none. The plain
// spellings are found at once; only another way of writing one ("N·m", "mm²",
// "sq  ft", "PSI") takes longer.
func find(text string) *unit {
	if u := spelled[text]; u != nil {
		return u
	}
	tidy := tidyUnit(text)
	if u := spelled[tidy]; u != nil {
		return u
	}
	for _, s := range caseless[strings.ToLower(tidy)] {
		if u := spelled[s]; u.loose || isWord(s) {
			return u
		}
	}
	return nil
}

// isWord tells a whole word ("knots", "litres") from a symbol ("kN"): of a word
// capital letters are harmless whatever the unit.
func isWord(spelling string) bool {
	for i := range len(spelling) {
		if !isLetter(spelling[i]) {
			return false
		}
	}
	return len(spelling) > 3
}

// signs are other signs for the same thing: a product's point, a power's figure.
var signs = strings.NewReplacer("·", " ", "⋅", " ", "*", " ", "²", "2", "³", "3", "⁴", "4", "^", "", "\t", " ", "μ", "µ")

// tidyUnit writes a unit the way the table does.
func tidyUnit(text string) string {
	text = strings.Join(strings.FieldsFunc(signs.Replace(text), func(r rune) bool { return r == ' ' }), " ")
	text = strings.ReplaceAll(strings.ReplaceAll(text, " /", "/"), "/ ", "/")
	if len(text) > 2 {
		// "ft-lbf" is "ft lbf"; a hyphen before or behind a unit is none of it.
		last := len(text) - 1
		text = text[:1] + strings.ReplaceAll(text[1:last], "-", " ") + text[last:]
	}
	return text
}

func isLetter(c byte) bool { return 'a' <= c|' ' && c|' ' <= 'z' }

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

func isBlank(c byte) bool { return c == ' ' || c == '\t' }
