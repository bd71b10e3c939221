package quantity

import (
	"slices"
	"strings"

	"chainwale/engine/near"
)

// What is wrong with the unit, or with what stands between it and the number.

// otherDimension says that a sound quantity is not of the kind that is wanted.
func (d *doubt) otherDimension(q Quantity) string {
	_, rest, _ := readNumber(d.text)
	number, unit := d.split(skipBlanks(rest))
	if unit == "" {
		d.expected = withUnitOf(*d.want, number)
		return d.text + " has no unit"
	}
	d.propose(number, confusions[find(unit).name()])
	kind := "a share"
	if q.Dimension != Bare {
		kind = indefinite(q.Dimension)
	}
	return d.text + " is " + kind + " where " + indefinite(*d.want) + " belongs"
}

// withUnitOf shows the number with a unit of the wanted dimension, and one more
// example. A fraction goes with the customary unit.
func withUnitOf(want Dimension, number string) string {
	texts := slices.Clone(examples[want])
	if len(texts) == 0 {
		return ""
	}
	at := 0
	if strings.Contains(number, "/") {
		at = len(texts) - 1
	}
	_, unit, _ := strings.Cut(texts[at], " ")
	if q, ok := read(number + " " + unit); ok && q.Dimension == want {
		texts[0], texts[at] = texts[at], texts[0]
		texts[0] = number + " " + unit
	}
	return exampleOf(want, texts)
}

// indefinite is the dimension's name with its article: "a force", "an area".
func indefinite(d Dimension) string {
	name := d.Name()
	switch {
	case d == Money:
		return name
	case strings.IndexByte("aeiou", name[0]) >= 0:
		return "an " + name
	}
	return "a " + name
}

// split parts the text before what follows the number.
func (d *doubt) split(rest string) (number, unit string) {
	return trimBlanks(d.text[:len(d.text)-len(rest)]), rest
}

// propose adds the number with each unit to the likely texts.
func (d *doubt) propose(number string, units []string) {
	for _, u := range units {
		d.suggest(number + " " + u)
	}
}

// afterNumber looks at what follows a sound number and is no unit, or a unit
// in which the number is out of reach.
func (d *doubt) afterNumber(rest string) string {
	number, unit := d.split(rest)
	if u := find(unit); u != nil {
		return d.text + " " + outOfReach(u, number)
	}
	if why := d.oddNumber(number, rest); why != "" {
		return d.text + " " + why
	}
	return d.unknownUnit(number, unit)
}

// outOfReach says why a reading has no value in the canonical unit.
func outOfReach(u *unit, number string) string {
	reading, _, _ := readNumber(number)
	switch value := u.toCanonical(reading); {
	case !finite(value):
		return sayings[huge]
	case u.dimension == Temperature:
		return "is colder than absolute zero"
	}
	return sayings[tiny]
}

// unknownUnit proposes the units that were probably meant.
func (d *doubt) unknownUnit(number, unit string) string {
	if isCurrency(unit) {
		return d.currency(number, unit)
	}
	tidy := strings.ToLower(tidyUnit(unit))
	why := unit + " is not a unit known here"
	if h, ok := hints[tidy]; ok {
		d.propose(number, h.meant)
		if h.why != "" {
			why += ": " + h.why
		}
		return why
	}
	if same := caseless[tidy]; len(same) > 0 {
		d.propose(number, names(same))
		return why + ": " + capitals
	}
	d.propose(number, d.like(unit))
	return why
}

// like lists the accepted spellings nearest to a word, through the names that
// people know units by.
func (d *doubt) like(word string) []string {
	var known []string
	for s, u := range spelled {
		if d.want == nil || u.dimension == *d.want {
			known = append(known, s)
		}
	}
	for name := range hints {
		known = append(known, name)
	}
	var like []string
	for _, s := range near.Words(word, known, len(known)) {
		if h, ok := hints[s]; ok {
			like = append(like, h.meant...)
		} else {
			like = append(like, spelled[s].name())
		}
	}
	return like
}

// names gives the units that are spelled thus by the spelling that messages use.
func names(spellings []string) []string {
	var names []string
	for _, s := range spellings {
		names = append(names, spelled[s].name())
	}
	return names
}

// currency speaks of an amount with a currency code.
func (d *doubt) currency(number, code string) string {
	if d.want == nil || *d.want == Money {
		d.propose(number, Spellings(Money))
		return d.text + " names a currency where the plan's own is understood"
	}
	return d.text + " is money where " + indefinite(*d.want) + " belongs"
}
