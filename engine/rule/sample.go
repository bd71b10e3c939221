package rule

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

// Sample is an example as an author would write it into a rule's file.
type Sample struct {
	// With are the facts that the rule reads and the example knows.
	With    []SampleFact
	Outcome finding.Outcome
	Grade   finding.Grade

	rule *Rule
	row  []float64
}

// SampleFact is one fact of a sample, its value as it stands in the file.
type SampleFact struct{ Name, Value string }

// String is the sample as an entry of the list of examples, on two lines or three.
func (s Sample) String() string {
	var with []string
	for _, f := range s.With {
		with = append(with, f.Name+": "+f.Value)
	}
	text := "- with: { " + strings.Join(with, ", ") + " }\n  outcome: " + string(s.Outcome)
	if len(with) == 0 {
		text = "- with: {}\n  outcome: " + string(s.Outcome)
	}
	if s.Grade != "" {
		text += "\n  grade: " + string(s.Grade)
	}
	return text
}

// sample writes a row of facts as an example, with what the rule makes of it.
func (r *Rule) sample(row []float64) Sample {
	v := r.evaluate(&frame{facts: row, sides: make([]side, r.sides)})
	s := Sample{Outcome: outcomes[v.outcome], Grade: r.grade(v), rule: r, row: slices.Clone(row)}
	for _, slot := range r.reads {
		if finite(row[slot], 0) {
			s.With = append(s.With, SampleFact{r.Kind.Slots[slot].Name, sampleValue(row[slot], r.Kind.Slots[slot])})
		}
	}
	return s
}

// sampleValue writes a fact so that it is read back as the same.
func sampleValue(v float64, c fact.Slot) string {
	switch c.Sort {
	case fact.IsYesNo:
		return yesNo(v)
	case fact.IsWord:
		return quotedWord(fact.WordText(v))
	}
	if short := quantity.Format(v, c.Dimension, quantity.Metric); readsAs(short, v, c.Dimension) {
		return short
	}
	return strings.TrimSpace(strconv.FormatFloat(v, 'f', -1, 64) + " " + c.Dimension.Unit())
}

// readsAs tells whether a printed quantity is read back as the very number.
func readsAs(text string, v float64, d quantity.Dimension) bool {
	q, err := quantity.ParseAs(text, d)
	return err == nil && q.Value == v
}

// plainWord is a text that YAML takes as it stands, in braces too.
var plainWord = regexp.MustCompile(`^[\pL\pN][\pL\pN .+/_-]*$`)

// quotedWord puts a word in quotes where YAML would take it for something else.
func quotedWord(word string) string {
	if plainWord.MatchString(word) && strings.TrimSpace(word) == word {
		return word
	}
	return "'" + strings.ReplaceAll(word, "'", "''") + "'"
}
