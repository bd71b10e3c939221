package reckon

import (
	"errors"
	"fmt"
	"strings"

	"chainwale/engine/quantity"
	"chainwale/engine/table"
)

// Refusal is all that is wrong with the inputs given to a formula.
type Refusal struct{ Problems []Problem }

// Problem is one thing that is wrong: with which input, where it stands, why it
// can't be taken and what would be right.
type Problem struct {
	// At is the place of the value, "" if it has none.
	At string
	// Input is the name of the input: "thickness", "x of entry 2 of bolts".
	Input string
	// Why is a plain sentence without its end.
	Why string
	// Expected goes on after "write"; it may be empty.
	Expected string
}

// Error is all problems, a line each.
func (r *Refusal) Error() string {
	var lines []string
	for _, p := range r.Problems {
		lines = append(lines, p.String())
	}
	return strings.Join(lines, "\n")
}

// String is the problem on one line: "thickness: 8 has no unit; write "8 mm"".
func (p Problem) String() string {
	text := p.Why
	if p.Input != "" {
		text = p.Input + ": " + text
	}
	if p.At != "" {
		text = p.At + ": " + text
	}
	if p.Expected != "" {
		text += "; write " + p.Expected
	}
	return text
}

// notCovered says why a formula or a table does not reach inputs that make sense.
type notCovered struct{ why string }

func (n *notCovered) Error() string { return n.why }

// beyond turns the error of a formula whose inputs have been found possible into
// the answer that it does not reach them.
func beyond(err error) error {
	if err == nil {
		return nil
	}
	return &notCovered{err.Error()}
}

// beyondf says in words what is not covered.
func beyondf(format string, args ...any) error { return beyond(fmt.Errorf(format, args...)) }

// refuse notes what is wrong with an input.
func (in *inputs) refuse(name, why, expected string) {
	in.problems = append(in.problems, Problem{At: in.places[name], Input: name, Why: why, Expected: expected})
}

// must notes what is wrong with an input unless a condition holds. A comparison
// with NaN is false, so an unknown number never slips through.
func (in *inputs) must(ok bool, name, format string, args ...any) {
	if !ok {
		in.refuse(name, fmt.Sprintf(format, args...), "")
	}
}

// below refuses two inputs unless the first is less than the second.
func (in *inputs) below(small, large string) {
	in.must(in.number(small) < in.number(large), small, "%s is not less than the %s, %s", in.text(small), inWords(large), in.text(large))
}

// atMost refuses two inputs if the first is more than the second.
func (in *inputs) atMost(small, large string) {
	in.must(in.number(small) <= in.number(large), small, "%s is more than the %s, %s", in.text(small), inWords(large), in.text(large))
}

// inWords is the name of an input as a sentence has it.
func inWords(name string) string { return strings.ReplaceAll(name, "_", " ") }

// impossible notes an error of the mechanics that says inputs can't be, and tells
// whether there was one.
func (in *inputs) impossible(name string, err error) bool {
	if err != nil {
		in.refuse(name, err.Error(), "")
	}
	return err != nil
}

// looked notes a name that a table does not know. Any other error of a look-up is
// handed back: it is no fault of the user's.
func (in *inputs) looked(name string, err error) error {
	var unknown *table.UnknownName
	if errors.As(err, &unknown) {
		in.refuse(name, unknown.Error(), "")
		return nil
	}
	return err
}

// refusal is what has been noted so far, nil if nothing has.
func (in *inputs) refusal() error {
	if len(in.problems) == 0 {
		return nil
	}
	return &Refusal{Problems: in.problems}
}

// badQuantity takes a refused quantity apart.
func badQuantity(err error) (why, expected string) {
	var bad *quantity.BadQuantity
	if errors.As(err, &bad) {
		return bad.Why, bad.Expected
	}
	return err.Error(), ""
}
