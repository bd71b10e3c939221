package reckon

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"chainwale/engine/quantity"
)

// ListText writes all formulas, a line each.
func ListText(w io.Writer) error {
	t := &text{out: w}
	names := 0
	for _, f := range formulas {
		names = max(names, len(f.Name))
	}
	for _, f := range formulas {
		t.line("%-*s  %s", names, f.Name, f.Title)
	}
	t.line("")
	t.line("chainwale reckon NAME shows what a formula takes and gives, with an example.")
	return t.err
}

// ListJSON writes all formulas with what they take and give.
func ListJSON(w io.Writer) error { return writeJSON(w, formulas) }

// JSON writes what the formula takes and gives.
func (f *Formula) JSON(w io.Writer) error { return writeJSON(w, f) }

// Text writes what the formula takes and gives, with an example.
func (f *Formula) Text(w io.Writer) error {
	t := &text{out: w}
	t.line("%s: %s", f.Name, f.Title)
	t.line("")
	t.line("Takes")
	t.inputs("  ", f.Inputs)
	t.line("Gives")
	t.outputs("  ", f.Results)
	t.line("Holds for")
	t.prose("  ", "  ", f.Holds)
	if dimensions := dimensionsOf(f.Inputs); len(dimensions) > 0 {
		t.line("Units")
		for _, d := range dimensions {
			t.line("  %s: %s", d.Name(), strings.Join(quantity.Spellings(d), ", "))
		}
	}
	t.line("Example")
	t.line("  %s", f.Example())
	return t.err
}

// inputs writes an input a paragraph, those of a group under it.
func (t *text) inputs(indent string, declared []Input) {
	names := 0
	for _, d := range declared {
		names = max(names, len(d.Name))
	}
	for _, d := range declared {
		first := fmt.Sprintf("%s%-*s  ", indent, names, d.Name)
		means := d.Means
		if d.Optional {
			means = "(may be left out) " + means
		}
		t.prose(first, strings.Repeat(" ", len(first)), means+"; "+d.form())
		t.inputs(indent+"    ", d.Parts)
	}
}

// outputs writes a result a paragraph, those of a group under it.
func (t *text) outputs(indent string, declared []Output) {
	names := 0
	for _, o := range declared {
		names = max(names, len(o.Name))
	}
	for _, o := range declared {
		first := fmt.Sprintf("%s%-*s  ", indent, names, o.Name)
		form := o.sort()
		if unit := o.unit(); unit != "" {
			form += " in " + unit
		}
		t.prose(first, strings.Repeat(" ", len(first)), o.Means+"; "+form)
		t.outputs(indent+"    ", o.Parts)
	}
}

// form says how an input is written.
func (d Input) form() string {
	switch d.Takes {
	case Amount:
		return fmt.Sprintf("%s, for example %q", d.Dimension.Name(), d.Example)
	case OneOf:
		return join(d.Words, "or")
	case YesNo:
		return "yes or no"
	case Parted:
		return "a group of"
	case Rows:
		return "a list, each entry a group of"
	}
	return fmt.Sprintf("a %s, for example %q", d.Takes, d.Example)
}

// dimensionsOf are the dimensions of some inputs that carry units, each once.
func dimensionsOf(declared []Input) []quantity.Dimension {
	var all []quantity.Dimension
	for _, d := range declared {
		found := dimensionsOf(d.Parts)
		if d.Takes == Amount {
			found = append(found, d.Dimension)
		}
		for _, dimension := range found {
			if !slices.Contains(all, dimension) {
				all = append(all, dimension)
			}
		}
	}
	return all
}

// Example is a command that works, to be typed in a shell.
func (f *Formula) Example() string {
	if f.byJSON() {
		return "echo '" + f.ExampleJSON() + "' | chainwale reckon " + f.Name
	}
	words := []string{"chainwale reckon " + f.Name}
	for _, d := range f.shown() {
		word := d.Name + "=" + d.Example
		if strings.Contains(d.Example, " ") {
			word = d.Name + "='" + d.Example + "'"
		}
		words = append(words, word)
	}
	return strings.Join(words, " ")
}

// shown are the inputs of the example: all but those that others stand in for.
func (f *Formula) shown() []Input {
	return slices.DeleteFunc(slices.Clone(f.Inputs), func(d Input) bool { return d.Instead })
}

// byJSON tells whether an input can't stand on the command line.
func (f *Formula) byJSON() bool {
	for _, d := range f.Inputs {
		if d.Takes == Rows || d.Takes == Parted {
			return true
		}
	}
	return false
}

// ExampleJSON is the same as one JSON object.
func (f *Formula) ExampleJSON() string {
	var parts []string
	for _, d := range f.shown() {
		value := d.Example
		if d.Takes != Rows && d.Takes != Parted {
			value = `"` + value + `"`
		}
		parts = append(parts, `"`+d.Name+`": `+value)
	}
	return "{" + strings.Join(parts, ", ") + "}"
}
