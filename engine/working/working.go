// Package working says where a number comes from: the source behind a formula,
// a table row or a limit, how far that source is known, and the steps of a
// calculation as a person would write them down.
//
// It is a leaf of plain data. Tables, mechanics, facts, rules, findings and
// renderers all speak of sources with these words, and none of them has to
// know another to do so.
package working

// HowKnown says how far a value can be trusted, in the one vocabulary that
// tables, rules, workings and reports share.
type HowKnown string

const (
	// Published: a look-up showed the text, or a handbook prints it.
	Published HowKnown = "published"
	// CommonPractice: several trade sources say so, or it is a fact of the trade without one.
	CommonPractice HowKnown = "common practice"
	// Computed: it follows from definitions or from statics.
	Computed HowKnown = "computed"
	// Memory: recalled, not looked up; check it against the text before leaning on it.
	Memory HowKnown = "memory"
	// Judgement: an opinion of this project, open to change by the reader.
	Judgement HowKnown = "judgement"
)

// AllHowKnown lists the vocabulary, the firmest first.
func AllHowKnown() []HowKnown {
	return []HowKnown{Published, CommonPractice, Computed, Memory, Judgement}
}

// Source names what stands behind a value. For says which part of the value it
// stands behind ("the form of the equation", "the limit 1.5").
type Source struct {
	Title   string   `json:"source" yaml:"source"`
	Edition string   `json:"edition,omitempty" yaml:"edition"`
	Clause  string   `json:"clause,omitempty" yaml:"clause"`
	As      HowKnown `json:"as" yaml:"as"`
	For     string   `json:"for,omitempty" yaml:"for"`
}

// String is the source on one line: "after ASME BTH-1, 2005, 3-3.3 (published)".
func (s Source) String() string {
	text := s.Title
	if s.Edition != "" {
		text += ", " + s.Edition
	}
	if s.Clause != "" {
		text += ", " + s.Clause
	}
	if s.As == "" {
		return text
	}
	return text + " (" + string(s.As) + ")"
}

// Input is one number that went into a step.
type Input struct {
	Symbol string  `json:"symbol"`
	Value  float64 `json:"value"`
	Unit   string  `json:"unit,omitempty"`
}

// Step is one line of a calculation: a symbol, the formula it comes from, what
// went in, what came out, and who says so. Values are in canonical units.
type Step struct {
	Symbol  string  `json:"symbol"`
	Meaning string  `json:"meaning,omitempty"`
	Formula string  `json:"formula"`
	Inputs  []Input `json:"inputs,omitempty"`
	Value   float64 `json:"value"`
	Unit    string  `json:"unit,omitempty"`
	Source  Source  `json:"source"`
}
