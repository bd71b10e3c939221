package reckon

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"chainwale/engine/quantity"
)

// Caution stands under every answer that a person reads.
const Caution = "Advice, not approval: strengths assume metal to its specification, and old metal may be cracked."

// width is where lines of prose are broken.
const width = 96

// text writes lines and keeps the first error.
type text struct {
	out io.Writer
	err error
}

func (t *text) line(format string, args ...any) {
	if t.err == nil {
		_, t.err = fmt.Fprintln(t.out, strings.TrimRight(fmt.Sprintf(format, args...), " "))
	}
}

// prose writes a paragraph, its first line after one indent and the rest after
// another.
func (t *text) prose(first, rest, paragraph string) {
	line, length := first, utf8.RuneCountInString(first)
	begun := false
	for _, word := range strings.Fields(paragraph) {
		n := utf8.RuneCountInString(word)
		if begun && length+1+n > width {
			t.line("%s", line)
			line, length, begun = rest, utf8.RuneCountInString(rest), false
		}
		if begun {
			line, length = line+" ", length+1
		}
		line, length, begun = line+word, length+n, true
	}
	t.line("%s", line)
}

// Text writes the answer for a person: the results with what they mean, then how
// they came about, then the caution.
func (a Answer) Text(w io.Writer, system quantity.System) error {
	t := &text{out: w}
	t.line("%s: %s", a.Name, a.formula.Title)
	t.line("")
	if !a.Covered {
		t.prose("  ", "  ", "Not covered: "+a.Why+". There is no number.")
	}
	t.results("  ", a.Results, a.formula.Results, system)
	if a.Covered && a.Why != "" {
		t.prose("  ", "  ", "The rest is not covered: "+a.Why+".")
	}
	t.line("")
	if len(a.Working) > 0 {
		t.line("Working")
		for _, s := range a.Working {
			t.step(s)
		}
		t.line("")
	}
	t.prose("", "", Caution)
	return t.err
}

// widest is the widest value that stands in a column before what it means. A wider
// one is a sentence and stands alone.
const widest = 24

// results writes a line for each result, names and values in columns.
func (t *text) results(indent string, results Results, declared []Output, system quantity.System) {
	names, values := 0, 0
	for _, r := range results {
		names = max(names, len(r.Name))
		if n := utf8.RuneCountInString(shown(r.Value, system)); n <= widest {
			values = max(values, n)
		}
	}
	for _, r := range results {
		first := fmt.Sprintf("%s%-*s  ", indent, names, r.Name)
		s, means := shown(r.Value, system), meaning(declared, r.Name)
		switch n := utf8.RuneCountInString(s); {
		case n > widest:
			means = s
		case n > 0:
			first += fmt.Sprintf("%-*s  ", values, s)
		}
		t.prose(first, strings.Repeat(" ", utf8.RuneCountInString(first)), means)
		t.entries(indent+"  ", r.Value, system)
	}
}

// entries writes a list, an entry a line.
func (t *text) entries(indent string, list any, system quantity.System) {
	switch list := list.(type) {
	case []Measured:
		for i, m := range list {
			t.line("%s%3d  %s", indent, i+1, m.format(system))
		}
	case []Results:
		for i, group := range list {
			var parts []string
			for _, r := range group {
				parts = append(parts, r.Name+" "+shown(r.Value, system))
			}
			t.line("%s%3d  %s", indent, i+1, strings.Join(parts, ", "))
		}
	}
}

// shown is a single value as text, "" for a list.
func shown(v any, system quantity.System) string {
	switch v := v.(type) {
	case Measured:
		return v.format(system)
	case float64:
		return quantity.Format(v, quantity.Bare, system)
	case string:
		return v
	}
	return ""
}

func (m Measured) format(system quantity.System) string {
	return quantity.Format(m.Value, m.dimension, system)
}

// meaning is what a result means.
func meaning(declared []Output, name string) string {
	for _, o := range declared {
		if o.Name == name {
			return o.Means
		}
	}
	return ""
}

// step writes one line of the working: the symbol and its formula, what went in,
// what came out, and who says so.
func (t *text) step(s Step) {
	line := s.Symbol + " = " + s.Formula
	if len(s.Inputs) > 0 {
		parts := make([]string, len(s.Inputs))
		for i, in := range s.Inputs {
			parts[i] = strings.TrimSpace(in.Symbol + " " + digits(in.Value) + " " + in.Unit)
		}
		line += " [" + strings.Join(parts, ", ") + "]"
	}
	t.prose("  ", "      ", line)
	result := strings.TrimSpace("= " + digits(s.Value) + " " + s.Unit)
	if s.Meaning != "" {
		result += ": " + s.Meaning
	}
	t.prose("      ", "      ", result+"; "+s.Source+" ("+string(s.Known)+")")
}

// digits prints a number of a working with five significant figures, and without
// an exponent as long as it is one of a boat.
func digits(v float64) string {
	short := strconv.FormatFloat(v, 'g', 5, 64)
	rounded, err := strconv.ParseFloat(short, 64)
	if size := math.Abs(rounded); err != nil || size != 0 && (size < 1e-6 || size >= 1e9) {
		return short
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}
