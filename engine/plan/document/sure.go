package document

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"sync"

	"chainwale/engine/quantity"
)

// A sound file is the usual one, and compiling a schema takes longer than judging
// a plan. So a tree is first looked over by look, which knows only the keywords
// that our schemas use and says yes only where it is sure. Wherever it isn't, the
// JSON Schema library judges, and what it refuses is what is refused. A test holds
// that look never says yes to what the library refuses.

// surely is what a quick look tells: that a value is sound, that it isn't, or that
// only the library can tell.
type surely uint8

const (
	perhaps surely = iota
	no
	yes
)

func sure(so bool) surely {
	if so {
		return yes
	}
	return no
}

// sureIf is for what can be sound though it does not look so.
func sureIf(so bool) surely {
	if so {
		return yes
	}
	return perhaps
}

func (a surely) and(b surely) surely {
	switch {
	case a == no || b == no:
		return no
	case a == yes && b == yes:
		return yes
	}
	return perhaps
}

// looker looks a tree over, and keeps the memory that its quantities are laid in.
type looker struct {
	schema *Schema
	// part tells that what is missing is passed over.
	part     bool
	readings quantity.Shelf
	values   []float64
}

// look notes on a node, and on all below it, what the schema says of it, and tells
// whether the schema takes it.
func (l *looker) look(n *Node, f *form) surely {
	n.form = f
	if f == nil {
		return l.beyond(n)
	}
	if n.is = sortOf(n, f.takes); f.amount != nil {
		n.Amount = l.amount(f.amount, n)
	}
	found := yes
	switch n.Kind {
	case Mapping:
		found = l.members(n, f)
	case List:
		for _, item := range n.Items {
			item := l.look(item, f.items)
			found = found.and(item)
		}
		for _, least := range f.least {
			found = found.and(sure(len(n.Items) >= least))
		}
		for _, most := range f.most {
			found = found.and(sure(len(n.Items) <= most))
		}
	}
	if f.loose {
		return l.schema.takes(f.schema, n)
	}
	return found.and(l.itself(n, f))
}

// amount is the quantity that a node stands for, nil if it is none or lies out of bounds.
func (l *looker) amount(a *amount, n *Node) *quantity.Readings {
	l.values = l.values[:0]
	switch {
	case n.Kind == List:
		for _, item := range n.Items {
			value, ok := a.value(item.Text)
			if !ok || item.Kind != Scalar {
				return nil
			}
			l.values = append(l.values, value)
		}
	case n.Kind == Scalar && !n.Empty():
		value, ok := a.value(n.Text)
		if !ok {
			return nil
		}
		l.values = append(l.values, value)
	}
	return l.readings.Keep(a.of, l.values)
}

// beyond looks over what the schema says nothing of: it is taken as it is.
func (l *looker) beyond(n *Node) surely {
	n.is = sortOf(n, 0)
	for _, m := range n.Members {
		m.required = false
		l.look(m, nil)
	}
	for _, item := range n.Items {
		l.look(item, nil)
	}
	return yes
}

// members looks over a mapping.
func (l *looker) members(n *Node, f *form) surely {
	found, required := yes, 0
	for _, m := range n.Members {
		known := f.named[m.Key]
		if known == nil {
			m.required = false
			found = found.and(l.look(m, f.others))
			found = found.and(sure(!f.closed))
			continue
		}
		if m.required = known.required; known.demanded {
			required++
		}
		found = found.and(l.look(m, known.form))
		if f.closed && known.form == nil {
			found = no
		}
	}
	if l.part {
		return found
	}
	for key, others := range f.depends {
		if n.Member(key) != nil {
			found = found.and(sure(n.hasAll(others)))
		}
	}
	return found.and(sure(required == f.required))
}

// itself holds a value against what is demanded of it beside its parts.
func (l *looker) itself(n *Node, f *form) surely {
	found := yes
	for _, types := range f.types {
		found = found.and(sureIf(types.has(n.is)))
	}
	for _, words := range f.words {
		found = found.and(n.isOneOf(words))
	}
	if n.is == ofText {
		for _, matches := range f.patterns {
			found = found.and(sure(matches(n.Text)))
		}
	}
	if f.day {
		found = found.and(n.isDay())
	}
	for _, a := range f.amounts {
		found = found.and(sureIf(n.Amount != nil && a == f.amount))
	}
	for _, rest := range f.rest {
		found = found.and(l.schema.keyword(rest.keyword, rest.wanted, rest.of, n))
	}
	return found
}

func (n *Node) isDay() surely { return sureIf(n.is != ofText || isDayText(n.Text)) }

// isOneOf tells whether a value stands among those of a schema. Numbers that are
// written otherwise may be the same.
func (n *Node) isOneOf(words []any) surely {
	switch n.is {
	case ofText:
		for _, w := range words {
			if w == n.Text {
				return yes
			}
		}
		return no
	case ofGroup, ofList:
		return perhaps
	}
	return sureIf(slices.Contains(words, n.typed()))
}

func (n *Node) hasAll(keys []any) bool {
	return !slices.ContainsFunc(keys, func(key any) bool { name, ok := key.(string); return !ok || n.Member(name) == nil })
}

// takes tells whether a schema takes the value at a node, keyword by keyword. It is
// for the schemas that apply only here and there, and what holds a form to be right.
func (s *Schema) takes(schema any, n *Node) surely {
	of, ok := schema.(map[string]any)
	if !ok {
		so, ok := schema.(bool)
		if !ok {
			return perhaps
		}
		return sure(so)
	}
	found := yes
	for keyword, wanted := range of {
		found = found.and(s.keyword(keyword, wanted, of, n))
	}
	return found
}

// keyword tells whether one keyword of a schema takes the value.
func (s *Schema) keyword(keyword string, wanted any, of map[string]any, n *Node) surely {
	switch keyword {
	case "$schema", "$id", "$defs", "title", "description", "examples", "expected", "then":
		return yes
	case "$ref":
		return s.takes(lookUp(s.root, strings.TrimPrefix(wanted.(string), "#")), n)
	case "type":
		return sureIf(sortsIn(typesOf(of)).has(n.is))
	case "enum":
		return n.isOneOf(wanted.([]any))
	case "const":
		return n.isOneOf([]any{wanted})
	case "pattern":
		return sure(n.is != ofText || patternOf(wanted.(string)).MatchString(n.Text))
	case "format":
		return sureIf(wanted == "day").and(n.isDay())
	case "quantity":
		return perhaps // a form knows whose quantity a node stands for
	case "not":
		return s.not(wanted, n)
	case "if":
		return s.follows(of, n)
	}
	return s.ofGroup(keyword, wanted, of, n)
}

func (s *Schema) not(wanted any, n *Node) surely {
	switch s.takes(wanted, n) {
	case yes:
		return no
	case no:
		return yes
	}
	return perhaps
}

// follows tells whether what follows from an `if` holds. Where it can't be told
// whether it is so, what would follow has to hold all the same.
func (s *Schema) follows(of map[string]any, n *Node) surely {
	if of["then"] == nil {
		return yes
	}
	switch s.takes(of["if"], n) {
	case no:
		return yes
	case yes:
		return s.takes(of["then"], n)
	}
	return sureIf(s.takes(of["then"], n) == yes)
}

// ofGroup is keyword for what a schema says of lists and mappings.
func (s *Schema) ofGroup(keyword string, wanted any, of map[string]any, n *Node) surely {
	found := yes
	switch keyword {
	case "minItems":
		least, ok := wholeOf(wanted)
		return sureIf(ok).and(sure(n.Kind != List || len(n.Items) >= least))
	case "maxItems":
		most, ok := wholeOf(wanted)
		return sureIf(ok).and(sure(n.Kind != List || len(n.Items) <= most))
	case "items":
		for _, item := range n.Items {
			found = found.and(s.takes(wanted, item))
		}
		return found
	case "required":
		return sure(n.Kind != Mapping || n.hasAll(wanted.([]any)))
	case "properties":
		parts, _ := wanted.(map[string]any)
		for _, m := range n.Members {
			if part, named := parts[m.Key]; named {
				found = found.and(s.takes(part, m))
			}
		}
		return found
	case "additionalProperties":
		named, _ := of["properties"].(map[string]any)
		for _, m := range n.Members {
			if named[m.Key] == nil {
				found = found.and(s.takes(wanted, m))
			}
		}
		return found
	case "dependentRequired":
		for key, others := range wanted.(map[string]any) {
			if n.Member(key) != nil {
				found = found.and(sure(n.hasAll(others.([]any))))
			}
		}
		return found
	}
	return perhaps
}

// wholeOf is a whole number of the schema; ok is false if it is none.
func wholeOf(wanted any) (n int, ok bool) {
	number, ok := wanted.(json.Number)
	if !ok {
		return 0, false
	}
	whole, err := number.Int64()
	return int(whole), err == nil
}

var patterns sync.Map

// patternOf compiles a pattern once.
func patternOf(text string) *regexp.Regexp {
	if re, ok := patterns.Load(text); ok {
		return re.(*regexp.Regexp)
	}
	re := regexp.MustCompile(text)
	patterns.Store(text, re)
	return re
}

// Sure tells that a tree is surely sound, without the library.
func (s *Schema) Sure(root *Node) bool { return s.lookOver(root, false) == yes }

func (s *Schema) lookOver(root *Node, part bool) surely {
	l := looker{schema: s, part: part}
	return l.look(root, s.form)
}

// Strictly asks the library, whatever the quick look says.
func (s *Schema) Strictly(root *Node) error {
	s.lookOver(root, false)
	if err := s.compile(); err != nil {
		return err
	}
	return s.compiled.Validate(root.value())
}
