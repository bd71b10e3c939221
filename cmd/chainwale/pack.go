package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"

	"chainwale/engine"
	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/render"
	"chainwale/engine/rule"
	"chainwale/rules"
)

// packVerb is what a surveyor needs who writes rules of his own.
type packVerb struct {
	New   packNewVerb   `cmd:"" help:"Write a pack with one worked rule to start from; what is there is left alone."`
	Prove packProveVerb `cmd:"" help:"Run every example, and see whether they would notice a slip in a limit."`
	Facts packFactsVerb `cmd:"" help:"List the facts that a rule may read: unit, meaning, where each comes from."`
	Print packPrintVerb `cmd:"" help:"Print the pack as a rule book to read."`
	Hash  packHashVerb  `cmd:"" help:"Print the hash by which reports name the pack."`
}

// packArg names a pack.
type packArg struct {
	Dir string `arg:"" help:"The pack's folder, or the id of a pack that comes with the program."`
}

// packFiles are the files of a pack: where they are, and how problems name them.
type packFiles struct {
	fs         fs.FS
	dir, label string
	close      func() error
}

// open finds the pack's files. A folder goes before a pack of the program of the same
// name, since whoever has one means it.
func (a packArg) open() (*packFiles, error) {
	info, err := os.Stat(a.Dir)
	if (err != nil || !info.IsDir()) && slices.Contains(rules.Packs(), a.Dir) {
		return &packFiles{rules.FS, a.Dir, "rules/" + a.Dir, func() error { return nil }}, nil
	}
	folder, err := rule.OpenFolder(a.Dir)
	if err != nil {
		return nil, err
	}
	return &packFiles{folder, ".", strings.TrimRight(a.Dir, "/"), folder.Close}, nil
}

// load loads the pack. What is wrong with it is printed with its lines, and the status
// says so.
func (a packArg) load(s streams) (*rule.Pack, *packFiles, error) {
	files, err := a.open()
	if err != nil {
		p := finding.Problem{At: finding.Place{File: a.Dir, Line: 1, Column: 1}, Message: err.Error(), Expected: "the folder of a rule pack, or one of " + strings.Join(rules.Packs(), ", ")}
		return nil, nil, refusePack(s, []finding.Problem{p}, nil)
	}
	defer files.close()
	c, err := packCatalogue()
	if err != nil {
		return nil, nil, err
	}
	pack, problems := rule.Load(files.fs, files.dir, files.label, c, rule.LoadOptions{})
	if len(problems) > 0 {
		return nil, nil, refusePack(s, problems, files.lines())
	}
	return pack, files, nil
}

// packCatalogue is all that rules of a pack may read: our facts, and those that the
// standards of the program derive where a plan names them.
func packCatalogue() (*fact.Catalogue, error) {
	return engine.CatalogueWith(context.Background(), namedStandards())
}

// namedStandards are the standards of the program.
func namedStandards() (named []engine.Named) {
	for _, b := range builtInStandards {
		made, err := b.make("")
		named = append(named, engine.Named{ID: b.id, Standard: made, Fault: err})
	}
	return named
}

// mostProblems is how many problems are printed with their lines. Whoever has more
// mends these first.
const mostProblems = 100

// refusePack prints what is wrong with a pack.
func refusePack(s streams, problems []finding.Problem, lines render.Lines) error {
	shown := problems[:min(len(problems), mostProblems)]
	var out bytes.Buffer
	if err := render.Excerpts(&out, shown, lines); err != nil {
		return err
	}
	if more := len(problems) - len(shown); more > 0 {
		fmt.Fprintf(&out, "… and %d more.\n", more)
	}
	fmt.Fprintf(&out, "%s; the pack can't be used.\n", counted(len(problems), "problem", "problems"))
	if _, err := s.err.Write(out.Bytes()); err != nil {
		return err
	}
	return ended(statusFault)
}

// lines finds the lines of the pack's files for the problems that name them.
func (p *packFiles) lines() render.Lines {
	read := map[string][]string{}
	return func(file string, line int) (string, bool) {
		text, known := read[file]
		if !known {
			text = p.read(file)
			read[file] = text
		}
		if line < 1 || line > len(text) {
			return "", false
		}
		return text[line-1], true
	}
}

// read reads a file by its name in problems, nil if it can't be read. It opens the
// folder anew: the one that the pack was loaded from has given all that it gives.
func (p *packFiles) read(file string) []string {
	name, ours := strings.CutPrefix(file, p.label+"/")
	if !ours {
		return nil
	}
	from := p.fs
	if _, ok := from.(*rule.Folder); ok {
		folder, err := rule.OpenFolder(p.label)
		if err != nil {
			return nil
		}
		defer folder.Close()
		from = folder
	} else {
		name = p.dir + "/" + name
	}
	f, err := from.Open(name)
	if err != nil {
		return nil
	}
	defer f.Close()
	const most = 1 << 20
	data, err := io.ReadAll(io.LimitReader(f, most))
	if err != nil {
		return nil
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	return strings.Split(strings.ReplaceAll(string(data), "\r\n", "\n"), "\n")
}

// counted is a number with its noun.
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
