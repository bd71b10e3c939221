package rule

import (
	"slices"
	"strings"

	"chainwale/engine/fact"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/parser/lexer"
)

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
	if advice := nearest(name, names); advice != "" {
		return advice
	}
	if before, _, dotted := strings.Cut(name, "."); dotted && !slices.Contains(k.Neighbours, before) {
		return "the facts of a design standard can be read where the plan names that standard; chainwale standard list shows which there are"
	}
	return ""
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
