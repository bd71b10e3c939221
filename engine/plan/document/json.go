package document

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"

	"chainwale/engine/finding"
)

// readJSON makes the tree of a JSON file out of tokens and their offsets. It stops
// at the first thing that is no JSON; keys that stand twice are all reported.
func readJSON(name string, src []byte) (*Node, []finding.Problem) {
	j := &jsonReader{lines: newLines(name, src), decoder: json.NewDecoder(bytes.NewReader(src))}
	j.decoder.UseNumber()
	root := &Node{At: j.lines.at(j.next())}
	root.KeyAt = root.At
	err := j.value(root, 0)
	if err == nil {
		err = j.end()
	}
	var own *misplaced
	if !errors.As(err, &own) && !isEnd(err) {
		// Read as a whole, a fault has its exact place, which it lacks among the
		// tokens, and no comma too many is forgiven.
		var whole json.RawMessage
		err = cmp.Or(json.Unmarshal(src, &whole), err)
	}
	if err != nil {
		j.problems = append(j.problems, j.syntax(err))
	} else if root.Kind != Mapping {
		j.problems = append(j.problems, finding.Problem{At: root.At, Message: "the file does not begin with a key", Expected: `keys with values in braces, for example {"name": "Grey Wagtail"}`})
	}
	return root, j.problems
}

type jsonReader struct {
	lines   *lines
	decoder *json.Decoder
	// values counts what is read, to stop early at a file made to be endless.
	values   int
	problems []finding.Problem
	shelf    shelf
}

// misplaced is a fault with an offset of its own.
type misplaced struct {
	offset            int
	message, expected string
}

func (m *misplaced) Error() string { return m.message }

// next is the offset at which the next token begins: the decoder tells only where
// the last one ended.
func (j *jsonReader) next() int {
	at := int(j.decoder.InputOffset())
	for at < len(j.lines.src) && strings.IndexByte(" \t\r\n,:", j.lines.src[at]) >= 0 {
		at++
	}
	return at
}

// value reads one value into a node that already has its place.
func (j *jsonReader) value(n *Node, depth int) error {
	start := j.next()
	if j.values++; j.values > mostValues {
		return &misplaced{start, tooManyMessage, tooManyExpected}
	}
	token, err := j.decoder.Token()
	if err != nil {
		return err
	}
	switch t := token.(type) {
	case json.Delim:
		if depth == deepest {
			return &misplaced{start, tooDeepMessage, tooDeepExpected}
		}
		if t == '{' {
			return j.mapping(n, depth)
		}
		return j.list(n, depth)
	case string:
		n.Text = t
		if r, found := hiddenControl(t); found {
			j.problems = append(j.problems, finding.Problem{At: n.At, Message: hiddenMessage(r), Expected: "text that can be printed"})
		}
	default:
		// Numbers, true, false and null keep their own characters.
		n.Text, n.Plain = string(j.lines.src[start:j.decoder.InputOffset()]), true
	}
	return nil
}

func (j *jsonReader) list(n *Node, depth int) error {
	n.Kind = List
	for j.decoder.More() {
		item := j.shelf.node()
		item.At = j.lines.at(j.next())
		j.shelf.numbered(n, len(n.Items), item)
		n.Items = append(n.Items, item)
		if err := j.value(item, depth+1); err != nil {
			return err
		}
	}
	_, err := j.decoder.Token()
	return err
}

func (j *jsonReader) mapping(n *Node, depth int) error {
	n.Kind = Mapping
	seen := map[string]finding.Place{}
	for j.decoder.More() {
		keyAt := j.lines.at(j.next())
		token, err := j.decoder.Token()
		if err != nil {
			return err
		}
		// Between braces the decoder gives nothing but texts as keys.
		key, _ := token.(string)
		value := &Node{At: j.lines.at(j.next())}
		first, twice := seen[key]
		switch {
		case twice:
			j.problems = append(j.problems, twiceProblem(n, key, keyAt, first))
			value.At.Pointer = n.At.Pointer + "/" + escape(key)
		default:
			seen[key] = keyAt
			j.shelf.under(n, key, keyAt, value)
			n.Members = append(n.Members, value)
			if bad := badKey(key); bad != "" {
				j.problems = append(j.problems, finding.Problem{At: value.KeyAt, Message: bad, Expected: "a key of plain letters"})
			}
		}
		if err := j.value(value, depth+1); err != nil {
			return err
		}
	}
	_, err := j.decoder.Token()
	return err
}

// badKey says why a text can't be a key, "" if it can.
func badKey(key string) string {
	if key == "" {
		return "a value stands here without a key"
	}
	if r, found := hiddenControl(key); found {
		return hiddenMessage(r)
	}
	return ""
}

// twiceProblem is the problem with a key that a mapping already has.
func twiceProblem(n *Node, key string, at, first finding.Place) finding.Problem {
	at.Pointer = n.At.Pointer + "/" + escape(key)
	return finding.Problem{
		At:       at,
		Message:  fmt.Sprintf("the key %s stands twice; it is already in line %d", short(key), first.Line),
		Expected: "each key once",
	}
}

// end sees to it that nothing stands behind the value.
func (j *jsonReader) end() error {
	at := j.next()
	if _, err := j.decoder.Token(); errors.Is(err, io.EOF) {
		return nil
	}
	return &misplaced{at, "something stands here behind the keys of the file", "one group of keys and values, and nothing behind it"}
}

// isEnd tells that the file ended too early.
func isEnd(err error) bool { return errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) }

// syntax is the problem behind an error of the JSON decoder.
func (j *jsonReader) syntax(err error) finding.Problem {
	var own *misplaced
	var bad *json.SyntaxError
	switch {
	case errors.As(err, &own):
		return finding.Problem{At: j.lines.at(own.offset), Message: own.message, Expected: own.expected}
	case isEnd(err):
		return finding.Problem{At: j.lines.at(len(j.lines.src)), Message: "the file ends before its JSON is complete", Expected: "a closing brace or bracket for each that is open"}
	case errors.As(err, &bad):
		return finding.Problem{At: j.lines.at(int(bad.Offset) - 1), Message: "the file can't be read as JSON: " + bad.Error(), Expected: "keys and texts in double quotes, a comma between entries and none after the last"}
	}
	return finding.Problem{At: j.lines.at(j.next()), Message: "the file can't be read as JSON from here on", Expected: "JSON"}
}
