package rule

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"

	"github.com/expr-lang/expr/ast"
)

var bare = quantity.Bare

// alike is the dimension check of two numbers that are compared, added or chosen
// between. It names both, with their units and places.
func (w walk) alike(left, right ast.Node, a, b numeric, leftRole, rightRole string) bool {
	return alike(w.problems, w.part(left, a), w.part(right, b), a, b, leftRole, rightRole)
}

func alike(p *problems, left, right part, a, b numeric, leftRole, rightRole string) bool {
	if a.dimension == b.dimension {
		return true
	}
	p.add(right.at, dimensionAdvice(a, b), "%s, %s (%s), is %s; %s, %s (%s), is %s",
		leftRole, left.written, spot(left.at, right.at.File), inUnit(a.dimension), rightRole, right.written, spot(right.at, right.at.File), inUnit(b.dimension))
	return false
}

// spot is a place, with the file's name where that is another than the reader is in.
func spot(p finding.Place, in string) string {
	if p.File != in {
		return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
	}
	return fmt.Sprintf("%d:%d", p.Line, p.Column)
}

// inUnit says what a number is in.
func inUnit(d quantity.Dimension) string {
	if d == quantity.Bare {
		return "a bare number"
	}
	return "in " + d.Unit()
}

// dimensionAdvice says what would make two numbers alike.
func dimensionAdvice(a, b numeric) string {
	one, other := a, b
	if one.dimension == quantity.Bare {
		one, other = b, a
	}
	if other.dimension == quantity.Bare && other.constant {
		return fmt.Sprintf("a quantity in quotes, as in '%g %s'", other.value, one.dimension.Unit())
	}
	return "two of one dimension: both a " + a.dimension.Name() + " or both a " + b.dimension.Name()
}

// arithmetic compiles + - * / and **.
func (w walk) arithmetic(n *ast.BinaryNode) (numeric, bool) {
	if n.Operator == "**" {
		return w.power(n)
	}
	a, ok1 := w.number(n.Left)
	b, ok2 := w.number(n.Right)
	if !ok1 || !ok2 {
		return numeric{}, false
	}
	switch n.Operator {
	case "*":
		return w.inRange(n, times(a, b))
	case "/":
		return w.inRange(n, over(a, b))
	}
	if !w.alike(n.Left, n.Right, a, b, "the left side of "+n.Operator, "the right side") {
		return numeric{}, false
	}
	if n.Operator == "-" {
		return minus(a, b), true
	}
	return plus(a, b), true
}

// power compiles a ** n. The exponent must be a whole number as written, so that
// the dimension of the result is known.
func (w walk) power(n *ast.BinaryNode) (numeric, bool) {
	a, ok := w.number(n.Left)
	exponent, whole := wholeNumber(n.Right)
	const largest = 20
	if !whole || exponent < -largest || exponent > largest {
		w.problems.add(w.place(n.Right), fmt.Sprintf("a whole number from -%d to %d", largest, largest), "the exponent %s is no such number", w.written(n.Right))
		return numeric{}, false
	}
	if !ok {
		return numeric{}, false
	}
	return w.inRange(n, power(a, exponent))
}

// wholeNumber reads 2 or -2.
func wholeNumber(n ast.Node) (int, bool) {
	switch n := n.(type) {
	case *ast.IntegerNode:
		return n.Value, true
	case *ast.UnaryNode:
		v, ok := wholeNumber(n.Node)
		return -v, ok && n.Operator == "-"
	}
	return 0, false
}

// inRange refuses a dimension that no trade knows: its powers no longer fit.
func (w walk) inRange(n ast.Node, v numeric) (numeric, bool) {
	if v.dimension.InRange() {
		return v, true
	}
	w.problems.add(w.place(n), "lower powers", "the powers of the units in %s are too high to be kept apart", quote(w.written(n)))
	return numeric{}, false
}

// quantity gives a text in quotes its meaning where a number is wanted.
func (w walk) quantity(n *ast.StringNode) (numeric, bool) {
	q, err := quantity.Parse(n.Value)
	if err != nil {
		notQuantity(w.problems, w.place(n), err)
		return numeric{}, false
	}
	return constant(q.Value, q.Dimension), true
}

// looksLikeQuantity is a number, or a fraction, with a unit after it and nothing else.
var looksLikeQuantity = regexp.MustCompile(`^[-+]?[0-9]([0-9.,/ ]*[0-9])?([eE][-+]?[0-9]+)?\s*[\pL%°"'][^()\[\]<>=!?*+,]*$`)

// quantityAlone reads an expression that is nothing but a quantity: there YAML
// has taken the quotes off, or it never had any. A number that is not alone has
// an operator or a bracket after it, which no unit has.
func (c *compiler) quantityAlone(t text) (n numeric, is, ok bool) {
	trimmed := strings.TrimSpace(t.value)
	if len(trimmed) > maxSource || !looksLikeQuantity.MatchString(trimmed) {
		return numeric{}, false, false
	}
	q, err := quantity.Parse(trimmed)
	if err != nil {
		notQuantity(c.problems, t.at(), err)
		return numeric{}, true, false
	}
	return constant(q.Value, q.Dimension), true, true
}

// notQuantity reports a text that can't be read as a quantity.
func notQuantity(p *problems, at finding.Place, err error) {
	var bad *quantity.BadQuantity
	if !errors.As(err, &bad) {
		p.add(at, "", "%v", err)
		return
	}
	expected := bad.Expected
	if expected != "" {
		expected = "write " + expected
	}
	p.add(at, expected, "%s", bad.Why)
}
