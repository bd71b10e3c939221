package main

import (
	"errors"
	"fmt"
	"math"

	facts "chainwale/engine/fact"
	"chainwale/engine/rule"

	"cel.dev/cel-go/cel"
	"cel.dev/cel-go/common/types"
	"github.com/expr-lang/expr"
	"github.com/expr-lang/expr/vm"
)

// engine judges all rows by all trials and tells how many hold.
type engine struct {
	name  string
	judge func() (holds int, err error)
}

// engines are set up before they are measured: texts are compiled, and every row
// lies ready in the form that its engine reads fastest.
func engines(rows []landing) ([]engine, error) {
	var all []engine
	for _, e := range []struct {
		name string
		make func([]landing) (func() (int, error), error)
	}{
		{"closures by hand", byHand},
		{"chainwale", ours},
		{"expr's virtual machine", exprVM},
		{"cel-go", celGo},
	} {
		judge, err := e.make(rows)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", e.name, err)
		}
		all = append(all, engine{e.name, judge})
	}
	return all, agree(all)
}

// agree tells which engines don't find the same.
func agree(all []engine) error {
	want := -1
	for _, e := range all {
		holds, err := e.judge()
		switch {
		case err != nil:
			return fmt.Errorf("%s: %w", e.name, err)
		case want < 0:
			want = holds
		case holds != want:
			return fmt.Errorf("%s finds that %d hold, %s %d", all[0].name, want, e.name, holds)
		}
	}
	if judged := len(trials) * 100; want < judged/10 {
		return fmt.Errorf("only %d hold", want)
	}
	return nil
}

// byHand calls the Go functions, one after the other, on plain structs.
func byHand(rows []landing) (func() (int, error), error) {
	return func() (holds int, err error) {
		for i := range rows {
			for j := range trials {
				if trials[j].byHand(&rows[i]) {
					holds++
				}
			}
		}
		return holds, nil
	}, nil
}

// ours evaluates rules of a loaded pack on rows of slots, in three-valued logic,
// each with its grade, what there is and what is wanted.
func ours(rows []landing) (func() (int, error), error) {
	c, err := facts.TheCatalogue()
	if err != nil {
		return nil, err
	}
	p, err := pack(c, rows)
	if err != nil {
		return nil, err
	}
	slots, err := slotted(c.Kind("landing"), rows)
	var evaluators []*rule.Evaluator
	for _, r := range p.Rules {
		evaluators = append(evaluators, r.Evaluator())
	}
	return func() (holds int, err error) {
		for _, row := range slots {
			for _, e := range evaluators {
				if e.Holds(row) {
					holds++
				}
			}
		}
		return holds, nil
	}, err
}

// slotted lays rows out as the rules of a kind read them.
func slotted(k *facts.Kind, rows []landing) ([][]float64, error) {
	slots := make([][]float64, len(rows))
	for i, l := range rows {
		slots[i] = make([]float64, len(k.Slots))
		for j := range slots[i] {
			slots[i][j] = math.NaN()
		}
		for f := range l.facts() {
			slot, ok := k.SlotOf(f.name)
			if !ok {
				return nil, fmt.Errorf("a landing has no fact %s", f.name)
			}
			slots[i][slot] = f.value
		}
	}
	return slots, nil
}

// exprVM runs expr's own back end in its best setting: the environment is a struct
// by value, boxed once, and one machine serves all runs.
func exprVM(rows []landing) (func() (int, error), error) {
	var programs []*vm.Program
	for _, t := range trials {
		p, err := expr.Compile(t.text(), expr.Env(landing{}), expr.AsBool())
		if err != nil {
			return nil, err
		}
		programs = append(programs, p)
	}
	boxed := make([]any, len(rows))
	for i, l := range rows {
		boxed[i] = l
	}
	machine := &vm.VM{}
	return func() (holds int, err error) {
		for _, row := range boxed {
			for _, p := range programs {
				out, err := machine.Run(p, row)
				if err != nil {
					return 0, err
				}
				if out.(bool) {
					holds++
				}
			}
		}
		return holds, nil
	}, nil
}

// celGo runs cel-go in its best setting: variables with dotted names that are
// declared as doubles, and activations whose values are CEL's own.
func celGo(rows []landing) (func() (int, error), error) {
	var declared []cel.EnvOption
	for f := range rows[0].facts() {
		declared = append(declared, cel.Variable(f.name, cel.DoubleType))
	}
	env, err := cel.NewEnv(declared...)
	if err != nil {
		return nil, err
	}
	var programs []cel.Program
	for _, t := range trials {
		tree, issues := env.Compile(t.celText())
		if issues.Err() != nil {
			return nil, issues.Err()
		}
		p, err := env.Program(tree, cel.EvalOptions(cel.OptOptimize))
		if err != nil {
			return nil, err
		}
		programs = append(programs, p)
	}
	activations, err := activated(rows)
	return func() (holds int, err error) {
		for _, row := range activations {
			for _, p := range programs {
				out, _, err := p.Eval(row)
				if err != nil {
					return 0, err
				}
				if out == types.True {
					holds++
				}
			}
		}
		return holds, nil
	}, err
}

func activated(rows []landing) ([]cel.Activation, error) {
	var all []cel.Activation
	var faults []error
	for _, l := range rows {
		values := map[string]any{}
		for f := range l.facts() {
			values[f.name] = types.Double(f.value)
		}
		a, err := cel.NewActivation(values)
		all, faults = append(all, a), append(faults, err)
	}
	return all, errors.Join(faults...)
}
