package rule

import (
	"chainwale/engine/fact"
	"chainwale/engine/finding"

	"github.com/expr-lang/expr/ast"
)

// compiler turns the expressions of one rule into closures. Each expression is
// parsed by expr and then walked top down, once, by what its place wants: a
// number, a yes or no, or a word. That walk is the type check, the dimension
// check, the list of what an expression may hold, and what gives a quoted
// literal its meaning.
type compiler struct {
	kind     *fact.Kind
	problems *problems
	// reads are the slots that the rule's expressions read, in the order they come.
	reads slots
	// compared are the comparisons of the rule's conditions.
	compared []compared
}

// compared tells what the two sides of a comparison are, for whoever shows them.
type compared struct {
	left, right part
}

// part is one side of a comparison, or the whole of an expression that gives a
// number. A part that is constant is not worth showing.
type part struct {
	written  string
	at       finding.Place
	unit     string
	word     bool
	constant bool
}

// number compiles an expression that must give a number.
func (c *compiler) number(t text) (m *measured, ok bool) {
	if q, is, good := c.quantityAlone(t); is {
		if !good {
			return nil, false
		}
		return &measured{numeric: q, part: part{written: written(t), at: t.at(), unit: q.dimension.Unit(), constant: true}}, true
	}
	s, node, ok := parse(t, c.problems)
	if !ok {
		return nil, false
	}
	var reads slots
	n, ok := walk{c, s, &reads}.number(node)
	if !ok {
		return nil, false
	}
	return &measured{n, s.part(node, n), reads}, true
}

// condition compiles an expression that must give a yes or no. The comparisons
// it makes are those from first up to last.
func (c *compiler) condition(t text) (k *judgement, ok bool) {
	s, node, ok := parse(t, c.problems)
	if !ok {
		return nil, false
	}
	first := len(c.compared)
	truth, ok := walk{c, s, &slots{}}.truth(node)
	if !ok {
		return nil, false
	}
	return &judgement{condition: truth, written: s.written(node), compared: c.compared[first:], first: first}, true
}

// judgement is a compiled condition with its comparisons, of which the first is
// the frame's side number first.
type judgement struct {
	condition
	written  string
	compared []compared
	first    int
}

func (s *source) part(n ast.Node, v numeric) part {
	return part{written: s.written(n), at: s.place(n), unit: v.dimension.Unit(), constant: v.constant}
}

// walk goes through one expression.
type walk struct {
	*compiler
	*source
	// mine are the slots that this expression reads.
	mine *slots
}

// number compiles a part that must give a number.
func (w walk) number(n ast.Node) (numeric, bool) {
	switch n := n.(type) {
	case *ast.IntegerNode:
		return constant(float64(n.Value), bare), true
	case *ast.FloatNode:
		return constant(n.Value, bare), true
	case *ast.StringNode:
		return w.quantity(n)
	case *ast.IdentifierNode, *ast.MemberNode:
		slot, ok := w.slot(n, fact.IsNumber)
		if !ok {
			return numeric{}, false
		}
		return fromSlot(slot, w.kind.Slots[slot].Dimension), true
	case *ast.UnaryNode:
		if n.Operator != "not" {
			return w.sign(n)
		}
	case *ast.BinaryNode:
		if arithmetic[n.Operator] {
			return w.arithmetic(n)
		}
	case *ast.ConditionalNode:
		return w.choose(n)
	case *ast.BuiltinNode, *ast.CallNode:
		return w.call(n)
	}
	w.misfit(n, "a number")
	return numeric{}, false
}

var arithmetic = map[string]bool{"+": true, "-": true, "*": true, "/": true, "**": true}

func (w walk) sign(n *ast.UnaryNode) (numeric, bool) {
	a, ok := w.number(n.Node)
	if ok && n.Operator == "-" {
		return negative(a), true
	}
	return a, ok
}

// choose compiles `c ? a : b` of numbers; both must be of one dimension.
func (w walk) choose(n *ast.ConditionalNode) (numeric, bool) {
	c, ok1 := w.truth(n.Cond)
	a, ok2 := w.number(n.Exp1)
	b, ok3 := w.number(n.Exp2)
	if !ok1 || !ok2 || !ok3 || !w.alike(n.Exp1, n.Exp2, a, b, "the value if it is so", "the value if not") {
		return numeric{}, false
	}
	return choose(c, a, b), true
}

// truth compiles a part that must give a yes or no.
func (w walk) truth(n ast.Node) (condition, bool) {
	switch n := n.(type) {
	case *ast.IdentifierNode, *ast.MemberNode:
		slot, ok := w.slot(n, fact.IsYesNo)
		if !ok {
			return condition{}, false
		}
		return isYes(slot), true
	case *ast.UnaryNode:
		if n.Operator == "not" {
			a, ok := w.truth(n.Node)
			if !ok {
				return condition{}, false
			}
			return notTrue(a), true
		}
	case *ast.BinaryNode:
		switch n.Operator {
		case "and", "or", "&&":
			return w.join(n)
		case "<", "<=", ">", ">=":
			return w.compare(n)
		case "==", "!=":
			return w.same(n)
		case "in":
			return w.among(n)
		}
	case *ast.ConditionalNode:
		c, ok1 := w.truth(n.Cond)
		a, ok2 := w.truth(n.Exp1)
		b, ok3 := w.truth(n.Exp2)
		return chooseTrue(c, a, b), ok1 && ok2 && ok3
	}
	w.misfit(n, "a yes or no")
	return condition{}, false
}

// join compiles `and` and `or`. The parser makes `a < b < c` an && of two
// comparisons; the sign itself has been refused by then.
func (w walk) join(n *ast.BinaryNode) (condition, bool) {
	a, ok1 := w.truth(n.Left)
	b, ok2 := w.truth(n.Right)
	switch {
	case !ok1 || !ok2:
		return condition{}, false
	case n.Operator == "or":
		return eitherTrue(a, b), true
	}
	return bothTrue(a, b), true
}

func (w walk) compare(n *ast.BinaryNode) (condition, bool) {
	a, ok1 := w.number(n.Left)
	b, ok2 := w.number(n.Right)
	if !ok1 || !ok2 || !w.alike(n.Left, n.Right, a, b, "the left side", "the right side") {
		return condition{}, false
	}
	keep := w.keep(w.part(n.Left, a), w.part(n.Right, b))
	return compare(n.Operator, a, b, keep), true
}

// keep makes room for the sides of a comparison.
func (c *compiler) keep(left, right part) int {
	c.compared = append(c.compared, compared{left, right})
	return len(c.compared) - 1
}
