package rule

import (
	"slices"

	"chainwale/engine/fact"

	"github.com/expr-lang/expr/ast"
)

// same compiles == and != of a word with a word. Numbers can't be compared so:
// whether two measured numbers are equal is chance.
func (w walk) same(n *ast.BinaryNode) (condition, bool) {
	_, leftQuoted := n.Left.(*ast.StringNode)
	_, rightQuoted := n.Right.(*ast.StringNode)
	if leftQuoted && rightQuoted {
		w.problems.add(w.place(n), "a fact on one side", "%s compares two words that never change", quote(w.written(n)))
		return condition{}, false
	}
	a, beside, ok1 := w.word(n.Left, nil)
	b, _, ok2 := w.word(n.Right, beside)
	if leftQuoted {
		b, beside, ok2 = w.word(n.Right, nil)
		a, _, ok1 = w.word(n.Left, beside)
	}
	if !ok1 || !ok2 {
		return condition{}, false
	}
	keep := w.keep(w.wordPart(n.Left, a), w.wordPart(n.Right, b))
	c := same(a, b, keep)
	if n.Operator == "!=" {
		c = notTrue(c)
	}
	return c, true
}

// among compiles `word in ["this", "that"]`.
func (w walk) among(n *ast.BinaryNode) (condition, bool) {
	list, isList := n.Right.(*ast.ArrayNode)
	if !isList || len(list.Nodes) == 0 {
		w.problems.add(w.place(n.Right), `words in brackets, as in ["kept", "new"]`, "%s is no list of words", quote(w.written(n.Right)))
		return condition{}, false
	}
	if _, quoted := n.Left.(*ast.StringNode); quoted {
		w.problems.add(w.place(n.Left), "a fact before in", "%s never changes", w.written(n.Left))
		return condition{}, false
	}
	a, beside, ok := w.word(n.Left, nil)
	var ids []float64
	for _, item := range list.Nodes {
		text, isText := item.(*ast.StringNode)
		if !isText {
			w.problems.add(w.place(item), "a word in quotes", "%s is no word in quotes", quote(w.written(item)))
			ok = false
			continue
		}
		id, good := w.wordID(text, beside)
		ids, ok = append(ids, id), ok && good
	}
	if !ok {
		return condition{}, false
	}
	keep := w.keep(w.wordPart(n.Left, a), part{constant: true, word: true})
	return among(a, ids, keep), true
}

// word compiles a part that must be a word: a fact or a word in quotes. beside is
// the fact that it is compared with, if that is known; a fact is returned as such.
func (w walk) word(n ast.Node, beside *fact.Slot) (numeric, *fact.Slot, bool) {
	switch n := n.(type) {
	case *ast.StringNode:
		id, ok := w.wordID(n, beside)
		return constant(id, bare), nil, ok
	case *ast.IdentifierNode, *ast.MemberNode:
		slot, ok := w.slot(n, fact.IsWord)
		if !ok {
			return numeric{}, nil, false
		}
		return fromSlot(slot, bare), &w.kind.Slots[slot], true
	}
	w.problems.add(w.place(n), "== and != compare words; numbers are compared with < <= > >=", "%s is no word", quote(w.written(n)))
	return numeric{}, nil, false
}

// wordID is the number of a word in quotes. It must be one that the fact can be:
// a misspelt word would never match and the rule never speak.
func (w walk) wordID(n *ast.StringNode, beside *fact.Slot) (float64, bool) {
	if beside != nil && len(beside.Words) > 0 && !slices.Contains(beside.Words, n.Value) {
		w.problems.add(w.place(n), whichWord(n.Value, beside.Words), "%s is never %s", beside.Name, quote(n.Value))
		return 0, false
	}
	return fact.WordID(n.Value), true
}

func (w walk) wordPart(n ast.Node, v numeric) part {
	return part{written: w.written(n), at: w.place(n), word: true, constant: v.constant}
}
