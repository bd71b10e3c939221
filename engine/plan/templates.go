package plan

import (
	"sync"

	"chainwale/engine/finding"
	"chainwale/engine/plan/document"
)

// contents is what a file's bytes come to: a tree, or what keeps them from being one.
type contents struct {
	src      []byte
	tree     *document.Node
	problems []finding.Problem
	values   int
	// judged tells that the schema was asked about the file by itself, amiss what it
	// said, and fault why it could not say anything.
	judged bool
	amiss  []finding.Problem
	fault  error
}

// contentsOf reads bytes as a tree.
func contentsOf(name string, src []byte) *contents {
	r := &contents{src: src}
	if r.tree, r.problems = document.Read(name, src); r.tree != nil {
		r.values = r.tree.Values()
	}
	return r
}

// judge asks the schema about the file by itself, except that the others of its chain
// may have what it lacks.
func (r *contents) judge(s *document.Schema) {
	if !r.judged {
		r.amiss, r.fault = s.CheckPart(r.tree)
		r.judged = true
	}
}

// Templates are templates that were read, for the plans of one run: a class's
// template is read, made a tree and judged by itself once, however many boats build
// on it, by several goroutines too. What it comes to depends on nothing but the root,
// the file's one path, its name in messages, and its bytes. These are taken not to
// change while the run lasts: a template that somebody writes meanwhile counts as it
// was first read. Plans with an Open of their own need Templates of their own.
type Templates struct {
	mu   sync.Mutex
	kept map[templateKey]func() template
	// order are the templates that are read, the oldest first, and weight is what they
	// take together.
	order  []kept
	weight int
	most   int
}

// templateKey is what makes the contents of two the same. One file may be called by two
// names, by way of a link, and then its places name it so.
type templateKey struct{ root, real, name string }

// template is the contents of one that nobody may write into, or why there is none.
type template struct {
	*contents
	refused *refusal
}

// kept is a template with what it takes, in bytes.
type kept struct {
	key    templateKey
	weight int
}

const (
	// mostKept is what the templates of a run may take, in bytes: a thousand of the
	// usual size. Beyond it the oldest is forgotten, and read again for whoever
	// names it.
	mostKept = 64 << 20
	// valueTakes is about what a value takes in a tree, and leastTakes what a template does.
	valueTakes = 256
	leastTakes = 1024
)

// NewTemplates keeps nothing yet.
func NewTemplates() *Templates {
	return &Templates{kept: map[templateKey]func() template{}, most: mostKept}
}

// template reads a template that was located, or gives what another plan has read.
func (f *files) template(p layer) (*contents, *refusal) {
	if f.kept == nil {
		src, refused := f.readUnder(p.real)
		if refused != nil {
			return nil, refused
		}
		return contentsOf(p.Name, src), nil
	}
	t := f.kept.of(templateKey{f.root, p.real, p.Name}, f)
	if t.refused != nil {
		return nil, t.refused
	}
	own := *t.contents
	if own.tree != nil {
		own.tree = own.tree.Copy() // whoever merges and checks it writes into it
	}
	return &own, nil
}

// of gives the template under a key. Whoever comes first reads it, and who comes
// meanwhile waits.
func (t *Templates) of(key templateKey, from *files) template {
	t.mu.Lock()
	read := t.kept[key]
	if read == nil {
		read = sync.OnceValue(func() template {
			made := makeTemplate(key, from)
			t.note(key, made)
			return made
		})
		t.kept[key] = read
	}
	t.mu.Unlock()
	return read()
}

// makeTemplate reads and judges a template, all that is the same for every plan.
func makeTemplate(key templateKey, from *files) template {
	src, refused := from.readUnder(key.real)
	if refused != nil {
		return template{refused: refused}
	}
	r := contentsOf(key.name, src)
	if r.tree == nil {
		return template{contents: r}
	}
	if s, err := compiled(); err == nil { // else whoever makes the plan says so
		r.judge(s)
	}
	return template{contents: r}
}

// note counts a template that was read, and forgets the oldest if there are too many.
func (t *Templates) note(key templateKey, made template) {
	weight := leastTakes
	if made.contents != nil {
		weight += len(made.src) + valueTakes*made.values
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	t.order = append(t.order, kept{key, weight})
	for t.weight += weight; t.weight > t.most && len(t.order) > 1; t.order = t.order[1:] {
		t.weight -= t.order[0].weight
		delete(t.kept, t.order[0].key)
	}
}
