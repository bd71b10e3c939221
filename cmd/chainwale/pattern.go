package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"chainwale/engine"
	"chainwale/engine/drawing"
	"chainwale/engine/finding"
	"chainwale/engine/pattern"
	"chainwale/engine/plan"
)

type patternVerb struct {
	Plans []string `arg:"" help:"The plan files; equal parts of several boats share a pattern."`
	On    string   `help:"The day that ages are judged on, YYYY-MM-DD; today if left out." placeholder:"DAY"`
	Root  string   `help:"The folder under which the plans' templates must lie; a plan's own if left out." placeholder:"DIR"`
	standardArgs
	Pack   []string `help:"A folder of a rule pack that judges as well; may stand several times." placeholder:"DIR"`
	Out    string   `help:"The folder that the drawings go into; what a person changed there is left alone." required:"" placeholder:"DIR"`
	Paper  string   `help:"The paper of drawings and templates: a4 or letter." enum:"a4,letter" default:"a4"`
	ScaleX float64  `name:"scale-x" help:"Stretch templates across the paper, to undo what a printer does: 150 over what its 150 mm ruler measures." default:"1"`
	ScaleY float64  `name:"scale-y" help:"The same along the paper." default:"1"`
	Stroke float64  `help:"What the ram of a hand-pumped press travels in a full stroke, mm: press sheets then count strokes. Measure it over ten." placeholder:"MM"`
}

// Help is what the verb's own help says beyond its flags.
func (patternVerb) Help() string {
	return `For each part that is made: cutting files (DXF, with and without words, R12 and R2000), the flat and the folded part as SVG, a drawing and a paper template at full size as PDF, and for a folded part the sheet that hangs at the press. Flats that are equal share one pattern, over port and starboard and over the boats of several plans; groups.txt lists how many of each to cut, for whom, in which hand, and which share a set-up of the press. A part of which a finding holds up cutting stays held for its boat: that is said on its drawing and in the list, and the status is 1; chainwale check has all findings.`
}

// Run draws the patterns of the plans.
func (v patternVerb) Run(s streams) error {
	if err := v.check(); err != nil {
		fmt.Fprintf(s.err, "chainwale: %v; nothing was written\n", err)
		return ended(statusInput)
	}
	boats, err := v.boats(s)
	if err != nil {
		return err
	}
	var made []engine.Patterned
	for _, b := range boats {
		made = append(made, b.Patterned)
	}
	parts, err := engine.GroupPatterns(made...)
	if err != nil {
		return err
	}
	files, err := v.draw(parts)
	if err != nil {
		fmt.Fprintf(s.err, "chainwale: %v; nothing was written\n", err)
		return ended(statusInput)
	}
	beside, err := v.write(s, files)
	if err != nil {
		return err
	}
	v.sum(s, boats, parts)
	v.sayUncut(s, parts)
	return v.settle(s, boats, beside)
}

// mostStroke is more than the ram of a hand-pumped press travels in a stroke, mm.
const mostStroke = 50

// check refuses what the command line alone tells to be wrong, before any plan is read.
func (v patternVerb) check() error {
	if !(v.Stroke >= 0 && v.Stroke <= mostStroke) {
		return fmt.Errorf("--stroke is what the ram travels in a full stroke, above 0 and up to %d mm, not %g", mostStroke, v.Stroke)
	}
	for _, s := range []struct {
		name  string
		value float64
	}{{"--scale-x", v.ScaleX}, {"--scale-y", v.ScaleY}} {
		if err := drawing.CheckScale(s.name, s.value); err != nil {
			return err
		}
	}
	if info, err := os.Stat(v.Out); err == nil && !info.IsDir() {
		return fmt.Errorf("--out %s is a file, and a folder is wanted", v.Out)
	}
	seen := map[string]string{}
	for _, file := range v.Plans {
		name, err := filepath.Abs(file)
		if err != nil {
			name = file
		}
		if first, again := seen[name]; again {
			return fmt.Errorf("%s and %s are one plan, and its parts would be made twice", first, file)
		}
		seen[name] = file
	}
	return nil
}

// patterned is one plan with its patterns.
type patterned struct {
	plan *plan.Plan
	engine.Patterned
}

// boats reads and judges the plans. If any of them can't be read, all problems are listed
// and none is drawn.
func (v patternVerb) boats(s streams) ([]patterned, error) {
	on, err := day(v.On)
	if err != nil {
		fmt.Fprintf(s.err, "chainwale: %v\n", err)
		return nil, ended(statusInput)
	}
	var boats []patterned
	var refused error
	for _, file := range v.Plans {
		b, err := v.boat(s, file, on)
		switch {
		case err == ended(statusInput):
			refused = err
		case err != nil:
			return nil, err
		default:
			boats = append(boats, b)
		}
	}
	return boats, refused
}

// boat reads and judges one plan and makes its patterns.
func (v patternVerb) boat(s streams, file string, on time.Time) (patterned, error) {
	ctx := context.Background()
	p, _, problems, err := planArgs{Plan: file, On: v.On, Root: v.Root}.load(s)
	if err != nil {
		return patterned{}, err
	}
	h := v.newHall(file, v.Root)
	defer h.close()
	o := engine.Options{Version: version, On: on, RefuseFrom: finding.Stop, Root: v.Root, Packs: v.Pack}
	if p != nil {
		o.Standards, problems = h.named(ctx, p)
	}
	if len(problems) > 0 {
		return patterned{}, refusePlan(s, file, problems, o)
	}
	made, err := engine.Patterns(ctx, p, o)
	return patterned{p, made}, err
}

// sum says what was made.
func (v patternVerb) sum(s streams, boats []patterned, parts []pattern.Part) {
	all, free := 0, 0
	for _, p := range parts {
		all += p.Quantity()
		free += len(p.Free())
	}
	of := boats[0].plan.Boat.Name.Value
	if len(boats) > 1 {
		of = counted(len(boats), "boat", "boats")
	}
	if len(parts) == 0 {
		fmt.Fprintf(s.out, "No part of %s is drawn, and nothing was written: drawn is a plate whose state is new or remade, of which the plan says outline, metal, holes and folds.\n", of)
		return
	}
	fmt.Fprintf(s.out, "%s of %s, made %s; check the plan and the first part before the rest is cut.\n",
		counted(len(parts), "pattern", "patterns"), of, counted(all, "time", "times"))
	if free < all {
		fmt.Fprintf(s.out, "%s held and not to be cut; %s says which.\n", areHeld(all-free), pattern.ListName)
	}
	for _, b := range boats {
		if c := b.Report.Counts; c.Stop+c.Mend > 0 {
			which := "The plan"
			if len(boats) > 1 {
				which = b.plan.File
			}
			fmt.Fprintf(s.out, "%s has %d stop and %d mend: chainwale check says which.\n", which, c.Stop, c.Mend)
		}
	}
	fmt.Fprintln(s.out, "Cut edges are sharp, and a press does not stop for a hand: eyes, gloves off moving tools, and the shop's own rules. "+pattern.Advises)
}

// sayUncut says of which parts there is no file for cutting alone, and whether an earlier
// one lies there.
func (v patternVerb) sayUncut(s streams, parts []pattern.Part) {
	for _, p := range parts {
		if len(p.Free()) > 0 {
			continue
		}
		name := filepath.Join(v.Out, fileName(p.Name)+cutOnly)
		if _, err := os.Stat(name); err == nil {
			fmt.Fprintf(s.err, "%s is from before the part was held: do not cut by it\n", name)
			continue
		}
		fmt.Fprintf(s.err, "%s is not written: it could not say that the part is held\n", name)
	}
}

func areHeld(n int) string {
	if n == 1 {
		return "1 part is"
	}
	return fmt.Sprintf("%d parts are", n)
}

// settle says what keeps parts from being drawn or cut, and gives the status.
func (v patternVerb) settle(s streams, boats []patterned, beside bool) error {
	status := statusDone
	if beside {
		status = statusFindings
	}
	for _, b := range boats {
		for _, f := range b.Held {
			status = max(status, statusFindings)
			fmt.Fprintf(s.err, "%s: NOT TO BE CUT: %s [%s]\n", place(f.At), f.Message, f.Rule)
		}
		if len(b.Gaps) > 0 {
			status = max(status, statusInput)
		}
		if len(b.Report.Problems) > 0 || b.Report.Fault {
			status = statusFault
		}
		listProblems(s, append(b.Report.Problems, b.Gaps...))
	}
	if status == statusDone {
		return nil
	}
	return ended(status)
}

// drawn is one file before it is written.
type drawn struct {
	name    string
	content []byte
}

// draw makes all files before any is written, so that one part that can't be drawn
// leaves nothing half done.
func (v patternVerb) draw(parts []pattern.Part) ([]drawn, error) {
	var files []drawn
	whose := map[string]string{strings.ToLower(pattern.ListName): "the list of groups"}
	for _, part := range parts {
		own, err := v.drawOne(part)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", place(part.At), err)
		}
		for _, f := range own {
			key := strings.ToLower(f.name) // some disks don't tell small letters from large
			if other, taken := whose[key]; taken {
				return nil, fmt.Errorf("%s: %s and %s would both have the file %s; give one another id", place(part.At), other, part.Name, f.name)
			}
			whose[key] = part.Name
		}
		files = append(files, own...)
	}
	if len(parts) > 0 {
		files = append(files, drawn{pattern.ListName, pattern.List(parts)})
	}
	return files, nil
}

// cutOnly is what the name of a file ends in that has outline and holes and no words.
const cutOnly = "-cut.dxf"

// drawOne makes the files of a part.
func (v patternVerb) drawOne(part pattern.Part) (files []drawn, err error) {
	paper, err := drawing.PaperNamed(v.Paper)
	if err != nil {
		return nil, err
	}
	d, name := part.Drawing(), fileName(part.Name)
	for _, f := range []struct {
		name  string
		write func(io.Writer) error
	}{
		{".dxf", func(w io.Writer) error { return drawing.DXF(w, d, drawing.DXFOptions{Version: drawing.R2000}) }},
		{"-r12.dxf", func(w io.Writer) error { return drawing.DXF(w, d, drawing.DXFOptions{Version: drawing.R12}) }},
		{cutOnly, func(w io.Writer) error {
			return drawing.DXF(w, d, drawing.DXFOptions{Version: drawing.R12, CutOnly: true})
		}},
		{".svg", func(w io.Writer) error { return drawing.SVG(w, d) }},
		{"-folded.svg", func(w io.Writer) error { return drawing.FoldedSVG(w, d) }},
		{"-drawing.pdf", func(w io.Writer) error { return drawing.DrawingPDF(w, d, drawing.PDFOptions{Paper: paper}) }},
		{"-template.pdf", func(w io.Writer) error {
			return drawing.TemplatePDF(w, d, drawing.TemplateOptions{Paper: paper, ScaleX: v.ScaleX, ScaleY: v.ScaleY})
		}},
	} {
		if f.name == cutOnly && d.Hold != "" {
			continue // it has no words to say so
		}
		var content bytes.Buffer
		if err := f.write(&content); err != nil {
			return nil, err
		}
		files = append(files, drawn{name + f.name, content.Bytes()})
	}
	if sheet := part.PressSheet(v.Stroke); sheet != nil {
		files = append(files, drawn{name + "-press.txt", sheet})
	}
	return files, nil
}

// fileName is a part's name as a file can have it.
func fileName(name string) string { return pattern.FileName(name) }

// write writes the files and says where each is; beside tells that one stands beside a
// file that a person changed.
func (v patternVerb) write(s streams, files []drawn) (beside bool, err error) {
	for _, f := range files {
		made, err := writeOut(v.Out, f.name, f.content)
		if err != nil {
			return beside, err
		}
		if made.beside {
			beside = true
			fmt.Fprintf(s.err, "%s was changed by hand and is left alone; the new one is %s\n", made.wanted, made.name)
			continue
		}
		fmt.Fprintln(s.out, made.name)
	}
	return beside, nil
}
