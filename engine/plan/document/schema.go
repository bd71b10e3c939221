package document

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/url"
	"strings"
	"sync"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"chainwale/engine/finding"
)

// Schema is a compiled JSON Schema that speaks in plain words of what breaks it.
// Beside the standard's keywords it knows `quantity` (see amount), the format
// `day` (see ParseDay) and `expected`, a text that says what would be right.
type Schema struct {
	// root is the schema as it is written, for the words of messages.
	root     any
	form     *form
	compiled *jsonschema.Schema
	// compile makes compiled, once and only where it is needed: see look.
	compile func() error
}

// Compile reads a schema and compiles it. It loads nothing from elsewhere. An error
// is a fault in the schema, so it is ours and not the user's.
func Compile(src []byte) (*Schema, error) {
	s, err := Prepare(src)
	if err == nil {
		err = s.compile()
	}
	if err != nil {
		return nil, err
	}
	return s, nil
}

// Prepare reads a schema and compiles it only when a tree needs it, which a sound
// one doesn't. It is for a schema that a test has compiled.
func Prepare(src []byte) (*Schema, error) {
	s := &Schema{}
	decoder := json.NewDecoder(bytes.NewReader(src))
	decoder.UseNumber()
	if err := decoder.Decode(&s.root); err != nil {
		return nil, fmt.Errorf("schema: %w", err)
	}
	id, _ := lookUp(s.root, "/$id").(string)
	if id == "" {
		return nil, errors.New("schema: it has no $id")
	}
	s.compile = sync.OnceValue(func() error { return s.compileAs(id, src) })
	err := known(s.root, "")
	if err == nil {
		var sh *shape
		if sh, err = (&shapes{root: s.root, made: map[string]*shape{}}).at(""); err == nil {
			s.form = forms{}.of(sh)
		}
	}
	if err != nil {
		return nil, fmt.Errorf("schema: %w", err)
	}
	return s, nil
}

func (s *Schema) compileAs(id string, src []byte) error {
	compiler := newCompiler()
	err := compiler.AddResource(id, bytes.NewReader(src))
	if err == nil {
		s.compiled, err = compiler.Compile(id)
	}
	if err != nil {
		return fmt.Errorf("schema: %w", err)
	}
	return nil
}

func newCompiler() *jsonschema.Compiler {
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	c.AssertFormat = true
	c.Formats = map[string]func(any) bool{"day": isDay}
	c.LoadURL = func(string) (io.ReadCloser, error) { return nil, errors.New("a schema may not load another") }
	c.RegisterExtension("quantity", nil, amountKeyword{})
	return c
}

func isDay(v any) bool {
	text, ok := v.(string)
	return !ok || isDayText(text)
}

func isDayText(text string) bool {
	_, _, err := ParseDay(text)
	return err == nil
}

// Check judges a tree. It gives all that is wrong with it, in the order of the
// places, and sets Amount on the nodes that are quantities. An error is ours.
func (s *Schema) Check(root *Node) ([]finding.Problem, error) {
	return s.check(root, false)
}

// CheckPart judges a tree that is to be merged with another: all but what is
// missing, for the other may have it.
func (s *Schema) CheckPart(root *Node) ([]finding.Problem, error) {
	return s.check(root, true)
}

// check tells of every keyword that the tree breaks; of a part, of all but those by
// which something is missing.
func (s *Schema) check(root *Node, part bool) ([]finding.Problem, error) {
	if s.lookOver(root, part) == yes {
		return nil, nil
	}
	return s.slowCheck(root, part)
}

// slowCheck is check by the library, of a tree that was looked over.
func (s *Schema) slowCheck(root *Node, part bool) ([]finding.Problem, error) {
	if err := s.compile(); err != nil {
		return nil, err
	}
	err := s.compiled.Validate(root.value())
	if err == nil {
		return nil, nil
	}
	var invalid *jsonschema.ValidationError
	if !errors.As(err, &invalid) {
		return nil, err
	}
	var problems []finding.Problem
	for _, leaf := range leaves(invalid) {
		c, err := s.complaint(root, leaf)
		if err != nil {
			return nil, err
		}
		if missing := c.keyword == "required" || c.keyword == "dependentRequired"; !part || !missing {
			problems = append(problems, c.problems()...)
		}
	}
	return Sorted(problems), nil
}

// leaves are the errors that nothing else caused.
func leaves(e *jsonschema.ValidationError) []*jsonschema.ValidationError {
	if len(e.Causes) == 0 {
		return []*jsonschema.ValidationError{e}
	}
	var found []*jsonschema.ValidationError
	for _, cause := range e.Causes {
		found = append(found, leaves(cause)...)
	}
	return found
}

// complaint is one keyword of the schema that one node breaks.
type complaint struct {
	node *Node
	// schema is where the keyword stands, root the whole it belongs to.
	schema  map[string]any
	root    any
	keyword string
	// because is the key that demands another one.
	because string
}

// complaint finds the node and the keyword behind an error.
func (s *Schema) complaint(root *Node, leaf *jsonschema.ValidationError) (complaint, error) {
	c := complaint{root: s.root}
	instance, err := plainPointer(leaf.InstanceLocation)
	if err != nil {
		return c, err
	}
	if c.node = root.Find(instance); c.node == nil {
		return c, fmt.Errorf("no value at %q", instance)
	}
	_, fragment, _ := strings.Cut(leaf.AbsoluteKeywordLocation, "#")
	where, err := plainPointer(fragment)
	if err != nil {
		return c, err
	}
	tokens := strings.Split(where, "/")
	cut := len(tokens) - 1
	if cut >= 2 && tokens[cut-2] == "dependentRequired" {
		c.because = unescape(tokens[cut-1])
		cut -= 2
	}
	c.keyword = tokens[max(cut, 0)]
	c.schema, _ = lookUp(s.root, strings.Join(tokens[:max(cut, 0)], "/")).(map[string]any)
	if c.schema == nil || says[c.keyword] == nil {
		return c, fmt.Errorf("no words for %q", where)
	}
	return c, nil
}

// plainPointer takes the escapes of a URL out of a JSON Pointer.
func plainPointer(escaped string) (string, error) {
	tokens := strings.Split(escaped, "/")
	for i, t := range tokens {
		plain, err := url.PathUnescape(t)
		if err != nil {
			return "", err
		}
		tokens[i] = plain
	}
	return strings.Join(tokens, "/"), nil
}
