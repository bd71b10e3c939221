package rule

import (
	"strings"

	"chainwale/engine/fact"

	"github.com/expr-lang/expr/ast"
)

// checkNumbers refuses what no plan could ever make a number of, in all expressions
// of a rule that no test has proven.
func (b *builder) checkNumbers() {
	if b.doc.proven {
		return
	}
	checkFinite(b.appliesIf, b.kind, b.problems)
	checkFinite(b.have, b.kind, b.problems)
	for _, d := range b.bands {
		checkFinite(d.limit, b.kind, b.problems)
		checkFinite(d.appliesIf, b.kind, b.problems)
	}
}

// checkFinite refuses a part of an expression that reads no fact and gives no finite
// number, as 0/0 does: what it is compared with can never be told.
func checkFinite(t text, kind *fact.Kind, out *problems) {
	if !t.given() || !strings.ContainsAny(t.value, "/*eE") {
		return // only a quotient, a product, a power or a huge number leaves what is finite
	}
	quiet := &compiler{kind: kind, problems: &problems{}}
	if _, is, _ := quiet.quantityAlone(t); is {
		return
	}
	if s, node, ok := parse(t, quiet.problems); ok {
		walk{quiet, s, &slots{}}.notFinite(node, out)
	}
}

// notFinite looks for the innermost parts that give no number whatever the facts are,
// notes them, and tells whether there are any.
func (w walk) notFinite(n ast.Node, out *problems) (found bool) {
	for _, child := range children(n) {
		found = w.notFinite(child, out) || found
	}
	b, is := n.(*ast.BinaryNode)
	if found || !is || !arithmetic[b.Operator] {
		return found
	}
	w.mine = &slots{}
	v, ok := w.number(n)
	if !ok || len(*w.mine) > 0 || finite(v.eval(&frame{}), 0) {
		return false
	}
	out.add(w.place(n), "no division by nought, and no number beyond what the trade would write", "%s gives no finite number, so nothing can ever be told by it", quote(w.written(n)))
	return true
}
