package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"strings"

	"chainwale/engine"
	"chainwale/engine/drawing"
	"chainwale/engine/finding"
	"chainwale/engine/pattern"
)

type patternVerb struct {
	planArgs
	standardArgs
	Pack   []string `help:"A folder of a rule pack that judges as well; may stand several times." placeholder:"DIR"`
	Out    string   `help:"The folder that the drawings go into; what a person changed there is left alone." required:"" placeholder:"DIR"`
	Paper  string   `help:"The paper of drawings and templates: a4 or letter." enum:"a4,letter" default:"a4"`
	ScaleX float64  `name:"scale-x" help:"Stretch templates across the paper, to undo what a printer does: 150 over what its 150 mm ruler measures." default:"1"`
	ScaleY float64  `name:"scale-y" help:"The same along the paper." default:"1"`
}

// Help is what the verb's own help says beyond its flags.
func (patternVerb) Help() string {
	return `For each part that is made: cutting files (DXF, with and without words, R12 and R2000), the flat and the folded part as SVG, a drawing and a paper template at full size as PDF. A part of which a finding holds up cutting is drawn with that said on it, and the status is 1; chainwale check has all findings.`
}

// Run draws the patterns of a plan.
func (v patternVerb) Run(s streams) error {
	p, on, problems, err := v.load(s)
	if err != nil {
		return err
	}
	ctx := context.Background()
	h := v.newHall(v.Plan, v.Root)
	defer h.close()
	o := engine.Options{Version: version, On: on, RefuseFrom: finding.Stop, Root: v.Root, Packs: v.Pack}
	if p != nil {
		o.Standards, problems = h.named(ctx, p)
	}
	if len(problems) > 0 {
		return refusePlan(s, v.Plan, problems, o)
	}
	made, err := engine.Patterns(ctx, p, o)
	if err != nil {
		return err
	}
	files, err := v.draw(made.Parts, p.File)
	if err != nil {
		fmt.Fprintf(s.err, "chainwale: %v; nothing was written\n", err)
		return ended(statusInput)
	}
	beside, err := v.write(s, files)
	if err != nil {
		return err
	}
	fmt.Fprintf(s.out, "%s of %s, made %s; check the plan and the first part before the rest is cut.\n",
		counted(len(made.Parts), "pattern", "patterns"), p.Boat.Name.Value, counted(copies(made.Parts), "time", "times"))
	if c := made.Report.Counts; c.Stop+c.Mend > 0 {
		fmt.Fprintf(s.out, "The plan has %d stop and %d mend: chainwale check says which.\n", c.Stop, c.Mend)
	}
	fmt.Fprintln(s.out, "Cut edges are sharp, and a press does not stop for a hand: eyes, gloves off moving tools, and the shop's own rules. chainwale advises; a qualified rigger, naval architect and local code decide.")
	return v.settle(s, made, beside)
}

// settle says what keeps parts from being drawn or cut, and gives the status.
func (v patternVerb) settle(s streams, made engine.Patterned, beside bool) error {
	for _, f := range made.Held {
		fmt.Fprintf(s.err, "%s: NOT TO BE CUT: %s [%s]\n", place(f.At), f.Message, f.Rule)
	}
	listed := listProblems(s, append(made.Report.Problems, made.Gaps...))
	switch {
	case len(made.Report.Problems) > 0 || made.Report.Fault:
		return ended(statusFault)
	case len(made.Gaps) > 0:
		return listed
	case beside || len(made.Held) > 0:
		return ended(statusFindings)
	}
	return nil
}

func copies(parts []pattern.Part) (n int) {
	for _, p := range parts {
		n += p.Quantity()
	}
	return n
}

// drawn is one file before it is written.
type drawn struct {
	name    string
	content []byte
}

// draw makes all files before any is written, so that one part that can't be drawn
// leaves nothing half done.
func (v patternVerb) draw(parts []pattern.Part, plan string) ([]drawn, error) {
	paper, err := drawing.PaperNamed(v.Paper)
	if err != nil {
		return nil, err
	}
	var files []drawn
	for _, part := range parts {
		d := part.Drawing(plan)
		sheets := []struct {
			name  string
			write func(io.Writer) error
		}{
			{".dxf", func(w io.Writer) error { return drawing.DXF(w, d, drawing.DXFOptions{Version: drawing.R2000}) }},
			{"-r12.dxf", func(w io.Writer) error { return drawing.DXF(w, d, drawing.DXFOptions{Version: drawing.R12}) }},
			{"-cut.dxf", func(w io.Writer) error {
				return drawing.DXF(w, d, drawing.DXFOptions{Version: drawing.R12, CutOnly: true})
			}},
			{".svg", func(w io.Writer) error { return drawing.SVG(w, d) }},
			{"-folded.svg", func(w io.Writer) error { return drawing.FoldedSVG(w, d) }},
			{"-drawing.pdf", func(w io.Writer) error { return drawing.DrawingPDF(w, d, drawing.PDFOptions{Paper: paper}) }},
			{"-template.pdf", func(w io.Writer) error {
				return drawing.TemplatePDF(w, d, drawing.TemplateOptions{Paper: paper, ScaleX: v.ScaleX, ScaleY: v.ScaleY})
			}},
		}
		for _, f := range sheets {
			var content bytes.Buffer
			if err := f.write(&content); err != nil {
				return nil, fmt.Errorf("%s: %w", place(part.At), err)
			}
			files = append(files, drawn{fileName(part.Name) + f.name, content.Bytes()})
		}
	}
	return files, nil
}

// fileName is a part's name as a file can have it.
func fileName(name string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}, strings.TrimLeft(name, "."))
}

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
