package rule

import (
	"strings"

	"chainwale/engine/finding"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/parser/lexer"
)

// written is a part of the expression as its author wrote it, on one line.
func (s *source) written(n ast.Node) string {
	first, last := s.extent(n)
	return strings.Join(strings.Fields(string(s.runes[s.tokens[first].From:s.tokens[last].To])), " ")
}

// place is where a part of the expression begins.
func (s *source) place(n ast.Node) finding.Place {
	first, _ := s.extent(n)
	return s.inside(s.tokens[first].From)
}

// extent is the first and the last token of a part. The parser drops brackets,
// so those that the part needs to be whole are looked for on both sides.
func (s *source) extent(n ast.Node) (first, last int) {
	from, to := span(n)
	first, last = s.tokenAt(from), s.tokenAt(max(from, to-1))
	for {
		lowest, depth := s.depth(first, last)
		switch {
		case lowest < 0 && first > 0:
			first--
		case depth > 0 && last+1 < len(s.tokens):
			last++
		default:
			return first, last
		}
	}
}

// depth counts open brackets from one token to another: the lowest count on the
// way, and that at the end.
func (s *source) depth(first, last int) (lowest, depth int) {
	for _, t := range s.tokens[first : last+1] {
		switch {
		case t.Is(lexer.Bracket, "(", "["):
			depth++
		case t.Is(lexer.Bracket):
			depth--
		}
		lowest = min(lowest, depth)
	}
	return lowest, depth
}

// tokenAt is the index of the token that covers a character.
func (s *source) tokenAt(character int) int {
	for i, t := range s.tokens {
		if character < t.To {
			return i
		}
	}
	return len(s.tokens) - 1
}

// span is from the first character of a part's first token to the last of its last.
func span(n ast.Node) (from, to int) {
	l := n.Location()
	from, to = l.From, l.To
	if c, ok := n.(*ast.ConditionalNode); ok {
		// The parser gives a ?: the place of what follows it.
		from, _ = span(c.Cond)
		_, to = span(c.Exp2)
		return from, to
	}
	for _, c := range children(n) {
		f, t := span(c)
		from, to = min(from, f), max(to, t)
	}
	return from, to
}

// children lists the parts of a node.
func children(n ast.Node) []ast.Node {
	switch n := n.(type) {
	case *ast.UnaryNode:
		return []ast.Node{n.Node}
	case *ast.BinaryNode:
		return []ast.Node{n.Left, n.Right}
	case *ast.MemberNode:
		return []ast.Node{n.Node, n.Property}
	case *ast.ConditionalNode:
		return []ast.Node{n.Cond, n.Exp1, n.Exp2}
	case *ast.ArrayNode:
		return n.Nodes
	case *ast.BuiltinNode:
		return n.Arguments
	case *ast.CallNode:
		return append([]ast.Node{n.Callee}, n.Arguments...)
	case *ast.SliceNode:
		return []ast.Node{n.Node}
	case *ast.ChainNode:
		return []ast.Node{n.Node}
	}
	return nil
}
