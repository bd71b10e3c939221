package rule

import (
	"regexp"
	"strconv"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/quantity"

	"github.com/expr-lang/expr/parser/lexer"
)

// edit is an expression with one of its words changed.
type edit struct {
	at       finding.Place
	from, to string
	changed  text
}

// edits are the changes to an expression's constants and comparisons. Some of them
// are no expression any more; the compiler tells.
func edits(t text, k *fact.Kind) []edit {
	if looksLikeQuantity.MatchString(strings.TrimSpace(t.value)) {
		return quantityEdits(t)
	}
	s, _, ok := parse(t, &problems{})
	if !ok {
		return nil
	}
	e := &editor{source: s, kind: k}
	for i := range s.tokens {
		e.token(i)
	}
	return e.list
}

// quantityEdits change an expression that is nothing but a quantity.
func quantityEdits(t text) (list []edit) {
	for _, to := range otherQuantities(strings.TrimSpace(t.value)) {
		changed := t
		changed.value = to
		list = append(list, edit{t.at(), strings.TrimSpace(t.value), to, changed})
	}
	return list
}

// editor goes through the words of an expression.
type editor struct {
	*source
	kind *fact.Kind
	list []edit
}

// put notes an edit: the token i with other text in its place.
func (e *editor) put(i int, to string) { e.replace(i, i, i, to) }

// replace notes an edit of the token i: other text in the place of all from first to last.
func (e *editor) replace(i, first, last int, to string) {
	t := e.tokens[i]
	changed := e.text
	changed.value = string(e.runes[:e.tokens[first].From]) + to + string(e.runes[e.tokens[last].To:])
	e.list = append(e.list, edit{e.inside(t.From), string(e.runes[t.From:t.To]), to, changed})
}

// token tries what a word may be mistaken for.
func (e *editor) token(i int) {
	t := e.tokens[i]
	switch {
	case t.Kind == lexer.Number:
		for _, to := range otherNumbers(t.Value, i > 0 && e.tokens[i-1].Is(lexer.Operator, "**"), true) {
			e.put(i, to)
		}
	case t.Kind == lexer.Operator:
		for _, to := range otherOperators[t.Value] {
			e.put(i, to)
		}
	case t.Kind == lexer.String:
		e.quoted(i)
	}
}

// otherOperators are what a comparison may be mistaken for.
var otherOperators = map[string][]string{
	"<": {">=", "<="}, "<=": {">", "<"}, ">": {"<=", ">="}, ">=": {"<", ">"}, "==": {"!="}, "!=": {"=="}, "and": {"or"}, "or": {"and"},
}

// quoted tries a text in quotes: a quantity, a word, or one word of a list.
func (e *editor) quoted(i int) {
	value := e.tokens[i].Value
	if looksLikeQuantity.MatchString(value) {
		for _, to := range otherQuantities(value) {
			e.put(i, "'"+to+"'")
		}
		return
	}
	if first, last, listed := e.entry(i); listed {
		e.replace(i, first, last, "")
		return
	}
	if other, ok := e.otherWord(i); ok {
		e.put(i, strconv.Quote(other))
	}
}

// entry is a word of a list of several, with the comma before or after it.
func (e *editor) entry(i int) (first, last int, listed bool) {
	switch {
	case i > 0 && e.tokens[i-1].Is(lexer.Operator, ","):
		return i - 1, i, true
	case e.tokens[i+1].Is(lexer.Operator, ","):
		return i, i + 1, true
	}
	return 0, 0, false
}

// otherWord is another word that the fact beside may be.
func (e *editor) otherWord(i int) (string, bool) {
	if i < 2 || !e.tokens[i-1].Is(lexer.Operator, "==", "!=") {
		return "", false
	}
	first := i - 2
	for first > 1 && e.tokens[first-1].Is(lexer.Operator, ".") {
		first -= 2
	}
	slot, ok := e.kind.SlotOf(string(e.runes[e.tokens[first].From:e.tokens[i-2].To]))
	if !ok {
		return "", false
	}
	for _, w := range e.kind.Slots[slot].Words {
		if w != e.tokens[i].Value {
			return w, true
		}
	}
	return "", false
}

// steps are how much more and less a constant is made: an example on either side of
// a limit that stands within a tenth of it notices both.
var steps = [...]float64{1.1, 0.9}

// otherNumbers are a number a tenth more and a tenth less; one more of an exponent;
// one more and one less of a small whole number, which may count something, and of
// nought, which has no tenth.
func otherNumbers(number string, exponent, counts bool) []string {
	const small = 10
	v, err := strconv.ParseFloat(number, 64)
	switch {
	case err != nil:
		return nil
	case exponent:
		return []string{decimal(v + 1)}
	case v == 0, counts && v <= small && !strings.ContainsAny(number, ".eE"):
		return []string{decimal(v + 1), decimal(v - 1)}
	}
	var list []string
	for _, step := range steps {
		list = append(list, decimal(v*step))
	}
	return list
}

// leadingNumber parts a quantity into its number and its unit.
var leadingNumber = regexp.MustCompile(`^([-+]?[0-9]+(?:\.[0-9]+)?)(\s*[^0-9 ].*)$`)

// otherQuantities are a quantity with another number: in its own unit where its
// number is a plain one, in the canonical unit where it is a fraction.
func otherQuantities(q string) []string {
	parts := leadingNumber.FindStringSubmatch(q)
	if parts == nil || strings.HasPrefix(parts[2], "/") {
		v, err := quantity.Parse(q)
		if err != nil {
			return nil
		}
		parts = []string{q, decimal(v.Value), " " + v.Dimension.Unit()}
	}
	var list []string
	for _, number := range otherNumbers(parts[1], false, false) {
		list = append(list, number+parts[2])
	}
	return list
}

// decimal prints a number as people write it, with six digits at most.
func decimal(v float64) string {
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 6, 64), 64)
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}
