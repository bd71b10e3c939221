package rule

import (
	"testing"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/parser"
	"github.com/expr-lang/expr/parser/lexer"
	"pgregory.net/rapid"
)

// TestWrittenKeepsTheBrackets: a part is printed as its author wrote it, whole.
func TestWrittenKeepsTheBrackets(t *testing.T) {
	tests := []struct{ expression, left, right string }{
		{"a + b > c", "a + b", "c"},
		{"(a + b) * 2 > max(c, (d))", "(a + b) * 2", "max(c, (d))"},
		{"((a + b)) > (c)", "a + b", "c"},
		{"stay.a.b   *\n 2 >= -x", "stay.a.b * 2", "-x"},
		{"(k ? a : (b - 1)) < c", "k ? a : (b - 1)", "c"},
		{"a ** -(2) < abs(b) - (c + d)", "a ** -(2)", "abs(b) - (c + d)"},
		{"a in ['b', 'c']", "a", "['b', 'c']"},
	}
	for _, test := range tests {
		tree, err := parser.Parse(test.expression)
		if err != nil {
			t.Fatal(err)
		}
		_, in := compileFor(nil)
		s, node, ok := parse(in(test.expression), &problems{})
		if !ok {
			t.Fatalf("%s is refused", test.expression)
		}
		b, isBinary := node.(*ast.BinaryNode)
		if !isBinary {
			t.Fatalf("%s is %T", test.expression, tree.Node)
		}
		if l, r := s.written(b.Left), s.written(b.Right); l != test.left || r != test.right {
			t.Errorf("%s: %q and %q", test.expression, l, r)
		}
	}
}

// TestEveryCharacterKeepsItsPlace writes texts in each style YAML has and looks
// for a marker's place in the file.
func TestEveryCharacterKeepsItsPlace(t *testing.T) {
	tests := []struct {
		name, file string
		character  int
		line, col  int
	}{
		{"plain", "x: ab § cd", 5, 1, 9},
		{"single quotes", "x: 'a''b''c'", 4, 1, 11},
		{"double quotes", `x: "a\"b\x41\u00e9\U0001F600c"`, 6, 1, 29},
		{"block", "x:\n  y: |\n    ab\n\n      cd\n", 7, 5, 8},
		{"block with an indentation", "x: |2\n    ab\n", 3, 2, 6},
		{"folded: the beginning", "x: >\n  ab\n  cd\n", 4, 1, 4},
		{"plain over two lines: the beginning", "x: ab\n  cd\n", 4, 1, 4},
		{"the end", "x: ab", 2, 1, 6},
		{"beyond the end", "x: ab", 9, 1, 6},
	}
	for _, test := range tests {
		d := readDocument("f", []byte(test.file), &problems{})
		n := d.root.Content[1]
		if len(n.Content) > 0 {
			n = n.Content[1]
		}
		if at := (text{value: n.Value, doc: d, node: n}).inside(test.character); at.Line != test.line || at.Column != test.col {
			t.Errorf("%s: %d:%d, want %d:%d", test.name, at.Line, at.Column, test.line, test.col)
		}
	}
}

// TestLexerGivesTokensInOrder is what checkGap and extent rely on.
func TestLexerGivesTokensInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune("ab.1'\"§ ()[]<>=!*/+-?:,\n\t#")), 0, 40, -1).Draw(t, "text")
		s, _, ok := parse(textOf(text), &problems{})
		if !ok {
			return
		}
		end := 0
		for _, token := range s.tokens {
			if token.Kind != lexer.EOF && (token.From < end || token.To < token.From || token.To > len(s.runes)) {
				t.Fatalf("%q: token %v at %d:%d after %d", text, token, token.From, token.To, end)
			}
			end = max(end, token.To)
		}
	})
}

func textOf(s string) text {
	_, in := compileFor(nil)
	if t := in(s); t.given() && t.value == s+"\n" {
		return t
	}
	d := &document{file: "x", lines: []string{""}}
	return text{value: s, doc: d, node: scalar(s)}
}

func TestQuantitiesAlone(t *testing.T) {
	k := catalogue(t).Kind("landing")
	tests := []struct {
		expression string
		value      float64
		unit       string
	}{
		{"12 mm", 12, "mm"}, {"'12 mm'", 12, "mm"}, {`"12 mm"`, 12, "mm"}, {"1/4 in", 6.35, "mm"}, {"5 1/4 in", 133.35, "mm"}, {"-3 deg", -3, "deg"},
		{"17 %", 0.17, ""}, {"1.5", 1.5, ""}, {"12", 12, ""}, {"1.5e3 N", 1500, "N"}, {"2 * '12 mm'", 24, "mm"}, {"3 / 2", 1.5, ""}, {"10 years", 10, "year"},
	}
	for _, test := range tests {
		c, in := compileFor(k)
		m, ok := c.number(in(test.expression))
		if !ok {
			t.Errorf("%s is refused: %s", test.expression, lines(c.problems.list))
			continue
		}
		if got := m.eval(&frame{}); got != test.value && (got-test.value)/test.value > 1e-12 || m.dimension.Unit() != test.unit {
			t.Errorf("%s is %v %s", test.expression, got, m.dimension.Unit())
		}
	}
}

// TestExpressionsAreNotTakenForQuantities: a number before a fact's name is an
// expression, though a unit could stand there.
func TestExpressionsAreNotTakenForQuantities(t *testing.T) {
	k := catalogue(t).Kind("landing")
	for _, e := range []string{"12 / hole", "1 / stay.break_load", "2*hole", "1 - hole / end", "3 + hole / end", "10 * hole - end"} {
		c, in := compileFor(k)
		if m, ok := c.number(in(e)); !ok || m.part.constant {
			t.Errorf("%s: %s", e, lines(c.problems.list))
		}
	}
}
