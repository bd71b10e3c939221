package document

import (
	"encoding/json"
	"slices"
	"strings"
)

// sort is what JSON would call a value.
type sort uint8

const (
	ofNothing sort = iota
	ofText
	ofTruth
	ofWhole
	ofNumber
	ofList
	ofGroup
)

// sortSet is a set of them.
type sortSet uint8

func (s sortSet) has(one sort) bool { return s&(1<<one) != 0 }

// sortsNamed are the sorts by the names that a schema gives them. Each whole number is
// a number.
var sortsNamed = map[string]sortSet{
	"null": 1 << ofNothing, "string": 1 << ofText, "boolean": 1 << ofTruth, "integer": 1 << ofWhole, "number": 1<<ofWhole | 1<<ofNumber,
	"array": 1 << ofList, "object": 1 << ofGroup,
}

// form is what a schema, together with all that it refers to, says of one value, in a
// form that a thousand values are quickly held against: see look.
type form struct {
	// schema is the schema itself as it is written.
	schema map[string]any
	// takes is what a text may be turned into, amount the quantity it may stand for.
	takes  sortSet
	amount *amount
	// items is the form of a list's items, named that of the values under known keys,
	// others of those under the rest.
	items  *form
	named  map[string]*member
	others *form

	// What the value must be like. Of most kinds of demands there is one at most.
	types    []sortSet
	words    [][]any
	patterns []func(string) bool
	amounts  []*amount
	day      bool
	least    []int
	most     []int
	// closed tells that no keys are taken but those named; required is how many of
	// those there must be, and depends lists those that demand others.
	closed   bool
	required int
	depends  map[string][]any
	// rest are keywords for which there is nothing better than to read them anew each time.
	rest []demand
	// loose tells that what is said of members is too involved to be laid down here.
	loose bool
}

// demand is a keyword as it stands in a schema.
type demand struct {
	keyword string
	wanted  any
	of      map[string]any
}

// member is a key that a schema names.
type member struct {
	form     *form
	required bool
	// unnamed tells that the key is only said to be required.
	unnamed bool
	// demanded tells that the key must be there for the form's count of required ones.
	demanded bool
}

// forms makes the forms of shapes, each once.
type forms map[*shape]*form

// of makes the form of a shape. It is put down before its parts are made, so a schema
// may refer to itself.
func (f forms) of(sh *shape) *form {
	if sh == nil {
		return nil
	}
	if made := f[sh]; made != nil {
		return made
	}
	made := &form{schema: sh.schema, amount: said(sh, amountIn), named: map[string]*member{}}
	f[sh] = made
	for _, t := range said(sh, typesIn) {
		made.takes |= sortsNamed[t]
	}
	made.items = f.of(said(sh, itemsIn))
	made.others = f.of(said(sh, func(sh *shape) (*shape, bool) { return sh.others, sh.others != nil }))
	f.members(made, sh)
	for part := sh; part != nil; part = part.ref {
		made.demands(part)
	}
	made.checkParts(sh)
	return made
}

// members lists the keys that a shape and those it refers to name.
func (f forms) members(made *form, sh *shape) {
	required := said(sh, requiredIn)
	for part := sh; part != nil; part = part.ref {
		for key := range part.properties {
			if made.named[key] == nil {
				made.named[key] = &member{form: f.of(sh.member(key)), required: slices.Contains(required, key)}
			}
		}
	}
	for _, key := range required {
		if made.named[key] == nil {
			made.named[key] = &member{form: made.others, required: true, unnamed: true}
		}
	}
}

// demands lays down what one schema demands of the value itself.
func (made *form) demands(part *shape) {
	for keyword, wanted := range part.schema {
		if !made.demand(keyword, wanted, part) {
			made.rest = append(made.rest, demand{keyword, wanted, part.schema})
		}
	}
}

// demand lays down one keyword; ok is false if it can't be.
func (made *form) demand(keyword string, wanted any, part *shape) (ok bool) {
	switch keyword {
	case "$schema", "$id", "$defs", "title", "description", "examples", "expected", "then", "$ref", "properties", "items", "additionalProperties":
		return true
	case "type":
		made.types = append(made.types, sortsIn(typesOf(part.schema)))
	case "enum":
		words, ok := wanted.([]any)
		made.words = append(made.words, words)
		return ok
	case "const":
		made.words = append(made.words, []any{wanted})
	case "pattern":
		pattern, ok := wanted.(string)
		if ok {
			made.patterns = append(made.patterns, Matcher(pattern))
		}
		return ok
	case "quantity":
		made.amounts = append(made.amounts, part.amount)
	case "format":
		made.day = true
		return wanted == "day"
	case "minItems", "maxItems":
		n, ok := wholeOf(wanted)
		if keyword == "minItems" {
			made.least = append(made.least, n)
		} else {
			made.most = append(made.most, n)
		}
		return ok
	case "required":
		return made.demandKeys(wanted)
	case "dependentRequired":
		depends, ok := wanted.(map[string]any)
		return ok && made.demandBeside(depends)
	default:
		return false
	}
	return true
}

func sortsIn(types []string) (all sortSet) {
	for _, t := range types {
		all |= sortsNamed[t]
	}
	return all
}

func (made *form) demandKeys(wanted any) bool {
	keys := stringsOf(wanted)
	for _, key := range keys {
		m := made.named[key]
		if m == nil {
			return false // two schemas demand keys, which no schema of ours does
		}
		if !m.demanded {
			m.demanded = true
			made.required++
		}
	}
	return len(keys) > 0
}

func (made *form) demandBeside(depends map[string]any) bool {
	if made.depends != nil {
		return false
	}
	made.depends = map[string][]any{}
	for key, others := range depends {
		list, ok := others.([]any)
		if !ok {
			return false
		}
		made.depends[key] = list
	}
	return true
}

// checkParts sees to it that one schema alone speaks of members, and one of items, so
// that a value's own form is all that judges it.
func (made *form) checkParts(sh *shape) {
	speak, list := 0, 0
	for part := sh; part != nil; part = part.ref {
		_, properties := part.schema["properties"]
		additional, more := part.schema["additionalProperties"]
		if properties || more {
			speak++
		}
		if more && additional == false {
			made.closed = true
		} else if _, is := additional.(map[string]any); more && !is && additional != true {
			made.loose = true
		}
		if items, ok := part.schema["items"]; ok {
			list++
			made.loose = made.loose || made.items == nil || items == nil
		}
	}
	if speak > 1 || list > 1 {
		made.loose = true
	}
}

// Matcher tells what a pattern tells. The usual ones are looked for by hand, since
// each name and id of a plan is held against one.
func Matcher(pattern string) func(string) bool {
	switch pattern {
	case `\S`:
		return hasInk
	case `^[a-z][a-z0-9]*(-[a-z0-9]+)*$`:
		return func(text string) bool { return text != "" && !isDigit(text[0]) && isID(text) }
	case `^[a-z0-9]+(-[a-z0-9]+)*$`:
		return isID
	}
	return func(text string) bool { return patternOf(pattern).MatchString(text) }
}

// hasInk tells whether anything stands in a text beside blanks.
func hasInk(text string) bool { return strings.Trim(text, "\t\n\f\r ") != "" }

// isID tells words of small letters and digits, joined by hyphens.
func isID(text string) bool {
	joined := true
	for i := range len(text) {
		switch b := text[i]; {
		case b == '-' && joined:
			return false
		case b == '-':
			joined = true
		case 'a' <= b && b <= 'z' || isDigit(b):
			joined = false
		default:
			return false
		}
	}
	return !joined
}

// sortOf is what a node is turned into for the schema to judge: a text stays a text
// wherever one is taken, and becomes a number or a truth only where nothing else is.
func sortOf(n *Node, takes sortSet) sort {
	switch {
	case n.Kind == Mapping:
		return ofGroup
	case n.Kind == List:
		return ofList
	case n.Empty():
		return ofNothing
	case !n.Plain:
		return ofText
	case takes.has(ofTruth) && (n.Text == "true" || n.Text == "false"):
		return ofTruth
	case takes.has(ofText):
		return ofText
	case takes.has(ofWhole) && isWhole(n.Text):
		return ofWhole
	case takes.has(ofNumber) && isDecimal(n.Text):
		return ofNumber
	}
	return ofText
}

func isWhole(word string) bool {
	whole, rest := cutWhole(word)
	return whole && rest == ""
}

func isDecimal(word string) bool {
	whole, rest := cutWhole(word)
	return whole && (rest == "" || rest[0] == '.' && len(rest) > 1 && digits(rest[1:]) == len(rest)-1)
}

// typed is a node's value as the library has it.
func (n *Node) typed() any {
	switch n.is {
	case ofNothing:
		return nil
	case ofTruth:
		return n.Text == "true"
	case ofWhole, ofNumber:
		return json.Number(n.Text)
	}
	return n.Text
}

// value is a node, and all below it, as the library judges them; look has told their
// sorts.
func (n *Node) value() any {
	switch n.Kind {
	case Mapping:
		members := make(map[string]any, len(n.Members))
		for _, m := range n.Members {
			members[m.Key] = m.value()
		}
		return members
	case List:
		items := make([]any, len(n.Items))
		for i, item := range n.Items {
			items[i] = item.value()
		}
		return items
	}
	return n.typed()
}

// wanted is what the schema says of a node, nil if it says nothing.
func (n *Node) wanted() map[string]any {
	if n.form == nil {
		return nil
	}
	return n.form.schema
}
