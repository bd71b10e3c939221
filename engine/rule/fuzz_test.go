package rule

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/expr-lang/expr"
	"github.com/expr-lang/expr/types"
)

// FuzzCompile: no text brings the compiler or what it makes down; what it takes
// for an expression expr's own checker takes for one, and on unknown facts no
// comparison comes out true.
func FuzzCompile(f *testing.F) {
	for _, s := range []string{
		"hole > end", "not fitting.hidden and stay.toggle", `fitting.kind in ["tang"]`, "'12 mm' < hole", "hole ? 1 : 2", "max(hole, '3 mm') >= end ** 2 / hole",
		"((((", "!x", "a // b", "12 mm", "1/4 in", "1e400", "0x10", "stay[0]", "all(stay, # > 1)", "let x = 1; x", "a ?? b", "a?.b", "1..2", "not not not stay.toggle",
		"'\\u{1F600}' == fitting.kind", "b'x'", "`x`", "if hole > end {1} else {2}", "- - - 1", "hole | abs", "1 < 2 < 3", "::abs(1)", "{a: 1}", "[1][0]", "§", "",
	} {
		f.Add(s)
	}
	k := catalogue(f).Kind("landing")
	env := types.Map{}
	for _, s := range k.Slots {
		declare(env, strings.Split(s.Name, "."), [...]types.Type{types.Float64, types.String, types.Bool}[s.Sort])
	}
	f.Fuzz(func(t *testing.T, s string) {
		in := textOf(s)
		c := &compiler{kind: k, problems: &problems{}}
		if j, ok := c.condition(in); ok {
			frame := &frame{facts: row(t, k, nil), sides: make([]side, len(c.compared))}
			if len(c.reads) > 0 && !strings.ContainsAny(s, "0123456789'\"`") && j.eval(frame) != unknown {
				t.Errorf("%q is decided on nothing", s)
			}
			if !strings.ContainsAny(s, "'\"`") {
				if _, err := expr.Compile(s, expr.Env(env), expr.AsBool()); err != nil {
					t.Errorf("expr refuses %q: %v", s, err)
				}
			}
		} else if len(c.problems.list) == 0 {
			t.Errorf("%q is refused without a word", s)
		}
		c = &compiler{kind: k, problems: &problems{}}
		m, ok := c.number(in)
		if !ok && len(c.problems.list) == 0 {
			t.Errorf("%q is refused without a word", s)
		}
		if ok && math.IsInf(m.eval(&frame{facts: row(t, k, nil), sides: make([]side, len(c.compared))}), 0) {
			t.Errorf("%q is infinite", s)
		}
	})
}

func declare(env types.Map, path []string, t types.Type) {
	for _, p := range path[:len(path)-1] {
		if env[p] == nil {
			env[p] = types.Map{}
		}
		env = env[p].(types.Map)
	}
	env[path[len(path)-1]] = t
}

// FuzzLoad: no file brings the loader down, and a pack that loads can be proven
// and judges nothing as holding on no facts.
func FuzzLoad(f *testing.F) {
	files, err := filepath.Glob("testdata/pack/*.yaml")
	if err != nil {
		f.Fatal(err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	for _, s := range []string{goodRule, "a: &a [*a]\n", "a: ! b\n", "? [a]\n: b\n", "id: |\n", "bands:\n  - {at_least: max(2 * t, d)}\n", "on: landing\nbands:\n- at_least: '\n", "says: '{'\n"} {
		f.Add([]byte(s))
	}
	c := catalogue(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		fsys := fstest.MapFS{"p/pack.yaml": {Data: []byte(goodHead)}, "p/a.yaml": {Data: data}}
		p, problems := Load(fsys, "p", "my", c, LoadOptions{})
		if (p == nil) != (len(problems) > 0) {
			t.Fatalf("a pack and %d problems", len(problems))
		}
		for _, q := range problems {
			if q.At.Line < 1 || q.At.Column < 1 || q.At.File == "" || q.Message == "" {
				t.Errorf("%+v", q)
			}
		}
		if p != nil {
			p.Prove()
			for _, m := range p.Unnoticed() {
				if s, ok := m.Noticing(); ok && !m.NoticedBy(s) {
					t.Errorf("%s\nis not noticed by\n%s", m, s)
				}
			}
		}
	})
}
