package rule

import (
	"slices"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/parser/lexer"
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

// call compiles min, max and abs.
func (w walk) call(n ast.Node) (numeric, bool) {
	b, ok := n.(*ast.BuiltinNode)
	if !ok || b.Name != "min" && b.Name != "max" && b.Name != "abs" {
		w.problems.add(w.place(n), "min, max or abs", "%s can't be called", callee(n))
		return numeric{}, false
	}
	if want, ok := arity(b); !ok {
		w.problems.add(w.place(n), want, "%s has %d numbers in its brackets", b.Name, len(b.Arguments))
		return numeric{}, false
	}
	var result numeric
	good := true
	for i, a := range b.Arguments {
		v, ok := w.number(a)
		switch {
		case !ok || !good:
			good = false
		case i == 0:
			result = v
		case !w.alike(b.Arguments[0], a, result, v, "the first number", "another number"):
			good = false
		case b.Name == "max":
			result = larger(result, v)
		default:
			result = smaller(result, v)
		}
	}
	if good && b.Name == "abs" {
		result = absolute(result)
	}
	return result, good
}

func callee(n ast.Node) string {
	switch n := n.(type) {
	case *ast.BuiltinNode:
		return n.Name
	case *ast.CallNode:
		if id, ok := n.Callee.(*ast.IdentifierNode); ok {
			return id.Value
		}
	}
	return "a fact"
}

// arity checks how many numbers a function has, and says how many it wants.
func arity(b *ast.BuiltinNode) (string, bool) {
	if b.Name == "abs" {
		return "one number, as in abs(a)", len(b.Arguments) == 1
	}
	return "two numbers or more, as in " + b.Name + "(a, b)", len(b.Arguments) >= 2
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

// slot finds the fact that a name names, and checks its sort.
func (w walk) slot(n ast.Node, want fact.Sort) (int, bool) {
	name, ok := w.name(n)
	if !ok {
		w.problems.add(w.place(n), "a fact's name, with a neighbour's name and a dot before it where it is a neighbour's", "%s is no fact's name", quote(w.written(n)))
		return 0, false
	}
	slot, ok := w.kind.SlotOf(name)
	if !ok {
		w.problems.add(w.place(n), unknownFact(w.kind, name), "%s", noSuchFact(w.kind, name))
		return 0, false
	}
	if sort := w.kind.Slots[slot].Sort; sort != want {
		w.problems.add(w.place(n), sortAdvice[sort], "%s is %s, where %s is wanted", name, sort, want)
		return 0, false
	}
	w.reads.add(slot)
	w.mine.add(slot)
	return slot, true
}

// sortAdvice says how a fact of each sort is used.
var sortAdvice = map[fact.Sort]string{
	fact.IsNumber: "numbers are compared with < <= > >=, as in thickness >= '6 mm'",
	fact.IsWord:   `a word is compared with ==, != or in, as in kind == "chainplate"`,
	fact.IsYesNo:  "a yes or no stands alone, or after not",
}

// name joins a chain of names: stay.break_load. ok is false for anything else
// that is written with dots or brackets.
func (w walk) name(n ast.Node) (string, bool) {
	switch n := n.(type) {
	case *ast.IdentifierNode:
		return n.Value, true
	case *ast.MemberNode:
		property, isName := n.Property.(*ast.StringNode)
		if !isName || n.Optional || w.tokens[w.tokenAt(property.Location().From)].Kind == lexer.String {
			return "", false
		}
		before, ok := w.name(n.Node)
		return before + "." + property.Value, ok
	}
	return "", false
}

// noSuchFact says what a name is, if it is no fact.
func noSuchFact(k *fact.Kind, name string) string {
	if slices.Contains(k.Neighbours, name) {
		return name + " is a neighbour and no fact"
	}
	return "there is no fact " + quote(name) + " on a " + k.Name
}

// unknownFact is the advice for a name that is no fact.
func unknownFact(k *fact.Kind, name string) string {
	var names, below []string
	for _, s := range k.Slots {
		names = append(names, s.Name)
		if strings.HasPrefix(s.Name, name+".") {
			below = append(below, s.Name)
		}
	}
	if len(below) > 0 {
		return "one of its facts, as in " + below[0]
	}
	return nearest(name, names)
}

// misfit reports a part that gives something else than its place wants.
func (w walk) misfit(n ast.Node, want string) {
	is, expected := "something else", ""
	switch n := n.(type) {
	case *ast.IntegerNode, *ast.FloatNode:
		is = "a number"
	case *ast.StringNode:
		is, expected = "a text in quotes", "a text in quotes stands beside ==, != or in, or is a quantity where a number is wanted"
	case *ast.BoolNode, *ast.NilNode:
		is, expected = "no fact", "a yes or no stands alone, or after not"
	case *ast.ArrayNode:
		is, expected = "a list", "a list stands after in only"
	case *ast.BinaryNode:
		if is = "a yes or no"; arithmetic[n.Operator] {
			is = "a number"
		}
	case *ast.UnaryNode:
		is, expected = "a yes or no", "what not is about stands in brackets, as in not (a > b)"
		if n.Operator != "not" {
			is, expected = "a number", ""
		}
	case *ast.BuiltinNode, *ast.CallNode:
		is, expected = "no yes or no", "min, max and abs give numbers; nothing else can be called"
	}
	w.problems.add(w.place(n), expected, "%s is %s, where %s is wanted", quote(w.written(n)), is, want)
}
