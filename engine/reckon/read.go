package reckon

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"chainwale/engine/near"
	"chainwale/engine/quantity"
)

// inputs are the values given to a formula, or to one part of it, once they have
// been read as it declares them; and what is wrong with them.
type inputs struct {
	declared []Input
	values   map[string]any
	texts    map[string]string
	places   map[string]string
	problems []Problem
	// undeclared are names that a formula asked for and never declared; a formula
	// and its groups share them.
	undeclared *[]string
}

// No size, force or stress of a boat lies outside these bounds; a number that does
// could only overflow or vanish on its way through a formula.
const (
	least      = 1e-9
	most       = 1e9
	mostMoment = 1e15
	// mostWind is in the unit of speeds, mm/year, and no wind on earth.
	mostWind = 1000 * quantity.MetrePerSecond
	// mostThings bounds counts and lists, since bolts are compared in pairs.
	mostThings = 500
)

// read takes what was given as the formula declares it. All problems are noted,
// not only the first.
func read(f *Formula, given []Member) *inputs {
	return readParts(f.Inputs, given, "", new([]string), func(name string) string { return name + " is no input of " + f.Name })
}

// readParts reads the members of the formula or of one of its groups. where is the
// place of the group, which stands in for what is missing there.
func readParts(declared []Input, given []Member, where string, undeclared *[]string, stranger func(name string) string) *inputs {
	in := &inputs{declared: declared, values: map[string]any{}, texts: map[string]string{}, places: map[string]string{}, undeclared: undeclared}
	meant := map[string]bool{}
	for _, m := range given {
		at := slices.IndexFunc(declared, func(d Input) bool { return alike(d.Name, m.Name) })
		if at < 0 {
			meant[in.stranger(m, stranger)] = true
			continue
		}
		d := declared[at]
		if _, twice := in.places[d.Name]; twice {
			in.problems = append(in.problems, Problem{At: m.At, Input: d.Name, Why: "it is given twice", Expected: "it once"})
			continue
		}
		in.places[d.Name], in.texts[d.Name] = m.Value.At, strings.TrimSpace(m.Value.Text)
		in.take(d, m.Value)
	}
	for _, d := range declared {
		if _, given := in.places[d.Name]; !given && !d.Optional && !meant[d.Name] {
			in.problems = append(in.problems, Problem{At: where, Input: d.Name, Why: "it is missing (" + d.Means + ")", Expected: d.expected()})
		}
	}
	return in
}

// stranger notes a name that is no input, and gives the input that was most likely
// meant, which then need not be called missing.
func (in *inputs) stranger(m Member, why func(string) string) (meant string) {
	var names []string
	for _, d := range in.declared {
		names = append(names, d.Name)
	}
	expected := near.Words(m.Name, names, 3)
	if len(expected) > 0 {
		meant = expected[0]
	} else {
		expected = names
	}
	in.problems = append(in.problems, Problem{At: m.At, Why: why(clip(m.Name)), Expected: join(expected, "or")})
	return meant
}

// take reads one value.
func (in *inputs) take(d Input, v Value) {
	switch {
	case v.Kind == Nothing:
		in.refuse(d.Name, "null says nothing", d.orNothing())
	case d.Takes == Rows && v.Kind == List:
		in.takeRows(d, v)
	case d.Takes == Parted && v.Kind == Group:
		in.values[d.Name] = in.part(d, v, d.Name)
	case d.Takes == Rows || d.Takes == Parted:
		in.refuse(d.Name, d.notOnTheLine(v), d.expected())
	case v.Kind != Text:
		in.refuse(d.Name, "one value belongs here, not several", d.expected())
	default:
		in.takeText(d, v.Text)
	}
}

// notOnTheLine says why a text is neither a list nor a group.
func (d Input) notOnTheLine(v Value) string {
	if v.Kind == Text && v.At == "" {
		return "a " + string(d.Takes) + " can't stand on the command line: give all inputs as one JSON object on standard input"
	}
	return "a " + string(d.Takes) + " belongs here"
}

func (in *inputs) takeRows(d Input, v Value) {
	rows := []*inputs{}
	for i, item := range v.Items {
		name := fmt.Sprintf("entry %d of %s", i+1, d.Name)
		if item.Kind != Group {
			in.problems = append(in.problems, Problem{At: item.At, Input: name, Why: "a group belongs here", Expected: d.entry()})
			continue
		}
		rows = append(rows, in.part(d, item, name))
	}
	if len(v.Items) == 0 {
		in.refuse(d.Name, "the list is empty", d.expected())
	}
	in.values[d.Name] = rows
}

// part reads a group and takes its problems over, each with the group's name.
func (in *inputs) part(d Input, v Value, name string) *inputs {
	part := readParts(d.Parts, v.Members, v.At, in.undeclared, func(stranger string) string { return stranger + " is no part of " + name })
	for _, p := range part.problems {
		if p.Input != "" {
			p.Input += " of " + name
		}
		in.problems = append(in.problems, p)
	}
	return part
}

// takeText reads the text of a single value.
func (in *inputs) takeText(d Input, text string) {
	switch d.Takes {
	case Amount:
		in.takeAmount(d, text)
	case Share:
		in.takeShare(d, text)
	case Count:
		in.takeCount(d, text)
	case OneOf:
		in.takeWord(d, text)
	case YesNo:
		in.takeYesNo(d, text)
	default:
		in.must(strings.TrimSpace(text) != "", d.Name, "nothing is written where a name belongs")
		in.values[d.Name] = text
	}
}

func (in *inputs) takeAmount(d Input, text string) {
	q, err := quantity.ParseAs(text, d.Dimension)
	if err != nil {
		why, expected := badQuantity(err)
		in.refuse(d.Name, why, expected)
		return
	}
	text = strings.TrimSpace(text)
	unit, largest := d.Dimension.Unit(), most
	switch d.Dimension {
	case quantity.Moment:
		largest = mostMoment
	case quantity.Speed:
		largest = mostWind
	}
	switch {
	case math.Abs(q.Value) > largest:
		in.refuse(d.Name, text+" is too large to reckon with", d.expected())
	case d.Limit == AboveZero && q.Value <= 0:
		in.refuse(d.Name, text+" is not more than 0 "+unit, d.expected())
	case d.Limit == AboveZero && q.Value < least && d.Dimension != quantity.Density:
		in.refuse(d.Name, text+" is too small to reckon with", d.expected())
	case d.Limit == FromZero && q.Value < 0:
		in.refuse(d.Name, text+" is less than 0 "+unit, d.expected())
	}
	in.values[d.Name] = q.Value
}

func (in *inputs) takeShare(d Input, text string) {
	q, err := quantity.ParseAs(text, quantity.Bare)
	switch {
	case err != nil:
		why, expected := badQuantity(err)
		in.refuse(d.Name, why, expected)
	case q.Value < 0:
		in.refuse(d.Name, strings.TrimSpace(text)+" is less than nothing", d.expected())
	case q.Value > 1:
		in.refuse(d.Name, strings.TrimSpace(text)+" is more than the whole", d.expected())
	}
	in.values[d.Name] = q.Value
}

func (in *inputs) takeCount(d Input, text string) {
	digits := strings.TrimSpace(text)
	n, err := strconv.Atoi(digits)
	switch {
	case digits == "" || strings.Trim(digits, "0123456789") != "":
		in.refuse(d.Name, clip(digits)+" is no whole number", d.expected())
	case len(digits) > 1 && digits[0] == '0':
		in.refuse(d.Name, digits+" could be meant in more than one way", "digits without a zero before them")
	case err != nil || n > most:
		in.refuse(d.Name, clip(digits)+" is too large to reckon with", d.expected())
	case n < 1:
		in.refuse(d.Name, "there must be one at least", d.expected())
	}
	in.values[d.Name] = n
}

func (in *inputs) takeWord(d Input, text string) {
	for _, w := range d.Words {
		if alike(w, text) {
			in.values[d.Name] = w
			return
		}
	}
	expected := near.Words(text, d.Words, 3)
	if len(expected) == 0 {
		expected = d.Words
	}
	in.refuse(d.Name, clip(text)+" is not a word known here", join(expected, "or"))
}

func (in *inputs) takeYesNo(d Input, text string) {
	switch plain(text) {
	case "yes", "true":
		in.values[d.Name] = true
	case "no", "false":
		in.values[d.Name] = false
	default:
		in.refuse(d.Name, clip(text)+" is neither yes nor no", "yes or no")
	}
}

// expected is what would be right for an input.
func (d Input) expected() string {
	switch d.Takes {
	case Amount:
		return "for example " + quantity.Example(d.Dimension) + " (" + strings.Join(quantity.Spellings(d.Dimension), ", ") + ")"
	case OneOf:
		return join(d.Words, "or")
	case YesNo:
		return "yes or no"
	case Rows, Parted:
		return "for example " + d.Example
	}
	return `for example "` + d.Example + `"`
}

// orNothing is what would be right for an input that may as well be left out.
func (d Input) orNothing() string {
	if d.Optional {
		return d.expected() + ", or leave it out"
	}
	return d.expected()
}

// entry is what an entry of a list may look like.
func (d Input) entry() string {
	var parts []string
	for _, p := range d.Parts {
		if !p.Optional {
			parts = append(parts, strconv.Quote(p.Name)+": "+strconv.Quote(p.Example))
		}
	}
	return "for example {" + strings.Join(parts, ", ") + "}"
}
