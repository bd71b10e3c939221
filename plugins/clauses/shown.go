package clauses

import "chainwale/engine/working"

// Shown is a result that can show how it came about, as every formula's is.
type Shown interface{ Working() []working.Step }

// By makes a fact's Reckon of a calculation and of the number that the fact takes
// from it. Of the calculation's steps those with the symbols named are shown, in the
// order of the calculation; all of them where none is named.
func By[R Shown](reckon func(Row) (R, error), value func(R) float64, symbols ...string) func(Row) (Result, error) {
	return func(r Row) (Result, error) {
		result, err := reckon(r)
		if err != nil {
			return Result{}, err
		}
		return Result{Value: value(result), Working: func() []working.Step { return Steps(result, symbols...) }}, nil
	}
}

// Steps are the steps of a calculation with the symbols named, in the calculation's
// order; all of them where none is named.
func Steps(of Shown, symbols ...string) []working.Step {
	all := of.Working()
	if len(symbols) == 0 {
		return all
	}
	wanted := make(map[string]bool, len(symbols))
	for _, s := range symbols {
		wanted[s] = true
	}
	var some []working.Step
	for _, step := range all {
		if wanted[step.Symbol] {
			some = append(some, step)
		}
	}
	return some
}

// Inputs makes the inputs of a step out of symbol, value and unit, three by three.
func Inputs(parts ...any) []working.Input {
	var list []working.Input
	for i := 0; i+2 < len(parts); i += 3 {
		list = append(list, working.Input{Symbol: parts[i].(string), Value: parts[i+1].(float64), Unit: parts[i+2].(string)})
	}
	return list
}
