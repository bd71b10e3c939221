package plan

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"path/filepath"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/plan/document"
)

// A plan may name a template: the plan of the boat's class, which it fills in and
// changes. The template may name another. Each is read relative to the file that
// names it.

const (
	// mostFiles is how many files may build on each other.
	mostFiles = 8
	// mostTogether is how many values they may hold together, as many as one file.
	mostTogether = 20_000
)

// paper is the key under which a certificate stands.
const paper = "certificate"

// Source is one of the files that a plan was read from.
type Source struct {
	// Name is the file as places call it.
	Name string
	// NamedAt is where another file names it as its template; nowhere for the plan.
	NamedAt finding.Place
}

// part is a file of the chain from a plan to its last template.
type part struct {
	Source
	// path leads to it from the plan's own folder, as the files say, and is the same
	// on every machine. real is where that is on this one.
	path, real string
	src        []byte
	tree       *document.Node
}

// chain reads a plan and its templates.
type chain struct {
	files    *files
	parts    []part
	problems []finding.Problem
	values   int
}

// start takes the plan itself.
func (c *chain) start(name string, src []byte) {
	// A plan that can't be resolved can't be met again either.
	real, _ := c.files.resolve(name)
	c.add(part{Source: Source{Name: name}, path: filepath.Base(name), real: real, src: src})
}

// follow reads the templates, each the one that the last file names, until one
// names none or is at fault.
func (c *chain) follow() {
	for len(c.problems) == 0 {
		last := c.parts[len(c.parts)-1]
		named := last.tree.Member("template")
		if named == nil || named.Kind != document.Scalar || strings.TrimSpace(named.Text) == "" || named.Empty() {
			return
		}
		next, refused := c.next(last, named)
		if refused != nil {
			c.problems = append(c.problems, *refused.at(named.At))
			return
		}
		c.add(next)
	}
}

// add reads a file's bytes as a tree.
func (c *chain) add(p part) {
	tree, problems := document.Read(p.Name, p.src)
	c.problems = append(c.problems, problems...)
	if tree == nil {
		return
	}
	p.tree = tree
	c.parts = append(c.parts, p)
	if c.values += tree.Values(); c.values > mostTogether {
		c.problems = append(c.problems, finding.Problem{
			At:       p.NamedAt,
			Message:  fmt.Sprintf("with the template %s the plan holds more than %d values", shown(p.Name), mostTogether),
			Expected: "a shorter plan or template",
		})
	}
}

// next reads the bytes of the template that a file names.
func (c *chain) next(from part, named *document.Node) (part, *refusal) {
	text := named.Text
	if bad := noPath(text); bad != nil {
		return part{}, bad
	}
	p := part{Source: Source{Name: filepath.Join(filepath.Dir(from.Name), filepath.FromSlash(text)), NamedAt: named.At}, path: path.Join(path.Dir(from.path), text)}
	bad := c.locate(&p)
	if bad == nil {
		p.src, bad = c.files.readUnder(p.real)
	}
	if bad != nil {
		return p, &refusal{fmt.Sprintf("the template %s can't be used: %s", shown(p.Name), bad.message), bad.expected}
	}
	return p, nil
}

// noPath refuses what leads to different files on different machines.
func noPath(text string) *refusal {
	const form = "the way from this file's folder to the template, for example ../classes/sandling-33.yaml"
	switch {
	case strings.Contains(text, `\`):
		return &refusal{"the template's name holds a backslash", form}
	case path.IsAbs(text) || filepath.IsAbs(text) || filepath.VolumeName(text) != "":
		return &refusal{"the template's name does not begin at this file's folder", form}
	}
	return nil
}

// locate finds the one path of a template and sees to it that the chain neither
// leaves the root, nor comes back to a file, nor goes on for ever.
func (c *chain) locate(p *part) *refusal {
	real, err := c.files.resolve(p.Name)
	if _, ok := c.files.within(real); !ok {
		return c.files.outside()
	}
	if err != nil {
		bad := unreadable(err)
		if errors.Is(err, fs.ErrNotExist) {
			bad.expected = "the way from this file's folder to the template"
		}
		return bad
	}
	for _, before := range c.parts {
		if before.real == real {
			return &refusal{"it leads in a circle, back to " + shown(before.Name), "a template that does not build on this file"}
		}
	}
	if len(c.parts) == mostFiles {
		return &refusal{fmt.Sprintf("%d files build on each other already", mostFiles), "fewer templates of templates"}
	}
	p.real = real
	return nil
}

// merged lays the files over each other, the plan on top.
func (c *chain) merged(s *document.Schema) *document.Node {
	last := len(c.parts) - 1
	tree := c.parts[last].tree
	for i := last - 1; i >= 0; i-- {
		tree = s.Merge(tree, c.parts[i].tree, paper)
	}
	return tree
}

// check judges the plan by the schema: each file for itself, except that the
// others may have what it lacks, and all of them together.
func (c *chain) check(s *document.Schema) (*document.Node, error) {
	if len(c.parts) > 1 || len(c.problems) > 0 {
		for _, p := range c.parts {
			problems, err := s.CheckPart(p.tree)
			if err != nil {
				return nil, fmt.Errorf("checking %s: %w", p.Name, err)
			}
			c.problems = append(c.problems, problems...)
		}
	}
	return c.merged(s), nil
}

// hash is "sha256:" over all files.
func (c *chain) hash() string {
	contents := map[string][]byte{}
	for _, p := range c.parts {
		contents[p.path] = p.src
	}
	return hash(contents)
}

func (c *chain) sources() (all []Source) {
	for _, p := range c.parts {
		all = append(all, p.Source)
	}
	return all
}
