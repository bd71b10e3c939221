package quantity

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// BadQuantity is a text that was refused: what it was, what is wrong with it and
// what would be right.
type BadQuantity struct {
	// Text is what was written, cut off if it is long.
	Text string
	// Why is a plain sentence without its end: "12 has no unit".
	Why string
	// Expected goes on after "write": "for example "12 mm" or "1/2 in" (mm, cm, …)",
	// or the very text that was probably meant. It is empty if nothing would do.
	Expected string
}

// Error is the whole sentence.
func (b *BadQuantity) Error() string {
	if b.Expected == "" {
		return b.Why
	}
	return b.Why + "; write " + b.Expected
}

// mostLikely is how many texts a message proposes.
const mostLikely = 3

// doubt is a text that is no quantity of the dimension that is wanted, while it
// is looked into. want is nil if any dimension would do.
type doubt struct {
	text string
	want *Dimension
	// likely are texts that may have been meant.
	likely []string
	// expected is set where neither likely texts nor the general examples fit.
	expected string
}

// refuse finds out what is wrong with a text that can't be taken.
func refuse(text string, want *Dimension) *BadQuantity {
	d := &doubt{text: trimBlanks(text), want: want}
	why := d.why()
	return &BadQuantity{Text: shown(text), Why: why, Expected: d.advice()}
}

// why looks for the first thing that is wrong, the outermost first.
func (d *doubt) why() string {
	switch {
	case tooLong(d.text):
		return shown(d.text) + " is longer than " + strconv.Itoa(longest) + " characters"
	case d.text == "":
		return "nothing is written where a quantity belongs"
	case strings.ContainsFunc(d.text, invisible):
		return shown(d.text) + " holds a line break or another character that can't be seen"
	}
	if q, ok := read(d.text); ok {
		return d.otherDimension(q)
	}
	if why := d.fancy(); why != "" {
		return why
	}
	_, rest, f := readNumber(d.text)
	if f != sound {
		return d.text + " " + d.faulty(f)
	}
	return d.afterNumber(skipBlanks(rest))
}

// advice is what would be right: the likely texts, or examples of what is wanted.
func (d *doubt) advice() string {
	fitting := d.best(d.fits)
	switch {
	case len(fitting) > 0:
		return anyOf(fitting)
	case d.expected != "":
		return d.expected
	case d.want == nil:
		return `a number and its unit, for example "6 mm", "1/2 in" or "8.6 kN"`
	}
	return exampleOf(*d.want, examples[*d.want])
}

// suggest adds texts that may have been meant, each once.
func (d *doubt) suggest(texts ...string) {
	for _, t := range texts {
		if !slices.Contains(d.likely, t) {
			d.likely = append(d.likely, t)
		}
	}
}

// best gives the likely texts that would be taken, not more than a message bears.
func (d *doubt) best(taken func(text string) bool) []string {
	best := slices.DeleteFunc(d.likely, func(t string) bool { return !taken(t) })
	return best[:min(mostLikely, len(best))]
}

// exampleOf shows examples and the units that are taken.
func exampleOf(want Dimension, texts []string) string {
	if len(texts) == 0 {
		return ""
	}
	return "for example " + anyOf(texts) + " (" + strings.Join(Spellings(want), ", ") + ")"
}

// fits tells whether a text would be taken: nothing else may be advised.
func (d *doubt) fits(text string) bool {
	q, ok := read(text)
	return ok && (d.want == nil || q.Dimension == *d.want)
}

// invisible tells characters that a reader can't see, but for blanks of all kinds.
func invisible(r rune) bool {
	return r == utf8.RuneError || !unicode.IsPrint(r) && r != '\t' && !unicode.Is(unicode.Zs, r)
}

// shown is a text as a message may show it: no longer than a quantity can be,
// and with marks for what can't be seen.
func shown(text string) string {
	cut, n := "", 0
	for at := range text {
		if n == longest {
			text, cut = text[:at], "…"
			break
		}
		n++
	}
	if strings.ContainsFunc(text, func(r rune) bool { return invisible(r) || r == '\t' }) {
		return strconv.Quote(text + cut)
	}
	return text + cut
}
