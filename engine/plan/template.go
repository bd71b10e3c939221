package plan

import (
	"fmt"
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
	// longestPath is how long a template's name may be. To look for one of a
	// megabyte, folder by folder, would take for ever.
	longestPath = 1000
)

// blanks are the characters of which alone the schema takes no text.
const blanks = "\t\n\f\r "

// paper is the key under which a certificate stands.
const paper = "certificate"

// Source is one of the files that a plan was read from.
type Source struct {
	// Name is the file as places call it.
	Name string
	// NamedAt is where another file names it as its template; nowhere for the plan.
	NamedAt finding.Place
}

// layer is a file of the chain from a plan to its last template.
type layer struct {
	Source
	// path leads to it from the plan's own folder, as the files say, and is the same
	// on every machine. real is where that is on this one.
	path, real string
	*contents
}

// chain reads a plan and its templates.
type chain struct {
	files    *files
	layers   []layer
	problems []finding.Problem
	values   int
	// broken tells that a file of the chain could not be read, so that what the
	// others lack may stand there.
	broken bool
}

// start takes the plan itself.
func (c *chain) start(name string, src []byte) {
	p := layer{Source: Source{Name: name}, path: filepath.Base(name), contents: contentsOf(name, src)}
	if c.files != nil {
		p.real, _ = c.files.resolve(name) // a file that can't be resolved is not met again
	}
	c.add(p)
}

// follow reads the templates, each the one that the last file names, until one
// names none or is at fault.
func (c *chain) follow() {
	for !c.broken {
		last := c.layers[len(c.layers)-1]
		named := last.tree.Member("template")
		if named == nil {
			return
		}
		if named.Kind != document.Scalar || strings.Trim(named.Text, blanks) == "" || named.Empty() {
			c.broken = true // the schema tells why
			return
		}
		next, refused := c.next(last, named)
		if refused != nil {
			c.fault(*refused.at(named.At))
			return
		}
		c.add(next)
	}
}

// add puts a file that was read at the end of the chain.
func (c *chain) add(p layer) {
	if c.fault(p.problems...); p.tree == nil {
		return
	}
	c.layers = append(c.layers, p)
	if c.values += p.values; c.values > mostTogether {
		c.fault(finding.Problem{
			At:       p.NamedAt,
			Message:  fmt.Sprintf("with the template %s the plan holds more than %d values", shown(p.Name), mostTogether),
			Expected: "a shorter plan or template",
		})
	}
}

// fault notes what keeps a file from being read.
func (c *chain) fault(problems ...finding.Problem) {
	c.problems = append(c.problems, problems...)
	c.broken = c.broken || len(problems) > 0
}

// next reads the template that a file names.
func (c *chain) next(from layer, named *document.Node) (layer, *refusal) {
	text := named.Text
	if c.files == nil {
		return layer{}, &refusal{"a template can't be used where a plan is read without its folder", "a plan without a template"}
	}
	if bad := noPath(text); bad != nil {
		return layer{}, bad
	}
	p := layer{Source: Source{Name: filepath.Join(filepath.Dir(from.Name), filepath.FromSlash(text)), NamedAt: named.At}, path: path.Join(path.Dir(from.path), text)}
	bad := c.locate(&p)
	if bad == nil {
		p.contents, bad = c.files.template(p)
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
	case len(text) > longestPath:
		return &refusal{fmt.Sprintf("the template's name is longer than %d bytes", longestPath), form}
	case strings.Contains(text, `\`):
		return &refusal{"the template's name holds a backslash", form}
	case path.IsAbs(text) || filepath.IsAbs(text) || filepath.VolumeName(text) != "":
		return &refusal{"the template's name does not begin at this file's folder", form}
	}
	return nil
}

// locate finds the one path of a template and sees to it that the chain neither
// leaves the root, nor comes back to a file, nor goes on for ever.
func (c *chain) locate(p *layer) *refusal {
	real, err := c.files.resolve(p.Name)
	if _, ok := c.files.within(real); !ok {
		return c.files.outside()
	}
	if err != nil {
		return unreadable(err)
	}
	for _, before := range c.layers {
		if before.real == real {
			return &refusal{"it leads in a circle, back to " + shown(before.Name), "a template that does not build on this file"}
		}
	}
	if len(c.layers) == mostFiles {
		return &refusal{fmt.Sprintf("%d files build on each other already", mostFiles), "fewer templates of templates"}
	}
	p.real = real
	return nil
}

// merged lays the files over each other, the plan on top.
func (c *chain) merged(s *document.Schema) *document.Node {
	last := len(c.layers) - 1
	tree := c.layers[last].tree
	for i := last - 1; i >= 0; i-- {
		tree = s.Merge(tree, c.layers[i].tree, paper)
	}
	return tree
}

// checkLayers judges each file for itself, except that the others may have what it
// lacks.
func (c *chain) checkLayers(s *document.Schema) error {
	for _, p := range c.layers {
		p.judge(s)
		if p.fault != nil {
			return fmt.Errorf("checking %s: %w", p.Name, p.fault)
		}
		c.problems = append(c.problems, p.amiss...)
	}
	return nil
}

// plan makes one plan of the files that were read.
func (c *chain) plan() (*Plan, []finding.Problem, error) {
	s, err := compiled()
	if err != nil {
		return nil, nil, err
	}
	if c.broken || len(c.layers) > 1 {
		if err := c.checkLayers(s); err != nil {
			return nil, nil, err
		}
	}
	if c.broken {
		return nil, document.Sorted(c.problems), nil
	}
	return c.whole(s)
}

// whole checks and decodes what the files say together.
func (c *chain) whole(s *document.Schema) (*Plan, []finding.Problem, error) {
	root := c.merged(s)
	problems, err := s.Check(root)
	if err != nil {
		return nil, nil, fmt.Errorf("checking %s: %w", c.layers[0].Name, err)
	}
	problems = append(problems, c.problems...)
	p := decode(root)
	problems = document.Sorted(append(problems, crossCheck(p, root, len(problems) == 0)...))
	if len(problems) > 0 {
		return nil, problems, nil
	}
	p.File, p.Hash, p.sources = c.layers[0].Name, c.hash(), c.sources()
	return p, nil, nil
}

// hash is "sha256:" over all files.
func (c *chain) hash() string {
	contents := map[string][]byte{}
	for _, p := range c.layers {
		contents[p.path] = p.src
	}
	return hash(contents)
}

func (c *chain) sources() (all []Source) {
	for _, p := range c.layers {
		all = append(all, p.Source)
	}
	return all
}
