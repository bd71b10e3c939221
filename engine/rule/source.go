package rule

import (
	"errors"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/file"
	"github.com/expr-lang/expr/parser"
	"github.com/expr-lang/expr/parser/lexer"
)

const (
	// maxSource is how many bytes an expression may have. The parser calls itself
	// for every bracket, and a stack that overflows ends the whole process: the
	// cap is what keeps a stranger's pack from doing that.
	maxSource = 2000
	// maxNesting is how deep brackets and operators may stand within each other.
	// It is a courtesy: its message is clearer than the one about length.
	maxNesting = 64
)

// source is an expression as it is written.
type source struct {
	text
	out    *problems
	runes  []rune
	tokens []lexer.Token
}

// parse checks an expression's length, words and signs, and only then lets the
// parser see it.
func parse(t text, p *problems) (*source, ast.Node, bool) {
	s := &source{text: t, out: p, runes: []rune(t.value)}
	if len(t.value) > maxSource {
		p.add(t.at(), "at most 2,000 bytes", "the expression has %d bytes", len(t.value))
		return s, nil, false
	}
	tokens, err := lexer.Lex(file.NewSource(t.value))
	if err != nil {
		s.refused(err)
		return s, nil, false
	}
	s.tokens = tokens
	if !s.checkTokens() {
		return s, nil, false
	}
	tree, err := parser.Parse(t.value)
	if err != nil {
		s.refused(err)
		return s, nil, false
	}
	return s, tree.Node, true
}

// refused reports what the lexer or the parser did not understand.
func (s *source) refused(err error) {
	var e *file.Error
	if !errors.As(err, &e) {
		s.out.add(s.at(), grammar, "the expression can't be understood: %v", err)
		return
	}
	message := e.Message
	if number, bad := strings.CutPrefix(message, "bad number syntax: "); bad {
		s.add(e.From, "a number; a quantity stands in quotes, as in '12 mm'", "%s is no number", number)
		return
	}
	if m := unexpected.FindStringSubmatch(message); m != nil {
		message = strings.ReplaceAll(m[1], `\"`, `"`) + " can't stand here"
	}
	if strings.HasPrefix(message, "unexpected token EOF") || strings.HasPrefix(message, "unexpected end") {
		message = "something is missing at the end"
	}
	s.add(e.From, grammar, "the expression can't be understood: %s", message)
}

// unexpected is the parser's usual complaint, Kind("token").
var unexpected = regexp.MustCompile(`^unexpected token \w+\("(.*)"\)$`)

// grammar is the advice for what is no expression at all.
const grammar = "facts, numbers and quantities in quotes ('12 mm'), joined by + - * / ** < <= > >= == != in and or not ?: min() max() abs()"

// add notes a problem at a character of the expression.
func (s *source) add(character int, expected, format string, args ...any) {
	s.out.add(s.inside(max(0, character)), expected, format, args...)
}

// instead says what to write for signs that other languages have.
var instead = map[string]string{
	"&&": "write `and`", "||": "write `or`", "!": "write `not`", "^": "write `**`", "=": "write `==` for words, `<=` or `>=` for numbers",
	"//": "write `/` to divide; an expression has no comments", "/*": "an expression has no comments",
}

// allowed are the signs and words of an expression.
var allowed = map[string]bool{
	"+": true, "-": true, "*": true, "/": true, "**": true, "<": true, "<=": true, ">": true, ">=": true, "==": true, "!=": true,
	"and": true, "or": true, "not": true, "in": true, "?": true, ":": true, ".": true, ",": true,
	"(": true, ")": true, "[": true, "]": true,
}

// checkTokens goes through the words and signs: only those of the rules'
// language, plain numbers, nothing hidden between, and not nested too deep.
func (s *source) checkTokens() bool {
	open, chained, end := 0, 0, 0
	for i, t := range s.tokens {
		if !s.checkGap(end, t) {
			return false
		}
		end = t.To
		if !s.checkToken(t) || !s.checkUnit(i) {
			return false
		}
		switch {
		case t.Is(lexer.Bracket, "(", "["):
			open++
		case t.Is(lexer.Bracket):
			open--
		case t.Is(lexer.Operator, "not", "**", "?"), t.Is(lexer.Operator, "+", "-") && s.begins(i):
			chained++
		}
		if open+chained > maxNesting {
			s.add(t.From, "a fact for the inner part, or two rules", "the expression is nested more than %d deep", maxNesting)
			return false
		}
	}
	return true
}

// checkGap refuses a comment: the lexer skips it, and `a // b` would be a.
func (s *source) checkGap(from int, t lexer.Token) bool {
	to := t.From
	if t.Kind == lexer.EOF {
		to = len(s.runes)
	}
	for i := from; i < to; i++ {
		if !unicode.IsSpace(s.runes[i]) {
			sign := string(s.runes[i:min(i+2, len(s.runes))])
			s.add(i, instead[sign], "%s has no place in an expression", quote(sign))
			return false
		}
	}
	return true
}

func (s *source) checkToken(t lexer.Token) bool {
	switch t.Kind {
	case lexer.Number:
		return s.checkNumber(t)
	case lexer.Operator, lexer.Bracket:
		if allowed[t.Value] {
			return true
		}
		expected := instead[t.Value]
		if expected == "" {
			expected = grammar
		}
		s.add(t.From, expected, "%s has no place in an expression", quote(t.Value))
		return false
	case lexer.Bytes:
		s.add(t.From, "quotes without the b", "a text of bytes has no place in an expression")
		return false
	}
	return true
}

// checkUnit refuses a unit after a number: among other things a quantity stands
// in quotes.
func (s *source) checkUnit(i int) bool {
	t := s.tokens[i]
	if t.Kind != lexer.Identifier || i == 0 || s.tokens[i-1].Kind != lexer.Number {
		return true
	}
	quantity := s.tokens[i-1].Value + " " + t.Value
	s.add(s.tokens[i-1].From, "'"+quantity+"'", "the quantity %s stands among other things without quotes", quantity)
	return false
}

// plainNumber is a number as people write it. The lexer also knows 010, 0x10
// and 1_000, which people read otherwise or mistype.
var plainNumber = regexp.MustCompile(`^(0|[1-9][0-9]*)(\.[0-9]+)?([eE][+-]?[0-9]+)?$`)

// checkNumber refuses numbers that are odd, or don't fit. A number that is not
// zero as written and zero as read is as wrong as one that is infinite.
func (s *source) checkNumber(t lexer.Token) bool {
	if !plainNumber.MatchString(t.Value) {
		s.add(t.From, "a number such as 0.5, 12 or 1.5e3", "%s is no plain number", quote(t.Value))
		return false
	}
	const longestWhole = 15
	v, err := strconv.ParseFloat(t.Value, 64)
	mantissa, _, _ := strings.Cut(strings.ToLower(t.Value), "e")
	lost := v == 0 && strings.ContainsAny(mantissa, "123456789")
	if err != nil || lost || !strings.ContainsAny(t.Value, ".eE") && len(t.Value) > longestWhole {
		s.add(t.From, "a number that the trade would write", "%s is beyond what can be reckoned with", quote(t.Value))
		return false
	}
	return true
}

// begins tells whether the sign at i begins a value and does not join two.
func (s *source) begins(i int) bool {
	return i == 0 || s.tokens[i-1].Is(lexer.Operator) || s.tokens[i-1].Is(lexer.Bracket, "(", "[")
}
