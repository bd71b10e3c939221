package document

import (
	"errors"
	"fmt"
	"strings"

	"go.yaml.in/yaml/v4"

	"chainwale/engine/finding"
)

// The YAML reader speaks of tokens and contexts. This file says the same in words
// that help someone who only wants to write down a boat.

// wording is what we say in place of one of the YAML reader's messages. In the
// texts %s is the place where the broken construct began.
type wording struct {
	says, context     string
	message, expected string
	// atStart puts the problem where the construct began.
	atStart bool
}

const (
	keyForm   = "a key, a colon, a space and a value; keys of one group begin in the same column"
	listForm  = "every entry of a list begins with a dash in the same column"
	quoteForm = "the quote that ends the text, the same as the one that opens it"
)

const (
	tagMessage        = "a tag (!) stands before this value"
	tagExpected       = "the value alone; put a text that begins with ! in quotes"
	directiveMessage  = "a line that begins with % stands here"
	directiveExpected = "keys with values only; put a text that begins with % in quotes"
)

// wordings are tried in order; the first whose parts both occur is taken.
var wordings = []wording{
	{says: tooDeep, message: tooDeepMessage, expected: tooDeepExpected},
	{says: "mapping values are not allowed", message: "a colon stands where no key can be", expected: keyForm + "; put a text that holds a colon in quotes"},
	{says: "',' or ']'", message: "the list that opens at %s is not closed before this", expected: "a comma between entries and ] at the end"},
	{says: "',' or '}'", message: "the group of keys that opens at %s is not closed before this", expected: "a comma between keys and } at the end"},
	{says: "found unexpected end of stream", context: "quoted scalar", message: "the text in quotes that opens at %s is never closed", expected: quoteForm},
	{says: "found unexpected document indicator", message: "the text in quotes that opens at %s is never closed", expected: quoteForm},
	{says: "found unknown escape character", message: "a backslash in double quotes stands before a character it can't go with", expected: `\\ for a backslash, or single quotes around the text`},
	{says: "did not find expected hexadecimal", message: "a backslash in double quotes is not followed by the number of a character", expected: `\\ for a backslash, or single quotes around the text`},
	{says: "Unicode character escape", message: "a backslash in double quotes stands for no character", expected: `\\ for a backslash, or single quotes around the text`},
	{says: "could not find expected ':'", message: "this line has no colon after its key", expected: keyForm, atStart: true},
	{says: "did not find expected key", context: "block mapping", message: "this line does not fit under the keys that begin at %s", expected: keyForm},
	{says: "did not find expected '-' indicator", message: "this line does not fit under the list that begins at %s", expected: listForm},
	{says: "block sequence entries are not allowed", message: "a list begins here where none can", expected: "the list on lines of its own below the key, " + listForm},
	{says: "mapping keys are not allowed", message: "a question mark stands where no key can be", expected: keyForm + "; put a text that begins with ? in quotes"},
	{says: "tab character", message: "a tab stands here", expected: "spaces; YAML takes no tabs before a key"},
	{says: "indentation indicator", message: "the text block begins in a way that can't be read", expected: "the text below the key, set in by two spaces"},
	{says: "did not find expected comment or line break", message: "something stands behind the mark that opens a block of text", expected: "the text on the lines below it"},
	{says: "did not find expected <document start>", message: "something stands here behind the keys of the file", expected: "one group of keys and values, and nothing behind it"},
	{says: "did not find expected node content", message: "a value is missing or misplaced here", expected: "a value between two commas"},
	{says: "unknown anchor", message: aliasMessage, expected: aliasExpected},
	{context: "anchor", message: "an & stands where a value should begin", expected: "the value alone; put a text that begins with & in quotes"},
	{context: "alias", message: aliasMessage, expected: aliasExpected},
	{context: "tag", message: tagMessage, expected: tagExpected},
	{says: "tag handle", message: tagMessage, expected: tagExpected},
	{context: "directive", message: directiveMessage, expected: directiveExpected},
	{says: "directive", message: directiveMessage, expected: directiveExpected},
	{says: "comment without preceding whitespace", message: "a # stands right behind a value", expected: "a space before the # that begins a remark"},
	{says: "document-end marker", message: "something stands here behind the keys of the file", expected: "one group of keys and values, and nothing behind it"},
}

// syntax is the problem behind an error of the YAML reader.
func (y *yamlReader) syntax(err error) finding.Problem {
	var bad *yaml.LoadError
	if !errors.As(err, &bad) {
		return finding.Problem{At: top(y.lines.name), Message: "the file can't be read as YAML", Expected: keyForm}
	}
	at := y.mark(bad.Mark.Line, bad.Mark.Column)
	start := at
	if bad.ContextMark.Line > 0 {
		start = y.mark(bad.ContextMark.Line, bad.ContextMark.Column)
	}
	switch c := y.lines.byteAt(at.Line, at.Column); {
	case strings.Contains(bad.Message, "cannot start any token"):
		return badStart(at, c)
	case c == ']' || c == '}':
		return finding.Problem{At: at, Message: fmt.Sprintf("a %c stands here that closes nothing", c), Expected: "one closing bracket for each that opens"}
	}
	for _, w := range wordings {
		if !strings.Contains(bad.Message, w.says) || !strings.Contains(bad.ContextMsg, w.context) {
			continue
		}
		if w.atStart {
			at = start
		}
		opened := fmt.Sprintf("line %d, column %d", start.Line, start.Column)
		return finding.Problem{At: at, Message: strings.ReplaceAll(w.message, "%s", opened), Expected: w.expected}
	}
	return finding.Problem{At: at, Message: "the file can't be read as YAML from here on", Expected: keyForm}
}

// badStart is for a character with which no value can begin.
func badStart(at finding.Place, c byte) finding.Problem {
	if c == '\t' {
		return finding.Problem{At: at, Message: "a tab stands here", Expected: "spaces; YAML takes no tabs before a key"}
	}
	return finding.Problem{At: at, Message: fmt.Sprintf("a value can't begin with %c", c), Expected: "the text in quotes"}
}

// mark is a place of the YAML reader, the top of the file where it gives none.
func (y *yamlReader) mark(line, column int) finding.Place {
	return y.place(max(line, 1), max(column, 1))
}
