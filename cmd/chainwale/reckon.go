package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/plan/document"
	"chainwale/engine/quantity"
	"chainwale/engine/reckon"
)

type reckonVerb struct {
	Formula string   `arg:"" optional:"" help:"The formula; without it all are listed."`
	Inputs  []string `arg:"" optional:"" name:"name=value" help:"Its inputs, for example thickness='8 mm'."`
	In      string   `help:"- reads the inputs from standard input as one JSON object." placeholder:"-"`
	As      string   `help:"How to print: text or json." enum:"text,json" default:"text"`
}

// Help is what the verb's own help says beyond its flags.
func (reckonVerb) Help() string {
	return `Quantities carry their unit: 8 mm, 1/2 in, 8.6 kN, 205 MPa, 17 %. Names may be written with spaces, hyphens or underscores. Lists and groups can be given as JSON only.

reckon clause STANDARD CLAUSE runs one clause of a design standard: chainwale reckon clause asme-bth-1 3-3.3.4. Without inputs it shows what the clause takes; chainwale standard show STANDARD lists the clauses.

Inputs are read from standard input where --in - is given, or where no name=value stands on the line and standard input is no terminal. At a terminal, a formula without inputs shows what it takes. Where nothing at all comes on standard input, the same is shown as an error, since a script that meant to give inputs must not take help for an answer.

Results go to standard output, errors to standard error. Exit status:
  2  the inputs are at fault: a name, a unit, a number that can't be
  1  not covered: the formula or a table does not reach these inputs; there is no number
  0  done`
}

// standardInput is how problems name the place that JSON came from.
const standardInput = "standard input"

// Run reckons one formula, or shows what there is.
func (v reckonVerb) Run(s streams) error {
	name, line := v.split()
	switch {
	case v.In != "" && v.In != "-":
		return v.refuse(s, badInput("inputs come from a file through standard input only", "--in -, not --in "+v.In))
	case v.In != "" && len(line) > 0:
		return v.refuse(s, badInput("inputs stand both on the line and on standard input", "all of them in one place"))
	case name == "" && v.In == "" && len(line) == 0:
		return v.list(s)
	}
	f, done, err := v.formula(name)
	if err != nil {
		return v.refuse(s, err)
	}
	defer done()
	if len(line) == 0 {
		if v.In == "" && isTerminal(s.in) {
			return v.show(s.out, f)
		}
		src, err := io.ReadAll(io.LimitReader(s.in, document.MostBytes+1))
		if err != nil {
			return v.refuse(s, badInput("standard input can't be read: "+err.Error(), ""))
		}
		if len(bytes.TrimSpace(src)) == 0 {
			return v.needsInputs(s, f)
		}
		if line, err = members(src, f); err != nil {
			return v.refuse(s, err)
		}
	}
	answer, err := f.Run(line)
	if err != nil {
		return v.refuse(s, err)
	}
	return v.print(s, answer)
}

// formula finds what is to be reckoned: an entry of the register, or a clause of a
// standard. done lets go of what it needed.
func (v reckonVerb) formula(name string) (f *reckon.Formula, done func(), err error) {
	if words := strings.Fields(name); len(words) > 0 && strings.EqualFold(words[0], "clause") {
		return clauseFormula(words[1:])
	}
	f, err = reckon.Find(name)
	return f, func() {}, err
}

// split parts the words on the line. Words before the first name=value belong to
// the formula's name, so that "bolt group" needs no quotation marks; a word without
// = behind one belongs to its value, so that neither does "8 mm".
func (v reckonVerb) split() (name string, line []reckon.Member) {
	name = v.Formula
	words := v.Inputs
	if strings.Contains(name, "=") {
		name, words = "", append([]string{name}, words...)
	}
	for _, word := range words {
		input, value, given := strings.Cut(word, "=")
		switch {
		case given:
			line = append(line, reckon.Member{Name: input, Value: reckon.Value{Text: value}})
		case len(line) == 0:
			name += " " + word
		default:
			last := &line[len(line)-1].Value
			last.Text += " " + word
		}
	}
	return name, line
}

// refuse prints what is wrong with the inputs. Any other error is ours.
func (v reckonVerb) refuse(s streams, err error) error {
	var refusal *reckon.Refusal
	if errors.As(err, &refusal) {
		for _, p := range refusal.Problems {
			lead := ""
			if p.At == "" {
				lead = "chainwale: "
			}
			fmt.Fprintf(s.err, "%s%s\n", lead, p)
		}
		return ended(statusInput)
	}
	return err
}

// badInput is a refusal that names no single input.
func badInput(why, expected string) error {
	return &reckon.Refusal{Problems: []reckon.Problem{{Why: why, Expected: expected}}}
}

// needsInputs says that none came, and which there are.
func (v reckonVerb) needsInputs(s streams, f *reckon.Formula) error {
	fmt.Fprintf(s.err, "chainwale: nothing came on standard input, and %s needs inputs\n\n", f.Name)
	if err := f.Text(s.err); err != nil {
		return err
	}
	return ended(statusInput)
}

func (v reckonVerb) list(s streams) error {
	if v.As == "json" {
		return reckon.ListJSON(s.out)
	}
	return reckon.ListText(s.out)
}

func (v reckonVerb) show(w io.Writer, f *reckon.Formula) error {
	if v.As == "json" {
		return f.JSON(w)
	}
	return f.Text(w)
}

func (v reckonVerb) print(s streams, a reckon.Answer) error {
	write := func() error { return a.Text(s.out, quantity.Metric) }
	if v.As == "json" {
		write = func() error { return a.JSON(s.out) }
	}
	if err := write(); err != nil {
		return err
	}
	if !a.Covered {
		return ended(statusFindings)
	}
	return nil
}

// members reads the inputs of a formula out of one JSON object.
func members(src []byte, f *reckon.Formula) ([]reckon.Member, error) {
	if !bytes.HasPrefix(bytes.TrimLeft(bytes.TrimPrefix(src, []byte("\xef\xbb\xbf")), " \t\r\n"), []byte("{")) {
		return nil, &reckon.Refusal{Problems: []reckon.Problem{{At: standardInput + ":1:1", Why: "no JSON object begins here", Expected: "for example " + f.ExampleJSON()}}}
	}
	root, problems := document.Read(standardInput, src)
	if len(problems) > 0 {
		refusal := &reckon.Refusal{}
		for _, p := range problems {
			refusal.Problems = append(refusal.Problems, reckon.Problem{At: place(p.At), Why: p.Message, Expected: p.Expected})
		}
		return nil, refusal
	}
	return valueOf(root).Members, nil
}

// valueOf is a JSON value as a formula takes it, with its place.
func valueOf(n *document.Node) reckon.Value {
	v := reckon.Value{Text: n.Text, At: place(n.At)}
	switch {
	case n.Empty():
		v.Kind = reckon.Nothing
	case n.Kind == document.List:
		v.Kind = reckon.List
		for _, item := range n.Items {
			v.Items = append(v.Items, valueOf(item))
		}
	case n.Kind == document.Mapping:
		v.Kind = reckon.Group
		for _, m := range n.Members {
			v.Members = append(v.Members, reckon.Member{Name: m.Key, Value: valueOf(m), At: place(m.KeyAt)})
		}
	}
	return v
}

// place is file:line:column.
func place(p finding.Place) string { return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column) }

// isTerminal tells whether a person sits at standard input. The null device looks
// like a terminal and is none.
func isTerminal(in io.Reader) bool {
	file, ok := in.(*os.File)
	if !ok {
		return false
	}
	info, err := file.Stat()
	if err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return false
	}
	null, err := os.Stat(os.DevNull)
	return err != nil || !os.SameFile(info, null)
}
