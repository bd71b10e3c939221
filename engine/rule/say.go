package rule

import (
	"fmt"
	"strconv"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/quantity"
)

// piece is a part of a rule's sentence: plain text, or something to fill in.
type piece struct {
	plain string
	fill  func(*saying) string
}

// saying is one finding in words.
type saying struct {
	subject *fact.Subject
	rule    *Rule
	verdict Verdict
	system  quantity.System
}

// readSays takes the rule's sentence apart at its braces, and those of its bands.
// A band's own sentence may speak of a need if the band is a number.
func (b *builder) readSays() {
	compares := true
	for i, item := range b.bands {
		compares = compares && item.verb.compares()
		b.rule.bands[i].says = b.pieces(item.says, item.verb.compares())
	}
	b.rule.says = b.pieces(b.says, compares)
}

// pieces takes a sentence apart, nil if there is none. compares tells whether there
// is a need to speak of.
func (b *builder) pieces(sentence text, compares bool) []piece {
	if !sentence.given() {
		return nil
	}
	var list []piece
	rest, at := sentence.value, 0
	for {
		open := strings.IndexAny(rest, "{}")
		if open < 0 {
			return append(list, piece{plain: rest})
		}
		at += len([]rune(rest[:open]))
		end := strings.IndexByte(rest[open:], '}')
		if rest[open] == '}' || end < 0 {
			b.problems.add(sentence.inside(at), "a name in braces, as in {have}", "a brace without its fellow")
			return list
		}
		name := rest[open+1 : open+end]
		fill := b.filler(strings.TrimSpace(name), compares)
		if fill == nil {
			b.problems.add(sentence.inside(at), b.fillerAdvice(name, compares), "%s", b.noFiller(strings.TrimSpace(name)))
		}
		list = append(list, piece{plain: rest[:open]}, piece{fill: fill})
		at += len([]rune(rest[open : open+end+1]))
		rest = rest[open+end+1:]
	}
}

// filler finds what a name in braces stands for, nil if for nothing.
func (b *builder) filler(name string, compares bool) func(*saying) string {
	switch name {
	case "have":
		if b.hasHave {
			return (*saying).have
		}
		return nil
	case "need", "ratio":
		if !compares {
			return nil
		}
		if name == "need" {
			return (*saying).need
		}
		return (*saying).ratio
	}
	if slot, ok := b.kind.SlotOf(name); ok {
		return func(s *saying) string { return s.fact(slot) }
	}
	for _, n := range b.kind.Neighbours {
		if n == name {
			return func(s *saying) string { return s.neighbour(name) }
		}
	}
	if name == b.kind.Name {
		return func(s *saying) string { return s.subject.Name }
	}
	return nil
}

// noFiller says why a name in braces stands for nothing.
func (b *builder) noFiller(name string) string {
	if name == "need" || name == "ratio" {
		return "there is no " + name + " where a limit is no number but a true_that"
	}
	return "nothing is named " + quote(name) + " that could be filled in"
}

// fillerAdvice lists what could have been meant by a name in braces.
func (b *builder) fillerAdvice(name string, compares bool) string {
	names := append([]string{b.kind.Name}, b.kind.Neighbours...)
	if b.hasHave {
		names = append(names, "have")
	}
	if compares {
		names = append(names, "need", "ratio")
	}
	words := oneOf(append([]string(nil), names...)) + " or a fact's name"
	for _, s := range b.kind.Slots {
		names = append(names, s.Name)
	}
	if advice := nearest(name, names); advice != "" {
		return advice
	}
	return words
}

// fails fills in the sentence of the band that failed, or else the rule's.
func (s *saying) fails(b *band) string {
	if b.says != nil {
		return s.fill(b.says)
	}
	return s.fill(s.rule.says)
}

// holds says what holds, which a sentence about a fault can't: the rule's title,
// and what there is beside the limit.
func (s *saying) holds() string {
	if s.rule.have == nil {
		return s.rule.Title
	}
	have, need := s.sides()
	if !finite(s.verdict.Need, 0) {
		return fmt.Sprintf("%s: %s", s.rule.Title, have)
	}
	return fmt.Sprintf("%s: %s, limit %s", s.rule.Title, have, need)
}

// fill puts a sentence together. One that begins with a subject's name begins as that
// does, but for a name in words: "the lower fold of …".
func (s *saying) fill(sentence []piece) string {
	var out strings.Builder
	for _, p := range sentence {
		out.WriteString(p.plain)
		if p.fill != nil {
			out.WriteString(p.fill(s))
		}
	}
	text := strings.Join(strings.Fields(out.String()), " ")
	if strings.HasPrefix(text, "the ") {
		return "T" + text[1:]
	}
	return text
}

func (s *saying) neighbour(name string) string {
	if n := s.subject.Neighbour(name); n != nil {
		return n.Name
	}
	return "(no " + name + ")"
}

// fact prints the fact in a slot.
func (s *saying) fact(slot int) string {
	column, v := s.rule.Kind.Slots[slot].Column, s.subject.Row()[slot]
	switch {
	case !finite(v, 0):
		return "unknown"
	case column.Sort == fact.IsWord:
		return fact.WordText(v)
	case column.Sort == fact.IsYesNo:
		return yesNo(v)
	}
	return quantity.Format(v, column.Dimension, s.system)
}

func yesNo(v float64) string {
	if v == 1 {
		return "yes"
	}
	return "no"
}

func (s *saying) have() string {
	have, _ := s.sides()
	return have
}

func (s *saying) need() string {
	_, need := s.sides()
	return need
}

// sides prints what there is and what is needed. If rounding makes two different
// numbers look the same, both are given with the digits that tell them apart:
// nobody believes "12 mm where 12 mm are needed".
func (s *saying) sides() (have, need string) {
	h, n := s.verdict.Have, s.verdict.Need
	have, need = s.amount(h), s.amount(n)
	if have != need || h == n || !finite(h, n) {
		return have, need
	}
	unit := s.rule.have.dimension.Unit()
	for digits := 3; digits <= 17 && have == need; digits++ {
		have, need = withDigits(h, digits, unit), withDigits(n, digits, unit)
	}
	return have, need
}

func withDigits(v float64, digits int, unit string) string {
	return strings.TrimSpace(strconv.FormatFloat(v, 'g', digits, 64) + " " + unit)
}

func (s *saying) amount(v float64) string {
	if !finite(v, 0) {
		return "unknown"
	}
	return quantity.Format(v, s.rule.have.dimension, s.system)
}

// ratio prints how much of the limit there is.
func (s *saying) ratio() string {
	if s.verdict.Ratio == nil {
		return "unknown"
	}
	return printRatio(*s.verdict.Ratio)
}

// printRatio prints a ratio with two decimals, or as many more as it takes to
// stay on its side of 1: 0.996 falls short and must not read 1.00.
func printRatio(r float64) string {
	const most = 12
	for decimals := 2; decimals <= most; decimals++ {
		text := strconv.FormatFloat(r, 'f', decimals, 64)
		rounded, _ := strconv.ParseFloat(text, 64)
		if (rounded < 1) == (r < 1) && (rounded > 1) == (r > 1) {
			return text
		}
	}
	return fmt.Sprintf("just %s 1", map[bool]string{true: "under", false: "over"}[r < 1])
}
