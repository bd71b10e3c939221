// Package fleet writes plans of invented boats, as many as asked for, to see how a
// whole yard's plans fare: some from class templates and some written out, in YAML
// or JSON, mostly sound, some with the faults that people make. The same options
// write the same bytes.
package fleet

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
)

// Form is how plans are written.
type Form string

const (
	YAML Form = "yaml"
	JSON Form = "json"
	// Mixed writes two plans of three in YAML.
	Mixed Form = "mixed"
)

// Options say what is written.
type Options struct {
	Seed uint64
	Form Form
	// Faulty is the share of boats with something wrong with them, Unreadable that of
	// files that are no plan, Templates that of plans that build on their class.
	Faulty, Unreadable, Templates float64
}

// Usual is a fleet as an owner of many boats would have it.
func Usual(seed uint64, form Form) Options {
	return Options{Seed: seed, Form: form, Faulty: 0.15, Templates: 0.3}
}

// File is a file of the fleet; its name begins at the fleet's folder.
type File struct {
	Name  string
	Bytes []byte
}

// Boat is the plan of boat i. A fleet of more boats begins with the same ones.
func Boat(i int, o Options) File {
	r := rand.New(rand.NewPCG(o.Seed, uint64(i)))
	form := o.Form
	if form == Mixed {
		form = YAML
		if r.IntN(3) == 0 {
			form = JSON
		}
	}
	b := newBoat(r, i, form)
	if r.Float64() < o.Faulty {
		b.spoil()
	}
	plan := b.plan()
	if r.Float64() < o.Templates {
		plan = b.overClass(form)
	}
	file := File{Name: fmt.Sprintf("boats/%s.%s", b.file, form), Bytes: written(plan, form)}
	if r.Float64() < o.Unreadable {
		file.Bytes = unreadable(r, file.Bytes)
	}
	return file
}

// Classes are the templates that plans of the fleet build on.
func Classes(o Options) []File {
	var files []File
	for _, c := range classes {
		for _, form := range []Form{YAML, JSON} {
			files = append(files, File{Name: c.fileIn(form), Bytes: written(c.plan(), form)})
		}
	}
	return files
}

// Write writes the plans of so many boats and their classes under a folder.
func Write(dir string, boats int, o Options) error {
	for _, sub := range []string{"boats", "classes"} {
		if err := os.MkdirAll(filepath.Join(dir, sub), 0o755); err != nil {
			return err
		}
	}
	for _, f := range Classes(o) {
		if err := f.write(dir); err != nil {
			return err
		}
	}
	for i := range boats {
		if err := Boat(i, o).write(dir); err != nil {
			return err
		}
	}
	return nil
}

func (f File) write(dir string) error {
	return os.WriteFile(filepath.Join(dir, filepath.FromSlash(f.Name)), f.Bytes, 0o644)
}

// unreadable makes of a plan's bytes what turns up among plans and is none.
func unreadable(r *rand.Rand, plan []byte) []byte {
	switch r.IntN(4) {
	case 0:
		return nil
	case 1: // the disk was full
		return plan[:len(plan)/2]
	case 2: // a bracket too many
		at := len(plan) / 3
		return []byte(string(plan[:at]) + "}]" + string(plan[at:]))
	}
	return []byte(strings.ReplaceAll(string(plan), "a", "\xe4")) // saved as something else than UTF-8
}

// Template is the template that a plan of the fleet names, "" if it names none.
func Template(f File) string {
	const key = "template"
	for text := range strings.Lines(string(f.Bytes)) {
		name, value, _ := strings.Cut(text, ":")
		if strings.Trim(name, "\" ") == key {
			return strings.Trim(value, "\",\n ")
		}
		if strings.Contains(name, "boat") {
			break
		}
	}
	return ""
}
