package render

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/quantity"
	"chainwale/engine/working"
)

// Sheet is the workings behind one fitting: each subject that hangs on it with
// its facts, where they stand in the plan, and the steps behind the derived ones.
type Sheet struct {
	Chainwale string         `json:"chainwale"`
	Plan      string         `json:"plan"`
	On        string         `json:"on"`
	Fitting   string         `json:"fitting"`
	Subjects  []SheetSubject `json:"subjects"`
	Cautions  []string       `json:"cautions"`
}

// SheetSubject is one subject of a sheet.
type SheetSubject struct {
	Subject string      `json:"subject"`
	Facts   []SheetFact `json:"facts"`
}

// SheetFact is one fact: a value with its working, or why there is none.
type SheetFact struct {
	Name    string         `json:"name"`
	Means   string         `json:"means"`
	Known   bool           `json:"known"`
	Value   any            `json:"value"`
	Unit    string         `json:"unit"`
	At      finding.Place  `json:"at"`
	Why     string         `json:"why"`
	Lacks   []string       `json:"lacks"`
	Working []working.Step `json:"working"`

	dimension quantity.Dimension
}

// NewSheet gathers the sheet of some subjects; it reads and never works out.
func NewSheet(fitting string, subjects []*fact.Subject) Sheet {
	sheet := Sheet{Fitting: fitting, Subjects: []SheetSubject{}, Cautions: []string{}}
	for _, s := range subjects {
		of := SheetSubject{Subject: s.Ref(), Facts: []SheetFact{}}
		for i := range s.Kind.Columns {
			slot, _ := s.Kind.SlotOf(s.Kind.Columns[i].Name)
			of.Facts = append(of.Facts, sheetFact(&s.Kind.Columns[i], s.Value(slot)))
		}
		for _, c := range s.Kind.Further() {
			slot, _ := s.Kind.SlotOf(c.Name)
			of.Facts = append(of.Facts, sheetFact(&c, s.Value(slot)))
		}
		sheet.Subjects = append(sheet.Subjects, of)
	}
	return sheet
}

func sheetFact(c *fact.Column, v *fact.Value) SheetFact {
	f := SheetFact{Name: c.Name, Means: c.Means, Known: v.Known(), Unit: c.Dimension.Unit(), At: v.At(), Lacks: []string{}, Working: []working.Step{}, dimension: c.Dimension}
	if !v.Known() {
		f.Why = v.Why()
		for _, m := range v.Missing() {
			if m != v && m.Column() != nil {
				f.Lacks = append(f.Lacks, m.Column().Means)
			}
		}
		return f
	}
	f.Value = said(c, v)
	f.Working = append(f.Working, v.Working()...)
	return f
}

// said is the value as JSON has it: a number, a word, or a yes or no.
func said(c *fact.Column, v *fact.Value) any {
	switch c.Sort {
	case fact.IsWord:
		return fact.WordText(v.Float())
	case fact.IsYesNo:
		return v.Float() == 1
	}
	return v.Float()
}

// JSON writes the sheet for a program.
func (s Sheet) JSON(w io.Writer) error {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", "  ")
	return out.Encode(s)
}

// Text writes the sheet for a person who wants to follow each number.
func (s Sheet) Text(w io.Writer, system quantity.System) error {
	t := &text{out: w, system: system}
	t.line("Workings of %s, from %s, as of %s", s.Fitting, s.Plan, s.On)
	for _, c := range s.Cautions {
		t.prose("", c)
	}
	for _, subject := range s.Subjects {
		t.line("")
		t.line("%s", subject.Subject)
		for _, f := range subject.Facts {
			t.sheetFact(f)
		}
	}
	t.line("")
	t.cautions(s.Cautions)
	return t.err
}

func (t *text) sheetFact(f SheetFact) {
	t.prose("  ", f.Name+" = "+t.sheetValue(f)+": "+f.Means)
	switch {
	case !f.Known:
		t.unknownFact(f)
	case len(f.Working) > 0:
		for _, step := range f.Working {
			t.step(step)
		}
	case f.At.Line > 0:
		t.line("      given at %s (%s)", where(f.At), f.At.Pointer)
	}
}

func (t *text) sheetValue(f SheetFact) string {
	switch v := f.Value.(type) {
	case nil:
		return "unknown"
	case bool:
		if v {
			return "yes"
		}
		return "no"
	case float64:
		return quantity.Format(v, f.dimension, t.system)
	default:
		return fmt.Sprint(v)
	}
}

func (t *text) unknownFact(f SheetFact) {
	if f.Why != "" {
		t.prose("      ", "because: "+f.Why)
	}
	if len(f.Lacks) > 0 {
		t.prose("      ", "for want of: "+strings.Join(f.Lacks, "; "))
	}
	if f.Why == "" && len(f.Lacks) == 0 && f.At.Line > 0 {
		t.line("      would stand at %s (%s)", where(f.At), f.At.Pointer)
	}
}

// step writes one line of a calculation in canonical units.
func (t *text) step(s working.Step) {
	line := s.Symbol + " = " + s.Formula
	if len(s.Inputs) > 0 {
		parts := make([]string, len(s.Inputs))
		for i, in := range s.Inputs {
			parts[i] = strings.TrimSpace(fmt.Sprintf("%s %s %s", in.Symbol, digits(in.Value), in.Unit))
		}
		line += "   [" + strings.Join(parts, ", ") + "]"
	}
	t.prose("      ", line)
	result := strings.TrimSpace("= " + digits(s.Value) + " " + s.Unit)
	if s.Meaning != "" {
		result += ": " + s.Meaning
	}
	t.prose("        ", result)
	t.prose("        ", s.Source.String())
}

// digits prints a number of a working with five significant figures.
func digits(v float64) string { return fmt.Sprintf("%.5g", v) }
