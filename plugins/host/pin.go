package host

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/plan/document"
)

// Pin lists a program in a trusted.yaml, in place of an entry with the same id or
// after the others. The file is made if it is not there. Nothing else of it changes,
// down to its blank lines and comments; the new file is written beside the old one
// and takes its place whole.
func Pin(name string, p Program) error {
	e, err := entryFor(name, p)
	if err != nil {
		return err
	}
	old, err := readCapped(name)
	if err != nil && !errNotThere(err) {
		return err
	}
	if err != nil || len(bytes.TrimSpace(old)) == 0 {
		old = []byte("# The programs that chainwale may start, each with the sums of all its files.\nstandards: []\n")
	}
	made, err := withEntry(name, old, e)
	if err != nil {
		return err
	}
	return replaceFile(name, made)
}

// entryFor is a program as it is to be listed.
func entryFor(name string, p Program) (Entry, error) {
	if p.ID == "" || p.Edition == "" || len(p.Files) == 0 {
		return Entry{}, errors.New("only a program that has declared itself can be pinned")
	}
	home, err := filepath.Abs(filepath.Dir(name))
	if err != nil {
		return Entry{}, err
	}
	program, err := filepath.Abs(p.Path)
	if err != nil {
		return Entry{}, err
	}
	if below, err := filepath.Rel(home, program); err == nil && filepath.IsLocal(below) {
		program = below
	}
	if filepath.Dir(program) == "." {
		return Entry{}, fmt.Errorf("%s would stand in the program's own folder, all of which is pinned: put the program in a folder of its own", filepath.Base(name))
	}
	return Entry{ID: p.ID, Edition: p.Edition, Program: filepath.ToSlash(program), Args: p.Args, TLS: p.TLS, Files: p.Files}, nil
}

// withEntry is the file with the entry in it, proven by reading it.
func withEntry(name string, old []byte, e Entry) ([]byte, error) {
	before, problems, err := readEntries(name, old)
	if err == nil && len(problems) > 0 {
		err = asError(problems[0])
	}
	if err != nil {
		return nil, err
	}
	root, _ := document.Read(name, old)
	made, err := lay(old, root.Member("standards"), e)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	after, problems, err := readEntries(name, made)
	if err != nil || len(problems) > 0 || !same(after, expected(before, e)) {
		return nil, fmt.Errorf("%s: it is written in a way that can't be added to; write the entry by hand, or into a new file", name)
	}
	return made, nil
}

func asError(p finding.Problem) error {
	return fmt.Errorf("%s:%d:%d: %s; expected: %s", p.At.File, p.At.Line, p.At.Column, p.Message, p.Expected)
}

// expected is what the file lists afterwards.
func expected(before []Entry, e Entry) []Entry {
	list := slices.Clone(before)
	if i := slices.IndexFunc(list, func(o Entry) bool { return o.ID == e.ID }); i >= 0 {
		list[i] = e
		return list
	}
	return append(list, e)
}

// same compares lists of entries wherever they stand.
func same(a, b []Entry) bool {
	return slices.EqualFunc(a, b, func(x, y Entry) bool {
		x.At, y.At = finding.Place{}, finding.Place{}
		if len(x.Args) == 0 && len(y.Args) == 0 {
			x.Args, y.Args = nil, nil
		}
		return reflect.DeepEqual(x, y)
	})
}

// replaceFile puts a file in another's place, whole or not at all.
func replaceFile(name string, content []byte) error {
	if real, err := filepath.EvalSymlinks(name); err == nil {
		name = real
	}
	mode := os.FileMode(0o644)
	if info, err := os.Stat(name); err == nil {
		mode = info.Mode().Perm()
	}
	beside, err := os.CreateTemp(filepath.Dir(name), ".trusted-*")
	if err != nil {
		return err
	}
	_, err = beside.Write(content)
	err = errors.Join(err, beside.Chmod(mode), beside.Close())
	if err == nil {
		err = os.Rename(beside.Name(), name)
	}
	if err != nil {
		_ = os.Remove(beside.Name())
	}
	return err
}

// lay puts the entry's lines into the file's, which keep the ends they have.
func lay(src []byte, list *document.Node, e Entry) ([]byte, error) {
	lines := strings.Split(strings.TrimSuffix(string(src), "\n"), "\n")
	ending := ""
	if strings.HasSuffix(lines[0], "\r") {
		ending = "\r"
	}
	var err error
	if len(list.Items) == 0 {
		lines, err = layFirst(lines, list, e, ending)
	} else {
		lines, err = layAmong(lines, list.Items, e, ending)
	}
	return []byte(strings.Join(lines, "\n") + "\n"), err
}

// ended gives lines the file's ending.
func ended(lines []string, ending string) []string {
	for i := range lines {
		lines[i] += ending
	}
	return lines
}

// layFirst puts the entry where the empty list stood.
func layFirst(lines []string, list *document.Node, e Entry, ending string) ([]string, error) {
	i := list.At.Line - 1
	before, rest, found := strings.Cut(lines[i], "[]")
	if !found || !strings.HasSuffix(strings.TrimRight(before, " "), "standards:") {
		return nil, errors.New("the empty list is written in an unusual way; write standards: [] on one line")
	}
	lines[i] = strings.TrimRight(strings.TrimRight(before, " ")+rest, " ")
	return slices.Insert(lines, i+1, ended(e.lines("  "), ending)...), nil
}
