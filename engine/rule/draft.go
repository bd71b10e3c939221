package rule

import (
	"regexp"
	"slices"

	"chainwale/engine/finding"
	"chainwale/engine/working"

	"go.yaml.in/yaml/v4"
)

// draft is a rule as it stands in its file: the keys are known and of the right
// sort, but no expression has been understood yet.
type draft struct {
	doc                               *document
	id, title, on                     text
	appliesIf, have                   text
	bands                             []draftBand
	ifUnknown, holdsUp, says, because text
	vary                              []text
	known                             []working.Source
	decides                           []string
	examples                          []draftExample
	// hasHave and hasHoldsUp tell whether the key is there, be its value good or bad.
	hasHave, hasHoldsUp bool
	examplesAt          finding.Place
}

// draftBand is one limit: its verb, the expression after it, the grade.
type draftBand struct {
	node                    *yaml.Node
	verb                    Verb
	limit, grade, appliesIf text
	// says is a sentence of its own for what fails here, if there is one.
	says text
}

// draftExample is one example: names with the values they have in it.
type draftExample struct {
	node           *yaml.Node
	with           []draftFact
	outcome, grade text
}

type draftFact struct{ name, value text }

var (
	headKeys    = []string{"id", "edition", "title", "author", "scope", "not_covered", "changes"}
	bandKeys    = []string{"at_least", "at_most", "above", "below", "true_that", "else", "applies_if", "says"}
	exampleKeys = []string{"with", "outcome", "grade"}
	sourceKeys  = []string{"source", "edition", "clause", "as", "for"}
	ruleKeys    = []string{"id", "title", "on", "applies_if", "have", "bands", "at_least", "at_most", "above", "below", "true_that", "else",
		"if_unknown", "holds_up", "says", "because", "vary", "known", "decides", "examples"}

	gradeWords   = wordsOf(finding.Grades())
	outcomeWords = wordsOf([]finding.Outcome{finding.Holds, finding.Fails, finding.CannotTell, finding.DoesNotApply})
	knownWords   = wordsOf(working.AllHowKnown())
	holdsUpWords = []string{"cutting", "sailing", "this step", "going aloft"}

	idPattern = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
)

func wordsOf[W ~string](list []W) []string {
	var words []string
	for _, w := range list {
		words = append(words, string(w))
	}
	return words
}

// head is pack.yaml.
type head struct {
	id, edition, title, author, scope text
	notCovered                        []string
	changes                           []Change
}

// readHead reads pack.yaml.
func readHead(d *document, p *problems) head {
	f, _ := reader{d, p}.fields(d.root, "pack.yaml", headKeys...)
	f.need("id", "edition", "title")
	id := f.id()
	return head{
		id: id, edition: f.text("edition"), title: f.text("title"),
		author: f.text("author"), scope: f.text("scope"), notCovered: values(f.texts("not_covered")), changes: f.changes(id),
	}
}

// id reads the name of a pack or a rule.
func (f fields) id() text {
	id := f.text("id")
	if id.given() && !idPattern.MatchString(id.value) {
		f.problems.add(id.at(), "small letters and digits with hyphens between, as in plate-outlasts-wire", "%s is no name for %s", quote(id.value), f.what)
		return text{}
	}
	return id
}

// readDraft reads a rule's file.
func readDraft(d *document, p *problems) draft {
	f, _ := reader{d, p}.fields(d.root, "a rule", ruleKeys...)
	f.need("id", "title", "on", "says", "because", "known", "decides")
	if !d.proven {
		f.need("examples")
	}
	r := draft{
		doc: d, id: f.id(), title: f.text("title"), on: f.text("on"),
		appliesIf: f.expression("applies_if"), have: f.expression("have"),
		ifUnknown: f.word("if_unknown", gradeWords), holdsUp: f.word("holds_up", holdsUpWords),
		says: f.text("says"), because: f.text("because"),
		vary: f.texts("vary"), decides: values(f.texts("decides")),
		hasHave: f.has("have"), hasHoldsUp: f.has("holds_up"),
	}
	r.bands = f.bands()
	f.needHave(r.bands)
	for _, n := range f.items("known") {
		r.known = append(r.known, f.source(n))
	}
	if f.has("examples") {
		r.examplesAt = f.keyPlace("examples")
	}
	for _, n := range f.items("examples") {
		r.examples = append(r.examples, f.example(n))
	}
	return r
}

// bands reads the list of limits, or the one limit that stands in its place.
func (f fields) bands() []draftBand {
	if !f.has("bands") {
		b := f.band(false)
		return []draftBand{b}
	}
	for _, key := range []string{"at_least", "at_most", "above", "below", "true_that", "else"} {
		if f.has(key) {
			f.problems.add(f.keyPlace(key), "put it in a band of its own", "%s can't stand beside bands", key)
		}
	}
	if !f.block(f.values["bands"]) {
		return nil
	}
	var list []draftBand
	for _, n := range f.items("bands") {
		if !f.block(n) {
			continue
		}
		if item, ok := f.fields(n, "a band", bandKeys...); ok {
			list = append(list, item.band(true))
		}
	}
	return list
}

// block refuses bands in braces: there a comma ends the expression, so that
// `{ at_least: max(2 * t, d) }` loses its second half.
func (f fields) block(n *yaml.Node) bool {
	if n.Style&yaml.FlowStyle == 0 {
		return true
	}
	f.problems.add(f.doc.at(n), "a line for each key, the first after a hyphen", "bands can't stand in braces or brackets, where a comma cuts an expression in two")
	return false
}

// band reads one limit. Its own applies_if and says are read in a list only: at
// the top these keys are the rule's.
func (f fields) band(inList bool) draftBand {
	b := draftBand{node: f.node, grade: f.word("else", gradeWords)}
	f.need("else")
	if inList {
		b.appliesIf, b.says = f.expression("applies_if"), f.text("says")
	}
	var found []Verb
	for _, v := range verbs {
		if f.has(string(v)) {
			found = append(found, v)
		}
	}
	switch len(found) {
	case 1:
		b.verb, b.limit = found[0], f.expression(string(found[0]))
	case 0:
		f.problems.add(f.doc.at(f.node), oneOf(wordsOf(verbs)), "%s has no limit", f.what)
	default:
		f.problems.add(f.keyPlace(string(found[1])), "one limit a band; write a second band for the other", "%s has both %s and %s", f.what, found[0], found[1])
	}
	return b
}

// needHave notes a comparison that has nothing to compare.
func (f fields) needHave(bands []draftBand) {
	if f.has("have") {
		return
	}
	for _, b := range bands {
		if b.verb.compares() {
			f.problems.add(f.doc.at(b.node), "have: what is compared", "%s compares, but the rule has no have", b.verb)
			return
		}
	}
}

func (f fields) source(n *yaml.Node) working.Source {
	s, ok := f.fields(n, "a source", sourceKeys...)
	if !ok {
		return working.Source{}
	}
	s.need("source", "as")
	return working.Source{
		Title: s.text("source").value, Edition: s.text("edition").value, Clause: s.text("clause").value,
		As: working.HowKnown(s.word("as", knownWords).value), For: s.text("for").value,
	}
}

func (f fields) example(n *yaml.Node) draftExample {
	e := draftExample{node: n}
	x, ok := f.fields(n, "an example", exampleKeys...)
	if !ok {
		return e
	}
	x.need("outcome")
	e.outcome, e.grade = x.word("outcome", outcomeWords), x.word("grade", gradeWords)
	with := x.values["with"]
	switch {
	case with == nil, f.doc.refused[with]:
		return e
	case with.Kind != yaml.MappingNode:
		f.problems.add(f.doc.at(with), "facts and their values, as in thickness: 6 mm", "with holds %s", kindName(with))
		return e
	}
	for i := 0; i+1 < len(with.Content); i += 2 {
		name := text{value: with.Content[i].Value, doc: f.doc, node: with.Content[i]}
		if value := f.scalar(with.Content[i+1], quote(name.value)); value.given() {
			e.with = append(e.with, draftFact{name, value})
		}
	}
	return e
}

// keyPlace is the place of a key itself.
func (f fields) keyPlace(key string) finding.Place {
	i := slices.IndexFunc(f.node.Content, func(n *yaml.Node) bool { return n == f.values[key] })
	return f.doc.at(f.node.Content[i-1])
}
