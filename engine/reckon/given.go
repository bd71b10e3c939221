package reckon

import "slices"

// What a formula asks its inputs for. An optional input that was not given is
// zero; has tells. A name that the formula never declared is noted as its fault.

// has tells whether an input was given.
func (in *inputs) has(name string) bool {
	in.declares(name)
	_, given := in.values[name]
	return given
}

// number is an amount in its canonical unit, or a share.
func (in *inputs) number(name string) float64 { return valueOf[float64](in, name) }

// count is a whole number of things.
func (in *inputs) count(name string) int { return valueOf[int](in, name) }

// word is a word or a name, "" if it was not given.
func (in *inputs) word(name string) string { return valueOf[string](in, name) }

// yes tells whether a yes or no is a yes.
func (in *inputs) yes(name string) bool { return valueOf[bool](in, name) }

// rows are the entries of a list.
func (in *inputs) rows(name string) []*inputs { return valueOf[[]*inputs](in, name) }

// group is a group of values; one that was not given has none.
func (in *inputs) group(name string) *inputs {
	if g := valueOf[*inputs](in, name); g != nil {
		return g
	}
	return &inputs{undeclared: new([]string)}
}

// text is an input as the user wrote it.
func (in *inputs) text(name string) string { return in.texts[name] }

func (in *inputs) declares(name string) {
	known := slices.ContainsFunc(in.declared, func(d Input) bool { return d.Name == name })
	if !known && !slices.Contains(*in.undeclared, name) {
		*in.undeclared = append(*in.undeclared, name)
	}
}

func valueOf[T any](in *inputs, name string) T {
	in.declares(name)
	value, _ := in.values[name].(T)
	return value
}

// declaration is how an input is declared.
func (in *inputs) declaration(name string) Input {
	for _, d := range in.declared {
		if d.Name == name {
			return d
		}
	}
	return Input{}
}
