package rule

import "github.com/expr-lang/expr/ast"

// call compiles min, max and abs.
func (w walk) call(n ast.Node) (numeric, bool) {
	b, ok := n.(*ast.BuiltinNode)
	if !ok || b.Name != "min" && b.Name != "max" && b.Name != "abs" {
		w.problems.add(w.place(n), "min, max or abs", "%s can't be called", callee(n))
		return numeric{}, false
	}
	if want, ok := arity(b); !ok {
		w.problems.add(w.place(n), want, "%s is given %s", b.Name, count(len(b.Arguments), "number"))
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
