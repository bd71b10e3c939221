package rule

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"chainwale/engine/fact"
	"chainwale/engine/quantity"

	"github.com/expr-lang/expr"
	"pgregory.net/rapid"
)

// expr's own virtual machine is the oracle: on finite facts our closures must
// give what it gives. Where we say that something can't be told there is nothing
// to compare, because the machine carries infinities and NaN on.

// twin is one expression in two spellings: ours, and that of the machine, which
// knows no quantities.
type twin struct{ ours, machine string }

// spell puts parts together in both spellings.
func spell(format string, parts ...twin) twin {
	ours, machine := make([]any, len(parts)), make([]any, len(parts))
	for i, p := range parts {
		ours[i], machine[i] = p.ours, p.machine
	}
	return twin{fmt.Sprintf(format, ours...), fmt.Sprintf(format, machine...)}
}

// author writes random expressions that are well typed and of one dimension.
type author struct {
	t     *rapid.T
	kind  *fact.Kind
	depth int
}

func (a *author) pick(n int) int { return rapid.IntRange(0, n-1).Draw(a.t, "pick") }

// deeper writes an inner part.
func (a *author) deeper(f func() twin) twin {
	a.depth++
	defer func() { a.depth-- }()
	return f()
}

func (a *author) factsOf(match func(fact.Slot) bool) []string {
	var names []string
	for _, s := range a.kind.Slots {
		if match(s) {
			names = append(names, s.Name)
		}
	}
	return names
}

func (a *author) fact(match func(fact.Slot) bool) twin {
	names := a.factsOf(match)
	name := names[a.pick(len(names))]
	return twin{name, name}
}

func (a *author) number(d quantity.Dimension) twin {
	inner := func() twin { return a.deeper(func() twin { return a.number(d) }) }
	plain := func() twin { return a.deeper(func() twin { return a.number(quantity.Bare) }) }
	if a.depth > 4 {
		return a.leaf(d)
	}
	switch a.pick(11) {
	case 0:
		return spell("(%s + %s)", inner(), inner())
	case 1:
		return spell("%s - (%s)", inner(), inner())
	case 2:
		return spell("(%s) * (%s)", inner(), plain())
	case 3:
		return spell("(%s) / (%s)", inner(), plain())
	case 4:
		return spell("max(%s, %s, %s)", inner(), inner(), inner())
	case 5:
		return spell("min(%s, %s)", inner(), inner())
	case 6:
		return spell("-abs(%s)", inner())
	case 7:
		return spell("(%s ? %s : %s)", a.deeper(a.condition), inner(), inner())
	case 8:
		if d == quantity.Bare {
			of := []quantity.Dimension{quantity.Length, quantity.Force}[a.pick(2)]
			return spell("(%s) / (%s)", a.deeper(func() twin { return a.number(of) }), a.deeper(func() twin { return a.number(of) }))
		}
		return spell("(%s) ** %s", inner(), twin{"1", "1"})
	case 9:
		if d == quantity.Bare {
			n := fmt.Sprint(rapid.IntRange(-3, 3).Draw(a.t, "power"))
			return spell("(%s) ** %s", inner(), twin{n, n})
		}
	}
	return a.leaf(d)
}

func (a *author) leaf(d quantity.Dimension) twin {
	facts := func(s fact.Slot) bool { return s.Sort == fact.IsNumber && s.Dimension == d }
	if a.pick(3) > 0 && len(a.factsOf(facts)) > 0 {
		return a.fact(facts)
	}
	n := rapid.IntRange(0, 40).Draw(a.t, "literal")
	if d == quantity.Bare {
		text := []string{fmt.Sprint(n), fmt.Sprintf("%d.25", n)}[a.pick(2)]
		return twin{text, text}
	}
	return twin{fmt.Sprintf("'%d %s'", n, d.Unit()), fmt.Sprintf("%d.0", n)}
}

func (a *author) condition() twin {
	if a.depth > 5 {
		return a.fact(func(s fact.Slot) bool { return s.Sort == fact.IsYesNo })
	}
	inner := func() twin { return a.deeper(a.condition) }
	switch a.pick(9) {
	case 0:
		return spell("(%s and %s)", inner(), inner())
	case 1:
		return spell("(%s or (%s))", inner(), inner())
	case 2:
		return spell("not (%s)", inner())
	case 3:
		return spell("(%s ? %s : %s)", inner(), inner(), inner())
	case 4:
		return a.words()
	case 5:
		return a.fact(func(s fact.Slot) bool { return s.Sort == fact.IsYesNo })
	}
	d := []quantity.Dimension{quantity.Length, quantity.Force, quantity.Bare, quantity.Angle}[a.pick(4)]
	side := func() twin { return a.deeper(func() twin { return a.number(d) }) }
	operators := []string{"<", "<=", ">", ">="}
	c := spell("%s "+operators[a.pick(4)]+" %s", side(), side())
	if a.pick(5) == 0 {
		c = spell("%s "+operators[a.pick(4)]+" %s", c, side())
	}
	return spell("(%s)", c)
}

// words compares a word of a closed list.
func (a *author) words() twin {
	slots := a.factsOf(func(s fact.Slot) bool { return s.Sort == fact.IsWord && len(s.Words) > 0 })
	name := slots[a.pick(len(slots))]
	i, _ := a.kind.SlotOf(name)
	words := a.kind.Slots[i].Words
	text := ""
	switch a.pick(4) {
	case 0:
		text = fmt.Sprintf("%s == %q", name, words[a.pick(len(words))])
	case 1:
		text = fmt.Sprintf("'%s' != %s", words[a.pick(len(words))], name)
	case 2:
		text = fmt.Sprintf("%s in [%q, %q]", name, words[0], words[a.pick(len(words))])
	default:
		text = fmt.Sprintf("%s not in [%q]", name, words[a.pick(len(words))])
	}
	return twin{text, text}
}

// someFacts draws a row of finite facts, and the same as nested maps.
func someFacts(t *rapid.T, k *fact.Kind) ([]float64, map[string]any) {
	row, env := make([]float64, len(k.Slots)), map[string]any{}
	for i, s := range k.Slots {
		var v any
		switch s.Sort {
		case fact.IsYesNo:
			b := rapid.Bool().Draw(t, s.Name)
			if v = b; b {
				row[i] = 1
			}
		case fact.IsWord:
			w := "something"
			if len(s.Words) > 0 {
				w = rapid.SampledFrom(s.Words).Draw(t, s.Name)
			}
			row[i], v = fact.WordID(w), w
		default:
			row[i] = float64(rapid.IntRange(-400, 4000).Draw(t, s.Name)) / 8
			v = row[i]
		}
		put(env, strings.Split(s.Name, "."), v)
	}
	return row, env
}

func put(env map[string]any, path []string, v any) {
	for _, p := range path[:len(path)-1] {
		if env[p] == nil {
			env[p] = map[string]any{}
		}
		env = env[p].(map[string]any)
	}
	env[path[len(path)-1]] = v
}

// compileFor compiles a text outside any file.
func compileFor(k *fact.Kind) (*compiler, func(string) text) {
	c := &compiler{kind: k, problems: &problems{}}
	return c, func(s string) text {
		p := &problems{}
		d := readDocument("x.yaml", []byte("x: |\n  "+strings.ReplaceAll(s, "\n", "\n  ")+"\n"), p)
		if d == nil {
			return text{}
		}
		return text{value: d.root.Content[1].Value, doc: d, node: d.root.Content[1]}
	}
}

func TestClosuresAgreeWithTheMachine(t *testing.T) {
	k := catalogue(t).Kind("landing")
	decided, numbers := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		row, env := someFacts(t, k)
		a := &author{t: t, kind: k}
		e := a.condition()
		if len(e.ours) <= maxSource {
			decided += agreeOnCondition(t, k, e, row, env)
		}
		a.depth = 0
		if n := a.number(quantity.Length); len(n.ours) <= maxSource && !looksLikeQuantity.MatchString(n.ours) {
			numbers += agreeOnNumber(t, k, n, row, env)
		}
	})
	if !testing.Short() && (decided < 20 || numbers < 20) {
		t.Errorf("only %d conditions and %d numbers could be compared", decided, numbers)
	}
}

func agreeOnCondition(t *rapid.T, k *fact.Kind, e twin, row []float64, env map[string]any) int {
	c, in := compileFor(k)
	j, ok := c.condition(in(e.ours))
	if !ok {
		if nested(c.problems) {
			return 0
		}
		t.Fatalf("%s\nis refused: %s", e.ours, lines(c.problems.list))
	}
	got := j.eval(&frame{facts: row, sides: make([]side, len(c.compared))})
	want := run(t, e.machine, env)
	if got == unknown {
		return 0
	}
	if want != any(got == yes) {
		t.Fatalf("%s\nours %v, machine %v", e.ours, got, want)
	}
	return 1
}

// nested tells whether the expression was refused for its depth alone.
func nested(p *problems) bool {
	return len(p.list) == 1 && strings.Contains(p.list[0].Message, "nested")
}

func agreeOnNumber(t *rapid.T, k *fact.Kind, e twin, row []float64, env map[string]any) int {
	c, in := compileFor(k)
	m, ok := c.number(in(e.ours))
	if !ok {
		if nested(c.problems) {
			return 0
		}
		t.Fatalf("%s\nis refused: %s", e.ours, lines(c.problems.list))
	}
	got := m.eval(&frame{facts: row, sides: make([]side, len(c.compared))})
	if math.IsNaN(got) {
		return 0
	}
	want := run(t, e.machine, env)
	if w, ok := asFloat(want); !ok || w != got {
		t.Fatalf("%s\nours %v, machine %v", e.ours, got, want)
	}
	return 1
}

func asFloat(v any) (float64, bool) {
	switch v := v.(type) {
	case float64:
		return v, true
	case int:
		return float64(v), true
	}
	return 0, false
}

func run(t *rapid.T, source string, env map[string]any) any {
	program, err := expr.Compile(source, expr.Env(env))
	if err != nil {
		t.Fatalf("the machine refuses %s: %v", source, err)
	}
	v, err := expr.Run(program, env)
	if err != nil {
		t.Fatalf("the machine fails on %s: %v", source, err)
	}
	return v
}
