package reckon

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"chainwale/engine/working"
)

// Answer is what a formula tells of some inputs.
type Answer struct {
	Name string `json:"name"`
	// Results are in the order that the formula declares; none if it is not covered.
	Results Results `json:"results"`
	Working []Step  `json:"working"`
	// Covered is false where the formula or a table does not reach; Why says how, and
	// where it is true why some of the results are missing.
	Covered bool   `json:"covered"`
	Why     string `json:"why"`

	formula *Formula
}

// Step is one line of the working.
type Step struct {
	Symbol  string           `json:"symbol"`
	Formula string           `json:"formula"`
	Inputs  []StepInput      `json:"inputs"`
	Value   float64          `json:"value"`
	Unit    string           `json:"unit"`
	Source  string           `json:"source"`
	Known   working.HowKnown `json:"known"`

	// Meaning says in words what the symbol stands for.
	Meaning string `json:"-"`
}

// StepInput is one number that went into a step.
type StepInput struct {
	Symbol string  `json:"symbol"`
	Value  float64 `json:"value"`
	Unit   string  `json:"unit"`
}

// JSON writes the answer for a program.
func (a Answer) JSON(w io.Writer) error { return writeJSON(w, a) }

func writeJSON(w io.Writer, v any) error {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", "  ")
	return out.Encode(v)
}

// uncovered is the answer that there is none.
func uncovered(f *Formula, why string) Answer {
	return Answer{Name: f.Name, Results: Results{}, Working: []Step{}, Why: why, formula: f}
}

// answer puts what a formula found in the order it declares. A result that is no
// finite number is none: then nothing is covered.
func answer(f *Formula, found outcome) (Answer, error) {
	a := Answer{Name: f.Name, Results: Results{}, Working: []Step{}, Covered: true, Why: found.why, formula: f}
	results, err := inOrder(f.Results, found.results)
	if err != nil {
		return Answer{}, fmt.Errorf("the formula %s: %w", f.Name, err)
	}
	a.Results = results
	for _, s := range found.working {
		a.Working = append(a.Working, flat(s))
	}
	if !a.finite() {
		return uncovered(f, "these inputs give no finite number"), nil
	}
	return a, nil
}

// flat is a step as an answer has it: the source as text, and how it is known.
func flat(s working.Step) Step {
	flat := Step{Symbol: s.Symbol, Meaning: s.Meaning, Formula: s.Formula, Inputs: []StepInput{}, Value: s.Value, Unit: s.Unit, Source: sourceText(s.Source), Known: s.Source.As}
	for _, in := range s.Inputs {
		flat.Inputs = append(flat.Inputs, StepInput(in))
	}
	return flat
}

// sourceText is a source without how it is known.
func sourceText(s working.Source) string {
	return strings.TrimSuffix(s.String(), " ("+string(s.As)+")")
}

// finite tells whether every number of the answer is one.
func (a Answer) finite() bool {
	for _, s := range a.Working {
		if !isFinite(s.Value) {
			return false
		}
		for _, in := range s.Inputs {
			if !isFinite(in.Value) {
				return false
			}
		}
	}
	return a.Results.finite()
}
