package reckon

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"chainwale/engine/quantity"
)

// Results are values with names that keep their order.
type Results []Result

// Result is a value with its name: a Measured, a bare float64, a string, a list of
// Measured or of Results.
type Result struct {
	Name  string
	Value any
}

// Measured is a number in the canonical unit of its dimension.
type Measured struct {
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`

	dimension quantity.Dimension
}

// MarshalJSON writes an object whose keys keep their order.
func (r Results) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, result := range r {
		if i > 0 {
			b.WriteByte(',')
		}
		name, err := json.Marshal(result.Name)
		if err != nil {
			return nil, err
		}
		value, err := json.Marshal(result.Value)
		if err != nil {
			return nil, err
		}
		b.Write(append(append(name, ':'), value...))
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// inOrder makes results as they are declared. One that is lacking, left over or of
// another sort is a fault of the formula.
func inOrder(declared []Output, found map[string]any) (Results, error) {
	results := Results{}
	for _, o := range declared {
		v, ok := found[o.Name]
		if !ok && o.Sometimes {
			continue
		}
		value, err := o.value(v)
		if err != nil {
			return nil, fmt.Errorf("result %s: %w", o.Name, err)
		}
		results = append(results, Result{o.Name, value})
	}
	for name := range found {
		if !slices.ContainsFunc(declared, func(o Output) bool { return o.Name == name }) {
			return nil, fmt.Errorf("result %s is not declared", name)
		}
	}
	return results, nil
}

// value gives a found value the form that is declared.
func (o Output) value(v any) (any, error) {
	switch v := v.(type) {
	case float64:
		switch {
		case o.Many:
		case o.Gives == Amount:
			return Measured{v, o.Dimension.Unit(), o.Dimension}, nil
		case o.Gives == Share:
			return v, nil
		}
	case string:
		if o.Gives == Named {
			return v, nil
		}
	case []float64:
		list := []Measured{}
		for _, n := range v {
			list = append(list, Measured{n, o.Dimension.Unit(), o.Dimension})
		}
		if o.Many && o.Gives == Amount {
			return list, nil
		}
	case []map[string]any:
		groups := []Results{}
		for _, g := range v {
			group, err := inOrder(o.Parts, g)
			if err != nil {
				return nil, err
			}
			groups = append(groups, group)
		}
		return groups, nil
	}
	return nil, fmt.Errorf("%T is no %s", v, o.sort())
}

func (r Results) finite() bool {
	for _, result := range r {
		switch v := result.Value.(type) {
		case float64:
			if !isFinite(v) {
				return false
			}
		case Measured:
			if !isFinite(v.Value) {
				return false
			}
		case []Measured:
			for _, m := range v {
				if !isFinite(m.Value) {
					return false
				}
			}
		case []Results:
			for _, group := range v {
				if !group.finite() {
					return false
				}
			}
		}
	}
	return true
}

func isFinite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
