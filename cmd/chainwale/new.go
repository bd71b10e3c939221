package main

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"chainwale/schema"
)

//go:embed starters/*.yaml
var starters embed.FS

type newVerb struct {
	File    string `arg:"" optional:"" help:"The plan file to write."`
	Rig     string `help:"The rig to start from: masthead-sloop, fractional-sloop, cutter or ketch." enum:"masthead-sloop,fractional-sloop,cutter,ketch" default:"masthead-sloop"`
	Schemas string `help:"Write the JSON Schemas of plan, pack and report into this folder, for editors that complete YAML from them." placeholder:"DIR"`
}

// Run writes the starter, or the schemas, or both. A file that is already there
// is left alone.
func (v newVerb) Run(s streams) error {
	if v.File == "" && v.Schemas == "" {
		fmt.Fprintln(s.err, "chainwale: name the plan file to write, or --schemas and a folder")
		return ended(statusInput)
	}
	if v.File != "" {
		starter, err := starters.ReadFile("starters/" + v.Rig + ".yaml")
		if err != nil {
			return err
		}
		if err := v.write(s, v.File, starter); err != nil {
			return err
		}
		fmt.Fprintf(s.out, "%s is written. Fill it in at the boat, then: chainwale check %s\n", v.File, v.File)
	}
	if v.Schemas != "" {
		return v.schemas(s)
	}
	return nil
}

// schemas writes the schemas beside each other and says how an editor finds them.
func (v newVerb) schemas(s streams) error {
	if err := os.MkdirAll(v.Schemas, 0o755); err != nil {
		fmt.Fprintf(s.err, "chainwale: %v\n", err)
		return ended(statusInput)
	}
	for _, of := range []struct {
		name string
		text []byte
	}{{"plan", schema.Plan()}, {"pack", schema.Pack()}, {"report", schema.Report()}} {
		file := filepath.Join(v.Schemas, of.name+".schema.json")
		if err := v.write(s, file, of.text); err != nil {
			return err
		}
		fmt.Fprintf(s.out, "%s is written.\n", file)
	}
	fmt.Fprintf(s.out, "In a plan's first line many editors take: # yaml-language-server: $schema=%s\n", filepath.ToSlash(filepath.Join(v.Schemas, "plan.schema.json")))
	return nil
}

// write makes a new file. It is written beside and then linked to its name, which
// fails if the name is taken: so nothing is written over and nothing half-written
// ever has the name.
func (v newVerb) write(s streams, name string, content []byte) error {
	err := writeNew(name, content)
	switch {
	case errors.Is(err, fs.ErrExist):
		fmt.Fprintf(s.err, "chainwale: %s is already there and was left alone; give another name\n", name)
		return ended(statusInput)
	case err != nil:
		fmt.Fprintf(s.err, "chainwale: %v\n", err)
		return ended(statusInput)
	}
	return nil
}

func writeNew(name string, content []byte) error {
	if _, err := os.Lstat(name); err == nil {
		return fs.ErrExist
	}
	return writeBeside(name, content, os.Link)
}
