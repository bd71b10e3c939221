package rulebook

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"
	"testing/fstest"

	"chainwale/engine/fact"
	"chainwale/engine/rule"
	"chainwale/rules"
)

func builtIn(t *testing.T) []*rule.Pack {
	t.Helper()
	c, err := fact.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	var packs []*rule.Pack
	for _, name := range rules.Packs() {
		p, problems := rule.Load(rules.FS, name, name, c, rule.LoadOptions{SkipSchema: true})
		if p == nil {
			t.Fatal(problems)
		}
		packs = append(packs, p)
	}
	return packs
}

func markdownOf(t *testing.T, packs ...*rule.Pack) string {
	t.Helper()
	var b bytes.Buffer
	if err := Markdown(&b, packs, Options{Title: "A book", From: "packs", Command: "a command"}); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func htmlOf(t *testing.T, packs ...*rule.Pack) string {
	t.Helper()
	var b bytes.Buffer
	if err := HTML(&b, packs, Options{Title: "A book", From: "packs", Command: "a command"}); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestBookIsWhole holds that no rule and nothing that a reader needs of one is left
// out of the book.
func TestBookIsWhole(t *testing.T) {
	packs := builtIn(t)
	book := markdownOf(t, packs...)
	pages := strings.Split(book, "<a id=\"")
	for _, p := range packs {
		for _, r := range p.Rules {
			page := pageOfID(pages, r.ID)
			parts := []string{prose(r.Title), prose(oneLine(r.Says)), prose(oneLine(r.Because)), "| if not known |", "Decides: ", "Proven by "}
			for _, b := range r.Bands {
				parts = append(parts, verbs[b.Verb]+" `"+strings.ReplaceAll(b.Limit, "|", `\|`)+"`", "| "+string(b.Else)+" |", b.AppliesIf, prose(b.Says))
			}
			for _, k := range r.Known {
				parts = append(parts, prose(k.Title), string(k.As), prose(k.For))
			}
			for _, name := range r.Reads {
				parts = append(parts, "| `"+name+"` |")
			}
			for _, part := range parts {
				if !strings.Contains(page, part) {
					t.Errorf("the page of %s lacks %q", r.ID, part)
				}
			}
		}
		for _, n := range append(p.NotCovered, p.Scope, p.Author) {
			if !strings.Contains(book, prose(n)) {
				t.Errorf("the page of the pack %s lacks %q", p.ID, n)
			}
		}
	}
}

// pageOfID is the piece of the book from a rule's anchor to the next.
func pageOfID(pages []string, id string) string {
	for _, page := range pages {
		if strings.HasPrefix(page, id+"\"") {
			return page
		}
	}
	return ""
}

// TestHTMLStandsAlone holds the HTML to be well formed, to refer to nothing outside of
// itself, and to have each place that it refers to, once.
func TestHTMLStandsAlone(t *testing.T) {
	packs := builtIn(t)
	book := htmlOf(t, packs...)
	ids, refers := map[string]int{}, map[string]bool{}
	for _, e := range elements(t, book) {
		for _, a := range e.Attr {
			switch a.Name.Local {
			case "id":
				ids[a.Value]++
			case "href":
				refers[strings.TrimPrefix(a.Value, "#")] = true
			case "aria-labelledby":
				refers[a.Value] = true
			case "src", "style", "onclick":
				t.Errorf("<%s %s=%q>", e.Name.Local, a.Name.Local, a.Value)
			}
		}
		if e.Name.Local == "script" || e.Name.Local == "link" {
			t.Errorf("<%s>", e.Name.Local)
		}
	}
	for id, n := range ids {
		if n > 1 {
			t.Errorf("%d elements have the id %s", n, id)
		}
	}
	for to := range refers {
		if ids[to] == 0 {
			t.Errorf("something leads to %s, which is not there", to)
		}
	}
	for _, p := range packs {
		for _, r := range p.Rules {
			if ids["rule-"+r.ID] == 0 {
				t.Errorf("the rule %s has no page", r.ID)
			}
		}
	}
	if strings.Contains(book, "url(") || strings.Contains(book, "@import") {
		t.Error("the styles need something from elsewhere")
	}
}

// elements reads the book as XML does, which takes nothing on trust.
func elements(t *testing.T, book string) (list []xml.StartElement) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(book))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return list
		}
		if err != nil {
			t.Fatalf("not well formed: %v", err)
		}
		if e, ok := token.(xml.StartElement); ok {
			list = append(list, e.Copy())
		}
	}
}

const hostileHead = `id: hostile
edition: "<b>1</b> | *2*"
title: "A ![pack](http://x) <script>alert(1)</script>"
author: "nobody & <i>sons</i>"
scope: "# no heading"
not_covered: ["- no list | [x](y)"]
`

const hostileRule = `id: hostile-rule
title: "1. <img src=x onerror=alert(1)> | *all* _round_ & more"
on: landing
applies_if: |
  fitting.state in ["kept",
    "new"]
have: fitting.thickness
at_least: "'4 mm'"
else: stop
holds_up: cutting
says: "{fitting} ` + "`has`" + ` <script>{have}</script>"
because: "</article> --- | \\"
known: [{ source: "</li><li>", as: memory, for: "a | b" }]
decides: ["<rigger>"]
examples:
  - { with: { fitting.state: new, fitting.thickness: 5 mm }, outcome: holds }
  - { with: { fitting.state: new, fitting.thickness: 3 mm }, outcome: fails }
  - { with: {}, outcome: cannot tell }
`

func hostile(t *testing.T, rules string) *rule.Pack {
	t.Helper()
	c, err := fact.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	files := fstest.MapFS{"pack.yaml": {Data: []byte(hostileHead)}, "a.yaml": {Data: []byte(rules)}}
	p, problems := rule.Load(files, ".", "hostile", c, rule.LoadOptions{})
	if p == nil {
		t.Fatal(problems)
	}
	return p
}

// TestTextsMeanThemselves: no text of a pack becomes a mark of the book.
func TestTextsMeanThemselves(t *testing.T) {
	p := hostile(t, hostileRule)
	html := htmlOf(t, p)
	for _, e := range elements(t, html) {
		if n := e.Name.Local; n == "script" || n == "img" || n == "b" || n == "i" {
			t.Errorf("<%s> came out", n)
		}
	}
	markdown := markdownOf(t, p)
	for _, bad := range []string{"<script", "<img", "</article", "</li", "<b>", "[pack](", "[x](", "*all*", " _round_ ", "\n# no", "\n- - no", "`has`", "### 1. "} {
		if strings.Contains(markdown, bad) {
			t.Errorf("%q came out in\n%s", bad, markdown)
		}
	}
	for _, row := range strings.Split(markdown, "\n") {
		if strings.HasPrefix(row, "| hostile |") && strings.Count(strings.ReplaceAll(row, `\|`, ""), "|") != 6 {
			t.Errorf("a bar of a text parts the cells: %s", row)
		}
	}
	if html != htmlOf(t, p) || markdown != markdownOf(t, p) {
		t.Error("the same pack gives two books")
	}
}

// TestUnprovenIsNoBook: what a rule's own examples contradict is not printed.
func TestUnprovenIsNoBook(t *testing.T) {
	p := hostile(t, strings.Replace(hostileRule, "thickness: 5 mm", "thickness: 2 mm", 1))
	var b bytes.Buffer
	if err := Markdown(&b, []*rule.Pack{p}, Options{}); err == nil || b.Len() > 0 {
		t.Errorf("%v: %q", err, b.String())
	}
	if err := HTML(&b, []*rule.Pack{p}, Options{}); err == nil || b.Len() > 0 {
		t.Errorf("%v: %q", err, b.String())
	}
}

func TestProse(t *testing.T) {
	for text, want := range map[string]string{
		"plain, as 1.5 times":   "plain, as 1.5 times",
		"1.5 times":             "1.5 times",
		"1. first":              `1\. first`,
		"2) second":             `2\) second`,
		"# head":                `\# head`,
		"-":                     `\-`,
		"- item":                `\- item`,
		"-5 mm":                 "-5 mm",
		"fork_fill and _this_":  `fork_fill and \_this\_`,
		"a * b":                 `a \* b`,
		"`x` [y](z) <b> & \\ ~": "\\`x\\` \\[y\\](z) &lt;b&gt; &amp; \\\\ \\~",
	} {
		if got := prose(text); got != want {
			t.Errorf("%q: %q, wanted %q", text, got, want)
		}
	}
	if got := codeSpan("a `b`"); got != "`` a `b` ``" {
		t.Error(got)
	}
}
