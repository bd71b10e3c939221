package plan

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"sync"

	"chainwale/engine/finding"
	"chainwale/engine/plan/document"
	"chainwale/schema"
)

// Options say how a plan is loaded. The zero value reads files from disk.
type Options struct {
	// Open opens a file by the name it was given; os.Open if it is nil.
	Open func(name string) (io.ReadCloser, error)
}

// Load reads the plan in a file. What is wrong with the file comes back as
// problems, all at once and in the order of their places, and then there is no
// plan. An error is a fault of the program.
func Load(path string, o Options) (*Plan, []finding.Problem, error) {
	go compiled() // beside the reading of the file
	src, problem := read(path, o)
	if problem != nil {
		return nil, []finding.Problem{*problem}, nil
	}
	return Parse(path, src)
}

// Parse reads a plan from bytes. The name is what places call the file; its
// ending tells JSON from YAML.
func Parse(name string, src []byte) (*Plan, []finding.Problem, error) {
	root, problems := document.Read(name, src)
	if len(problems) > 0 {
		return nil, problems, nil
	}
	s, err := compiled()
	if err != nil {
		return nil, nil, err
	}
	if problems, err = s.Check(root); err != nil {
		return nil, nil, fmt.Errorf("checking %s: %w", name, err)
	}
	p := decode(root)
	problems = document.Sorted(append(problems, crossCheck(p, root, len(problems) == 0)...))
	if len(problems) > 0 {
		return nil, problems, nil
	}
	p.File, p.Hash = name, hash(map[string][]byte{filepath.Base(name): src})
	return p, nil, nil
}

// compiled is the plan's schema, made when the first plan is read.
var compiled = sync.OnceValues(func() (*document.Schema, error) {
	return document.Compile(schema.Plan())
})

// read gives a file's bytes. It never takes in more than a plan can have.
func read(path string, o Options) ([]byte, *finding.Problem) {
	open := o.Open
	if open == nil {
		open = func(name string) (io.ReadCloser, error) { return os.Open(name) }
	}
	f, err := open(path)
	if err != nil {
		return nil, unreadable(path, err)
	}
	defer f.Close()
	if s, ok := f.(fs.File); ok {
		if info, err := s.Stat(); err == nil && info.IsDir() {
			return nil, atTop(path, "this is a folder", "the plan's file")
		}
	}
	src, err := io.ReadAll(io.LimitReader(f, document.MostBytes+1))
	if err != nil {
		return nil, unreadable(path, err)
	}
	return src, nil
}

func unreadable(path string, err error) *finding.Problem {
	var detail *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return atTop(path, "there is no such file", "the name of a plan's file")
	case errors.Is(err, fs.ErrPermission):
		return atTop(path, "the file may not be read", "a file that you are allowed to read")
	case errors.As(err, &detail):
		err = detail.Err
	}
	return atTop(path, "the file can't be read: "+err.Error(), "a file that can be read")
}

func atTop(path, message, expected string) *finding.Problem {
	return &finding.Problem{At: finding.Place{File: path, Line: 1, Column: 1}, Message: message, Expected: expected}
}

// hash is "sha256:" over path, length and bytes of each file in the order of the
// paths, each path and length ended by a zero byte. Paths are relative to the
// plan's own folder, so the hash does not depend on where the boat is kept.
func hash(files map[string][]byte) string {
	h := sha256.New()
	for _, path := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(h, "%s\x00%d\x00", filepath.ToSlash(path), len(files[path]))
		h.Write(files[path])
	}
	return "sha256:" + hex.EncodeToString(h.Sum(nil))
}
