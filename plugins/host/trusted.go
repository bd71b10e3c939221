package host

import (
	_ "embed"
	"errors"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"sync"

	"chainwale/engine/finding"
	"chainwale/engine/plan/document"
)

// TrustedName is the file that lists the programs which may be started.
const TrustedName = "trusted.yaml"

//go:embed trusted.schema.json
var trustedSchema []byte

var schema = sync.OnceValues(func() (*document.Schema, error) { return document.Prepare(trustedSchema) })

// Entry is one program as trusted.yaml lists it.
type Entry struct {
	ID, Edition string
	// Program is its file, with slashes, seen from the folder of trusted.yaml.
	Program string
	Args    []string
	TLS     bool
	// Files are all files of its folder with their sums.
	Files map[string]string
	// At is where the entry begins.
	At finding.Place
}

// Trusted is what a trusted.yaml lists.
type Trusted struct {
	// Name is the file's name as it was given.
	Name    string
	Entries []Entry
}

// Program is the program of a standard, ready to be started.
func (t *Trusted) Program(id string) (Program, bool) {
	for _, e := range t.Entries {
		if e.ID != id {
			continue
		}
		file := filepath.FromSlash(e.Program)
		if !filepath.IsAbs(file) {
			file = filepath.Join(filepath.Dir(t.Name), file)
		}
		return Program{ID: e.ID, Edition: e.Edition, Path: file, Args: e.Args, TLS: e.TLS, Files: e.Files}, true
	}
	return Program{}, false
}

// FindTrusted looks for trusted.yaml beside a plan and in the folders above it, up
// to the root; "" if there is none.
func FindTrusted(planFile, root string) string {
	below, err := filepath.Rel(root, filepath.Dir(planFile))
	if err != nil || below == ".." || strings.HasPrefix(below, ".."+string(filepath.Separator)) {
		return ""
	}
	for ; ; below = filepath.Dir(below) {
		name := filepath.Join(root, below, TrustedName)
		if info, err := os.Stat(name); err == nil && info.Mode().IsRegular() {
			return name
		}
		if below == "." {
			return ""
		}
	}
}

// ReadTrusted reads a trusted.yaml. What is wrong with it comes back as problems,
// and then nothing of it is trusted; an error is ours, or of reading the file.
func ReadTrusted(name string) (*Trusted, []finding.Problem, error) {
	src, err := readCapped(name)
	if err != nil {
		return nil, nil, err
	}
	entries, problems, err := readEntries(name, src)
	if err != nil || len(problems) > 0 {
		return nil, problems, err
	}
	return &Trusted{Name: name, Entries: entries}, nil, nil
}

// readCapped reads a file, and of a large one a little more than will be taken.
func readCapped(name string) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer func() { _ = f.Close() }()
	if info, err := f.Stat(); err != nil {
		return nil, err
	} else if err := writableByOthers(name, info); err != nil {
		return nil, err
	}
	return io.ReadAll(io.LimitReader(f, document.MostBytes+1))
}

func readEntries(name string, src []byte) ([]Entry, []finding.Problem, error) {
	if len(src) > document.MostBytes {
		return nil, []finding.Problem{document.TooLarge(name)}, nil
	}
	root, problems := document.Read(name, src)
	if len(problems) > 0 {
		return nil, problems, nil
	}
	s, err := schema()
	if err == nil {
		problems, err = s.Check(root)
	}
	if err != nil || len(problems) > 0 {
		return nil, problems, err
	}
	var entries []Entry
	taken := map[string]bool{}
	for _, node := range root.Member("standards").Items {
		e := entryOf(node)
		problems = append(problems, e.problems(node, taken)...)
		taken[e.ID] = true
		entries = append(entries, e)
	}
	return entries, document.Sorted(problems), nil
}

// entryOf reads an entry that keeps to the schema.
func entryOf(n *document.Node) Entry {
	e := Entry{ID: n.Member("id").Text, Edition: n.Member("edition").Text, Program: n.Member("program").Text, Files: map[string]string{}, At: n.At}
	if args := n.Member("args"); args != nil {
		e.Args, _ = args.Texts()
	}
	if tls := n.Member("tls"); tls != nil {
		e.TLS = tls.Text == "true"
	}
	for _, f := range n.Member("files").Members {
		e.Files[f.Key] = f.Text
	}
	return e
}

// problems are what a schema can't see.
func (e Entry) problems(n *document.Node, taken map[string]bool) []finding.Problem {
	var list []finding.Problem
	say := func(at finding.Place, message, expected string) {
		list = append(list, finding.Problem{At: at, Message: message, Expected: expected})
	}
	if taken[e.ID] {
		say(n.Member("id").At, "the standard "+e.ID+" is listed twice", "one entry a standard; take the older one out")
	}
	for _, f := range n.Member("files").Members {
		if !fs.ValidPath(f.Key) || f.Key == "." || strings.Contains(f.Key, `\`) {
			say(f.KeyAt, printable(f.Key)+" is no path of a file in the program's folder", "a path with slashes, without .. and not beginning with a slash")
		}
	}
	if base := path.Base(filepath.ToSlash(e.Program)); e.Files[base] == "" {
		say(n.Member("files").KeyAt, "the program itself, "+printable(base)+", is not among the files", "all files of the program's folder, the program among them")
	}
	return list
}

// errNotThere tells that a file can be written anew.
func errNotThere(err error) bool { return errors.Is(err, fs.ErrNotExist) }
