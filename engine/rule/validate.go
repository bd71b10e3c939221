package rule

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"sync"

	"chainwale/schema"

	"github.com/santhosh-tekuri/jsonschema/v5"
	"go.yaml.in/yaml/v4"
)

// schemas compiles the pack schema, once and only when it is wanted.
var schemas = sync.OnceValues(func() (map[string]*jsonschema.Schema, error) {
	const url = "urn:chainwale:pack:1"
	c := jsonschema.NewCompiler()
	c.LoadURL = func(s string) (io.ReadCloser, error) { return nil, fmt.Errorf("%s is not to be loaded", s) }
	if err := c.AddResource(url, bytes.NewReader(schema.Pack())); err != nil {
		return nil, err
	}
	found := map[string]*jsonschema.Schema{}
	for _, def := range []string{"pack", "rule"} {
		s, err := c.Compile(url + "#/$defs/" + def)
		if err != nil {
			return nil, err
		}
		found[def] = s
	}
	return found, nil
})

// validate checks a document against the published schema, unless our own reader
// has found fault with it already and said so in plainer words. So no file passes
// here which an editor that knows the schema would mark.
func (l *loader) validate(d *document, definition string, faults int) {
	if l.options.SkipSchema || len(l.list) > faults {
		return
	}
	found, err := schemas()
	if err != nil {
		l.add(d.place(1, 1), "", "the schema of packs can't be read: %v", err)
		return
	}
	var bad *jsonschema.ValidationError
	if err := found[definition].Validate(plain(d.root)); !errors.As(err, &bad) {
		return
	}
	for _, leaf := range leaves(bad) {
		l.add(d.at(d.find(leaf.InstanceLocation)), "", "the schema of packs says: %s", leaf.Message)
	}
}

// leaves are the innermost complaints: the outer ones only say that there are some.
func leaves(e *jsonschema.ValidationError) []*jsonschema.ValidationError {
	if len(e.Causes) == 0 {
		return []*jsonschema.ValidationError{e}
	}
	var list []*jsonschema.ValidationError
	for _, c := range e.Causes {
		list = append(list, leaves(c)...)
	}
	return list
}

// plain makes nodes into what the schema checks. Each scalar is a text, by its
// own characters, as our reader takes it.
func plain(n *yaml.Node) any {
	switch n.Kind {
	case yaml.MappingNode:
		m := map[string]any{}
		for i := 0; i+1 < len(n.Content); i += 2 {
			if _, twice := m[n.Content[i].Value]; !twice {
				m[n.Content[i].Value] = plain(n.Content[i+1])
			}
		}
		return m
	case yaml.SequenceNode:
		list := make([]any, len(n.Content))
		for i, c := range n.Content {
			list[i] = plain(c)
		}
		return list
	}
	return n.Value
}

// find follows a JSON pointer to a node; what the schema says of a mapping as a
// whole stands at the mapping.
func (d *document) find(pointer string) *yaml.Node {
	n := d.root
	for _, step := range strings.Split(pointer, "/")[1:] {
		step = strings.NewReplacer("~1", "/", "~0", "~").Replace(step)
		child := childOf(n, step)
		if child == nil {
			return n
		}
		n = child
	}
	return n
}

func childOf(n *yaml.Node, step string) *yaml.Node {
	if n.Kind == yaml.SequenceNode {
		if i, err := strconv.Atoi(step); err == nil && i < len(n.Content) {
			return n.Content[i]
		}
		return nil
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == step {
			return n.Content[i+1]
		}
	}
	return nil
}
