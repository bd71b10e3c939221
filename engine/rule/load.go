package rule

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"

	"go.yaml.in/yaml/v4"
)

// LoadOptions says how a pack is loaded.
type LoadOptions struct {
	// SkipSchema leaves out the validation by schema/pack.schema.json, which costs
	// more time at start than all the rest. It is for the packs that come with the
	// program; a test validates those. Every check of ours is made all the same.
	SkipSchema bool
	// SkipExamples leaves the examples of the rules unread, half of their text. It is
	// for the same packs: a test has run their examples. Such a pack proves nothing.
	SkipExamples bool
	// Tree gives what YAML makes of a file, by its path, without the examples; nil
	// where it has none. It is for the same packs too: a test holds the trees to their
	// files. Reading YAML takes most of the time at start.
	Tree func(path string) *yaml.Node
	// Later tells the kinds of subjects whose rules are compiled when the first of them is
	// judged: most plans have none of them. It is for the same packs, of which a test
	// compiles every rule.
	Later func(kind string) bool
}

// headFile is the file that says what a pack is.
const headFile = "pack.yaml"

// packFile is one file of a pack.
type packFile struct {
	path string
	data []byte
}

// Load reads the pack in a folder of fsys. label stands before the names of its
// files in problems and places: the folder as the user named it, or
// "en1993:rules". All problems are given at once, by file, line and column; the
// pack is nil if there are any.
func Load(fsys fs.FS, dir, label string, c *fact.Catalogue, o LoadOptions) (*Pack, []finding.Problem) {
	l := &loader{label: label, dir: path.Clean(dir), catalogue: c, options: o}
	files := l.files(fsys, l.dir)
	if files == nil && len(l.list) > 0 {
		return nil, l.list
	}
	pack := &Pack{Label: label, Hash: hash(files), byKind: map[string][]*Rule{}}
	l.head(pack, files)
	l.rules(pack, files)
	if len(l.list) > 0 {
		l.sort()
		return nil, l.list
	}
	return pack, nil
}

// loader reads one pack.
type loader struct {
	problems
	label     string
	dir       string
	catalogue *fact.Catalogue
	options   LoadOptions
}

// name is a file's name in problems.
func (l *loader) name(file string) string {
	if l.label == "" {
		return file
	}
	return l.label + "/" + file
}

// files reads the YAML files of the folder, in path order. A rule in a folder
// further down would never judge, so it is a problem.
func (l *loader) files(fsys fs.FS, dir string) []packFile {
	files := []packFile{}
	err := fs.WalkDir(fsys, dir, func(p string, d fs.DirEntry, err error) error {
		file := within(dir, p)
		switch {
		case err != nil && file == "":
			return err
		case err != nil:
			l.add(finding.Place{File: l.name(file), Line: 1, Column: 1}, "", "can't be read: %s", plainError(err))
			return nil
		case d.IsDir() && strings.HasPrefix(d.Name(), ".") && file != "":
			return fs.SkipDir
		case d.IsDir() || !isYAML(p):
			return nil
		case path.Dir(file) != ".":
			l.add(finding.Place{File: l.name(file), Line: 1, Column: 1}, "put it beside "+headFile, "a rule in a folder of its own is not read")
			return nil
		}
		data, err := readCapped(fsys, p)
		if err != nil {
			l.add(finding.Place{File: l.name(file), Line: 1, Column: 1}, "", "can't be read: %s", plainError(err))
			return nil
		}
		files = append(files, packFile{file, data})
		return nil
	})
	if err != nil {
		l.add(finding.Place{File: cmp.Or(l.label, dir), Line: 1, Column: 1}, "", "the folder can't be read: %s", plainError(err))
		return nil
	}
	slices.SortFunc(files, func(a, b packFile) int { return strings.Compare(a.path, b.path) })
	return files
}

// within is a path as seen from the folder, "" for the folder itself.
func within(dir, p string) string {
	switch {
	case p == dir:
		return ""
	case dir == ".":
		return p
	}
	return strings.TrimPrefix(p, dir+"/")
}

func isYAML(name string) bool {
	ext := path.Ext(name)
	return ext == ".yaml" || ext == ".yml"
}

// plainError is an error of the file system without the path, which the place
// has already.
func plainError(err error) string {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err.Error()
	}
	return err.Error()
}

// readCapped reads a file, but not more than shows that it is too large.
func readCapped(fsys fs.FS, name string) ([]byte, error) {
	f, err := fsys.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	var data bytes.Buffer
	if info, err := f.Stat(); err == nil {
		data.Grow(int(min(info.Size(), maxFile)) + bytes.MinRead)
	}
	_, err = data.ReadFrom(io.LimitReader(f, maxFile+1))
	return data.Bytes(), err
}

// hash is "sha256:" over path, length and bytes of each file in path order: the
// path, NUL, the length in decimal digits, NUL, the bytes.
func hash(files []packFile) string {
	h := sha256.New()
	for _, f := range files {
		fmt.Fprintf(h, "%s\x00%d\x00", f.path, len(f.data))
		h.Write(f.data)
	}
	return "sha256:" + hex.EncodeToString(h.Sum(nil))
}

// document gives the nodes of a file: those that were made before, or what YAML
// makes of it now.
func (l *loader) document(f packFile) *document {
	if l.options.Tree != nil {
		if root := l.options.Tree(path.Join(l.dir, f.path)); root != nil {
			return &document{file: l.name(f.path), root: root, proven: true}
		}
	}
	data, cut := f.data, false
	if l.options.SkipExamples {
		data, cut = withoutExamples(data)
	}
	d := readDocument(l.name(f.path), data, &l.problems)
	if d != nil {
		d.proven = cut
	}
	return d
}

// head reads pack.yaml into the pack.
func (l *loader) head(p *Pack, files []packFile) {
	i := slices.IndexFunc(files, func(f packFile) bool { return f.path == headFile })
	if i < 0 {
		l.add(finding.Place{File: l.name(headFile), Line: 1, Column: 1}, "a file "+headFile+" with id, edition and title", "the pack has no %s", headFile)
		return
	}
	faults := len(l.list)
	d := l.document(files[i])
	if d == nil {
		return
	}
	h := readHead(d, &l.problems)
	l.validate(d, "pack", faults)
	p.ID, p.Edition, p.Title = h.id.value, h.edition.value, h.title.value
	p.Author, p.Scope, p.NotCovered = h.author.value, h.scope.value, h.notCovered
	p.Changes = h.changes
}

// rules reads all other files.
func (l *loader) rules(p *Pack, files []packFile) {
	first := map[string]*Rule{}
	for _, f := range files {
		if f.path == headFile {
			continue
		}
		r := l.rule(p.ID, f)
		if r == nil {
			continue
		}
		if before, twice := first[r.ID]; twice && r.ID != "" {
			l.add(r.At, "an id of its own for each rule", "the rule %s stands in %s already", r.ID, before.At.File)
			continue
		}
		first[r.ID] = r
		p.add(r)
	}
	if len(p.Rules) == 0 && len(p.Changes) == 0 && len(l.list) == 0 {
		l.add(finding.Place{File: l.name(headFile), Line: 1, Column: 1}, "a YAML file for each rule beside it, or changes to rules of other packs", "the pack has no rules")
	}
}

// rule reads one rule, nil if its file can't be read at all.
func (l *loader) rule(pack string, f packFile) *Rule {
	faults := len(l.list)
	d := l.document(f)
	if d == nil {
		return nil
	}
	draft := readDraft(d, &l.problems)
	l.validate(d, "rule", faults)
	return build(draft, pack, l.catalogue, &l.problems, l.options.Later)
}

func (p *Pack) add(r *Rule) {
	p.Rules = append(p.Rules, r)
	p.sides = max(p.sides, r.sides)
	if r.Kind != nil {
		p.byKind[r.Kind.Name] = append(p.byKind[r.Kind.Name], r)
	}
}

// withoutExamples cuts a rule's text before its examples, where they come last.
func withoutExamples(data []byte) (cut []byte, ok bool) {
	before, after, found := bytes.Cut(data, []byte("\nexamples:\n"))
	for _, line := range bytes.Split(after, []byte("\n")) {
		if len(line) > 0 && line[0] != ' ' && line[0] != '#' {
			return data, false // another key stands behind them
		}
	}
	if !found {
		return data, false
	}
	return append(before[:len(before):len(before)], '\n'), true
}
