package plan

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"maps"
	"slices"
	"sync"

	"chainwale/engine/finding"
	"chainwale/engine/plan/document"
	"chainwale/schema"
)

// Options say how a plan is loaded. The zero value reads files from disk.
type Options struct {
	// Open opens a file by its name; if it is nil, files come from the disk.
	Open func(name string) (io.ReadCloser, error)
	// Root is the folder under which templates must lie; the plan's own if it is "".
	Root string
	// Templates keeps the templates that are read for whoever reads many plans; if it
	// is nil, each plan reads its own.
	Templates *Templates
}

// Load reads the plan in a file, and the templates that it builds on. What is
// wrong with them comes back as problems, all at once and in the order of their
// places, and then there is no plan. An error is a fault of the program.
func Load(path string, o Options) (*Plan, []finding.Problem, error) {
	go compiled() // beside the reading of the file
	files, problem := newFiles(path, o)
	if problem != nil {
		return nil, []finding.Problem{*problem}, nil
	}
	src, refused := files.read(path)
	if refused != nil {
		return nil, []finding.Problem{*refused.at(top(path))}, nil
	}
	return load(path, src, files)
}

// Parse reads a plan from bytes, which can't build on a template. The name is what
// places call the file; its ending tells JSON from YAML.
func Parse(name string, src []byte) (*Plan, []finding.Problem, error) {
	return load(name, src, nil)
}

func load(name string, src []byte, from *files) (*Plan, []finding.Problem, error) {
	c := &chain{files: from}
	c.start(name, src)
	c.follow()
	return c.plan()
}

// compiled is the plan's schema, made when the first plan is read.
var compiled = sync.OnceValues(func() (*document.Schema, error) {
	return document.Prepare(schema.Plan())
})

// hash is "sha256:" over path, length and bytes of each file in the order of the
// paths, each path and length ended by a zero byte. Paths are relative to the
// plan's own folder, so the hash does not depend on where the boat is kept.
func hash(files map[string][]byte) string {
	h := sha256.New()
	for _, path := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(h, "%s\x00%d\x00", path, len(files[path]))
		h.Write(files[path])
	}
	return "sha256:" + hex.EncodeToString(h.Sum(nil))
}
